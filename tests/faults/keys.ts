// Keys, bytes and window sizes drawn by chance, at the built program in a terminal: it does not crash, Escape and a key
// lead to the shelf from wherever that went, the terminal is usable after, and every job file opens.
import { deepEqual, equal, ok } from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { readLine } from '../../src/job/line.ts';
import { realDisk } from '../../src/store/disk.ts';
import { openJob } from '../../src/store/open-job.ts';
import { jobsIn } from '../../src/store/shelf.ts';
import { type Chance, chanceFrom } from '../agreement/chance.ts';
import { benchData, keyFor } from '../terminal/at-the-bench.ts';
import { type BenchSide, start, usable } from '../terminal/bench-side.ts';
import { type Row, type Size, trialsOf } from './row.ts';

const named =
  'Enter Escape Tab Backspace Space Up Down Left Right Home End Insert Delete PageUp PageDown F1 F5 F12 Shift+Tab Ctrl+F1'.split(
    ' ',
  );
const lines = [
  'off 1-5',
  'area "cam cover"',
  'back 1',
  'new 2',
  'tray 3',
  'strike 1',
  '; ; ;',
  'off 99999999999',
  'note "x"',
];
const sequences = [
  '\u001b[',
  '\u001b]0;x',
  '\u001b[999;999H',
  '\u001b[200~',
  '\u001b[201~',
  '\u001bP',
  '\u001b[1;2',
  '\u001b[6n',
  '\u001b[?1;2c',
  '\u001b[I',
  '\u001b[M !!',
  '\u001b[<0;1;1M',
  '\u001bO',
];
const texts = [
  'größer',
  '中文',
  '\u{1f527}',
  '\u202e',
  'e\u0301\u0301\u0301',
  '\u0000',
  '\u009b2J',
  '__proto__',
  '\ud83d',
];

// Without those on which a terminal that was just given back acts itself (ends or stops who is in front, holds all
// writing): they would reach the shell. tests/terminal presses them, each by itself.
const ofTheTerminal = new Set([0x03, 0x11, 0x13, 0x1a, 0x1c]);
const bytes = (chance: Chance, many: number): Buffer =>
  Buffer.from(
    Array.from({ length: many }, () => chance.whole(0, 255)).map((byte) => (ofTheTerminal.has(byte) ? 0 : byte)),
  );

/** Bytes go as they are: a text would be made good UTF-8 on the way. */
const send = (bench: BenchSide, what: string | Buffer): void => bench.type(what as string);

async function something(chance: Chance, bench: BenchSide, big: boolean): Promise<void> {
  const roll = chance.roll();
  if (roll < 0.3) bench.press(chance.of(named));
  else if (roll < 0.6) send(bench, String.fromCharCode(chance.whole(32, 126)));
  else if (roll < 0.68) send(bench, `/${chance.of(lines)}\r`);
  else if (roll < 0.75) send(bench, chance.of(sequences));
  else if (roll < 0.82) send(bench, chance.of(texts));
  else if (roll < 0.9) send(bench, bytes(chance, chance.whole(1, 40)));
  else if (roll < 0.93) send(bench, `\u001b[200~${bytes(chance, chance.whole(1, 300)).toString('latin1')}\u001b[201~`);
  else if (roll < 0.97) bench.resize(chance.whole(1, 200), chance.whole(1, 70));
  else if (big && roll > 0.99)
    await bench.paste(
      Buffer.concat([
        Buffer.from('\u001b[200~'),
        Buffer.alloc(1_000_000, bytes(chance, 997)),
        Buffer.from('\u001b[201~'),
      ]),
    );
}

export type Storm = { keys: number; pasted: number };

async function storm(seed: number, steps: number, dataDir: string, big: boolean): Promise<void> {
  const chance = chanceFrom(seed);
  const bench = start(['open', 'hatchback'], { dataDir });
  try {
    await bench.waitFor((frame) => /\d+ off/.test(frame[0] ?? ''));
    for (let step = 0; step < steps && bench.isRunning(); step++) {
      await something(chance, bench, big);
      // Now and then everything is read before it goes on, else all of it would come in one piece.
      if (step % 12 === 11) await new Promise((resolve) => setTimeout(resolve, chance.whole(0, 30)));
    }
    // What was typed may have left it; else Escape closes what is open, a key goes to the shelf, and another leaves.
    bench.resize(100, 30);
    for (let press = 0; press < 25 && bench.isRunning(); press++) {
      bench.press('Escape');
      // Pressed by hand: faster ones are taken for a key that is stuck.
      await bench.left(500).catch(() => undefined);
      const isOnShelf = bench.frame()[0]?.startsWith(' Shelf');
      bench.press(isOnShelf ? keyFor('quit', 'shelf') : keyFor('to-shelf', 'strip'));
      await bench.left(500).catch(() => undefined);
    }
    const leaving = await bench.left(20_000);
    deepEqual(leaving, { exit: 0, ...usable });
    ok(!/bug of the program/.test(bench.printed()), bench.printed());
  } finally {
    await bench.close();
  }
}

async function everyJobOpens(dataDir: string): Promise<void> {
  const shelf = await jobsIn(realDisk, join(dataDir, 'jobs'));
  ok(shelf.length > 0);
  for (const { path } of shelf) {
    const job = await openJob({ path, readLine });
    equal(job.mode, 'write');
    deepEqual(job.notices, []);
    await job.close();
  }
  const known = /^(jobs|settings\.json|vehicles\.json)$/;
  deepEqual(
    readdirSync(dataDir).filter((name) => !known.test(name)),
    [],
  );
}

export async function randomKeys({ long, minutes, seed: first }: Size): Promise<Row> {
  const trials = trialsOf(`random keys, bytes, pastes and window sizes${long ? ` for ${minutes} minutes` : ''}`);
  const data = benchData();
  const until = Date.now() + minutes * 60_000;
  let steps = 0;
  try {
    let dataDir = data.begin();
    for (let seed = first; seed === first || Date.now() < until; seed++) {
      const many = long ? 100 + ((seed * 37) % 400) : 60;
      // Now and then a fresh job: else all of them storm into what the first have made of it.
      if (seed % 5 === 0) dataDir = data.begin();
      steps += many;
      await trials.one(`seed ${seed}`, async () => {
        await storm(seed, many, dataDir, long || seed === first);
        await everyJobOpens(dataDir);
      });
    }
  } finally {
    data.remove();
  }
  trials.remark = `programs started, ${steps.toLocaleString('en')} keys or bursts in all, from seed ${first}`;
  return trials;
}
