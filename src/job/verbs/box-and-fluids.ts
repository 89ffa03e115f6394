// Verbs on the parts box and on fluids and their circuits (T4, T5).
import * as z from 'zod';
import type { Entry } from '../entry.ts';
import { meanwhile, no, notReached } from '../guards.ts';
import { later } from '../later.ts';
import { every, stateOf } from '../ledger.ts';
import { letsOut } from '../lets-out.ts';
import { isOil } from '../not-run.ts';
import { circuitOpenedAt } from '../open-points.ts';
import { readyText } from '../ready.ts';
import { reasonSchema } from '../reasons.ts';
import type { No } from '../refusal.ts';
import { nameSchema, subjectSchema, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';
import { fillBox, fillTogether } from './filling-the-box.ts';

const boxTakes = later(() =>
  z.strictObject({
    name: nameSchema,
    quantity: z.number().int().min(1).max(5000).optional(),
    at: subjectSchema.optional(),
  }),
);
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
/** L12: a fastener out of the box is in a hole, a tray or with somebody, never just used. */
const isNoFastener: Guard<{ name: string }> = {
  code: 'a-fastener-is-fitted',
  rule: 'L12',
  kind: 'rule',
  needs: ['name'],
  check: (s, { name }) =>
    stateOf(s.ledger, 'box', name)?.sort === 'fastener'
      ? no(`${name} is a fastener: the books ask where it is`, 'call it back into its hole, or hand it on')
      : null,
};
const useUp = verb('use-from-box', boxTakes, [isLeft, isNoFastener], (_s, said) => [
  { kind: 'box-used', name: said.name, quantity: said.quantity ?? 1, ...(said.at && { at: said.at }) },
]);
/** T4: a supply of that very name was bought for it, and is used with it. */
export const suppliedBy = (s: Standing, name: string): Entry[] => {
  const b = stateOf(s.ledger, 'box', name);
  return b?.sort === 'supply' && b.left > 0 ? [{ kind: 'box-used', name, quantity: 1 }] : [];
};
const moveBox = verb(
  'move-box',
  () =>
    z.strictObject({
      name: nameSchema,
      quantity: z.number().int().min(1).max(5000).optional(),
      to: z.enum(['supplier', 'owner', 'scrap', 'lost']),
      because: reasonSchema.optional(),
    }),
  [
    isLeft,
    {
      code: 'lost-by-name',
      rule: 'L9',
      kind: 'rule',
      needs: ['name', 'to'],
      check: (s, said) =>
        said.to === 'lost' && stateOf(s.ledger, 'box', said.name)?.sort === 'fastener'
          ? no('a fastener lost stays open until it is found or ruled out', 'call it lost, one by one')
          : null,
    },
  ],
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
const countBox = verb(
  'count-box',
  () => z.strictObject({ name: nameSchema, count: z.number().int().min(0).max(5000) }),
  [
    {
      code: 'not-in-the-box',
      rule: 'L12',
      kind: 'footing',
      needs: ['name'],
      check: (s, { name }) =>
        stateOf(s.ledger, 'box', name) ? null : no(`${name} was never put in the parts box`, 'name what was bought'),
    },
  ],
  (_s, said) => [{ kind: 'box-counted', ...said }],
);

/** What is filled in runs out where its circuit is open; where it is vented so, it is filled once that is shut. */
function stillOut(s: Standing, name: string): No | null {
  const [first, ...rest] = letsOut(s.ledger, name);
  return first
    ? no(`${subjectText(first)} is open, and ${name} runs out there`, `close ${subjectText(first)} first`, [
        first,
        ...rest,
      ])
    : null;
}

const circuit = later(() => z.strictObject({ circuit: nameSchema }));
const drain = verb('drain', circuit, [], (_s, said) => [{ kind: 'fluid-drained', ...said }]);
const fillFluid = verb(
  'fill-fluid',
  () =>
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
          : `the bead on ${bead.face} still cures: ${readyText(bead, 'fill', s.now)}`;
        return no(
          because,
          bead.void ? 'clean the face and lay it again' : `wait for the first label time; ${meanwhile}`,
          [`face:${bead.face}`],
        );
      },
    },
    {
      code: 'runs-out-again',
      rule: 'T5',
      kind: 'gate',
      needs: ['circuit'],
      check: (s, said) => stillOut(s, said.circuit),
    },
  ],
  (s, said) => [
    {
      kind: 'fluid-filled',
      circuit: said.circuit,
      fluid: said.fluid ?? stateOf(s.ledger, 'circuit', said.circuit)?.fluid ?? said.circuit,
      ...(said.litres !== undefined && { litres: said.litres }),
    },
    ...suppliedBy(s, said.fluid ?? stateOf(s.ledger, 'circuit', said.circuit)?.fluid ?? said.circuit),
  ],
);
const leakCheck = verb(
  'check-leaks',
  () => z.strictObject({ circuit: nameSchema, how: z.enum(['after running', 'under pressure']).optional() }),
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
        const closedAt = c ? Math.max(c.filledAt, circuitOpenedAt(s.ledger, c)) : 0;
        if (started > closedAt) return null;
        const because = 'the engine has not run since it was closed and filled';
        const isPumped = isOil(c ?? said);
        if (isPumped && said.how === 'under pressure')
          return no(`${because}, and ${said.circuit} is under pressure only while it runs`, 'start it first');
        if (said.how === 'under pressure') return null;
        return no(because, isPumped ? 'start it first' : 'check it under pressure, or start it first');
      },
    },
  ],
  (_s, said) => [{ kind: 'leak-checked', circuit: said.circuit, how: said.how ?? 'after running' }],
);
const oil = verb(
  'see-oil-level',
  () => z.strictObject({}),
  [
    {
      code: 'oil-not-in',
      rule: 'T6',
      kind: 'gate',
      needs: [],
      check(s) {
        for (const c of every(s.ledger, 'circuit')) {
          if (!isOil(c)) continue;
          if (c.drainedAt > c.filledAt)
            return no(`${c.circuit} is drained`, `fill ${c.circuit}`, [`circuit:${c.circuit}`]);
          const out = stillOut(s, c.circuit);
          if (out) return out;
        }
        return null;
      },
    },
  ],
  () => [{ kind: 'oil-level-seen' }],
);

export const boxAndFluidVerbs = [fillBox, fillTogether, useUp, moveBox, countBox, drain, fillFluid, leakCheck, oil];
