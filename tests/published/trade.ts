// Small ways of asking the trade room in checks: a thread by its name, an answer that must be one.
import { type Answer, isRefused } from '../../src/trade/answer.ts';
import { type Thread, threadNamed } from '../../src/trade/threads.ts';

/** An answer that is none throws: a check that was refused is no check. */
export function sure<T>(answer: Answer<T>): T {
  if (isRefused(answer)) throw new Error(answer.refused);
  return answer;
}

export const thread = (name: string): Thread => sure(threadNamed(name));

/** To so many figures, as a table prints. */
export const toFigures = (value: number, figures: number): number => Number(value.toPrecision(figures));
/** To so many decimals, as a table prints. */
export const toPlaces = (value: number, places: number): number => Number(value.toFixed(places));
