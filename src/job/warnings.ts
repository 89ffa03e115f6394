// What is said beside a call that is taken: it stands in no way and is no open point. Asked of the entries it writes.

import { areasUnder, unseenUnder } from './before-faces-meet.ts';
import { lyingOnPile } from './counts.ts';
import type { Entry } from './entry.ts';
import { type Ledger, stateOf, tallyOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { numberJumps } from './number-jump.ts';
import { levelAfterPistons } from './pistons-noted.ts';
import { besideStep } from './repair-figures.ts';
import { areaOf } from './subjects.ts';
import {
  anotherHead,
  beforeItsBelt,
  behindShut,
  closedOver,
  facesNotClean,
  goesOnFirst,
  holdsOnce,
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
  workingUnder,
} from './warnings-building.ts';
import { besideCount, besideHoles, ofNoCircuit, overNoArea } from './warnings-counting.ts';
import { takenForAnother } from './warnings-exchange.ts';
import { foundAlready, foundWrong, threadUnderIt } from './warnings-found.ts';
import { beforeTheRest, drivenBefore, drivenSoSoon, fellBack, offOfService } from './warnings-leaving.ts';
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
import { heldByALock, oneForSeveralThreads, tightByAnother, torqueNotRead, withoutFigure } from './warnings-turned.ts';
import { searchedInVain } from './works-searched.ts';

export function warningsOf(ledger: Ledger, entries: readonly Entry[], now: Stamp): string[] {
  const figures = entries.flatMap((entry) => besideStep(ledger, entry));
  return [
    ...figures,
    ...new Set(entries.flatMap((entry) => besideEntry(ledger, entry, entries, now))),
    ...leftForLater(ledger, entries),
    ...heldByALock(ledger, entries),
    ...new Set(entries.flatMap(torqueNotRead)),
    ...withoutFigure(ledger, entries),
    ...tightByAnother(ledger, entries),
    ...oneForSeveralThreads(ledger, entries),
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

/** What a mechanic would be told by the one beside him. Common practice, no source, where no rule is named. */
function besideEntry(ledger: Ledger, entry: Entry, entries: readonly Entry[], now: Stamp): string[] {
  switch (entry.kind) {
    case 'fastener-found':
      return [...numberJumps(ledger, [entry.hole]), ...foundUnderOff(ledger, entry, entries)];
    case 'finding-made':
      return [...threadUnderIt(ledger, entry, entries), ...foundAlready(ledger, entry)];
    case 'hole-found-empty':
      return numberJumps(ledger, [entry.hole]);
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
        ...holdsOnce(entry),
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
    // Of several at once a plan is the source, which knows its holes.
    case 'hole-declared':
      return entries.length === 1 ? numberJumps(ledger, [entry.hole]) : [];
    case 'part-declared':
      return entries.length === 1 ? numberJumps(ledger, entry.heldBy) : [];
    case 'face-declared':
      return entries.length === 1 ? numberJumps(ledger, entry.pressedBy) : [];
    case 'drive-declared':
      return entries.length === 1 ? overNoArea(ledger, entry.areas) : [];
    case 'circuit-declared':
      return entries.length === 1 ? hangsOnNothing(ledger, entry.circuit) : [];
    case 'service-done':
      return offOfService(ledger, entry.service);
    case 'rotation-begun':
    case 'engine-started':
      return searchedInVain(ledger);
    case 'connection-parted':
      return stillFull(ledger, entry.connection, entries);
    case 'fluid-drained':
    case 'fluid-filled':
      return ofNoCircuit(ledger, entry.circuit);
    case 'holes-counted':
      return besideHoles(ledger, entry);
    case 'repair-step':
      return chipsInBead(ledger, entry, now);
    case 'car-lowered':
      return drivenBefore(ledger);
    case 'pedal-firm':
      return levelAfterPistons(ledger);
    case 'road-tested':
      return [...beadNotRun(ledger), ...drivenSoSoon(ledger, now)];
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
