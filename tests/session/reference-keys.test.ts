// The reference job on a bench without a screen: its key scripts go to release, and stand as the same job by call lines.
import { expect, it } from 'vitest';
import { lastLine } from '../../src/job/ledger.ts';
import type { Line } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';
import { byKeypad, keyScript } from '../jobs/key-script.ts';
import { playLines, scriptLines } from '../jobs/lines.ts';
import { standingOf } from '../jobs/standing.ts';
import { pressed } from './pressed.ts';

/** What is equal however it was called: not the sealant, nor the name a proposal gave a new bolt, nor what a plan says. */
function compared(lines: readonly Line[]) {
  const ledger = readLog(lines);
  const { beads, box, fasteners, ...same } = standingOf(ledger, lastLine(ledger) as Line);
  const named = (all: readonly string[]) =>
    all.map((one) => one.replaceAll('new one for crank pulley 1', 'new crank bolt')).sort();
  return { ...same, beads: beads.length, box: named(box), fasteners: named(fasteners) };
}

it.each([
  ['from its plan, by letters', keyScript('reference.keys'), false, 'reference-planned.calls'],
  ['from its plan, by a keypad', byKeypad(keyScript('reference-keypad.keys')), true, 'reference-planned.calls'],
  ['free, by letters', keyScript('reference-free.keys'), false, 'reference-free.calls'],
] as const)(
  'goes to release %s, with nothing refused, and stands as by call lines',
  async (_, script, keypad, calls) => {
    const lines = await pressed(script, keypad);
    expect(lines.at(-1)?.entries.map((e) => e.kind)).toEqual(['released']);
    expect(lines.filter((line) => line.overrides)).toEqual([]);
    const played = playLines(scriptLines(calls)).ledger.lines;
    expect(compared(lines)).toEqual(compared(played.all.slice(0, played.length)));
  },
);
