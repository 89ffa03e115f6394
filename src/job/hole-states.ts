// What is known of each hole, and of the fasteners, pieces and strays of a job, folded from the lines that touch them.
// Plain JSON; stamps are line numbers, 0 = never.
import type { EntryOf } from './entry.ts';
import type { Method, Spec } from './spec.ts';
import type { Hole, Place } from './subjects.ts';

export type Level = 'as-found' | 'slack' | 'on' | 'snug' | 'tight';
export const snugOrBetter = (level: Level): boolean => level === 'snug' || level === 'tight';

export type Reached = { n: number; level: Level | 'off' | 'left' };

export type Occupant = {
  fastener: string;
  spec: Spec;
  level: Level;
  forNow?: true;
  working?: true;
  substitute?: string;
  newPattern?: string[];
};
export type Pass = {
  n: number;
  pass: string;
  last: boolean;
  fastener: string;
  method?: Method;
  tool?: string;
  readNewtonMetres?: number;
  outOfOrder?: true;
};

/** All that was called of a hole; what was declared of it lies beside it, so that U3 can exchange the called alone. */
export type CalledOfHole = {
  touchedAt: number;
  openedAt: number;
  changedAt: number;
  lookedAt: number;
  foundEmptyAt: number;
  /** The fastener first found in it: what the hole wants, unless that one was found wrong here. */
  first?: string;
  firstIsWrong?: true;
  /** F2: suspected, and called meant so. */
  meantSo?: { n: number; fastener: string; spec: Spec; beside?: Spec; because: string };
  /** Lines at which it was opened; the last is openedAt. */
  openings: readonly number[];
  /** The fastener that belongs here: the last one in it that was no working fastener. */
  own?: string;
  occupant?: Occupant;
  leftEmpty?: { who: string; because: string };
  stated?: Spec;
  /** What was reached at which line: a level, `off` when it came out or was missing, `left` empty by statement. */
  levels: readonly Reached[];
  passes: readonly Pass[];
  findings: readonly string[];
  pieces: readonly string[];
  temporaries: readonly string[];
  repair: readonly { n: number; step: EntryOf<'repair-step'>['step']; millimetres?: number; words?: string }[];
  chasedAt: number;
};
export type HoleState = { hole: Hole; declared?: Omit<EntryOf<'hole-declared'>, 'kind'>; called: CalledOfHole };

/** Why what is only laid on the scrap pile goes back no more. */
export const asScrap = 'scrapped';
export type FastenerState = {
  id: string;
  spec: Spec;
  /** The hole it came out of, or box:NAME, or stray:ID. */
  origin: string;
  place: Place;
  everOff: boolean;
  /** Was tight and then slack or off (L7), and not measured good since. */
  loosened: boolean;
  tight: boolean;
  condemned?: string;
  broken?: true;
  measured?: { what: string; measuredMm: number; limitMm: number };
  loss?: Loss;
};
export type Loss = {
  reaches: boolean;
  where: string;
  searched: readonly string[];
  ruledOut?: { who: string; because: string };
};
export type PieceState = { id: string; fastener: string; place: Place; loss?: Loss };
export type StrayState = {
  id: string;
  spec: Spec;
  place: Place;
  settled?: { as: EntryOf<'stray-settled'>['as']; fastener?: string; who?: string; because?: string };
};
