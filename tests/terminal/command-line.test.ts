// The command line of the built program, seen from a shell.
import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { closeAll, start, usable } from './bench-side.ts';

afterEach(closeAll);

const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));

describe('the command line', () => {
  it('says what it can do', async () => {
    const bench = start(['--help']);
    expect(await bench.left()).toEqual({ exit: 0, ...usable });
    expect(bench.printed()).toContain('countback --help');
  });

  it('says which version it is', async () => {
    const bench = start(['--version']);
    expect(await bench.left()).toEqual({ exit: 0, ...usable });
    expect(bench.printed()).toBe(version);
  });

  it.each([
    ['command', 'frobnicate'],
    ['option', '--frobnicate'],
  ])('answers an unknown %s with one line and 64', async (kind, word) => {
    const bench = start([word]);
    expect(await bench.left()).toEqual({ exit: 64, ...usable });
    expect(bench.printed()).toBe(`countback: unknown ${kind} "${word}"; see countback --help`);
  });
});
