// What the roles of areas ask for before the road (T7): when one was last opened, and what of a brake is not together.
import { areaOpenedAt, holesOf, isTouched, laterOf } from './closed.ts';
import { type HoleState, snugOrBetter } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import type { ConnectionState } from './states.ts';
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

/** T7: a brake area opened, a connection of one parted, or the brake fluid drained. */
export const brakeOpenedAt = (ledger: Ledger): number =>
  Math.max(
    roleOpenedAt(ledger, brakeRoles),
    ...[...every(ledger, 'circuit')].filter(isBrakeFluid).map((c) => c.drainedAt),
  );
/** By its name; DOT is what its classes are called (49 CFR 571.116, from memory). */
const isBrakeFluid = ({ circuit }: { circuit: string }): boolean => /\bbrakes?\b|\bDOT ?[345]/i.test(circuit);

/** T7: what of a brake is not together: a hole not tight, a part off, a pipe or hose parted, its fluid drained. */
export function brakeApart(ledger: Ledger): Subject[] {
  const areas = [...every(ledger, 'area')].filter((a) => brakeRoles.has(a.declared?.role ?? ''));
  const names = new Set(areas.map(({ area }) => area));
  return [
    ...areas.flatMap((a) => holesOf(ledger, a).flatMap((h) => (isLoose(ledger, h) ? [`hole:${h.hole}` as const] : []))),
    ...areas.flatMap((a) => a.parts.flatMap((p) => (stateOf(ledger, 'part', p)?.off ? [`part:${p}` as const] : []))),
    ...[...every(ledger, 'connection')].flatMap((c) =>
      c.parted && carriesFluid(c) && names.has(c.declared?.area ?? '') ? [`connection:${c.connection}` as const] : [],
    ),
    ...[...every(ledger, 'circuit')].flatMap((c) =>
      isBrakeFluid(c) && c.drainedAt > c.filledAt ? [`circuit:${c.circuit}` as const] : [],
    ),
  ];
}
/** A wear sensor's plug keeps no pedal from being firm. */
const carriesFluid = ({ connection, declared }: ConnectionState): boolean =>
  declared?.circuit !== undefined || /\b(hose|pipe|line|union)\b/i.test(connection);
function isLoose(ledger: Ledger, h: HoleState): boolean {
  const level = h.called.occupant?.level;
  if (!isTouched(h) || h.called.leftEmpty) return false;
  return level === undefined || !(level === 'tight' || (snugOrBetter(level) && laterOf(ledger, h.hole) !== undefined));
}
