// Days that are proposed where it is asked until when or by when: chosen by number, so that a keypad says them too. A day
// of one's own is typed; behind a 0, which chooses nothing, in figures. By the job's clock.
import { addMonths, dateOf } from '../trade/calendar.ts';
import { civilTime, dateText } from '../trade/civil-time.ts';
import { millisecondsPerMinute, minutesPerDay, monthsPerYear } from '../trade/definitions.ts';
import type { Desk } from './desk.ts';

/** How long a job waits, in days, and after how many years something falls due; common practice, no source. */
const waits = [1, 2, 3, 4, 5, 6, 7, 14, 28];
const years = [1, 2, 3, 4, 5, 6, 8, 10];

/** How a day is answered that is not proposed. */
export const figuresHow = 'by its number, or a date; on a keypad behind a 0';
const behindNought = /^0(?=\d)/;
/** "02031-03-04" is 2031-03-04, and "014.3." the 14th of March. */
export const withoutNought = (text: string): string => text.replace(behindNought, '');

/** "Tuesday 2031-03-04" */
const dayOn = ({ now: { atMs, zoneMin } }: Desk, days: number): string => {
  const at = atMs + days * minutesPerDay.value * millisecondsPerMinute.value;
  return `${civilTime(at, zoneMin).weekday} ${dateText(at, zoneMin)}`;
};
const yearOn = ({ now: { atMs, zoneMin } }: Desk, many: number): string =>
  dateOf(addMonths(civilTime(atMs, zoneMin), many * monthsPerYear.value));

export const daysOn = (desk: Desk): readonly string[] => waits.map((days) => dayOn(desk, days));
export const yearsOn = (desk: Desk): readonly string[] => years.map((many) => yearOn(desk, many));

/** How far off a proposed day is: "tomorrow", "in 2 weeks", "in 5 years". */
export function howFar(desk: Desk, day: string): string | undefined {
  const days = waits.find((one) => dayOn(desk, one) === day);
  const many = years.find((one) => yearOn(desk, one) === day);
  if (days === 1) return 'tomorrow';
  if (days !== undefined) return days < 7 ? `in ${days} days` : days === 7 ? 'in a week' : `in ${days / 7} weeks`;
  return (many && (many === 1 ? 'in a year' : `in ${many} years`)) || undefined;
}
