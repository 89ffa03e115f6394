// The odometer as it was noted last, beside what was noted first, on arrival.
import { type Reading, standingEntries } from './reading.ts';
import { distanceText } from './words.ts';

type Odometer = { distance: number; unit: 'km' | 'mi' };
export type OdometerBefore = { odometerBefore?: Odometer };

/** Nothing where it was noted once, or the same. */
export function odometerBefore({ ledger }: Reading, last: Odometer): OdometerBefore {
  for (const { entry } of standingEntries(ledger)) {
    if (entry.kind !== 'odometer-noted') continue;
    const { distance, unit } = entry;
    return distance === last.distance && unit === last.unit ? {} : { odometerBefore: { distance, unit } };
  }
  return {};
}

export function odometerText({ odometer, odometerBefore: before }: { odometer?: Odometer } & OdometerBefore): string {
  if (!odometer) return 'not noted';
  const first = before ? `; ${distanceText(before.distance, before.unit)} when noted first` : '';
  return `${distanceText(odometer.distance, odometer.unit)}${first}`;
}
