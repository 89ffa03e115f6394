// From a key to what it paints and to "saved", on a short and on a long job, beside a bare program with one changing
// text and beside one that paints the same screen; and what that takes in bytes and in memory. All stand open at once and
// take turns.
import { mkdirSync, writeFileSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { type Figure, figure, medianOf, quantile } from './figure.ts';
import { benchFolder, dataWith } from './job-file.ts';
import { long, type Size, short } from './large-job.ts';
import { bundled, programs } from './programs.ts';
import { type Watched, watch } from './terminal.ts';
import { twoFrames } from './two-frames.ts';

const rounds = 5;
const keysEach = 100;
/** As slow as the fastest hand: faster, a key counts as held down. */
const pause = () => new Promise((resolve) => setTimeout(resolve, 100));

type Bench = { program: Watched; file: string; off: number; painted: number[]; saved: number[]; bytes: number[] };

async function benchOf(name: string, size: Size): Promise<Bench> {
  const { data, path: file } = dataWith(name, size);
  const program = watch(programs.countback, ['open', name], data);
  await program.until(/ Strip .* \d+ off .* open/);
  await program.quiet();
  // Something cures in it: whether the time is right is asked, and how it was left is said, before work goes on.
  if (/Is that time right/.test(program.screen())) program.press('2');
  await program.quiet();
  program.press('S');
  await program.quiet();
  // An area of its own: of the last one every hole may have been called.
  for (const keys of ['/', 'area "end lid"', '\r', '/', 'holes 24', '\r']) {
    program.press(keys);
    await program.quiet();
  }
  const off = Number(/(\d+) off/.exec(program.screen())?.[1]);
  return { program, file, off, painted: [], saved: [], bytes: [] };
}

/** One more fastener off; the call is struck again, unmeasured, so that the area never runs out of them. */
async function press(bench: Bench): Promise<void> {
  const { program, off } = bench;
  program.press('\r');
  bench.painted.push(await program.until(new RegExp(`\\(${off + 1} off, \\d+ slack\\)`)));
  bench.saved.push(await program.until(new RegExp(` ${off + 1} off .* saved`)));
  await pause();
  bench.bytes.push(program.bytes());
  program.press('\x7f');
  await program.until(new RegExp(` ${off} off .* saved`));
  await pause();
}

async function appendBare(folder: string, bytes: number): Promise<{ append(): Promise<number>; end(): Promise<void> }> {
  mkdirSync(folder, { recursive: true });
  const file = await open(join(folder, 'bare-append'), 'w');
  const line = Buffer.alloc(bytes, 'x');
  let at = 0;
  return {
    async append() {
      const from = performance.now();
      await file.write(line, 0, line.length, at);
      await file.sync();
      at += line.length;
      return performance.now() - from;
    },
    end: () => file.close(),
  };
}

const inRounds = (values: readonly number[], of: (some: readonly number[]) => number): number[] =>
  Array.from({ length: rounds }, (_, round) => of(values.slice(round * keysEach, (round + 1) * keysEach)));
const p99 = (some: readonly number[]) => quantile(some, 0.98);

export async function keyTime(): Promise<Figure[]> {
  await bundled();
  const bare = watch(programs.bareInk, [], benchFolder);
  await bare.until(/bare 0 lines, 0 keys/);
  const few = await benchOf('short', short);
  const many = await benchOf('long', long);
  await press(few);
  const { painted: frames, off } = twoFrames(few.file);
  const framesFile = join(benchFolder, 'two-frames.json');
  writeFileSync(framesFile, JSON.stringify(frames));
  const same = watch(programs.bareSame, [framesFile], benchFolder);
  await same.until(new RegExp(` ${off[0]} off `));
  const samePainted: number[] = [];
  for (const one of [few.painted, few.saved, few.bytes]) one.length = 0;
  const appending = await appendBare(benchFolder, 300);
  const painted: number[] = [];
  const appended: number[] = [];
  const bytes: number[] = [];
  const memory: { few: number[]; many: number[]; bare: number[] } = { few: [], many: [], bare: [] };
  for (let key = 0; key < rounds * keysEach; key += 1) {
    bare.press('x');
    painted.push(await bare.until(new RegExp(` ${key + 1} keys`)));
    await pause();
    bytes.push(bare.bytes());
    appended.push(await appending.append());
    same.press('x');
    samePainted.push(await same.until(new RegExp(` ${off[key % 2 === 0 ? 1 : 0]} off `)));
    await pause();
    await press(few);
    await press(many);
    if ((key + 1) % keysEach === 0) {
      memory.few.push(few.program.resident() / 1e6);
      memory.many.push(many.program.resident() / 1e6);
      memory.bare.push(bare.resident() / 1e6);
    }
  }
  for (const program of [bare, same, few.program, many.program]) await program.end();
  await appending.end();

  const p50 = medianOf;
  const bareSaved = (of: typeof p50) =>
    inRounds(
      painted.map((ms, key) => ms + (appended[key] ?? 0)),
      of,
    );
  const shared = { unit: 'ms' } as const;
  const figures = (
    [
      ['50 fasteners', few],
      ['20,000 lines', many],
    ] as const
  ).flatMap(([job, b]) => [
    figure(
      { ...shared, name: `key to painted p50, ${job}`, of: 'bare Ink program', goal: '<= 1.5' },
      inRounds(b.painted, p50),
      inRounds(painted, p50),
    ),
    figure(
      { ...shared, name: `key to painted p99, ${job}`, of: 'bare Ink program', goal: '<= 2' },
      inRounds(b.painted, p99),
      inRounds(painted, p99),
    ),
    figure(
      {
        ...shared,
        name: `key to saved p50, ${job}`,
        of: 'bare key to painted + bare append and fsync',
        goal: '<= 1.5',
      },
      inRounds(b.saved, p50),
      bareSaved(p50),
    ),
  ]);
  return [
    ...figures,
    ...(
      [
        ['50 fasteners', few],
        ['20,000 lines', many],
      ] as const
    ).map(([job, b]) =>
      figure(
        { ...shared, name: `key to painted p50, ${job}`, of: 'bare Ink program painting the same screen' },
        inRounds(b.painted, p50),
        inRounds(samePainted, p50),
      ),
    ),
    figure(
      { ...shared, name: 'key to painted p50', of: '20,000 lines / 50 fasteners', goal: '<= 1.25' },
      inRounds(many.painted, p50),
      inRounds(few.painted, p50),
    ),
    figure(
      { ...shared, name: 'key to saved p50', of: '20,000 lines / 50 fasteners', goal: '<= 1.25' },
      inRounds(many.saved, p50),
      inRounds(few.saved, p50),
    ),
    figure(
      { unit: 'MB', name: 'memory, 20,000 lines', of: 'bare Ink program', goal: '80 MB more' },
      memory.many,
      memory.bare,
    ),
    figure({ unit: 'MB', name: 'memory, 50 fasteners', of: 'bare Ink program' }, memory.few, memory.bare),
    figure(
      { unit: 'bytes', name: 'painted per call', of: 'bare Ink program per key', goal: '2,500 bytes' },
      inRounds(many.bytes, p50),
      inRounds(bytes, p50),
    ),
  ];
}
