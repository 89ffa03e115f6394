// What must be in before a fastener of an area is touched: the jack before its bracket, the lock before its bolt, and what
// holds the shafts before what tensions the belt between them, as long as that belt is on. Common practice, no source.
import { holesOf, isOff, isTouched, partsOf } from './closed.ts';
import type { HoleState } from './hole-states.ts';
import { every, type Ledger, stateOf, tallyOf } from './ledger.ts';
import { gatedBy } from './order.ts';
import { driveHolesOpen, driveOpenedAt, drivePartsOff, locksIn, rotationNeeded, tensionerNotLive } from './rotation.ts';
import type { AreaState, DriveState, TemporaryState } from './states.ts';
import { areaOf, type Hole, named, type Subject, subjectText } from './subjects.ts';
import { isWithdrawn } from './withdrawn.ts';

/** A stand of a wheel is not among them: its nuts are slackened before it, and it has its own warning. */
const carriesOrLocks: ReadonlySet<string> = new Set(['jack', 'block', 'lock', 'pin', 'strap', 'compressor']);

/** The belts and chains that run over an area and are still on. */
const beltsOver = (ledger: Ledger, area: string): Subject[] =>
  [...every(ledger, 'drive')].flatMap(({ declared }) =>
    declared?.areas.includes(area)
      ? declared.parts
          .filter((part) => {
            const p = stateOf(ledger, 'part', part);
            return p !== undefined && !p.off && p.removedAt === 0;
          })
          .map((part): Subject => `part:${part}`)
      : [],
  );

export function isAt({ at }: TemporaryState, area: string): boolean {
  const hole = at === undefined ? undefined : named('hole', at);
  return at === `area:${area}` || (hole !== undefined && areaOf(hole) === area);
}

/** Stands a service brings for the whole car, as long as none is in: who lies under it does so from the first of its areas on. */
function standsFor(ledger: Ledger, area: string): ReadonlySet<string> {
  const isUpOrWheel =
    stateOf(ledger, 'area', area)?.declared?.role === 'wheel' ||
    [...every(ledger, 'temporary')].some((t) => t.in && t.sort === 'stand');
  const brings = isUpOrWheel ? [] : [...every(ledger, 'service')].map((s) => s.brings ?? []);
  const brought = brings
    .filter((all) => all.includes(`area:${area}`))
    .flatMap((all) => all.flatMap((one) => named('temporary', one) ?? []));
  return new Set(brought.filter((name) => isStandOfCar(stateOf(ledger, 'temporary', name))));
}
const isStandOfCar = (t: TemporaryState | undefined): boolean => t?.sort === 'stand' && t.at === undefined;

/** What is declared to carry or to lock there, and is not in. */
export function missingBefore(ledger: Ledger, area: string): string[] {
  const belts = new Set<Subject | undefined>(beltsOver(ledger, area));
  const stands = standsFor(ledger, area);
  return [...every(ledger, 'temporary')]
    .filter(
      (t) =>
        !t.in &&
        ((carriesOrLocks.has(t.sort) && (isAt(t, area) || belts.has(t.at))) || stands.has(t.temporary)) &&
        !isWithdrawn(ledger, `temporary:${t.temporary}`),
    )
    .map((t) => t.temporary);
}

/** What closes an opening: before anything came off there is none to close. */
export const closesOpenings: ReadonlySet<string> = new Set(['mask', 'rag', 'plug']);
const numberAtEnd = (name: string): string | undefined => / (\d+)$/.exec(name)?.[1];
/** The part of its area that has its number and is still on, as coil 3 sits in well 3: there is no opening to close yet. */
export function stillUnder(
  ledger: Ledger,
  name: string,
  { sort, at }: Pick<TemporaryState, 'sort' | 'at'>,
): string | undefined {
  const number = closesOpenings.has(sort) ? numberAtEnd(name) : undefined;
  const a = number === undefined || at === undefined ? undefined : stateOf(ledger, 'area', named('area', at) ?? '');
  return a && partsOf(ledger, a).find((part) => numberAtEnd(part) === number && !stateOf(ledger, 'part', part)?.off);
}
/** Nothing of it is off, and not all of it is slack: its nuts are slackened first. */
function isStillHeld(ledger: Ledger, a: AreaState): boolean {
  const holes = holesOf(ledger, a);
  return !holes.some(isOff) && !holes.every(isTouched);
}
const carriesWhatIsOpen: ReadonlySet<string> = new Set(['strap', 'stand']);
/** What closes an opening that is there by now, or carries what is loose by now, and was never in: wherever work went on. */
export function missingWhereOpen(ledger: Ledger): TemporaryState[] {
  const isWanted = (t: TemporaryState): boolean => {
    const { sort, at } = t;
    const a = at === undefined ? undefined : stateOf(ledger, 'area', named('area', at) ?? '');
    if (!a) return false;
    if (carriesWhatIsOpen.has(sort)) return isOpened(ledger, a.area) && !isStillHeld(ledger, a);
    const isApart = partsOf(ledger, a).some((part) => stateOf(ledger, 'part', part)?.off);
    return closesOpenings.has(sort) && a.maskedAt === 0 && isApart && stillUnder(ledger, t.temporary, t) === undefined;
  };
  const all = [...every(ledger, 'temporary')];
  // One of another name does the same there.
  const isDoneBy = (t: TemporaryState): boolean => all.some((one) => one.in && one.sort === t.sort && one.at === t.at);
  return all.filter(
    (t) => t.putInAt === 0 && isWanted(t) && !isDoneBy(t) && !isWithdrawn(ledger, `temporary:${t.temporary}`),
  );
}

/** What is final only after the belt tensions it: slack before the belt comes off, or it comes off under tension. */
export const slackBeforeBelt = (ledger: Ledger, area: string): Hole[] =>
  beltsOver(ledger, area).length === 0
    ? []
    : (stateOf(ledger, 'area', area)?.holes ?? []).filter((hole) => {
        const h = stateOf(ledger, 'hole', hole);
        return h !== undefined && h.declared?.later === 'after-belt' && !isTouched(h);
      });

const holds: ReadonlySet<string> = new Set(['lock', 'bar', 'pin', 'compressor']);
/** What is declared at a bolt, or at its area, to hold it while it is turned, and is not in. */
export function missingToHold(ledger: Ledger, hole: Hole): string[] {
  const at = new Set<Subject | undefined>([`hole:${hole}`, `area:${areaOf(hole)}`]);
  return [...every(ledger, 'temporary')]
    .filter((t) => !t.in && holds.has(t.sort) && at.has(t.at) && !isWithdrawn(ledger, `temporary:${t.temporary}`))
    .map((t) => t.temporary);
}
/** The same before the call that wants it: as long as it is no more than in by hand, or may go back now and has not. */
export function missingToBringUp(ledger: Ledger, hole: Hole): string[] {
  const h = stateOf(ledger, 'hole', hole);
  if (!h || !isTouched(h) || h.called.occupant?.working) return [];
  // Before the engine is turned by hand a lock that is put in would only have to come out again.
  if (isOff(h) && gatedBy(ledger, areaOf(hole)) !== undefined) return [];
  return h.called.occupant?.level === 'tight' ? [] : missingToHold(ledger, hole);
}

const locks: ReadonlySet<string> = new Set(['lock', 'bar', 'pin']);
const boltsHeldBy = (ledger: Ledger, t: TemporaryState): HoleState[] =>
  [...every(ledger, 'area')]
    .filter(({ area }) => isAt(t, area))
    .flatMap((a) => holesOf(ledger, a))
    .filter(({ hole }) => t.at === `area:${areaOf(hole)}` || t.at === `hole:${hole}`);
/** What it holds while it is turned came off, or is not tight yet: it is wanted once more. */
export const heldOnceMore = (ledger: Ledger, t: TemporaryState): HoleState | undefined =>
  boltsHeldBy(ledger, t).find(
    (h) => isTouched(h) && (h.called.occupant?.working === true || h.called.occupant?.level !== 'tight'),
  );
/** Those in, the one that a bolt wants once more last. */
export function locksInTurn(ledger: Ledger): string[] {
  const isWanted = (name: string): boolean => {
    const t = stateOf(ledger, 'temporary', name);
    return t !== undefined && heldOnceMore(ledger, t) !== undefined;
  };
  return locksIn(ledger).toSorted((one, other) => Number(isWanted(one)) - Number(isWanted(other)));
}
/** What of a drive is not on, tight and under tension. */
const apartIn = (ledger: Ledger, d: DriveState): Subject[] => [
  ...drivePartsOff(ledger, d).map((off): Subject => `part:${off}`),
  ...driveHolesOpen(ledger, d).map(({ hole }): Subject => `hole:${hole}`),
  ...(tensionerNotLive(ledger, d) === null ? [] : [`drive:${d.drive}` as const]),
];
const isUnready = (ledger: Ledger, d: DriveState): boolean =>
  driveOpenedAt(ledger, d) === 0 || apartIn(ledger, d).length > 0;
/**
 * It holds what nothing else does: the shafts until all of their drive is on, tight and under tension; a bolt until that is
 * tight, but for the turns before. May be taken out all the same; it is no proposal.
 */
export function holdsYet(ledger: Ledger, t: TemporaryState): boolean {
  if (!locks.has(t.sort) || t.at === undefined) return false;
  const part = named('part', t.at);
  const drives = [...every(ledger, 'drive')];
  if (part !== undefined) return drives.some((d) => d.declared?.parts.includes(part) && isUnready(ledger, d));
  const isTurned = ({ called: { occupant } }: HoleState): boolean =>
    occupant !== undefined && !occupant.working && occupant.level !== 'tight';
  if (boltsHeldBy(ledger, t).some(isTurned)) return true;
  const toTurn = drives.filter((d) => rotationNeeded(ledger, d));
  return heldOnceMore(ledger, t) !== undefined && (toTurn.length === 0 || toTurn.some((d) => isUnready(ledger, d)));
}

/** What of an opened drive is not on, tight and under tension yet, though this alone holds its shafts. */
export function unlockedTooSoon(ledger: Ledger, t: TemporaryState): Subject[] {
  const part = locks.has(t.sort) && t.at !== undefined ? named('part', t.at) : undefined;
  const drives = [...every(ledger, 'drive')].filter(
    (d) => part !== undefined && d.declared?.parts.includes(part) && driveOpenedAt(ledger, d) > 0,
  );
  return drives.flatMap((d) => apartIn(ledger, d));
}

/** What is together again before this comes out, though nothing refuses that: what it carries, the shafts or the bolt it holds. */
export function outTooSoon(ledger: Ledger, t: TemporaryState): Subject[] {
  const carried = t.sort !== 'stand' && carriesYet(ledger, t) && t.at !== undefined ? [t.at] : [];
  const bolt = holdsYet(ledger, t) ? heldOnceMore(ledger, t) : undefined;
  // A bolt that draws the crank round for the check is made tight after it.
  const before = bolt ? [...every(ledger, 'drive')].filter((d) => rotationNeeded(ledger, d)) : [];
  const boltFirst = bolt ? [...before.flatMap((d) => apartIn(ledger, d)), `hole:${bolt.hole}` as const] : [];
  return [...carried, ...unlockedTooSoon(ledger, t), ...boltFirst];
}

/** "timing belt is off": why the shafts are still to be held. */
export function notReady(ledger: Ledger, at: Subject): string {
  const hole = named('hole', at);
  if (named('drive', at) !== undefined) return `the tensioner of ${subjectText(at)} is not live`;
  const isEmpty = hole !== undefined && stateOf(ledger, 'hole', hole)?.called.occupant === undefined;
  return `${subjectText(at)} is ${hole === undefined || isEmpty ? 'off' : 'not tight'}`;
}

const isUp = (ledger: Ledger): boolean =>
  [...every(ledger, 'temporary')].some((t) => t.in && (t.sort === 'stand' || t.sort === 'jack'));
const areWheelsToDo = (ledger: Ledger): boolean =>
  [...every(ledger, 'area')].some((a) => a.declared?.role === 'wheel' && tallyOf(ledger, a.area).open > 0);
/**
 * What presses a spring together, declared where that is held and not in, as long as nothing of it is off: let go, the
 * spring throws what is on it.
 */
export const springNotHeld = (ledger: Ledger, area: string): string[] =>
  tallyOf(ledger, area).off > 0
    ? []
    : missingBefore(ledger, area).filter((name) => stateOf(ledger, 'temporary', name)?.sort === 'compressor');

/** It bears what nothing else does: a chock until the car stands on its wheels with their nuts tight, a compressor until its
 * place is closed, a stand while anything is off, a jack, a block or a strap while its place is open. */
export function carriesYet(ledger: Ledger, { sort, at }: TemporaryState): boolean {
  if (sort === 'stand') return ledger.tallies.all.off > 0;
  const area = at === undefined ? undefined : named('area', at);
  if (sort === 'chock') return ledger.tallies.all.off > 0 || isUp(ledger) || areWheelsToDo(ledger);
  if (sort === 'compressor') return area !== undefined && tallyOf(ledger, area).open > 0;
  // What a strap carries hangs on its first turns; an engine does not.
  if (sort === 'strap') return area !== undefined && isOpened(ledger, area);
  return (
    (sort === 'jack' || sort === 'block') &&
    area !== undefined &&
    (isOpened(ledger, area) || tallyOf(ledger, area).on > 0)
  );
}
/** What it holds is off, or slack in its place. */
export const isOpened = (ledger: Ledger, area: string): boolean => {
  const { off, slack } = tallyOf(ledger, area);
  return off + slack > 0;
};
