// A disk that refuses, on the double: each write of the reference job fails in each way. What is not saved is said to be
// so, nothing more is taken, and the key that saves again loses nothing.
import { deepEqual, equal } from 'node:assert/strict';
import type { Line } from '../../src/job/line.ts';
import type { OpenJob } from '../../src/store/open-job.ts';
import type { DiskDouble, Failure, Op } from '../store/disk-double.ts';
import { jobPath } from '../store/practice.ts';
import { hasLines, newJob, openOn, referenceLines } from './reference.ts';
import { type Row, type Size, trialsOf } from './row.ts';

/** `times`: how often in a row; one failed fsync alone is made good without anyone being asked. */
type Refusal = { name: string; op: Op['name']; failure: Failure; times: number; unasked?: true };

const refusals: readonly Refusal[] = [
  { name: 'ENOSPC before a byte', op: 'write', failure: { code: 'ENOSPC' }, times: 1 },
  { name: 'ENOSPC after 7 bytes', op: 'write', failure: { code: 'ENOSPC', afterBytes: 7 }, times: 1 },
  { name: 'ENOSPC after 90 bytes', op: 'write', failure: { code: 'ENOSPC', afterBytes: 90 }, times: 1 },
  { name: 'EIO after 33 bytes', op: 'write', failure: { code: 'EIO', afterBytes: 33 }, times: 1 },
  { name: 'EROFS', op: 'write', failure: { code: 'EROFS' }, times: 1 },
  { name: 'an fsync that fails once', op: 'sync', failure: { code: 'EIO' }, times: 1, unasked: true },
  { name: 'an fsync that fails twice', op: 'sync', failure: { code: 'EIO' }, times: 2 },
  { name: 'fsync: ENOSPC, twice', op: 'sync', failure: { code: 'ENOSPC' }, times: 2 },
  { name: 'a short write', op: 'write', failure: { afterBytes: 5 }, times: 1, unasked: true },
];

/** Only what no power cut could take. */
const surelyThere = async (disk: DiskDouble) => (await openOn(disk.cut(0), { look: true })).lines();

async function refuseOnce(disk: DiskDouble, job: OpenJob<Line>, line: Line, refusal: Refusal): Promise<void> {
  const lines = referenceLines();
  let left = refusal.times;
  disk.failing = (op) => (op.name === refusal.op && op.path === jobPath && left-- > 0 ? refusal.failure : undefined);
  const saved = await job.append(line);
  disk.failing = undefined;
  if (refusal.unasked) deepEqual(saved, { saved: true });
  else {
    equal(saved.saved, false);
    equal((await job.append({ ...line, n: line.n + 1 })).saved, false);
    deepEqual(
      job.unsaved().map(({ n }) => n),
      [line.n],
    );
    hasLines(await surelyThere(disk), lines, { atLeast: line.n - 1, atMost: line.n - 1 });
    deepEqual(await job.retry(), { saved: true });
  }
  equal(job.trouble(), undefined);
  hasLines(await surelyThere(disk), lines, { atLeast: line.n, atMost: line.n });
}

export async function refusedWrites({ long }: Size): Promise<Row> {
  const trials = trialsOf('disk double: each write refused (ENOSPC, EIO, EROFS, short, failed fsync)');
  for (const [i, refusal] of refusals.entries()) {
    const disk = await newJob();
    const job = await openOn(disk);
    for (const line of referenceLines().slice(0, long ? undefined : 16)) {
      if (long || line.n % 5 === i % 5) {
        await trials.one(`${refusal.name} at line ${line.n}`, () => refuseOnce(disk, job, line, refusal));
        // A broken trial must not break all that follow.
        if (job.trouble()) await job.retry();
      } else await job.append(line);
      if (job.lines().length !== line.n) break;
    }
  }
  return trials;
}
