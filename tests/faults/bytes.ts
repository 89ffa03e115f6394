// Bytes that are not as they were written: refused, or asked about, never another content, and the file left as it is.
import { deepEqual, equal, ok } from 'node:assert/strict';
import type { Line } from '../../src/job/line.ts';
import { readLine } from '../../src/job/line.ts';
import { beforeFirst, linked } from '../../src/store/chain.ts';
import { isFault } from '../../src/store/fault.ts';
import { type OpenJob, openJob } from '../../src/store/open-job.ts';
import { type DiskDouble, diskDouble } from '../store/disk-double.ts';
import { jobPath, noon, processesDouble } from '../store/practice.ts';
import { fileWith, freeLines, hasLines, lineStarts, referenceLines } from './reference.ts';
import { type Row, type Size, trialsOf } from './row.ts';

const opened = (disk: DiskDouble): Promise<OpenJob<Line>> =>
  openJob({ path: jobPath, readLine, disk, processes: processesDouble(3), now: noon });

/** The job, or what kind of fault it is refused with. */
async function openedOrWhy(disk: DiskDouble): Promise<OpenJob<Line> | string> {
  try {
    return await opened(disk);
  } catch (thrown) {
    if (isFault(thrown)) return thrown.kind;
    throw thrown;
  }
}

export async function everyByteChanged({ long }: Size): Promise<Row> {
  const trials = trialsOf('every byte of a small log changed');
  const lines = freeLines().slice(0, 4);
  const bytes = await fileWith(lines);
  const last = lineStarts(bytes)[lines.length] ?? 0;
  for (let at = 0; at < bytes.length; at++) {
    const was = bytes[at] ?? 0;
    const others = long ? Array.from({ length: 8 }, (_, bit) => was ^ (1 << bit)).concat(0, 10, 34, 255) : [was ^ 1];
    for (const now of new Set(others.filter((other) => other !== was)))
      await trials.one(`byte ${at} from ${was} to ${now}`, async () => {
        const changed = Buffer.from(bytes);
        changed[at] = now;
        const disk = diskDouble();
        disk.put(jobPath, changed);
        const found = await openedOrWhy(disk);
        // The last newline alone: the line before it proves itself.
        if (at === bytes.length - 1 && typeof found === 'object' && !found.doubt)
          return hasLines(found.lines(), lines, { atLeast: 4 });
        ok(disk.bytesAt(jobPath)?.equals(changed), 'the file was touched');
        if (typeof found === 'string') return ok(['damaged', 'foreign', 'newer'].includes(found), found);
        ok(found.doubt && found.mode === 'look' && at >= last - 1, 'opened without a word');
        // A newline that is lost runs two calls together, of which the first still proves itself.
        hasLines(found.lines(), lines, { atLeast: 3, atMost: 3 });
      });
  }
  return trials;
}

/** A file whose links hold, whatever it says. */
export function forged(...values: object[]): Buffer {
  let reached = beforeFirst;
  return Buffer.concat(
    values.map((value) => {
      const next = linked(value, reached);
      reached = next.reached;
      return next.bytes;
    }),
  );
}

export async function otherFiles({ long }: Size): Promise<Row> {
  const trials = trialsOf('a zeroed block, an empty file, a folder, a pipe, a file from the future');
  const lines = referenceLines().slice(0, long ? undefined : 12);
  const bytes = await fileWith(lines);
  const refused = (where: string, kinds: string[], put: (disk: DiskDouble) => unknown) =>
    trials.one(where, async () => {
      const disk = diskDouble();
      await put(disk);
      const before = disk.bytesAt(jobPath);
      const found = await openedOrWhy(disk);
      ok(typeof found === 'string', 'it was opened');
      ok(kinds.includes(found), `refused as ${found}`);
      deepEqual(disk.bytesAt(jobPath), before);
      deepEqual(
        disk.names().filter((name) => name !== jobPath),
        [],
      );
    });
  // Sizes of blocks from a sector to a page; the last block of a file may be a last line, which is asked about.
  const sizes = long ? [512, 1024, 4096] : [4096];
  const lastFrom = lineStarts(bytes)[lines.length] ?? 0;
  for (const size of sizes)
    for (let from = 0; from + size < lastFrom; from += size)
      await refused(`${size} zeros from byte ${from}`, ['damaged', 'foreign'], (disk) =>
        disk.put(jobPath, Buffer.from(bytes).fill(0, from, from + size)),
      );
  await refused('an empty file', ['empty'], (disk) => disk.put(jobPath, Buffer.alloc(0)));
  await refused('a file of zeros', ['foreign'], (disk) => disk.put(jobPath, Buffer.alloc(5000)));
  await refused('a folder', ['foreign'], (disk) => disk.makeFolder(jobPath));
  await refused('a pipe', ['foreign'], (disk) => disk.makeOther(jobPath));
  await refused('no file', ['missing'], () => undefined);
  const header = { countback: 'job', format: 0, job: 'van' };
  const [first] = lines;
  if (!first) throw new Error('the reference job has no line');
  for (const [where, values] of [
    ['a newer format', [{ ...header, format: 1 }, first]],
    ['a newer header', [{ ...header, colour: 'blue' }, first]],
    ['a newer field of a call', [header, { ...first, torch: 1 }]],
    ['a newer entry', [header, { ...first, entries: [{ kind: 'hole-painted', hole: 'sump/1' }] }]],
    ['a newer field of an entry', [header, { ...first, entries: [{ kind: 'note-made', words: 'x', loud: true }] }]],
  ] as const)
    await refused(where, ['newer'], (disk) => disk.put(jobPath, forged(...values)));
  equal(trials.tried > 10, true);
  return trials;
}
