// A copy that holds calls which its job file does not: how it is found, what is told of it, and going on from it. Nothing
// of it is done unasked.
import { endBytes, newline } from './chain.ts';
import { copiesOf, copyBeforeCut, isBeforeCut, putAside } from './copies.ts';
import { type Disk, readFile, readFully } from './disk.ts';
import { type Fault, fault } from './fault.ts';
import { type ReadLine, readJournal } from './journal.ts';
import { jobFileEnding } from './places.ts';
import { commandBack, goodCopyAt } from './way-back.ts';
import { writeWhole } from './whole-file.ts';

type Where<L> = { disk: Disk; path: string; readLine: ReadLine<L> };

/**
 * Of a file whose end was cut off after it had been whole, of an older one in its place, or of one that another laptop went
 * on with: a copy holds what is not in it.
 * @param found what is wrong with its end by itself
 * @param held what of the file holds
 * @returns undefined where no copy holds more
 */
export async function moreInCopy<L extends { n: number }>(
  found: Fault | undefined,
  where: Where<L>,
  held: { bytes: Buffer; calls: number },
): Promise<Found | undefined> {
  const { path } = where;
  const copies = await datedCopies(where);
  const copy = (await longerThan(held, copies, where)) ?? (await otherThan(held, copies[0], where));
  if (!copy) return undefined;
  const { more, from } = copy;
  const holds = `${more} ${more === 1 ? 'call' : 'calls'}`;
  const next = `open the job again: it asks whether to go on from that copy (${copy.path})`;
  if (from !== undefined) {
    const own = held.calls - from + 1;
    if (from <= 1) {
      const what = `a copy of this name is of another job from its first call on, and holds ${holds}; another file was put in its place`;
      return { fault: fault('copy-differs', what, path, next), copy: copy.path, isOther: true };
    }
    const what = `a copy says otherwise from call ${from} on: it holds ${holds} that this file does not, and this file ${own} that it does not; another file was put in its place, or two programs went on from one`;
    return { fault: fault('copy-differs', what, path, next), copy: copy.path };
  }
  const told = found
    ? fault(found.kind, `${found.what}; a copy holds ${holds} more`, found.where, next)
    : fault('torn', `a copy holds ${holds} more: the end of the file was cut off, or it is an older one`, path, next);
  return { fault: told, copy: copy.path };
}

/** `isOther`: not a call of it is in the file. */
type Found = { fault: Fault; copy: string; isOther?: true };
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

/** The copy in the place of the file, which stays in a copy as it was: at no moment is there neither. */
export async function backFromCopy<L extends { n: number }>({
  disk,
  path,
  readLine,
  goOnFrom,
  fromCopy: copy,
  now = () => new Date(),
}: Where<L> & { goOnFrom?: number; fromCopy?: string; now?: () => Date }): Promise<Fault[]> {
  if (copy === undefined) return [];
  // Put aside since that was asked, or the file gone on with: it is asked about as it is now.
  if ((await copiesOf(disk, path)).every((one) => one !== copy)) return [];
  const [bytes, file] = [await readFile(disk, copy), await readFile(disk, path)];
  if (readJournal(file, path, readLine).reached.end !== goOnFrom) return [];
  readJournal(bytes, copy, readLine);
  const kept = await copyBeforeCut(disk, path, file, now());
  await writeWhole(disk, path, bytes, 'replace');
  const both = wholeLinesAlike(bytes, file) <= 1 ? `; ${await besideIt({ disk, path }, kept)}` : '';
  const next = `the file as it was lies in ${kept}${both}`;
  return [fault('copy', 'the copy stands in the place of the file now', path, next)];
}
/** Of two jobs under one name the other comes onto the shelf under one of its own. */
async function besideIt({ disk, path }: { disk: Disk; path: string }, kept: string): Promise<string> {
  const stem = path.endsWith(jobFileEnding) ? path.slice(0, -jobFileEnding.length) : path;
  let n = 2;
  while (await disk.stat(`${stem}-${n}${jobFileEnding}`).catch(() => undefined)) n++;
  const way = commandBack(`${stem}-${n}${jobFileEnding}`, { path: kept }, process.platform, undefined);
  return `beside this one it stands after: ${way}`;
}
/** What the file was gone on with instead of, put aside. @param more the first of it */
export async function asideForFile<L extends { n: number }>(
  more: Found | undefined,
  where: Where<L>,
  held: { bytes: Buffer; calls: number },
  now: Date,
): Promise<Fault[]> {
  const told: Fault[] = [];
  for (let gone = more; gone; gone = await moreInCopy(undefined, where, held)) {
    const kept = await putAside(where.disk, where.path, gone.copy, now);
    const what = held.calls === 0 ? 'another job of this name lay here before' : 'it goes on with this file';
    const both = gone.isOther || held.calls === 0 ? `; ${await besideIt(where, kept)}` : '';
    told.push(fault('copy', what, where.path, `what the copy of it held lies in ${kept}${both}`));
  }
  return told;
}
