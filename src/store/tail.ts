// The growing end of a job file on the disk: one line at a time, each on the disk before the next is begun, so that at
// any instant at most one line is in doubt. It knows bytes and where the chain stands; not what a line says.
import { endBytes, type Reached, readChain } from './chain.ts';
import { type Disk, type OpenFile, readFully, writeFully } from './disk.ts';
import { type Fault, fault, hasCode } from './fault.ts';

export type Tail = {
  /** Leaves the file whole: no half-written end, a newline behind the last line, all of it on the disk. */
  settle(): Promise<void>;
  /** Back when `bytes` are on the disk and the chain stands at `next`. Throws otherwise; ask again with the same. */
  append(bytes: Buffer, next: Reached): Promise<void>;
  /** Whether the file is still the one that was left here, by its place, its size and its end. */
  isAsLeft(): Promise<boolean>;
  close(): Promise<void>;
};

/** The file as it was read: all of its bytes, and where the verified ones end. */
export type AsRead = { bytes: Buffer; reached: Reached; lastFrom: number; inode: string };

export function openTail(
  disk: Disk,
  path: string,
  { bytes, reached, lastFrom, inode }: AsRead,
  stillMine: () => Promise<Fault | undefined>,
): Tail {
  let size = bytes.length;
  let handle: OpenFile | undefined;
  /** Until the file is settled: its verified bytes, without the last newline, which may be missing. */
  let unsettled: Buffer | undefined = bytes.subarray(0, reached.end - 1);
  let pending: Buffer = Buffer.alloc(0);
  /** The last of what is in the file: each link rests on all before it. */
  let end: Buffer = Buffer.from(bytes.subarray(-endBytes));

  const changed = (what: string) =>
    fault(
      'changed-underneath',
      what,
      path,
      'countback has not written over it; leave, and all that was called is kept in a copy',
    );

  const gone = (thrown: unknown): never => {
    if (!hasCode(thrown, 'ENOENT')) throw thrown;
    const next = 'put it back in its place and save again; or leave, and all that was called is kept in a copy';
    throw fault('missing', 'the job file is not there any more', path, next);
  };

  async function asLeft(file: OpenFile): Promise<OpenFile> {
    const facts = await disk.stat(path).catch(gone);
    if (facts.inode !== inode) throw changed('another file is in the place of the job file');
    if (facts.size !== size) throw changed(`the job file has ${facts.size} bytes and was left with ${size}`);
    return file;
  }

  // After a failure the open file is not trusted: what it shows may be memory that the disk never took.
  async function openAgain(): Promise<OpenFile> {
    const lost = await stillMine();
    if (lost) throw lost;
    const file = await disk.open(path, 'write').catch(gone);
    try {
      const facts = await file.stat();
      const bytes = await readFully(file, 0, facts.size);
      if (!(unsettled ? isAsRead(bytes, unsettled) : isAsWritten(bytes)))
        throw changed('the job file is not as it was left');
      inode = facts.inode;
      size = facts.size;
      handle = file;
      return file;
    } catch (thrown) {
      await file.close().catch(() => undefined);
      throw thrown;
    }
  }

  const isAsRead = (bytes: Buffer, verified: Buffer) =>
    bytes.length <= Math.max(size, reached.end) && bytes.subarray(0, verified.length).equals(verified);

  function isAsWritten(bytes: Buffer) {
    const there = readChain(bytes.subarray(0, reached.end)).reached;
    return there.end === reached.end && there.digest.equals(reached.digest) && isOurs(bytes.subarray(reached.end));
  }

  /** What our own broken write can have left: the beginning of the line, with blocks of it missing. */
  const isOurs = (rest: Buffer) =>
    rest.length <= pending.length && rest.every((byte, i) => byte === pending[i] || byte === 0);

  async function forget() {
    const file = handle;
    handle = undefined;
    await file?.close().catch(() => undefined);
  }

  async function settle() {
    if (!unsettled) return;
    try {
      const file = await openAgain();
      if (size > reached.end) await file.truncate(reached.end);
      // The last line is what an earlier end may have left in memory only, and if that end's fsync failed, the disk will
      // not be asked for it again: only bytes written anew are. The same bytes, so nothing can be lost by it.
      const lastLine = Buffer.concat([unsettled.subarray(lastFrom), Buffer.from('\n')]);
      await writeFully(file, lastLine, lastFrom);
      await file.sync();
      size = reached.end;
      end = Buffer.concat([unsettled, Buffer.from('\n')]).subarray(-endBytes);
      unsettled = undefined;
    } catch (thrown) {
      await forget();
      throw thrown;
    }
  }

  async function write(bytes: Buffer, next: Reached, mayTryAgain: boolean): Promise<void> {
    const file = handle ? await asLeft(handle) : await openAgain();
    await writeFully(file, bytes, reached.end);
    try {
      await file.sync();
    } catch (thrown) {
      await forget();
      if (!mayTryAgain) throw thrown;
      return write(bytes, next, false);
    }
    size = next.end;
    reached = next;
    end = Buffer.concat([end, bytes]).subarray(-endBytes);
  }

  async function append(bytes: Buffer, next: Reached) {
    pending = bytes;
    try {
      await write(bytes, next, true);
    } catch (thrown) {
      await forget();
      throw thrown;
    }
  }

  async function isAsLeft(): Promise<boolean> {
    try {
      const facts = await disk.stat(path);
      if (facts.inode !== inode || facts.size !== size) return false;
      const file = await disk.open(path, 'read');
      try {
        const from = Math.max(0, size - endBytes);
        return (await readFully(file, from, size)).equals(end);
      } finally {
        await file.close();
      }
    } catch {
      return false;
    }
  }

  return { settle, append, isAsLeft, close: forget };
}
