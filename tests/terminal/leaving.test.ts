// However the program ends, the terminal is usable again: normal screen, cursor, settings, no bracketed paste.
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  atJob,
  benchData,
  beside,
  head,
  keyFor,
  labelOf,
  launcher,
  lockOf,
  offIn,
  said,
  saysSaved,
  spans,
} from './at-the-bench.ts';
import { type BenchSide, closeAll, nothingAsked, start, usable } from './bench-side.ts';

const data = benchData();
let dataDir: string;
beforeEach(() => {
  dataDir = data.begin();
});
afterEach(closeAll);
afterAll(data.remove);

describe('the terminal after the program', () => {
  it('is usable after leaving by a key', async () => {
    const bench = await atJob('hatchback', { dataDir });
    expect(bench.isAlternateScreen()).toBe(true);
    bench.press(keyFor('quit', 'strip'));
    expect(await bench.left()).toEqual({ exit: 0, ...usable });
    expect(said(bench.printed().split('\n'))).toMatch(
      /saved in .*hatchback.*; \d+ off, .*Back to it: countback open hatchback$/,
    );
  });

  it('tells in one line, on the screen there was before, what could not be remembered of the vehicle', async () => {
    const memory = join(dataDir, 'vehicles.json');
    const bench = await atJob('hatchback', { dataDir });
    rmSync(memory, { force: true });
    mkdirSync(memory);
    bench.press(keyFor('off', 'strip'));
    await bench.waitFor(saysSaved(2));
    bench.press(keyFor('quit', 'strip'));
    expect(await bench.left()).toEqual({ exit: 0, ...usable });
    expect(bench.printed().match(/was not kept/g)).toHaveLength(1);
    expect(bench.printed()).toContain('what is remembered of this vehicle was not kept');
  });

  it.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
    ['SIGQUIT', 131],
  ] as const)('is usable after %s', async (signal, exit) => {
    const bench = await atJob('hatchback', { dataDir });
    bench.press(keyFor('off', 'strip'));
    await bench.waitFor(saysSaved(2));
    await bench.kill(signal);
    expect(await bench.left()).toEqual({ exit, ...usable });
  });

  it('keeps what is remembered of the vehicle when the signal of a closed window comes after its streams ended', async () => {
    // As a hard-pressed machine does it: the signal comes when the terminal was given back and the job is being closed.
    const late = `data:text/javascript,${encodeURIComponent(`
      process.on('SIGUSR2', () => {
        process.stdin.emit('end');
        const pause = process.stdin.pause;
        process.stdin.pause = function () {
          process.nextTick(() => process.emit('SIGHUP', 'SIGHUP'));
          return pause.call(this);
        };
      });
    `)}`;
    const bench = start(['open', 'hatchback'], { dataDir, program: [process.execPath, '--import', late, launcher] });
    await bench.waitFor(saysSaved(1));
    bench.type(`${keyFor('line', 'strip')}odometer 5000 km\r`);
    await bench.waitFor((frame) => said(frame).includes('5000') && saysSaved(1)(frame));
    await bench.kill('SIGUSR2');
    expect(await bench.left()).toEqual({ exit: 129, ...usable });
    expect(beside(dataDir).filter((name) => name.includes('lock'))).toEqual([]);
    expect(readFileSync(join(dataDir, 'vehicles.json'), 'utf8')).toContain('5000');
  });

  // Nothing in the program waits for such a thing: Node itself is asked to plant it, before the program begins.
  const planting = (plant: () => void): string =>
    `data:text/javascript,${encodeURIComponent(`process.on('SIGUSR2', () => (${plant})());`)}`;
  it.each<[string, () => void]>([
    [
      'thrown out of an event',
      () => {
        throw new Error('planted');
      },
    ],
    ['a promise nobody caught', () => void Promise.reject(new Error('planted'))],
    [
      'thrown while painting',
      () => {
        const { repeat } = String.prototype;
        String.prototype.repeat = function (n) {
          if (String(this) === '\u2500') throw new Error('planted');
          return repeat.call(this, n);
        };
        Object.defineProperty(process.stdout, 'columns', { value: 90 });
        process.stdout.emit('resize');
      },
    ],
  ])('is usable after a bug: %s', async (_, plant) => {
    const bench = start(['open', 'hatchback'], {
      dataDir,
      program: [process.execPath, '--import', planting(plant), launcher],
    });
    await bench.waitFor(saysSaved(1));
    await bench.kill('SIGUSR2');
    expect(await bench.left()).toEqual({ exit: 70, ...usable });
    expect(bench.printed()).toContain('planted');
  });

  it('waits for a disk that hangs until it is asked again, and then lists what is not saved', async () => {
    const hanging = `data:text/javascript,${encodeURIComponent(`
      import { open } from 'node:fs/promises';
      const file = await open('/dev/null', 'r');
      const prototype = Object.getPrototypeOf(file);
      await file.close();
      process.on('SIGUSR2', () => { prototype.sync = () => new Promise(() => setInterval(() => {}, 1e6)); });
    `)}`;
    const bench = start(['open', 'hatchback'], {
      dataDir,
      program: [process.execPath, '--import', hanging, launcher],
    });
    await bench.waitFor(saysSaved(1));
    await bench.kill('SIGUSR2');
    bench.press(keyFor('off', 'strip'));
    await bench.waitFor((frame) => head(frame).includes('2 off') && head(frame).includes('saving'));
    await bench.kill('SIGTERM');
    await bench.waitFor(() => !bench.isAlternateScreen());
    expect(bench.isRunning()).toBe(true);
    await bench.kill('SIGTERM');
    expect(await bench.left()).toEqual({ exit: 74, ...usable });
    expect(bench.printed()).toMatch(/NOT SAVED, 1 call; write them down:\n {2}\d+ {2}cam cover 2 off/);
  });

  it('ends in order when the window is closed under the program', async () => {
    const bench = await atJob('hatchback', { dataDir });
    bench.press(keyFor('off', 'strip'));
    await bench.waitFor(saysSaved(2));
    expect(beside(dataDir).some((name) => name.includes('lock'))).toBe(true);
    bench.hangUp();
    await bench.left();
    // A lock left behind would mean that it was killed or crashed.
    expect(beside(dataDir).filter((name) => name.includes('lock'))).toEqual([]);
    expect(offIn(dataDir, 'hatchback')).toBe(2);
  });
});

describe('the terminal while the program is stopped', () => {
  /** A shell that knows jobs and leaves the terminal's settings to the programs, with the program started by hand. */
  async function fromShell(): Promise<BenchSide> {
    const bench = start(['-i'], { dataDir, program: ['/bin/sh'], env: { PS1: 'shell> ', ENV: undefined } });
    await bench.waitFor('shell>');
    bench.type(`${process.execPath} ${launcher} open hatchback\r`);
    await bench.waitFor((frame) => saysSaved(1)(frame) && spans(80)(frame) && said(frame).includes(labelOf('line')));
    return bench;
  }
  /** What the program shows, whatever the width. */
  const shown = (bench: BenchSide): string[] =>
    bench.frame().flatMap((row) => row.replaceAll(/[ ─]+/g, ' ').trim() || []);

  it('is as the shell had it, and then comes back whole, in the size the window has by then', async () => {
    const bench = await fromShell();
    const before = shown(bench);
    bench.press('Ctrl+z');
    await bench.waitFor('Stopped');
    expect(bench.asked()).toEqual(nothingAsked);
    bench.type('stty -a\r');
    await bench.waitFor('icanon');
    expect(bench.printed()).toMatch(/\sicanon\s/);
    expect(bench.printed()).toMatch(/\secho\s/);
    bench.resize(100, 30);
    bench.type('fg\r');
    await bench.waitFor((frame) => spans(100)(frame) && saysSaved(1)(frame));
    expect(bench.asked()).toEqual({ ...nothingAsked, alternateScreen: true, cursorHidden: true, bracketedPaste: true });
    // Below them stands the drawing, which takes the room there is.
    expect(shown(bench).slice(0, 4)).toEqual(before.slice(0, 4));
    bench.press(keyFor('off', 'strip'));
    await bench.waitFor(saysSaved(2));
  });

  it('comes back whole after a stop that cannot be seen coming', async () => {
    const bench = await fromShell();
    const before = shown(bench);
    process.kill(lockOf(dataDir, 'hatchback').pid, 'SIGSTOP');
    await bench.waitFor('shell>');
    bench.type('echo over the screen\n');
    await bench.waitFor((frame) => frame.some((row) => row.endsWith('over the screen')));
    bench.type('fg\n');
    await bench.waitFor(() => shown(bench).join('\n') === before.join('\n'));
    bench.press(keyFor('off', 'strip'));
    await bench.waitFor(saysSaved(2));
    bench.press(keyFor('quit', 'strip'));
    await bench.waitFor(() => !bench.asked().alternateScreen && !bench.asked().bracketedPaste);
    expect(bench.asked()).toEqual(nothingAsked);
  });

  it('goes on where nobody could continue it', async () => {
    const bench = await atJob('hatchback', { dataDir });
    const before = shown(bench);
    bench.press('Ctrl+z');
    // What is pressed while the terminal is handed back goes to whoever has it then.
    await bench.waitFor(() => !bench.asked().alternateScreen);
    await bench.waitFor(() => bench.asked().alternateScreen && bench.asked().bracketedPaste);
    bench.press(keyFor('off', 'strip'));
    await bench.waitFor(saysSaved(2));
    expect(bench.asked()).toMatchObject({ alternateScreen: true, cursorHidden: true, bracketedPaste: true });
    expect(shown(bench)[1]).toEqual(before[1]);
  });
});
