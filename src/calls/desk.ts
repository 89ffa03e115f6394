// What a call is read against: the ledger, what the mechanic faces, the time; and small questions asked of them.
import { openFindingOf } from '../job/choose.ts';
import { isOff, isSpent, isTouched } from '../job/closed.ts';
import { holesUncounted } from '../job/counts.ts';
import type { Product } from '../job/entries/declared.ts';
import { dueNow } from '../job/finished-later.ts';
import type { HoleState } from '../job/hole-states.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { studOutUnder } from '../job/levels.ts';
import type { Stamp } from '../job/line.ts';
import { oncePerLedger } from '../job/once-per-ledger.ts';
import { dueIn, inLooseningOrder, inOrder, passesOf } from '../job/passes.ts';
import { areaOf, holeIn, isLevel, named, nameOf, numberOf, withinArea } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import type { Source } from '../plan/merge.ts';
import type { Interval } from '../trade/intervals.ts';
import type { Units } from '../trade/units-shown.ts';
import type { Facing } from '../view/facing.ts';

/** A plan as the calls need it, with its file as it is to be named. */
export type PlanOffer = Source & { name: string; services: readonly string[] };
export const offerOf = ({ plan, file }: Source): PlanOffer => ({
  name: plan.name,
  services: plan.services.map((s) => s.service),
  plan,
  file,
});

export type Desk = {
  ledger: Ledger;
  facing: Facing;
  now: Stamp;
  /** Those at hand, read from the disk when they are first asked for; the same list every time. */
  plans(): readonly PlanOffer[];
  /** How many plans of the workshop's own are left out, since something in them is wrong. */
  plansLeftOut?(): number;
  /** The trays that stand on the bench, used or not. */
  trays?: readonly string[];
  /** Who works here: offered where a call is signed, never assumed. */
  name?: string | undefined;
  /** Of figures typed without their unit, and of those shown; metric where nothing is said. */
  units?: Units;
  /** The workshop's list of sealants; a job's own declarations go before it. */
  products?: readonly Product[];
  /** When services are next due, by the workshop's own table. */
  intervals?: Readonly<Record<string, Interval>>;
};

/**
 * The hole that comes off next: the first declared one nobody has touched; one that is slack, where all were slackened
 * first or all holes are known; else the first number free.
 */
export function nextOff({ ledger, facing: { area, hole } }: Desk): string | undefined {
  return hole ?? (area === undefined ? undefined : nextOffIn(ledger, area));
}
/**
 * What comes off next by what is said of it: at a hole pointed at whose nut came off, a stud in use is the one under that
 * nut, a level of its number.
 */
export function nextComing(desk: Desk): string | undefined {
  const next = nextOff(desk);
  return desk.facing.hole === undefined || next === undefined ? next : (levelUnder(desk, next) ?? next);
}
function levelUnder({ ledger, facing: { spec } }: Desk, hole: string): string | undefined {
  const c = stateOf(ledger, 'hole', hole)?.called;
  const cameOff = c?.own === undefined || c.occupant ? undefined : stateOf(ledger, 'fastener', c.own)?.spec.kind;
  if (cameOff === undefined || spec.kind === undefined || spec.kind === cameOff || !isLevel(spec.kind))
    return undefined;
  const level = `${hole} ${spec.kind}`;
  return withinArea(hole).includes(' ') || stateOf(ledger, 'hole', level)?.called.touchedAt ? undefined : level;
}
const nextOffIn = oncePerLedger((ledger, area): string | undefined => {
  const untouched = firstIn(ledger, area, (h) => !isTouched(h) && !h.declared?.slackOnly);
  if (untouched) return untouched;
  const allKnown = areHolesKnown(ledger, area);
  // Where one came straight off, what is slackened among them is to stay in its hole; else all were slackened first.
  const straightOff = firstIn(ledger, area, (h) => isOff(h) && !h.called.levels.some(({ level }) => level === 'slack'));
  const slackComesOff = allKnown || straightOff === undefined;
  const slack = slackComesOff
    ? firstIn(ledger, area, (h) => h.called.occupant?.level === 'slack' && !h.declared?.slackOnly)
    : undefined;
  return slack ?? (allKnown ? undefined : freeNumberIn(ledger, area));
});
function firstIn(ledger: Ledger, area: string, is: (h: HoleState) => boolean): string | undefined {
  return inLooseningOrder(ledger, area).find((one) => {
    const h = stateOf(ledger, 'hole', one);
    return h !== undefined && is(h);
  });
}
function freeNumberIn(ledger: Ledger, area: string): string {
  const known = new Set(inOrder(ledger, area).map((one) => Number(numberOf(one))));
  let free = 1;
  while (known.has(free)) free += 1;
  return holeIn(area, String(free));
}

/** All its holes are known: from a plan, by drawing it, or counted by eye as many as were called. */
export function areHolesKnown(ledger: Ledger, area: string): boolean {
  const a = stateOf(ledger, 'area', area);
  if (!a) return false;
  const isDrawn = a.declared?.outline !== undefined;
  return a.declared?.planned === true || isDrawn || (a.counted !== undefined && holesUncounted(ledger, a) === null);
}

/** The hole that is slackened next: a slack-only one first, then one that is not slack yet. */
export function nextSlack({ ledger, facing: { area, hole } }: Desk): string | undefined {
  return hole ?? (area === undefined ? undefined : nextSlackIn(ledger, area));
}
const nextSlackIn = oncePerLedger(
  (ledger, area): string | undefined =>
    firstIn(ledger, area, (h) => h.declared?.slackOnly === true && !isTouched(h)) ??
    firstIn(ledger, area, (h) => !isTouched(h)) ??
    (areHolesKnown(ledger, area) ? undefined : freeNumberIn(ledger, area)),
);

/** Slack-only holes nobody has called yet, in order: what is left of an area when nothing of it comes off any more. */
export const leftToSlacken = (ledger: Ledger, area: string): string[] =>
  inOrder(ledger, area).filter((one) => {
    const h = stateOf(ledger, 'hole', one);
    return h?.declared?.slackOnly === true && !isTouched(h);
  });

/** Slack holes whose fastener is to come off, in the order they do. */
export const slackToComeOff = (ledger: Ledger, area: string): string[] =>
  inLooseningOrder(ledger, area).filter((one) => {
    const h = stateOf(ledger, 'hole', one);
    return h?.called.occupant?.level === 'slack' && !h.declared?.slackOnly;
  });

/**
 * The hole that gets its own fastener next: the first in order that is off and has one; else the first that is off. Whoever
 * passed one over goes on from the one put in, and comes to it last.
 */
export function nextBack(desk: Desk): string | undefined {
  const { ledger, facing } = desk;
  const all = offIn(desk);
  const off = facing.area === undefined || facing.hole ? all : onFromLastBack(ledger, facing.area, all);
  return off.find((one) => hasItsOwn(ledger, one)) ?? off[0];
}
function onFromLastBack(ledger: Ledger, area: string, off: readonly string[]): readonly string[] {
  const order = inOrder(ledger, area);
  const at = (hole: string, level: 'on' | 'off'): number =>
    stateOf(ledger, 'hole', hole)?.called.levels.findLast((one) => one.level === level)?.n ?? 0;
  const back = order.filter((one) => stateOf(ledger, 'hole', one)?.called.occupant !== undefined);
  const last = back.reduce<string | undefined>(
    (a, b) => (a !== undefined && at(a, 'on') > at(b, 'on') ? a : b),
    undefined,
  );
  // It went in before they came off: this is another way back.
  if (last === undefined || off.some((one) => at(one, 'off') > at(last, 'on'))) return off;
  const from = order.indexOf(last);
  return [...off.filter((one) => order.indexOf(one) > from), ...off.filter((one) => order.indexOf(one) < from)];
}
/** The hole that gets a new one next: the first whose own is missing, on the scrap pile or may not serve again. */
export function nextNew(desk: Desk): string | undefined {
  const { ledger, facing } = desk;
  const numbers = facing.hole ? [facing.hole] : facing.area === undefined ? [] : inOrder(ledger, facing.area);
  // A spent washer lies below a plug that goes back itself: it is the new one, at the same number.
  const lacking = numbers.flatMap((one) => withItsLevels(ledger, one)).find((one) => lacksIts(ledger, one));
  return lacking ?? offIn(desk)[0];
}
/** A stud goes in before its nut, all else after what the number is called for. */
function withItsLevels(ledger: Ledger, hole: string): string[] {
  const all = stateOf(ledger, 'area', areaOf(hole))?.holes ?? [];
  const stud = studOutUnder(ledger, hole);
  const others = all.filter((one) => one !== hole && one !== stud && numberOf(one) === numberOf(hole));
  return [...(stud ? [stud] : []), hole, ...others];
}
/** Nothing is in it, and nothing of its own may go back there. */
export function lacksIts(ledger: Ledger, hole: string): boolean {
  const h = stateOf(ledger, 'hole', hole);
  return h !== undefined && isOff(h) && !hasItsOwn(ledger, hole);
}
/** Holes of the area in use, or the one pointed at, in which something is only to turn or to draw. */
export const workingHoles = ({ ledger, facing: { area, hole } }: Desk): string[] =>
  (hole ? [hole] : ((area === undefined ? undefined : stateOf(ledger, 'area', area)?.holes) ?? [])).filter(
    (one) => stateOf(ledger, 'hole', one)?.called.occupant?.working,
  );
function offIn({ ledger, facing: { area, hole } }: Desk): string[] {
  if (hole) return [hole];
  if (area === undefined) return [];
  return inOrder(ledger, area).filter((one) => {
    const h = stateOf(ledger, 'hole', one);
    return h !== undefined && isOff(h);
  });
}
/** The one that belongs in a hole lies in a tray and may go back; one that a finding speaks of may not (L6). */
export function hasItsOwn(ledger: Ledger, hole: string): boolean {
  const own = stateOf(ledger, 'hole', hole)?.called.own;
  const f = own === undefined ? undefined : stateOf(ledger, 'fastener', own);
  if (f === undefined || named('tray', f.place) === undefined || f.condemned || f.broken || isSpent(f)) return false;
  return openFindingOf(ledger, f) === undefined;
}

/** The hole that is tightened next: the first due in the earliest pass that has one due, and need not wait with it. */
export function nextTight(desk: Desk): string | undefined {
  const { area, hole } = desk.facing;
  if (hole) return hole;
  if (area === undefined) return undefined;
  for (const pass of passesOf(desk.ledger, area)) {
    const [first] = dueNow(desk.ledger, dueIn(desk.ledger, area, pass), pass);
    if (first) return first;
  }
  return undefined;
}

const theOnly = <T>(all: Iterable<T>): T | undefined => {
  const [first, second] = [...all].slice(0, 2);
  return second === undefined ? first : undefined;
};
export const theDrive = (desk: Desk): string | undefined =>
  theOnly([...every(desk.ledger, 'drive')].filter((d) => !isWithdrawn(desk.ledger, `drive:${d.drive}`)))?.drive;

/** The hole the next call of a screen speaks of. */
export const nextHole = (desk: Desk, screen: string): string | undefined =>
  screen === 'build' ? (nextBack(desk) ?? nextTight(desk)) : nextComing(desk);

/** Open findings on a subject or a hole of it. */
export const findingsOn = (ledger: Ledger, at: string): string[] =>
  [...every(ledger, 'finding')].filter((f) => !f.closed && (f.at === at || nameOf(f.at) === at)).map((f) => f.id);

/** The own fastener of a hole: in it, or the last that was. */
export function fastenerOf(ledger: Ledger, hole: string): string | undefined {
  const c = stateOf(ledger, 'hole', hole)?.called;
  return c?.occupant?.fastener ?? c?.own;
}
