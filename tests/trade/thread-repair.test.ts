// Thread repair: what is refused, and what holds of every thread an insert is made for.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefused } from '../../src/trade/answer.ts';
import {
  drillingDepthIn,
  insertBoreMm,
  insertDrillingDepthMm,
  insertLengthDiameters,
  judgeInsertDrill,
  shortEngagement,
  tapDrillMm,
} from '../../src/trade/thread-repair.ts';
import { everyThread } from '../../src/trade/threads.ts';
import { sure, thread } from '../published/trade.ts';

const said = (answer: unknown): string => (isRefused(answer) ? answer.refused : `taken: ${JSON.stringify(answer)}`);
const withInsert = everyThread.filter((one) => !isRefused(insertBoreMm(one)));

describe('the bore for an insert', () => {
  it('is wider than the bolt and never the plain tap drill', () => {
    expect(withInsert.length).toBeGreaterThan(35);
    for (const one of withInsert) {
      const { fromMm, toMm } = sure(insertBoreMm(one));
      expect(fromMm).toBeGreaterThan(one.majorMm);
      expect(toMm).toBeGreaterThan(fromMm);
      expect(sure(judgeInsertDrill(one, tapDrillMm(one))).verdict).toBe('plain-tap-drill');
      expect(sure(judgeInsertDrill(one, (fromMm + toMm) / 2)).verdict).toBe('fits');
    }
  });
  it.each([
    ['M8', 6.8, 'plain-tap-drill', '6.8 mm is the drill for M8 itself; an insert wants 8.27 to 8.48 mm'],
    ['M8', 8, 'too-small', '8 mm is too small for an insert of M8: 8.27 to 8.48 mm'],
    ['M8', 8.6, 'too-large', '8.6 mm is too large for an insert of M8: 8.27 to 8.48 mm'],
  ])('%s drilled %d: %s', (name, drill, verdict, because) => {
    expect(judgeInsertDrill(thread(name), drill)).toEqual({ verdict, because });
  });
});

describe('the depth', () => {
  it('is asked before anything is cut, and refused beyond what there is', () => {
    const m8 = thread('M8');
    expect(drillingDepthIn(m8, 12, 23.5)).toMatchObject({
      depthMm: 23.5,
      tap: 'plug',
      because: expect.stringContaining('set the stop collar'),
    });
    expect(drillingDepthIn(m8, 12, 23.4)).toMatchObject({ depthMm: 17, tap: 'bottoming' });
    expect(said(drillingDepthIn(m8, 12, 16.9))).toMatch(/wants 17 mm with a bottoming tap; there are 16.9 mm/);
  });
  it('answered is never deeper than the boss', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...withInsert),
        fc.integer({ min: 5, max: 60 }),
        fc.integer({ min: 5, max: 100 }),
        (one, length, there) => {
          const answer = drillingDepthIn(one, length, there);
          if (isRefused(answer)) expect(sure(insertDrillingDepthMm(one, length, 'bottoming'))).toBeGreaterThan(there);
          else expect(answer.depthMm).toBeLessThanOrEqual(there);
        },
      ),
    );
  });
});

describe('the length of an insert', () => {
  it('is never less for a weaker parent or a stronger bolt', () => {
    const length = (shear: number, grade: string) => sure(insertLengthDiameters(shear, grade));
    expect(length(170, '5.8')).toBe(2);
    expect(length(250, '10.9')).toBe(2.5);
    expect(length(300, '8.8')).toBeLessThanOrEqual(length(200, '8.8'));
    expect(length(150, '10.9')).toBeGreaterThan(length(150, '8.8'));
  });
});

describe('engagement', () => {
  it('short of it is said', () => {
    expect(shortEngagement(thread('M8'), 'aluminium', 12)).toBe('12 mm of thread in aluminium: M8 wants 16 mm');
    expect(shortEngagement(thread('M8'), 'aluminium', 16)).toBe('');
    expect(shortEngagement(thread('M8'), 'steel', 12)).toBe('');
  });
});

describe('nonsense', () => {
  it.each([
    [() => insertBoreMm(thread('5/16-18')), /the drill is the kit's/],
    [() => insertBoreMm(thread('M24')), /no bore is known/],
    [() => judgeInsertDrill(thread('M8'), 0), /a drill of 0 mm/],
    [() => judgeInsertDrill(thread('M8'), Number.NaN), /a drill of \?/],
    [() => insertDrillingDepthMm(thread('M8'), -1), /an insert of -1 mm/],
    [() => drillingDepthIn(thread('M8'), 12, 0), /a depth of 0 mm/],
    [() => drillingDepthIn(thread('M8'), 1000, 50), /an insert of 1000 mm/],
    [() => insertLengthDiameters(100, '8.8'), /no length is printed for a parent of 100/],
    [() => insertLengthDiameters(200, '12.9'), /no insert length is printed for class 12.9/],
    [() => insertLengthDiameters(200, '7.7'), /no property class/],
    [() => insertLengthDiameters(0, '8.8'), /a shear strength of 0/],
    [() => shortEngagement(thread('M8'), 'steel', -4), /an engagement of -4 mm/],
  ])('is refused: %s', (ask, line) => expect(said(ask())).toMatch(line));
});
