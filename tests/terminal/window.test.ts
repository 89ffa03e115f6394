// The window under the built program: too small, made larger and smaller, without colours, and not a terminal at all.
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import { atJob, benchData, head, keyFor, launcher, offIn, said, saysSaved, spans } from './at-the-bench.ts';
import { closeAll, start, usable } from './bench-side.ts';

const data = benchData();
let dataDir: string;
beforeEach(() => {
  dataDir = data.begin();
});
afterEach(closeAll);
afterAll(data.remove);

const off = keyFor('off', 'strip');

describe('a window that is too small', () => {
  it.each([
    [79, 24],
    [80, 23],
    [79, 23],
    [20, 5],
  ])('of %d by %d says so, and what it needs', async (cols, rows) => {
    const bench = start(['open', 'hatchback'], { dataDir, cols, rows });
    const frame = await bench.waitFor((all) => said(all).includes('80 x 24'));
    expect(said(frame)).toContain(`${cols} x ${rows}`);
    expect(frame).toHaveLength(rows);
    bench.resize(80, 24);
    await bench.waitFor(saysSaved(1));
  });

  it('loses nothing: back in size, everything is as it was', async () => {
    const bench = await atJob('hatchback', { dataDir });
    bench.press(off);
    const before = await bench.waitFor((all) => saysSaved(2)(all) && said(all).includes('cam cover 2 off, to tray 1'));
    bench.resize(79, 23);
    await bench.waitFor((all) => said(all).includes('80 x 24'));
    bench.resize(80, 24);
    await bench.waitFor((all) => all.every((row, i) => row === before[i]));
    bench.press(off);
    await bench.waitFor(saysSaved(3));
    expect(offIn(dataDir, 'hatchback')).toBe(3);
  });
});

describe('a window whose size changes', () => {
  it('loses no call in a storm of sizes, and stands as if there had been none', async () => {
    const bench = await atJob('hatchback', { dataDir });
    const sizes = [
      [79, 23],
      [200, 60],
      [80, 24],
      [20, 5],
      [120, 40],
      [81, 25],
    ] as const;
    for (let i = 0; i < 60; i++) {
      const [cols, rows] = sizes[i % sizes.length] as (typeof sizes)[number];
      bench.resize(cols, rows);
    }
    bench.resize(100, 30);
    await bench.waitFor((all) => all.length === 30 && spans(100)(all) && saysSaved(1)(all));
    bench.press(off, off);
    await bench.waitFor(saysSaved(3));
    const still = await atJob('hatchback', { dataDir, cols: 100, rows: 30 });
    const calm = await still.waitFor((all) => said(all).includes('cam cover 4'));
    // Only what each has said last differs: the second program looks at a job in use.
    const body = (all: readonly string[]) => all.slice(1, 25);
    await bench.waitFor((all) => body(all).every((row, i) => row === body(calm)[i]));
    expect(offIn(dataDir, 'hatchback')).toBe(3);
  });

  it('keeps the question that is asked and what is typed, larger, smaller, and too small', async () => {
    const bench = await atJob('hatchback', { dataDir });
    bench.press(keyFor('line', 'strip'));
    bench.type('off 1');
    await bench.waitFor('> off 1_');
    for (const [cols, rows] of [
      [120, 40],
      [80, 24],
      [60, 10],
      [100, 30],
    ] as const) {
      bench.resize(cols, rows);
      if (cols < 80) await bench.waitFor((all) => said(all).includes(`${cols} x ${rows}`));
      else {
        const frame = await bench.waitFor(
          (all) => all.length === rows && spans(cols)(all) && said(all).includes('> off 1_'),
        );
        expect(frame.filter((row) => row.includes('> off 1_'))).toHaveLength(1);
        expect(frame.filter((row) => row.includes('grey hatchback'))).toHaveLength(1);
        expect(head(frame)).toContain('1 off');
      }
    }
    bench.press('2', 'Enter');
    await bench.waitFor(saysSaved(2));
    await bench.waitFor((all) => said(all).includes('cam cover 12 off'));
  });
});

describe('colours', () => {
  it('are there, and every state has a shape beside them', async () => {
    const bench = await atJob('hatchback', { dataDir });
    await bench.waitFor((all) => bench.coloured() > 0 && said(all).includes('◉'));
  });

  it('are left out with NO_COLOR, and the screen says the same', async () => {
    const plain = await atJob('hatchback', { dataDir, env: { NO_COLOR: '1' } });
    const coloured = await atJob('hatchback', { dataDir: data.begin() });
    await coloured.waitFor((all) => all.join('\n') === plain.frame().join('\n') && spans(80)(all));
    expect(plain.coloured()).toBe(0);
    expect(coloured.coloured()).toBeGreaterThan(0);
  });
});

describe('where no screen can be', () => {
  it('says that a dumb terminal cannot show it, and paints nothing', async () => {
    const bench = start(['open', 'hatchback'], { dataDir, env: { TERM: 'dumb' } });
    expect(await bench.left()).toEqual({ exit: 64, ...usable });
    expect(said(bench.printed().split('\n'))).toMatch(
      /^countback: the screen needs a terminal that can move its cursor/,
    );
  });

  it.each([
    ['standard output', '| cat'],
    ['standard input', '< /dev/null'],
  ])('says that it needs a terminal where %s is none, in one line', async (_, redirected) => {
    const command = `"$0" "$@" ${redirected}`;
    const program = ['/bin/sh', '-c', command, process.execPath, launcher];
    const bench = start(['open', 'hatchback'], { dataDir, program });
    await bench.left();
    expect(said(bench.printed().split('\n'))).toBe(
      'countback: the screen needs a terminal; from a script use "countback take JOB"',
    );
  });
});

it('gives a screen reader lines instead of a drawing, the answer first', async () => {
  const bench = start(['open', 'hatchback'], { dataDir, env: { INK_SCREEN_READER: 'true' } });
  await bench.waitFor((all) => said(all).includes('1 off'));
  bench.press(off);
  const frame = await bench.waitFor(
    (all) => said(all).includes('cam cover 2 off, to tray 1') && said(all).includes('keys: '),
  );
  expect(frame.find((row) => row !== '')).toMatch(/^cam cover 2 off, to tray 1/);
  expect(said(frame)).toContain('next: cam cover 3');
  expect(said(frame)).not.toMatch(/[\u2500-\u28ff]/);
});
