// The short form of npm run faults, and the proof that it would see fsync, the lock or the torn-line rule missing.
import { rmSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { short } from './row.ts';
import { type FaultName, faults, restsOn, type runFaults } from './suite.ts';
import { bundled, type PieceName, pieces } from './without.ts';

let child = '';
beforeAll(async () => {
  child = await bundled('tests/store/child.ts');
});
afterAll(() => rmSync(child, { force: true }));

// What has a short form of its own elsewhere: tests/agreement, tests/job/clock-histories.test.ts, tests/terminal.
const elsewhere: readonly FaultName[] = ['secondModel', 'clocksDuringACure', 'killedInAStorm'];
const names = (Object.keys(faults) as FaultName[]).filter((name) => !elsewhere.includes(name));

describe('the program keeps its promises', () => {
  it.each(names)('[D1 D2 D3 D4 D5] %s', async (name) => {
    const fault: (size: typeof short, child: string) => ReturnType<(typeof faults)[FaultName]> = faults[name];
    const row = await fault(short, child);
    expect(row.broken).toEqual([]);
    expect(row.held).toBe(row.tried);
    if (!row.skipped) expect(row.tried).toBeGreaterThan(0);
  });
});

describe('the suite sees', () => {
  it.each(Object.keys(pieces) as PieceName[])('%s taken out', async (piece) => {
    const suite = await bundled('tests/faults/suite.ts', piece);
    try {
      const made = (await import(pathToFileURL(suite).href)) as { runFaults: typeof runFaults };
      const [first] = restsOn[piece];
      if (!first) throw new Error('nothing rests on it');
      const [row] = await made.runFaults([first], short, child);
      expect(row?.held).toBeLessThan(row?.tried ?? 0);
    } finally {
      rmSync(suite, { force: true });
    }
  });
});
