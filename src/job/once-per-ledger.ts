// A reading of the ledger that is asked for many times between two calls, worked out once: a ledger never changes. What is
// read must not be changed by whoever asks.
import { type Ledger, type Tally, tallyOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import type { AreaState } from './states.ts';

export function oncePerLedger<T>(read: (ledger: Ledger, name: string) => T): (ledger: Ledger, name: string) => T {
  const known = new WeakMap<Ledger, Map<string, T>>();
  return (ledger, name) => {
    const here = known.get(ledger) ?? new Map<string, T>();
    known.set(ledger, here);
    if (!here.has(name)) here.set(name, read(ledger, name));
    return here.get(name) as T;
  };
}

/** The same of a reading that the clock has a part in: it is kept for the moment last asked for. */
export function oncePerMoment<T>(read: (ledger: Ledger, now: Stamp) => T): (ledger: Ledger, now: Stamp) => T {
  const known = new WeakMap<Ledger, { now: Stamp; here: T }>();
  return (ledger, now) => {
    const last = known.get(ledger);
    if (last && isSameMoment(last.now, now)) return last.here;
    const here = read(ledger, now);
    known.set(ledger, { now: { ...now }, here });
    return here;
  };
}
const isSameMoment = (a: Stamp, b: Stamp): boolean =>
  a.atMs === b.atMs && a.zoneMin === b.zoneMin && a.run === b.run && a.awakeMs === b.awakeMs;

/** The same of a reading of an area and its holes alone: kept over many calls, until one of them changes. */
export function oncePerArea<T>(read: (ledger: Ledger, a: AreaState) => T): (ledger: Ledger, a: AreaState) => T {
  // The sums of an area are made anew whenever one of its holes is.
  const known = new WeakMap<Tally, { a: AreaState; here: T }>();
  return (ledger, a) => {
    const tally = tallyOf(ledger, a.area);
    const last = known.get(tally);
    if (last?.a === a) return last.here;
    const here = read(ledger, a);
    known.set(tally, { a, here });
    return here;
  };
}
