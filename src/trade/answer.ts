// What a computation answers: its result, or in one line why there is none. Bad input is an answer, never an exception.
import type { Cited } from './cited.ts';

export type Refused = { readonly refused: string };
export type Answer<T> = T | Refused;

export const refused = (why: string): Refused => ({ refused: why });

export const isRefused = (answer: unknown): answer is Refused =>
  typeof answer === 'object' && answer !== null && 'refused' in answer;

export type Limits = Cited<{ from: number; to: number }>;

/** Why a figure is absurd, or undefined: not a number, not finite, or outside the limits (which are allowed). */
export function absurd(what: string, value: number, limits: Limits): Refused | undefined {
  const { from, to } = limits.value;
  if (Number.isFinite(value) && value >= from && value <= to) return undefined;
  const unit = limits.unit === '–' ? '' : ` ${limits.unit}`;
  return refused(`${what} ${figure(value)}${unit}: ${from} to ${to}${unit} is taken`);
}

/** A figure as said in a sentence: at most four that tell, no trailing noughts. */
export const figure = (value: number): string => (Number.isFinite(value) ? String(Number(value.toPrecision(4))) : '?');
