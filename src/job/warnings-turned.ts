// What is said beside a bolt that is loosened or brought up: a lock as its holding tool, and the torque that was to be
// read at its end. It stands in no way.
import type { Entry } from './entry.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { areaOf, type Hole } from './subjects.ts';
import { acceptanceOf, readFarOff } from './tightening.ts';

/** R2: a holding bar is made to hold, as is what the plan puts at the bolt itself; any other pin or lock only keeps a place. */
const locksPlace = (ledger: Ledger, holes: readonly Hole[]): string[] => {
  const at = new Set(holes.flatMap((hole) => [`hole:${hole}`, `area:${areaOf(hole)}`]));
  return [...every(ledger, 'temporary')]
    .filter((t) => t.in && (t.sort === 'lock' || t.sort === 'pin') && !at.has(t.at ?? ''))
    .map((t) => t.temporary);
};

const turnsAShaft = (ledger: Ledger, hole: Hole): boolean =>
  stateOf(ledger, 'hole', hole)?.declared?.sprocketBolt === true ||
  [...every(ledger, 'drive')].some((d) => d.declared?.crankBolt === hole);

/** Loosened or brought up: also one that comes off in the same call without having been slack before. */
function wrenched(ledger: Ledger, entry: Entry): Hole | undefined {
  if (entry.kind === 'fastener-slackened' || entry.kind === 'fastener-tightened') return entry.hole;
  if (entry.kind !== 'fastener-removed') return undefined;
  const level = stateOf(ledger, 'hole', entry.hole)?.called.occupant?.level;
  return level === 'slack' || level === 'on' ? undefined : entry.hole;
}

/** A bolt that turns a shaft is loosened or brought up against what only keeps a place. */
export function heldByALock(ledger: Ledger, entries: readonly Entry[]): string[] {
  const shafts = entries.flatMap((entry) => wrenched(ledger, entry) ?? []).filter((hole) => turnsAShaft(ledger, hole));
  const locks = shafts.length > 0 ? locksPlace(ledger, shafts) : [];
  return locks.length > 0 ? [`${locks.join(' and ')} in: a lock is no holding tool`] : [];
}

/** O4: a method that ends in a torque to be accepted, and nobody said what the wrench showed. */
function unreadAcceptance(entry: Entry): string | undefined {
  if (entry.kind !== 'fastener-tightened' || !entry.last || entry.readNewtonMetres !== undefined) return undefined;
  const wanted = acceptanceOf(entry.method);
  return wanted && `the torque at the end was not said: ${wanted}`;
}

const misread = (entry: Entry): string | undefined =>
  entry.kind === 'fastener-tightened' && entry.last && entry.readNewtonMetres !== undefined
    ? readFarOff(entry.method, entry.readNewtonMetres)
    : undefined;
/** What the wrench showed at the end was not said, or is far from the figure. */
export const torqueNotRead = (entry: Entry): string[] => {
  const words = unreadAcceptance(entry) ?? misread(entry);
  return words === undefined ? [] : [words];
};
