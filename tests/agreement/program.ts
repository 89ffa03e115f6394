// The program's own ledger, as the comparison asks it.
import { type Ledger, stateOf } from '../../src/job/ledger.ts';
import type { Stamp } from '../../src/job/line.ts';
import { openPoints } from '../../src/job/open-points.ts';

export const openOf = (ledger: Ledger, now: Stamp): string[] =>
  openPoints(ledger, now).map((point) => `${point.code} ${point.at}`);
export const hasLeft = (ledger: Ledger): boolean => Boolean(stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt);
