// The program's own ledger, as the comparison asks it. The only module beside the sequences that knows the sources.
import { stateOf } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';
import { openPoints } from '../../src/job/open-points.ts';
import type { Asked } from '../model/agree.ts';

type Ledger = ReturnType<typeof readLog>;

export const openOf = (ledger: Ledger, now: Stamp): string[] =>
  openPoints(ledger, now).map((point) => `${point.code} ${point.at}`);
export const hasLeft = (ledger: Ledger): boolean => Boolean(stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt);

/** From the lines alone, all at once: what a job file read from disk stands as. */
export const program: Asked = {
  standing: (lines, now) => openOf(readLog(lines as unknown as Line[]), now as Stamp),
  released: (lines) => hasLeft(readLog(lines as unknown as Line[])),
};
