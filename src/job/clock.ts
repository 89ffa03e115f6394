// Time as the log witnesses it: every line is a stamp, struck or not. What a cure has earned, what a skin has had (S2, S7).
import { pick } from './drawers.ts';
import { isStruck, type Ledger, lineAt } from './ledger.ts';
import type { Stamp } from './line.ts';

export type Conditions = { celsius: number; humidityPct?: number };
/** Label hours earned per hour under these conditions: 1 at the label's, 0 when nothing is earned. */
export type Rate = (conditions: Conditions | undefined) => number;

const hour = 3_600_000;

/** Milliseconds between two neighbouring stamps by the wall clock and, within one run, by the running clock. */
function between(a: Stamp, b: Stamp): { wall: number; running: number } {
  return { wall: b.atMs - a.atMs, running: a.run === b.run ? Math.max(0, b.awakeMs - a.awakeMs) : 0 };
}

type Reading = { stamp: Stamp; conditions?: Conditions; confirmed?: boolean };

/** The stamps after line `from`, with what each unstruck line says of the bench and of the clock; at last, now. */
function* witnesses(ledger: Ledger, from: number, now: Stamp): Generator<Reading> {
  for (let n = from + 1; n <= ledger.lines.length; n++) {
    const line = lineAt(ledger, n);
    if (!line) return;
    const reading: Reading = { stamp: line };
    if (!isStruck(ledger, n)) {
      for (const entry of line.entries) {
        if (entry.kind === 'conditions-noted') reading.conditions = entry;
        if (entry.kind === 'clock-confirmed') reading.confirmed = true;
      }
    }
    yield reading;
  }
  yield { stamp: now };
}

/** The conditions last noted at or before line `n`. They are said of the vehicle, so its chain alone is looked through. */
export function conditionsAt(ledger: Ledger, n: number): Conditions | undefined {
  const chain = pick(ledger.chains, 'vehicle');
  for (let i = (chain?.length ?? 0) - 1; i >= 0; i--) {
    const at = chain?.all[i] as number;
    if (at > n || isStruck(ledger, at)) continue;
    const noted = lineAt(ledger, at)?.entries.findLast((e) => e.kind === 'conditions-noted');
    if (noted) return noted;
  }
  return undefined;
}

export type Earned = {
  hours: number;
  /** Label hours of time away that would be earned if the time shown were called right now. */
  away: number;
};

/** S7: label hours earned since line `from`. */
export function earnedSince(ledger: Ledger, from: number, now: Stamp, rate: Rate): Earned {
  let last: Stamp | undefined = lineAt(ledger, from);
  if (!last) return { hours: 0, away: 0 };
  const conditions = conditionsAt(ledger, from);
  let hours = 0;
  let away = 0;
  // Worked out when they change: a long job has thousands of stamps between two notes.
  let per = rate(conditions) / hour;
  for (const said of witnesses(ledger, from, now)) {
    const { wall, running } = between(last, said.stamp);
    const base = Math.max(0, Math.min(wall, running));
    hours += base * per;
    away += (wall - base) * per;
    if (said.confirmed) {
      hours += Math.max(0, away);
      away = 0;
    }
    if (said.conditions) per = rate(said.conditions) / hour;
    last = said.stamp;
  }
  return { hours, away: Math.max(0, away) };
}

/** S2: minutes from line `from` to line `to` (or to now), each stretch by the longest of wall and running clock. */
export function longestMinutes(ledger: Ledger, from: number, to: number | undefined, now: Stamp): number {
  let last: Stamp | undefined = lineAt(ledger, from);
  if (!last) return 0;
  let sum = 0;
  let n = from;
  for (const { stamp } of witnesses(ledger, from, now)) {
    n++;
    if (to !== undefined && n > to) break;
    const { wall, running } = between(last, stamp);
    sum += Math.max(0, wall, running);
    last = stamp;
  }
  return sum / 60_000;
}
