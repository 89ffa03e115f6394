// The log of a played job: each call goes through the job's one door and on a clock of its own. What is refused is not
// written, as at the bench.
import { decide } from '../../src/job/decide.ts';
import { emptyLedger, type Ledger } from '../../src/job/ledger.ts';
import type { Line } from '../../src/job/line.ts';
import { appendLine } from '../../src/job/log.ts';
import type { Said } from '../../src/job/said.ts';

export type Told = {
  ledger: Ledger;
  facing: { area?: string; tray?: string };
  atMs: number;
};
const openedMs = Date.UTC(2026, 0, 5, 8);
export const newTold = (): Told => ({ ledger: emptyLedger, facing: {}, atMs: openedMs });

/**
 * One call, so long after the last one.
 * @returns the line's number; the reason where it was refused
 */
function call(told: Told, said: Said, afterMs: number): number | string {
  told.atMs += Math.round(afterMs);
  const n = told.ledger.lines.length + 1;
  const stamp = { atMs: told.atMs, zoneMin: 60, run: 1, awakeMs: told.atMs - openedMs };
  const answer = decide(told.ledger, said, stamp);
  if ('refused' in answer) return answer.refused.because;
  const line: Line = { n, ...stamp, call: said.verb, by: 'key', facing: { ...told.facing }, entries: answer.entries };
  told.ledger = appendLine(told.ledger, line);
  return n;
}

/** A call that may be refused. */
export const say = (told: Told, said: Said, afterMs: number): boolean => typeof call(told, said, afterMs) === 'number';

/** A call whose refusal is a fault of the script. */
export function mustSay(told: Told, said: Said, afterMs: number): void {
  const done = call(told, said, afterMs);
  if (typeof done === 'string') throw new Error(`${JSON.stringify(said)} refused: ${done}`);
}
