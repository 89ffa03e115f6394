// Which area comes after the one in use, and when work goes on there by itself: where all its holes are known, and none of
// them has anything left that could be done now.
import { restOf } from '../job/area-rest.ts';
import { holesOf, isClosedForOrder } from '../job/closed.ts';
import { decide } from '../job/decide.ts';
import { freedIn } from '../job/freed.ts';
import { isRenewed } from '../job/guards.ts';
import { areasToStrip } from '../job/in-front.ts';
import { lastOpenedFirst } from '../job/learned.ts';
import { every, type Ledger, stateOf, tallyOf } from '../job/ledger.ts';
import { edgesOf, frontsOf, openBehind } from '../job/order.ts';
import { areaOf, named, nameOf, type Subject, sortOf } from '../job/subjects.ts';
import { facesWithoutBead } from '../job/warnings-building.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import type { Facing } from '../view/facing.ts';
import { areHolesKnown, type Desk, leftToSlacken, nextBack, nextOff, nextTight } from './desk.ts';

/** One thing that can be done now, and no place of its own: a part that goes on, a joint that is made, a mask that comes out. */
function isOneStep(ledger: Ledger, subject: Subject): boolean {
  if (sortOf(subject) === 'temporary') return true;
  if (openBehind(ledger, [subject]).length > 0) return false;
  if (sortOf(subject) === 'connection') return true;
  const part = sortOf(subject) === 'part' ? stateOf(ledger, 'part', nameOf(subject)) : undefined;
  if (!part || (part.declared?.heldBy.length ?? 0) > 0) return false;
  return !isRenewed(ledger, part) || [...every(ledger, 'box')].some((b) => b.replaces === part.part && b.left > 0);
}
/** Something of it can go back, be tightened or be closed: now, or after the one thing that stands open behind it and can be closed first. */
function whenBuilt(desk: Desk, area: string): 'now' | 'after one' | undefined {
  const { ledger, now, facing } = desk;
  const there = { ...desk, facing: { ...facing, area, hole: undefined } };
  const back = nextBack(there);
  if (back !== undefined) {
    const [gate, second] = openBehind(ledger, frontsOf(ledger, back));
    // What wants its face clean and a bead on it first comes after what can go on as it is.
    if (!gate) return facesWithoutBead(ledger, back, now).length > 0 ? 'after one' : 'now';
    if (second || !isOneStep(ledger, gate.subject)) return undefined;
    // With nothing behind it, it lies in the area itself, as a gasket does under its cover.
    const isApart = edgesOf(ledger).some(({ front }) => front === gate.subject);
    return isApart || facesWithoutBead(ledger, back, now).length > 0 ? 'after one' : 'now';
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
/** T1: a wheel goes on when all else is closed and nothing carries the engine. */
function wheelsWait(ledger: Ledger, area: string): boolean {
  const carried = [...every(ledger, 'temporary')].some((t) => t.in && (t.sort === 'jack' || t.sort === 'block'));
  const others = [...every(ledger, 'area')].map((a) => a.area).filter((one) => one !== area && !isWheel(ledger, one));
  return carried || others.some((one) => isOpenYet(ledger, one));
}

/** Areas with something left: to come off, in their order, or to go back, from the last; those that can be worked on first, wheels last. */
function areasWithWork(desk: Desk, building: boolean): string[] {
  const { ledger } = desk;
  const isHere = (area: string) => !isWithdrawn(ledger, `area:${area}`);
  if (!building) return areasToStrip(ledger).filter(isHere);
  const open = [...every(ledger, 'area')]
    .map((a) => a.area)
    .filter((area) => isHere(area) && (tallyOf(ledger, area).open > 0 || restOf(ledger, area).some((one) => one.now)));
  const fromLast = lastOpenedFirst(ledger, open.reverse());
  const rank = (area: string): number => {
    const when = whenBuilt(desk, area);
    const ready = when === 'now' ? 0 : 1;
    if (isWheel(ledger, area)) return wheelsWait(ledger, area) ? 4 : when ? ready : 3;
    return when ? ready : 2;
  };
  const ranked = fromLast.map((area) => ({ area, at: rank(area) }));
  return ranked.toSorted((x, y) => x.at - y.at).map(({ area }) => area);
}

/** The area after the one in use that has something left. */
export function nextArea(desk: Desk, building: boolean): string | undefined {
  return areasWithWork(desk, building).find((area) => area !== desk.facing.area);
}

/** Where work goes on after a call was taken: nowhere else while something of the area in use can still be done. */
function areaAfter(desk: Desk, building: boolean): string | undefined {
  const { ledger, facing } = desk;
  const { area } = facing;
  if (area === undefined) return undefined;
  const here = { ...desk, facing: { ...facing, hole: undefined } };
  // One that waits for its fastener keeps work here, whatever stands open behind it.
  const isDone = building
    ? nextBack(here) === undefined && !canBuild(desk, area)
    : nextOff(here) === undefined && leftToSlacken(ledger, area).length === 0 && freedIn(ledger, area).length === 0;
  if (!isDone) return undefined;
  if (!areHolesKnown(ledger, area)) return undefined;
  const [next] = areasWithWork(desk, building);
  if (next === undefined || next === area || !areHolesKnown(ledger, next)) return undefined;
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
