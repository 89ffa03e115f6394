// P2: which area of a running job a plan may know by another name. It only proposes; the mechanic says it, once, and the
// answer is written with the plan's declarations.
import { wantsOf } from '../job/closed.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { contradictions } from '../job/spec.ts';
import type { AreaState } from '../job/states.ts';
import { areaOf, withinArea } from '../job/subjects.ts';
import { broughtBy } from './brought.ts';
import type { Declaration } from './declared-whole.ts';
import type { Plan } from './plan.ts';
import type { AreaNames } from './renamed.ts';

/** Your "valve cover" = its "cam cover"? The likeliest first. */
export type SamePlace = { area: string; perhaps: readonly string[] };

/** What was said of it on this job before. */
export function knownNames(ledger: Ledger): AreaNames {
  const known = [...every(ledger, 'area')].flatMap(({ area, declared }): [string, string][] =>
    declared?.inPlans !== undefined && declared.inPlans !== area ? [[declared.inPlans, area]] : [],
  );
  return new Map(known);
}

type HoleSaid = Extract<Declaration, { kind: 'hole-declared' }>;

/** Areas made on the spot of which it was never said, and what these services bring that each could be. */
export function samePlaces(plan: Plan, services: readonly string[], ledger: Ledger): SamePlace[] {
  const own = new Set(plan.areas.map((one) => one.area));
  const asked = [...every(ledger, 'area')].filter(
    ({ area, declared, holes }) =>
      !declared?.planned && !declared?.inPlans && !own.has(area) && holes.some((hole) => isCalled(ledger, hole)),
  );
  if (asked.length === 0) return [];
  const names = knownNames(ledger);
  const holes = broughtBy(plan, services).filter((one): one is HoleSaid => one.kind === 'hole-declared');
  const byArea = [...Map.groupBy(holes, (one) => areaOf(one.hole))].filter(
    ([area]) => !names.has(area) && !stateOf(ledger, 'area', area)?.declared,
  );
  return asked.flatMap((one): SamePlace[] => {
    const likely = byArea
      .flatMap(([area, there]) => {
        const odds = oddsOf(ledger, one, there);
        return odds === undefined ? [] : [{ area, odds }];
      })
      .sort((a, b) => a.odds - b.odds);
    return likely.length > 0 ? [{ area: one.area, perhaps: likely.map(({ area }) => area) }] : [];
  });
}

const isCalled = (ledger: Ledger, hole: string): boolean =>
  (stateOf(ledger, 'hole', hole)?.called.levels.length ?? 0) > 0;

/** How much speaks against it: nothing where it can't be, since it has no such hole or most are of another kind. */
function oddsOf(ledger: Ledger, { holes }: AreaState, there: readonly HoleSaid[]): number | undefined {
  const called = holes.filter((hole) => isCalled(ledger, hole));
  let against = 0;
  for (const hole of called) {
    const said = there.find((one) => withinArea(one.hole) === withinArea(hole));
    if (!said) return undefined;
    const state = stateOf(ledger, 'hole', hole);
    const found = state && wantsOf(ledger, state);
    const differs = found && said.wants ? contradictions(found, said.wants) : [];
    if (differs.some((field) => field === 'kind' || field === 'head' || field === 'thread')) against += 1;
  }
  if (2 * against > called.length) return undefined;
  return against + Math.abs(there.length - holes.length) / 1000;
}
