// What might be called towards the engine running and the car on the road: a bead cured, a check rotation, the road test.
import { beadsOn, everyBead } from './beads.ts';
import { conditionsAt } from './clock.ts';
import { snugOrBetter } from './hole-states.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { isOilToSee, notRunSince } from './not-run.ts';
import { worthAsking } from './ready.ts';
import { isOfBrakes } from './roles.ts';
import { runningTry, tensionerNotLive, wantedOfTry } from './rotation.ts';
import type { Said } from './said.ts';
import { named } from './subjects.ts';
import { towardsHole } from './towards-hole.ts';

/** A face wants to be together, the bench to be told, time away to be called right; the rest is waiting, and no call. */
export function towardsCure(ledger: Ledger, face: string, now: Stamp): Said[] {
  const f = stateOf(ledger, 'face', face);
  const loose = f?.declared?.pressedBy.find((hole) => {
    const c = stateOf(ledger, 'hole', hole)?.called;
    return c && c.touchedAt > 0 && !c.leftEmpty && !(c.occupant && snugOrBetter(c.occupant.level));
  });
  if (loose) return towardsHole(ledger, loose, now);
  const told = conditionsAt(ledger, ledger.lines.length);
  const celsius = f?.beads.at(-1)?.label.labelCelsius ?? 20;
  const away =
    f !== undefined && beadsOn(ledger, f, now).some((b) => !b.void && !b.reached.full && b.awayHours > worthAsking);
  return [...(told ? [] : [{ verb: 'note-conditions', celsius }]), ...(away ? [{ verb: 'confirm-clock' }] : [])];
}

/** The start, or what is looked at before it where that alone is wanting. */
export const towardsRunning = (ledger: Ledger): Said[] => [
  { verb: 'start-engine' },
  ...(isOilToSee(ledger) ? [{ verb: 'see-oil-level' }] : []),
];

/** A bead that still cures is waited for, not got round. */
export function towardsRoad(ledger: Ledger, now: Stamp): Said[] {
  // What only wants the engine to run is run, and is no reason to leave the road test out.
  const running = towardsProof(ledger);
  const waits = running.length > 0 || everyBead(ledger, now).some((b) => !b.void && !b.reached.run);
  const waive: Said = { verb: 'waive-road-test', who: 'workshop', because: 'to be said' };
  return [{ verb: 'road-test' }, ...running, ...(waits ? [] : [waive])];
}

/** What was opened has run, or is under pressure by itself. */
function towardsProof(ledger: Ledger): Said[] {
  const unproven = notRunSince(ledger);
  const c = unproven && stateOf(ledger, 'circuit', named('circuit', unproven.at) ?? '');
  if (c && isOfBrakes(c)) return [{ verb: 'check-leaks', circuit: c.circuit, how: 'under pressure' }];
  return unproven ? towardsRunning(ledger) : [];
}

export function towardsRotation(ledger: Ledger, drive: string): Said[] {
  const d = stateOf(ledger, 'drive', drive);
  const t = d && runningTry(ledger, d);
  const wanted = d && t ? wantedOfTry(d, t) : 'turns';
  const mark = d?.declared?.marks.find((m) => t?.marks[m] === undefined);
  const turn: Said = { verb: 'turn-crank', drive, quarters: 8 - ((t?.quarters ?? 0) % 8) };
  if (wanted === 'tension') return [{ verb: 'read-tension', drive, how: 'pointer', right: true }];
  if (wanted === 'marks')
    return mark ? [{ verb: 'read-mark', drive, mark, teethOff: 0 }] : [{ verb: 'slide-locks', drive }];
  const last = d?.tries.at(-1);
  const bound = last?.failed === 'bind felt' && !last.explained;
  return [
    turn,
    ...(bound ? [{ verb: 'explain-bind', drive, cause: 'to be said' }] : []),
    // Called live once more, it would lead nowhere.
    ...(d && tensionerNotLive(ledger, d) ? [{ verb: 'tensioner-live', drive }] : []),
  ];
}
