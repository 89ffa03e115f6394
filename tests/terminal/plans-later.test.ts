// The plans are read after the first frame of a job, and at once where they are asked for sooner; one that can't be read is
// told when it is found out.
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
  bench.press(keyFor('to-services', 'strip'));
  await bench.waitFor((frame) => head(frame).includes('Services') && said(frame).includes('coolant pump'));
});
