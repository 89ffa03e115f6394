// The built program in a terminal: killed at instants drawn by chance while keys are storming in, and on a disk that does
// not answer. A kill shows nothing of an fsync, memory outlives the process; the power cuts are on the double.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { readLine } from '../../src/job/line.ts';
import { openJob } from '../../src/store/open-job.ts';
import { chance } from '../store/disk-double.ts';
import { atJob, benchData, fileOf, head, keyFor, launcher, offIn, offKeys } from '../terminal/at-the-bench.ts';
import { start } from '../terminal/bench-side.ts';
import { type Row, type Size, trialsOf } from './row.ts';

const offShown = (frame: readonly string[]): number => Number(/(\d+) off/.exec(head(frame))?.[1] ?? Number.NaN);
const isSaved = (frame: readonly string[]): boolean => /\bsaved\b/.test(head(frame));

export async function killedInAStorm({ kills, seed }: Size): Promise<Row> {
  const trials = trialsOf('the built program killed (-9) at random instants of a storm of keys');
  const data = benchData();
  const after: number[] = [];
  try {
    let dataDir = data.begin();
    for (let kill = 0; kill < kills; kill++) {
      // A job that grows for ever would only make the later ones slow.
      if (kill % 10 === 9) dataDir = data.begin();
      await trials.one(`kill ${kill}, seed ${seed + kill}`, async () => {
        const next = chance(seed + kill);
        const bench = await atJob('hatchback', { dataDir });
        try {
          const before = offShown(bench.frame());
          let saved = before;
          const watching = bench
            .waitFor((frame) => {
              if (isSaved(frame)) saved = Math.max(saved, offShown(frame) || 0);
              return false;
            }, 60_000)
            .catch(() => undefined);
          const storm = offKeys(60);
          bench.press(...storm.splice(0, 1 + Math.floor(next() * 20)));
          // An instant is drawn; nothing that is checked rests on how long it takes.
          await new Promise((resolve) => setTimeout(resolve, next() * 500));
          bench.press(...storm);
          await new Promise((resolve) => setTimeout(resolve, next() * 30));
          await bench.kill('SIGKILL');
          await bench.left();
          await watching;
          const there = offIn(dataDir, 'hatchback');
          ok(there >= saved, `${saved} off were shown as saved, ${there} are on the disk`);
          after.push(saved - before);
          const job = await openJob({ path: fileOf(dataDir, 'hatchback'), readLine });
          equal(job.mode, 'write');
          await job.close();
        } finally {
          await bench.close();
        }
      });
    }
  } finally {
    data.remove();
  }
  after.sort((a, b) => a - b);
  trials.remark = `calls saved before the kill: median ${after[after.length >> 1] ?? 0}, most ${after.at(-1) ?? 0}`;
  return trials;
}

/** Asked before the program: every fsync waits until the program is told to let it be. */
const slowly = `data:text/javascript,${encodeURIComponent(`
  import { open } from 'node:fs/promises';
  const file = await open('/dev/null', 'r');
  const prototype = Object.getPrototypeOf(file);
  await file.close();
  const { sync } = prototype;
  let slow = false;
  let waiting = [];
  process.on('SIGUSR2', () => {
    slow = !slow;
    for (const go of waiting.splice(0)) go();
  });
  prototype.sync = async function () {
    if (slow) await new Promise((go) => waiting.push(go));
    return sync.call(this);
  };
`)}`;

export async function slowDisk({ long }: Size): Promise<Row> {
  const trials = trialsOf('a disk that does not answer: the paint does not wait for it');
  const data = benchData();
  const bench = start(['open', 'hatchback'], {
    dataDir: data.begin(),
    program: [process.execPath, '--import', slowly, launcher],
  });
  try {
    await bench.waitFor((frame) => isSaved(frame));
    for (let round = 0; round < (long ? 50 : 3); round++)
      await trials.one(`round ${round}`, async () => {
        const before = offShown(bench.frame());
        await bench.kill('SIGUSR2');
        bench.press(...offKeys(3));
        const frame = await bench.waitFor((rows) => offShown(rows) === before + 3);
        ok(!isSaved(frame), 'shown as saved while the disk has not answered');
        await bench.kill('SIGUSR2');
        await bench.waitFor((rows) => offShown(rows) === before + 3 && isSaved(rows));
      });
    bench.press(keyFor('quit', 'strip'));
    deepEqual((await bench.left()).exit, 0);
  } finally {
    await bench.close();
    data.remove();
  }
  return trials;
}
