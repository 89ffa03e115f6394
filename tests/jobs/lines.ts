// Plays a file of call lines as `take` does, through a session of its own, on a job kept in memory and a clock that the
// remarks beginning with #@ move. The program itself reads those as remarks.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { PlanOffer } from '../../src/calls/desk.ts';
import { isCall } from '../../src/commands/take.ts';
import type { Ledger } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { declarationsOf } from '../../src/plan/declarations.ts';
import { createSession, type Session } from '../../src/session/session.ts';
import type { OpenJob } from '../../src/store/open-job.ts';
import type { Facing } from '../../src/view/facing.ts';
import { referencePlan } from './plan-of-reference.ts';
import { afterCall, opening, passTime } from './play.ts';

export type ScriptLine = { at: number; text: string } & (
  | { call: true }
  | { call: false; minutes?: number; closedHours?: number }
);

/** The call lines and the moves of the clock, each with its line number in the file. */
export function scriptLines(name: string): ScriptLine[] {
  const text = readFileSync(fileURLToPath(new URL(name, import.meta.url)), 'utf8');
  return text.split('\n').flatMap((line, i): ScriptLine[] => {
    const moved = /^#@ (closed )?(\d+) (min|h)$/.exec(line);
    if (line.startsWith('#@') && !moved) throw new Error(`${name}:${i + 1}: "${line}" moves no clock`);
    if (!moved) return isCall(line) ? [{ at: i + 1, text: line.trim(), call: true }] : [];
    const hours = Number(moved[2]) / (moved[3] === 'h' ? 1 : 60);
    return [{ at: i + 1, text: line, call: false, ...(moved[1] ? { closedHours: hours } : { minutes: hours * 60 }) }];
  });
}

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
    close: () => Promise.resolve([]),
  };
}

export const plansAtHand = (): PlanOffer[] => {
  const plan = referencePlan();
  return [
    {
      name: plan.name,
      services: plan.services.map((s) => s.service),
      declares: (services, ledger) => declarationsOf(plan, services, ledger),
    },
  ];
};

/** Where a play stands when the program has been opened: enough to go on from there in another way. */
export type Place = {
  /** Number in the file of the line that comes next. */
  at: number;
  lines: readonly Line[];
  facing: Facing;
  now: Stamp;
  wrote: ReadonlyMap<number, number>;
};
export type Refused = { line: ScriptLine; because: string; rule?: string };
export type PlayedLines = {
  ledger: Ledger;
  now: Stamp;
  refused: Refused[];
  /** Each opening of the program after the first. */
  openings: readonly Place[];
  /** Number in the file → number in the log. */
  wrote: ReadonlyMap<number, number>;
};

type PlayFrom = {
  from?: Place;
  /** The whole play, when a line of it is left out: names made from line numbers are read off the screen, and move. */
  whole?: PlayedLines;
};

export function playLines(
  script: readonly ScriptLine[],
  plans: PlanOffer[],
  { from, whole }: PlayFrom = {},
): PlayedLines {
  let now = from?.now ?? opening;
  let session = sessionAt(from?.lines ?? [], from?.facing);
  const refused: Refused[] = [];
  const openings: Place[] = [];
  const wrote = new Map<number, number>(from?.wrote);

  function sessionAt(lines: readonly Line[], facing?: Facing): Session {
    return createSession({ job: inMemory(lines), clock: () => now, plans, ...(facing && { facing }) });
  }
  const linesOf = (ledger: Ledger) => ledger.lines.all.slice(0, ledger.lines.length);
  for (const line of script) {
    const { ledger } = session.store.getState();
    if (!line.call) {
      now = passTime(now, line.closedHours ? { closedHours: line.closedHours } : { minutes: line.minutes ?? 0 });
      if (!line.closedHours) continue;
      session = sessionAt(linesOf(ledger));
      const { facing } = session.store.getState();
      openings.push({ at: line.at + 1, lines: linesOf(ledger), facing, now, wrote: new Map(wrote) });
      continue;
    }
    now = afterCall(now);
    const answer = session.runLine(whole ? renumbered(line.text, whole.wrote, wrote) : line.text);
    if (answer.kind === 'taken') wrote.set(line.at, answer.n);
    if (answer.kind === 'refused') {
      refused.push({ line, because: answer.text, ...(answer.refusal && { rule: answer.refusal.rule }) });
    }
    if (answer.kind === 'step') refused.push({ line, because: 'a call of the screen' });
  }
  return { ledger: session.store.getState().ledger, now, refused, openings, wrote };
}

function renumbered(text: string, whole: ReadonlyMap<number, number>, now: ReadonlyMap<number, number>): string {
  return text.replace(/\b([fdps])(\d+)\.(\d+)\b/g, (name, letter: string, n: string, k: string) => {
    const at = [...whole].find(([, wrote]) => wrote === Number(n))?.[0];
    const moved = at === undefined ? undefined : now.get(at);
    return moved === undefined ? name : `${letter}${moved}.${k}`;
  });
}
