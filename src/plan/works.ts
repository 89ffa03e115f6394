// A plan as what can come off and what is in front of what: holes, parts and connections, with areas standing for all
// that is in them. Knows no services and no order; those are asked of it.
import { areaOf, type Hole, named, numberOf, type Subject } from '../job/subjects.ts';
import { type Declaration, declaredWhole } from './declared-whole.ts';
import type { Plan } from './plan.ts';

/** What comes off by itself: "hole:cam cover/7", "part:timing belt", "connection:battery earth". */
export type Unit = Subject;

export type Works = {
  /** Every unit, in the order of the plan. */
  readonly units: readonly Unit[];
  readonly slackOnly: ReadonlySet<Unit>;
  /** The holes of each area. */
  readonly holes: ReadonlyMap<string, readonly Unit[]>;
  /** The parts all of whose holes are in one area, by that area: they come away with it. */
  readonly carried: ReadonlyMap<string, readonly Unit[]>;
  /** The holes that hold a part. */
  readonly heldBy: ReadonlyMap<Unit, readonly Unit[]>;
  /** The parts a hole helps to hold. */
  readonly partsAt: ReadonlyMap<Unit, readonly Unit[]>;
  /** Front → what is behind it, and the other way round, as it is written. */
  readonly behind: ReadonlyMap<Subject, readonly Subject[]>;
  readonly fronts: ReadonlyMap<Subject, readonly Subject[]>;
  /** Areas and parts of a drive: opened, they ask for its check rotation. */
  readonly drives: ReadonlyMap<string, { areas: readonly string[]; parts: readonly string[] }>;
};

export const nothing: readonly never[] = [];
const unitOf = (hole: Hole): Unit => `hole:${hole}`;
export const holeOfUnit = (unit: Unit): Hole | undefined => named('hole', unit);

export const worksOf = (plan: Plan): Works => worksFrom(declaredWhole(plan));

/** @param declarations each thing once, areas before what is in them */
export function worksFrom(declarations: readonly Declaration[]): Works {
  const units: Unit[] = [];
  const slackOnly = new Set<Unit>();
  const holes = new Map<string, Unit[]>();
  const carried = new Map<string, Unit[]>();
  const heldBy = new Map<Unit, Unit[]>();
  const partsAt = new Map<Unit, Unit[]>();
  const behind = new Map<Subject, Subject[]>();
  const fronts = new Map<Subject, Subject[]>();
  const drives: [string, { areas: readonly string[]; parts: readonly string[] }][] = [];
  const orders = new Map<string, readonly string[] | undefined>();
  for (const one of declarations) {
    switch (one.kind) {
      case 'area-declared':
        orders.set(one.area, one.order);
        break;
      case 'hole-declared':
        add(holes, areaOf(one.hole), unitOf(one.hole));
        if (one.slackOnly) slackOnly.add(unitOf(one.hole));
        break;
      case 'part-declared': {
        const part = `part:${one.part}`;
        units.push(part);
        heldBy.set(part, one.heldBy.map(unitOf));
        for (const hole of one.heldBy) add(partsAt, unitOf(hole), part);
        const [area, ...others] = new Set(one.heldBy.map(areaOf));
        if (area !== undefined && others.length === 0) add(carried, area, part);
        break;
      }
      case 'connection-declared':
        units.push(`connection:${one.connection}`);
        break;
      case 'drive-declared':
        drives.push([one.drive, { areas: one.areas, parts: one.parts.map((part) => `part:${part}`) }]);
        break;
      case 'behind-declared':
        add(behind, one.front, one.behind);
        add(fronts, one.behind, one.front);
        break;
    }
  }
  for (const [area, some] of holes) inLooseningOrder(some, orders.get(area));
  return {
    units: [...[...holes.values()].flat(), ...units],
    slackOnly,
    holes,
    carried,
    heldBy,
    partsAt,
    behind,
    fronts,
    drives: new Map(drives),
  };
}

/** O3: loosened the other way round than tightened, without an order as numbered; what an order leaves out comes last. */
function inLooseningOrder(holes: Unit[], order: readonly string[] | undefined): void {
  const turn = new Map((order ?? []).map((number, i) => [number, -i]));
  const turnOf = (unit: Unit) => (order === undefined ? Number(numberOf(unit)) : (turn.get(numberOf(unit)) ?? 1));
  holes.sort((one, other) => turnOf(one) - turnOf(other));
}

function add<V>(to: Map<string, V[]>, key: string, value: V): void {
  const there = to.get(key);
  if (there) there.push(value);
  else to.set(key, [value]);
}
