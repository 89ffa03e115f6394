// What the roles of areas ask for before the road (T7): when one was last opened, and what of a brake is not together.
import { areaOpenedAt, holesOf, isTouched, laterOf } from './closed.ts';
import type { areaRoles } from './entries/declared.ts';
import { type HoleState, snugOrBetter } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { driveOpenedAt } from './rotation.ts';
import type { ConnectionState } from './states.ts';
import type { Subject } from './subjects.ts';

type Role = (typeof areaRoles)[number];

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

/** T7: what an area belongs to: as it was declared, else a brake by its name. Undefined: nobody said. */
export const roleOf = (ledger: Ledger, area: string): Role | undefined =>
  stateOf(ledger, 'area', area)?.declared?.role ?? (isOfBrake(area) ? 'brake' : undefined);
/** T7 says "any caliper, line or pad": what is called so is of a brake though no plan says it. */
const isOfBrake = (name: string): boolean => /\b(brakes?|calipers?|pads)\b/i.test(name);

/** T7: line at which an area with one of these roles was last opened, a part or connection of one came off, or brake fluid was drained. */
export function roleOpenedAt(ledger: Ledger, roles: ReadonlySet<string>): number {
  const asks = (role: Role | undefined) => role !== undefined && roles.has(role);
  let at = 0;
  for (const { area } of every(ledger, 'area'))
    if (asks(roleOf(ledger, area))) at = Math.max(at, areaOpenedAt(ledger, area));
  for (const c of every(ledger, 'connection')) if (asks(roleOfConnection(ledger, c))) at = Math.max(at, c.partedAt);
  // R1: its belt may be called off with no bolt of its areas.
  if (roles.has('drive')) for (const d of every(ledger, 'drive')) at = Math.max(at, driveOpenedAt(ledger, d));
  if (!roles.has('brake')) return at;
  // Pads are held by no bolt of their own, and may be drawn without one called.
  for (const { part, removedAt } of every(ledger, 'part')) if (isOfBrake(part)) at = Math.max(at, removedAt);
  for (const { circuit, drainedAt } of every(ledger, 'circuit'))
    if (isBrakeFluid(circuit)) at = Math.max(at, drainedAt);
  return at;
}
/** A brake's lamp has a plug and a brake's pipe a union: of the whole car, a connection is a brake's where fluid runs. */
const roleOfConnection = (ledger: Ledger, c: ConnectionState): Role | undefined =>
  c.declared?.area
    ? roleOf(ledger, c.declared.area)
    : carriesFluid(c) && (isOfBrake(c.connection) || isBrakeFluid(c.declared?.circuit ?? ''))
      ? 'brake'
      : undefined;
export const brakeRoles: ReadonlySet<string> = new Set(['brake']);

export const brakeOpenedAt = (ledger: Ledger): number => roleOpenedAt(ledger, brakeRoles);
/** By its name; DOT is what its classes are called (49 CFR 571.116, from memory). */
const isBrakeFluid = (circuit: string): boolean => /\bbrakes?\b|\bDOT ?[345]/i.test(circuit);

/** By its name or by what is in it: its pedal puts it under pressure, and nothing of the engine. Common practice, no source. */
export const isOfBrakes = ({ circuit, fluid }: { circuit: string; fluid?: string }): boolean =>
  isBrakeFluid(`${circuit} ${fluid ?? ''}`);

/** T7: what of a brake is not together: a hole not tight, a part off, a pipe or hose parted, its fluid drained. */
export function brakeApart(ledger: Ledger): Subject[] {
  const areas = [...every(ledger, 'area')].filter(({ area }) => roleOf(ledger, area) === 'brake');
  const held = new Set(areas.flatMap((a) => a.parts));
  return [
    ...areas.flatMap((a) => holesOf(ledger, a).flatMap((h) => (isLoose(ledger, h) ? [`hole:${h.hole}` as const] : []))),
    ...[...every(ledger, 'part')].flatMap(({ part, off }) =>
      off && (held.has(part) || isOfBrake(part)) ? [`part:${part}` as const] : [],
    ),
    ...[...every(ledger, 'connection')].flatMap((c) =>
      c.parted && carriesFluid(c) && roleOfConnection(ledger, c) === 'brake'
        ? [`connection:${c.connection}` as const]
        : [],
    ),
    ...[...every(ledger, 'circuit')].flatMap((c) =>
      isBrakeFluid(c.circuit) && c.drainedAt > c.filledAt ? [`circuit:${c.circuit}` as const] : [],
    ),
  ];
}
/** A wear sensor's plug keeps no pedal from being firm. */
const carriesFluid = ({ connection, declared }: ConnectionState): boolean =>
  declared?.circuit !== undefined || carriesByName(connection);
export const carriesByName = (connection: string): boolean => /\b(hose|pipe|line|union)\b/i.test(connection);
function isLoose(ledger: Ledger, h: HoleState): boolean {
  const level = h.called.occupant?.level;
  if (!isTouched(h) || h.called.leftEmpty) return false;
  return level === undefined || !(level === 'tight' || (snugOrBetter(level) && laterOf(ledger, h.hole) !== undefined));
}
