// How old a part was by the date code or marking on it, as typed, and whether that is past its interval. A marking that
// can be read in several ways gives a span; what it lay on a shelf nobody knows.
import { isRefused } from '../trade/answer.ts';
import { readDate } from '../trade/calendar.ts';
import type { CivilDate } from '../trade/civil-time.ts';
import { madeFrom } from '../trade/date-codes.ts';
import { monthsPerYear } from '../trade/definitions.ts';
import { type Interval, intervalFor } from '../trade/intervals.ts';
import { counted } from './words.ts';

export type Intervals = Readonly<Record<string, Interval>>;

/**
 * "marked 2319: made 2019-06-02 to 2019-06-08, 6 years 5 months old; past its 48 months (as entered)".
 * @param on the day it was judged, "2026-11-25"
 */
export function markingText(part: string, marking: string, on: string, own: Intervals): string {
  const made = madeFrom(marking, on);
  if (isRefused(made)) return `marked ${marking}`;
  const [oldest, youngest] = [monthsOld(made.earliest, on), monthsOld(made.latest, on)];
  const when = made.earliest === made.latest ? made.earliest : `${made.earliest} to ${made.latest}`;
  const age = oldest === youngest ? ageText(oldest) : `${ageText(youngest)} to ${ageText(oldest)}`;
  return [`marked ${marking}: made ${when}, ${age} old`, ...againstInterval(part, youngest, oldest, own)].join('; ');
}

function againstInterval(part: string, youngest: number, oldest: number, own: Intervals): string[] {
  const found = intervalFor(part, own);
  if (isRefused(found) || found.interval.months === undefined) return [];
  const { months } = found.interval;
  const said = youngest >= months ? 'past' : oldest >= months ? 'perhaps past' : 'within';
  return [`${said} its ${counted(months, 'month')} (${found.source})`];
}

function monthsOld(made: string, on: string): number {
  const [from, to] = [readDate(made), readDate(on)];
  if (isRefused(from) || isRefused(to)) return 0;
  return Math.max(0, wholeMonths(from, to));
}
const wholeMonths = (from: CivilDate, to: CivilDate): number =>
  (to.year - from.year) * monthsPerYear.value + to.month - from.month - (to.day < from.day ? 1 : 0);

function ageText(months: number): string {
  const [years, rest] = [Math.floor(months / monthsPerYear.value), months % monthsPerYear.value];
  const parts = [...(years > 0 ? [counted(years, 'year')] : []), ...(rest > 0 ? [counted(rest, 'month')] : [])];
  return parts.length > 0 ? parts.join(' ') : 'less than a month';
}
