// A bench to tell stories at: a job, a clock that only the story moves, calls by verb. After every call taken it holds
// the log to its own rules: the line reads back, nothing was misfit, the two books agree. It knows no rule besides.
import { expect } from 'vitest';
import { bookDifferences } from '../../src/job/books.ts';
import { type Decided, decide, type Override } from '../../src/job/decide.ts';
import { everyKey } from '../../src/job/drawers.ts';
import type { Entry } from '../../src/job/entry.ts';
import { emptyLedger, type Ledger, lineAt, stateOf } from '../../src/job/ledger.ts';
import { type Line, readLine, type Stamp } from '../../src/job/line.ts';
import { appendLine } from '../../src/job/log.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import { openPoints } from '../../src/job/open-points.ts';
import type { Refusal } from '../../src/job/refusal.ts';

type More = Record<string, unknown>;
const minute = 60_000;

export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const one of Object.values(value)) frozen(one);
  }
  return value;
}

/** States, not rows: those are shared between versions and grow in place. */
export const frozenLedger = (ledger: Ledger): Ledger => {
  frozen(ledger.states);
  frozen(ledger.tallies);
  frozen(ledger.misfits);
  return ledger;
};

export function bench({ opened = true } = {}) {
  let ledger: Ledger = emptyLedger;
  let now: Stamp = { atMs: Date.UTC(2026, 2, 2, 8), zoneMin: 60, run: 1, awakeMs: 0 };
  const lines: Line[] = [];

  const write = (call: string, entries: readonly Entry[], overrides?: Line['overrides']): number => {
    const n = lines.length + 1;
    const line = { n, ...now, call, by: 'line', facing: {}, ...(overrides && { overrides }), entries };
    const read = readLine(JSON.parse(JSON.stringify(line)));
    if (!read.ok) throw new Error(`line ${n} does not read back: ${read.what}`);
    lines.push(frozen(read.line));
    ledger = frozenLedger(appendLine(ledger, read.line));
    return n;
  };

  const take = (call: string, decided: Decided): number => {
    const n = write(call, decided.entries, decided.overrides);
    expect(bookDifferences(ledger)).toEqual([]);
    expect(on.misfits()).toEqual([]);
    return n;
  };

  const on = {
    ledger: (): Ledger => ledger,
    lines: (): readonly Line[] => lines,
    now: (): Stamp => now,

    /** Time passes with the program running. */
    wait(minutes: number) {
      now = { ...now, atMs: now.atMs + minutes * minute, awakeMs: now.awakeMs + minutes * minute };
    },
    /** The program is closed, and opened again after that time by the wall clock. */
    away(hours: number) {
      now = { ...now, atMs: now.atMs + hours * 60 * minute, run: now.run + 1, awakeMs: 0 };
    },
    /** The wall clock is moved, nothing else. */
    clockMoved(hours: number) {
      now = { ...now, atMs: now.atMs + hours * 60 * minute };
    },

    /** A call that is taken; its line number. */
    call(verb: string, said: More = {}, override?: Override): number {
      on.wait(0.5);
      const answer = decide(ledger, { verb, ...said }, now, override);
      if ('refused' in answer) {
        const { code, rule, because } = answer.refused;
        throw new Error(`${verb} ${JSON.stringify(said)} refused: ${rule} ${code}: ${because}`);
      }
      return take(verb, answer);
    },
    /** A call that is taken or not; what came of it. */
    tried(verb: string, said: More = {}, override?: Override): number | Refusal {
      on.wait(0.5);
      const answer = decide(ledger, { verb, ...said }, now, override);
      return 'refused' in answer ? answer.refused : take(verb, answer);
    },
    /** A call that is not taken; nothing is written. */
    no(verb: string, said: More = {}, override?: Override): Refusal {
      const answer = decide(ledger, { verb, ...said }, now, override);
      if (!('refused' in answer)) throw new Error(`${verb} ${JSON.stringify(said)} was taken`);
      return answer.refused;
    },
    /** What a call would write, and what it says beside it. */
    decided(verb: string, said: More = {}): Decided {
      const answer = decide(ledger, { verb, ...said }, now);
      if ('refused' in answer) throw new Error(`${verb} refused: ${answer.refused.because}`);
      return answer;
    },
    /** Its rule and code: "L7 may-not-serve-again". */
    refused(verb: string, said: More = {}, override?: Override): string {
      const { rule, code } = on.no(verb, said, override);
      return `${rule} ${code}`;
    },
    /** A line nobody decided: a forged file, a bug. */
    forged: (...entries: Entry[]): number => write('forged', entries),

    misfits: (): number[] => [...everyKey(ledger.misfits)].flatMap(([, ns]) => [...ns]),
    /** "hole-open hole:cover/1" for every open point, or those of one code. */
    open: (code?: string): string[] =>
      openPoints(ledger, now)
        .filter((p) => code === undefined || p.code === code)
        .map((p) => `${p.code} ${p.at}`),
    openAt: (at: string): string[] =>
      openPoints(ledger, now)
        .filter((p) => p.at === at)
        .map((p) => p.code),
    because: (code: string, at: string): string | undefined =>
      openPoints(ledger, now).find((p) => p.code === code && p.at === at)?.because,
    next: (code: string, at: string) =>
      openPointsWithNext(ledger, now).find((p) => p.code === code && p.at === at)?.next,
    entriesOf: (n: number): readonly Entry[] => lineAt(ledger, n)?.entries ?? [],

    hole: (hole: string) => stateOf(ledger, 'hole', hole)?.called,
    /** as-found, slack, on, snug, tight, empty. */
    level: (hole: string): string => stateOf(ledger, 'hole', hole)?.called.occupant?.level ?? 'empty',
    in: (hole: string): string => {
      const id = stateOf(ledger, 'hole', hole)?.called.occupant?.fastener;
      if (!id) throw new Error(`nothing is in ${hole}`);
      return id;
    },
    own: (hole: string): string => stateOf(ledger, 'hole', hole)?.called.own ?? '',
    whereIs: (fastener: string) => stateOf(ledger, 'fastener', fastener)?.place,
    tray: (tray: string): number => stateOf(ledger, 'tray', tray)?.contents.length ?? 0,

    off: (hole: string, spec?: object, more: More = {}): number =>
      on.call('remove', { hole, to: 'tray:1', ...(spec && { spec }), ...more }),
    slack: (hole: string, spec?: object): number => on.call('slacken', { hole, ...(spec && { spec }) }),
    back: (hole: string, more: More = {}): number => on.call('fit', { hole, ...more }),
    snug: (hole: string): number => on.call('tighten', { hole, last: false }),
    tight: (hole: string, more: object = {}): number => on.call('tighten', { hole, last: true, ...more }),
    count: (area: string, count: number): number => on.call('count-holes', { area, count }),
    /** The right number for every tray ever used. */
    countTrays(): void {
      const counts = ledger.names.tray.all
        .slice(0, ledger.names.tray.length)
        .map((tray) => ({ tray, count: on.tray(tray) }));
      if (counts.length > 0) on.call('count-trays', { counts });
    },
    declare: (...entries: object[]): number => on.call('declare', { entries }),
  };
  if (opened) {
    on.call('open-job', { label: 'blue estate' });
    on.call('note-odometer', { distance: 120_000 });
  }
  return on;
}
export type Bench = ReturnType<typeof bench>;

export const m6 = { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 25 } as const;
export const m8 = { kind: 'bolt', head: 'hex 13', thread: 'M8', lengthMm: 40 } as const;
export const stretch = { kind: 'bolt', head: 'hex 19', thread: 'M14x1.5', lengthMm: 65, oneUse: true } as const;

/** What is asked of every car at the end besides its own work: trays, tools, road. */
export function readyToLeave(on: Bench): void {
  on.countTrays();
  on.call('tools-out');
}
