// What a call speaks of when nothing is said: the next one of its kind, so that one key is one call. What is to come off
// or apart comes in the order of its plan, and only where a plan has named it; what is to go back, from the last. Where
// nothing is next, it is asked for.
import { keepsItsAreaOpen } from '../job/area-rest.ts';
import { blocked } from '../job/decide.ts';
import {
  carriesYet,
  closesOpenings,
  heldOnceMore,
  holdsYet,
  isAt,
  missingBefore,
  missingToBringUp,
  missingWhereOpen,
  stillUnder,
} from '../job/first-in.ts';
import { isRenewed } from '../job/guards.ts';
import { inFrontOf } from '../job/in-front.ts';
import { every, type Ledger, lastLine, stateOf, tallyOf } from '../job/ledger.ts';
import { isOfTheCar, openBeforeIt } from '../job/of-the-car.ts';
import { wantsLeakCheck } from '../job/open-points.ts';
import { openBehind } from '../job/order.ts';
import { areasThroughParts, partsOffBehind } from '../job/parts-behind.ts';
import type { ConnectionState, PartState, TemporaryState } from '../job/states.ts';
import { areaOf, holeIn, named, numberOf } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import { circuitsHere } from './circuits-in-turn.ts';
import { type Desk, nextHole, nextTight, workingHoles } from './desk.ts';
import type { Args } from './form.ts';
import { nextArea } from './next-area.ts';
import { oldOnes } from './old-ones.ts';
import { sideIn } from './other-side.ts';
import { meantBy, type Row } from './row.ts';
import { isEmptyTray, isOneMore, oneMoreTray, uncountedInTurn } from './trays.ts';
import { areasOfPart } from './where-parts-are.ts';

/** There is no opening to close, or it is masked as all are. */
function closesNothing(ledger: Ledger, t: TemporaryState): boolean {
  const { sort, at } = t;
  const area = at === undefined ? undefined : named('area', at);
  if (area === undefined || !closesOpenings.has(sort)) return false;
  const isMasked = sort === 'mask' && (stateOf(ledger, 'area', area)?.maskedAt ?? 0) > 0;
  return isMasked || tallyOf(ledger, area).off === 0 || stillUnder(ledger, t.temporary, t) !== undefined;
}

type Kind = {
  slot: string;
  inTurn(desk: Desk): readonly string[];
  /** None is passed over: where the last cannot go back yet, one before it is no proposal. */
  noneSkipped?: true;
};

/** A plan has named what belongs to this job. */
const isFromPlan = (ledger: Ledger): boolean => [...every(ledger, 'area')].some((a) => a.declared?.planned === true);
const lastFirst = <T>(all: readonly T[], at: (one: T) => number): T[] => all.toSorted((a, b) => at(b) - at(a));

/** What belongs to the area in use, then what belongs to none. Of another area nothing is taken unasked. */
function within<T>({ facing }: Desk, all: readonly T[], areasOf: (one: T) => readonly string[]): T[] {
  const here = all.filter((one) => facing.area !== undefined && areasOf(one).includes(facing.area));
  return [...here, ...all.filter((one) => areasOf(one).length === 0)];
}

/**
 * The hole that the last call was of, as long as work is in its area; one that is pointed at is taken as it is. While they
 * are pulled up it is the next: what strips does so in the wrench, and not where it was just called tight.
 */
function holeJustCalled(desk: Desk): string[] {
  const { ledger } = desk;
  const { area, hole } = desk.facing;
  const entries = lastLine(ledger)?.entries ?? [];
  const numbers = new Set(entries.flatMap((e) => ('hole' in e ? [holeIn(areaOf(e.hole), numberOf(e.hole))] : [])));
  const [only, second] = numbers;
  if (hole !== undefined || only === undefined || second || areaOf(only) !== area) return [];
  const pulledUp = entries.every(({ kind }) => kind === 'fastener-tightened') ? nextTight(desk) : undefined;
  return [`hole:${pulledUp ?? only}`];
}

const connections = ({ ledger }: Desk) => [...every(ledger, 'connection')];
const parts = ({ ledger }: Desk) => [...every(ledger, 'part')].filter((p) => !isWithdrawn(ledger, `part:${p.part}`));
/** Off, of the area in use, the last one first: held there, or said to be in front of it or behind it; not where it is gated. */
function offHere(desk: Desk, is: (p: PartState) => boolean): string[] {
  const { ledger, facing } = desk;
  const { area } = facing;
  const isHere = ({ part }: PartState) =>
    area !== undefined && (areasOfPart(ledger, part).includes(area) || areasThroughParts(ledger, part).includes(area));
  const isNext = ({ part }: PartState) =>
    openBehind(ledger, [`part:${part}`]).length === 0 && partsOffBehind(ledger, part).length === 0;
  const off = parts(desk).filter((p) => p.off && is(p) && isHere(p) && isNext(p));
  return lastFirst(off, (p) => p.removedAt).map((p) => p.part);
}
/** What is declared to go in where work is now; before any area is in use, where it begins. */
function goesInHere(desk: Desk, at: string | undefined): boolean {
  if (at === undefined) return true;
  const area = desk.facing.area ?? nextArea(desk, false);
  const part = named('part', at);
  if (part !== undefined)
    return (
      area !== undefined && areasOfPart(desk.ledger, part).includes(area) && inFrontOf(desk.ledger, at).length === 0
    );
  const hole = named('hole', at);
  const there = hole === undefined ? named('area', at) : areaOf(hole);
  return there === undefined || there === area;
}
const isAllCalled = (ledger: Ledger, area: string): boolean => {
  const { holes, touched } = tallyOf(ledger, area);
  return holes > 0 && touched >= holes;
};
const circuits = ({ ledger }: Desk) =>
  [...every(ledger, 'circuit')].filter((c) => !isWithdrawn(ledger, `circuit:${c.circuit}`));

const kinds: Readonly<Record<string, Kind>> = {
  parted: {
    slot: 'connection',
    inTurn(desk) {
      if (!isFromPlan(desk.ledger)) return [];
      const asFound = connections(desk).filter(
        (c) => c.declared && c.partedAt === 0 && !isWithdrawn(desk.ledger, `connection:${c.connection}`),
      );
      const { area } = desk.facing;
      // A hose elsewhere from which its fluid would run is no next one by itself.
      const isFull = (circuit: string | undefined): boolean =>
        circuit !== undefined && stateOf(desk.ledger, 'circuit', circuit)?.drainedAt === 0;
      const may = asFound.filter(
        (c) => (area !== undefined && c.declared?.area === area) || !isFull(c.declared?.circuit),
      );
      return within(desk, may, (c) => (c.declared?.area ? [c.declared.area] : [])).map((c) => c.connection);
    },
  },
  made: {
    slot: 'connection',
    noneSkipped: true,
    // One that belongs to no area waits until nothing is off any more; the battery's earth, until nothing is loose.
    inTurn(desk) {
      const parted = lastFirst(
        connections(desk).filter((c) => c.parted),
        (c) => c.partedAt,
      );
      const { area } = desk.facing;
      const here = parted.filter((c) => area !== undefined && c.declared?.area === area);
      const isNext = (c: ConnectionState): boolean =>
        !here.includes(c) && (isOfTheCar(c) ? openBeforeIt(desk.ledger).length : desk.ledger.tallies.all.off) === 0;
      return [...here, ...parted.filter(isNext)].map((c) => c.connection);
    },
  },
  'put-in': {
    slot: 'temporary',
    inTurn(desk) {
      if (!isFromPlan(desk.ledger)) return [];
      // What held a bolt while it came off holds it again while it is brought up.
      const next = nextHole(desk, 'build');
      const holding = next === undefined ? [] : missingToBringUp(desk.ledger, next);
      const { area } = desk.facing;
      const first = area === undefined || isAllCalled(desk.ledger, area) ? [] : missingBefore(desk.ledger, area);
      const never = [...every(desk.ledger, 'temporary')].filter(
        (t) =>
          t.putInAt === 0 &&
          !isWithdrawn(desk.ledger, `temporary:${t.temporary}`) &&
          (goesInHere(desk, t.at) || closesOpenings.has(t.sort)) &&
          !closesNothing(desk.ledger, t),
      );
      // What the screen says is to be in first, the chock before the car is raised, what belongs here, what to no place.
      const rank = ({ sort, at }: TemporaryState): number => (sort === 'chock' ? -1 : Number(at === undefined));
      const here = never.toSorted((one, other) => rank(one) - rank(other));
      const open = missingWhereOpen(desk.ledger).map((t) => t.temporary);
      return [...new Set([...holding, ...first, ...open, ...here.map((t) => t.temporary)])];
    },
  },
  'taken-out': {
    slot: 'temporary',
    noneSkipped: true,
    inTurn({ ledger, facing: { area } }) {
      const side = area === undefined ? undefined : sideIn(area);
      const lateness = (t: TemporaryState): number => {
        const isHere = area !== undefined && isAt(t, area);
        if (isHere && keepsItsAreaOpen.has(t.sort)) return 0;
        if (heldOnceMore(ledger, t)) return 4;
        return isHere ? 1 : side !== undefined && sideIn(t.temporary) === side ? 2 : 3;
      };
      const may = [...every(ledger, 'temporary')].filter((t) => t.in && !carriesYet(ledger, t) && !holdsYet(ledger, t));
      return (
        lastFirst(may, (t) => t.putInAt)
          // What the area in use waits for comes first, then what belongs to it, then to its side of the car; one that a
          // bolt wants once more stays in the longest.
          .toSorted((one, other) => lateness(one) - lateness(other))
          .map((t) => t.temporary)
      );
    },
  },
  'part-off': {
    slot: 'part',
    inTurn(desk) {
      if (!isFromPlan(desk.ledger)) return [];
      const on = parts(desk).filter(
        (p) => p.declared && !p.off && p.removedAt === 0 && inFrontOf(desk.ledger, `part:${p.part}`).length === 0,
      );
      const { area } = desk.facing;
      const front = new Set(area === undefined ? [] : inFrontOf(desk.ledger, `area:${area}`));
      // What stands in front of the area in use comes before what is loose in it.
      const first = on.filter(({ part }) => front.has(`part:${part}`));
      const here = within(desk, on, (p) => p.declared?.heldBy.map(areaOf) ?? []);
      return [...new Set([...first, ...here])].map((p) => p.part);
    },
  },
  'part-back': {
    slot: 'part',
    noneSkipped: true,
    inTurn: (desk) => offHere(desk, (p) => !isRenewed(desk.ledger, p)),
  },
  'working-out': {
    slot: 'hole',
    inTurn: workingHoles,
  },
  renewed: {
    slot: 'part',
    noneSkipped: true,
    inTurn: (desk) => offHere(desk, (p) => isRenewed(desk.ledger, p)),
  },
  drained: {
    slot: 'circuit',
    // A fluid runs out where a connection of its circuit is.
    inTurn: (desk) =>
      circuitsHere(
        desk,
        circuits(desk).map((c) => c.circuit),
      ),
  },
  filled: {
    slot: 'circuit',
    inTurn: (desk) => circuits(desk).flatMap((c) => (c.drainedAt > c.filledAt ? [c.circuit] : [])),
  },
  'leak-check': {
    slot: 'circuit',
    inTurn: (desk) =>
      circuits(desk).flatMap((c) => (c.filledAt > c.checkedAt || wantsLeakCheck(desk.ledger, c) ? [c.circuit] : [])),
  },
  'service-done': {
    slot: 'service',
    inTurn: ({ ledger }) => [...every(ledger, 'service')].flatMap((s) => (s.state === 'ordered' ? [s.service] : [])),
  },
  finding: { slot: 'at', inTurn: holeJustCalled },
  count: {
    slot: 'tray',
    inTurn({ ledger }) {
      const waiting = uncountedInTurn(ledger);
      const filled = waiting.filter((t) => t.contents.length > 0 && !t.isPart);
      // Those in which nothing should lie are called empty together; one alone is counted as any other.
      return (filled.length > 0 || waiting.length > 1 ? filled : waiting).map((t) => t.tray);
    },
  },
  scrap: { slot: 'fastener', inTurn: ({ ledger }) => oldOnes(ledger).map((f) => f.id) },
  'scrap-alike': { slot: 'fastener', inTurn: ({ ledger }) => oldOnes(ledger).map((f) => f.id) },
  tray: { slot: 'tray', inTurn: nextTrays },
};

/** The trays in which nothing lies, from the one in use on and round again; one more where all are used. */
export function nextTrays(desk: Desk): string[] {
  const { facing, trays = [] } = desk;
  if (isOneMore(desk, facing.tray)) return [];
  const further = oneMoreTray(desk);
  if (further !== undefined) return [further];
  const next = trays.indexOf(facing.tray) + 1;
  return [...trays.slice(next), ...trays.slice(0, Math.max(0, next - 1))].filter((tray) => isEmptyTray(desk, tray));
}

/** The slot of this call that the next one of its kind fills, unless it is refused; nothing when it is asked for. */
export function nextOfKind(row: Row, desk: Desk, args: Args): Args {
  const kind = kinds[row.id];
  if (!kind || args[kind.slot] !== undefined) return {};
  const inTurn = kind.inTurn(desk);
  const next = (kind.noneSkipped ? inTurn.slice(0, 1) : inTurn).find((name) => {
    const meant = meantBy(row, desk, { ...args, [kind.slot]: name });
    return 'face' in meant || ('say' in meant && !blocked(desk.ledger, meant.say, desk.now));
  });
  return next === undefined ? {} : { [kind.slot]: next };
}
