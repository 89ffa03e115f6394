// Dates as they are counted and written on parts: read, printed, months added, weeks numbered. Built on civil-time.ts; no
// hours, no zones.
import { type Answer, refused } from './answer.ts';
import { cited } from './cited.ts';
import { type CivilDate, civilDate, dayNumber } from './civil-time.ts';
import { daysPerWeek, monthsPerYear } from './definitions.ts';

const years = cited({ from: 1950, to: 2150 }, 'years', 'chosen here, to catch slips of the keys').value;
/** Day 0, 1970-01-01, was a Thursday; from Monday it is the fourth of its week. */
const epoch = cited({ fromMonday: 3, fromSunday: 4 }, 'd', 'ISO 8601-1:2019').value;
const january = 1;
const fourth = cited(
  4,
  'January',
  'ISO 8601-1:2019: the first week has the first Thursday, so the 4th of January',
).value;

/** "2026-11-25". Refused: not in that form, or no such day between 1950 and 2150. */
export function readDate(text: string): Answer<CivilDate> {
  const parts = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text.trim());
  if (!parts) return refused(`"${text.trim()}" is no date: 2026-11-25`);
  return soundDate({ year: Number(parts[1]), month: Number(parts[2]), day: Number(parts[3]) });
}

/** The date, if there is such a day. */
export function soundDate(date: CivilDate): Answer<CivilDate> {
  const same = civilDate(dayNumber(date));
  const isDay = same.year === date.year && same.month === date.month && same.day === date.day;
  return isDay && date.year >= years.from && date.year <= years.to ? date : refused(`there is no ${dateOf(date)}`);
}

const two = (value: number): string => String(value).padStart(2, '0');
/** "2026-11-25" */
export const dateOf = ({ year, month, day }: CivilDate): string =>
  `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;

/** So many months later; a day the month lacks becomes its last. */
export function addMonths({ year, month, day }: CivilDate, months: number): CivilDate {
  const at = year * monthsPerYear.value + (month - 1) + months;
  const first = { year: Math.floor(at / monthsPerYear.value), month: (at % monthsPerYear.value) + 1, day: 1 };
  return { ...first, day: Math.min(day, lastOfMonth(first).day) };
}
export const addDays = (date: CivilDate, days: number): CivilDate => civilDate(dayNumber(date) + days);

export const lastOfMonth = ({ year, month }: CivilDate): CivilDate =>
  civilDate(
    dayNumber(
      month === monthsPerYear.value ? { year: year + 1, month: january, day: 1 } : { year, month: month + 1, day: 1 },
    ) - 1,
  );

const isBefore = (one: CivilDate, other: CivilDate): boolean => dayNumber(one) < dayNumber(other);
export const earlier = (one: CivilDate, other: CivilDate): CivilDate => (isBefore(other, one) ? other : one);
export const later = (one: CivilDate, other: CivilDate): CivilDate => (isBefore(other, one) ? one : other);

/**
 * Monday of a week as ISO 8601 counts them.
 * @returns refused where the year has no such week
 * Source: ISO 8601-1:2019: weeks begin on Monday, and the first is the one with the year's first Thursday.
 */
export function mondayOfIsoWeek(year: number, week: number): Answer<CivilDate> {
  const first = mondayOfWeekOne(year);
  const days = first + (week - 1) * daysPerWeek.value;
  if (week < 1 || !Number.isInteger(week) || days >= mondayOfWeekOne(year + 1))
    return refused(`${year} has no week ${week}`);
  return civilDate(days);
}
const mondayOfWeekOne = (year: number): number => {
  const day = dayNumber({ year, month: january, day: fourth });
  return day - weekday(day, epoch.fromMonday);
};

/**
 * Sunday of a week as they are counted on tyres: week 01 is the first full one of the year.
 * @returns refused where the year has no such week
 * Source: 49 CFR 574.5, as told in vehicle handbooks: "01" is the first full week of the calendar year.
 */
export function sundayOfFullWeek(year: number, week: number): Answer<CivilDate> {
  const newYear = dayNumber({ year, month: january, day: 1 });
  const toSunday = (daysPerWeek.value - weekday(newYear, epoch.fromSunday)) % daysPerWeek.value;
  const days = newYear + toSunday + (week - 1) * daysPerWeek.value;
  if (week < 1 || !Number.isInteger(week) || civilDate(days).year !== year)
    return refused(`${year} has no week ${week}`);
  return civilDate(days);
}

/** 0 on the first day of the week; `ofEpoch` is which day of it 1970-01-01 was. */
const weekday = (days: number, ofEpoch: number): number =>
  (((days + ofEpoch) % daysPerWeek.value) + daysPerWeek.value) % daysPerWeek.value;
