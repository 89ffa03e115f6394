// The built program on a disk that takes no more: a limit on the size of a file, set and lifted from outside, stands for
// the full disk. What a disk does in its own ways is shown on the double, in tests/store.
import { spawnSync } from 'node:child_process';
import { afterAll, afterEach, beforeEach, expect, it } from 'vitest';
import { benchData, callsIn, head, keyFor, launcher, lockOf, offIn, offKeys, said, saysSaved } from './at-the-bench.ts';
import { type BenchSide, closeAll, nothingAsked, start, usable } from './bench-side.ts';

const data = benchData();
let dataDir: string;
beforeEach(() => {
  dataDir = data.begin();
});
afterEach(closeAll);
afterAll(data.remove);

const off = keyFor('off', 'strip');
const retry = keyFor('retry', 'strip');
const offShown = (frame: readonly string[]): number => Number(/(\d+) off/.exec(head(frame))?.[1]);

/** Calls until the file may not grow any more: the screen then says so, and which call is not saved. */
async function untilFull(): Promise<{ bench: BenchSide; shown: number }> {
  // A unit is 512 bytes (POSIX, ulimit); the soft limit alone can be lifted again.
  const command = 'ulimit -S -f 6; exec "$0" "$@"';
  const bench = start(['open', 'hatchback'], {
    dataDir,
    program: ['/bin/sh', '-c', command, process.execPath, launcher],
  });
  await bench.waitFor(saysSaved(1));
  for (const [i, key] of offKeys(40).entries()) {
    const n = i + 2;
    bench.press(key);
    const frame = await bench.waitFor((all) => saysSaved(n)(all) || head(all).includes('NOT SAVED'));
    if (head(frame).includes('NOT SAVED')) return { bench, shown: n };
  }
  throw new Error('the file never reached its limit');
}
const makeRoom = (): void => {
  const { status, stderr } = spawnSync('prlimit', [
    '--pid',
    String(lockOf(dataDir, 'hatchback').pid),
    '--fsize=unlimited',
  ]);
  if (status !== 0) throw new Error(`prlimit ended with ${status}: ${stderr}`);
};

it('[D5] shows the call NOT SAVED, takes no more, saves it by a key once there is room, and goes on', async () => {
  const { bench, shown } = await untilFull();
  await bench.waitFor((frame) => /NOT SAVED: .*may not grow.*Press/.test(said(frame)));
  bench.press(off, off);
  bench.press(keyFor('to-log', 'strip'));
  await bench.waitFor((frame) => /cam cover/.test(said(frame)) && head(frame).includes('NOT SAVED'));
  bench.press(keyFor('to-strip', 'log'));
  await bench.waitFor((frame) => head(frame).includes(`${shown} off`));
  bench.press(retry);
  bench.press(off);
  // Through the log and back: what was pressed before has been answered by then.
  bench.press(keyFor('to-log', 'strip'));
  await bench.waitFor((frame) => !head(frame).includes('Strip') && head(frame).includes('NOT SAVED'));
  bench.press(keyFor('to-strip', 'log'));
  await bench.waitFor((frame) => head(frame).includes('Strip') && head(frame).includes('NOT SAVED'));
  expect(offShown(bench.frame())).toBe(shown);
  expect(offIn(dataDir, 'hatchback')).toBe(shown - 1);

  makeRoom();
  bench.press(retry);
  await bench.waitFor((frame) => saysSaved(shown)(frame) && !said(frame).includes('NOT SAVED'));
  expect(offIn(dataDir, 'hatchback')).toBe(shown);
  bench.press(off);
  await bench.waitFor(saysSaved(shown + 1));
  bench.press(keyFor('quit', 'strip'));
  expect(await bench.left()).toEqual({ exit: 0, ...usable });
  expect(callsIn(dataDir, 'hatchback')).toHaveLength(shown + 2);
});

it('[D5] lists what was not saved when it is left', async () => {
  const { bench, shown } = await untilFull();
  bench.press(keyFor('quit', 'strip'));
  expect(await bench.left()).toMatchObject({ exit: 74, ...nothingAsked });
  expect(said(bench.printed().split('\n'))).toContain(
    `countback: NOT SAVED, 1 call; write them down: ${shown + 1} cam cover ${shown} off`,
  );
  expect(offIn(dataDir, 'hatchback')).toBe(shown - 1);
});
