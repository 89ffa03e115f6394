// The check rotation of a drive: whether one is needed, whether one stands, and how far the running try has come (R).
import { areaOpenedAt, holesOf, isClosed, isClosedForOrder, isTouched, laterOf, partsOf } from './closed.ts';
import { marksSeen, turned } from './evolve/face-and-drive.ts';
import type { HoleState } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import type { DriveState, Try } from './states.ts';
import { areaOf, type Subject } from './subjects.ts';
import { isWithdrawn } from './withdrawn.ts';

/** Line at which the drive was last opened: a hole or part of its areas, or a part of the drive. 0 = never. */
export function driveOpenedAt(ledger: Ledger, d: DriveState): number {
  const areas = (d.declared?.areas ?? []).map((a) => areaOpenedAt(ledger, a));
  const parts = (d.declared?.parts ?? []).map((p) => stateOf(ledger, 'part', p)?.removedAt ?? 0);
  return Math.max(0, ...areas, ...parts);
}

/** R1, R6: opened, and the last try did not pass after that. */
export function rotationNeeded(ledger: Ledger, d: DriveState): boolean {
  const opened = driveOpenedAt(ledger, d);
  const last = d.tries.at(-1);
  return opened > 0 && !(last && last.passedAt > 0 && last.begunAt > opened);
}

/** The try that goes on: begun after the last opening, neither passed nor failed. */
export function runningTry(ledger: Ledger, d: DriveState): Try | undefined {
  const last = d.tries.at(-1);
  return last && !last.passedAt && !last.failed && last.begunAt > driveOpenedAt(ledger, d) ? last : undefined;
}

/** What is written where the engine was brought to its marks for the strip. */
export const toItsMarks = 'turned to its marks';
/** Neither called to stand at its marks nor proved to by a check since the engine was last turned; of one that is open nothing is said. */
export function isOffItsMarks(ledger: Ledger, d: DriveState): boolean {
  if (rotationNeeded(ledger, d)) return false;
  const { remarks = [], startedAt = 0, roadAt = 0 } = stateOf(ledger, 'vehicle', 'vehicle') ?? {};
  const called = remarks.flatMap(({ n, words, at }) => (at === `drive:${d.drive}` && words === toItsMarks ? [n] : []));
  const proved = d.tries.map(({ passedAt }) => passedAt);
  const turnedAt = Math.max(startedAt, roadAt, ...d.tries.map((t) => (t.passedAt > 0 ? 0 : t.turnedAt)));
  return Math.max(0, ...called, ...proved) <= turnedAt;
}

/** The drive whose shafts, or whose crank bolt, are held by what is put in there; what has no place holds the first there is. */
export const driveLockedAt = (ledger: Ledger, at: Subject | undefined): DriveState | undefined =>
  [...every(ledger, 'drive')].find(({ drive, declared }) => {
    if (!declared || isWithdrawn(ledger, `drive:${drive}`)) return false;
    const { areas, parts, crankBolt } = declared;
    const bolt = crankBolt === undefined ? [] : [`hole:${crankBolt}`, `area:${areaOf(crankBolt)}`];
    const its = [`drive:${drive}`, ...areas.map((a) => `area:${a}`), ...parts.map((p) => `part:${p}`), ...bolt];
    return at === undefined || its.includes(at);
  });

/** R2: what the tensioner still lacks; null when it is live since the drive was last opened. */
export function tensionerNotLive(ledger: Ledger, d: DriveState): string | null {
  const kind = d.declared?.tensioner ?? 'none';
  if (kind === 'none' || d.liveAt > driveOpenedAt(ledger, d)) return null;
  return { sprung: 'its pin is not pulled', plunger: 'its plunger is not released', set: 'it is not set and tight' }[
    kind
  ];
}

/** R2, O1: snug is enough for what is finished after turning or on its wheels. */
const readyToTurn = (ledger: Ledger, h: HoleState): boolean =>
  laterOf(ledger, h.hole) === 'after-belt' ? isClosed(ledger, h) : isClosedForOrder(ledger, h);

/** R2: holes of the drive not ready, the crank bolt where the sprocket has no key, and whatever was to be tight after the belt. */
export function driveHolesOpen(ledger: Ledger, d: DriveState): HoleState[] {
  const areas = (d.declared?.areas ?? []).flatMap((a) => stateOf(ledger, 'area', a) ?? []);
  const bolt = d.declared?.crankKeyed === false && d.declared.crankBolt;
  const crank = bolt ? stateOf(ledger, 'hole', bolt) : undefined;
  const after = [...every(ledger, 'hole')].filter((h) => h.declared?.later === 'after-belt');
  const holes = new Set([...areas.flatMap((a) => holesOf(ledger, a)), ...(crank ? [crank] : []), ...after]);
  return [...holes].filter((h) => isTouched(h) && !(h === crank ? isClosed(ledger, h) : readyToTurn(ledger, h)));
}

/** R2: parts of the drive that are off. */
export const drivePartsOff = (ledger: Ledger, d: DriveState): string[] => {
  const areas = (d.declared?.areas ?? []).flatMap((a) => stateOf(ledger, 'area', a) ?? []);
  const held = areas.flatMap((a) => partsOf(ledger, a));
  const parts = new Set([...(d.declared?.parts ?? []), ...held]);
  return [...parts].filter((p) => stateOf(ledger, 'part', p)?.off === true);
};

/** R2: the belt is on again over this area, and what tensions it was not called live since. */
export const isTensionerToCall = (ledger: Ledger, area: string): boolean =>
  [...every(ledger, 'drive')].some(
    (d) =>
      d.declared?.areas.includes(area) &&
      driveOpenedAt(ledger, d) > 0 &&
      drivePartsOff(ledger, d).length === 0 &&
      tensionerNotLive(ledger, d) !== null,
  );

export const locksIn = (ledger: Ledger): string[] =>
  [...every(ledger, 'temporary')]
    .filter((t) => t.in && ['lock', 'bar', 'pin'].includes(t.sort))
    .map((t) => t.temporary);

/** What the running try asks for next. */
export function wantedOfTry(d: DriveState, t: Try): 'turns' | 'marks' | 'tension' {
  if (!turned(t)) return 'turns';
  return marksSeen(t, d) ? 'tension' : 'marks';
}
