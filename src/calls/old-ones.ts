// Old fasteners in the trays that do not serve again: condemned, broken, or of one use and loosened; and which go together.
import type { FastenerState } from '../job/hole-states.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { specText } from '../job/spec.ts';
import { named } from '../job/subjects.ts';

export const oldOnes = (ledger: Ledger): FastenerState[] =>
  [...every(ledger, 'fastener')].filter(
    (f) => named('tray', f.place) !== undefined && (f.condemned || f.broken || (f.spec.oneUse && f.loosened)),
  );
/** That one with all of its kind, whatever area they came from; none where it may go back. */
export function oldOnesLike(ledger: Ledger, id: string): FastenerState[] {
  const spec = specText(stateOf(ledger, 'fastener', id)?.spec ?? {});
  const old = oldOnes(ledger);
  return old.some((f) => f.id === id) ? old.filter((f) => specText(f.spec) === spec) : [];
}
/** The first of each kind, by which all of it is named. */
export const oneOfEachKind = (ledger: Ledger): string[] =>
  [...Map.groupBy(oldOnes(ledger), (f) => specText(f.spec)).values()].flatMap(([first]) => (first ? [first.id] : []));
