// Verbs that bring a fastener up: tightened by passes, on for now made final, looked at again. What may keep it from being
// tightened stands in tighten-guards.ts.
import * as z from 'zod';
import type { Entry } from '../entry.ts';
import {
  behindOf,
  holeState,
  no,
  noGateBehind,
  nothingOpenBehind,
  occupantOf,
  partIsBack,
  partsMissingOf,
} from '../guards.ts';
import { snugOrBetter } from '../hole-states.ts';
import { methodFor, outOfTurn } from '../passes.ts';
import { type Hole, holeSchema, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';
import { passMeant, type Tighten, tightenGuards, tightenTakes } from './tighten-guards.ts';

export function tightenEntries(s: Standing, said: Tighten): Entry[] {
  const { pass, last, levels } = passMeant(s, said);
  const outOfOrder = outOfTurn(s.ledger, said.hole, pass) ? { outOfOrder: true as const } : {};
  return levels.map((level, i): Entry => {
    const method = said.method ?? methodFor(s.ledger, level);
    return {
      kind: 'fastener-tightened',
      hole: level,
      fastener: occupantOf(s, level)?.fastener as string,
      pass,
      last,
      ...(method && { method }),
      ...(said.tool && { tool: said.tool }),
      ...(said.readNewtonMetres !== undefined && { readNewtonMetres: said.readNewtonMetres }),
      ...(i === 0 && outOfOrder),
    };
  });
}

const tighten = verb('tighten', tightenTakes, tightenGuards, tightenEntries);

type OneHole = { hole: Hole };
/** O1, O2: snug or tight for now was free; to stay it is asked as if it were tightened now. */
const toStay = (guard: Guard<OneHole>, check: Guard<OneHole>['check']): Guard<OneHole> => ({
  ...guard,
  check(s, said) {
    const o = occupantOf(s, said.hole);
    return o && snugOrBetter(o.level) ? check(s, said) : null;
  },
});

const makeFinal = verb(
  'make-final',
  () => z.strictObject({ hole: holeSchema }),
  [
    {
      code: 'not-on-for-now',
      rule: 'L1',
      kind: 'footing',
      needs: ['hole'],
      check: (s, { hole }) =>
        occupantOf(s, hole)?.forNow ? null : no(`${subjectText(`hole:${hole}`)} is not on for now`, 'call it tight'),
    },
    toStay(partIsBack, (s, { hole }) => partsMissingOf(s, hole)),
    toStay(noGateBehind, (s, { hole }) => behindOf(s, hole, true)),
    toStay(nothingOpenBehind, (s, { hole }) => behindOf(s, hole, false)),
  ],
  (s, { hole }) => [{ kind: 'fastener-made-final', hole, fastener: occupantOf(s, hole)?.fastener as string }],
);

const looked = verb(
  'look-again',
  () => z.strictObject({ holes: z.array(holeSchema).min(1).max(500), who: z.string().max(60).optional() }),
  [
    {
      code: 'never-called',
      rule: 'L1',
      kind: 'footing',
      needs: ['holes'],
      check(s, { holes }) {
        const unknown = holes.find((hole) => !holeState(s, hole));
        return unknown ? no(`there is no hole ${subjectText(`hole:${unknown}`)}`, 'name a hole that was called') : null;
      },
    },
    {
      code: 'not-tight-yet',
      rule: 'X1',
      kind: 'gate',
      needs: ['holes'],
      check(s, { holes }) {
        const loose = holes.filter((hole) => {
          const c = holeState(s, hole)?.called;
          return c !== undefined && c.touchedAt > 0 && !c.leftEmpty && c.occupant?.level !== 'tight';
        });
        const [first] = loose;
        return first
          ? no(
              `${subjectText(`hole:${first}`)} is not tight`,
              'tight first',
              loose.map((h) => `hole:${h}`),
            )
          : null;
      },
    },
  ],
  (_s, { holes, who }) => holes.map((hole): Entry => ({ kind: 'looked-again', hole, ...(who && { who }) })),
);

export const tightenVerbs = [tighten, makeFinal, looked];
