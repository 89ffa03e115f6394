// What a call speaks of when nothing is said: the next one of its kind, so that one key is one call. What is to come off
// or apart comes in the order of its plan, and only where a plan has named it; what is to go back, from the last. Where
// nothing is next, it is asked for.
import { blocked } from '../job/decide.ts';
import { isRenewed } from '../job/guards.ts';
import { every, lastLine, stateOf } from '../job/ledger.ts';
import { isOfTheCar, openBeforeIt } from '../job/of-the-car.ts';
import { wantsLeakCheck } from '../job/open-points.ts';
import type { ConnectionState } from '../job/states.ts';
import { areaOf, holeIn, numberOf } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import { circuitsHere } from './circuits-in-turn.ts';
import { type Desk, nextTight, workingHoles } from './desk.ts';
import type { Args } from './form.ts';
import { isFromPlan, lastFirst, within } from './in-turn.ts';
import { comesOffNext, goesBackNext } from './next-parts.ts';
import { comesOutNext, goesInNext } from './next-temporaries.ts';
import { oldOnes } from './old-ones.ts';
import { meantBy, type Row } from './row.ts';
import { isEmptyTray, isOneMore, oneMoreTray, uncountedInTurn } from './trays.ts';

type Kind = {
  slot: string;
  inTurn(desk: Desk): readonly string[];
  /** None is passed over: where the last cannot go back yet, one before it is no proposal. */
  noneSkipped?: true;
};

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
  'put-in': { slot: 'temporary', inTurn: goesInNext },
  'taken-out': { slot: 'temporary', noneSkipped: true, inTurn: comesOutNext },
  'part-off': { slot: 'part', inTurn: comesOffNext },
  'part-back': {
    slot: 'part',
    noneSkipped: true,
    inTurn: (desk) => goesBackNext(desk, (p) => !isRenewed(desk.ledger, p)),
  },
  'working-out': {
    slot: 'hole',
    inTurn: workingHoles,
  },
  renewed: {
    slot: 'part',
    noneSkipped: true,
    inTurn: (desk) => goesBackNext(desk, (p) => isRenewed(desk.ledger, p)),
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
