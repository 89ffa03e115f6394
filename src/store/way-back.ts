// What there is to go back to where a job file is refused: the newest of its dated copies that holds calls, and the very
// command that puts it in its place and keeps the broken file beside it. It changes nothing itself.
import { basename, dirname, join } from 'node:path';
import { newline } from './chain.ts';
import { copiedFrom, copiesOf } from './copies.ts';
import { type Disk, readFile } from './disk.ts';
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
export async function goodCopyAt<L extends { n: number }>(
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
  const way = commandBack(job, { path }, process.platform, isThere ? await freeName(disk, job, 'aside') : undefined);
  return fault('copy', 'this is a copy, opened to look only', path, `to go on from it: ${way}`, true);
}
/** Only where a shell would read it otherwise. */
function quoted(path: string, platform: string): string {
  if (platform === 'win32') return `"${path}"`;
  return /^[\w./+:@%-]+$/.test(path) ? path : `'${path.replaceAll("'", "'\\''")}'`;
}

const broken: ReadonlySet<Fault['kind']> = new Set(['damaged', 'foreign', 'empty']);

/** Beside the job file, one that nothing is put over. */
async function freeName(disk: Disk, jobPath: string, ending: string): Promise<string> {
  for (let n = 1; ; n++) {
    const name = `${basename(jobPath)}.${ending}${n === 1 ? '' : `-${n}`}`;
    if (!(await disk.stat(join(dirname(jobPath), name)).catch(() => undefined))) return name;
  }
}
/** As far as they end; the header is none of them. */
const linesIn = (bytes: Buffer): number => Math.max(0, bytes.filter((byte) => byte === newline).length - 1);

/** A refused file's fault, with the way back there is from it. */
export async function withWayBack<L extends { n: number }>(
  told: Fault,
  { disk, path, readLine }: { disk: Disk; path: string; readLine: ReadLine<L> },
): Promise<Fault> {
  if (!broken.has(told.kind)) return told;
  const facts = await disk.stat(path).catch(() => undefined);
  if (facts?.kind !== 'file') return told;
  const copy = await goodCopyOf(disk, path, readLine);
  // What is foreign may be of any size.
  const bytes = told.kind === 'damaged' ? await readFile(disk, path) : Buffer.alloc(0);
  const aside = await freeName(disk, path, 'broken');
  const calls = (many: number) => `${many} ${many === 1 ? 'call' : 'calls'}`;
  // Those are called again: nothing else tells of them.
  const behind = copy ? linesIn(bytes) - copy.calls : 0;
  const lost = behind > 0 ? `; ${calls(behind)} that came after it stay in ${aside}` : '';
  const way = copy
    ? `its newest good copy has ${calls(copy.calls)}, and comes back with: ${commandBack(path, copy, process.platform, aside)}${lost}`
    : 'no dated copy of it holds a call: bring it back from your own backup';
  const whole = bytes.length > 0 ? callsBeforeFault(bytes, path, readLine).length : 0;
  // Those of the copy are looked at in the copy.
  const look =
    whole > (copy?.calls ?? 0)
      ? `; the ${whole === 1 ? 'call' : `${whole} calls`} before the fault: countback verify ${quoted(path, process.platform)} --calls`
      : '';
  return fault(told.kind, told.what, told.where, `${told.next}; ${way}${look}`);
}
