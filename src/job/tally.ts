// How many holes of each area are off, slack, open or closed, kept as running sums: a line's change is its own holes'
// new share less their old one.
import { isClosed, isEmptyOnArrival, isOff, isTouched } from './closed.ts';
import type { HoleState } from './hole-states.ts';
import { type Ledger, stateOf, type Tallies, type Tally, zeroTally } from './ledger.ts';
import { areaOf, named } from './subjects.ts';

function share(ledger: Ledger, h: HoleState | undefined): Tally {
  if (!h) return zeroTally;
  const is = (yes: boolean): number => (yes ? 1 : 0);
  const touched = isTouched(h);
  const closed = isClosed(ledger, h);
  const level = h.called.occupant?.level;
  return {
    holes: 1,
    touched: is(touched),
    off: is(isOff(h)),
    empty: is(isOff(h) && isEmptyOnArrival(h)),
    slack: is(level === 'slack'),
    on: is(level === 'on'),
    snug: is(level === 'snug'),
    closed: is(touched && closed),
    open: is(touched && !closed),
  };
}

const counted = Object.keys(zeroTally) as (keyof Tally)[];
function moved(sum: Tally, old: Tally, now: Tally): Tally {
  const next = { ...sum };
  for (const key of counted) next[key] += now[key] - old[key];
  return next;
}

/** Sums after a change, from the sums before it and the subjects that changed. */
export function retally(before: Ledger, after: Ledger, changed: ReadonlySet<string>): Tallies {
  const holes = new Set<string>();
  for (const key of changed) {
    const hole = named('hole', key);
    if (hole) holes.add(hole);
    const fastener = named('fastener', key);
    if (!fastener) continue;
    for (const ledger of [before, after]) {
      const state = stateOf(ledger, 'fastener', fastener);
      // What the hole it came out of wants may hang on it.
      for (const place of [state?.place, state?.origin]) {
        const at = named('hole', place ?? '');
        if (at) holes.add(at);
      }
    }
  }
  if (holes.size === 0) return before.tallies;
  let all = before.tallies.all;
  const areas: Record<string, Tally> = { ...before.tallies.areas };
  for (const hole of holes) {
    const area = areaOf(hole);
    const old = share(before, stateOf(before, 'hole', hole));
    const now = share(after, stateOf(after, 'hole', hole));
    all = moved(all, old, now);
    areas[area] = moved(areas[area] ?? zeroTally, old, now);
  }
  return { all, areas };
}
