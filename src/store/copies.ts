// Dated copies of a job file in the folder "copies" beside it: one a day, made when the job is opened, the last seven
// kept. None is written over, but by more of the same: a job begun today is no longer its first line by noon.
import { basename, dirname, join } from 'node:path';
import { type Disk, readFile } from './disk.ts';
import { hasCode } from './fault.ts';
import { jobFileEnding } from './places.ts';
import { unlinkIfThere, writeWhole } from './whole-file.ts';

const kept = 7;

const folderName = 'copies';
const folderOf = (jobPath: string) => join(dirname(jobPath), folderName);
const stemOf = (jobPath: string) => basename(jobPath, jobFileEnding);

const two = (n: number) => String(n).padStart(2, '0');
const dayOf = (d: Date) => `${String(d.getFullYear()).padStart(4, '0')}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
const timeOf = (d: Date) => `${two(d.getHours())}${two(d.getMinutes())}${two(d.getSeconds())}`;

/** Whether a file lies where copies do: whoever made it, it is there to be gone back to, and not to be written. */
export const isCopy = (path: string): boolean => basename(dirname(path)).toLowerCase() === folderName;

const dated = /\.\d{4}-\d\d-\d\d(?:-\d{6}-before-cut)?(?=\.countback\.jsonl$)/;
/** The job file a copy was made of, whether or not it is there; of a copy with no date, one of the same name. */
export function copiedFrom(copy: string): string {
  const name = basename(copy).replace(dated, '');
  return join(dirname(dirname(copy)), name);
}

/** Whether it was put aside by an answer: what of it was gone on without is not asked about again. */
export const isBeforeCut = (copy: string): boolean => copy.endsWith(`-before-cut${jobFileEnding}`);

/** A dated copy that was gone on without, under a name that never grows old. */
export async function putAside(disk: Disk, jobPath: string, copy: string, now: Date): Promise<string> {
  const kept = await copyBeforeCut(disk, jobPath, await readFile(disk, copy), now);
  await unlinkIfThere(disk, copy);
  return kept;
}

/** Every copy of a job there is, the oldest first. A folder that is not there holds none. */
export async function copiesOf(disk: Disk, jobPath: string): Promise<string[]> {
  const job = `${stemOf(jobPath)}${jobFileEnding}`;
  try {
    return (await disk.readdir(folderOf(jobPath)))
      .filter((name) => dated.test(name) && name.replace(dated, '') === job)
      .sort()
      .map((name) => join(folderOf(jobPath), name));
  } catch (thrown) {
    if (hasCode(thrown, 'ENOENT')) return [];
    throw thrown;
  }
}

/** The places of job files that are not there, though dated copies of them are: moved, deleted or called otherwise. */
export async function goneFrom(disk: Disk, folder: string, there: ReadonlySet<string>): Promise<string[]> {
  const names = await disk.readdir(join(folder, folderName)).catch(() => []);
  const jobs = names.filter((name) => dated.test(name)).map((name) => copiedFrom(join(folder, folderName, name)));
  return [...new Set(jobs)].filter((path) => !there.has(path)).sort();
}

/** The copy of the day: made, or brought up to date where what is there is the beginning of what is now. */
export async function copyOfTheDay(disk: Disk, jobPath: string, bytes: Uint8Array, now: Date): Promise<string> {
  const stem = `${stemOf(jobPath)}.`;
  const isCopy = (name: string) =>
    name.startsWith(stem) && /^\d{4}-\d\d-\d\d$/.test(name.slice(stem.length, -jobFileEnding.length));
  const today = join(folderOf(jobPath), `${stem}${dayOf(now)}${jobFileEnding}`);
  const there = await readFile(disk, today).catch(() => undefined);
  if (there === undefined) await writeFresh(disk, today, bytes);
  else if (!there.equals(bytes)) {
    // Gone on without what it holds, as was confirmed, or from another file: what comes now wants a copy as well.
    if (!isBeginning(there, bytes)) await copyBeforeCut(disk, jobPath, there, now);
    await writeWhole(disk, today, bytes, 'replace');
  }
  const copies = (await disk.readdir(folderOf(jobPath))).filter((n) => n.endsWith(jobFileEnding) && isCopy(n)).sort();
  for (const old of copies.slice(0, -kept)) await unlinkIfThere(disk, join(folderOf(jobPath), old));
  return today;
}

/** A copy that never grows old, made before something of the file goes. */
export async function copyBeforeCut(disk: Disk, jobPath: string, bytes: Uint8Array, now: Date): Promise<string> {
  const path = await freeBeforeCut(disk, jobPath, now, bytes);
  await writeFresh(disk, path, bytes);
  return path;
}
/** One that was made this very second is not written over; where it says the same, there it is already. */
async function freeBeforeCut(disk: Disk, jobPath: string, now: Date, bytes: Uint8Array): Promise<string> {
  for (let at = now; ; at = new Date(at.getTime() + 1000)) {
    const name = `${stemOf(jobPath)}.${dayOf(at)}-${timeOf(at)}-before-cut${jobFileEnding}`;
    const path = join(folderOf(jobPath), name);
    if ((await disk.stat(path).catch(() => undefined)) === undefined) return path;
    const there = await readFile(disk, path).catch(() => undefined);
    if (there?.equals(bytes)) return path;
  }
}

const isBeginning = (there: Buffer, bytes: Uint8Array): boolean =>
  there.length < bytes.length && there.equals(bytes.subarray(0, there.length));

async function writeFresh(disk: Disk, path: string, bytes: Uint8Array): Promise<void> {
  const there = await disk.stat(path).catch(() => undefined);
  if (there) return;
  try {
    await writeWhole(disk, path, bytes, 'fresh');
  } catch (thrown) {
    if (!hasCode(thrown, 'EEXIST')) throw thrown;
  }
}
