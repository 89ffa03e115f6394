// What of an assembly goes on before another part of it: parts said to sit behind that part or where it is held, one behind
// the other, and off. It refuses nothing: a part held by fasteners is free to be set on (O1), and its fasteners are guarded.
import { type Ledger, stateOf } from './ledger.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { edgesOf } from './order.ts';
import { areaOf, named, type Subject } from './subjects.ts';

const isOff = (ledger: Ledger, part: string): boolean => stateOf(ledger, 'part', part)?.off === true;

/** The one farthest behind first: it goes on first. */
export const partsOffBehind = oncePerLedger((ledger, part: string): readonly string[] => {
  const held = stateOf(ledger, 'part', part)?.declared?.heldBy ?? [];
  const seen = new Set<Subject>([`part:${part}`, ...held.map((hole): Subject => `area:${areaOf(hole)}`)]);
  const found: string[] = [];
  // What is found is looked behind as well, in the order of finding.
  for (const front of seen) {
    for (const edge of edgesOf(ledger)) {
      const behind = edge.front === front ? named('part', edge.behind) : undefined;
      if (behind === undefined || seen.has(edge.behind)) continue;
      seen.add(edge.behind);
      if (isOff(ledger, behind)) found.unshift(behind);
    }
  }
  return found;
});
/** The areas that a part sits in front of or behind, through the parts between. */
export const areasThroughParts = oncePerLedger((ledger, part: string): readonly string[] => {
  const seen = new Set<Subject>([`part:${part}`]);
  const areas = new Set<string>();
  for (const behind of seen) {
    for (const edge of edgesOf(ledger)) {
      if (edge.behind !== behind) continue;
      const area = named('area', edge.front);
      if (area !== undefined) areas.add(area);
      else if (named('part', edge.front) !== undefined) seen.add(edge.front);
    }
  }
  return [...areas];
});
