// In which turn what there is of a kind is offered: of the area in use, then of none; the last one called first.
import { every, type Ledger } from '../job/ledger.ts';
import type { Desk } from './desk.ts';

/** A plan has named what belongs to this job. */
export const isFromPlan = (ledger: Ledger): boolean =>
  [...every(ledger, 'area')].some((a) => a.declared?.planned === true);
export const lastFirst = <T>(all: readonly T[], at: (one: T) => number): T[] => all.toSorted((a, b) => at(b) - at(a));

/** What belongs to the area in use, then what belongs to none. Of another area nothing is taken unasked. */
export function within<T>({ facing }: Desk, all: readonly T[], areasOf: (one: T) => readonly string[]): T[] {
  const here = all.filter((one) => facing.area !== undefined && areasOf(one).includes(facing.area));
  return [...here, ...all.filter((one) => areasOf(one).length === 0)];
}
