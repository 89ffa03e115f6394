// The pistons of a caliper that is off, pushed back before the pads go in: a note and nothing more, offered where it is due.
import { areaOpenedAt } from '../job/closed.ts';
import { stateOf, tallyOf } from '../job/ledger.ts';
import { roleOf } from '../job/roles.ts';
import type { Desk } from './desk.ts';

const isCaliper = (name: string): boolean => /\bcalipers?\b/i.test(name);
export const pistonsNote = (area: string): string => `pistons pushed back at ${area}`;

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
/** The note is due at the area in use. */
export const arePistonsAwaited = (desk: Desk): boolean =>
  desk.facing.area !== undefined && isCaliperOff(desk, desk.facing.area) && !arePistonsBack(desk, desk.facing.area);
