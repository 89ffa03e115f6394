// The built program killed in the middle of calls, and opened again on what is then on the disk. Kill -9 cannot show
// what a cut of the power does: the disk keeps what the program gave it. That is shown on a disk double, in tests/store.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  atJob,
  benchData,
  beside,
  callsIn,
  fileOf,
  head,
  keyFor,
  offIn,
  offKeys,
  said,
  saysSaved,
  spans,
} from './at-the-bench.ts';
import { type BenchSide, closeAll, start } from './bench-side.ts';

const data = benchData();
let dataDir: string;
beforeEach(() => {
  dataDir = data.begin();
});
afterEach(closeAll);
afterAll(data.remove);

const off = keyFor('off', 'strip');
const copies = () => join(dataDir, 'jobs', 'copies');
/** The choice of that number in the list of answers. */
const choice = (bench: BenchSide, words: string): string => {
  const row = bench.frame().find((one) => one.includes(words));
  return /\d/.exec(row ?? '')?.[0] ?? `no "${words}"`;
};
const offShown = (frame: readonly string[]): number => Number(/(\d+) off/.exec(head(frame))?.[1]);

describe('killed in the middle of calls', () => {
  it('[D2] every call shown as saved is there, time after time, and the job is free at once', async () => {
    for (let round = 0; round < 2; round++) {
      const bench = await atJob('hatchback', { dataDir });
      const before = offShown(bench.frame());
      let saved = before;
      const remember = (frame: readonly string[]) => {
        if (saysSaved(offShown(frame))(frame)) saved = Math.max(saved, offShown(frame));
        return saved > before + round * 4;
      };
      // Keys go on coming; the kill meets the program wherever it is then.
      bench.press(...offKeys(20));
      await bench.waitFor(remember);
      bench.press(...offKeys(30));
      await bench.kill('SIGKILL');
      await bench.left();
      remember(bench.frame());
      const again = await atJob('hatchback', { dataDir });
      await again.waitFor((frame) => saysSaved(offShown(frame))(frame));
      expect(offShown(again.frame())).toBeGreaterThanOrEqual(saved);
      expect(offShown(again.frame())).toBe(offIn(dataDir, 'hatchback'));
      expect(saved).toBeGreaterThan(before);
      again.press(keyFor('quit', 'strip'));
      await again.left();
    }
    expect(beside(dataDir)).toEqual(['copies', 'hatchback.countback.jsonl']);
  });
});

describe('a last line that was half written', () => {
  it('[D2] is left out, told on the screen once, and gone on from', async () => {
    const path = fileOf(dataDir, 'hatchback');
    const whole = readFileSync(path);
    writeFileSync(path, whole.subarray(0, whole.length - 30));
    rmSync(copies(), { recursive: true });
    const bench = start(['open', 'hatchback'], { dataDir });
    await bench.waitFor((frame) => said(frame).includes('half written'));
    expect(head(bench.frame())).toContain('0 off');
    bench.press(keyFor('area', 'strip'));
    bench.type('cam cover\r');
    bench.press(off);
    await bench.waitFor(saysSaved(1));
    expect(said(bench.frame())).not.toContain('half written');
    bench.press(keyFor('quit', 'strip'));
    await bench.left();
    const again = await atJob('hatchback', { dataDir });
    await again.waitFor(saysSaved(1));
    expect(said(again.frame())).not.toContain('half written');
  });
});

describe('a last line that does not hold', () => {
  async function doubted(): Promise<{ bench: BenchSide; path: string; bad: Buffer }> {
    const path = fileOf(dataDir, 'hatchback');
    const bad = readFileSync(path);
    const at = bad.length - 30;
    bad[at] = (bad[at] ?? 0) ^ 1;
    writeFileSync(path, bad);
    rmSync(copies(), { recursive: true });
    const bench = start(['open', 'hatchback'], { dataDir });
    await bench.waitFor((frame) => said(frame).includes('Go on without the last line?') && spans(80)(frame));
    return { bench, path, bad };
  }
  it('[D4] is asked about before going on, and a copy of it is kept', async () => {
    const { bench, path, bad } = await doubted();
    bench.press(choice(bench, 'go on without it'));
    await bench.waitFor((frame) => !said(frame).includes('Go on without') && saysSaved(0)(frame));
    bench.press(keyFor('area', 'strip'));
    bench.type('cam cover\r');
    bench.press(off);
    await bench.waitFor(saysSaved(1));
    bench.press(keyFor('quit', 'strip'));
    await bench.left();
    expect(readdirSync(copies()).some((name) => readFileSync(join(copies(), name)).equals(bad))).toBe(true);
    expect(readFileSync(path).equals(bad)).toBe(false);
    const again = await atJob('hatchback', { dataDir });
    await again.waitFor(saysSaved(1));
    expect(callsIn(dataDir, 'hatchback')).toHaveLength(2);
  });

  it.each([
    ['only looked at', (bench: BenchSide) => bench.press(choice(bench, 'only look'))],
    ['left with Escape', (bench: BenchSide) => bench.press('Escape')],
  ])('[D4] is left alone when it is %s, and no call is taken', async (_, answer) => {
    const { bench, path, bad } = await doubted();
    answer(bench);
    await bench.waitFor((frame) => !said(frame).includes('Go on without the last line?'));
    bench.press(keyFor('area', 'strip'));
    bench.type('cam cover\r');
    bench.press(off);
    await bench.waitFor((frame) => said(frame).includes('to look only'));
    bench.press(keyFor('quit', 'strip'));
    expect((await bench.left()).exit).toBe(0);
    expect(readFileSync(path).equals(bad)).toBe(true);
    expect(beside(dataDir)).not.toContain('hatchback.countback.jsonl.lock');
  });
});

describe('a file of which a copy holds more', () => {
  it('[D2 D4] is asked about, and gone on with from the copy', async () => {
    const path = fileOf(dataDir, 'hatchback');
    const whole = readFileSync(path);
    const older = whole.subarray(0, whole.lastIndexOf(0x0a, whole.length - 2) + 1);
    writeFileSync(path, older);
    const bench = start(['open', 'hatchback'], { dataDir });
    await bench.waitFor((frame) => said(frame).includes('Go on from that copy?') && spans(80)(frame));
    bench.press(choice(bench, 'go on from the copy'));
    await bench.waitFor((frame) => !said(frame).includes('Go on from') && saysSaved(1)(frame));
    bench.press(keyFor('quit', 'strip'));
    expect((await bench.left()).exit).toBe(0);
    expect(readFileSync(path).equals(whole)).toBe(true);
    const kept = readdirSync(copies()).filter((name) => name.includes('before-cut'));
    expect(kept.map((name) => readFileSync(join(copies(), name)).equals(older))).toEqual([true]);
  });
});

describe('a file that another was laid over while the job was open', () => {
  it.each(['laid over', 'deleted'])(
    '[D2 D4] %s: at the end all that was called is in a copy, and the next opening leads to it',
    async (how) => {
      const path = fileOf(dataDir, 'hatchback');
      const older = readFileSync(path);
      const bench = await atJob('hatchback', { dataDir });
      bench.press(off);
      await bench.waitFor(saysSaved(2));
      bench.press(off);
      await bench.waitFor(saysSaved(3));
      if (how === 'deleted') rmSync(path);
      else writeFileSync(path, older);
      bench.press(keyFor('quit', 'strip'));
      expect((await bench.left()).exit).toBe(74);
      if (how === 'deleted') {
        expect(
          readdirSync(copies()).map((name) => readFileSync(join(copies(), name), 'utf8').split('\n').length),
        ).toContain(6);
        return;
      }
      const again = start(['open', 'hatchback'], { dataDir });
      await again.waitFor((frame) => said(frame).includes('Go on from that copy?') && spans(80)(frame));
      again.press(choice(again, 'go on from the copy'));
      await again.waitFor(saysSaved(3));
    },
  );
});

describe('a job that is refused', () => {
  it('[D4] is told on the shelf, where the others can be opened', async () => {
    const path = fileOf(dataDir, 'hatchback');
    const bad = readFileSync(path);
    bad[150] = (bad[150] ?? 0) ^ 1;
    writeFileSync(path, bad);
    const bench = start(['open', 'hatchback'], { dataDir });
    await bench.waitFor((frame) => said(frame).includes('is not as it was written'));
    bench.press(keyFor('new-job', 'shelf'));
    bench.type('van\r');
    await bench.waitFor((frame) => head(frame).includes('van'));
    expect(readFileSync(path).equals(bad)).toBe(true);
  });
});
