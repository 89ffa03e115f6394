// The same scripts of call lines, taken by the built program from standard input and saved on a real disk: a process for
// every opening of the program. Its clock can't be moved from here, so the sealant is one whose label asks for no time
// worth waiting for; all else is what the script says, and what stands at the end is what the played job stands as.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { lastLine } from '../../src/job/ledger.ts';
import type { Line } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';
import { demoLines as linesOfFile } from '../demo/at-hand.ts';
import { playLines, type ScriptLine, scriptLines } from './lines.ts';
import { standingOf } from './standing.ts';

const launcher = fileURLToPath(new URL('../../src/launcher.js', import.meta.url));
const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function shop() {
  const data = mkdtempSync(join(tmpdir(), 'countback-take-'));
  folders.push(data);
  const run = (args: readonly string[], input = '') => {
    const env = { PATH: process.env.PATH, COUNTBACK_DATA: data };
    const ended = spawnSync(process.execPath, [launcher, ...args], { input, env, encoding: 'utf8' });
    return { exit: ended.status, said: ended.stdout, complained: ended.stderr };
  };
  return { run, file: join(data, 'jobs', 'blue.countback.jsonl') };
}

/** Hours of which each real millisecond is worth several, even at a cold bench. */
const noTime = '0.00000001';
const hasty = (text: string): string =>
  text.startsWith('label ') ? text.replace(/\b(fill|run|full) [\d.]+/g, `$1 ${noTime}`) : text;

/** The call lines between one opening of the program and the next. A plan brings a label; another said later holds. */
function openingsOf(script: readonly ScriptLine[]): string[] {
  const openings: string[][] = [[]];
  for (const [i, line] of script.entries()) {
    if (!line.call && line.closed) openings.push([]);
    if (!line.call) continue;
    openings.at(-1)?.push(hasty(line.text));
    const isLastOfPlan = line.text.startsWith('plan ') && !script[i + 1]?.text.startsWith('plan ');
    if (isLastOfPlan)
      openings.at(-1)?.push(hasty('label joint sealant moisture skin 10 run 6 full 24 at 23 50 lowest 5'));
  }
  return openings.map((lines) => `${lines.join('\n')}\n`);
}

describe.each(['reference-free.calls', 'reference-planned.calls', 'awkward.calls'])(
  '%s taken by the program',
  (name) => {
    it('is taken whole, every opening with exit 0, and may leave: standing exits 0', () => {
      const script = scriptLines(name);
      const { run, file } = shop();
      const openings = openingsOf(script);
      expect(openings.length).toBe(script.filter((line) => !line.call && line.closed).length + 1);
      const taken = openings.map((lines, i) => run(['take', 'blue', '--json', ...(i === 0 ? ['--new'] : [])], lines));
      const answers = taken.flatMap(({ said }) => said.trim().split('\n')).map((answer) => JSON.parse(answer));
      expect(answers.filter((answer) => !answer.ok)).toEqual([]);
      expect(answers).toHaveLength(openings.join('').trim().split('\n').length);
      expect(taken.map(({ exit, complained }) => [exit, complained])).toEqual(openings.map(() => [0, '']));

      const standing = run(['standing', 'blue', '--json']);
      expect(standing.exit).toBe(0);
      expect(JSON.parse(standing.said)).toMatchObject({ mayLeave: true, open: [] });

      const ledger = readLog(linesOfFile(file));
      const played = playLines(script);
      expect(standingOf(ledger, lastLine(ledger) as Line)).toEqual(standingOf(played.ledger, played.now));
    }, 60_000);
  },
);

describe('a script with a line left out, taken by the program', () => {
  it('[X1] a bolt never called back: exit 3 at release, which names it, and standing exits 1', () => {
    const { run } = shop();
    const openings = openingsOf(scriptLines('reference-planned.calls'));
    const short = openings.map((lines) => lines.replace('area upper belt cover\nback 1\n', 'area upper belt cover\n'));
    const exits = short.map((lines, i) => run(['take', 'blue', ...(i === 0 ? ['--new'] : [])], lines).exit);
    expect(exits).toEqual([0, 3]);
    const standing = run(['standing', 'blue']);
    expect(standing.exit).toBe(1);
    expect(standing.said).toContain('upper belt cover 1');
  }, 60_000);

  it('from its plan, the sealant as the plan has it: release waits for the night', () => {
    const { run } = shop();
    const openings = openingsOf(scriptLines('reference-planned.calls'));
    const asPlanned = openings.map((lines) => lines.replace(/^label .*\n/m, ''));
    const exits = asPlanned.map((lines, i) => run(['take', 'blue', ...(i === 0 ? ['--new'] : [])], lines).exit);
    expect(exits).toEqual([0, 3]);
    const { open } = JSON.parse(run(['standing', 'blue', '--json']).said);
    expect(open.map((point: { code: string }) => point.code)).toContain('bead-curing');
  }, 60_000);
});
