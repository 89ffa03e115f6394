// When a service is next due, where nobody said: by the workshop's own table, else the plan's, else what is usual. By the
// date and the odometer of the job; a timing belt only by what a maker or the workshop says.
import { stateOf } from '../job/ledger.ts';
import type { Said } from '../job/said.ts';
import { isRefused } from '../trade/answer.ts';
import { dateText } from '../trade/civil-time.ts';
import { type Interval, intervalFor, nextDue } from '../trade/intervals.ts';
import type { Desk } from './desk.ts';
import type { Once } from './row.ts';
import { dateOfWords } from './slots.ts';

/** Read into what falls due, since it is no day or no distance: "coolant on 2030-02-31", "coolant at soon". */
export function dueMisread(what: string): string | undefined {
  const [, sort, said = ''] = /\s(on|at)\s+(\S+)$/.exec(what) ?? [];
  if (sort === 'at') return `"${said}" is no distance`;
  if (sort === undefined || !/\d/.test(said)) return undefined;
  const day = dateOfWords(said);
  return isRefused(day) ? day.refused : undefined;
}

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

/** "by 2029-11-27 or at 176336 km": what is written where nothing but what falls due is said. */
export function dueWords(desk: Desk, what: string): string | undefined {
  const due = dueNext(desk, what);
  if ('why' in due) return undefined;
  const unit = stateOf(desk.ledger, 'vehicle', 'vehicle')?.odometer?.unit ?? 'km';
  const said = [due.on && `by ${due.on}`, due.atDistance && `at ${due.atDistance} ${unit}`];
  return said.filter(Boolean).join(' or ');
}

const wholeDate = /^\d{4}-\d\d-\d\d$/;
/** X4: a distance is said as it will stand on the clock, and a date is one to come: what is past would be read as overdue. */
export function askedOnPastDue({ ledger, now }: Desk, { what, on, atDistance }: Said): Once | undefined {
  const odometer = stateOf(ledger, 'vehicle', 'vehicle')?.odometer;
  const again = `calls ${what} due so`;
  if (odometer && typeof atDistance === 'number' && atDistance <= odometer.distance) {
    const { distance, unit } = odometer;
    return {
      because: `${distance} ${unit} stand on the clock, and ${atDistance} ${unit} are passed`,
      instead: `so far from now is at ${distance + atDistance} ${unit}`,
      again,
    };
  }
  const today = dateText(now.atMs, now.zoneMin);
  if (typeof on !== 'string' || !wholeDate.test(on) || on > today) return undefined;
  return {
    because: `${on} is ${on === today ? 'today' : 'past'}`,
    instead: 'the day is said by which it falls due',
    again,
  };
}
/** What was said of it before goes: pressed on the wrong row, one service would lose its date to another. */
export function askedOnDueAnew({ ledger }: Desk, { what }: Said): Once | undefined {
  const before = (stateOf(ledger, 'vehicle', 'vehicle')?.due ?? []).find((one) => one.what === what);
  if (!before) return undefined;
  const how = [before.on && `by ${before.on}`, before.atDistance && `at ${before.atDistance}`]
    .filter(Boolean)
    .join(' or ');
  return { because: `${what} was said to fall due ${how || 'already'}`, instead: 'that stands', again: 'says it anew' };
}
