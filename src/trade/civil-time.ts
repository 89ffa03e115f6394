// Civil date and time from milliseconds UTC and an offset, and lengths of time as a mechanic says them. No zone names,
// no summer time: the offset comes from whoever saw the clock.

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

const minuteMs = 60_000;
const minutesPerDay = 1440;
/** From 0000-03-01, where a year that ends with its leap day begins, to 1970-01-01. */
const daysToEpoch = 719_468;
const daysPer4 = 1461;
const daysPer100 = 36_524;
const daysPer400 = 146_097;

/**
 * The date and time a clock shows; seconds are dropped.
 * @param atMs milliseconds since 1970-01-01T00:00Z, leap seconds not counted
 * @param zoneMin minutes east of UTC
 * Source: the Gregorian calendar, carried backwards, as in ISO 8601-1:2019, 4.2.1; 1970-01-01 was a Thursday.
 */
export function civilTime(atMs: number, zoneMin: number): CivilTime {
  const minutes = Math.floor(atMs / minuteMs) + zoneMin;
  const days = Math.floor(minutes / minutesPerDay);
  const ofDay = minutes - days * minutesPerDay;
  return {
    ...civilDate(days),
    hour: Math.floor(ofDay / 60),
    minute: ofDay % 60,
    weekday: weekdays[(((days + 4) % 7) + 7) % 7] as Weekday,
  };
}

function civilDate(days: number): Pick<CivilTime, 'year' | 'month' | 'day'> {
  const since = days + daysToEpoch;
  const cycle = Math.floor(since / daysPer400);
  const ofCycle = since - cycle * daysPer400;
  const leapDays =
    Math.floor(ofCycle / (daysPer4 - 1)) - Math.floor(ofCycle / daysPer100) + Math.floor(ofCycle / (daysPer400 - 1));
  const yearOfCycle = Math.floor((ofCycle - leapDays) / 365);
  const ofYear = ofCycle - (365 * yearOfCycle + Math.floor(yearOfCycle / 4) - Math.floor(yearOfCycle / 100));
  // March to July and August to December run 31 30 31 30 31: five months are 153 days.
  const monthFromMarch = Math.floor((5 * ofYear + 2) / 153);
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  return {
    year: cycle * 400 + yearOfCycle + (month <= 2 ? 1 : 0),
    month,
    day: ofYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1,
  };
}

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
  return `UTC${zoneMin < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** "6 h 10 min"; rounded up to the minute, so that nobody is told a wait is over before it is. */
export function lengthOfTimeText(milliseconds: number): string {
  // A thousandth of a second is no minute: sums of fractions of hours do not end on whole ones.
  const minutes = Math.max(0, Math.ceil((milliseconds - 1) / minuteMs));
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}
