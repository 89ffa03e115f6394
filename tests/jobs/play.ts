// Plays a script of calls through the job's one door with a simulated clock. It knows no job of its own.
import { type Answer, decide } from '../../src/job/decide.ts';
import { emptyLedger, type Ledger } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { appendLine } from '../../src/job/log.ts';
import type { Refusal } from '../../src/job/refusal.ts';
import type { Said } from '../../src/job/said.ts';

/** A call; time that passes at the bench; or the program closed for a while, on whose return a new run begins. */
export type Step = Said | ((ledger: Ledger) => Said) | { minutes: number } | { closedHours: number };
export type Script = readonly Step[];

export const isCall = (step: Step): step is Said | ((ledger: Ledger) => Said) =>
  typeof step === 'function' || 'verb' in step;

/** Monday, 5 January 2026, 8:00 UTC. */
export const opening: Stamp = { atMs: Date.UTC(2026, 0, 5, 8), zoneMin: 0, run: 1, awakeMs: 0 };
/** From one call to the next, when nothing else is said. */
const betweenCallsMs = 30_000;

/** The moment of the next call. */
export const afterCall = (now: Stamp): Stamp => later(now, betweenCallsMs);
const later = (now: Stamp, ms: number): Stamp => ({ ...now, atMs: now.atMs + ms, awakeMs: now.awakeMs + ms });

export function passTime(now: Stamp, step: Exclude<Step, Said | ((ledger: Ledger) => Said)>): Stamp {
  if ('minutes' in step) return later(now, step.minutes * 60_000);
  return { ...now, atMs: now.atMs + step.closedHours * 3_600_000, run: now.run + 1, awakeMs: 0 };
}

export type Refused = { step: number; said: Said; refusal: Refusal };
export type Called = { step: number; said: Said };
export type Played = {
  ledger: Ledger;
  now: Stamp;
  called: readonly Called[];
  refused: readonly Refused[];
  overridden: number;
};

/** Every call in turn; one that is refused is noted and the rest go on, as a mechanic would. */
export function play(script: Script): Played {
  let ledger = emptyLedger;
  let now = opening;
  let overridden = 0;
  const called: Called[] = [];
  const refused: Refused[] = [];
  for (const [step, one] of script.entries()) {
    if (!isCall(one)) {
      now = passTime(now, one);
      continue;
    }
    now = afterCall(now);
    const said = typeof one === 'function' ? one(ledger) : one;
    called.push({ step, said });
    const answer: Answer = decide(ledger, said, now);
    if ('refused' in answer) {
      refused.push({ step, said, refusal: answer.refused });
      continue;
    }
    overridden += answer.overrides?.length ?? 0;
    ledger = appendLine(ledger, lineOf(ledger, said, now, answer.entries));
  }
  return { ledger, now, called, refused, overridden };
}

const lineOf = (ledger: Ledger, said: Said, now: Stamp, entries: Line['entries']): Line => ({
  n: ledger.lines.length + 1,
  ...now,
  call: said.verb,
  by: 'line',
  facing: {},
  entries,
});

/** A script without these of its steps. */
export const without = (script: Script, steps: ReadonlySet<number>): Script =>
  script.filter((_, step) => !steps.has(step));

/** Up to the first call of a verb, that one left out. */
export function playUntil(script: Script, verb: string, at = 0): Played {
  const all = play(script).called.filter((one) => one.said.verb === verb);
  return play(script.slice(0, all[at]?.step));
}
