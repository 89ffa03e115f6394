// Every fault there is a row for, in the order of the table; which of them see each piece of the store.
import { everyByteChanged, otherFiles } from './bytes.ts';
import { clocksDuringACure } from './clocks.ts';
import { cutShort } from './cut-short.ts';
import { hostileFiles } from './hostile.ts';
import { randomKeys } from './keys.ts';
import { killedInAStorm, slowDisk } from './killed.ts';
import { secondModel } from './model.ts';
import { halfWritten, powerCuts } from './power.ts';
import { changedUnderneath, fillingDisk, readOnlyDisk } from './real-disk.ts';
import { refusedWrites } from './refusing.ts';
import type { Row, Size } from './row.ts';
import { races, secondWriter } from './two-programs.ts';
import type { PieceName } from './without.ts';

/** @param child the bundle of tests/store/child.ts */
export type Fault = (size: Size, child: string) => Promise<Row>;

export const faults = {
  powerCuts,
  halfWritten,
  cutShort,
  refusedWrites,
  everyByteChanged,
  otherFiles,
  fillingDisk,
  readOnlyDisk,
  changedUnderneath,
  secondWriter,
  races,
  clocksDuringACure,
  hostileFiles,
  slowDisk,
  killedInAStorm,
  secondModel,
  randomKeys,
} satisfies Record<string, Fault>;
export type FaultName = keyof typeof faults;

/** What rests on a piece, and breaks when it is taken out; the rest has nothing to do with it. */
export const restsOn: Record<PieceName, readonly FaultName[]> = {
  fsync: ['powerCuts', 'refusedWrites'],
  lock: ['secondWriter', 'races'],
  'torn-line': ['powerCuts', 'halfWritten'],
};

export const isFault = (name: string): name is FaultName => Object.hasOwn(faults, name);

export async function runFaults(
  names: readonly FaultName[],
  size: Size,
  child: string,
  told: (row: Row, name: FaultName, seconds: number) => void = () => undefined,
): Promise<Row[]> {
  const rows: Row[] = [];
  for (const name of names) {
    const began = performance.now();
    const fault: Fault = faults[name];
    const row = await fault(size, child);
    rows.push(row);
    told(row, name, (performance.now() - began) / 1000);
  }
  return rows;
}
