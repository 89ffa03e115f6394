// The real disk: a small one that fills, one that is read-only, a file that goes or changes under an open job.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { copiesOf } from '../../src/store/copies.ts';
import { realDisk } from '../../src/store/disk.ts';
import { readJournal } from '../../src/store/journal.ts';
import { createJob, type OpenJob, openJob } from '../../src/store/open-job.ts';
import { chance } from '../store/disk-double.ts';
import { lineNo, linesTo, type PracticeLine, readLine } from '../store/practice.ts';
import { type Row, type Size, skippedRow, trialsOf } from './row.ts';

const mount = (...args: string[]): string | undefined => {
  const { status, stderr, error } = spawnSync('mount', args, { encoding: 'utf8' });
  return status === 0 ? undefined : (error?.message ?? stderr.trim());
};

/** A small disk of its own; undefined where that may not be made, and why. */
async function onSmallDisk(kilobytes: number, what: (folder: string) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'countback-disk-'));
  try {
    const why = mount('-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'tmpfs', folder);
    if (why !== undefined) throw new Error(why);
    try {
      await what(folder);
    } finally {
      spawnSync('umount', [folder]);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function whyNoMount(): Promise<string | undefined> {
  try {
    await onSmallDisk(64, async () => undefined);
    return undefined;
  } catch (thrown) {
    return `no disk may be mounted here (${thrown instanceof Error ? thrown.message : thrown})`;
  }
}

const open = (path: string) => openJob({ path, readLine });

async function reopens(path: string, lines: number): Promise<void> {
  const job = await open(path);
  try {
    equal(job.mode, 'write');
    deepEqual(job.lines(), linesTo(lines));
  } finally {
    await job.close();
  }
}

async function fillIt(path: string, job: OpenJob<PracticeLine>): Promise<number> {
  for (let n = job.lines().length + 1; n < 5000; n++) {
    const saved = await job.append(lineNo(n));
    if (saved.saved) continue;
    equal(saved.fault.kind, 'disk-full');
    equal((await job.append(lineNo(n + 1))).saved, false);
    return n;
  }
  throw new Error(`${path} was never full`);
}

export async function fillingDisk({ long, seed }: Size): Promise<Row> {
  const what = 'a small disk that fills up (tmpfs), and has room again';
  const why = await whyNoMount();
  if (why) return skippedRow(what, why);
  const trials = trialsOf(what);
  for (let round = 0; round < (long ? 40 : 2); round++) {
    const kilobytes = 16 + 4 * Math.floor(chance(seed + round)() * 30);
    await trials.one(`${kilobytes} kB`, () =>
      onSmallDisk(kilobytes, async (folder) => {
        const path = join(folder, 'van.countback.jsonl');
        await createJob(path, 'van');
        const job = await open(path);
        const n = await fillIt(path, job);
        // Left in trouble, and opened again while the disk is still full: every saved line is there.
        if (round % 2 === 1) {
          deepEqual(
            (await job.close()).map((line) => line.n),
            [n],
          );
          const look = await openJob({ path, readLine, look: true });
          deepEqual(look.lines(), linesTo(n - 1));
          await look.close();
          equal(mount('-o', `remount,size=${kilobytes + 64}k`, folder), undefined);
          return reopens(path, n - 1);
        }
        equal((await job.retry()).saved, false);
        equal(mount('-o', `remount,size=${kilobytes + 64}k`, folder), undefined);
        deepEqual(await job.retry(), { saved: true });
        deepEqual(await job.append(lineNo(n + 1)), { saved: true });
        await job.close();
        await reopens(path, n + 1);
      }),
    );
  }
  return trials;
}

export async function readOnlyDisk({ long }: Size): Promise<Row> {
  const what = 'a read-only disk';
  const why = await whyNoMount();
  if (why) return skippedRow(what, why);
  const trials = trialsOf(what);
  for (let round = 0; round < (long ? 20 : 1); round++)
    await trials.one(`round ${round}`, () =>
      onSmallDisk(256, async (folder) => {
        const path = join(folder, 'van.countback.jsonl');
        await createJob(path, 'van');
        const job = await open(path);
        for (const line of linesTo(round + 1)) await job.append(line);
        await job.close();
        equal(mount('-o', 'remount,ro', folder), undefined);
        const look = await open(path);
        equal(look.mode, 'look');
        equal(look.whyLook?.kind, 'read-only');
        deepEqual(look.lines(), linesTo(round + 1));
        equal((await look.append(lineNo(round + 2))).saved, false);
        await look.close();
        await createJob(join(folder, 'other.countback.jsonl'), 'other').then(
          () => ok(false, 'a job was made on a read-only disk'),
          (thrown: { kind?: string }) => equal(thrown.kind, 'read-only'),
        );
        equal(mount('-o', 'remount,rw', folder), undefined);
        await reopens(path, round + 1);
      }),
    );
  return trials;
}

const changes: readonly [string, (path: string) => void, kinds: readonly string[]][] = [
  ['removed', unlinkSync, ['missing']],
  ['moved away', (path) => renameSync(path, `${path}.away`), ['missing']],
  [
    'replaced by another file',
    (path) => {
      writeFileSync(`${path}.new`, 'somebody else’s\n');
      renameSync(`${path}.new`, path);
    },
    ['changed-underneath'],
  ],
  [
    'replaced by an older copy',
    (path) => {
      copyFileSync(path, `${path}.new`);
      truncateSync(`${path}.new`, 200);
      renameSync(`${path}.new`, path);
    },
    ['changed-underneath'],
  ],
  [
    'replaced by a folder',
    (path) => {
      unlinkSync(path);
      mkdirSync(path);
    },
    ['changed-underneath', 'foreign'],
  ],
  ['cut short', (path) => truncateSync(path, 150), ['changed-underneath']],
  ['emptied', (path) => truncateSync(path, 0), ['changed-underneath']],
  ['grown', (path) => appendFileSync(path, 'x'), ['changed-underneath']],
];

const bytesAt = (path: string): Buffer | undefined => {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
};

export async function changedUnderneath({ long }: Size): Promise<Row> {
  const trials = trialsOf('the file removed, moved, replaced, cut or grown under an open job');
  const folder = mkdtempSync(join(tmpdir(), 'countback-underneath-'));
  try {
    for (const [i, [name, change, kinds]] of changes.entries())
      for (let many = 3; many < (long ? 28 : 4); many++)
        await trials.one(`${name} after ${many} lines`, async () => {
          const path = join(folder, `${i}-${many}`, 'van.countback.jsonl');
          await createJob(path, 'van');
          const job = await open(path);
          for (const line of linesTo(many)) await job.append(line);
          change(path);
          const now = bytesAt(path);
          for (const saved of [await job.append(lineNo(many + 1)), await job.retry()]) {
            ok(!saved.saved, 'a line was called saved');
            ok(kinds.includes(saved.fault.kind), saved.fault.kind);
          }
          deepEqual(bytesAt(path), now);
          // All of it, the one that was not saved too, is in the copy of the day then.
          deepEqual(await job.close(), []);
          deepEqual(bytesAt(path), now);
          ok(job.parted()?.next.startsWith(`all ${many + 1} calls as they stood here lie in `));
          const copies = await copiesOf(realDisk, path);
          const kept = copies.map((copy) => readJournal(readFileSync(copy), copy, readLine).lines.length);
          ok(kept.includes(many + 1), `the copies hold ${kept.join(', ')} calls`);
        });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return trials;
}
