// A file that stops before a copy of it does, on the disk double: gone on with from the copy, and without it, with the
// power cut around every operation of either. Whatever is left, what the copy held and what the file held can be read.
import { equal, ok } from 'node:assert/strict';
import type { Line } from '../../src/job/line.ts';
import { readJournal } from '../../src/store/journal.ts';
import { type DiskDouble, diskDouble } from '../store/disk-double.ts';
import { jobPath } from '../store/practice.ts';
import { asItIs, fileWith, freeLines, hasLines, lineStarts, openOn } from './reference.ts';
import { type Row, type Size, trialsOf } from './row.ts';

/** Of the day of `noon`, so that the copy of the day is the one that holds more. */
const copyPath = '/jobs/copies/blue.2026-03-04.countback.jsonl';

/** All the lines that any file of the job still says, from its beginning. */
function longestKept(disk: DiskDouble): readonly Line[] {
  const files = disk.names().filter((name) => name.endsWith('.countback.jsonl') && !name.includes('.new-'));
  const kept = files.map((name) => readJournal(disk.bytesAt(name) ?? Buffer.alloc(0), name, asItIs).lines);
  return kept.sort((one, other) => other.length - one.length)[0] ?? [];
}

export async function cutShort({ long, seed: firstSeed }: Size): Promise<Row> {
  const trials = trialsOf('disk double: a file that stops before its copy, gone on from either as the power goes');
  const lines = long ? freeLines() : freeLines().slice(0, 20);
  const bytes = await fileWith(lines);
  const starts = lineStarts(bytes);
  const each = long ? 12 : 20;
  let seed = firstSeed;
  for (let n = 8; n + 1 < lines.length; n += each)
    for (const within of [0, 25])
      for (const choice of ['copy', 'file'] as const) {
        const held = bytes.subarray(0, (starts[n + 1] ?? 0) + within);
        const disk = diskDouble();
        await disk.makeFolder('/jobs/copies');
        await disk.syncFolder('/jobs');
        disk.put(copyPath, bytes);
        disk.put(jobPath, held);
        const { doubt } = await openOn(disk);
        equal(doubt?.copy, copyPath, `line ${n}: not asked about`);
        const how = { goOnFrom: doubt?.byte ?? 0, ...(choice === 'copy' && { fromCopy: copyPath }) };
        const cuts: { after: DiskDouble; at: string }[] = [];
        disk.watching = (op, when) => {
          seed++;
          cuts.push({ after: disk.cut(seed), at: `line ${n}, ${choice}: ${when} ${op.name}, cut ${seed}` });
        };
        const job = await openOn(disk, how);
        disk.watching = undefined;
        hasLines(job.lines(), lines, choice === 'copy' ? { atLeast: lines.length } : { atLeast: n, atMost: n });
        for (const { after, at } of cuts)
          await trials.one(at, async () => {
            hasLines(longestKept(after), lines, { atLeast: lines.length });
            const again = await openOn(after);
            // Answered, it may be gone on without what the copy held.
            const mayGoOn = again.lines().length === lines.length || (choice === 'file' && !again.doubt);
            ok(mayGoOn || again.doubt?.copy !== undefined, 'what the copy holds more is not asked about any more');
            equal(again.mode, mayGoOn ? 'write' : 'look');
          });
      }
  return trials;
}
