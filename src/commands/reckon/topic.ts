// What a topic of `reckon` is: words in, lines out, and the same as data. Nothing of a job is asked or written.
import { type Answer, isRefused, refused } from '../../trade/answer.ts';
import type { Interval } from '../../trade/intervals.ts';

/** What was typed after the topic. */
export type Typed = {
  words: readonly string[];
  options: ReadonlyMap<string, string>;
  /** "2026-11-25", by the clock of the machine. */
  today: string;
  /** Rows of the workshop's own. */
  intervals: Readonly<Record<string, Interval>>;
};
export type Reckoned = { lines: string[]; data: Record<string, unknown> };
export type Topic = {
  name: string;
  usage: string;
  help: string;
  /** Options it takes, each with a value. */
  options: readonly string[];
  /** Whether the settings have a word in it. */
  asksSettings?: true;
  reckon(typed: Typed): Answer<Reckoned>;
};

export const decimals = (value: number, places: number): string => String(Number(value.toFixed(places)));

/** A bare number as typed, a comma for a point allowed. */
export function numberIn(word: string | undefined, what: string): Answer<number> {
  const plain = (word ?? '').trim().replace(/ ?mm$/i, '').replace(',', '.');
  const value = Number(plain);
  if (plain === '') return refused(`${what} is missing`);
  return Number.isFinite(value) ? value : refused(`"${word}" is no ${what}`);
}

/** Several answers at once, or the first that is refused. */
export function allOf<T extends readonly unknown[]>(...answers: { [K in keyof T]: Answer<T[K]> }): Answer<T> {
  const wrong = (answers as readonly unknown[]).find(isRefused);
  return wrong === undefined ? (answers as unknown as T) : (wrong as { refused: string });
}
