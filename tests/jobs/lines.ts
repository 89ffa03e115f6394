// Plays a file of call lines as `take` does, through a session of its own, on a job kept in memory and a clock that the
// remarks beginning with #@ move. The program itself reads those as remarks.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { offerOf, type PlanOffer } from '../../src/calls/desk.ts';
import { isCall } from '../../src/commands/take.ts';
import type { Ledger } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { createSession } from '../../src/session/session.ts';
import type { Session } from '../../src/session/session-shape.ts';
import type { OpenJob } from '../../src/store/open-job.ts';
import type { Facing } from '../../src/view/facing.ts';
import { referencePlan } from './plan-of-reference.ts';

/** A call line, or time that passes: at the bench, or with the program closed, after which a new run begins. */
export type ScriptLine = { at: number; text: string } & (
  | { call: true }
  | { call: false; minutes: number; closed: boolean }
);

/** The call lines and the moves of the clock, each with its line number in the file. */
export const scriptLines = (name: string): ScriptLine[] =>
  linesOfScript(readFileSync(fileURLToPath(new URL(name, import.meta.url)), 'utf8'));

export const linesOfScript = (text: string): ScriptLine[] =>
  text.split('\n').flatMap((line, i): ScriptLine[] => {
    const moved = /^#@ (closed )?(\d+) (min|h)$/.exec(line);
    if (line.startsWith('#@') && !moved) throw new Error(`line ${i + 1}: "${line}" moves no clock`);
    if (!moved) return isCall(line) ? [{ at: i + 1, text: line.trim(), call: true }] : [];
    const minutes = Number(moved[2]) * (moved[3] === 'h' ? 60 : 1);
    return [{ at: i + 1, text: line, call: false, minutes, closed: moved[1] !== undefined }];
  });

/** Monday, 5 January 2026, 8:00 UTC. */
const opening: Stamp = { atMs: Date.UTC(2026, 0, 5, 8), zoneMin: 0, run: 1, awakeMs: 0 };
/** From one call to the next, when nothing else is said. */
const betweenCallsMs = 30_000;
const later = (now: Stamp, ms: number): Stamp => ({ ...now, atMs: now.atMs + ms, awakeMs: now.awakeMs + ms });
const opened = (now: Stamp, ms: number): Stamp => ({ ...now, atMs: now.atMs + ms, run: now.run + 1, awakeMs: 0 });

/** Enough of an open job for a session: lines kept in memory, always saved. */
function inMemory(lines: readonly Line[]): OpenJob<Line> {
  const kept = [...lines];
  return {
    path: '',
    job: 'played',
    mode: 'write',
    notices: [],
    lines: () => kept,
    append: (line) => {
      kept.push(line);
      return Promise.resolve({ saved: true });
    },
    trouble: () => undefined,
    unsaved: () => [],
    retry: () => Promise.resolve({ saved: true }),
    digest: () => '',
    onLine: () => () => {},
    parted: () => undefined,
    close: () => Promise.resolve([]),
  };
}

let atHand: readonly PlanOffer[] | undefined;
export const plansAtHand = (): readonly PlanOffer[] => {
  atHand ??= [offerOf({ plan: referencePlan(), file: 'inline-four-belt-service.json' })];
  return atHand;
};

/** Where a play stands before a line: enough to go on from there in another way. */
export type Place = {
  /** Number in the file of the line that comes next. */
  at: number;
  ledger: Ledger;
  /** Lines of the log when the program was last opened. */
  openedWith: number;
  facing: Facing;
  now: Stamp;
};
export type Refused = { line: ScriptLine; because: string; rule?: string };
export type PlayedLines = {
  ledger: Ledger;
  now: Stamp;
  refused: readonly Refused[];
  /** One before each line of the script, unless it went on from one. */
  places: readonly Place[];
};

export const linesOf = (ledger: Ledger): Line[] => ledger.lines.all.slice(0, ledger.lines.length);

export function playLines(
  script: readonly ScriptLine[],
  plans: readonly PlanOffer[] = plansAtHand(),
  from?: Place,
): PlayedLines {
  let now = from?.now ?? opening;
  let openedWith = from?.openedWith ?? 0;
  let session = from ? sessionWith(linesOf(from.ledger).slice(0, openedWith), from.ledger) : sessionWith([]);
  if (from) session.store.setState({ facing: from.facing });
  const refused: Refused[] = [];
  const places: Place[] = [];

  function sessionWith(lines: readonly Line[], ledger?: Ledger): Session {
    return createSession({ job: inMemory(lines), clock: () => now, plans: () => plans, ...(ledger && { ledger }) });
  }
  for (const line of script) {
    const { ledger, facing } = session.store.getState();
    if (!from) places.push({ at: line.at, ledger, openedWith, facing, now });
    if (!line.call) {
      now = (line.closed ? opened : later)(now, line.minutes * 60_000);
      if (!line.closed) continue;
      // Opened anew, a whole play is read as it was written; one that goes on in another way is not read each time.
      session = sessionWith(linesOf(ledger), from && ledger);
      openedWith = ledger.lines.length;
      continue;
    }
    now = later(now, betweenCallsMs);
    const answer = session.runLine(line.text);
    if (answer.kind === 'refused') {
      refused.push({ line, because: answer.text, ...(answer.refusal && { rule: answer.refusal.rule }) });
    }
    if (answer.kind === 'step') refused.push({ line, because: 'a call of the screen' });
  }
  return { ledger: session.store.getState().ledger, now, refused, places };
}

/** The lines before the first call of this text, or the nth. */
export function upTo(script: readonly ScriptLine[], text: string, nth = 1): ScriptLine[] {
  const at = script.filter((line) => line.call && line.text === text)[nth - 1]?.at;
  if (at === undefined) throw new Error(`the script has no "${text}", ${nth}`);
  return script.filter((line) => line.at < at);
}

/** What is answered to a line said after a script: why not, or undefined when it is taken. */
export function refusalOf(script: readonly ScriptLine[], text: string): Refused | undefined {
  const at = (script.at(-1)?.at ?? 0) + 1;
  return playLines([...script, { at, text, call: true }]).refused.find((one) => one.line.at === at);
}
