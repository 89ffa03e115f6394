// One job file, open: its lines, and one way to add one. Hides lowdb, the lock and the disk behind it. It does not know
// what a line means and shows nothing; who opens it says how a line is read.
import { dirname } from 'node:path';
import { Low } from 'lowdb';
import { plainText } from '../trade/plain-text.ts';
import { newline } from './chain.ts';
import { copyBeforeCut, copyOfTheDay, isCopy } from './copies.ts';
import { keptBeforeCut, noCopy } from './copies-told.ts';
import { type Disk, readFile, realDisk } from './disk.ts';
import { type Fault, fault, faultFrom, hasCode, isFault } from './fault.ts';
import { headerLine, type ReadLine } from './journal.ts';
import { type JobFile, type JournalAdapter, journalAdapter, readJobBytes } from './journal-adapter.ts';
import { keptWhole } from './kept-whole.ts';
import { type Lock, takeLock } from './lock.ts';
import { lookingOn } from './looking-on.ts';
import { asideForFile, backFromCopy, moreInCopy } from './more-in-copy.ts';
import { type Processes, realProcesses } from './processes.ts';
import { type Saved, savingOf } from './saving.ts';
import { onlyACopy, withWayBack } from './way-back.ts';
import { writeWhole } from './whole-file.ts';

export type OpenJob<L> = {
  readonly path: string;
  readonly job: string;
  /** `look`: nothing can be written; `whyLook` says why, and is absent where only a look was asked for. */
  readonly mode: 'write' | 'look';
  readonly whyLook?: Fault;
  /**
   * The last line does not hold, or a copy holds what the file does not. Opening again with `goOnFrom: byte` goes on
   * without that, with `fromCopy: copy` besides from that copy.
   */
  readonly doubt?: { fault: Fault; byte: number; copy?: string };
  /** To be told once: a half-written line left out, a copy that could not be made. */
  readonly notices: readonly Fault[];
  /** Every line taken, saved or not. */
  lines(): readonly L[];
  /** Back when the line is on the disk, or is known not to be. Calls may overlap: lines are saved in their order. */
  append(line: L): Promise<Saved>;
  /** Why no line is taken just now. */
  trouble(): Fault | undefined;
  unsaved(): readonly L[];
  /** Saves what is not saved; lines are taken again when that went well. */
  retry(): Promise<Saved>;
  /** The full digest, in hex, behind the last saved line. */
  digest(): string;
  /** Only while looking on: new lines as another program saves them. Returns what ends it. */
  onLine(told: { line(line: L): void; fault(fault: Fault): void }, everyMs?: number): () => void;
  /** Lets go of the job; returns what was not saved. */
  close(): Promise<readonly L[]>;
  /** Once it is closed: what became of its file while it was open, and where all that was called is kept. */
  parted(): Fault | undefined;
};

export type OpenJobOptions<L> = {
  path: string;
  readLine: ReadLine<L>;
  look?: boolean;
  goOnFrom?: number;
  fromCopy?: string;
  disk?: Disk;
  processes?: Processes;
  now?: () => Date;
};

/**
 * A new job with no line yet, whole at once. Throws a fault where a file is there already.
 * @returns where it ends: to open it with `goOnFrom`, since copies of one that lay there before it hold nothing of it
 */
export async function createJob(path: string, job: string, disk: Disk = realDisk): Promise<number> {
  if (isCopy(path)) throw fault('bad-name', 'what lies in a folder "copies" is only looked at', path, 'choose another');
  const { bytes } = headerLine(plainText(job));
  try {
    await writeWhole(disk, path, bytes, 'fresh');
    return bytes.length;
  } catch (thrown) {
    throw hasCode(thrown, 'EEXIST')
      ? fault('exists', 'there is a job of this name already', path, 'open that one, or choose another name', true)
      : faultFrom(thrown, path);
  }
}

/** Opens a job to write it or, where that cannot be, to look. Throws a fault where the file is refused. */
export async function openJob<L extends { n: number }>(options: OpenJobOptions<L>): Promise<OpenJob<L>> {
  const { path, look = false, disk = realDisk, processes = realProcesses } = options;
  try {
    // A refused file gets no lock beside it.
    await readJobBytes({ disk, path });
    const held = isCopy(path)
      ? await onlyACopy(disk, path)
      : look
        ? undefined
        : await lockOrFault(disk, processes, path);
    try {
      const told = held && !isFault(held) ? await backFromCopy({ ...options, disk }) : [];
      const job = await openWith(options, disk, held);
      return told.length > 0 ? { ...job, notices: [...told, ...job.notices] } : job;
    } catch (thrown) {
      if (held && !isFault(held)) await letGo(held);
      throw thrown;
    }
  } catch (thrown) {
    throw await withWayBack(faultFrom(thrown, path), { disk, path, readLine: options.readLine });
  }
}

async function openWith<L extends { n: number }>(
  { path, readLine, goOnFrom, now = () => new Date() }: OpenJobOptions<L>,
  disk: Disk,
  held: Lock | Fault | undefined,
): Promise<OpenJob<L>> {
  const lock = isFault(held) ? undefined : held;
  const saving = savingOf(() => low, path);
  const stillMine = async () => lock?.stillMine();
  const adapter: JournalAdapter<L> = journalAdapter({ disk, path }, readLine, stillMine, saving.onSaved);
  const low: Low<JobFile<L>> = new Low(adapter, { job: '', lines: [] });
  await low.read();

  const read = adapter.asRead();
  const ofCopy = isFault(held) && held.kind === 'copy';
  const asFound = read.doubt?.fault ?? read.torn;
  // Without an end that is cut off: a copy that held it would not be the beginning of what the job is by evening.
  const holding = withNewline(read.bytes.subarray(0, read.reached.end), read.reached.end);
  const ofEnd = { bytes: holding, calls: low.data.lines.length };
  // While another program writes, a line that is not whole yet is no news.
  const isWritten = isFault(held) && !ofCopy;
  const more = held === undefined || lock ? await moreInCopy(asFound, { disk, path, readLine }, ofEnd) : undefined;
  const asked = isWritten || read.reached.end === goOnFrom ? undefined : (more ?? read.doubt);
  // Of a copy it is told and not asked: nothing goes on from it here.
  const doubt = ofCopy || !asked ? undefined : { ...asked, byte: read.reached.end };
  const torn = isWritten || doubt ? undefined : read.torn;
  const noticed = torn ?? (ofCopy ? read.doubt?.fault : undefined);
  const shared = { path, job: low.data.job, notices: noticed ? [noticed] : [], lines: () => low.data.lines };

  if (!lock || doubt) {
    if (lock) await letGo(lock);
    const whyLook = isFault(held) ? held : lock && doubt?.fault;
    return {
      ...shared,
      ...(whyLook && { whyLook }),
      ...(doubt && { doubt }),
      ...lookingOn(disk, path, readLine, read, low, whyLook),
    };
  }

  const aside = await asideForFile(more, { disk, path, readLine }, ofEnd, now());
  if (read.doubt) await copyBeforeCut(disk, path, read.bytes, now());
  const cut = torn ? [await keptBeforeCut(torn, disk, path, read.bytes, now())] : [];
  shared.notices = [...aside, ...cut];
  await copyOfTheDay(disk, path, holding, now()).catch((thrown: unknown) => shared.notices.push(noCopy(thrown, path)));
  // Settles what an earlier end left behind; where that fails, the job is open and in trouble.
  if (!saving.trouble()) await saving.retry();
  const unsaved = () => (parted?.kept ? [] : low.data.lines.slice(adapter.saved().lines));
  let closed = false;
  let parted: Awaited<ReturnType<typeof keptWhole>> | undefined;
  return {
    ...shared,
    mode: 'write',
    async append(line) {
      if (closed) throw new Error('the job is closed');
      return saving.append(line);
    },
    trouble: saving.trouble,
    unsaved,
    retry: saving.retry,
    digest: () => adapter.saved().reached.digest.toString('hex'),
    onLine: () => () => undefined,
    parted: () => parted?.told,
    async close() {
      if (closed) return unsaved();
      closed = true;
      await saving.idle();
      const isParted = ofAnother(saving.trouble()) && !(await adapter.isAsLeft());
      await adapter.close();
      if (isParted) parted = await keptWhole({ disk, path }, { ...low.data, opened: read.reached }, now());
      // What was called since it was opened: a job of one day would else have its first line for a copy.
      if (!isParted && !saving.trouble())
        await readFile(disk, path)
          .then((bytes) => copyOfTheDay(disk, path, bytes, now()))
          .catch(() => undefined);
      await letGo(lock);
      return unsaved();
    },
  };
}

/** The last newline may be missing, and is put there when the file is settled. */
const withNewline = (bytes: Buffer, end: number): Buffer =>
  bytes.length < end ? Buffer.concat([bytes, Buffer.of(newline)]) : bytes;

/** A full or broken disk leaves the end of the file otherwise by itself. */
const ofAnother = (trouble: Fault | undefined): boolean =>
  trouble === undefined || ['changed-underneath', 'missing', 'foreign'].includes(trouble.kind);

/** What keeps from writing does not keep from looking. */
async function lockOrFault(disk: Disk, processes: Processes, path: string): Promise<Lock | Fault> {
  try {
    return await takeLock(disk, processes, path);
  } catch (thrown) {
    // A lock lies beside the file: it is the folder that would not have it.
    return faultFrom(thrown, dirname(path));
  }
}

/** A lock that cannot be let go of dies with this process. */
const letGo = (lock: Lock) => lock.release().catch(() => undefined);
