// Intervals and date codes: calendars, distances, and dates as they are moulded and stamped on parts.
import { unit as oracle } from 'mathjs';
import { addMonths, dateOf, mondayOfIsoWeek, sundayOfFullWeek } from '../../src/trade/calendar.ts';
import { civilDate, dayNumber } from '../../src/trade/civil-time.ts';
import { madeFrom } from '../../src/trade/date-codes.ts';
import { dueNow, intervalFor, nextDue } from '../../src/trade/intervals.ts';
import { from } from './published.ts';
import { sure } from './trade.ts';

const topic = 'intervals';
const monday = (year: number, week: number) => dateOf(sure(mondayOfIsoWeek(year, week)));
const date = (text: string) => {
  const [year, month, day] = text.split('-').map(Number) as [number, number, number];
  return { year, month, day };
};
const reading = (marking: string) => sure(madeFrom(marking, '2026-11-25')).readings[0];

export const intervals = [
  ...from(topic, 'ISO 8601: the first week has the first Thursday; examples as reprinted', 'seen')(
    mondayOfIsoWeek,
    'Monday of the week',
    'exact',
    [
      ['week 1 of 2013', monday(2013, 1), '2012-12-31'],
      ['week 1 of 2014', monday(2014, 1), '2013-12-30'],
      ['week 1 of 2015', monday(2015, 1), '2014-12-29'],
      ['week 1 of 1997', monday(1997, 1), '1996-12-30'],
      ['week 1 of 2020', monday(2020, 1), '2019-12-30'],
      ['week 1 of 2009', monday(2009, 1), '2008-12-29'],
      ['week 52 of 2006 ends on 2006-12-31', monday(2006, 52), '2006-12-25'],
      ['2015 has a week 53', monday(2015, 53), '2015-12-28'],
    ],
  ),
  ...from(topic, '49 CFR 574.5, as told in a vehicle handbook', 'seen')(
    sundayOfFullWeek,
    '"01" is the first full week of the calendar year',
    'exact',
    [
      ['week 3 of 2001', dateOf(sure(sundayOfFullWeek(2001, 3))), '2001-01-21'],
      ['week 1 of 2001', dateOf(sure(sundayOfFullWeek(2001, 1))), '2001-01-07'],
    ],
  ),
  ...from(topic, '49 CFR 574.5, as told in a vehicle handbook', 'seen')(
    madeFrom,
    'four figures: week, then year',
    'exact',
    [
      [
        '0301 is the 3rd week of 2001',
        reading('0301'),
        { as: 'week, year, as on tyres', from: '2001-01-21', to: '2001-01-27' },
      ],
      ['0712 is in February 2012', reading('0712')?.from.slice(0, 7), '2012-02'],
      ['4714 is in November 2014', reading('DOT 4714')?.from.slice(0, 7), '2014-11'],
    ],
  ),
  ...from(topic, 'ISO 8601: the first week has the first Thursday; examples as reprinted', 'seen')(
    madeFrom,
    'week and year written out',
    'exact',
    [
      ['1995-W03', reading('1995-W03'), { as: 'week, year', from: '1995-01-16', to: '1995-01-22' }],
      ['W01 2020', reading('W01 2020')?.from, '2019-12-30'],
    ],
  ),
  ...from(topic, 'the platform’s own calendar (ECMA-262, another implementation)', 'derived')(
    dayNumber,
    'days since 1970-01-01',
    'exact',
    [
      ['2026-11-25', dayNumber(date('2026-11-25')), Date.UTC(2026, 10, 25) / 86_400_000],
      ['2000-02-29', dayNumber(date('2000-02-29')), Date.UTC(2000, 1, 29) / 86_400_000],
      ['1969-12-31', dayNumber(date('1969-12-31')), -1],
    ],
  ),
  ...from(topic, 'the platform’s own calendar (ECMA-262, another implementation)', 'derived')(
    civilDate,
    'date of a day',
    'exact',
    [
      ['day 20 000', dateOf(civilDate(20_000)), new Date(20_000 * 86_400_000).toISOString().slice(0, 10)],
      ['day -20 000', dateOf(civilDate(-20_000)), new Date(-20_000 * 86_400_000).toISOString().slice(0, 10)],
    ],
  ),
  ...from(topic, 'common practice, no source', 'practice')(
    addMonths,
    'a day the month lacks becomes its last',
    'exact',
    [
      ['31 January and one month', dateOf(addMonths(date('2026-01-31'), 1)), '2026-02-28'],
      ['29 February and a year', dateOf(addMonths(date('2024-02-29'), 12)), '2025-02-28'],
      ['November and 36 months', dateOf(addMonths(date('2026-11-25'), 36)), '2029-11-25'],
    ],
  ),
  ...from(topic, 'mathjs 15, units (another implementation)', 'derived')(
    nextDue,
    'miles on an odometer in kilometres, rounded down',
    'exact',
    [
      [
        '100 000 km and 60 000 mi',
        sure(nextDue('2026-11-25', { distance: 100_000, unit: 'km' }, { distance: { distance: 60_000, unit: 'mi' } }))
          .odometer?.distance,
        Math.floor(100_000 + oracle('60000 mile').toNumber('km')),
      ],
      [
        '50 000 mi and 90 000 km',
        sure(nextDue('2026-11-25', { distance: 50_000, unit: 'mi' }, { distance: { distance: 90_000, unit: 'km' } }))
          .odometer?.distance,
        Math.floor(50_000 + oracle('90000 km').toNumber('mile')),
      ],
    ],
  ),
  ...from(topic, 'common practice, no source', 'practice')(dueNow, 'whichever comes first', 'exact', [
    [
      'the date',
      sure(
        dueNow({ date: '2026-11-25', odometer: { distance: 90_000, unit: 'mi' } }, '2026-11-25', {
          distance: 80_000,
          unit: 'mi',
        }),
      ).by,
      'date',
    ],
    [
      'the distance',
      sure(
        dueNow({ date: '2027-11-25', odometer: { distance: 90_000, unit: 'mi' } }, '2026-11-25', {
          distance: 90_000,
          unit: 'mi',
        }),
      ).by,
      'distance',
    ],
    [
      'neither',
      sure(
        dueNow({ date: '2027-11-25', odometer: { distance: 90_000, unit: 'mi' } }, '2026-11-25', {
          distance: 89_999,
          unit: 'mi',
        }),
      ).by,
      null,
    ],
  ]),
  ...from(topic, 'common practice, no source', 'practice')(intervalFor, 'usual intervals', 'exact', [
    [
      'plain coolant',
      sure(intervalFor('coolant, plain')).interval,
      { months: 36, distance: { distance: 36_000, unit: 'mi' } },
    ],
    [
      'long-life coolant, cautious',
      sure(intervalFor('coolant, long-life')).interval,
      { months: 96, distance: { distance: 80_000, unit: 'mi' } },
    ],
    ['dampers', sure(intervalFor('dampers')).interval, { distance: { distance: 60_000, unit: 'mi' } }],
  ]),
];
