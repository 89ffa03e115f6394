// U2 in the second ledger: which lines would have no footing without another. Found by walking the job without it.
import type { PlainLine, PlainStamp } from './plain.ts';
import { walk } from './walk.ts';

/** Lines that would not fit, and did before, were line n alone struck. */
export function leaningOn(lines: readonly PlainLine[], n: number): number[] {
  const last = lines.at(-1) as PlainLine & PlainStamp;
  const strike = { ...last, n: last.n + 1, entries: [{ kind: 'calls-struck', lines: [n] }] } as unknown as PlainLine;
  const before = walk([...lines]).misfits;
  return [...walk([...lines, strike]).misfits].filter((line) => !before.has(line)).sort((a, b) => a - b);
}
