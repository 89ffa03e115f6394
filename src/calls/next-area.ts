// Which area comes after the one in use, and when work goes on there by itself: where all its holes are known, and none of
// them has anything left that could be done now. What lies at the same place goes before what lies across the car.
import { restOf } from '../job/area-rest.ts';
import { holesOf, isClosedForOrder } from '../job/closed.ts';
import { decide } from '../job/decide.ts';
import { freedIn } from '../job/freed.ts';
import { isRenewed } from '../job/guards.ts';
import { areasToStrip, unpartedOf } from '../job/in-front.ts';
import { lastOpenedFirst } from '../job/learned.ts';
import { every, type Ledger, stateOf, tallyOf } from '../job/ledger.ts';
import { waitsForTheRest } from '../job/of-the-car.ts';
import { edgesOf, frontsOf, openBehind } from '../job/order.ts';
import { placeOf } from '../job/same-place.ts';
import { areaOf, named, nameOf, type Subject, sortOf } from '../job/subjects.ts';
import { facesWithoutBead } from '../job/warnings-building.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import type { Facing } from '../view/facing.ts';
import { areHolesKnown, type Desk, leftToSlacken, nextBack, nextOff, nextTight } from './desk.ts';

/** One thing that can be done now, and no place of its own: a part that goes on, a joint that is made, a mask that comes out. */
function isOneStep(ledger: Ledger, subject: Subject): boolean {
  if (sortOf(subject) === 'temporary') return true;
  if (sortOf(subject) === 'connection') return true;
  const part = sortOf(subject) === 'part' ? stateOf(ledger, 'part', nameOf(subject)) : undefined;
  if (!part || (part.declared?.heldBy.length ?? 0) > 0) return false;
  return !isRenewed(ledger, part) || [...every(ledger, 'box')].some((b) => b.replaces === part.part && b.left > 0);
}
/**
 * Something of it can go back, be tightened or be closed: now, or once what stands open behind it is closed, each of it in
 * one step.
 */
function whenBuilt(desk: Desk, area: string): 'now' | 'after some' | undefined {
  const { ledger, now, facing } = desk;
  const there = { ...desk, facing: { ...facing, area, hole: undefined } };
  const back = nextBack(there);
  if (back !== undefined) {
    const gates = openBehind(ledger, frontsOf(ledger, back));
    const [gate] = gates;
    // What wants its face clean and a bead on it first comes after what can go on as it is.
    if (!gate) return facesWithoutBead(ledger, back, now).length > 0 ? 'after some' : 'now';
    if (!gates.every(({ subject }) => isOneStep(ledger, subject))) return undefined;
    // With nothing behind it, it lies in the area itself, as a gasket does under its cover.
    const isApart = edgesOf(ledger).some(({ front }) => front === gate.subject);
    return isApart || facesWithoutBead(ledger, back, now).length > 0 ? 'after some' : 'now';
  }
  const tight = nextTight(there);
  if (tight !== undefined && !('refused' in decide(ledger, { verb: 'tighten', hole: tight }, now))) return 'now';
  return restOf(ledger, area).some((one) => one.now) ? 'now' : undefined;
}
const canBuild = (desk: Desk, area: string): boolean => whenBuilt(desk, area) !== undefined;

const isWheel = (ledger: Ledger, area: string): boolean => stateOf(ledger, 'area', area)?.declared?.role === 'wheel';
/** Open otherwise than by a final that comes later. */
const isOpenYet = (ledger: Ledger, area: string): boolean => {
  const a = stateOf(ledger, 'area', area);
  return a !== undefined && holesOf(ledger, a).some((h) => !isClosedForOrder(ledger, h));
};
/** T1: a wheel goes on when all else of its place is closed, of the car where it lies alone, and nothing carries the engine. */
function wheelsWait(ledger: Ledger, area: string): boolean {
  const carried = [...every(ledger, 'temporary')].some((t) => t.in && (t.sort === 'jack' || t.sort === 'block'));
  const others = [...every(ledger, 'area')].map((a) => a.area).filter((one) => one !== area && !isWheel(ledger, one));
  const near = others.filter((one) => placeOf(ledger, one) === placeOf(ledger, area));
  return carried || (near.length > 0 ? near : others).some((one) => isOpenYet(ledger, one));
}

/** `turn`: first what can be worked on, then what waits, wheels that wait last. `rank`: of one turn, what needs nothing first. */
type WithWork = { area: string; turn: number; rank: number; place: number | undefined };

/** Slackened before, as a hub nut is with the weight on it, of an area without a plan whose holes nobody counted yet. */
const slackAndUncounted = (ledger: Ledger): string[] =>
  [...every(ledger, 'area')].flatMap(({ area }) => {
    const { slack, touched, holes } = tallyOf(ledger, area);
    return slack > 0 && touched >= holes && !areHolesKnown(ledger, area) ? [area] : [];
  });
/** Areas with something left: to come off, in their order, or to go back, from the last. */
function areasWithWork({ ledger, ...desk }: Desk, building: boolean): WithWork[] {
  const isHere = (area: string) => !isWithdrawn(ledger, `area:${area}`);
  if (!building)
    return [
      ...areasToStrip(ledger).map(({ area, isFree }) => ({ area, turn: isFree ? 0 : 1 })),
      ...slackAndUncounted(ledger).map((area) => ({ area, turn: 2 })),
    ]
      .filter(({ area }) => isHere(area))
      .map((one) => ({ ...one, rank: 0, place: placeOf(ledger, one.area) }));
  const open = [...every(ledger, 'area')]
    .map((a) => a.area)
    .filter((area) => isHere(area) && (tallyOf(ledger, area).open > 0 || restOf(ledger, area).some((one) => one.now)))
    .filter((area) => !waitsForTheRest(ledger, area));
  return lastOpenedFirst(ledger, open.reverse()).map((area) => {
    const when = whenBuilt({ ledger, ...desk }, area);
    const waits = isWheel(ledger, area) && wheelsWait(ledger, area);
    const turn = waits ? 3 : when ? 0 : isWheel(ledger, area) ? 2 : 1;
    return { area, turn, rank: when === 'now' ? 0 : 1, place: placeOf(ledger, area) };
  });
}
/** Those at the place of the area in use before others of their turn. */
function inTurn(desk: Desk, building: boolean): string[] {
  const { area } = desk.facing;
  const here = area === undefined ? undefined : placeOf(desk.ledger, area);
  const isAway = ({ place }: WithWork) => Number(place !== here);
  return areasWithWork(desk, building)
    .toSorted((a, b) => a.turn - b.turn || isAway(a) - isAway(b) || a.rank - b.rank)
    .map((one) => one.area);
}

/** Gone past one after the other until the area in use, with nothing called on the way. */
const pastUpTo = ({ ledger, facing: { area, past } }: Desk): readonly string[] =>
  past && past.upTo === area && past.lines === ledger.lines.length ? past.areas : [];
/** The area after the one in use that has something left; after the last of them those gone past come again. */
export function nextArea(desk: Desk, building: boolean): string | undefined {
  const others = inTurn(desk, building).filter((area) => area !== desk.facing.area);
  const past = pastUpTo(desk);
  return others.find((area) => !past.includes(area)) ?? others[0];
}
/** What is faced once the area in use is gone past to another. */
export function facedPast(desk: Desk, area: string): Partial<Facing> & { area: string } {
  const { ledger, facing } = desk;
  const before = pastUpTo(desk);
  const areas = before.includes(area) ? [] : [...before, ...(facing.area === undefined ? [] : [facing.area])];
  return { ...facedAt(desk, area), past: { areas, upTo: area, lines: ledger.lines.length } };
}
/** The area in use has something left that the key for the next one would leave. */
export const isInTurn = (desk: Desk, building: boolean): boolean =>
  desk.facing.area !== undefined && inTurn(desk, building).includes(desk.facing.area);

/** Where work goes on after a call was taken: nowhere else while something of the area in use can still be done. */
function areaAfter(desk: Desk, building: boolean): string | undefined {
  const { ledger, facing } = desk;
  const { area } = facing;
  if (area === undefined) return undefined;
  const here = { ...desk, facing: { ...facing, hole: undefined } };
  // One that waits for its fastener keeps work here, whatever stands open behind it.
  const isDone = building
    ? nextBack(here) === undefined && !canBuild(desk, area)
    : nextOff(here) === undefined &&
      [leftToSlacken, freedIn, unpartedOf].every((left) => left(ledger, area).length === 0);
  if (!isDone) return undefined;
  if (!areHolesKnown(ledger, area)) return undefined;
  const next = inTurn(desk, building).find((one) => one !== area);
  if (next === undefined || !areHolesKnown(ledger, next)) return undefined;
  if (building && isWheel(ledger, next) && wheelsWait(ledger, next)) return undefined;
  return building && !canBuild(desk, next) ? undefined : next;
}

/**
 * What is faced with an area in use. Where no plan numbers its trays beforehand, what came off it lies together: come back
 * to, it has its tray in use again.
 */
export function facedAt({ ledger, facing }: Desk, area: string): Partial<Facing> & { area: string } {
  const a = stateOf(ledger, 'area', area);
  const lying = (a?.declared?.planned ? [] : [...every(ledger, 'tray')]).filter((t) =>
    t.contents.some((id) => areaOf(named('hole', stateOf(ledger, 'fastener', id)?.origin ?? '') ?? '/') === area),
  );
  const [only, second] = lying;
  const isOther = area !== facing.area && only !== undefined && !second && only.tray !== facing.tray;
  return { area, hole: undefined, ...(isOther && { tray: only.tray }) };
}
/** "at pump, tray 2" where its tray comes into use with it. */
export const facedWords = ({ area, tray }: { area: string; tray?: string }): string =>
  tray === undefined ? area : `${area}, tray ${tray}`;

/** For a row of the table: what is faced after its call. */
export const onwards =
  (building: boolean) =>
  (desk: Desk): Partial<Facing> => {
    const area = areaAfter(desk, building);
    return area === undefined ? {} : facedAt(desk, area);
  };
