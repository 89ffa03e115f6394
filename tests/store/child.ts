// A program of its own for the tests on the real disk: takes a job, writes to it, and ends or is killed as it was told.
import { closeSync, openSync, unlinkSync, writeSync } from 'node:fs';
import { type Disk, realDisk } from '../../src/store/disk.ts';
import { openJob } from '../../src/store/open-job.ts';
import { lineNo, readLine } from './practice.ts';

const [path = '', manner = '', at = ''] = process.argv.slice(2);
const killMyself = () => process.kill(process.pid, 'SIGKILL');

/** Killed right after its claim on a dead lock is made. */
const dyingThief: Disk = {
  ...realDisk,
  async link(from, to) {
    await realDisk.link(from, to);
    if (to.includes('.steal-')) killMyself();
  },
};

/** Killed at one of the operations that a lock is taken with, whichever comes then. */
function dyingAnywhere(): Disk {
  let left = Number(at);
  const counted =
    <A extends unknown[], T>(what: (...args: A) => Promise<T>) =>
    (...args: A): Promise<T> => {
      if (--left === 0) killMyself();
      return what(...args);
    };
  const { open, link, rename, unlink } = realDisk;
  return { ...realDisk, open: counted(open), link: counted(link), rename: counted(rename), unlink: counted(unlink) };
}

const disks: Record<string, () => Disk> = { 'die-stealing': () => dyingThief, 'die-at': dyingAnywhere };

async function openToWrite() {
  const disk = (disks[manner] ?? (() => realDisk))();
  for (;;) {
    const job = await openJob({ path, readLine, disk });
    if (job.mode === 'write') return job;
    await job.close();
    await new Promise((resolve) => setTimeout(resolve, 3));
  }
}

const job = await openToWrite();
if (manner === 'storm') {
  for (let n = job.lines().length + 1; ; n++) {
    const saved = await job.append(lineNo(n));
    if (!saved.saved) throw saved.fault;
    writeSync(1, `${n}\n`);
  }
}

// Two owners at once would meet here: the second cannot make the file. One that was killed leaves it behind.
const owner = `${path}.owner`;
try {
  closeSync(openSync(owner, 'wx'));
} catch {
  writeSync(1, 'two owners\n');
}
const saved = await job.append({ n: job.lines().length + 1, said: `by ${process.pid}` });
if (saved.saved) writeSync(1, at ? `saved by ${process.pid}\n` : '');
unlinkSync(owner);
if (manner.startsWith('die')) killMyself();
await job.close();
