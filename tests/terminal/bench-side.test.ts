// The bench side itself: what it reads, sends, waits for and finds out about a program that has left.
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { type BenchSide, closeAll, type Setting, start, usable } from './bench-side.ts';

afterEach(closeAll);

const practice = (manner: 'well' | 'badly' = 'well', setting: Setting = {}): BenchSide =>
  start([manner], {
    program: [process.execPath, fileURLToPath(new URL('practice-program.ts', import.meta.url))],
    ...setting,
  });

describe('the bench side', () => {
  it('reads the screen, sends keys by name, and sees a terminal given back whole', async () => {
    const bench = practice();
    const [first] = await bench.waitFor('ready');
    expect(first).toBe('ready 80x24');
    expect(bench.isAlternateScreen()).toBe(true);
    expect(bench.cursor().hidden).toBe(true);
    bench.press('Up');
    await bench.waitFor('got 1b5b41');
    bench.press('Ctrl+c');
    await bench.waitFor('got 03');
    bench.type('ab\r');
    await bench.waitFor('got 61620d');
    bench.press('q');
    expect(await bench.left()).toEqual({ exit: 3, ...usable });
    expect(bench.isRunning()).toBe(false);
  });

  it('sees everything that a program leaves behind', async () => {
    const bench = practice('badly');
    await bench.waitFor('ready');
    bench.press('q');
    expect(await bench.left()).toEqual({
      exit: 3,
      // Node gives the settings back by itself on its way out; only a killed program leaves them (below).
      settingsRestored: true,
      alternateScreen: true,
      cursorHidden: true,
      bracketedPaste: true,
      mouseReported: false,
      keyProtocol: false,
    });
  });

  it('gives the program the size asked for and tells it of another', async () => {
    const bench = practice('well', { cols: 120, rows: 40 });
    await bench.waitFor('ready 120x40');
    bench.resize(79, 23);
    const frame = await bench.waitFor('size 79x23');
    expect(frame).toHaveLength(23);
  });

  it('sends a signal to the program and not to its shell', async () => {
    const asked = practice();
    await asked.waitFor('ready');
    await asked.kill('SIGTERM');
    expect(await asked.left()).toEqual({ exit: 143, ...usable });

    const cut = practice();
    await cut.waitFor('ready');
    await cut.kill('SIGKILL');
    expect(await cut.left()).toMatchObject({ exit: 137, settingsRestored: false, alternateScreen: true });
  });

  it('closes the terminal window under the program', async () => {
    const bench = practice();
    await bench.waitFor('ready');
    bench.hangUp();
    await bench.left();
    expect(bench.isRunning()).toBe(false);
  });

  it('keeps the test runner and the build machine out of the environment', async () => {
    process.env.CI = 'true';
    const bench = practice();
    await bench.waitFor('ready');
    bench.press('e');
    await bench.waitFor('CI=undefined NODE_ENV=undefined');
    expect(existsSync(bench.dataDir)).toBe(true);
    await bench.close();
    expect(existsSync(bench.dataDir)).toBe(false);
  });

  it('says what was on the screen when what it waited for does not come', async () => {
    const bench = practice();
    await bench.waitFor('ready');
    await expect(bench.waitFor('never', 100)).rejects.toThrow(/not within 100 ms: never\nready 80x24/);
    bench.press('q');
    await expect(bench.waitFor('never')).rejects.toThrow(/ended before never/);
  });

  it('knows no key of another name', () => {
    expect(() => practice().press('Entre')).toThrow(/no key is called "Entre"/);
  });
});
