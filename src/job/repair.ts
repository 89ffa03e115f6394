// F5: the steps of a thread repair, and how far the one of a hole has come. Its depth begins it; a new depth begins another.
import type { EntryOf } from './entry.ts';
import type { CalledOfHole } from './hole-states.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { Hole } from './subjects.ts';

export const repairSteps = ['depth', 'drilled', 'tapped', 'cleaned', 'insert', 'tried'] as const;
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
