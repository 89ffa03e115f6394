// Which vehicle comes to be known by a call: perhaps one that was here before, of which something is remembered.
import { type Ledger, stateOf } from '../job/ledger.ts';
import type { Line } from '../job/line.ts';

/** A vehicle that is named, or whose registration comes to be known, is perhaps one that was here before. */
export function knownAnew({ entries }: Line, ledger: Ledger): { label: string; registration?: string }[] {
  const isNamed = entries.some(({ kind }) => kind === 'job-opened' || kind === 'registration-noted');
  const vehicle = isNamed ? stateOf(ledger, 'vehicle', 'vehicle') : undefined;
  return vehicle?.label ? [vehicle] : [];
}
