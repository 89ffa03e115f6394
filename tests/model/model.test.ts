// The second ledger against the rule book: small jobs made by hand, each with what must be open at its end. These prove
// the second ledger and nothing about the program, so their rule numbers stand in the cases, not in the names of tests
// that the rule book is matched with.
import { describe, expect, it } from 'vitest';
import { clockCases } from './cases-clock.ts';
import { fastenerCases } from './cases-fasteners.ts';
import { leavingCases } from './cases-leaving.ts';
import { lossCases } from './cases-losses.ts';
import { workCases } from './cases-works.ts';
import { judge } from './judge.ts';
import { saturationPa } from './seals.ts';

describe('the second ledger', () => {
  it.each([...fastenerCases, ...lossCases, ...workCases, ...leavingCases, ...clockCases])(
    '$name',
    ({ job, open, released }) => {
      const judged = judge(job.lines, job.now);
      expect(judged.open).toEqual([...open].sort());
      expect(judged.mayLeave).toBe(open.length === 0);
      expect(judged.released).toBe(released ?? false);
    },
  );

  // IAPWS-IF97 as printed in the ASHRAE Handbook of Fundamentals 2017, chapter 1, table 3 (5 and 25 °C) and in steam
  // tables (the others); the Magnus form lies within 0.35 % of it.
  it.each([
    [0, 611.2],
    [5, 872.6],
    [10, 1228.2],
    [23, 2810.9],
    [25, 3169.7],
    [40, 7384.4],
  ])('has the saturation pressure of water at %s °C', (celsius, pascal) => {
    expect(Math.abs(saturationPa(celsius) / pascal - 1)).toBeLessThan(0.0035);
  });
});
