// What a verb is: what it takes, which guards may refuse it, what it writes. The tables of verbs are in verbs/.
import type { z } from 'zod';
import type { Entry } from './entry.ts';
import { later } from './later.ts';
import type { Ledger } from './ledger.ts';
import type { Stamp } from './line.ts';
import type { GuardKind, No } from './refusal.ts';

export type Standing = { ledger: Ledger; now: Stamp /** Number of the line this call would write. */; n: number };

export type Guard<S> = {
  code: string;
  rule: string;
  kind: GuardKind;
  /** What must be said before it can be asked; the cursor may already know it. */
  needs: readonly (keyof S & string)[];
  check(standing: Standing, said: S): No | null;
};

export type Verb<S = never> = {
  id: string;
  readonly takes: z.ZodType<S>;
  guards: readonly Guard<S>[];
  writes(standing: Standing, said: S): Entry[];
};

/** @param takes what several verbs take stands made; what one verb takes is made when it is first called. */
export function verb<S>(
  id: string,
  takes: z.ZodType<S> | (() => z.ZodType<S>),
  guards: readonly Guard<NoInfer<S>>[],
  writes: (standing: Standing, said: S) => Entry[],
): Verb<S> {
  const made = typeof takes === 'function' ? later(takes) : () => takes;
  return {
    id,
    guards,
    writes,
    get takes() {
      return made();
    },
  };
}
