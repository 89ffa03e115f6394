// Verbs on findings and thread repair (F1 to F6).
import * as z from 'zod';
import { isCriticalAt } from '../critical.ts';
import { waysOfAsking } from '../entries/works.ts';
import { holeState, no } from '../guards.ts';
import { every, stateOf } from '../ledger.ts';
import { openUnmasked } from '../order.ts';
import { personSchema, reasonSchema } from '../reasons.ts';
import { repairOf, repairSteps, stepLacking } from '../repair.ts';
import { tooDeep } from '../repair-figures.ts';
import type { FindingState } from '../states.ts';
import { type Hole, holeSchema, named, subjectSchema } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const note = verb(
  'make-finding',
  () =>
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
const isFinding: Guard<{ finding: string }> = {
  code: 'no-such-finding',
  rule: 'F3',
  kind: 'footing',
  needs: ['finding'],
  check: (s, said) =>
    findingState(s, said.finding) ? null : no(`there is no finding ${said.finding}`, 'name one of the findings'),
};
const tell = verb(
  'tell-owner',
  () =>
    z.strictObject({ finding: findingId, said: z.string().max(400).optional(), how: z.enum(waysOfAsking).optional() }),
  // He may be asked before the work and called so after it: what was put right is told all the same.
  [isFinding],
  (s, said) => [
    {
      kind: 'owner-told',
      finding: said.finding,
      at: findingState(s, said.finding)?.at as string,
      said: said.said ?? '',
      ...(said.how && { how: said.how }),
    },
  ],
);
/** F3: of a fastener that was wrong, damaged, broken or missing, it is put right by another one in its hole. */
function notPutRight(s: Standing, f: FindingState, hole: Hole): string | null {
  const c = holeState(s, hole)?.called;
  const ofTheHole = f.fastener !== undefined || (c !== undefined && c.foundEmptyAt > 0 && c.foundEmptyAt === f.madeAt);
  if (!c || !ofTheHole) return null;
  if (!c.occupant && c.leftEmpty) return null;
  if (!c.occupant) return `${f.fastener ? 'it is of what came out, and ' : ''}nothing is in the hole yet`;
  return c.occupant.fastener === f.fastener ? 'the same fastener is still in it' : null;
}
const close = verb(
  'close-finding',
  () =>
    z.strictObject({
      finding: findingId,
      how: z.enum(['put right', 'accepted', 'declined']),
      who: personSchema.optional(),
      because: reasonSchema.optional(),
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
        return said.how === 'accepted' && f && isCriticalAt(s.ledger, f.at) && !f.told
          ? no('on a critical area the owner is told first', 'call the owner told')
          : null;
      },
    },
    {
      code: 'piece-still-in',
      rule: 'L10',
      kind: 'gate',
      needs: ['finding', 'how'],
      check(s, said) {
        const hole = named('hole', findingState(s, said.finding)?.at ?? '');
        const piece = hole && said.how === 'put right' ? holeState(s, hole)?.called.pieces[0] : undefined;
        return piece ? no('a broken piece is still in it', 'call the piece out', [`hole:${hole}`]) : null;
      },
    },
    {
      code: 'nothing-put-right-yet',
      rule: 'F3',
      kind: 'gate',
      needs: ['finding', 'how'],
      check(s, said) {
        const f = findingState(s, said.finding);
        const hole = f && said.how === 'put right' ? named('hole', f.at) : undefined;
        const because = f && hole && notPutRight(s, f, hole);
        return because ? no(because, 'fit another, or say who accepts it as it is', [`hole:${hole}`]) : null;
      },
    },
    {
      code: 'repair-not-complete',
      rule: 'F5',
      kind: 'gate',
      needs: ['finding', 'how'],
      check(s, said) {
        const hole = named('hole', findingState(s, said.finding)?.at ?? '');
        const missing = hole && said.how === 'put right' ? stepLacking(s.ledger, hole) : undefined;
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
const chase = verb(
  'chase-thread',
  () => z.strictObject({ hole: holeSchema }),
  [holeFree, cleanWorks],
  (_s, { hole }) => [{ kind: 'thread-chased', hole }],
);
const repair = verb(
  'repair-thread',
  () =>
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
        if (step === 'depth')
          return millimetres ? null : no('the depth there is in the boss is asked in mm', 'say the depth');
        return repairOf(s.ledger, hole).some((r) => r.step === 'depth')
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
        const done = new Set(repairOf(s.ledger, hole).map((r) => r.step));
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
        const because = step === 'insert' && millimetres ? tooDeep(s.ledger, hole, millimetres) : undefined;
        return because ? no(because, 'take a shorter one; set a stop collar') : null;
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

export const findingVerbs = [note, tell, close, chase, repair];
