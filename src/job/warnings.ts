// What is said beside a call that is taken: it stands in no way and is no open point. Asked of the entries it writes.
import type { Entry } from './entry.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { besideStep } from './repair-figures.ts';
import type { Hole } from './subjects.ts';
import { acceptanceOf } from './tightening.ts';

/** R2: a holding bar is made to hold; a pin or a lock of cam, crank or flywheel only keeps a place. */
const locksPlace = (ledger: Ledger): string[] =>
  [...every(ledger, 'temporary')]
    .filter((t) => t.in && (t.sort === 'lock' || t.sort === 'pin'))
    .map((t) => t.temporary);

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

export function warningsOf(ledger: Ledger, entries: readonly Entry[]): string[] {
  const holes = entries.flatMap((entry) => wrenched(ledger, entry) ?? []);
  const locks = holes.some((hole) => turnsAShaft(ledger, hole)) ? locksPlace(ledger) : [];
  const unread = entries.flatMap((entry) => unreadAcceptance(entry) ?? []);
  const figures = entries.flatMap((entry) => besideStep(ledger, entry));
  return [
    ...figures,
    ...(locks.length > 0 ? [`${locks.join(' and ')} in: a lock is no holding tool`] : []),
    ...new Set(unread),
  ];
}

/** O4: a method that ends in a torque to be accepted, and nobody said what the wrench showed. */
function unreadAcceptance(entry: Entry): string | undefined {
  if (entry.kind !== 'fastener-tightened' || !entry.last || entry.readNewtonMetres !== undefined) return undefined;
  const wanted = acceptanceOf(entry.method);
  return wanted && `the torque at the end was not said: ${wanted}`;
}
