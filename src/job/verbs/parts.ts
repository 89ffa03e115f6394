// Verbs on parts: off, back, renewed, judged (O2, T3).
import * as z from 'zod';
import { perhaps } from '../../trade/perhaps.ts';
import { partVerdicts } from '../entries/works.ts';
import type { Entry } from '../entry.ts';
import { behindRefusal, holeState, no } from '../guards.ts';
import { later } from '../later.ts';
import { every, stateOf } from '../ledger.ts';
import { reasonSchema } from '../reasons.ts';
import { holeSchema, nameSchema, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';

const forNow = z.literal(true).optional();
const partTakes = later(() => z.strictObject({ part: nameSchema }));
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
      check(s, { part, heldBy }) {
        const held = (partState(s, part)?.declared?.heldBy ?? heldBy ?? []).filter((hole) => {
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
  check(s, { part }) {
    const p = partState(s, part);
    if (p?.off) return null;
    const meant = p
      ? ''
      : perhaps(
          part,
          [...every(s.ledger, 'part')].filter((one) => one.off).map((one) => one.part),
        );
    return no(`${part} is not off${meant}`, 'call it off first');
  },
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
/** O2: what is in only to turn or to draw is in the way of a part that goes on over it; a guide it slides over is "done already". */
const nothingWorkingUnder: Guard<{ part: string }> = {
  code: 'working-fastener-in-the-way',
  rule: 'O2',
  kind: 'order',
  needs: ['part'],
  check(s, { part }) {
    const held = partState(s, part)?.declared?.heldBy ?? [];
    const working = held.filter((hole) => holeState(s, hole)?.called.occupant?.working);
    const [first] = working;
    return first
      ? no(
          `a working fastener is in ${subjectText(`hole:${first}`)}, where ${part} goes on`,
          'take it out first',
          working.map((hole) => `hole:${hole}`),
        )
      : null;
  },
};
const notScrapped: Guard<{ part: string }> = {
  code: 'old-one-judged',
  rule: 'T3',
  kind: 'rule',
  needs: ['part'],
  check: (s, { part }) => {
    const verdict = partState(s, part)?.judged?.verdict;
    return verdict && verdict !== 'reuse'
      ? no(`the old ${part} was judged: ${verdict}`, `call the new ${part}`, [`part:${part}`])
      : null;
  },
};

const fitPart = verb(
  'fit-part',
  () => z.strictObject({ part: nameSchema, forNow }),
  [isOff, notScrapped, nothingWorkingUnder, partBehind(true), partBehind(false)],
  (_s, said) => [{ kind: 'part-fitted', part: said.part, ...(said.forNow && { forNow: said.forNow }) }],
);

const boxFor = (s: Standing, part: string, from?: string) =>
  from
    ? stateOf(s.ledger, 'box', from)
    : [...every(s.ledger, 'box')].find((b) => b.sort === 'part' && b.replaces === part && b.left > 0);
const replacePart = verb(
  'replace-part',
  () =>
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
    nothingWorkingUnder,
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
  () =>
    z.strictObject({
      part: nameSchema,
      verdict: z.enum(partVerdicts),
      because: reasonSchema.optional(),
      marking: z.string().min(1).max(40).optional(),
    }),
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

export const partVerbs = [removePart, fitPart, replacePart, finalPart, judgePart];
