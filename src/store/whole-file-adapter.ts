// A small JSON file as lowdb's `Low` reads and writes it, whole and durable: the workshop's settings, what is remembered
// of vehicles. A missing file leaves the default; a broken one, or one changed by another hand, is never written over.
import type { Adapter } from 'lowdb';
import { type Disk, readFile } from './disk.ts';
import { fault, hasCode } from './fault.ts';
import { writeWhole } from './whole-file.ts';

/** Far beyond what a workshop sets or remembers; a file beyond it would only fill the memory. */
const longestBytes = 16_000_000;

/** `read` makes the value of the text, or throws a fault. */
export function wholeFileAdapter<T>(disk: Disk, path: string, read: (text: string) => T): Adapter<T> {
  /** Undefined until it was read and found good; null where there is no file. */
  let known: Buffer | null | undefined;

  return {
    async read() {
      known = undefined;
      const bytes = await contents(disk, path);
      const value = bytes && read(bytes.toString('utf8').replace(/^\u{FEFF}/u, ''));
      known = bytes;
      return value;
    },
    async write(value) {
      if (known === undefined) throw fault('bad-settings', 'this file has a fault', path, 'put it right first');
      const there = await contents(disk, path);
      const asKnown = known === null || there === null ? known === there : known.equals(there);
      if (!asKnown)
        throw fault('changed-underneath', 'this file was changed by another hand', path, 'start again to read it');
      const bytes = Buffer.from(`${JSON.stringify(value, null, 2)}\n`);
      await writeWhole(disk, path, bytes, 'replace');
      known = bytes;
    },
  };
}

async function contents(disk: Disk, path: string): Promise<Buffer | null> {
  try {
    const { kind, size } = await disk.stat(path);
    if (kind !== 'file') throw fault('foreign', 'this is no file', path, 'move it elsewhere');
    if (size > longestBytes) throw fault('foreign', 'the file is larger than 16 MB', path, 'move it elsewhere');
    return await readFile(disk, path);
  } catch (thrown) {
    if (hasCode(thrown, 'ENOENT')) return null;
    throw thrown;
  }
}
