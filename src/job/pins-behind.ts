// Pins, locks and bars that are in behind what goes back: shut in, they are reached only by taking it off again. Plugs, rags
// and masks hold what they lie in open, and are told as that.
import { every, type Ledger, stateOf } from './ledger.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { edgesOf, gatedBy } from './order.ts';
import { areaOf, named, type Subject } from './subjects.ts';

const sorts: ReadonlySet<string> = new Set(['pin', 'lock', 'bar']);

/** Where one is put at a hole, it sits in the area of that. */
const placesOf = (at: Subject): Subject[] => {
  const hole = named('hole', at);
  return hole === undefined ? [at] : [at, `area:${areaOf(hole)}`];
};

/** By the names of what is in behind a part; what goes on over something that stands open is told that instead. */
export const pinsBehind = oncePerLedger((ledger, part: string): readonly string[] => {
  const held = stateOf(ledger, 'part', part)?.declared?.heldBy ?? [];
  const areas = [...new Set(held.map(areaOf))];
  if (areas.some((area) => gatedBy(ledger, area))) return [];
  const fronts: Subject[] = [`part:${part}`, ...areas.map((area): Subject => `area:${area}`)];
  const behind = behindAll(ledger, fronts);
  return [...every(ledger, 'temporary')]
    .filter((t) => t.in && sorts.has(t.sort) && t.at !== undefined && placesOf(t.at).some((at) => behind.has(at)))
    .map((t) => t.temporary);
});
function behindAll(ledger: Ledger, fronts: readonly Subject[]): ReadonlySet<Subject> {
  const seen = new Set(fronts);
  // What is found is looked behind as well.
  for (const front of seen) for (const edge of edgesOf(ledger)) if (edge.front === front) seen.add(edge.behind);
  return new Set([...seen].filter((one) => !fronts.includes(one)));
}
