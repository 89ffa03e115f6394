// What the roles of areas ask for before the road (T7): when one was last opened, and what of a brake is not together.
import { areaOpenedAt, holesOf, isTouched } from './closed.ts';
import { type HoleState, snugOrBetter } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import type { Subject } from './subjects.ts';

/** T7: of what a road test is wanted, and of what a firm pedal. */
export const roadRoles: ReadonlySet<string> = new Set([
  'wheel',
  'brake',
  'steering',
  'suspension',
  'mount',
  'drive',
  'engine',
]);

/** T7: line at which an area with one of these roles was last opened, or a connection of one parted. */
export function roleOpenedAt(ledger: Ledger, roles: ReadonlySet<string>): number {
  let at = 0;
  for (const a of every(ledger, 'area')) {
    if (a.declared?.role && roles.has(a.declared.role)) at = Math.max(at, areaOpenedAt(ledger, a.area));
  }
  for (const c of every(ledger, 'connection')) {
    const role = c.declared?.area ? stateOf(ledger, 'area', c.declared.area)?.declared?.role : undefined;
    if (role && roles.has(role)) at = Math.max(at, c.partedAt);
  }
  return at;
}
export const brakeRoles: ReadonlySet<string> = new Set(['brake']);

export const brakeOpenedAt = (ledger: Ledger): number => roleOpenedAt(ledger, brakeRoles);

/** T7: what of a brake is not together: a hole not snug, a part off, a connection parted. */
export function brakeApart(ledger: Ledger): Subject[] {
  const areas = [...every(ledger, 'area')].filter((a) => brakeRoles.has(a.declared?.role ?? ''));
  const names = new Set(areas.map(({ area }) => area));
  return [
    ...areas.flatMap((a) => holesOf(ledger, a).flatMap((h) => (isLoose(h) ? [`hole:${h.hole}` as const] : []))),
    ...areas.flatMap((a) => a.parts.flatMap((p) => (stateOf(ledger, 'part', p)?.off ? [`part:${p}` as const] : []))),
    ...[...every(ledger, 'connection')].flatMap((c) =>
      c.parted && names.has(c.declared?.area ?? '') ? [`connection:${c.connection}` as const] : [],
    ),
  ];
}
const isLoose = (h: HoleState): boolean =>
  isTouched(h) && !h.called.leftEmpty && !(h.called.occupant && snugOrBetter(h.called.occupant.level));
