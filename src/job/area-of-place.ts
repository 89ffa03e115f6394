// Where on the car a place of the log is: the area that a hole, a part, a connection, a face, a finding or a temporary
// belongs to, so that what is said of one area can be said together.
import { type Ledger, lineAt, stateOf } from './ledger.ts';
import { isOfTheBattery, isOfTheCar } from './of-the-car.ts';
import type { ConnectionState } from './states.ts';
import { areaOf, named } from './subjects.ts';

/** Undefined where it is of the whole car, or nobody said where. */
export function areaOfPlace(ledger: Ledger, at: string): string | undefined {
  const hole = named('hole', at);
  if (hole !== undefined) return areaOf(hole);
  const area = named('area', at);
  if (area !== undefined) return area;
  const part = named('part', at);
  if (part !== undefined) {
    const [holds] = stateOf(ledger, 'part', part)?.declared?.heldBy ?? [];
    return holds === undefined ? undefined : areaOf(holds);
  }
  const connection = named('connection', at);
  if (connection !== undefined) return areaOfJoint(ledger, stateOf(ledger, 'connection', connection));
  const face = named('face', at);
  if (face !== undefined) return stateOf(ledger, 'face', face)?.declared?.area;
  const finding = named('finding', at);
  if (finding !== undefined) return leadsOn(ledger, stateOf(ledger, 'finding', finding)?.at);
  const temporary = named('temporary', at);
  return temporary === undefined ? undefined : leadsOn(ledger, stateOf(ledger, 'temporary', temporary)?.at);
}
/** As it was declared; one that was only named as it was parted is where work was then, but for the battery's elsewhere. */
export function areaOfJoint(ledger: Ledger, c: ConnectionState | undefined): string | undefined {
  if (!c || c.declared) return c?.declared?.area;
  const area = lineAt(ledger, c.partedAt)?.facing.area;
  return isOfTheCar(c) && !isOfTheBattery(area ?? '') ? undefined : area;
}
const leadsOn = (ledger: Ledger, at: string | undefined): string | undefined =>
  at === undefined || at.startsWith('finding:') || at.startsWith('temporary:') ? undefined : areaOfPlace(ledger, at);

/** Those of one area together, in the order in which the areas are met first; within an area as they were. */
export function byArea<T>(all: readonly T[], areaOf: (one: T) => string | undefined): T[] {
  return [...Map.groupBy(all, (one) => areaOf(one) ?? '').values()].flat();
}
