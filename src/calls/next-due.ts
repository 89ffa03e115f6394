// When a service is next due, where nobody said: by the workshop's own table, else the plan's, else what is usual. By the
// date and the odometer of the job; a timing belt only by what a maker or the workshop says.
import { stateOf } from '../job/ledger.ts';
import { isRefused } from '../trade/answer.ts';
import { dateText } from '../trade/civil-time.ts';
import { type Interval, intervalFor, nextDue } from '../trade/intervals.ts';
import type { Desk } from './desk.ts';

export type Due = { on?: string; atDistance?: number };

/** P1: of a service that was ordered, its interval as it was written into the job from its plan. */
function plannedInterval({ ledger }: Desk, what: string): Interval | undefined {
  const { months, distanceKm } = stateOf(ledger, 'service', what)?.interval ?? {};
  if (months === undefined && distanceKm === undefined) return undefined;
  return {
    ...(months !== undefined && { months }),
    ...(distanceKm !== undefined && { distance: { distance: distanceKm, unit: 'km' } }),
  };
}

/** Date, distance or both in the unit of the odometer; or why there is none. */
export function dueNext(desk: Desk, what: string): Due | { why: string } {
  const planned = plannedInterval(desk, what);
  const found = intervalFor(what, { ...(planned && { [what]: planned }), ...desk.intervals });
  if (isRefused(found)) return { why: found.refused };
  const odometer = stateOf(desk.ledger, 'vehicle', 'vehicle')?.odometer;
  const { distance, months } = found.interval;
  // A distance without an odometer to begin at says nothing; the date stands without it.
  const interval = { ...(months !== undefined && { months }), ...(distance && odometer && { distance }) };
  if (interval.months === undefined && !interval.distance) return { why: `${what}: the odometer is not noted` };
  const next = nextDue(dateText(desk.now.atMs, desk.now.zoneMin), odometer, interval);
  if (isRefused(next)) return { why: next.refused };
  return { ...(next.date && { on: next.date }), ...(next.odometer && { atDistance: next.odometer.distance }) };
}
