// Runs every check against something published, and holds the checks themselves to their form.
import { describe, expect, it } from 'vitest';
import { checks } from './checks.ts';
import { type Check, deviation, holds } from './published.ts';
import { rowsOf, totalsOf, worstText } from './told.ts';

describe.each([...Map.groupBy(checks, (check) => check.topic)])('%s', (_topic, ofTopic) => {
  it.each(ofTopic.map((check) => [`${check.of}: ${check.what} · ${check.source}, ${check.where}`, check] as const))(
    '%s',
    (_name, check) => {
      const { got, want, tolerance } = check;
      expect(
        holds(check),
        `got ${JSON.stringify(got)}, printed ${JSON.stringify(want)}, ${JSON.stringify(tolerance)}`,
      ).toBe(true);
    },
  );
});

describe('the checks together', () => {
  it('are many, of many functions and from many sources', () => {
    const { checks: all, pairs, sources } = totalsOf(checks);
    expect(all).toBeGreaterThanOrEqual(150);
    expect(pairs).toBeGreaterThanOrEqual(40);
    expect(sources).toBeGreaterThanOrEqual(12);
  });

  it('hold every topic to more than common practice', () => {
    for (const [topic, ofTopic] of Map.groupBy(checks, (check) => check.topic)) {
      expect(ofTopic.filter(({ tag }) => tag !== 'practice').length, topic).toBeGreaterThan(10);
    }
  });

  it('are told with the worst of each source', () => {
    const rows = rowsOf(checks);
    expect(rows.reduce((sum, row) => sum + row.checks, 0)).toBe(checks.length);
    expect(rows.filter(({ worst }) => !Number.isFinite(worst))).toEqual([]);
    expect([0, 1e-12, 0.00617, 0.00005].map(worstText)).toEqual(['none', 'rounding', '0.62 %', '0.005 %']);
  });
});

describe('the form of a check', () => {
  it('names function, source, place and thing', () => {
    expect(
      checks.filter(({ of, source, where, what }) => [of, source, where, what].some((said) => !said.trim())),
    ).toEqual([]);
  });

  it('compares each thing once', () => {
    const said = checks.map(({ of, source, where, what }) => [of, source, where, what].join(' | '));
    expect(said.filter((one, at) => said.indexOf(one) !== at)).toEqual([]);
  });

  const check: Check = {
    topic: 't',
    of: 'f',
    source: 's',
    where: 'w',
    what: 'x',
    got: 10,
    want: 10.06,
    tolerance: { part: 0.006 },
    tag: 'seen',
  };
  it('holds within its tolerance and not beyond', () => {
    expect(holds(check)).toBe(true);
    expect(holds({ ...check, want: 10.07 })).toBe(false);
    expect(holds({ ...check, want: 10.07, tolerance: { by: 0.07 } })).toBe(true);
    expect(holds({ ...check, want: 10.07, tolerance: { by: 0.06 } })).toBe(false);
    expect(holds({ ...check, got: { refused: 'no' } })).toBe(false);
    expect(holds({ ...check, got: Number.NaN })).toBe(false);
    expect(deviation({ ...check, want: 8 })).toBeCloseTo(0.25);
  });
  it('compares lists and text exactly', () => {
    expect(holds({ ...check, got: ['M6', 'M8'], want: ['M6', 'M8'], tolerance: 'exact' })).toBe(true);
    expect(holds({ ...check, got: ['M8', 'M6'], want: ['M6', 'M8'], tolerance: 'exact' })).toBe(false);
    expect(holds({ ...check, got: 'a', want: 'a', tolerance: { part: 1 } })).toBe(false);
  });
});
