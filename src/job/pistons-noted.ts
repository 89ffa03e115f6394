// The words of a note that the pistons of a caliper were pushed back, and whether one stands since the pedal was last called.
import { type Ledger, stateOf } from './ledger.ts';

const begin = 'pistons pushed back at ';
export const pistonsNote = (area: string): string => `${begin}${area}`;

/** With them the fluid was pushed back as well: the pedal draws it out of the reservoir again. Common practice, no source. */
export function levelAfterPistons(ledger: Ledger): string[] {
  const { remarks = [], pedalAt = 0 } = stateOf(ledger, 'vehicle', 'vehicle') ?? {};
  return remarks.some(({ n, words }) => n > pedalAt && words.startsWith(begin))
    ? ['pistons were pushed back: look whether the brake fluid stands between its marks']
    : [];
}
