// A job as the plan of the next such vehicle: what was declared on it, with what the work has shown since. Trays, people,
// dates and the identity of this vehicle stay behind.
import type { Entry } from '../job/entry.ts';
import { every, isStruck, type Ledger, lineAt } from '../job/ledger.ts';
import { areaOf, named, type Subject, sortOf } from '../job/subjects.ts';
import { broughtBy } from './brought.ts';
import { declaredOn } from './declared-on-job.ts';
import { type Declaration, subjectOf } from './declared-whole.ts';
import { mustComeOff } from './need.ts';
import { type Plan, planVersion } from './plan.ts';
import { worksOf } from './works.ts';
import { writtenFrom } from './written.ts';

type Service = Plan['services'][number];

/** @param name of the plan; without one the services are its name */
export function planFromJob(ledger: Ledger, name?: string): Plan {
  const declarations = declaredOn(ledger);
  const ordered = [...every(ledger, 'service')].filter((s) => s.state !== 'dropped').map((s) => s.service);
  const own = name ?? (ordered.length > 0 ? ordered.join(' and ').slice(0, 60).trim() : 'saved plan');
  const newParts = boughtFor(ledger, declarations);
  const plan: Plan = {
    countback: 'plan',
    version: planVersion,
    name: own,
    vehicle: 'saved from a job; write here what kind of vehicle it is for',
    notes: ["Torques come from the maker's manual of the vehicle on the bench."],
    sources: [{ of: 'holes, heads, threads and lengths', from: 'as they were called on one vehicle' }],
    ...(newParts.length > 0 && { newParts }),
    services: (ordered.length > 0 ? ordered : [own]).map((service) => ({ service, areas: [] })),
    ...writtenFrom(declarations),
  };
  return withServices(plan, ledger, declarations);
}

function boughtFor(ledger: Ledger, declarations: readonly Declaration[]): NonNullable<Plan['newParts']> {
  const parts = new Set(declarations.flatMap((one) => (one.kind === 'part-declared' ? one.part : [])));
  return [...every(ledger, 'box')].map(({ name, sort, bought, spec, replaces }) => ({
    name,
    sort,
    quantity: Math.max(1, bought),
    ...(spec && { spec }),
    ...(replaces && parts.has(replaces) && { replaces }),
  }));
}

/**
 * A service has what was declared with it and all that is in front of that. What no service was said to need, and
 * nothing is known to hide, is given to each: too much laid out is nothing missed.
 */
function withServices(plan: Plan, ledger: Ledger, declarations: readonly Declaration[]): Plan {
  const byService = declaredWith(ledger);
  const claimed = new Set([...byService.values()].flat());
  const works = worksOf(plan);
  const all = declarations.flatMap((one) => subjectOf(one) ?? []);
  const loose = new Set(declarations.filter(belongsNowhere).flatMap((one) => subjectOf(one) ?? []));
  const isLoose = (subject: Subject) => loose.has(subject) && !works.behind.has(subject) && !works.fronts.has(subject);
  const services = plan.services.map(({ service }): Service => {
    const own = all.filter(
      (subject) => byService.get(service)?.includes(subject) || !claimed.has(subject) || isLoose(subject),
    );
    const targets = own.filter((subject) => ['area', 'part', 'connection'].includes(sortOf(subject)));
    const units = mustComeOff(works, targets);
    const areas = new Set([...units].flatMap((unit) => named('hole', unit) ?? []).map(areaOf));
    const also = [...new Set([...own.filter((one) => sortOf(one) === 'temporary'), ...units])];
    return serviceOf(plan, service, [...areas], also);
  });
  return withAllBrought({ ...plan, services }, all);
}

function belongsNowhere(one: Declaration): boolean {
  if (one.kind === 'part-declared') return one.heldBy.length === 0;
  if (one.kind === 'connection-declared') return one.area === undefined;
  return one.kind === 'temporary-declared' && one.at === undefined;
}

/** What its areas bring of themselves is not said again. */
function serviceOf(plan: Plan, service: string, areas: readonly string[], also: readonly Subject[]): Service {
  const named = plan.areas.map((a) => a.area).filter((area) => areas.includes(area));
  const bare: Plan = { ...plan, services: [{ service, areas: named }] };
  const brought = new Set(broughtBy(bare, [service]).flatMap((one) => subjectOf(one) ?? []));
  const more = also.filter((subject) => sortOf(subject) !== 'hole' && !brought.has(subject));
  return { service, areas: named, ...(more.length > 0 && { also: more }) };
}

function withAllBrought(plan: Plan, all: readonly Subject[]): Plan {
  const services = plan.services.map((s) => s.service);
  const brought = new Set(broughtBy(plan, services).flatMap((one) => subjectOf(one) ?? []));
  const lost = all.filter((subject) => !brought.has(subject) && sortOf(subject) !== 'hole');
  if (lost.length === 0) return plan;
  const [first, ...rest] = plan.services as [Service, ...Service[]];
  const areas = [...first.areas, ...lost.flatMap((one) => named('area', one) ?? [])];
  const also = [...(first.also ?? []), ...lost.filter((one) => sortOf(one) !== 'area')];
  return { ...plan, services: [{ ...first, areas, ...(also.length > 0 && { also }) }, ...rest] };
}

/** Service → the subjects declared on the line that ordered it. */
function declaredWith(ledger: Ledger): Map<string, Subject[]> {
  const found = new Map<string, Subject[]>();
  for (let n = 1; n <= ledger.lines.length; n++) {
    const line = lineAt(ledger, n);
    const [first, ...rest] = line?.entries ?? [];
    if (first?.kind !== 'service-ordered' || isStruck(ledger, n)) continue;
    const subjects = rest.flatMap((one) => subjectOf(one as Declaration & Entry) ?? []);
    found.set(first.service, [...(found.get(first.service) ?? []), ...subjects]);
  }
  return found;
}
