// The plans are read after the first frame of a job, and at once where they are asked for sooner; one that can't be read is
// told when it is found out, and where plans are listed.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, it } from 'vitest';
import { head, keyFor, said } from './at-the-bench.ts';
import { closeAll, start } from './bench-side.ts';

const folder = mkdtempSync(join(tmpdir(), 'plans-later-'));
afterEach(() => {
  closeAll();
  rmSync(folder, { recursive: true, force: true });
});

it('tells of a broken plan on the bench, and offers the others', async () => {
  mkdirSync(join(folder, 'plans'), { recursive: true });
  writeFileSync(join(folder, 'plans', 'broken.json'), '{ "countback": "plan", ]');
  const bench = start([], { dataDir: folder });
  await bench.waitFor((frame) => head(frame).includes('Shelf of jobs'));
  bench.press(keyFor('new-job', 'shelf'));
  bench.type('green van');
  bench.press('Enter');
  await bench.waitFor((frame) => said(frame).includes('this is not JSON in line 1, column 24'));
  bench.press(keyFor('plan', 'strip'));
  await bench.waitFor((frame) => said(frame).includes('plan (1 left out: "countback plans" says why)'));
  bench.press('Escape');
  await bench.waitFor((frame) => !said(frame).includes('left out'));
  bench.press(keyFor('to-services', 'strip'));
  await bench.waitFor((frame) => head(frame).includes('Services') && said(frame).includes('coolant pump'));
});

it('tells of several faults in the settings the first, and where the others are', async () => {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'settings.json'), '{ "trays": 3, "zz": 1, "yy": 2 }');
  const bench = start([], { dataDir: folder });
  await bench.waitFor((frame) => said(frame).includes('trays: this must be a list, not 3'));
  await bench.waitFor((frame) => said(frame).includes('2 more: the settings screen has them'));
});
