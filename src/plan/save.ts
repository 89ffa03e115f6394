// A job as the plan of the next such vehicle: what was declared on it, with what the work has shown since. Trays, people,
// dates and the identity of this vehicle stay behind.
import { every, isStruck, type Ledger, lineAt, stateOf } from '../job/ledger.ts';
import type { ServiceState } from '../job/states.ts';
import { areaOf, named, type Subject, sortOf } from '../job/subjects.ts';
import { broughtBy } from './brought.ts';
import { declaredOn } from './declared-on-job.ts';
import { type Declaration, subjectOf } from './declared-whole.ts';
import { mustComeOff } from './need.ts';
import { type Plan, planVersion } from './plan.ts';
import { isBoughtAs } from './still-to-do.ts';
import { worksOf } from './works.ts';
import { writtenFrom } from './written.ts';

type Service = Plan['services'][number];

/** @param name of the plan; without one the services are its name */
export function planFromJob(ledger: Ledger, name?: string): Plan {
  const declarations = declaredOn(ledger);
  const ordered = kept(ledger).map((s) => s.service);
  const own = name ?? (ordered.length > 0 ? ordered.join(' and ').slice(0, 60).trim() : 'saved plan');
  const newParts = boughtFor(ledger, declarations);
  const cautions = cautionsSaid(ledger, new Set(declarations.flatMap((one) => subjectOf(one) ?? [])));
  const plan: Plan = {
    countback: 'plan',
    version: planVersion,
    name: own,
    vehicle: 'saved from a job; write here what kind of vehicle it is for',
    notes: ["Torques come from the maker's manual of the vehicle on the bench."],
    ...(cautions.length > 0 && { cautions }),
    sources: [{ of: 'holes, heads, threads and lengths', from: 'as they were called on one vehicle' }],
    ...(newParts.length > 0 && { newParts }),
    services: (ordered.length > 0 ? ordered : [own]).map((service) => ({ service, areas: [] })),
    ...writtenFrom(declarations),
  };
  return withServices(plan, ledger, declarations);
}

/** As it was bought, for the services whose plans wanted it; bought for no plan, it is for all of them. */
function boughtFor(ledger: Ledger, declarations: readonly Declaration[]): NonNullable<Plan['newParts']> {
  const parts = new Set(declarations.flatMap((one) => (one.kind === 'part-declared' ? one.part : [])));
  const services = kept(ledger);
  return [...every(ledger, 'box')].map((box) => {
    const { name, sort, bought, spec, replaces } = box;
    const wanting = services.filter((s) => s.newParts?.some((one) => isBoughtAs(one, box))).map((s) => s.service);
    return {
      name,
      sort,
      quantity: Math.max(1, bought),
      ...(spec && { spec }),
      ...(replaces && parts.has(replaces) && { replaces }),
      ...(wanting.length > 0 && wanting.length < services.length && { services: wanting }),
    };
  });
}

const kept = (ledger: Ledger): ServiceState[] => [...every(ledger, 'service')].filter((s) => s.state !== 'dropped');

/** Where the work can hurt, as the plans that were taken said it. */
function cautionsSaid(ledger: Ledger, there: ReadonlySet<Subject>): NonNullable<Plan['cautions']> {
  const said = kept(ledger).flatMap((s) => s.cautions ?? []);
  return [...new Map(said.map((one) => [one.words, one])).values()].filter(
    ({ at }) => at === undefined || at === 'vehicle' || there.has(at),
  );
}

/**
 * A service has what its plan brought, or what was declared with it, and all that is in front of that. What no service
 * was said to need, and nothing is known to hide, is of those that no plan describes, or else of each: too much laid out
 * is nothing missed.
 */
function withServices(plan: Plan, ledger: Ledger, declarations: readonly Declaration[]): Plan {
  const byService = broughtWith(ledger);
  const claimed = new Set([...byService.values()].flat());
  const planned = new Set(kept(ledger).flatMap((s) => (s.brings ? s.service : [])));
  const exactly = new Set(kept(ledger).flatMap((s) => s.brings ?? []));
  const areAllPlanned = plan.services.every((s) => planned.has(s.service));
  const works = worksOf(plan);
  const all = declarations.flatMap((one) => subjectOf(one) ?? []);
  const loose = new Set(declarations.filter(belongsNowhere).flatMap((one) => subjectOf(one) ?? []));
  const isLoose = (subject: Subject) =>
    loose.has(subject) && !exactly.has(subject) && !works.behind.has(subject) && !works.fronts.has(subject);
  const services = plan.services.map(({ service }): Service => {
    const isFree = areAllPlanned || !planned.has(service);
    const own = all.filter((subject) => {
      if (byService.get(service)?.includes(subject)) return true;
      return planned.has(service) ? isFree && !claimed.has(subject) : !claimed.has(subject) || isLoose(subject);
    });
    const targets = own.filter((subject) => ['area', 'part', 'connection'].includes(sortOf(subject)));
    const units = mustComeOff(works, targets);
    const areas = new Set([...units].flatMap((unit) => named('hole', unit) ?? []).map(areaOf));
    const also = [...new Set([...own.filter((one) => sortOf(one) === 'temporary'), ...units])];
    const interval = stateOf(ledger, 'service', service)?.interval;
    return { ...serviceOf(plan, service, [...areas], also), ...(interval && { interval }) };
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

/** Service → what its plan brought; without a plan, what was declared on the line that ordered it. */
function broughtWith(ledger: Ledger): Map<string, Subject[]> {
  const found = new Map<string, Subject[]>();
  for (let n = 1; n <= ledger.lines.length; n++) {
    let service: string | undefined;
    for (const entry of isStruck(ledger, n) ? [] : (lineAt(ledger, n)?.entries ?? [])) {
      if (entry.kind === 'service-ordered') {
        service = entry.service;
        found.set(service, [...(found.get(service) ?? []), ...(entry.brings ?? [])]);
      } else if (service !== undefined) {
        const subject = subjectOf(entry as Declaration);
        if (subject !== undefined) found.get(service)?.push(subject);
      }
    }
  }
  return found;
}
