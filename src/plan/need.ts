// What must come off for services: the least set, what more it is when something is off already, in what order it comes
// off, and which other services are nearly free meanwhile. Counts places of the plan; what a job has done it is told.
import { areaOf, named, type Subject, sortOf } from '../job/subjects.ts';
import type { Plan } from './plan.ts';
import { areaOfUnit, inStripOrder } from './strip-order.ts';
import { holeOfUnit, nothing, type Unit, type Works } from './works.ts';

type Service = Plan['services'][number];
/** What a service is about: all in its areas, and what it names besides. */
export const targetsOf = ({ areas, also }: Pick<Service, 'areas' | 'also'>): Subject[] => [
  ...areas.map((area) => `area:${area}`),
  ...(also ?? []),
];

/** What services are about, and a plan that has them. */
const servicesNamed = (plan: Plan, names: readonly string[]): Service[] =>
  plan.services.filter((s) => names.includes(s.service));

/**
 * The least set that must come off so that `targets` are off: with everything in front of them, near and far. A part
 * comes away with the last of its fasteners, and what is in front of the part must be off for that.
 */
export function mustComeOff(works: Works, targets: Iterable<Subject>): Set<Unit> {
  const off = new Set<Unit>();
  const seen = new Set<Subject>();
  const queue = [...targets];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    if (seen.has(at)) continue;
    seen.add(at);
    queue.push(...(works.fronts.get(at) ?? nothing));
    const area = named('area', at);
    if (area !== undefined) queue.push(...(works.holes.get(area) ?? nothing));
    queue.push(...(works.heldBy.get(at) ?? nothing));
    const hole = holeOfUnit(at);
    if (!isUnit(works, at)) continue;
    off.add(at);
    if (hole === undefined) continue;
    queue.push(...(works.fronts.get(`area:${areaOf(hole)}`) ?? nothing));
    for (const part of works.partsAt.get(at) ?? nothing) {
      if ((works.heldBy.get(part) ?? nothing).every((one) => off.has(one))) queue.push(part);
    }
  }
  return off;
}

const isUnit = (works: Works, subject: Subject): boolean =>
  ['part', 'connection'].includes(sortOf(subject)) ||
  works.holes.get(areaOf(holeOfUnit(subject) ?? '/'))?.includes(subject) === true;

export const neededFor = (works: Works, services: readonly Service[]): Set<Unit> =>
  mustComeOff(works, services.flatMap(targetsOf));

const without = (all: ReadonlySet<Unit>, some: ReadonlySet<Unit>): Set<Unit> =>
  new Set([...all].filter((unit) => !some.has(unit)));

export type Count = { fasteners: number; slack: number; parts: number; connections: number };

/** Fasteners that come out, those only slackened, parts and connections. */
export function countOf(works: Works, units: Iterable<Unit>): Count {
  const count: Count = { fasteners: 0, slack: 0, parts: 0, connections: 0 };
  for (const unit of units) {
    const sort = sortOf(unit);
    if (sort === 'hole') count[works.slackOnly.has(unit) ? 'slack' : 'fasteners'] += 1;
    else if (sort === 'part') count.parts += 1;
    else count.connections += 1;
  }
  return count;
}

/** One go at the car: the holes of one area with the parts that come away, or a part or a connection by itself. */
export type Step = { at: Subject; units: readonly Unit[] };

export type Need = {
  /** All that must come off for the services together, off already or not. */
  whole: ReadonlySet<Unit>;
  /** Of that, what is not off yet. */
  more: ReadonlySet<Unit>;
  /** Off, and needed by none of the services. */
  needless: ReadonlySet<Unit>;
  /** `more`, in order; check rotations stand where they fall on the way back. */
  order: readonly Step[];
  /** All that will be off then, in the order in which it would have come off: the way back is its reverse. */
  back: readonly Step[];
  /** Each service alone, alone with what is off, and what it adds to all the others chosen. */
  each: readonly { service: string; alone: Count; more: Count; besides: Count }[];
  /** Services not chosen, the nearly free ones first. */
  nearby: readonly { service: string; more: Count }[];
};

/** @param off what is off already, such as `mustComeOff` of areas that are */
export function needOf(works: Works, plan: Plan, chosen: readonly string[], off: ReadonlySet<Unit>): Need {
  const services = servicesNamed(plan, chosen);
  const whole = neededFor(works, services);
  const more = without(whole, off);
  const open = new Set([...whole, ...off]);
  return {
    whole,
    more,
    needless: without(off, whole),
    order: stepsOf(works, more, services),
    back: stepsOf(works, open, services),
    each: services.map((one) => {
      const alone = neededFor(works, [one]);
      const others = neededFor(
        works,
        services.filter((s) => s !== one),
      );
      const more = without(alone, off);
      return {
        service: one.service,
        alone: countOf(works, alone),
        more: countOf(works, more),
        besides: countOf(works, without(more, others)),
      };
    }),
    nearby: plan.services
      .filter((one) => !chosen.includes(one.service))
      .map((one) => ({ service: one.service, more: countOf(works, without(neededFor(works, [one]), open)) }))
      .sort((one, other) => effort(one.more) - effort(other.more)),
  };
}

/** For ranking only: a fastener is a fastener, and a plug or a part in the hand is about as much. */
export const effort = ({ fasteners, slack, parts, connections }: Count): number =>
  fasteners + slack + parts + connections;

/** A plan that was found sound goes round nowhere, so there is always an order. */
export function stepsOf(works: Works, units: ReadonlySet<Unit>, services: readonly Service[]): Step[] {
  const found = inStripOrder(works, units, ranksOf(works, services));
  return 'order' in found ? inGoes(works, found.order) : [];
}

/** Areas as the services name them; what has no hole comes just before what it is in front of, or first. */
function ranksOf(works: Works, services: readonly Service[]): (unit: Unit) => number {
  const areas = [...new Set([...services.flatMap((s) => s.areas), ...works.holes.keys()])];
  const rankOfArea = new Map(areas.map((area, i) => [area, i]));
  const ranks = new Map<Unit, number>();
  for (const unit of works.units) {
    const area = areaOfUnit(works, unit);
    const behind = works.behind.get(unit) ?? nothing;
    const first = Math.min(
      ...behind.map((one) => rankOfArea.get(named('area', one) ?? areaOfUnit(works, one) ?? '') ?? -1),
    );
    ranks.set(unit, area !== undefined ? (rankOfArea.get(area) ?? 0) : behind.length === 0 ? -1 : first - 0.5);
  }
  return (unit) => ranks.get(unit) ?? 0;
}

function inGoes(works: Works, order: readonly Subject[]): Step[] {
  const steps: { at: Subject; units: Unit[] }[] = [];
  for (const one of order) {
    const area = sortOf(one) === 'rotation' ? undefined : areaOfUnit(works, one);
    const at = area === undefined ? one : `area:${area}`;
    const last = steps.at(-1);
    if (last?.at === at) last.units.push(one);
    else steps.push({ at, units: sortOf(one) === 'rotation' ? [] : [one] });
  }
  return steps;
}
