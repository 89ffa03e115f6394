// What there is to go back to where a job file is refused: the newest of its dated copies that holds calls, and the very
// command that puts it in its place and keeps the broken file beside it. It changes nothing itself.
import { basename, dirname, join } from 'node:path';
import { newline } from './chain.ts';
import { copiedFrom, copiesOf, isBeforeCut } from './copies.ts';
import { type Disk, readFile, readFully } from './disk.ts';
import { type Fault, fault, isFault } from './fault.ts';
import { callsBeforeFault, type ReadLine, readJournal } from './journal.ts';

export type GoodCopy = { path: string; calls: number; changedMs: number };

/** The newest copy that can be read whole and holds at least one call. */
export async function goodCopyOf<L extends { n: number }>(
  disk: Disk,
  jobPath: string,
  readLine: ReadLine<L>,
): Promise<GoodCopy | undefined> {
  const copies = await copiesOf(disk, jobPath).catch(() => []);
  for (const path of copies.reverse()) {
    const copy = await goodCopyAt(disk, path, readLine);
    if (copy) return copy;
  }
  return undefined;
}
/** One that is broken too is passed over for an older one. */
async function goodCopyAt<L extends { n: number }>(
  disk: Disk,
  path: string,
  readLine: ReadLine<L>,
  beginning: Buffer = Buffer.alloc(0),
): Promise<GoodCopy | undefined> {
  try {
    const bytes = await readFile(disk, path);
    if (!bytes.subarray(0, beginning.length).equals(beginning)) return undefined;
    const { lines, doubt } = readJournal(bytes, path, readLine);
    const { changedMs } = await disk.stat(path);
    return lines.length > 0 && !doubt ? { path, calls: lines.length, changedMs } : undefined;
  } catch (thrown) {
    if (!isFault(thrown) && !(thrown instanceof Error && 'code' in thrown)) throw thrown;
    return undefined;
  }
}

/**
 * Of a file whose end was cut off after it had been whole, of an older one in its place, or of one that another laptop went
 * on with: a copy holds what is not in it.
 * @param found what is wrong with its end by itself
 * @param held what of the file holds
 * @returns undefined where no copy holds more
 */
export async function moreInCopy<L extends { n: number }>(
  found: Fault | undefined,
  where: { disk: Disk; path: string; readLine: ReadLine<L> },
  held: { bytes: Buffer; calls: number },
): Promise<{ fault: Fault; copy: string } | undefined> {
  const { path } = where;
  const copies = await datedCopies(where);
  const copy = (await longerThan(held, copies, where)) ?? (await otherThan(held, copies[0], where));
  if (!copy) return undefined;
  const { more, from } = copy;
  const holds = `${more} ${more === 1 ? 'call' : 'calls'}`;
  const next = `open the job again: it asks whether to go on from that copy (${copy.path})`;
  if (from !== undefined) {
    const what = `a copy says otherwise from call ${from} on, and holds ${holds} that this file does not: another file was put in its place, or two programs went on from one`;
    return { fault: fault('copy-differs', what, path, next), copy: copy.path };
  }
  const told = found
    ? fault(found.kind, `${found.what}; a copy holds ${holds} more`, found.where, next)
    : fault('torn', `a copy holds ${holds} more: the end of the file was cut off, or it is an older one`, path, next);
  return { fault: told, copy: copy.path };
}

type Sized = { path: string; size: number };
type More = { path: string; more: number; from?: number };
/** Those nobody answered about yet, the newest first. */
async function datedCopies({ disk, path }: { disk: Disk; path: string }): Promise<Sized[]> {
  const copies = (await copiesOf(disk, path).catch(() => [])).filter((copy) => !isBeforeCut(copy));
  const sizes = await Promise.all(copies.map((copy) => disk.stat(copy).catch(() => undefined)));
  return copies.map((copy, i) => ({ path: copy, size: sizes[i]?.size ?? 0 })).reverse();
}
/** Asked with every job that is opened: no copy is read for it that is no longer than the file. */
async function longerThan<L extends { n: number }>(
  { bytes, calls }: { bytes: Buffer; calls: number },
  copies: readonly Sized[],
  { disk, readLine }: { disk: Disk; readLine: ReadLine<L> },
): Promise<More | undefined> {
  for (const { path, size } of copies) {
    const copy = size > bytes.length ? await goodCopyAt(disk, path, readLine, bytes) : undefined;
    if (copy && copy.calls > calls) return { path, more: copy.calls - calls };
  }
  return undefined;
}
/** Of the newest copy, which the file begins with; each link rests on all before it, so that the ends tell. */
async function otherThan<L extends { n: number }>(
  { bytes }: { bytes: Buffer },
  newest: Sized | undefined,
  { disk, readLine }: { disk: Disk; readLine: ReadLine<L> },
): Promise<More | undefined> {
  if (!newest || (await endsAlike(disk, newest, bytes))) return undefined;
  const copy = await goodCopyAt(disk, newest.path, readLine);
  if (!copy) return undefined;
  const alike = wholeLinesAlike(await readFile(disk, newest.path), bytes);
  // The header is a line as well.
  const more = copy.calls - Math.max(0, alike - 1);
  return more > 0 ? { path: newest.path, more, from: alike } : undefined;
}
const endBytes = 256;
async function endsAlike(disk: Disk, { path, size }: Sized, bytes: Buffer): Promise<boolean> {
  if (size > bytes.length) return false;
  const from = Math.max(0, size - endBytes);
  try {
    const file = await disk.open(path, 'read');
    try {
      return (await readFully(file, from, size)).equals(bytes.subarray(from, size));
    } finally {
      await file.close();
    }
  } catch {
    // What cannot be read says nothing of the file.
    return true;
  }
}
function wholeLinesAlike(one: Buffer, other: Buffer): number {
  let lines = 0;
  for (let at = 0; at < one.length && one[at] === other[at]; at++) if (one[at] === newline) lines++;
  return lines;
}

/** @param aside what the file that is there is called from then on; undefined where none is there */
export function commandBack(
  jobPath: string,
  { path }: Pick<GoodCopy, 'path'>,
  platform: string,
  aside: string | undefined,
): string {
  const [folder, job, copy] = [dirname(jobPath), basename(jobPath), join(basename(dirname(path)), basename(path))].map(
    (one) => quoted(one, platform),
  );
  const away = aside === undefined ? [] : [quoted(aside, platform)];
  const [enter, move, take, and] = platform === 'win32' ? ['cd /d', 'move', 'copy', ' & '] : ['cd', 'mv', 'cp', ' && '];
  return [`${enter} ${folder}`, ...away.map((to) => `${move} ${job} ${to}`), `${take} ${copy} ${job}`].join(and);
}

/** Why a copy is only looked at, and how to go on from it: in the place of its job, the file there put aside. */
export async function onlyACopy(disk: Disk, path: string): Promise<Fault> {
  const job = copiedFrom(path);
  const isThere = (await disk.stat(job).catch(() => undefined)) !== undefined;
  const way = commandBack(job, { path }, process.platform, isThere ? `${basename(job)}.aside` : undefined);
  return fault('copy', 'this is a copy, opened to look only', path, `to go on from it: ${way}`, true);
}
/** Only where a shell would read it otherwise. */
function quoted(path: string, platform: string): string {
  if (platform === 'win32') return `"${path}"`;
  return /^[\w./+:@%-]+$/.test(path) ? path : `'${path.replaceAll("'", "'\\''")}'`;
}

const broken: ReadonlySet<Fault['kind']> = new Set(['damaged', 'foreign', 'empty']);

/** A refused file's fault, with the way back there is from it. */
export async function withWayBack<L extends { n: number }>(
  told: Fault,
  { disk, path, readLine }: { disk: Disk; path: string; readLine: ReadLine<L> },
): Promise<Fault> {
  if (!broken.has(told.kind)) return told;
  const facts = await disk.stat(path).catch(() => undefined);
  if (facts?.kind !== 'file') return told;
  const copy = await goodCopyOf(disk, path, readLine);
  const way = copy
    ? `its newest good copy has ${copy.calls} ${copy.calls === 1 ? 'call' : 'calls'}, and comes back with: ${commandBack(path, copy, process.platform, `${basename(path)}.broken`)}`
    : 'no dated copy of it holds a call: bring it back from your own backup';
  const whole = told.kind === 'damaged' ? callsBeforeFault(await readFile(disk, path), path, readLine).length : 0;
  // Those of the copy are looked at in the copy.
  const look =
    whole > (copy?.calls ?? 0)
      ? `; the ${whole === 1 ? 'call' : `${whole} calls`} before the fault: countback verify ${quoted(path, process.platform)} --calls`
      : '';
  return fault(told.kind, told.what, told.where, `${told.next}; ${way}${look}`);
}
