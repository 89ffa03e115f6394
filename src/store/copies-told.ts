// What is told of a copy that was made because something of a file goes, and of one that could not be made.
import { dirname, join } from 'node:path';
import { copyBeforeCut } from './copies.ts';
import type { Disk } from './disk.ts';
import { type Fault, fault, faultFrom } from './fault.ts';

/** What is cut off the end of a file leaves no trace in it: it stays in a copy, and that is told. */
export async function keptBeforeCut(torn: Fault, disk: Disk, path: string, bytes: Buffer, now: Date): Promise<Fault> {
  try {
    const copy = await copyBeforeCut(disk, path, bytes, now);
    return fault(torn.kind, torn.what, torn.where, `${torn.next}; the file as it was lies in ${copy}`);
  } catch (thrown) {
    const why = faultFrom(thrown, path);
    return fault(torn.kind, torn.what, torn.where, `${torn.next}; no copy of it as it was could be made: ${why.what}`);
  }
}

export function noCopy(thrown: unknown, path: string): Fault {
  const { kind, what, where } = faultFrom(thrown, join(dirname(path), 'copies'));
  const next = 'the job itself is open; allow writing there for the next copy';
  return fault(kind, `the dated copy of the day was not made: ${what}`, where, next);
}
