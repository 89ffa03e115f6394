// The one form of a check against something published: the function, what it gave, what stands in print, and where.
// The checks are data, so that the same list is run as tests and told as a table in DEVELOPERS.md.

/** How the printed value was come by. What was only remembered is no check: its properties are tested in tests/trade. */
export type Provenance =
  /** A reprint of the table or the text was read. */
  | 'seen'
  /** Recomputed from an exact definition, a formula that was read, or another implementation. */
  | 'derived'
  /** What the trade does without anyone having printed it: the source says so. */
  | 'practice';

/** `part` of the printed value, `by` in its unit; 'exact' for text, lists and whole numbers. */
export type Tolerance = 'exact' | { part: number } | { by: number };

export type Check = {
  topic: string;
  /** Name of the function held to the source. */
  of: string;
  /** Standard or handbook with its edition. No maker and no product. */
  source: string;
  /** Table, clause or page. */
  where: string;
  /** What is compared, with its unit. */
  what: string;
  got: unknown;
  want: unknown;
  tolerance: Tolerance;
  tag: Provenance;
};

// biome-ignore lint/suspicious/noExplicitAny: any function, only its name is read
type AnyFunction = (...args: any[]) => unknown;

/** One check. The function is handed over itself, so that its name in the table is its own. */
export function published(check: Omit<Check, 'of'> & { of: AnyFunction }): Check {
  return { ...check, of: check.of.name };
}

/** Several checks that share topic, source and tag. */
export const from =
  (topic: string, source: string, tag: Provenance) =>
  (
    of: AnyFunction,
    where: string,
    tolerance: Tolerance,
    rows: readonly [what: string, got: unknown, want: unknown][],
  ) =>
    rows.map(([what, got, want]) => published({ topic, source, tag, of, where, tolerance, what, got, want }));

/** How far apart, as a part of the printed value; 0 or Infinity where nothing can be measured. */
export function deviation({ got, want }: Check): number {
  if (typeof got === 'number' && typeof want === 'number') {
    if (got === want) return 0;
    return want === 0 ? Math.abs(got) : Math.abs(got / want - 1);
  }
  return JSON.stringify(got) === JSON.stringify(want) ? 0 : Number.POSITIVE_INFINITY;
}

export function holds(check: Check): boolean {
  const { got, want, tolerance } = check;
  if (tolerance === 'exact') return deviation(check) === 0;
  if (typeof got !== 'number' || typeof want !== 'number') return false;
  // The last bit of a printed decimal is not the check's business.
  const slack = 1 + 1e-9;
  return 'by' in tolerance
    ? Math.abs(got - want) <= tolerance.by * slack
    : Math.abs(got - want) <= Math.abs(want) * tolerance.part * slack;
}
