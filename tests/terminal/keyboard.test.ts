// The keyboard of the built program: keys that mean nothing, bursts, and pastes.

import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, expect, it } from 'vitest';
import {
  atJob,
  benchData,
  callsIn,
  fileOf,
  head,
  jobBy,
  keyFor,
  offIn,
  offKeys,
  said,
  saysSaved,
} from './at-the-bench.ts';
import { type BenchSide, closeAll, start } from './bench-side.ts';
import { bytesOf } from './keys.ts';

const data = benchData();
let dataDir: string;
beforeEach(() => {
  dataDir = data.begin();
});
afterEach(closeAll);
afterAll(data.remove);

const off = keyFor('off', 'strip');
const pasted = (text: string): string => `\u001b[200~${text}\u001b[201~`;
/** The question that a typed line is answered to. */
async function asking(bench: BenchSide): Promise<void> {
  bench.press(keyFor('line', 'strip'));
  await bench.waitFor(/^ *> _/m);
}

it('does nothing on function keys, Alt and Ctrl keys, and on what a terminal reports of itself', async () => {
  const bench = await atJob('hatchback', { dataDir });
  const before = bench.frame();
  const functionKeys = Array.from({ length: 12 }, (_, i) => `F${i + 1}`);
  bench.press(
    ...functionKeys,
    'Ctrl+F1',
    'Insert',
    'Shift+Tab',
    'Alt+a',
    'Alt+x',
    'Alt+1',
    'Ctrl+a',
    'Ctrl+d',
    'Ctrl+l',
  );
  for (const report of ['[24;80R', '[<0;10;10M', '[57399u', '[27;5;97~', '[?62;1;2c', '[[A', ']11;rgb:00/00/00\u0007'])
    bench.type(`\u001b${report}`);
  bench.press('\u0000', '\u001c');
  // The first key that means something comes after all of them, and finds everything as it was.
  bench.press(off);
  await bench.waitFor(saysSaved(2));
  expect(callsIn(dataDir, 'hatchback')).toHaveLength(3);
  expect(bench.frame().slice(1, 3)).toEqual(before.slice(1, 3));
});

it('takes a burst of forty keys one by one', async () => {
  const bench = await atJob('hatchback', { dataDir });
  bench.type(offKeys(40).map(bytesOf).join(''));
  await bench.waitFor(saysSaved(41));
  expect(offIn(dataDir, 'hatchback')).toBe(41);
});

it('takes a burst that leads through a question: a letter, its answer, the call', async () => {
  const bench = await atJob('hatchback', { dataDir });
  bench.type(`${keyFor('area', 'strip')}sump\r\r\r`);
  await bench.waitFor(saysSaved(3));
  const lines = readFileSync(fileOf(dataDir, 'hatchback'), 'utf8');
  expect(lines).toContain('"hole":"sump/2"');
});

it('hears a paste only where something is asked', async () => {
  const bench = await atJob('hatchback', { dataDir });
  bench.type(pasted('\r\r\rq'));
  bench.press(off);
  await bench.waitFor(saysSaved(2));
  await asking(bench);
  bench.type(pasted('off\r\n7'));
  await bench.waitFor('> off 7_');
  bench.press('Enter');
  await bench.waitFor(saysSaved(3));
  expect(readFileSync(fileOf(dataDir, 'hatchback'), 'utf8')).toContain('"hole":"cam cover/7"');
});

it('[X3] signs nothing by what is pasted, whether or not the terminal says that it is', async () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'pasted-'));
  jobBy(dataDir, 'van', ['job van', 'odometer 9 km']);
  const bench = await atJob('van', { dataDir });
  bench.press(keyFor('to-leaving', 'strip'), keyFor('release', 'leaving'));
  await bench.waitFor(/who says so|by whom|name/i);
  bench.type(`Ann\r2\r`);
  await bench.waitFor('several keys at one moment answer nothing here');
  expect(callsIn(dataDir, 'van')).not.toContain('released');
  bench.type(pasted('yes'));
  await bench.waitFor('what is pasted chooses nothing');
  bench.press('2');
  await bench.waitFor((frame) => said(frame).includes('released by Ann') && /\bsaved\b/.test(head(frame)));
  expect(callsIn(dataDir, 'van')).toContain('released');
  // What is remembered of the vehicle is kept once it is released: the folder is not removed under it.
  await bench.close();
  rmSync(dataDir, { recursive: true, force: true });
});

it('shows and writes nothing of an escape sequence that is pasted', async () => {
  const bench = await atJob('hatchback', { dataDir });
  await asking(bench);
  bench.type(pasted('area "\u001b[31msump\u001b[2J\u001b]0;mine\u0007\u001b[?1049l"\u0003'));
  await bench.waitFor('> area "sump"_');
  expect(bench.asked()).toMatchObject({ alternateScreen: true, cursorHidden: true, bracketedPaste: true });
  bench.press('Enter', off);
  await bench.waitFor(saysSaved(2));
  expect(said(bench.frame())).toContain('at sump');
  expect(readFileSync(fileOf(dataDir, 'hatchback'), 'utf8')).not.toMatch(/u001b|u0007/);
});

it('makes a new job of a pasted name without what steers in it, and none of a name that is a path', async () => {
  // Deep enough that the path, were it followed after all, would end in the test's own folder.
  const cwd = join(dataDir, 'one', 'two', 'three');
  mkdirSync(cwd, { recursive: true });
  const bench = start([], { dataDir, cwd });
  await bench.waitFor('hatchback');
  bench.press(keyFor('new-job', 'shelf'));
  bench.type(pasted('\u001b[31mblue van\u0007'));
  bench.press('Enter');
  await bench.waitFor((frame) => head(frame).includes('blue van'));
  const jobs = () =>
    readdirSync(join(dataDir, 'jobs'))
      .filter((name) => name.endsWith('.jsonl'))
      .sort();
  expect(jobs()).toEqual(['blue-van.countback.jsonl', 'hatchback.countback.jsonl']);
  bench.press(keyFor('to-shelf', 'strip'));
  await bench.waitFor((frame) => frame.some((row) => row.includes('blue van') && row.includes('> ')));
  bench.press(keyFor('new-job', 'shelf'));
  bench.type('../../front/rear');
  bench.press('Enter');
  await bench.waitFor((frame) => said(frame).includes('neither a name for a new job nor the path'));
  expect(jobs()).toHaveLength(2);
});

it('ends a paste whose end never comes, and hears keys again', async () => {
  const bench = await atJob('hatchback', { dataDir });
  await asking(bench);
  bench.type('\u001b[200~off 9');
  await bench.waitFor('> off 9_');
  bench.press('Enter');
  await bench.waitFor(saysSaved(2));
});
