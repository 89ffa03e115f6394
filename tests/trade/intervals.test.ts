// Intervals, calendar and date codes: properties and refusals.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefused } from '../../src/trade/answer.ts';
import { addMonths, dateOf, mondayOfIsoWeek, readDate, sundayOfFullWeek } from '../../src/trade/calendar.ts';
import { civilDate, dayNumber } from '../../src/trade/civil-time.ts';
import { madeFrom } from '../../src/trade/date-codes.ts';
import { dueNow, intervalFor, months, nextDue, usualIntervals } from '../../src/trade/intervals.ts';
import { sure } from '../published/trade.ts';

const said = (answer: unknown): string => (isRefused(answer) ? answer.refused : `taken: ${JSON.stringify(answer)}`);
const today = '2026-11-25';
const miles = (distance: number) => ({ distance, unit: 'mi' }) as const;
const kilometres = (distance: number) => ({ distance, unit: 'km' }) as const;

describe('the calendar', () => {
  const day = fc.integer({ min: -7000, max: 60_000 }).map(civilDate);
  it('prints and reads a date alike', () => {
    fc.assert(
      fc.property(day, (date) => {
        expect(readDate(dateOf(date))).toEqual(date);
      }),
    );
  });
  it('adds months in one step as in many, but for days a month lacks', () => {
    fc.assert(
      fc.property(day, fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }), (date, a, b) => {
        const first = { ...date, day: Math.min(date.day, 28) };
        expect(addMonths(addMonths(first, a), b)).toEqual(addMonths(first, a + b));
        expect(addMonths(date, a).day).toBeLessThanOrEqual(date.day);
      }),
    );
  });
  it('numbers weeks so that each day has one, Thursday deciding', () => {
    for (let year = 1990; year <= 2040; year++) {
      const weeks = Array.from({ length: 54 }, (_, week) => mondayOfIsoWeek(year, week)).filter(
        (monday) => !isRefused(monday),
      );
      expect([52, 53]).toContain(weeks.length);
      for (const monday of weeks) {
        const days = dayNumber(sure(monday));
        expect(new Date(days * 86_400_000).getUTCDay()).toBe(1);
        expect(civilDate(days + 3).year).toBe(year);
      }
      const sunday = sure(sundayOfFullWeek(year, 1));
      expect(new Date(dayNumber(sunday) * 86_400_000).getUTCDay()).toBe(0);
      expect(sunday.month).toBe(1);
      expect(sunday.day).toBeLessThanOrEqual(7);
    }
  });
});

describe('next due', () => {
  it('is the date, the distance, or whichever comes first', () => {
    expect(nextDue('2026-01-31', miles(61_000), { months: 1, distance: miles(60_000) })).toEqual({
      date: '2026-02-28',
      odometer: miles(121_000),
      text: 'by 2026-02-28 or at 121000 mi, whichever first',
    });
    expect(sure(nextDue(today, undefined, { months: months(6) })).text).toBe('by 2032-11-25');
    expect(sure(nextDue(today, kilometres(100_000), { distance: miles(60_000) })).text).toBe('at 196560 km');
  });
  it('has come when either has', () => {
    const due = sure(nextDue('2026-01-31', miles(61_000), { months: 12, distance: miles(60_000) }));
    const by = (date: string, distance: number) => sure(dueNow(due, date, miles(distance))).by;
    expect(by('2026-06-01', 100_000)).toBeNull();
    expect(by('2027-01-31', 100_000)).toBe('date');
    expect(by('2026-06-01', 121_000)).toBe('distance');
    expect(by('2028-01-01', 200_000)).toBe('both');
    expect(sure(dueNow(due, '2027-01-30', kilometres(194_000)))).toEqual({ by: null, daysLeft: 1, left: miles(453) });
    expect(sure(dueNow(due, '2027-01-30'))).toEqual({ by: null, daysLeft: 1 });
  });
  it('in another unit is never later than in its own', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300_000 }), fc.integer({ min: 1000, max: 200_000 }), (at, interval) => {
        const there = sure(nextDue(today, kilometres(at), { distance: miles(interval) })).odometer?.distance as number;
        expect(there).toBeLessThanOrEqual(at + interval * 1.609344 + 1e-6);
        expect(there).toBeGreaterThan(at + interval * 1.609344 - 1.000001);
      }),
    );
  });
  it('of a timing belt is the maker’s alone', () => {
    for (const belt of ['timing belt', 'Timing Belt ', 'cam belt', 'toothed belt']) {
      expect(said(intervalFor(belt))).toMatch(/the maker's distance and years/);
    }
    expect(sure(intervalFor('Timing belt', { 'timing belt': { months: 72 } }))).toMatchObject({
      interval: { months: 72 },
      source: 'as entered',
    });
  });
  it('by a usual interval says that no one printed it, and one’s own row replaces it', () => {
    for (const { service } of usualIntervals.value)
      expect(sure(intervalFor(service)).source).toBe('common practice, no source');
    expect(usualIntervals.value.some(({ service }) => /belt/.test(service))).toBe(false);
    expect(sure(intervalFor('dampers', { Dampers: { distance: kilometres(80_000) } })).interval).toEqual({
      distance: kilometres(80_000),
    });
  });
});

describe('a date on a part', () => {
  const as = (marking: string) => sure(madeFrom(marking, today)).readings.map((reading) => reading.as);
  it.each([
    ['2019-06-14', ['date'], '2019-06-14'],
    ['14.06.2019', ['day, month, year'], '2019-06-14'],
    ['06.07.2019', ['day, month, year', 'month, day, year'], '2019-06-07'],
    ['06/2019', ['month, year', 'week, year'], '2019-02-04'],
    ['23/2019', ['week, year'], '2019-06-03'],
    ['06/19', ['month, year', 'week, year', 'year, week'], '2006-05-08'],
    ['KW 23/19', ['week, year'], '2019-06-03'],
    ['2319', ['week, year, as on tyres', 'year, week'], '2019-06-09'],
    ['DOT 4714', ['week, year, as on tyres'], '2014-11-23'],
    ['0301', ['week, year, as on tyres', 'year, week', 'month, year', 'year, month'], '2001-01-21'],
    ['0408', ['week, year, as on tyres', 'year, week', 'month, year', 'year, month'], '2004-02-16'],
    ['0199', ['week, year, as on tyres', 'month, year'], '1999-01-01'],
  ])('%s can be read as %j, no earlier than %s', (marking, readings, earliest) => {
    expect(as(marking)).toEqual(readings);
    expect(sure(madeFrom(marking, today)).earliest).toBe(earliest);
  });

  it('is never read as one that is still to come, and earliest is never after latest', () => {
    const marking = fc.oneof(
      fc.integer({ min: 0, max: 9999 }).map((n) => String(n).padStart(4, '0')),
      fc
        .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 99 }))
        .map(([a, b]) => `${String(a).padStart(2, '0')}/${String(b).padStart(2, '0')}`),
      fc.string(),
    );
    fc.assert(
      fc.property(marking, (text) => {
        const made = madeFrom(text, today);
        if (isRefused(made)) return;
        expect(made.earliest <= made.latest && made.latest <= today).toBe(true);
        for (const { from, to } of made.readings)
          expect(from <= to && from <= today && from >= made.earliest).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('nonsense', () => {
  it.each([
    [() => readDate('2026-02-30'), /there is no 2026-02-30/],
    [() => readDate('25.11.2026'), /is no date/],
    [() => readDate('0026-11-25'), /there is no 0026-11-25/],
    [() => mondayOfIsoWeek(2014, 53), /2014 has no week 53/],
    [() => sundayOfFullWeek(2001, 0), /2001 has no week 0/],
    [() => nextDue(today, undefined, {}), /months, a distance, or both/],
    [() => nextDue(today, undefined, { distance: miles(10) }), /wants the odometer/],
    [() => nextDue(today, miles(-1), { distance: miles(10) }), /a distance of -1.609 km/],
    [() => nextDue(today, miles(1), { distance: miles(0) }), /no distance/],
    [() => nextDue(today, undefined, { months: 0 }), /an interval of 0 months/],
    [() => nextDue(today, undefined, { months: 1.5 }), /1.5 months are no interval/],
    [() => nextDue('soon', undefined, { months: 1 }), /is no date/],
    [() => dueNow({ date: today }, 'now'), /is no date/],
    [() => intervalFor('wipers'), /no interval known/],
    [() => madeFrom('231', today), /do not tell the decade/],
    [() => madeFrom('belt', today), /is no date on a part/],
    [() => madeFrom('9999', today), /is no date up to 2026-11-25/],
    [() => madeFrom('2026-12-01', today), /is no date up to/],
    [() => madeFrom('2319', 'today'), /is no date/],
  ])('is refused: %s', (ask, line) => expect(said(ask())).toMatch(line));
});
