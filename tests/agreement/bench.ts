// The bench of one made-up job: a car, a clock that chance moves, and the program's one door to the log. Whatever is
// called goes through decide; what is forged does not. It tells whoever watches of each line and judges nothing.
import { decide, type Override } from '../../src/job/decide.ts';
import { type Entry, type EntryKind, readEntry } from '../../src/job/entry.ts';
import { emptyLedger, type Ledger } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { appendLine } from '../../src/job/log.ts';
import type { Refusal } from '../../src/job/refusal.ts';
import type { Said } from '../../src/job/said.ts';
import type { Chance } from './chance.ts';
import type { Car } from './invented-car.ts';

export type Watch = (ledger: Ledger, lines: readonly Line[], now: Stamp) => void;

export type Bench = {
  chance: Chance;
  car: Car;
  ledger: () => Ledger;
  lines: () => readonly Line[];
  now: () => Stamp;
  /** What stood in the way, or null when it was taken. */
  call: (said: Said, override?: Override) => Refusal | null;
  /** What the log may hold and no call writes. */
  say: (entry: Entry) => void;
  /** One entry nobody decided, on a line of its own. False when its shape is none. */
  forge: (...entries: readonly unknown[]) => boolean;
  /** Kinds of entry that calls have written, and those that need none. */
  kinds: Set<EntryKind>;
  called: () => number;
  /** The program runs. */
  wait: (minutes: number) => void;
  /** Closed and opened again. */
  away: (hours: number) => void;
  /** The wall clock alone is moved: the lid was shut, or somebody set it. */
  clockMoves: (hours: number) => void;
};

const minuteMs = 60_000;

export function benchFor(chance: Chance, car: Car, watch: Watch): Bench {
  let ledger = emptyLedger;
  let now: Stamp = { atMs: Date.UTC(2026, 2, 2, 7), zoneMin: 60, run: 1, awakeMs: 1000 };
  let called = 0;
  const lines: Line[] = [];
  const kinds = new Set<EntryKind>();
  const atHome = chance.maybe(0.6);

  const wait = (minutes: number): void => {
    const ms = Math.round(minutes * minuteMs);
    now = { ...now, atMs: now.atMs + ms, awakeMs: now.awakeMs + ms };
  };
  const clockMoves = (hours: number): void => {
    now = { ...now, atMs: now.atMs + Math.round(hours * 60 * minuteMs) };
  };
  const away = (hours: number): void => {
    clockMoves(hours);
    now = { ...now, run: now.run + 1, awakeMs: 1000 };
  };
  /** Mostly one call comes right after the other; now and then something happens to the clock. */
  const timePasses = (): void => {
    wait(chance.roll());
    const roll = chance.roll() * (atHome ? 1 : 6);
    if (roll < 0.01) wait(chance.whole(1, 240));
    else if (roll < 0.014) away(chance.whole(-30, 700) / 10);
    else if (roll < 0.017) clockMoves(chance.whole(-40, 100) / 10);
    else if (roll < 0.02) now = { ...now, awakeMs: now.awakeMs + chance.whole(0, 90) * minuteMs };
  };

  const write = (call: string, entries: Line['entries'], overrides?: Line['overrides']): void => {
    const line: Line = { n: lines.length + 1, ...now, call, by: 'line', facing: {}, entries };
    lines.push(overrides ? { ...line, overrides } : line);
    ledger = appendLine(ledger, lines.at(-1) as Line);
    watch(ledger, lines, now);
  };

  return {
    chance,
    car,
    kinds,
    ledger: () => ledger,
    lines: () => lines,
    now: () => now,
    called: () => called,
    wait,
    away,
    clockMoves,
    call(said, override) {
      timePasses();
      const answer = decide(ledger, said, now, override);
      if ('refused' in answer) return answer.refused;
      called++;
      for (const entry of answer.entries) kinds.add(entry.kind);
      write(said.verb, answer.entries, answer.overrides);
      return null;
    },
    say(entry) {
      timePasses();
      kinds.add(entry.kind);
      write('said', [entry]);
    },
    forge(...entries) {
      const read = entries.map((entry) => readEntry(entry));
      if (read.length === 0 || !read.every((one) => one.success)) return false;
      timePasses();
      write('forged', read.map((one) => one.data as Entry) as Line['entries']);
      return true;
    },
  };
}
