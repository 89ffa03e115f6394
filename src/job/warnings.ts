// What is said beside a call that is taken: it stands in no way and is no open point. Asked of the entries it writes.

import { kilometresOf } from '../trade/units.ts';
import { areasUnder, unseenUnder } from './before-faces-meet.ts';
import { lyingOnPile } from './counts.ts';
import type { Entry } from './entry.ts';
import { every, type Ledger, stateOf, tallyOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { numberJumps } from './number-jump.ts';
import { isOfTheCar } from './of-the-car.ts';
import { besideStep } from './repair-figures.ts';
import { areaOf, type Hole, named } from './subjects.ts';
import { acceptanceOf, readFarOff } from './tightening.ts';
import {
  anotherHead,
  beforeItsBelt,
  behindShut,
  closedOver,
  facesNotClean,
  goesOnFirst,
  isEmpty,
  leftForLater,
  notClean,
  notHeld,
  offItsPart,
  oldOneOn,
  overOpen,
  overPins,
  setOverOpen,
  stillOff,
  withoutBead,
  withoutBeadUnder,
  withoutFigure,
  workingUnder,
} from './warnings-building.ts';
import { besideCount, besideHoles } from './warnings-counting.ts';
import { takenForAnother } from './warnings-exchange.ts';
import { foundWrong, threadUnderIt } from './warnings-found.ts';
import { inUnderItsOwn, ofItsOwnName, outFromUnder } from './warnings-masks.ts';
import {
  foundUnderOff,
  inTheWay,
  inTheWayOfSlack,
  nothingUnder,
  nothingUnderRole,
  notInFirst,
  slackIn,
  stillCarries,
  stillFull,
  stillHolds,
  stillJoined,
  undrained,
  unheld,
  unlocked,
} from './warnings-parting.ts';
import { beadNotRun, byPlansLabel, chipsInBead, hangsOnNothing, keepTheirLabel } from './warnings-sealing.ts';
import { asFoundUnderOff, openBehindShut } from './warnings-striking.ts';
import { searchedInVain } from './works-searched.ts';

/** R2: a holding bar is made to hold, as is what the plan puts at the bolt itself; any other pin or lock only keeps a place. */
const locksPlace = (ledger: Ledger, holes: readonly Hole[]): string[] => {
  const at = new Set(holes.flatMap((hole) => [`hole:${hole}`, `area:${areaOf(hole)}`]));
  return [...every(ledger, 'temporary')]
    .filter((t) => t.in && (t.sort === 'lock' || t.sort === 'pin') && !at.has(t.at ?? ''))
    .map((t) => t.temporary);
};

const turnsAShaft = (ledger: Ledger, hole: Hole): boolean =>
  stateOf(ledger, 'hole', hole)?.declared?.sprocketBolt === true ||
  [...every(ledger, 'drive')].some((d) => d.declared?.crankBolt === hole);

/** Loosened or brought up: also one that comes off in the same call without having been slack before. */
function wrenched(ledger: Ledger, entry: Entry): Hole | undefined {
  if (entry.kind === 'fastener-slackened' || entry.kind === 'fastener-tightened') return entry.hole;
  if (entry.kind !== 'fastener-removed') return undefined;
  const level = stateOf(ledger, 'hole', entry.hole)?.called.occupant?.level;
  return level === 'slack' || level === 'on' ? undefined : entry.hole;
}

export function warningsOf(ledger: Ledger, entries: readonly Entry[], now: Stamp): string[] {
  const holes = entries.flatMap((entry) => wrenched(ledger, entry) ?? []);
  const shafts = holes.filter((hole) => turnsAShaft(ledger, hole));
  const locks = shafts.length > 0 ? locksPlace(ledger, shafts) : [];
  const unread = entries.flatMap((entry) => unreadAcceptance(entry) ?? misread(entry) ?? []);
  const figures = entries.flatMap((entry) => besideStep(ledger, entry));
  return [
    ...figures,
    ...new Set(entries.flatMap((entry) => besideEntry(ledger, entry, entries, now))),
    ...leftForLater(ledger, entries),
    ...(locks.length > 0 ? [`${locks.join(' and ')} in: a lock is no holding tool`] : []),
    ...new Set(unread),
    ...withoutFigure(ledger, entries),
    ...stillWaits(ledger, entries),
  ];
}

/** T8: said with the first call after it, where work has gone on all the same. */
function stillWaits(ledger: Ledger, entries: readonly Entry[]): string[] {
  const waiting = stateOf(ledger, 'vehicle', 'vehicle')?.waiting;
  const isWork = entries.some(({ kind }) => /^(fastener|hole|part|connection)-/.test(kind));
  return waiting && isWork && waiting.n === ledger.lines.length
    ? [`the job still waits for ${waiting.who}; where it does not, call that it goes on`]
    : [];
}

/** O4: a method that ends in a torque to be accepted, and nobody said what the wrench showed. */
function unreadAcceptance(entry: Entry): string | undefined {
  if (entry.kind !== 'fastener-tightened' || !entry.last || entry.readNewtonMetres !== undefined) return undefined;
  const wanted = acceptanceOf(entry.method);
  return wanted && `the torque at the end was not said: ${wanted}`;
}

const misread = (entry: Entry): string | undefined =>
  entry.kind === 'fastener-tightened' && entry.last && entry.readNewtonMetres !== undefined
    ? readFarOff(entry.method, entry.readNewtonMetres)
    : undefined;

/** What a mechanic would be told by the one beside him. Common practice, no source, where no rule is named. */
function besideEntry(ledger: Ledger, entry: Entry, entries: readonly Entry[], now: Stamp): string[] {
  switch (entry.kind) {
    case 'fastener-found':
      return [...numberJumps(ledger, entry.hole), ...foundUnderOff(ledger, entry, entries)];
    case 'finding-made':
      return threadUnderIt(ledger, entry, entries);
    case 'hole-found-empty':
      return numberJumps(ledger, entry.hole);
    case 'fastener-removed':
      if (stateOf(ledger, 'hole', entry.hole)?.called.occupant?.working) return [];
      return [inTheWay, nothingUnder, notInFirst, undrained].flatMap((of) => of(ledger, areaOf(entry.hole)));
    case 'fastener-slackened':
      return [
        ...(tallyOf(ledger, areaOf(entry.hole)).slack > 0 ? [] : inTheWayOfSlack(ledger, areaOf(entry.hole))),
        ...notInFirst(ledger, areaOf(entry.hole)),
      ];
    case 'part-removed':
      return [
        ...unheld(ledger, entry.part, entries),
        ...unlocked(ledger, entry.part),
        ...slackIn(ledger, entry.part, entries),
        ...stillJoined(ledger, entry.part),
      ];
    case 'fastener-fitted':
      // Said with the first of them only.
      return [
        ...offItsPart(ledger, entry.hole),
        ...anotherHead(ledger, entry),
        ...(entry.working ? [] : overOpen(ledger, entry.hole)),
        ...withoutBead(ledger, entry.hole, now, isEmpty(ledger)),
        ...(entry.working ? [] : notClean(facesNotClean(ledger, { hole: entry.hole }))),
        ...(entry.working ? [] : unseenUnder(ledger, [areaOf(entry.hole)])),
      ];
    case 'part-fitted':
    case 'part-replaced':
      return [
        ...(entry.kind === 'part-fitted' && entry.forNow ? [] : setOverOpen(ledger, entry.part)),
        ...(entry.kind === 'part-fitted' && !entry.forNow ? oldOneOn(ledger, entry.part) : []),
        ...notClean(facesNotClean(ledger, { part: entry.part })),
        ...withoutBeadUnder(ledger, entry.part, now),
        ...unseenUnder(ledger, areasUnder(ledger, entry.part)),
        ...workingUnder(ledger, entry.part),
        ...goesOnFirst(ledger, entry.part),
        ...overPins(ledger, entry.part),
        ...behindShut(ledger, entry.part),
        ...(entry.kind === 'part-fitted' && !entry.forNow ? foundWrong(ledger, `part:${entry.part}`) : []),
      ];
    case 'fastener-tightened':
      return entry.last
        ? [
            ...notHeld(ledger, entry.hole),
            ...beforeItsBelt(ledger, entry.hole),
            ...withoutBead(ledger, entry.hole, now),
            ...stillOff(ledger, areaOf(entry.hole)),
          ]
        : notHeld(ledger, entry.hole);
    case 'temporary-taken-out':
      return [stillCarries, stillHolds, outFromUnder].flatMap((of) => of(ledger, entry.temporary));
    case 'temporary-put-in':
      return inUnderItsOwn(ledger, entry);
    case 'all-masked':
    case 'all-unmasked':
      return ofItsOwnName(ledger, entry);
    case 'calls-struck':
      return [...asFoundUnderOff(ledger, entry.lines), ...openBehindShut(ledger, entry.lines)];
    case 'holes-exchanged':
      return takenForAnother(ledger, entry);
    case 'connection-made':
      return [
        ...beforeTheRest(ledger, entry.connection),
        ...(entry.forNow ? [] : foundWrong(ledger, `connection:${entry.connection}`)),
      ];
    case 'area-declared':
      return nothingUnderRole(ledger, entry);
    case 'face-cleaned':
      return closedOver(ledger, entry.face);
    case 'bead-laid':
      return [...closedOver(ledger, entry.face), ...byPlansLabel(ledger, entry.label)];
    case 'circuit-declared':
      return entries.length === 1 ? hangsOnNothing(ledger, entry.circuit) : [];
    case 'service-done':
      return offOfService(ledger, entry.service);
    case 'rotation-begun':
    case 'engine-started':
      return searchedInVain(ledger);
    case 'connection-parted':
      return stillFull(ledger, entry.connection, entries);
    case 'holes-counted':
      return besideHoles(ledger, entry);
    case 'repair-step':
      return chipsInBead(ledger, entry, now);
    case 'car-lowered':
      return drivenBefore(ledger);
    case 'road-tested':
      return beadNotRun(ledger);
    case 'product-declared':
      return keepTheirLabel(ledger, entry.label);
    case 'tray-counted':
      return besideCount(ledger, entry);
    case 'box-counted': {
      const left = stateOf(ledger, 'box', entry.name)?.left ?? 0;
      return left === entry.count
        ? []
        : [`${left} of ${entry.name} should be left in the parts box by the ledger: count again`];
    }
    case 'scrap-counted': {
      const has = lyingOnPile(ledger);
      return has === entry.count ? [] : [`${has} should lie on the scrap pile by the ledger: count again`];
    }
    case 'odometer-noted':
      return fellBack(ledger, entry);
    default:
      return [];
  }
}
function fellBack(ledger: Ledger, { distance, unit }: Extract<Entry, { kind: 'odometer-noted' }>): string[] {
  const before = stateOf(ledger, 'vehicle', 'vehicle')?.odometer;
  const [then, now] = [before && kilometresOf(before.distance, before.unit), kilometresOf(distance, unit)];
  return before && typeof then === 'number' && typeof now === 'number' && now < then
    ? [`${before.distance} ${before.unit} were noted before: an odometer does not run back. Was a figure left out?`]
    : [];
}
/** T1, T7: nothing raised it since it was called on the road. */
function drivenBefore(ledger: Ledger): string[] {
  const { roadAt = 0, loweredAt = 0 } = stateOf(ledger, 'vehicle', 'vehicle') ?? {};
  const raised = [...every(ledger, 'temporary')].some((t) => t.putInAt > roadAt && raises.has(t.sort));
  return roadAt > loweredAt && !raised
    ? [`the road test was called in line ${roadAt}, before it: the one that is out of turn is struck and called anew`]
    : [];
}
const raises: ReadonlySet<string> = new Set(['stand', 'jack', 'block']);
/** Of the areas it brought; another service may still want them off. */
function offOfService(ledger: Ledger, service: string): string[] {
  const areas = (stateOf(ledger, 'service', service)?.brings ?? []).flatMap((one) => named('area', one) ?? []);
  const off = areas.filter((area) => tallyOf(ledger, area).off > 0);
  return off.length > 0
    ? [`still off: ${off.map((area) => `${tallyOf(ledger, area).off} of ${area}`).join(', ')}`]
    : [];
}
/** What belongs to no area, as the battery's earth does, comes off first and goes on last. */
export function beforeTheRest(ledger: Ledger, connection: string): string[] {
  const all = [...every(ledger, 'connection')];
  const c = stateOf(ledger, 'connection', connection);
  if (!c || !isOfTheCar(c) || !all.some((c) => c.declared?.area !== undefined)) return [];
  const { off } = ledger.tallies.all;
  const parted = all.filter((c) => c.parted && c.connection !== connection).map((c) => c.connection);
  const open = [off > 0 && `${off} off`, parted.length > 0 && `parted: ${parted.join(', ')}`].filter(Boolean);
  return open.length > 0 ? [`${connection} goes on last; still ${open.join(', ')}`] : [];
}
