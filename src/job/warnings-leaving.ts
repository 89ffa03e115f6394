// What is said beside the calls with which a job ends: a service done with something of it off, what goes on last, a clock
// that ran back, a road test before the car was lowered. It stands in no way.
import { millisecondsPerMinute } from '../trade/definitions.ts';
import { kilometresOf } from '../trade/units.ts';
import { ranFor } from './cold-run.ts';
import type { Entry } from './entry.ts';
import { every, type Ledger, lineAt, stateOf, tallyOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { isOfTheCar, openBeforeIt } from './of-the-car.ts';
import { roleOf } from './roles.ts';
import { named } from './subjects.ts';

/** A figure left out, most likely. */
export function fellBack(ledger: Ledger, { distance, unit }: Extract<Entry, { kind: 'odometer-noted' }>): string[] {
  const before = stateOf(ledger, 'vehicle', 'vehicle')?.odometer;
  const [then, now] = [before && kilometresOf(before.distance, before.unit), kilometresOf(distance, unit)];
  return before && typeof then === 'number' && typeof now === 'number' && now < then
    ? [`${before.distance} ${before.unit} were noted before: an odometer does not run back. Was a figure left out?`]
    : [];
}
/** T1, T7: nothing raised it since it was called on the road. */
export function drivenBefore(ledger: Ledger): string[] {
  const { roadAt = 0, loweredAt = 0 } = stateOf(ledger, 'vehicle', 'vehicle') ?? {};
  const raised = [...every(ledger, 'temporary')].some((t) => t.putInAt > roadAt && raises.has(t.sort));
  return roadAt > loweredAt && !raised
    ? [`the road test was called in line ${roadAt}, before it: the one that is out of turn is struck and called anew`]
    : [];
}
/** Minutes: a road test is no turn of the yard. Common practice, no source. */
const shortestDrive = 2;
const ofTheEngine: ReadonlySet<string> = new Set(['engine', 'mount', 'drive']);
export function drivenSoSoon(ledger: Ledger, now: Stamp): string[] {
  const started = lineAt(ledger, stateOf(ledger, 'vehicle', 'vehicle')?.startedAt ?? 0);
  const onEngine = [...every(ledger, 'area')].some(
    ({ area }) => ofTheEngine.has(roleOf(ledger, area) ?? '') && tallyOf(ledger, area).touched > 0,
  );
  if (!started && onEngine) return ['no first start was called on this job, and its engine was worked on'];
  const ranMs = started ? ranFor(started, now) : undefined;
  return ranMs !== undefined && ranMs < shortestDrive * millisecondsPerMinute.value
    ? [`the engine was called started ${Math.round(ranMs / 1000)} s ago: where it was not driven yet, strike it`]
    : [];
}
const raises: ReadonlySet<string> = new Set(['stand', 'jack', 'block']);
/** Of the areas it brought; another service may still want them off. */
export function offOfService(ledger: Ledger, service: string): string[] {
  const areas = (stateOf(ledger, 'service', service)?.brings ?? []).flatMap((one) => named('area', one) ?? []);
  const off = areas.filter((area) => tallyOf(ledger, area).off > 0);
  return off.length > 0
    ? [`still off: ${off.map((area) => `${tallyOf(ledger, area).off} of ${area}`).join(', ')}`]
    : [];
}
/** What belongs to no area, as the battery's earth does, comes off first and goes on last. */
export function beforeTheRest(ledger: Ledger, connection: string): string[] {
  const all = [...every(ledger, 'connection')];
  const c = stateOf(ledger, 'connection', connection);
  // Declared with no area where no other has one, it may belong anywhere.
  if (!c || !isOfTheCar(c) || (c.declared && !all.some((one) => one.declared?.area !== undefined))) return [];
  const parted = all.filter((one) => one.parted && one.connection !== connection).map((one) => one.connection);
  const open = [...openBeforeIt(ledger), ...(parted.length > 0 ? [`parted: ${parted.join(', ')}`] : [])];
  return open.length > 0 ? [`${connection} goes on last; still ${open.join(', ')}`] : [];
}
