// Looking on at a job that another program writes: new whole lines as they come. It never writes, takes no lock, and
// waits where the last line is not whole yet.
import { type Reached, readChain } from './chain.ts';
import { type Disk, readFully } from './disk.ts';
import { fault } from './fault.ts';
import { lineFrom, placeIn, type ReadLine } from './journal.ts';

export type Follower<L> = {
  /** The lines that came since the last look. Throws a fault when the file is no longer the one that was opened. */
  look(): Promise<L[]>;
  reached(): Reached;
};

export type From = { reached: Reached; lines: number; inode: string; newlineMissing: boolean };

export function followJob<L extends { n: number }>(
  { disk, path }: { disk: Disk; path: string },
  from: From,
  readLine: ReadLine<L>,
): Follower<L> {
  let { reached, lines, newlineMissing } = from;

  const changed = (what: string) => fault('changed-underneath', what, path, 'leave, and open the job again');

  async function look(): Promise<L[]> {
    const bytes = await bytesSince();
    if (bytes.length === 0) return [];
    const chain = readChain(bytes, reached);
    if (chain.tail.kind === 'damaged')
      throw fault('damaged', `line ${chain.tail.line} is not as it was written`, placeIn(path, chain.tail), 'leave');
    // A line shows when its newline does: until then it may still be taken back.
    const whole = chain.tail.kind === 'newline-missing' ? chain.texts.slice(0, -1) : chain.texts;
    const came = whole.map((text, i) => lineFrom(text, lines + i + 1, path, readLine));
    reached = whole.length < chain.texts.length ? chain.beforeLast : chain.reached;
    lines += came.length;
    return came;
  }

  async function bytesSince(): Promise<Buffer> {
    const facts = await disk.stat(path);
    if (facts.inode !== from.inode) throw changed('another file is in the place of the job file');
    const known = newlineMissing ? reached.end - 1 : reached.end;
    if (facts.size < known) throw changed('the job file became shorter');
    if (facts.size <= reached.end) return Buffer.alloc(0);
    const file = await disk.open(path, 'read');
    try {
      const bytes = await readFully(file, reached.end - 1, facts.size);
      // What ends the last known line is put right by whoever writes the job.
      if (bytes[0] !== 0x0a) return Buffer.alloc(0);
      newlineMissing = false;
      return bytes.subarray(1);
    } finally {
      await file.close();
    }
  }

  return { look, reached: () => reached };
}

/** Looks every `everyMs` until the returned function is called; stops by itself after a fault. */
export function everySoOften<L>(
  follower: Follower<L>,
  everyMs: number,
  onLines: (lines: L[]) => void,
  onThrown: (thrown: unknown) => void,
): () => void {
  let timer: NodeJS.Timeout | undefined;
  let stopped = false;
  const again = () => {
    if (!stopped) timer = setTimeout(once, everyMs);
    timer?.unref();
  };
  const once = async () => {
    try {
      const came = await follower.look();
      if (stopped) return;
      if (came.length > 0) onLines(came);
      again();
    } catch (thrown) {
      if (!stopped) onThrown(thrown);
    }
  };
  again();
  return () => {
    stopped = true;
    clearTimeout(timer);
  };
}
