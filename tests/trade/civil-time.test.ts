// Civil time, held against the platform's own calendar (ECMA-262, 21.4.1, an implementation not ours), against dates
// of the calendar's reform (papal bull Inter gravissimas, 1582: the day after 4 October was Friday 15 October), and
// against the leap years it names: 1600 and 2000 are, 1700 1800 1900 are not.
import { expect, it } from 'vitest';
import {
  civilDate,
  civilText,
  dateText,
  dayNumber,
  lengthOfTimeText,
  offsetText,
  timeOfDayText,
  weekdayText,
} from '../../src/trade/civil-time.ts';

const dayMs = 86_400_000;

const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

it('shows every day from 1582 to 2401 as the platform does', () => {
  const wrong: string[] = [];
  let seen = 0;
  for (let at = Date.UTC(1582, 9, 15); at <= Date.UTC(2401, 0, 1); at += dayMs) {
    const platform = new Date(at);
    const expected = `${weekdays[platform.getUTCDay()]} ${platform.toISOString().slice(0, 10)} 00:00`;
    const shown = weekdayText(at, 0);
    if (shown !== expected) wrong.push(`${shown}, not ${expected}`);
    seen++;
  }
  expect(wrong).toEqual([]);
  expect(seen).toBeGreaterThan(298_000);
});

it('counts the days from 1970 to a date as the platform does, and back', () => {
  for (let day = -200_000; day < 200_000; day += 61) {
    const platform = new Date(day * dayMs);
    const date = civilDate(day);
    expect(date).toEqual({
      year: platform.getUTCFullYear(),
      month: platform.getUTCMonth() + 1,
      day: platform.getUTCDate(),
    });
    expect(dayNumber(date)).toBe(day);
  }
  expect(dayNumber({ year: 2023, month: 2, day: 29 })).toBe(dayNumber({ year: 2023, month: 3, day: 1 }));
});

it('knows the first day of the calendar and its leap years', () => {
  expect(weekdayText(Date.UTC(1582, 9, 15), 0)).toBe('Friday 1582-10-15 00:00');
  for (const [year, day] of [
    [1600, '02-29'],
    [1700, '03-01'],
    [1800, '03-01'],
    [1900, '03-01'],
    [2000, '02-29'],
    [2100, '03-01'],
  ] as const) {
    expect(dateText(Date.UTC(year, 1, 28) + dayMs, 0)).toBe(`${year}-${day}`);
  }
});

it('shows the minute that has begun, before 1970 too', () => {
  expect(civilText(59_999, 0)).toBe('1970-01-01 00:00');
  expect(civilText(-1, 0)).toBe('1969-12-31 23:59');
});

it('adds the offset, over midnight and over the year', () => {
  const at = Date.UTC(2026, 11, 31, 23, 30);
  expect(weekdayText(at, 60)).toBe('Friday 2027-01-01 00:30');
  expect(weekdayText(at, -570)).toBe('Thursday 2026-12-31 14:00');
  expect(timeOfDayText(at, 345)).toBe('05:15');
});

it('writes an offset with its sign', () => {
  expect(offsetText(60)).toBe('UTC+01:00');
  expect(offsetText(-570)).toBe('UTC-09:30');
  expect(offsetText(0)).toBe('UTC+00:00');
});

it('says a length of time in hours and minutes, never too short', () => {
  expect(lengthOfTimeText(6 * 3_600_000 + 10 * 60_000)).toBe('6 h 10 min');
  expect(lengthOfTimeText(6 * 3_600_000 + 9 * 60_000 + 2)).toBe('6 h 10 min');
  expect(lengthOfTimeText(24 * 3_600_000)).toBe('24 h');
  expect(lengthOfTimeText(59_000)).toBe('1 min');
  expect(lengthOfTimeText(0)).toBe('0 min');
  expect(lengthOfTimeText(-5)).toBe('0 min');
});
