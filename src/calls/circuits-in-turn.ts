// Which circuit runs out next: the one whose joint was just parted, then what the area in use opens, last what is drained.
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import type { CircuitState, ConnectionState } from '../job/states.ts';
import type { Desk } from './desk.ts';

const isDry = ({ drainedAt, filledAt }: CircuitState): boolean => drainedAt > filledAt;
const joints = (ledger: Ledger, circuit: string): ConnectionState[] =>
  [...every(ledger, 'connection')].filter(({ declared }) => declared?.circuit === circuit);

/** Line at which a joint of it was parted that still is, and nothing of it called drained since; 0 = none. */
const partedAt = (ledger: Ledger, { circuit, drainedAt }: CircuitState): number =>
  Math.max(0, ...joints(ledger, circuit).map((c) => (c.parted && c.partedAt > drainedAt ? c.partedAt : 0)));
const isKeptIn = (ledger: Ledger, circuit: string, area: string): boolean =>
  [...every(ledger, 'face')].some(({ declared }) => declared?.area === area && declared.keepsIn.includes(circuit));

/** How near the work it is: a joint in the area in use, a face of it, a joint that will be parted, none. */
function nearness({ ledger, facing: { area } }: Desk, { circuit }: CircuitState): number {
  const its = joints(ledger, circuit);
  if (area !== undefined && its.some(({ declared }) => declared?.area === area)) return 0;
  if (area !== undefined && isKeptIn(ledger, circuit, area)) return 1;
  return its.some((c) => c.partedAt === 0) ? 2 : 3;
}

/** All of them by name, the one that is next first. */
export function circuitsInTurn(desk: Desk, known: readonly string[]): string[] {
  const states = known.flatMap((name) => stateOf(desk.ledger, 'circuit', name) ?? []);
  return states
    .map((c) => ({ c, parted: isDry(c) ? 0 : partedAt(desk.ledger, c), near: nearness(desk, c) }))
    .toSorted(
      (one, other) =>
        Number(isDry(one.c)) - Number(isDry(other.c)) || other.parted - one.parted || one.near - other.near,
    )
    .map(({ c }) => c.circuit);
}
/** The one that runs out here: a joint of it was parted, or is in the area in use, and nothing of it called drained. */
export function circuitAwaited(desk: Desk, known: readonly string[]): string | undefined {
  const [first] = circuitsInTurn(desk, known).flatMap((name) => stateOf(desk.ledger, 'circuit', name) ?? []);
  if (!first || isDry(first)) return undefined;
  const isOpened = partedAt(desk.ledger, first) > 0;
  return isOpened || (first.drainedAt === 0 && nearness(desk, first) === 0) ? first.circuit : undefined;
}
/** Taken unasked: one that was never drained, by a joint of the area in use or one just parted that belongs to none. */
export function circuitsHere(desk: Desk, known: readonly string[]): string[] {
  const { ledger, facing } = desk;
  const isHere = ({ declared, parted }: ConnectionState): boolean =>
    declared?.area === undefined ? parted : declared.area === facing.area;
  return circuitsInTurn(desk, known).filter(
    (name) => stateOf(ledger, 'circuit', name)?.drainedAt === 0 && joints(ledger, name).some(isHere),
  );
}
