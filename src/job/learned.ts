// O1: order learned from what was done: what came off while something else was off sits behind it, or may. It is proposed
// and never refuses anything; said with one key it is said, and holds.
import { areaOpenedAt, holesOf, partsOf } from './closed.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { edgesOf } from './order.ts';
import type { AreaState } from './states.ts';
import type { Subject } from './subjects.ts';

/** Line at which an area was opened first; 0 = never. */
function firstOpenedAt(ledger: Ledger, a: AreaState): number {
  const openings = [
    ...holesOf(ledger, a).flatMap((h) => h.called.openings[0] ?? []),
    ...partsOf(ledger, a).flatMap((part) => stateOf(ledger, 'part', part)?.removals[0] ?? []),
  ];
  return openings.length === 0 ? 0 : Math.min(...openings);
}

/** Those opened last first: the way back is the way out turned round. What was never opened comes last, as it stands. */
export function lastOpenedFirst(ledger: Ledger, areas: readonly string[]): string[] {
  const at = new Map(
    areas.map((area) => {
      const a = stateOf(ledger, 'area', area);
      return [area, a ? firstOpenedAt(ledger, a) : 0];
    }),
  );
  return areas.toSorted((one, other) => (at.get(other) ?? 0) - (at.get(one) ?? 0));
}

/** A hole of it was off or slack at that line. */
const stoodOpenAt = (ledger: Ledger, a: AreaState, n: number): boolean =>
  holesOf(ledger, a).some((h) => {
    const before = h.called.levels.filter((one) => one.n < n).at(-1)?.level;
    return before === 'off' || before === 'slack';
  });

/** What was opened last before this area and still stood open then, unless order was said of the two already. */
export function learnedFront(ledger: Ledger, area: string): string | undefined {
  const here = stateOf(ledger, 'area', area);
  const at = here ? firstOpenedAt(ledger, here) : 0;
  if (at === 0 || areaOpenedAt(ledger, area) === 0) return undefined;
  const before = [...every(ledger, 'area')]
    .map((a) => ({ a, first: firstOpenedAt(ledger, a) }))
    .filter(({ a, first }) => first > 0 && first < at && stoodOpenAt(ledger, a, at))
    .sort((one, other) => other.first - one.first);
  const front = before[0]?.a.area;
  return front === undefined || isSaid(ledger, `area:${front}`, `area:${area}`) ? undefined : front;
}

/** Either way round, and through what lies between. */
const isSaid = (ledger: Ledger, one: Subject, other: Subject): boolean =>
  reaches(ledger, one, other) || reaches(ledger, other, one);
function reaches(ledger: Ledger, from: Subject, to: Subject): boolean {
  const edges = Map.groupBy(edgesOf(ledger), (edge) => edge.front);
  const seen = new Set<Subject>();
  const queue = [from];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    if (at === to) return true;
    if (seen.has(at)) continue;
    seen.add(at);
    queue.push(...(edges.get(at) ?? []).map((edge) => edge.behind));
  }
  return false;
}

/** Of the areas that no plan describes. */
export const learnedOrder = (ledger: Ledger): { front: Subject; behind: Subject }[] =>
  [...every(ledger, 'area')].flatMap((a) => {
    const front = a.declared?.planned ? undefined : learnedFront(ledger, a.area);
    return front === undefined ? [] : [{ front: `area:${front}`, behind: `area:${a.area}` }];
  });
