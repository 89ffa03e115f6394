// X4 at the bench: when a service is next due where nobody says it, and what the line then holds.
import { describe, expect, it } from 'vitest';
import type { Desk } from '../../src/calls/desk.ts';
import { entryWords } from '../../src/calls/entry-words.ts';
import { readLine } from '../../src/calls/line-reader.ts';
import { dueNext } from '../../src/calls/next-due.ts';
import { meantBy } from '../../src/calls/row.ts';
import type { Interval } from '../../src/trade/intervals.ts';
import { firstFacing } from '../../src/view/facing.ts';
import { bench } from '../job/bench.ts';
import { plansAtHand } from '../jobs/lines.ts';

/** On 2 March 2026, with so much on the clock. */
function deskWith(odometer?: { distance: number; unit: 'km' | 'mi' }, intervals: Record<string, Interval> = {}): Desk {
  const on = bench({ opened: false });
  on.call('open-job', { label: 'estate' });
  if (odometer) on.call('note-odometer', odometer);
  return { ledger: on.ledger(), facing: firstFacing, now: on.now(), plans: plansAtHand, intervals };
}
const at120 = { distance: 120_000, unit: 'km' } as const;
const said = (desk: Desk, text: string) => {
  const read = readLine(desk, text);
  if ('why' in read) throw new Error(read.why);
  return meantBy(read.row, desk, read.args);
};

describe('next due', () => {
  it('[X4] goes by the usual interval, from the date and the odometer of the job', () => {
    // 36 months and 36 000 mi (57 936.384 km), common practice.
    const due = { verb: 'note-due', what: 'coolant, plain', on: '2029-03-02', atDistance: 177_936 };
    expect(said(deskWith(at120), 'due coolant, plain')).toEqual({ say: due });
    expect(said(deskWith(at120), 'due coolant plain')).toEqual({ say: { ...due, what: 'coolant plain' } });
    expect(dueNext(deskWith({ distance: 75_000, unit: 'mi' }), 'coolant, plain')).toEqual({
      on: '2029-03-02',
      atDistance: 111_000,
    });
  });
  it('[X4] goes by a row of one’s own before it, and by the date alone where no odometer was noted', () => {
    const own = { coolant: { months: 48, distance: { distance: 60_000, unit: 'km' } } } as const;
    expect(dueNext(deskWith(at120, own), 'Coolant')).toEqual({ on: '2030-03-02', atDistance: 180_000 });
    expect(dueNext(deskWith(undefined, own), 'coolant')).toEqual({ on: '2030-03-02' });
    expect(dueNext(deskWith(undefined), 'dampers')).toEqual({ why: 'dampers: the odometer is not noted' });
  });
  it('[X4] of a timing belt is the maker’s alone, or one’s own', () => {
    const none = said(deskWith(at120), 'due timing belt');
    expect(none).toMatchObject({ no: { because: expect.stringMatching(/the maker's distance and years/) } });
    const own = { 'timing belt': { months: 60, distance: { distance: 100_000, unit: 'km' } } } as const;
    expect(dueNext(deskWith(at120, own), 'timing belt')).toEqual({ on: '2031-03-02', atDistance: 220_000 });
    expect(said(deskWith(at120), 'due timing belt on 2030-05-01 at 180000')).toEqual({
      say: { verb: 'note-due', what: 'timing belt', on: '2030-05-01', atDistance: 180_000 },
    });
  });
  it('[P1] goes by what its plan said when it was ordered, and by one’s own before that', () => {
    const interval = { months: 24, distanceKm: 40_000, from: 'the maker' };
    const ordered = (own: Record<string, Interval> = {}): Desk => {
      const on = bench();
      on.call('order-service', { service: 'front brakes', interval });
      return { ledger: on.ledger(), facing: firstFacing, now: on.now(), plans: () => [], intervals: own };
    };
    expect(dueNext(ordered(), 'front brakes')).toEqual({ on: '2028-03-02', atDistance: 160_000 });
    expect(dueNext(ordered({ 'front brakes': { months: 12 } }), 'front brakes')).toEqual({ on: '2027-03-02' });
  });
  it('[X4] of something nobody has an interval for is noted as it is said', () => {
    expect(said(deskWith(at120), 'due wheel nuts again')).toEqual({
      say: { verb: 'note-due', what: 'wheel nuts again' },
    });
  });
  it('[X4] is said back with its figures', () => {
    const words = (more: object) => entryWords({ kind: 'due-noted', what: 'coolant', ...more });
    expect(words({})).toBe('due: coolant, with no date or distance');
    expect(words({ on: '2029-03-02' })).toBe('due: coolant, by 2029-03-02');
    expect(words({ atDistance: 180_000 })).toBe('due: coolant, at 180000 km');
    expect(words({ on: '2029-03-02', atDistance: 180_000 })).toBe(
      'due: coolant, by 2029-03-02 or at 180000 km, whichever first',
    );
  });
});
