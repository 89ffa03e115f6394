// The lock, on the double: who dies where, and who may take over. The race of real processes is in real-disk.test.ts.
import { expect, it } from 'vitest';
import type { Disk } from '../../src/store/disk.ts';
import { isFault } from '../../src/store/fault.ts';
import { type Lock, takeLock } from '../../src/store/lock.ts';
import { realProcesses } from '../../src/store/processes.ts';
import { chance, type DiskDouble, diskDouble, type Op } from './disk-double.ts';
import { jobPath, processesDouble } from './practice.ts';

const lockPath = `${jobPath}.lock`;

async function mustTake(disk: Disk, pid: number, living: Set<number> = new Set([pid])): Promise<Lock> {
  const lock = await takeLock(disk, processesDouble(pid, living), jobPath);
  if (isFault(lock)) throw lock;
  return lock;
}

/** The disk as each operation of `pid`'s taking leaves it, had it been killed there. */
async function killedAnywhere(disk: DiskDouble, pid: number): Promise<{ left: DiskDouble; at: Op }[]> {
  const all: { left: DiskDouble; at: Op }[] = [];
  // Memory outlives a killed process: what it wrote is all there.
  disk.watching = (at) => all.push({ left: disk.cut(1), at });
  await mustTake(disk, pid);
  disk.watching = undefined;
  return all;
}

it('[D3] a lock is taken once, and again when it was let go', async () => {
  const disk = diskDouble();
  const living = new Set([1, 2]);
  const first = await mustTake(disk, 1, living);
  expect(await takeLock(disk, processesDouble(2, living), jobPath)).toMatchObject({ kind: 'in-use' });
  expect(await takeLock(disk, processesDouble(1, living), jobPath)).toMatchObject({ kind: 'in-use' });
  await first.release();
  expect(disk.names()).toEqual([]);
  const second = await mustTake(disk, 2, living);
  await first.release();
  expect(await second.stillMine()).toBeUndefined();
});

it('[D3] the lock of a dead process is taken over at once, also when its number lives again', async () => {
  const disk = diskDouble();
  await mustTake(disk, 1);
  await mustTake(disk, 2);
  const reused = processesDouble(3, new Set([2, 3]));
  const held = { ...reused, isAlive: async () => false };
  expect(isFault(await takeLock(disk, held, jobPath))).toBe(false);
});

it('[D3] a process killed anywhere while it takes over a dead lock leaves a job that opens; so does the next', async () => {
  const start = diskDouble();
  await mustTake(start, 1);
  const first = await killedAnywhere(start.cut(1), 2);
  expect(first.some(({ left }) => left.names().some((n) => n.includes('.steal-')))).toBe(true);
  let thieves = 0;
  for (const { left, at } of first) {
    for (const second of await killedAnywhere(left.cut(1), 3)) {
      const where = `${at.name} ${at.path}, then ${second.at.name} ${second.at.path}`;
      const steals = second.left.names().filter((n) => n.includes('.steal-')).length;
      thieves = Math.max(thieves, steals);
      const lock = await mustTake(second.left, 4);
      expect(await lock.stillMine(), where).toBeUndefined();
      expect(second.left.names(), where).toEqual([lockPath]);
      await lock.release();
      expect(second.left.names(), where).toEqual([]);
    }
  }
  expect(thieves).toBe(2);
});

it('[D3] after a power cut anywhere the lock does not keep the job shut', async () => {
  const disk = diskDouble();
  const cuts: DiskDouble[] = [];
  let seed = 1;
  disk.watching = () => {
    for (let i = 0; i < 4; i++, seed++) cuts.push(disk.cut(seed));
  };
  await mustTake(disk, 1);
  for (const cut of cuts) await mustTake(cut, 2);
  expect(cuts.length).toBeGreaterThan(50);
});

it('[D3] another host’s lock is named and never stolen', async () => {
  const disk = diskDouble();
  await takeLock(disk, processesDouble(1, new Set(), 'office'), jobPath);
  const before = disk.bytesAt(lockPath);
  const held = await takeLock(disk, processesDouble(2), jobPath);
  expect(held).toMatchObject({ kind: 'in-use', what: expect.stringContaining('office'), where: lockPath });
  expect(disk.bytesAt(lockPath)).toEqual(before);
});

it('[D3] a lock nobody can read is told and left alone', async () => {
  for (const text of ['', '{', '{"lock":"countback"}', 'pid 4']) {
    const disk = diskDouble();
    disk.put(lockPath, Buffer.from(text));
    expect(await takeLock(disk, processesDouble(2), jobPath)).toMatchObject({
      kind: 'lock-unreadable',
      where: lockPath,
    });
    expect(disk.bytesAt(lockPath)?.toString()).toBe(text);
  }
});

/** A disk seen by one process of many: others come between any two of its operations, and it may be killed at any. */
function amongOthers(disk: DiskDouble, next: () => number, died: () => boolean): Disk {
  const between = async <T>(what: () => Promise<T>): Promise<T> => {
    for (let i = Math.floor(next() * 12); i > 0; i--) await Promise.resolve();
    if (died()) return new Promise<T>(() => undefined);
    return what();
  };
  return {
    open: (path, how) => between(() => disk.open(path, how)),
    stat: (path) => between(() => disk.stat(path)),
    readdir: (path) => between(() => disk.readdir(path)),
    makeFolder: (path) => between(() => disk.makeFolder(path)),
    link: (from, to) => between(() => disk.link(from, to)),
    rename: (from, to) => between(() => disk.rename(from, to)),
    unlink: (path) => between(() => disk.unlink(path)),
    syncFolder: (path) => between(() => disk.syncFolder(path)),
  };
}

it('[D3] eight at once, some killed at any operation: never two owners, and never none for long', async () => {
  let takings = 0;
  let killings = 0;
  for (let round = 1; round <= 150; round++) {
    const next = chance(round);
    const disk = diskDouble();
    await mustTake(disk, 1);
    const living = new Set<number>();
    const owners = new Set<number>();
    const one = (pid: number) =>
      new Promise<void>((resolve) => {
        living.add(pid);
        let left = next() < 0.4 ? Math.floor(next() * 40) : Number.POSITIVE_INFINITY;
        const died = () => {
          if (--left > 0) return false;
          killings += living.delete(pid) ? 1 : 0;
          owners.delete(pid);
          resolve();
          return true;
        };
        const mine = amongOthers(disk, next, died);
        const work = async () => {
          for (;;) {
            const lock = await takeLock(mine, processesDouble(pid, living), jobPath);
            if (isFault(lock)) {
              await new Promise((r) => setImmediate(r));
              continue;
            }
            owners.add(pid);
            takings++;
            expect([...owners], `round ${round}`).toEqual([pid]);
            for (let i = 0; i < 3; i++) expect(await Promise.resolve(lock.stillMine())).toBeUndefined();
            expect([...owners], `round ${round}`).toEqual([pid]);
            owners.delete(pid);
            await lock.release();
            living.delete(pid);
            return resolve();
          }
        };
        work().catch((thrown: unknown) => {
          throw thrown;
        });
      });
    await Promise.all([11, 12, 13, 14, 15, 16, 17, 18].map(one));
  }
  expect(takings).toBeGreaterThan(600);
  expect(killings).toBeGreaterThan(200);
});

it('[D3] this very process is alive by its own mark; with another beginning it is not', async () => {
  const self = await realProcesses.self();
  expect(await realProcesses.isAlive(self)).toBe(true);
  expect(await realProcesses.isAlive({ ...self, pid: 2 ** 22 + 1 })).toBe(false);
  if (process.platform !== 'win32') expect(await realProcesses.isAlive({ ...self, began: 'long ago' })).toBe(false);
});
