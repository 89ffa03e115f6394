// The power goes, on the disk double: around every operation of saving the reference job, with what no fsync put down
// dropped, torn and reordered; and the last line half written, cut at every byte.
import { deepEqual, equal } from 'node:assert/strict';
import { type DiskDouble, diskDouble } from '../store/disk-double.ts';
import { jobPath } from '../store/practice.ts';
import { fileWith, freeLines, hasLines, lineStarts, newJob, openedAgain, openOn, referenceLines } from './reference.ts';
import { type Row, type Size, trialsOf } from './row.ts';

type Cut = { after: DiskDouble; saved: number; called: number; at: string };

export async function powerCuts({ long, seed: firstSeed }: Size): Promise<Row> {
  const trials = trialsOf('disk double: the power cut around every operation of the reference job');
  const lines = long ? referenceLines() : freeLines().slice(0, 40);
  const disk = await newJob();
  const job = await openOn(disk);
  let [saved, called, seed] = [0, 0, firstSeed];
  let cuts: Cut[] = [];
  const manners = long ? 4 : 1;
  disk.watching = (op, when) => {
    for (let i = 0; i < manners; i++, seed++)
      cuts.push({ after: disk.cut(seed), saved, called, at: `${when} ${op.name} of line ${called}, cut ${seed}` });
  };
  for (const line of lines) {
    called = line.n;
    const { saved: isSaved } = await job.append(line);
    if (isSaved) saved = line.n;
    if (long || line.n % 8 === 0) {
      for (const cut of cuts)
        await trials.one(cut.at, async () =>
          hasLines((await openedAgain(cut.after)).lines(), lines, { atLeast: cut.saved, atMost: cut.called }),
        );
    }
    cuts = [];
  }
  disk.watching = undefined;
  equal(saved, lines.length);
  return trials;
}

export async function halfWritten({ long }: Size): Promise<Row> {
  const trials = trialsOf('the last line cut at every byte');
  const lines = freeLines();
  const bytes = await fileWith(lines);
  const starts = lineStarts(bytes);
  const last = (n: number) => ({ from: starts[n] ?? 0, to: starts[n + 1] ?? 0 });
  const chosen = lines.filter(({ n }) => (long ? n < 12 || n % 12 === 0 : n === 3));
  for (const { n } of chosen) {
    const { from, to } = last(n);
    for (let end = from; end <= to; end++)
      await trials.one(`line ${n} cut at byte ${end}`, async () => {
        const disk = diskDouble();
        disk.put(jobPath, bytes.subarray(0, end));
        const job = await openOn(disk);
        const whole = end >= to - 1;
        hasLines(job.lines(), lines, { atLeast: whole ? n : n - 1, atMost: whole ? n : n - 1 });
        const told = job.notices.map(({ kind }) => kind);
        deepEqual(told, whole || end === from ? [] : ['torn']);
        // Gone on from: the line called anew stands where the half one was.
        const next = lines[job.lines().length];
        if (!next) return;
        deepEqual(await job.append(next), { saved: true });
        hasLines((await openOn(disk, { look: true })).lines(), lines, { atLeast: next.n, atMost: next.n });
      });
  }
  return trials;
}
