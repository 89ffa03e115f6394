// The verb that calls a whole pass of an area complete (O3).
import * as z from 'zod';
import { holesOf, isTouched, laterOf } from '../closed.ts';
import type { Entry } from '../entry.ts';
import { dueNow, laterWaitsFor } from '../finished-later.ts';
import { no } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { oncePerLedger } from '../once-per-ledger.ts';
import { dueIn, passesOf } from '../passes.ts';
import { type Hole, nameSchema, subjectText } from '../subjects.ts';
import { type Guard, type Standing, verb } from '../verb.ts';
import { tightenEntries } from './tighten.ts';
import { tightenGuards } from './tighten-guards.ts';

type PassSaid = { area: string; pass?: string; tool?: string };
const passOf = (s: Standing, said: PassSaid): string =>
  said.pass ?? passesOf(s.ledger, said.area).find((pass) => dueIn(s.ledger, said.area, pass).length > 0) ?? 'final';
/** What is due; where some of it has to wait with its final, the rest, and where all has, none is left out. */
const each = (s: Standing, said: PassSaid): readonly Hole[] => eachOnce(s.ledger, `${said.area}/${passOf(s, said)}`);
const eachOnce = oncePerLedger((ledger, areaAndPass): readonly Hole[] => {
  const [area = '', pass = ''] = areaAndPass.split('/');
  const due = dueIn(ledger, area, pass);
  const now = dueNow(ledger, due, pass);
  return now.length > 0 ? now : due;
});

/** O3: one call, one entry a hole; what stands against any of its holes stands against the pass. */
const passComplete = verb(
  'complete-pass',
  () => z.strictObject({ area: nameSchema, pass: nameSchema.optional(), tool: z.string().max(60).optional() }),
  [
    {
      code: 'nothing-due',
      rule: 'O3',
      kind: 'footing',
      needs: ['area'],
      check: (s, said) =>
        each(s, said).length > 0
          ? null
          : allTight(s, said.area)
            ? no(`every one of ${said.area} is tight already`, 'go on')
            : no(`no hole of ${said.area} is due`, 'put its fasteners back first', [`area:${said.area}`]),
    },
    {
      code: 'final-comes-later',
      rule: 'O1',
      kind: 'order',
      needs: ['area'],
      check(s, said) {
        const [first] = each(s, said);
        const why =
          first === undefined || passOf(s, said) !== passesOf(s.ledger, said.area).at(-1)
            ? null
            : laterOf(s.ledger, first);
        // On its wheels is asked of each hole below.
        const waits = why === 'on-wheels' || first === undefined ? null : laterWaitsFor(s.ledger, first);
        return why && waits ? no(`${subjectText(`hole:${first}`)}: ${waits}`, 'that first', [`hole:${first}`]) : null;
      },
    },
    ...tightenGuards.map(
      (guard): Guard<PassSaid> => ({
        ...guard,
        needs: ['area'],
        check(s, said) {
          const pass = passOf(s, said);
          for (const hole of each(s, said)) {
            const stop = guard.check(s, { hole, pass });
            if (stop) return { ...stop, because: `${subjectText(`hole:${hole}`)}: ${stop.because}` };
          }
          return null;
        },
      }),
    ),
  ],
  (s, said) => {
    const pass = passOf(s, said);
    return each(s, said).flatMap((hole) => tightenEntries(s, { hole, pass, tool: said.tool }).map(inTurn));
  },
);
function allTight(s: Standing, area: string): boolean {
  const a = stateOf(s.ledger, 'area', area);
  const touched = a ? holesOf(s.ledger, a).filter((h) => isTouched(h) && !h.called.leftEmpty) : [];
  return touched.length > 0 && touched.every((h) => h.called.occupant?.level === 'tight');
}
const inTurn = (entry: Entry): Entry => {
  if (entry.kind !== 'fastener-tightened') return entry;
  const { outOfOrder: _, ...rest } = entry;
  return rest;
};

export const passVerbs = [passComplete];
