// A figure: what was measured, beside its baseline in the same run. Ratios are what is trusted; this machine is not the
// next one.

export type Figure = {
  name: string;
  /** What the ratio is of: "start to first frame / bare Ink program". */
  of: string;
  unit: 'ms' | 'bytes' | 'MB' | 'keys' | 'bolts' | 'share';
  value: number;
  baseline: number;
  /** Value over baseline. */
  ratio: number;
  rounds: number;
  goal?: string;
};

export function quantile(values: readonly number[], q: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * q))] ?? Number.NaN;
}
export const medianOf = (values: readonly number[]): number => quantile(values, 0.5);

export function figure(
  what: Pick<Figure, 'name' | 'of' | 'unit' | 'goal'>,
  values: readonly number[],
  baselines: readonly number[],
): Figure {
  const value = medianOf(values);
  const baseline = medianOf(baselines);
  return { ...what, value, baseline, ratio: value / baseline, rounds: Math.min(values.length, baselines.length) };
}

const shown = (n: number): string => (n >= 100 ? n.toFixed(0) : n >= 10 ? n.toFixed(1) : n.toPrecision(2));

export function figureText(f: Figure): string {
  const goal = f.goal ? `   goal ${f.goal}` : '';
  const what = `${f.name.padEnd(26)} ${f.of}`;
  return `${what.padEnd(104)} ${shown(f.ratio).padStart(6)}   (${shown(f.value)} / ${shown(f.baseline)} ${f.unit}, ${f.rounds} rounds)${goal}`;
}
