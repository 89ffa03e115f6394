// Two of the built programs on one job, each in a terminal of its own. How soon a line shows is proven with a clock of
// its own in tests/store; here it shows without a key pressed.
import { readFileSync } from 'node:fs';
import { afterAll, afterEach, beforeEach, expect, it } from 'vitest';
import { atJob, benchData, fileOf, head, keyFor, offIn, said, saysSaved } from './at-the-bench.ts';
import { closeAll } from './bench-side.ts';

const data = benchData();
let dataDir: string;
beforeEach(() => {
  dataDir = data.begin();
});
afterEach(closeAll);
afterAll(data.remove);

const off = keyFor('off', 'strip');

it('[D3] the second looks only, sees what the first calls, and writes nothing', async () => {
  const first = await atJob('hatchback', { dataDir });
  const second = await atJob('hatchback', { dataDir });
  expect(head(second.frame())).toContain('look only');
  first.press(off);
  await first.waitFor(saysSaved(2));
  await second.waitFor((frame) => head(frame).includes('2 off'));

  const before = readFileSync(fileOf(dataDir, 'hatchback'));
  second.press(off, keyFor('strike-last', 'strip'), keyFor('retry', 'strip'));
  await second.waitFor((frame) => said(frame).includes('the job is open in another countback'));
  expect(head(second.frame())).toContain('2 off');
  expect(readFileSync(fileOf(dataDir, 'hatchback')).equals(before)).toBe(true);

  first.press(off);
  await first.waitFor(saysSaved(3));
  await second.waitFor((frame) => head(frame).includes('3 off'));
  // Whoever looks on where work is goes along with it.
  first.press('/', ...'area far side', 'Enter', off);
  await second.waitFor((frame) => frame.some((row) => row.startsWith(' at far side')));
  second.press(keyFor('quit', 'strip'));
  expect((await second.left()).exit).toBe(0);
  first.press(off);
  await first.waitFor(saysSaved(5));
  expect(offIn(dataDir, 'hatchback')).toBe(5);
});

it('[D3] the second writes once the first has closed the job and it is chosen on the shelf again', async () => {
  const first = await atJob('hatchback', { dataDir });
  const second = await atJob('hatchback', { dataDir });
  // Why it only looks stands there before any key.
  await second.waitFor((frame) => said(frame).includes('close it there and open it here again'));
  first.press(keyFor('quit', 'strip'));
  await first.left();
  second.press(keyFor('to-shelf', 'strip'));
  await second.waitFor((frame) => said(frame).includes('Its file, as a command takes it'));
  second.press('Enter');
  await second.waitFor(saysSaved(1));
  second.press(off);
  await second.waitFor(saysSaved(2));
});

it('[D3] after the first was killed a third writes at once, and who looks on sees that too', async () => {
  const first = await atJob('hatchback', { dataDir });
  const second = await atJob('hatchback', { dataDir });
  await first.kill('SIGKILL');
  await first.left();
  const third = await atJob('hatchback', { dataDir });
  third.press(off);
  await third.waitFor(saysSaved(2));
  await second.waitFor((frame) => head(frame).includes('2 off'));
});
