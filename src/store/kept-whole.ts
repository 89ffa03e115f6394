// A job whose file was taken away, cut or written over while it was open here: all of it that was called is kept as the
// copy of the day, so that the next opening asks which to go on from.
import { dirname } from 'node:path';
import { beforeFirst, linked, type Reached, readChain } from './chain.ts';
import { copiesOf, copyOfTheDay } from './copies.ts';
import { type Disk, readFile } from './disk.ts';
import { type Fault, fault, faultFrom } from './fault.ts';
import { headerLine } from './journal.ts';

type Whole<L> = {
  job: string;
  lines: readonly L[];
  /** How it stood in the file when it was opened. */
  opened: Reached;
};

/** @returns what came of it; `kept` false where there is nowhere to keep it, as on a disk that was unplugged */
export async function keptWhole<L extends { n: number }>(
  { disk, path }: { disk: Disk; path: string },
  whole: Whole<L>,
  now: Date,
): Promise<{ kept: boolean; told: Fault }> {
  const what = 'the job file was taken away, cut or written over while it was open here';
  try {
    // Of a disk that is not there no folder is made where it was.
    await disk.stat(dirname(path));
    const copy = await copyOfTheDay(disk, path, await bytesOf(disk, path, whole), now);
    const calls = whole.lines.length === 1 ? 'the 1 call' : `all ${whole.lines.length} calls`;
    const next = `${calls} as they stood here lie in ${copy}; open the job again, or look on the shelf`;
    return { kept: true, told: fault('changed-underneath', what, path, next) };
  } catch (thrown) {
    const why = faultFrom(thrown, path);
    return {
      kept: false,
      told: fault('changed-underneath', `${what}, and no copy could be made: ${why.what}`, path, why.next),
    };
  }
}

/** The very bytes that were in the file, where a copy of its opening has them; what was called since as it was written. */
async function bytesOf<L extends { n: number }>(
  disk: Disk,
  path: string,
  { job, lines, opened }: Whole<L>,
): Promise<Buffer> {
  const begun = (await asOpened(disk, path, opened)) ?? [];
  const pieces: Buffer[] = begun;
  let reached = opened;
  let from = opened.line - 1;
  if (begun.length === 0) {
    const header = headerLine(job);
    pieces.push(header.bytes);
    reached = header.reached;
    from = 0;
  }
  for (const line of lines.slice(from)) {
    const next = linked(line, reached);
    pieces.push(next.bytes);
    reached = next.reached;
  }
  return Buffer.concat(pieces);
}
async function asOpened(disk: Disk, path: string, opened: Reached): Promise<Buffer[] | undefined> {
  for (const copy of (await copiesOf(disk, path)).reverse()) {
    const bytes = await readFile(disk, copy).catch(() => undefined);
    const beginning = bytes?.subarray(0, opened.end);
    if (beginning?.length !== opened.end) continue;
    const { reached } = readChain(beginning, beforeFirst);
    if (reached.end === opened.end && reached.digest.equals(opened.digest)) return [beginning];
  }
  return undefined;
}
