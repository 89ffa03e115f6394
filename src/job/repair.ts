// F5: the steps of a thread repair, and how far the one of a hole has come. Its depth begins it; a new depth begins another.
import type { EntryOf } from './entry.ts';
import type { CalledOfHole } from './hole-states.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { FindingState } from './states.ts';
import { type Hole, named } from './subjects.ts';

export const repairSteps = ['depth', 'drilled', 'tapped', 'cleaned', 'insert', 'tried'] as const;
/** Steps that are called with a figure. */
export const measuredSteps: ReadonlySet<string> = new Set(['depth', 'drilled', 'insert']);
export type RepairStep = EntryOf<'repair-step'>['step'];

/** The steps of the repair last begun. */
export function repairOf(ledger: Ledger, hole: Hole): CalledOfHole['repair'] {
  const all = stateOf(ledger, 'hole', hole)?.called.repair ?? [];
  return all.slice(Math.max(0, all.map((r) => r.step).lastIndexOf('depth')));
}

/** The first step that the repair of a hole still lacks; undefined when none is begun, or it is whole. */
export function stepLacking(ledger: Ledger, hole: Hole): RepairStep | undefined {
  const done = repairOf(ledger, hole);
  return done.length > 0 ? repairSteps.find((step) => !done.some((r) => r.step === step)) : undefined;
}

/** Chased since it was found, or a repair is begun there. */
export function isWorkedOn(ledger: Ledger, hole: Hole, { madeAt }: FindingState): boolean {
  const chasedAt = stateOf(ledger, 'hole', hole)?.called.chasedAt ?? 0;
  return chasedAt > madeAt || repairOf(ledger, hole).length > 0;
}

const ofTheThread = /\bthread/i;
const stripped = /\bstripp?(ed|s|ing)\b/i;
/** "head stripped" is the bolt's. */
const ofTheFastener = /\b(head|bolt|nut|screw|stud|hex|splines?)\b/i;
/** F5: an empty hole whose thread is said to be bad, and nobody has begun to mend it; read from the words, it only proposes. */
export function threadToMend(ledger: Ledger, finding: FindingState): Hole | undefined {
  const { at, what, fastener } = finding;
  const hole = named('hole', at);
  const isThread = ofTheThread.test(what) || (stripped.test(what) && !ofTheFastener.test(what));
  if (hole === undefined || fastener !== undefined || finding.closed || !isThread) return undefined;
  const isEmpty = stateOf(ledger, 'hole', hole)?.called.occupant === undefined;
  return isEmpty && !isWorkedOn(ledger, hole, finding) ? hole : undefined;
}
