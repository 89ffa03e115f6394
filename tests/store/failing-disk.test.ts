// A disk that says no: full, read-only, broken, short. What is shown as saved is; the rest is listed and tried again.
import { expect, it } from 'vitest';
import type { DiskDouble, Failure, Op } from './disk-double.ts';
import { jobPath, lineNo, linesTo, newJobOn, openOn, processesDouble } from './practice.ts';

async function jobWith(last: number) {
  const disk = await newJobOn();
  const job = await openOn(disk);
  for (const line of linesTo(last)) await job.append(line);
  return { disk, job };
}

/** Fails the `nth` operation that matches, and that one only. */
function failOnce(disk: DiskDouble, matches: (op: Op) => boolean, failure: Failure, nth = 1) {
  let left = nth;
  disk.failing = (op) => (matches(op) && --left === 0 ? failure : undefined);
}

const onJob = (name: Op['name']) => (op: Op) => op.name === name && op.path === jobPath;

/** What is on the disk for sure: whoever opens after a power cut that drops all that no fsync put down. */
async function surelyThere(disk: DiskDouble) {
  return (await openOn(disk.cut(0), { look: true })).lines();
}

const refusals: [string, Op['name'], Failure][] = [
  ['ENOSPC before a byte', 'write', { code: 'ENOSPC' }],
  ['ENOSPC after 7 bytes', 'write', { code: 'ENOSPC', afterBytes: 7 }],
  ['ENOSPC after 70 bytes', 'write', { code: 'ENOSPC', afterBytes: 70 }],
  ['EDQUOT', 'write', { code: 'EDQUOT', afterBytes: 40 }],
  ['EIO', 'write', { code: 'EIO', afterBytes: 33 }],
  ['EROFS', 'write', { code: 'EROFS' }],
  ['no byte taken', 'write', { afterBytes: 0 }],
  ['EIO at looking', 'stat', { code: 'EIO' }],
];

for (const [name, op, failure] of refusals)
  it(`[D5] ${name}: NOT SAVED, nothing more is taken, the key saves it`, async () => {
    const { disk, job } = await jobWith(5);
    failOnce(disk, onJob(op), failure);
    const saved = await job.append(lineNo(6));
    expect(saved).toMatchObject({ saved: false, taken: true });
    expect(job.trouble()?.next).toMatch(/save again|check the disk/);
    expect(await job.append(lineNo(7))).toMatchObject({ saved: false, taken: false });
    expect(job.lines()).toEqual(linesTo(6));
    expect(job.unsaved()).toEqual([lineNo(6)]);
    expect(await surelyThere(disk)).toEqual(linesTo(5));

    expect(await job.retry()).toEqual({ saved: true });
    expect(job.trouble()).toBeUndefined();
    expect(job.unsaved()).toEqual([]);
    expect(await surelyThere(disk)).toEqual(linesTo(6));
    expect(await job.append(lineNo(7))).toEqual({ saved: true });
    expect(await surelyThere(disk)).toEqual(linesTo(7));
  });

it('[D5] each write of a hundred lines fails once, with every failure in turn, and in the end nothing is missing', async () => {
  const { disk, job } = await jobWith(0);
  for (const [i, line] of linesTo(100).entries()) {
    const [, op, failure] = refusals[i % refusals.length] ?? ['', 'write', {}];
    failOnce(disk, onJob(op), failure);
    expect((await job.append(line)).saved).toBe(false);
    expect(await job.retry()).toEqual({ saved: true });
    expect(await surelyThere(disk)).toEqual(linesTo(i + 1));
  }
});

it('[D1] a short write is no failure: the rest of the line is written after it', async () => {
  const { disk, job } = await jobWith(2);
  disk.failing = (op) => (onJob('write')(op) ? { afterBytes: 3 } : undefined);
  expect(await job.append(lineNo(3))).toEqual({ saved: true });
  expect(await surelyThere(disk)).toEqual(linesTo(3));
});

it('[D1] a failed fsync is not simply repeated: the line is written anew before it is called saved', async () => {
  const { disk, job } = await jobWith(5);
  failOnce(disk, onJob('sync'), { code: 'EIO' });
  expect(await job.append(lineNo(6))).toEqual({ saved: true });
  expect(await surelyThere(disk)).toEqual(linesTo(6));
});

it('[D5] fsync fails twice: NOT SAVED until the key saves it', async () => {
  const { disk, job } = await jobWith(5);
  disk.failing = (op) => (onJob('sync')(op) ? { code: 'EIO' } : undefined);
  expect(await job.append(lineNo(6))).toMatchObject({ saved: false, taken: true });
  expect(await job.retry()).toMatchObject({ saved: false });
  disk.failing = undefined;
  expect(await job.retry()).toEqual({ saved: true });
  expect(await surelyThere(disk)).toEqual(linesTo(6));
});

it('[D5] while it is tried again nothing more is taken, whether it goes well or not', async () => {
  const { disk, job } = await jobWith(5);
  disk.failing = (op) => (onJob('sync')(op) ? { code: 'EIO' } : undefined);
  await job.append(lineNo(6));
  for (const goesWell of [false, true]) {
    if (goesWell) disk.failing = undefined;
    let meanwhile: unknown;
    disk.watching = (op, when) => {
      if (when === 'before' && onJob('sync')(op)) meanwhile ??= job.append(lineNo(7));
    };
    expect(await job.retry()).toMatchObject({ saved: goesWell });
    expect(await meanwhile).toMatchObject({ saved: false, taken: false });
    disk.watching = undefined;
  }
  expect(await job.append(lineNo(7))).toEqual({ saved: true });
  expect(await surelyThere(disk)).toEqual(linesTo(7));
});

it('[D5] calls already on their way behind one that fails are listed too, and saved in their order', async () => {
  const { disk, job } = await jobWith(3);
  failOnce(disk, onJob('write'), { code: 'ENOSPC', afterBytes: 20 }, 2);
  const saved = await Promise.all([4, 5, 6, 7].map((n) => job.append(lineNo(n))));
  expect(saved.map((s) => s.saved)).toEqual([true, false, false, false]);
  expect(job.unsaved().map(({ n }) => n)).toEqual([5, 6, 7]);
  expect(await job.retry()).toEqual({ saved: true });
  expect(await surelyThere(disk)).toEqual(linesTo(7));
});

it('[D5] leaving lists what was not saved, and the job opens again with the rest', async () => {
  const { disk, job } = await jobWith(3);
  disk.failing = (op) => (onJob('write')(op) ? { code: 'ENOSPC', afterBytes: 20 } : undefined);
  await job.append(lineNo(4));
  expect(await job.close()).toEqual([lineNo(4)]);
  disk.failing = undefined;
  const again = await openOn(disk);
  expect(again.lines()).toEqual(linesTo(3));
  expect(again.notices.map((n) => n.kind)).toEqual(['torn']);
  expect(await again.append(lineNo(4))).toEqual({ saved: true });
});

it('[D5] a disk full from the start: the job is open and in trouble, and takes calls when there is room', async () => {
  const { disk, job } = await jobWith(3);
  await job.close();
  disk.failing = (op) => (op.name === 'write' && !op.path.includes('.lock') ? { code: 'ENOSPC' } : undefined);
  const again = await openOn(disk);
  expect(again.mode).toBe('write');
  expect(again.trouble()?.kind).toBe('disk-full');
  expect(await again.append(lineNo(4))).toMatchObject({ saved: false, taken: false });
  disk.failing = undefined;
  expect(await again.retry()).toEqual({ saved: true });
  expect(await again.append(lineNo(4))).toEqual({ saved: true });
});

for (const code of ['EROFS', 'EACCES'])
  it(`[D5] a folder that cannot be written (${code}): opened to look, and says why`, async () => {
    const { disk, job } = await jobWith(3);
    await job.close();
    const writes = ['write', 'link', 'rename', 'unlink', 'makeFolder', 'truncate'];
    disk.failing = (op) => (writes.includes(op.name) || op.how === 'new' || op.how === 'write' ? { code } : undefined);
    const look = await openOn(disk);
    expect(look.mode).toBe('look');
    expect(look.whyLook?.kind).toBe(code === 'EROFS' ? 'read-only' : 'not-allowed');
    expect(look.lines()).toEqual(linesTo(3));
    expect(await look.append(lineNo(4))).toMatchObject({ saved: false, taken: false });
  });

it('[D5] the dated copy could not be made: told, and the job is open', async () => {
  const { disk, job } = await jobWith(3);
  await job.close();
  for (const name of disk.names()) if (name.includes('/copies/')) disk.remove(name);
  disk.failing = (op) => (op.path.includes('copies') && op.name === 'write' ? { code: 'ENOSPC' } : undefined);
  const again = await openOn(disk);
  expect(again.mode).toBe('write');
  expect(again.notices.map((n) => n.what)).toEqual([expect.stringMatching(/copy of the day.*disk is full/)]);
  expect(disk.names().filter((name) => name.includes('.new-'))).toEqual([]);
});

it('[D4] another file in the place of the job file: nothing is written to it, nor to the old one', async () => {
  const { disk, job } = await jobWith(3);
  const other = Buffer.from('somebody else’s\n');
  disk.put(jobPath, other);
  expect(await job.append(lineNo(4))).toMatchObject({ saved: false, fault: { kind: 'changed-underneath' } });
  expect(await job.retry()).toMatchObject({ saved: false, fault: { kind: 'changed-underneath' } });
  expect(disk.bytesAt(jobPath)?.equals(other)).toBe(true);
  // The one that was not saved as well.
  expect(await job.close()).toEqual([]);
  expect(job.parted()?.next).toMatch(/^all 4 calls as they stood here lie in \/jobs\/copies\/blue\.2026-03-04\./);
  expect(disk.bytesAt(jobPath)?.equals(other)).toBe(true);
  disk.remove(jobPath);
  disk.put(jobPath, disk.bytesAt('/jobs/copies/blue.2026-03-04.countback.jsonl') as Buffer);
  expect((await openOn(disk)).lines()).toEqual(linesTo(4));
});

it('[D2] the disk taken away under an open job: no folder is made where it was, and what was not saved is given back', async () => {
  const { disk, job } = await jobWith(3);
  for (const name of disk.names()) disk.remove(name);
  const failing = { code: 'ENOENT' };
  disk.failing = () => failing;
  expect(await job.append(lineNo(4))).toMatchObject({ saved: false, fault: { kind: 'missing' } });
  expect(await job.close()).toEqual([lineNo(4)]);
  expect(job.parted()?.what).toMatch(/taken away.*and no copy could be made: there is no such file or folder/);
  expect(disk.names().filter((name) => name.includes('.new-'))).toEqual([]);
});

it('[D4] another file put there between reading and the first writing: nothing is written to it', async () => {
  const { disk, job } = await jobWith(3);
  await job.close();
  const other = Buffer.from('somebody else’s\n'.repeat(20));
  disk.remove('/jobs/copies/blue.2026-03-04.countback.jsonl');
  disk.watching = (op) => {
    if (op.path.includes('/copies/') && !disk.bytesAt(jobPath)?.equals(other)) disk.put(jobPath, other);
  };
  const again = await openOn(disk);
  expect(again.trouble()?.kind).toBe('changed-underneath');
  expect(await again.append(lineNo(4))).toMatchObject({ saved: false, taken: false });
  expect(await again.retry()).toMatchObject({ saved: false });
  expect(disk.bytesAt(jobPath)?.equals(other)).toBe(true);
});

it('[D4] a copy in the place of the job file: told once, and the key saves to the one that is there now', async () => {
  const { disk, job } = await jobWith(3);
  disk.put(jobPath, disk.bytesAt(jobPath) ?? Buffer.alloc(0));
  expect(await job.append(lineNo(4))).toMatchObject({ saved: false, fault: { kind: 'changed-underneath' } });
  expect(await surelyThere(disk)).toEqual(linesTo(3));
  expect(await job.retry()).toEqual({ saved: true });
  expect(await surelyThere(disk)).toEqual(linesTo(4));
});

it('[D4] the job file removed underneath: NOT SAVED; moved back, the key saves', async () => {
  const { disk, job } = await jobWith(3);
  await disk.rename(jobPath, '/jobs/elsewhere');
  expect(await job.append(lineNo(4))).toMatchObject({ saved: false, fault: { kind: 'missing' } });
  expect(disk.bytesAt(jobPath)).toBeUndefined();
  await disk.rename('/jobs/elsewhere', jobPath);
  expect(await job.retry()).toEqual({ saved: true });
  expect(await surelyThere(disk)).toEqual(linesTo(4));
});

for (const [name, change] of [
  ['longer', (bytes: Buffer) => Buffer.concat([bytes, Buffer.from('x')])],
  ['shorter', (bytes: Buffer) => bytes.subarray(0, -1)],
] as const)
  it(`[D4] the job file became ${name} underneath: nothing is written over`, async () => {
    const { disk, job } = await jobWith(3);
    const file = await disk.open(jobPath, 'write');
    const changed = change(disk.bytesAt(jobPath) ?? Buffer.alloc(0));
    await file.truncate(changed.length);
    await file.write(changed, 0);
    expect(await job.append(lineNo(4))).toMatchObject({ saved: false, fault: { kind: 'changed-underneath' } });
    if (name === 'longer') expect((await job.retry()).saved).toBe(false);
    expect(disk.bytesAt(jobPath)?.equals(changed)).toBe(true);
  });

it('[D3] a lock that is no longer ours stops the saving that is tried again', async () => {
  const { disk, job } = await jobWith(3);
  failOnce(disk, onJob('write'), { code: 'EIO' });
  await job.append(lineNo(4));
  disk.remove(`${jobPath}.lock`);
  const second = await openOn(disk, { processes: processesDouble(7) });
  expect(second.mode).toBe('write');
  expect(await job.retry()).toMatchObject({ saved: false, fault: { kind: 'in-use' } });
  expect(await second.append(lineNo(4))).toEqual({ saved: true });
});
