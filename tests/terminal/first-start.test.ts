// The first start, on a folder where nothing is yet: the shelf stands there with its hint, nothing is asked, and nothing is
// written until something is set or a job is made.
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it } from 'vitest';
import { head, keyFor, said } from './at-the-bench.ts';
import { closeAll, start } from './bench-side.ts';

const folder = mkdtempSync(join(tmpdir(), 'first-start-'));
const dataDir = join(folder, 'data');
afterEach(() => {
  closeAll();
  rmSync(folder, { recursive: true, force: true });
});

it('asks nothing before the first job, and a setting is kept from the screen of settings', async () => {
  const bench = start([], { dataDir });
  const first = await bench.waitFor((frame) => said(frame).includes('No job yet'));
  expect(said(first)).toContain(`No job yet. Press ${keyFor('new-job', 'shelf')} for a new one`);
  expect(said(first)).not.toMatch(/leave it/);
  expect(existsSync(dataDir) ? readdirSync(dataDir) : []).toEqual([]);

  bench.press(keyFor('to-settings', 'shelf'));
  await bench.waitFor((frame) => head(frame).includes('Settings'));
  bench.press('Down', 'Down', 'Enter');
  await bench.waitFor((frame) => said(frame).includes('Distance in mi'));
  bench.press('Escape');
  await bench.waitFor((frame) => head(frame).includes('Shelf of jobs'));
  bench.press(keyFor('quit', 'shelf'));
  expect(await bench.left()).toMatchObject({ exit: 0 });
  const kept = JSON.parse(readFileSync(join(dataDir, 'settings.json'), 'utf8')) as { units: unknown };
  expect(kept.units).toEqual({ distance: 'mi', temperature: 'C', torque: 'N m' });
});
