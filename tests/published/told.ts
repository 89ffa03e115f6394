// The checks told as a table, for DEVELOPERS.md: topic, source, how many, and how far the worst one is off.
import { type Check, deviation } from './published.ts';

export type Row = { topic: string; source: string; functions: number; checks: number; worst: number };

/** One row a topic and source, in the order of the checks. */
export function rowsOf(checks: readonly Check[]): Row[] {
  return [...Map.groupBy(checks, ({ topic, source }) => `${topic}\n${source}`).values()].map((together) => {
    const [{ topic, source }] = together as [Check, ...Check[]];
    return {
      topic,
      source,
      functions: new Set(together.map(({ of }) => of)).size,
      checks: together.length,
      worst: Math.max(...together.map(deviation)),
    };
  });
}

/** "0.62 %", "none" where text and counts agree, "rounding" below what any print shows. */
export function worstText(worst: number): string {
  if (worst === 0) return 'none';
  return worst < 1e-9 ? 'rounding' : `${Number((worst * 100).toPrecision(2))} %`;
}

export type Totals = {
  checks: number;
  pairs: number;
  sources: number;
  seen: number;
  derived: number;
  practice: number;
};

export function totalsOf(checks: readonly Check[]): Totals {
  const tagged = (tag: Check['tag']) => checks.filter((check) => check.tag === tag).length;
  return {
    checks: checks.length,
    pairs: new Set(checks.map(({ of, source }) => `${of}\n${source}`)).size,
    sources: new Set(checks.map(({ source }) => source)).size,
    seen: tagged('seen'),
    derived: tagged('derived'),
    practice: tagged('practice'),
  };
}
