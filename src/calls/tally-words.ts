// How much is out, in words: what was taken out lies in a tray, a hole that was empty on arrival has nothing lying anywhere.
import type { Tally } from '../job/ledger.ts';
import { holesSaid } from '../job/subjects.ts';

/** Something came off, and nothing of it is out or slack. */
export const isBack = (t: Tally): boolean => t.touched > 0 && t.slack === 0 && outOf(t) === 0;
/** What was taken out and is to be counted in the trays; not the holes that were empty on arrival. */
export const outOf = ({ off, empty }: Tally): number => off - empty;
/** "1 hole open". */
export const openSaid = ({ open }: Tally): string => `${holesSaid(open)} open`;
/** "6 off", "1 slack", and where there is one "1 empty". */
export const outParts = (t: Tally): string[] => [
  `${outOf(t)} off`,
  `${t.slack} slack`,
  ...(t.empty > 0 ? [`${t.empty} empty`] : []),
];
