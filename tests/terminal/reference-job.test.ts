// The reference job from its plan, by keys on the built program in a terminal, from the shelf to release; and the same
// job by call lines: what stands at the end is the same, clock and sealant aside (a mechanic's sealant takes a night).
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it } from 'vitest';
import { lastLine } from '../../src/job/ledger.ts';
import type { Line } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';
import { demoLines as linesOf } from '../demo/at-hand.ts';
import { byKeypad, keyScript } from '../jobs/key-script.ts';
import { plansAtHand, playLines, scriptLines } from '../jobs/lines.ts';
import { standingOf } from '../jobs/standing.ts';
import { closeAll, start } from './bench-side.ts';

afterEach(closeAll);

/** The table's names of keys, "enter", as the terminal's names have them. */
const asOnTheCap = (key: string): string =>
  [...key].length === 1
    ? key
    : key
        .split('-')
        .map((word) => `${word[0]?.toUpperCase()}${word.slice(1)}`)
        .join('');

const leastMsByHand = 750;
/** A quarter turn of the crank takes a hand its time. */
const leastMsOfQuarter = 400;
const isTurning = (text: string): boolean => /^(R|@to-rotation) enter/.test(text);
type Bench = ReturnType<typeof start>;
const waited = async (bench: Bench, ms: number) => {
  const from = performance.now();
  await bench.waitFor(() => performance.now() - from > ms);
};
async function pressTurning(bench: Bench, keys: readonly string[]) {
  for (const [i, key] of keys.entries()) {
    bench.press(asOnTheCap(key));
    const quarters = keys.slice(0, i + 1).filter((one) => one === 'enter').length;
    if (key !== 'enter') continue;
    await bench.waitFor(`${quarters / 4} of 2 turns`);
    await waited(bench, leastMsOfQuarter);
  }
}

it.each([
  ['letters', keyScript('reference.keys'), {}],
  ['a numeric keypad', byKeypad(keyScript('reference-keypad.keys')), { keypad: true }],
] as const)(
  'goes from the shelf to release by %s, without a refusal, and stands as by call lines',
  async (_, script, settings) => {
    const dataDir = mkdtempSync(join(tmpdir(), 'countback-keys-'));
    writeFileSync(join(dataDir, 'settings.json'), JSON.stringify(settings));
    const bench = start([], { cols: 100, rows: 30, dataDir });
    await bench.waitFor('Shelf of jobs');
    let pressed = 0;
    let before = '';
    let wentTo: string | undefined;
    for (const { text, keys, until } of script) {
      if (until) {
        await bench.waitFor(until);
        // What is asked is read before it is answered.
        await waited(bench, leastMsByHand);
      }
      // At the end of an area an Enter is held back until a hand could have meant it for the next.
      if (keys[0] === 'enter' && before === 'enter') {
        const isOn = (frame: readonly string[]) => /On to (\w+)/.exec(frame.join(' '))?.[1];
        const frame = await bench.waitFor((rows) => ![undefined, wentTo].includes(isOn(rows)));
        wentTo = isOn(frame);
        await waited(bench, leastMsByHand);
      }
      before = keys.at(-1) ?? before;
      if (isTurning(text)) await pressTurning(bench, keys);
      else bench.press(...keys.map(asOnTheCap));
      pressed += keys.length;
      await bench.waitFor((frame) => {
        const said = frame.join('\n');
        if (/^ NO /m.test(said)) throw new Error(`refused after "${text}":\n${said}`);
        // What signs is answered by a key of its own, once it stands there.
        const isAsked = frame.some((row) => row.startsWith('  > ')) && !said.includes('The car leaves: release it?');
        return / saved\s*$/.test(frame[0] ?? '') && !isAsked;
      });
    }
    await bench.waitFor('released by the mechanic');
    bench.press('q');
    expect((await bench.left()).exit).toBe(0);

    const folder = join(bench.dataDir, 'jobs');
    const [file] = readdirSync(folder).filter((name) => name.endsWith('.jsonl'));
    const ledger = readLog(linesOf(join(folder, file as string)));
    const byKeys = standingOf(ledger, lastLine(ledger) as Line);
    const played = playLines(scriptLines('reference-planned.calls'), plansAtHand());
    const byLines = standingOf(played.ledger, played.now);
    expect(byKeys.openPoints).toEqual([]);
    const { beads, ...same } = byKeys;
    // The name that a proposal gave the new bolt is another than the one that was typed.
    const named = JSON.parse(
      JSON.stringify(same).replaceAll('new one for crank pulley 1', 'new crank bolt'),
    ) as typeof same;
    expect({ ...named, box: named.box.toSorted(), fasteners: named.fasteners.toSorted() }).toEqual({
      ...byLines,
      beads: undefined,
    });
    expect(beads).toHaveLength(1);
    expect(pressed).toBeGreaterThan(300);
    rmSync(dataDir, { recursive: true, force: true });
  },
  60_000,
);
