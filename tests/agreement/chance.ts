// Chance out of one number: the same seed makes the same job on every machine and every day.

export type Chance = {
  /** Between 0 and 1. */
  roll: () => number;
  /** True so often out of one. */
  maybe: (often: number) => boolean;
  /** A whole number, both ends within. */
  whole: (least: number, most: number) => number;
  of: <T>(these: readonly T[]) => T;
  /** One of these, or nothing where there are none. */
  any: <T>(these: readonly T[]) => T | undefined;
  some: <T>(these: readonly T[], often: number) => T[];
  shuffled: <T>(these: readonly T[]) => T[];
};

export function chanceFrom(seed: number): Chance {
  let state = seed | 0;
  // mulberry32, public domain.
  const roll = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (least: number, most: number): number => least + Math.floor(roll() * (most - least + 1));
  return {
    roll,
    whole,
    maybe: (often) => roll() < often,
    of: (these) => {
      if (these.length === 0) throw new Error('chance has nothing to choose from');
      return these[whole(0, these.length - 1)] as (typeof these)[number];
    },
    any: (these) => (these.length === 0 ? undefined : these[whole(0, these.length - 1)]),
    some: (these, often) => these.filter(() => roll() < often),
    shuffled: (these) =>
      these
        .map((one) => ({ one, by: roll() }))
        .sort((a, b) => a.by - b.by)
        .map(({ one }) => one),
  };
}

/** Rows of what may be chosen and how often beside the others. */
export type Weighted<T> = readonly (readonly [often: number, one: T])[];

export function weighted<T>(chance: Chance, rows: Weighted<T>): T {
  const sum = rows.reduce((all, [often]) => all + often, 0);
  let left = chance.roll() * sum;
  for (const [often, one] of rows) {
    left -= often;
    if (left < 0) return one;
  }
  return (rows.at(-1) as readonly [number, T])[1];
}
