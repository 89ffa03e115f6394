// Verbs on parts, connections, temporaries, the parts box, fluids, findings and thread repair.
import { z } from 'zod';
import { areaStandsOpen, isCritical } from '../closed.ts';
import { temporaryKinds } from '../entries/declared.ts';
import { partVerdicts } from '../entries/works.ts';
import type { Entry } from '../entry.ts';
import { behindRefusal, holeState, no, notReached } from '../guards.ts';
import { every, stateOf } from '../ledger.ts';
import { openUnmasked } from '../order.ts';
import { specSchema } from '../spec.ts';
import { snugOrBetter } from '../states.ts';
import { areaOf, holeSchema, named, nameSchema, subjectSchema, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const reason = z.string().min(1).max(400);
const person = z.string().min(1).max(60);
const forNow = z.literal(true).optional();
const partTakes = z.strictObject({ part: nameSchema });
const partState = (s: Standing, part: string) => stateOf(s.ledger, 'part', part);

const removePart = verb(
  'remove-part',
  /** `heldBy` declares a part nobody has named before, in the same breath. */
  z.strictObject({ part: nameSchema, heldBy: z.array(holeSchema).max(500).optional() }),
  [
    {
      code: 'off-already',
      rule: 'O2',
      kind: 'footing',
      needs: ['part'],
      check: (s, { part }) =>
        partState(s, part)?.off ? no(`${part} is off already`, 'call it back, or a new one') : null,
    },
    {
      code: 'still-held',
      rule: 'O2',
      kind: 'order',
      needs: ['part'],
      check(s, { part }) {
        const held = (partState(s, part)?.declared?.heldBy ?? []).filter((hole) => {
          const c = holeState(s, hole)?.called;
          return !c || c.levels.length === 0 || (c.occupant && c.occupant.level !== 'slack');
        });
        const [first] = held;
        return first
          ? no(
              `${part} is still held by ${subjectText(`hole:${first}`)}`,
              'call that off, or slack',
              held.map((h) => `hole:${h}`),
            )
          : null;
      },
    },
  ],
  (s, { part, heldBy }) => [
    ...(partState(s, part)?.declared ? [] : [{ kind: 'part-declared' as const, part, heldBy: heldBy ?? [] }]),
    { kind: 'part-removed', part },
  ],
);

const isOff: Guard<{ part: string }> = {
  code: 'part-not-off',
  rule: 'O2',
  kind: 'footing',
  needs: ['part'],
  check: (s, { part }) => (partState(s, part)?.off ? null : no(`${part} is not off`, 'call it off first')),
};
/** O1 for a part: putting it back is its closing where nothing holds it. */
const partBehind = (gates: boolean): Guard<{ part: string; forNow?: true }> => ({
  code: gates ? 'hides-what-is-not-proven' : 'open-behind',
  rule: gates ? 'R7' : 'O1',
  kind: gates ? 'gate' : 'order',
  needs: ['part'],
  check(s, said) {
    const p = partState(s, said.part);
    if (said.forNow || (p?.declared?.heldBy.length ?? 0) > 0) return null;
    return behindRefusal(s, [`part:${said.part}`], gates);
  },
});
const notScrapped: Guard<{ part: string }> = {
  code: 'old-one-judged',
  rule: 'T3',
  kind: 'rule',
  needs: ['part'],
  check: (s, { part }) => {
    const verdict = partState(s, part)?.judged?.verdict;
    return verdict ? no(`the old ${part} was judged: ${verdict}`, `call the new ${part}`, [`part:${part}`]) : null;
  },
};

const fitPart = verb(
  'fit-part',
  z.strictObject({ part: nameSchema, forNow }),
  [isOff, notScrapped, partBehind(true), partBehind(false)],
  (_s, said) => [{ kind: 'part-fitted', part: said.part, ...(said.forNow && { forNow: said.forNow }) }],
);

const boxFor = (s: Standing, part: string, from?: string) =>
  from
    ? stateOf(s.ledger, 'box', from)
    : [...every(s.ledger, 'box')].find((b) => b.sort === 'part' && b.replaces === part && b.left > 0);
const replacePart = verb(
  'replace-part',
  z.strictObject({ part: nameSchema, from: nameSchema.optional(), forNow, verdict: z.enum(partVerdicts).optional() }),
  [
    isOff,
    {
      code: 'not-in-the-box',
      rule: 'T3',
      kind: 'footing',
      needs: ['part'],
      check(s, { part, from }) {
        const b = boxFor(s, part, from);
        return b && b.left > 0 && b.sort === 'part'
          ? null
          : no(`no new ${part} is in the parts box`, 'put it in the box first');
      },
    },
    partBehind(true),
    partBehind(false),
  ],
  (s, said) => {
    const judged = partState(s, said.part)?.judged;
    const verdict: Entry[] =
      judged && !said.verdict ? [] : [{ kind: 'part-judged', part: said.part, verdict: said.verdict ?? 'worn' }];
    return [
      {
        kind: 'part-replaced',
        part: said.part,
        from: boxFor(s, said.part, said.from)?.name as string,
        ...(said.forNow && { forNow: said.forNow }),
      },
      ...verdict,
    ];
  },
);

const isPartForNow: Guard<{ part: string }> = {
  code: 'not-on-for-now',
  rule: 'O1',
  kind: 'footing',
  needs: ['part'],
  check: (s, { part }) => (partState(s, part)?.forNow ? null : no(`${part} is not on for now`, 'call it back')),
};
const finalPart = verb(
  'make-part-final',
  partTakes,
  [isPartForNow, partBehind(true) as Guard<{ part: string }>, partBehind(false) as Guard<{ part: string }>],
  (_s, { part }) => [{ kind: 'part-made-final', part }],
);
const judgePart = verb(
  'judge-part',
  z.strictObject({ part: nameSchema, verdict: z.enum(partVerdicts), because: reason.optional() }),
  [
    {
      code: 'never-came-off',
      rule: 'T3',
      kind: 'footing',
      needs: ['part'],
      check: (s, { part }) =>
        partState(s, part)?.removedAt ? null : no(`${part} never came off`, 'call it off first'),
    },
  ],
  (_s, said) => [{ kind: 'part-judged', ...said }],
);

const connection = z.strictObject({ connection: nameSchema });
const connectionState = (s: Standing, name: string) => stateOf(s.ledger, 'connection', name);
const part = verb(
  'part-connection',
  connection,
  [
    {
      code: 'parted-already',
      rule: 'T2',
      kind: 'footing',
      needs: ['connection'],
      check: (s, said) =>
        connectionState(s, said.connection)?.parted ? no(`${said.connection} is parted already`, 'call it made') : null,
    },
  ],
  (_s, said) => [{ kind: 'connection-parted', connection: said.connection }],
);
const connectionBehind = (gates: boolean): Guard<{ connection: string; forNow?: true }> => ({
  code: gates ? 'hides-what-is-not-proven' : 'open-behind',
  rule: gates ? 'R7' : 'O1',
  kind: gates ? 'gate' : 'order',
  needs: ['connection'],
  check: (s, said) => (said.forNow ? null : behindRefusal(s, [`connection:${said.connection}`], gates)),
});
const make = verb(
  'make-connection',
  z.strictObject({ connection: nameSchema, forNow }),
  [
    {
      code: 'not-parted',
      rule: 'T2',
      kind: 'footing',
      needs: ['connection'],
      check: (s, said) => {
        const c = connectionState(s, said.connection);
        return c?.parted || (c?.forNow && !said.forNow)
          ? null
          : no(`${said.connection} is not parted`, 'call it parted first');
      },
    },
    connectionBehind(true),
    connectionBehind(false),
  ],
  (_s, said) => [{ kind: 'connection-made', connection: said.connection, ...(said.forNow && { forNow: said.forNow }) }],
);

const temporaryState = (s: Standing, name: string) => stateOf(s.ledger, 'temporary', name);
const putIn = verb(
  'put-in',
  z.strictObject({ temporary: nameSchema, sort: z.enum(temporaryKinds).optional(), at: subjectSchema.optional() }),
  [
    {
      code: 'in-already',
      rule: 'T1',
      kind: 'footing',
      needs: ['temporary'],
      check: (s, said) =>
        temporaryState(s, said.temporary)?.in
          ? no(`${said.temporary} is in already`, 'give the second one a name of its own')
          : null,
    },
  ],
  (s, said) => {
    const known = temporaryState(s, said.temporary);
    const at = said.at ?? known?.at;
    return [
      {
        kind: 'temporary-put-in',
        temporary: said.temporary,
        sort: said.sort ?? known?.sort ?? 'plug',
        ...(at && { at }),
      },
    ];
  },
);
const takeOut = verb(
  'take-out',
  z.strictObject({ temporary: nameSchema }),
  [
    {
      code: 'not-in',
      rule: 'T1',
      kind: 'footing',
      needs: ['temporary'],
      check: (s, said) =>
        temporaryState(s, said.temporary)?.in ? null : no(`${said.temporary} is not in`, 'name what is in'),
    },
    {
      code: 'wheel-not-snug',
      rule: 'T1',
      kind: 'gate',
      needs: ['temporary'],
      check(s, said) {
        const t = temporaryState(s, said.temporary);
        const wheel = t?.sort === 'stand' ? named('area', t.at ?? '') : undefined;
        return wheel ? notSnugIn(s, wheel) : null;
      },
    },
  ],
  (s, said) => {
    const at = temporaryState(s, said.temporary)?.at;
    return [{ kind: 'temporary-taken-out', temporary: said.temporary, ...(at && { at }) }];
  },
);
/** T1: nuts of a wheel that are off or not yet snug. */
export function notSnugIn(s: Standing, area: string) {
  const holes = (stateOf(s.ledger, 'area', area)?.holes ?? []).filter((hole) => {
    const c = holeState(s, hole)?.called;
    return c && c.touchedAt > 0 && !c.leftEmpty && !(c.occupant && snugOrBetter(c.occupant.level));
  });
  const [first] = holes;
  return first
    ? no(
        `${subjectText(`hole:${first}`)} is not snug`,
        'bring the wheel snug first',
        holes.map((h) => `hole:${h}`),
      )
    : null;
}

const mask = verb(
  'mask-all',
  z.strictObject({}),
  [
    {
      code: 'nothing-open',
      rule: 'F6',
      kind: 'footing',
      needs: [],
      check: (s) =>
        [...every(s.ledger, 'area')].some((a) => areaStandsOpen(s.ledger, a) && !a.maskedAt)
          ? null
          : no('no area stands open unmasked', 'nothing to mask'),
    },
  ],
  (s) => [
    {
      kind: 'all-masked',
      areas: [...every(s.ledger, 'area')].filter((a) => areaStandsOpen(s.ledger, a)).map((a) => a.area),
    },
  ],
);
const unmask = verb(
  'unmask-all',
  z.strictObject({}),
  [
    {
      code: 'nothing-masked',
      rule: 'F6',
      kind: 'footing',
      needs: [],
      check: (s) =>
        [...every(s.ledger, 'area')].some((a) => a.maskedAt > 0)
          ? null
          : no('nothing is masked', 'nothing to take out'),
    },
  ],
  (s) => [
    { kind: 'all-unmasked', areas: [...every(s.ledger, 'area')].filter((a) => a.maskedAt > 0).map((a) => a.area) },
  ],
);

const fillBox = verb(
  'fill-box',
  z.strictObject({
    name: nameSchema,
    quantity: z.number().int().min(1).max(5000).optional(),
    spec: specSchema.optional(),
    replaces: nameSchema.optional(),
  }),
  [],
  (_s, { name, quantity, spec, replaces }) => {
    const sort = spec ? 'fastener' : replaces ? 'part' : 'supply';
    return [
      { kind: 'box-filled', name, sort, quantity: quantity ?? 1, ...(spec && { spec }), ...(replaces && { replaces }) },
    ];
  },
);
const boxTakes = z.strictObject({
  name: nameSchema,
  quantity: z.number().int().min(1).max(5000).optional(),
  at: subjectSchema.optional(),
});
const isLeft: Guard<{ name: string; quantity?: number }> = {
  code: 'not-in-the-box',
  rule: 'L12',
  kind: 'footing',
  needs: ['name'],
  check: (s, { name, quantity }) => {
    const left = stateOf(s.ledger, 'box', name)?.left ?? 0;
    return left >= (quantity ?? 1) ? null : no(`${left} ${name} left in the parts box`, 'name what is in the box');
  },
};
const useUp = verb('use-from-box', boxTakes, [isLeft], (_s, said) => [
  { kind: 'box-used', name: said.name, quantity: said.quantity ?? 1, ...(said.at && { at: said.at }) },
]);
const moveBox = verb(
  'move-box',
  z.strictObject({
    name: nameSchema,
    quantity: z.number().int().min(1).max(5000).optional(),
    to: z.enum(['supplier', 'owner', 'scrap', 'lost']),
    because: reason.optional(),
  }),
  [isLeft],
  (s, said) => [
    {
      kind: 'box-moved',
      name: said.name,
      quantity: said.quantity ?? stateOf(s.ledger, 'box', said.name)?.left ?? 1,
      to: said.to,
      ...(said.because && { because: said.because }),
    },
  ],
);

const circuit = z.strictObject({ circuit: nameSchema });
const drain = verb('drain', circuit, [], (_s, said) => [{ kind: 'fluid-drained', ...said }]);
const fillFluid = verb(
  'fill-fluid',
  z.strictObject({
    circuit: nameSchema,
    fluid: nameSchema.optional(),
    litres: z.number().positive().max(200).optional(),
  }),
  [
    {
      code: 'not-cured-to-fill',
      rule: 'S5',
      kind: 'gate',
      needs: ['circuit'],
      check(s, said) {
        const [bead] = notReached(s, 'fill', said.circuit);
        if (!bead) return null;
        const because = bead.void
          ? `the bead on ${bead.face} is void: ${bead.void}`
          : `the bead on ${bead.face} may not be filled yet`;
        return no(because, bead.void ? 'clean the face and lay it again' : 'wait for the first label time', [
          `face:${bead.face}`,
        ]);
      },
    },
  ],
  (s, said) => [
    {
      kind: 'fluid-filled',
      circuit: said.circuit,
      fluid: said.fluid ?? stateOf(s.ledger, 'circuit', said.circuit)?.fluid ?? said.circuit,
      ...(said.litres !== undefined && { litres: said.litres }),
    },
  ],
);
const leakCheck = verb(
  'check-leaks',
  z.strictObject({ circuit: nameSchema, how: z.enum(['after running', 'under pressure']).optional() }),
  [
    {
      code: 'not-filled',
      rule: 'T5',
      kind: 'footing',
      needs: ['circuit'],
      check: (s, said) => {
        const c = stateOf(s.ledger, 'circuit', said.circuit);
        return !c || c.filledAt < c.drainedAt
          ? no(`${said.circuit} is not filled`, 'fill it first', [`circuit:${said.circuit}`])
          : null;
      },
    },
    {
      code: 'not-run-since-filled',
      rule: 'T5',
      kind: 'gate',
      needs: ['circuit'],
      check(s, said) {
        const c = stateOf(s.ledger, 'circuit', said.circuit);
        const started = stateOf(s.ledger, 'vehicle', 'vehicle')?.startedAt ?? 0;
        return said.how === 'under pressure' || started > (c?.filledAt ?? 0)
          ? null
          : no('the engine has not run since it was filled', 'start it first, or check under pressure');
      },
    },
  ],
  (_s, said) => [{ kind: 'leak-checked', circuit: said.circuit, how: said.how ?? 'after running' }],
);
const oil = verb('see-oil-level', z.strictObject({}), [], () => [{ kind: 'oil-level-seen' }]);

const note = verb(
  'make-finding',
  z.strictObject({
    at: subjectSchema,
    what: z.string().min(1).max(200),
    when: z.enum(['on arrival', 'during the work']).optional(),
  }),
  [],
  (s, said) => [
    { kind: 'finding-made', finding: `d${s.n}.1`, at: said.at, what: said.what, when: said.when ?? 'during the work' },
  ],
);
const findingId = z.string().regex(/^d\d{1,8}\.\d{1,4}$/);
const findingState = (s: Standing, id: string) => stateOf(s.ledger, 'finding', id);
const isOpenFinding: Guard<{ finding: string }> = {
  code: 'no-open-finding',
  rule: 'F3',
  kind: 'footing',
  needs: ['finding'],
  check: (s, said) => {
    const f = findingState(s, said.finding);
    return f && !f.closed ? null : no(`there is no open finding ${said.finding}`, 'name an open one');
  },
};
const tell = verb(
  'tell-owner',
  z.strictObject({ finding: findingId, said: z.string().max(400).optional() }),
  [isOpenFinding],
  (s, said) => [
    {
      kind: 'owner-told',
      finding: said.finding,
      at: findingState(s, said.finding)?.at as string,
      said: said.said ?? '',
    },
  ],
);
const repairSteps = ['depth', 'drilled', 'tapped', 'cleaned', 'insert', 'tried'] as const;
const close = verb(
  'close-finding',
  z.strictObject({
    finding: findingId,
    how: z.enum(['put right', 'accepted', 'declined']),
    who: person.optional(),
    because: reason.optional(),
  }),
  [
    isOpenFinding,
    {
      code: 'who-and-why',
      rule: 'F3',
      kind: 'rule',
      needs: ['finding', 'how'],
      check: (_s, said) =>
        said.how !== 'put right' && (!said.who || !said.because)
          ? no(`${said.how} needs who and why`, 'say who and why')
          : null,
    },
    {
      code: 'owner-not-told',
      rule: 'F3',
      kind: 'gate',
      needs: ['finding', 'how'],
      check(s, said) {
        const f = findingState(s, said.finding);
        const area = f && (named('area', f.at) ?? (named('hole', f.at) && areaOf(named('hole', f.at) as string)));
        const h = f && named('hole', f.at) ? holeState(s, named('hole', f.at) as string) : undefined;
        const critical =
          area && (stateOf(s.ledger, 'area', area)?.declared?.critical || (h && isCritical(s.ledger, h, area)));
        return said.how === 'accepted' && critical && !f?.told
          ? no('on a critical area the owner is told first', 'call the owner told')
          : null;
      },
    },
    {
      code: 'repair-not-complete',
      rule: 'F5',
      kind: 'gate',
      needs: ['finding', 'how'],
      check(s, said) {
        const hole = named('hole', findingState(s, said.finding)?.at ?? '');
        const c = hole ? holeState(s, hole)?.called : undefined;
        if (said.how !== 'put right' || !c || c.repair.length === 0) return null;
        const missing = repairSteps.find((step) => !c.repair.some((r) => r.step === step));
        return missing ? no(`the thread repair still wants: ${missing}`, `call ${missing}`, [`hole:${hole}`]) : null;
      },
    },
  ],
  (s, said) => [{ kind: 'finding-closed', at: findingState(s, said.finding)?.at as string, ...said }],
);

/** F6: no metal is cut while an area that must stay clean stands open and unmasked. */
const cleanWorks: Guard<{ hole: string }> = {
  code: 'open-works-not-masked',
  rule: 'F6',
  kind: 'gate',
  needs: [],
  check(s) {
    const open = openUnmasked(
      s.ledger,
      [...every(s.ledger, 'area')].map((a) => a.area),
    );
    const [first] = open;
    return first
      ? no(
          `${first} stands open and is not masked`,
          'mask all',
          open.map((a) => `area:${a}`),
        )
      : null;
  },
};
const holeFree: Guard<{ hole: string }> = {
  code: 'hole-is-taken',
  rule: 'F5',
  kind: 'footing',
  needs: ['hole'],
  check: (s, { hole }) =>
    holeState(s, hole)?.called.occupant ? no('a fastener is in it', 'call it off first', [`hole:${hole}`]) : null,
};
const chase = verb('chase-thread', z.strictObject({ hole: holeSchema }), [holeFree, cleanWorks], (_s, { hole }) => [
  { kind: 'thread-chased', hole },
]);
const repair = verb(
  'repair-thread',
  z.strictObject({
    hole: holeSchema,
    step: z.enum(repairSteps),
    millimetres: z.number().positive().max(500).optional(),
    words: z.string().max(80).optional(),
  }),
  [
    holeFree,
    {
      code: 'depth-not-known',
      rule: 'F5',
      kind: 'rule',
      needs: ['hole', 'step'],
      check(s, { hole, step, millimetres }) {
        const repair = holeState(s, hole)?.called.repair ?? [];
        if (step === 'depth')
          return millimetres ? null : no('the depth there is in the boss is asked in mm', 'say the depth');
        return repair.some((r) => r.step === 'depth')
          ? null
          : no('the depth there is in the boss comes first', 'call the depth', [`hole:${hole}`]);
      },
    },
    {
      code: 'step-out-of-turn',
      rule: 'F5',
      kind: 'rule',
      needs: ['hole', 'step'],
      check(s, { hole, step }) {
        const done = new Set((holeState(s, hole)?.called.repair ?? []).map((r) => r.step));
        const before = repairSteps.slice(0, repairSteps.indexOf(step)).find((one) => !done.has(one));
        return before && before !== 'depth' ? no(`${before} comes before ${step}`, `call ${before}`) : null;
      },
    },
    {
      code: 'deeper-than-the-boss',
      rule: 'F5',
      kind: 'rule',
      needs: ['hole', 'step'],
      check(s, { hole, step, millimetres }) {
        const depth = holeState(s, hole)?.called.repair.find((r) => r.step === 'depth')?.millimetres;
        return step === 'insert' && depth && millimetres && millimetres > depth
          ? no(`an insert of ${millimetres} mm does not go into ${depth} mm`, 'take a shorter one; set a stop collar')
          : null;
      },
    },
    {
      code: 'open-works-not-masked',
      rule: 'F6',
      kind: 'gate',
      needs: ['hole', 'step'],
      check: (s, said) => (said.step === 'drilled' || said.step === 'tapped' ? cleanWorks.check(s, said) : null),
    },
  ],
  (_s, said) => [{ kind: 'repair-step', ...said }],
);

export const workVerbs = [
  removePart,
  fitPart,
  replacePart,
  finalPart,
  judgePart,
  part,
  make,
  putIn,
  takeOut,
  mask,
  unmask,
  fillBox,
  useUp,
  moveBox,
  drain,
  fillFluid,
  leakCheck,
  oil,
  note,
  tell,
  close,
  chase,
  repair,
];
