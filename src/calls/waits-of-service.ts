// What of a service still stands open when it is called done: its places, what it brought, and the run and the road it wants.
import { areaOfPlace } from '../job/area-of-place.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { notRenewedOf } from '../job/never-done.ts';
import { notRunSince } from '../job/not-run.ts';
import type { OpenPoint, OpenPointCode } from '../job/open-point.ts';
import { openPoints } from '../job/open-points.ts';
import { brakeRoles, roadRoles, roleOf } from '../job/roles.ts';
import type { Said } from '../job/said.ts';
import type { ServiceState } from '../job/states.ts';
import { holesSaid, named, type Subject, subjectText } from '../job/subjects.ts';
import { stillToDo } from '../plan/still-to-do.ts';
import type { Desk } from './desk.ts';
import type { Once } from './row.ts';

/** Of the bench, the books and the whole job, and of no service. */
const ofTheJob: ReadonlySet<OpenPointCode> = new Set([
  'service-open',
  'tools',
  'tray-not-empty',
  'tray-uncounted',
  'scrap-differs',
  'box-differs',
  'box-left',
  'odometer',
  'waiting',
  'misfit',
  'books',
]);
const roles: Partial<Record<OpenPointCode, ReadonlySet<string>>> = { 'road-test': roadRoles, pedal: brakeRoles };

/** One that no plan describes brought nothing: all that is open may be its own, where it is the only one. */
function isItsOwn(
  ledger: Ledger,
  { brings = [] }: ServiceState,
  { code, at }: Pick<OpenPoint, 'code' | 'at'>,
): boolean {
  if (brings.length === 0) return [...every(ledger, 'service')].filter((s) => s.state !== 'dropped').length === 1;
  const wanted = roles[code];
  const area = areaOfPlace(ledger, at);
  if (!wanted) return brings.includes(at) || (area !== undefined && brings.includes(`area:${area}`));
  return brings.some((one) => {
    const role = roleOf(ledger, named('area', one) ?? '');
    return role !== undefined && wanted.has(role);
  });
}

/** One for each of many holes is told by their number. */
const counted: Partial<Record<OpenPointCode, string>> = {
  'hole-open': 'open',
  'second-look': 'to be looked at again',
  'holes-not-counted': 'planned and never called',
};
const isCounted = ({ code, at }: OpenPoint): boolean => named('hole', at) !== undefined && counted[code] !== undefined;
function holesWords(open: readonly OpenPoint[], code: OpenPointCode): string[] {
  const many = open.filter((one) => one.code === code && isCounted(one)).length;
  return many > 0 ? [`${holesSaid(many)} ${counted[code]}`] : [];
}
const pointWords = ({ at, because }: OpenPoint): string =>
  at === 'vehicle' ? because : `${subjectText(at)} ${because}`;

/** Of what its plan takes off and renews: what nobody has called. Where another service wants a place too, it is told of one. */
function neverDone(desk: Desk, s: ServiceState): string[] {
  const { ledger, now } = desk;
  const notRenewed = notRenewedOf(ledger, s);
  const steps = stillToDo(ledger, now).services.find((one) => one.service === s.service)?.takeOff ?? [];
  const parts = new Set(notRenewed.map((part): Subject => `part:${part}`));
  const places = steps.flatMap(({ at }) => (parts.has(at) ? [] : [subjectText(at)]));
  return [
    ...(notRenewed.length > 0 ? [`not renewed: ${shortList(notRenewed)}`] : []),
    ...(places.length > 0 ? [`never taken off: ${shortList(places)}`] : []),
  ];
}
const mostNamed = 3;
const shortList = (names: readonly string[]): string =>
  names.length > mostNamed
    ? `${names.slice(0, mostNamed).join(', ')} and ${names.length - mostNamed} more`
    : names.join(', ');

/** X1: called done it is asked for no more, and what it wants yet would be nobody's. */
export function askedOnServiceDone(desk: Desk, { service }: Said): Once | undefined {
  const { ledger, now } = desk;
  const s = typeof service === 'string' ? stateOf(ledger, 'service', service) : undefined;
  if (!s) return undefined;
  const open = openPoints(ledger, now).filter((one) => !ofTheJob.has(one.code) && isItsOwn(ledger, s, one));
  const run = notRunSince(ledger);
  const isToRun = run !== undefined && isItsOwn(ledger, s, { code: 'circuit-unchecked', at: run.at });
  const ofPlaces = open.filter((one) => !isCounted(one));
  const isOfTheCar = ({ at }: OpenPoint): boolean => at === 'vehicle';
  const said = [
    ...neverDone(desk, s),
    ...holesWords(open, 'hole-open'),
    ...(isToRun ? ['the engine has not run since'] : []),
    ...[...ofPlaces.filter(isOfTheCar), ...ofPlaces.filter((one) => !isOfTheCar(one))].map(pointWords),
    ...holesWords(open, 'second-look'),
    ...holesWords(open, 'holes-not-counted'),
  ];
  if (said.length === 0) return undefined;
  const more = said.length > mostNamed ? ` and ${said.length - mostNamed} more` : '';
  return {
    because: `of ${s.service} there waits: ${said.slice(0, mostNamed).join('; ')}${more}`,
    instead: 'it is done with the last of them',
    by: 'to-leaving',
    again: `calls ${s.service} done`,
    short: 'some of it waits',
  };
}
