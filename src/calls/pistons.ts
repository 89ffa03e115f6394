// The pistons of a caliper that is off, pushed back before the pads go in: a note and nothing more, offered where it is due.
import { areaOpenedAt } from '../job/closed.ts';
import { every, stateOf, tallyOf } from '../job/ledger.ts';
import { pistonsNote } from '../job/pistons-noted.ts';
import { roleOf } from '../job/roles.ts';
import type { Desk } from './desk.ts';

/** Its bracket has no piston. */
const isCaliper = (name: string): boolean => /\bcalipers?\b(?!.*\b(bracket|carrier)s?\b)/i.test(name);

/** Of a brake: its caliper is off, as a part, or where nobody named one with the bolts of an area that is called so. */
export function isCaliperOff({ ledger }: Desk, area: string): boolean {
  const a = stateOf(ledger, 'area', area);
  if (!a || roleOf(ledger, area) !== 'brake') return false;
  const calipers = a.parts.filter(isCaliper);
  return calipers.length > 0
    ? calipers.some((part) => stateOf(ledger, 'part', part)?.off)
    : isCaliper(area) && a.parts.length === 0 && tallyOf(ledger, area).off > 0;
}
/** Noted since its caliper came off. */
export function arePistonsBack({ ledger }: Desk, area: string): boolean {
  const remarks = stateOf(ledger, 'vehicle', 'vehicle')?.remarks ?? [];
  return remarks.some(({ n, words }) => words === pistonsNote(area) && n > areaOpenedAt(ledger, area));
}
/** The area in use, or where work went on from: the one whose caliper is off and whose pistons nobody noted, on this side first. */
export function pistonsAt(desk: Desk): string | undefined {
  const { area } = desk.facing;
  if (area !== undefined && isCaliperOff(desk, area)) return area;
  const due = [...every(desk.ledger, 'area')].flatMap((a) =>
    isCaliperOff(desk, a.area) && !arePistonsBack(desk, a.area) ? [a.area] : [],
  );
  const side = (name: string) => /\b(left|right|front|rear)\b/i.exec(name)?.[0].toLowerCase();
  const here = due.filter((one) => area !== undefined && side(one) === side(area));
  return here.length === 1 ? here[0] : due.length === 1 ? due[0] : area;
}
/** The note is due at the area in use. */
export const arePistonsAwaited = (desk: Desk): boolean =>
  desk.facing.area !== undefined && isCaliperOff(desk, desk.facing.area) && !arePistonsBack(desk, desk.facing.area);
