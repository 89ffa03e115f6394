// A refusal is a value: which rule says no, why, and what to call instead. Its kind alone settles what may be done.
import type { Subject } from './subjects.ts';

/**
 * footing: it can't be where the call takes it from · rule: the book says no · order: may be answered "done already"
 * (O5) · gate: a proof is missing, or the thing can still be stopped.
 */
export type GuardKind = 'footing' | 'rule' | 'order' | 'gate';

export type Refusal = {
  code: string;
  rule: string;
  kind: GuardKind;
  because: string;
  instead: string;
  /** What stands in the way, nearest first. */
  places: readonly Subject[];
};

export type No = { because: string; instead: string; places?: readonly Subject[] };
