// A job's log as lowdb's `Low` reads and writes it: `read` takes the whole file, `write` appends the lines that are not
// on the disk yet. It throws where there is no file or an empty one: `Low` would keep its default, and a job that
// vanished would look like a new one.
import type { Adapter } from 'lowdb';
import { linked, type Reached } from './chain.ts';
import { type Disk, readFully } from './disk.ts';
import { type Fault, fault } from './fault.ts';
import { headerBytesMost, type Journal, type ReadLine, readHeader, readJournal } from './journal.ts';
import { jobFileEnding } from './places.ts';
import { openTail, type Tail } from './tail.ts';

export type JobFile<L> = { job: string; lines: L[] };

export type AsRead<L> = Journal<L> & { bytes: Buffer; inode: string };

export type JournalAdapter<L> = Adapter<JobFile<L>> & {
  read(): Promise<JobFile<L>>;
  /** What the last `read` found, given out once: the bytes of a long job are not kept while it is open. */
  asRead(): AsRead<L>;
  /** How many lines are on the disk, and where the chain stands behind them. */
  saved(): { lines: number; reached: Reached };
  isAsLeft(): Promise<boolean>;
  close(): Promise<void>;
};

export type Where = { disk: Disk; path: string };

export function journalAdapter<L extends { n: number }>(
  { disk, path }: Where,
  readLine: ReadLine<L>,
  stillMine: () => Promise<Fault | undefined>,
  onSaved: (n: number) => void,
): JournalAdapter<L> {
  let found: AsRead<L> | undefined;
  let tail: Tail | undefined;
  let savedLines = 0;
  let reached: Reached | undefined;

  const opened = <T>(what: T | undefined): T => {
    if (what === undefined) throw new Error('the job file was not read');
    return what;
  };

  return {
    async read() {
      const { bytes, inode } = await readJobBytes({ disk, path });
      const journal = readJournal(bytes, path, readLine);
      found = { ...journal, bytes, inode };
      reached = journal.reached;
      savedLines = journal.lines.length;
      tail = openTail(disk, path, { bytes, reached, lastFrom: journal.lastFrom, inode }, stillMine);
      return { job: journal.job, lines: [...journal.lines] };
    },
    async write({ lines }) {
      await opened(tail).settle();
      // One line, one fsync: two lines in doubt at once could leave a hole before a whole line, which reads as damage.
      while (savedLines < lines.length) {
        const next = linked(opened(lines[savedLines]), opened(reached));
        await opened(tail).append(next.bytes, next.reached);
        reached = next.reached;
        savedLines++;
        onSaved(savedLines);
      }
    },
    asRead() {
      const given = opened(found);
      found = undefined;
      return given;
    },
    saved: () => ({ lines: savedLines, reached: opened(reached) }),
    isAsLeft: async () => opened(tail).isAsLeft(),
    close: async () => tail?.close(),
  };
}

/** Many times the longest job there will be; a file beyond it would only fill the memory. */
export const longestJobBytes = 256_000_000;

/** Throws a fault where there is no file, or something that cannot be a job's, before it is read as a whole. */
export async function readJobBytes({ disk, path }: Where): Promise<{ bytes: Buffer; inode: string }> {
  const { kind } = await disk.stat(path);
  if (kind === 'folder' && path.endsWith(jobFileEnding))
    throw fault('foreign', 'a folder stands in the place of a job file', path, 'move it out of the folder of jobs');
  if (kind === 'folder')
    throw fault('foreign', 'this is a folder, not a job file', path, 'name the job file inside it');
  if (kind === 'other') throw fault('foreign', 'this is neither file nor folder', path, 'name a job file');
  const file = await disk.open(path, 'read');
  try {
    const { size, inode } = await file.stat();
    readHeader(await readFully(file, 0, Math.min(size, headerBytesMost)), path);
    if (size > longestJobBytes)
      throw fault(
        'foreign',
        'the file is larger than any job, 256 MB',
        path,
        'name a job file, or take its dated copy',
      );
    return { bytes: await readFully(file, 0, size), inode };
  } finally {
    await file.close();
  }
}
