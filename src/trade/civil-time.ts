// Civil date and time from milliseconds UTC and an offset, and lengths of time as a mechanic says them. No zone names,
// no summer time: the offset comes from whoever saw the clock.

import { cited } from './cited.ts';
import { daysPerWeek, millisecondsPerMinute, minutesPerDay, minutesPerHour } from './definitions.ts';

export type CivilTime = {
  year: number;
  /** 1 to 12 */
  month: number;
  day: number;
  hour: number;
  minute: number;
  weekday: Weekday;
};
const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
export type Weekday = (typeof weekdays)[number];

const gregorian = 'the Gregorian calendar as in ISO 8601-1:2019, 4.2.1';
const days = cited(
  // From 0000-03-01, where a year that ends with its leap day begins, to 1970-01-01, which was a Thursday.
  { toEpoch: 719_468, per4Years: 1461, per100Years: 36_524, per400Years: 146_097, perYear: 365, epochWeekday: 4 },
  'd',
  gregorian,
).value;
// March to July and August to December run 31 30 31 30 31: five months are 153 days.
const months = cited(
  { inARun: 5, daysOfARun: 153, toDecember: 10, fromMarch: 3, backToJanuary: 9 },
  '–',
  gregorian,
).value;
const years = cited({ leapEvery: 4, perCentury: 100, perCycle: 400 }, 'years', gregorian).value;

/**
 * The date and time a clock shows; seconds are dropped.
 * @param atMs milliseconds since 1970-01-01T00:00Z, leap seconds not counted
 * @param zoneMin minutes east of UTC
 * Source: the Gregorian calendar, carried backwards, as in ISO 8601-1:2019, 4.2.1; 1970-01-01 was a Thursday.
 */
export function civilTime(atMs: number, zoneMin: number): CivilTime {
  const minutes = Math.floor(atMs / millisecondsPerMinute.value) + zoneMin;
  const day = Math.floor(minutes / minutesPerDay.value);
  const ofDay = minutes - day * minutesPerDay.value;
  const week = daysPerWeek.value;
  return {
    ...civilDate(day),
    hour: Math.floor(ofDay / minutesPerHour.value),
    minute: ofDay % minutesPerHour.value,
    weekday: weekdays[(((day + days.epochWeekday) % week) + week) % week] as Weekday,
  };
}

export type CivilDate = Pick<CivilTime, 'year' | 'month' | 'day'>;

/** The date that many days after 1970-01-01. */
export function civilDate(dayNumber: number): CivilDate {
  const since = dayNumber + days.toEpoch;
  const cycle = Math.floor(since / days.per400Years);
  const ofCycle = since - cycle * days.per400Years;
  const leapDays =
    Math.floor(ofCycle / (days.per4Years - 1)) -
    Math.floor(ofCycle / days.per100Years) +
    Math.floor(ofCycle / (days.per400Years - 1));
  const yearOfCycle = Math.floor((ofCycle - leapDays) / days.perYear);
  const ofYear = ofCycle - daysBeforeYear(yearOfCycle);
  const monthFromMarch = Math.floor((months.inARun * ofYear + 2) / months.daysOfARun);
  const month =
    monthFromMarch < months.toDecember ? monthFromMarch + months.fromMarch : monthFromMarch - months.backToJanuary;
  return {
    year: cycle * years.perCycle + yearOfCycle + (month <= 2 ? 1 : 0),
    month,
    day: ofYear - daysBeforeMonth(monthFromMarch) + 1,
  };
}

/** Days from 1970-01-01 to a date, negative before it; a day the month lacks runs on into the next. */
export function dayNumber({ year, month, day }: CivilDate): number {
  const fromMarch = month > 2 ? month - months.fromMarch : month + months.backToJanuary;
  const ending = month > 2 ? year : year - 1;
  const cycle = Math.floor(ending / years.perCycle);
  const ofCycle = daysBeforeYear(ending - cycle * years.perCycle) + daysBeforeMonth(fromMarch) + day - 1;
  return cycle * days.per400Years + ofCycle - days.toEpoch;
}

/** Of a cycle of 400 years that begin in March. */
const daysBeforeYear = (yearOfCycle: number): number =>
  days.perYear * yearOfCycle + Math.floor(yearOfCycle / years.leapEvery) - Math.floor(yearOfCycle / years.perCentury);
/** Of a year that begins in March. */
const daysBeforeMonth = (monthFromMarch: number): number =>
  Math.floor((months.daysOfARun * monthFromMarch + 2) / months.inARun);

const two = (value: number): string => String(value).padStart(2, '0');

/** "2026-11-25" */
export function dateText(atMs: number, zoneMin: number): string {
  const { year, month, day } = civilTime(atMs, zoneMin);
  const years = `${year < 0 ? '-' : ''}${String(Math.abs(year)).padStart(4, '0')}`;
  return `${years}-${two(month)}-${two(day)}`;
}
/** "14:20" */
export function timeOfDayText(atMs: number, zoneMin: number): string {
  const { hour, minute } = civilTime(atMs, zoneMin);
  return `${two(hour)}:${two(minute)}`;
}
/** "2026-11-25 14:20" */
export const civilText = (atMs: number, zoneMin: number): string =>
  `${dateText(atMs, zoneMin)} ${timeOfDayText(atMs, zoneMin)}`;
/** "Wednesday 2026-11-25 14:20" */
export const weekdayText = (atMs: number, zoneMin: number): string =>
  `${civilTime(atMs, zoneMin).weekday} ${civilText(atMs, zoneMin)}`;
/** "UTC+01:00" */
export function offsetText(zoneMin: number): string {
  const minutes = Math.abs(zoneMin);
  return `UTC${zoneMin < 0 ? '-' : '+'}${two(Math.floor(minutes / minutesPerHour.value))}:${two(minutes % minutesPerHour.value)}`;
}

/** "6 h 10 min"; rounded up to the minute, so that nobody is told a wait is over before it is. */
export function lengthOfTimeText(milliseconds: number): string {
  // A thousandth of a second is no minute: sums of fractions of hours do not end on whole ones.
  const minutes = Math.max(0, Math.ceil((milliseconds - 1) / millisecondsPerMinute.value));
  const hours = Math.floor(minutes / minutesPerHour.value);
  const rest = minutes % minutesPerHour.value;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
