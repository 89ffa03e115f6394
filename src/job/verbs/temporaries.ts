// Verbs on what is put in for the work and must come away, and on masking open works (T1, F6).
import * as z from 'zod';
import { areaStandsOpen } from '../closed.ts';
import { temporaryKinds } from '../entries/declared.ts';
import { holeState, no } from '../guards.ts';
import { snugOrBetter } from '../hole-states.ts';
import { every, stateOf } from '../ledger.ts';
import type { TemporaryState } from '../states.ts';
import { named, nameSchema, subjectSchema, subjectText } from '../subjects.ts';
import { type Standing, verb } from '../verb.ts';

const temporaryState = (s: Standing, name: string) => stateOf(s.ledger, 'temporary', name);
const putIn = verb(
  'put-in',
  () =>
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
    {
      code: 'sort-not-known',
      rule: 'T1',
      kind: 'rule',
      needs: ['temporary', 'sort'],
      check: (s, said) =>
        said.sort || temporaryState(s, said.temporary)
          ? null
          : no(`nobody said what ${said.temporary} is`, `say what it is: ${temporaryKinds.join(', ')}`),
    },
  ],
  (s, said) => {
    const known = temporaryState(s, said.temporary);
    const at = said.at ?? known?.at;
    return [
      {
        kind: 'temporary-put-in',
        temporary: said.temporary,
        sort: (said.sort ?? known?.sort) as NonNullable<typeof said.sort>,
        ...(at && { at }),
      },
    ];
  },
);
const takeOut = verb(
  'take-out',
  () => z.strictObject({ temporary: nameSchema }),
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
        if (wheel) return notSnugIn(s, wheel);
        return t && isLastUnderCar(s, t) ? wheelNotSnug(s) : null;
      },
    },
  ],
  (s, said) => {
    const at = temporaryState(s, said.temporary)?.at;
    return [{ kind: 'temporary-taken-out', temporary: said.temporary, ...(at && { at }) }];
  },
);
const underCar: ReadonlySet<string> = new Set(['stand', 'jack', 'block']);
/** Nobody said where it stands, and nothing else carries the car. */
const isLastUnderCar = (s: Standing, { temporary, sort, at }: TemporaryState): boolean =>
  underCar.has(sort) &&
  at === undefined &&
  ![...every(s.ledger, 'temporary')].some((t) => t.in && t.temporary !== temporary && underCar.has(t.sort));
function wheelNotSnug(s: Standing) {
  for (const a of every(s.ledger, 'area')) {
    const why = a.declared?.role === 'wheel' ? notSnugIn(s, a.area) : null;
    if (why) return why;
  }
  return null;
}
/** T1: nuts of a wheel that are off or not yet snug. */
function notSnugIn(s: Standing, area: string) {
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
  () => z.strictObject({}),
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
  () => z.strictObject({}),
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

export const temporaryVerbs = [putIn, takeOut, mask, unmask];
