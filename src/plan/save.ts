// A job as the plan of the next such vehicle: what was declared on it, with what the work has shown since. Trays, people,
// dates and the identity of this vehicle stay behind.
import { wantsOf } from '../job/closed.ts';
import type { Entry } from '../job/entry.ts';
import { every, isStruck, type Ledger, lineAt, stateOf } from '../job/ledger.ts';
import { edgesOf } from '../job/order.ts';
import type { AreaState, HoleState } from '../job/states.ts';
import { areaOf, named, nameOf, type Subject, sortOf, withinArea } from '../job/subjects.ts';
import { broughtBy } from './brought.ts';
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

/** Every declaration of the job, corrected by what was found, with edges only between what is there. */
function declaredOn(ledger: Ledger): Declaration[] {
  const areas = [...every(ledger, 'area')].filter((a) => a.holes.length > 0);
  const said: Declaration[] = [
    ...areas.map((a): Declaration => ({ kind: 'area-declared', ...areaSaid(ledger, a) })),
    ...areas.flatMap((a) => inNumbers(a.holes).map((hole) => holeSaid(ledger, hole))),
    ...[...every(ledger, 'part')].map((p): Declaration => {
      const renewed = p.declared?.renew || p.replacedAt > 0;
      return { kind: 'part-declared', part: p.part, heldBy: p.declared?.heldBy ?? [], ...(renewed && { renew: true }) };
    }),
    ...[...every(ledger, 'circuit')].map(
      (c): Declaration => ({ kind: 'circuit-declared', circuit: c.circuit, fluid: c.fluid ?? c.circuit }),
    ),
    ...[...every(ledger, 'connection')].map(
      (c): Declaration => ({ kind: 'connection-declared', ...(c.declared ?? { connection: c.connection }) }),
    ),
    ...[...every(ledger, 'face')].flatMap((f): Declaration[] =>
      f.declared ? [{ kind: 'face-declared', ...f.declared }] : [],
    ),
    ...[...every(ledger, 'drive')].flatMap((d): Declaration[] =>
      d.declared ? [{ kind: 'drive-declared', ...d.declared }] : [],
    ),
    ...[...every(ledger, 'temporary')].map(
      ({ temporary, sort, at }): Declaration => ({ kind: 'temporary-declared', temporary, sort, ...(at && { at }) }),
    ),
    ...[...every(ledger, 'product')].map(({ label }): Declaration => ({ kind: 'product-declared', label })),
  ];
  const there = new Set(said.flatMap((one) => subjectOf(one) ?? []));
  const isThere = (subject: Subject) =>
    there.has(sortOf(subject) === 'rotation' ? `drive:${nameOf(subject)}` : subject);
  const edges = edgesOf(ledger)
    .filter((e) => isThere(e.front) && isThere(e.behind))
    .map(({ n: _, ...edge }): Declaration => ({ kind: 'behind-declared', ...edge, from: 'plan' }));
  return [...said.map((one) => withoutLostPlace(one, isThere)), ...edges];
}

/** Where a temporary was put that is nothing of the vehicle (a tray, the vehicle's outside) is not said. */
function withoutLostPlace(one: Declaration, isThere: (subject: Subject) => boolean): Declaration {
  if (one.kind !== 'temporary-declared' || !one.at || one.at === 'vehicle' || isThere(one.at)) return one;
  const { at: _, ...rest } = one;
  return rest;
}

function areaSaid(ledger: Ledger, a: AreaState): Omit<Extract<Declaration, { kind: 'area-declared' }>, 'kind'> {
  const { planned: _, ...declared } = a.declared ?? { area: a.area };
  const order = declared.order ?? orderDone(ledger, a);
  return { ...declared, ...(order && { order }) };
}

/** O3: the order in which its last pass was made, where it was made whole and was not just as numbered. */
function orderDone(ledger: Ledger, a: AreaState): string[] | undefined {
  const passes = a.holes.map((hole) => ({ hole, n: stateOf(ledger, 'hole', hole)?.called.passes.at(-1)?.n ?? 0 }));
  if (passes.length < 3 || passes.some(({ n }) => n === 0)) return undefined;
  if (new Set(passes.map(({ n }) => n)).size < passes.length) return undefined;
  const done = passes.toSorted((one, other) => one.n - other.n).map(({ hole }) => withinArea(hole));
  const numbered = inNumbers(a.holes).map(withinArea);
  return done.every((number, i) => number === numbered[i]) ? undefined : done;
}

const inNumbers = (holes: readonly string[]): string[] =>
  holes.toSorted((one, other) => Number.parseInt(withinArea(one), 10) - Number.parseInt(withinArea(other), 10));

function holeSaid(ledger: Ledger, hole: string): Declaration {
  const h = stateOf(ledger, 'hole', hole) as HoleState;
  const { wants: _, ...declared } = h.declared ?? { hole };
  // A wrong one came out and nobody said what belongs there: what was put in its place is the nearest there is.
  const wants = wantsOf(ledger, h) ?? h.called.occupant?.spec;
  const planned = stateOf(ledger, 'area', areaOf(hole))?.declared?.planned === true;
  const slackOnly = declared.slackOnly || (!planned && isOnlySlackened(h));
  return { kind: 'hole-declared', ...declared, ...(wants && { wants }), ...(slackOnly && { slackOnly: true }) };
}
const isOnlySlackened = ({ called }: HoleState): boolean =>
  called.levels.some((one) => one.level === 'slack') &&
  !called.levels.some((one) => one.level === 'off' || one.level === 'left');

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
