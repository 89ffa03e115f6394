// In what order a set of things comes off so that nothing is asked for before what is in front of it, and where an order
// that goes round does so. An area comes off in one go where that can be.
import { areaOf, named, type Subject, sortOf } from '../job/subjects.ts';
import { holeOfUnit, nothing, type Unit, type Works } from './works.ts';

/** A unit, or a mark on the way: "reach:area:X" (its fronts are off), "clear:area:X" (it is off), "rotation:D". */
type Node = string;
const isUnit = (node: Node): boolean => /^(hole|part|connection):/.test(node);

/**
 * @param units what is to come off
 * @returns the units in order, check rotations as "rotation:NAME" where they fall on the way back; or what goes round
 */
export function inStripOrder(
  works: Works,
  units: ReadonlySet<Unit>,
  rankOf: (unit: Unit) => number,
): { order: Subject[] } | { round: Subject[] } {
  const after = waysOf(works, units);
  const waits = new Map<Node, number>([...after.keys()].map((node) => [node, 0]));
  for (const next of after.values()) for (const node of next) waits.set(node, (waits.get(node) ?? 0) + 1);
  const ready = new Set([...waits].filter(([, n]) => n === 0).map(([node]) => node));
  const order: Subject[] = [];
  let left = waits.size;
  let facing: string | undefined;
  const settle = (node: Node): void => {
    ready.delete(node);
    left -= 1;
    if (isUnit(node) || sortOf(node) === 'rotation') order.push(node);
    for (const next of after.get(node) ?? nothing) {
      const n = (waits.get(next) ?? 0) - 1;
      waits.set(next, n);
      if (n > 0) continue;
      if (isUnit(next)) ready.add(next);
      else settle(next);
    }
  };
  for (const mark of [...ready].filter((node) => !isUnit(node))) settle(mark);
  while (ready.size > 0) {
    const next = nearest(works, ready, facing, rankOf);
    facing = areaOfUnit(works, next) ?? facing;
    settle(next);
  }
  return left === 0 ? { order } : { round: roundIn(after, waits) };
}

/** An order that goes round through holes and parts of areas, which no two lines of it show. */
export function roundThroughPlaces(works: Works): Subject[] | undefined {
  const found = inStripOrder(works, tellingUnits(works), () => 0);
  return 'round' in found ? found.round : undefined;
}

/** Holes of an area that nothing tells apart are in the same rounds: one of them is enough, and one of each part. */
function tellingUnits(works: Works): Set<Unit> {
  const telling = new Set<Unit>(works.units.filter((unit) => holeOfUnit(unit) === undefined));
  for (const [hole] of works.holes.values()) if (hole !== undefined) telling.add(hole);
  for (const holes of works.heldBy.values()) {
    const [first] = holes;
    if (first === undefined) continue;
    const inOneArea = holes.every((hole) => areaOf(hole) === areaOf(first));
    for (const hole of inOneArea ? [first] : holes) telling.add(hole);
  }
  for (const ways of [works.behind, works.fronts]) {
    for (const subject of ways.keys()) if (holeOfUnit(subject) !== undefined) telling.add(subject);
  }
  return telling;
}

/** The area a hole is in, or which carries a part. */
export function areaOfUnit(works: Works, unit: Unit): string | undefined {
  const hole = holeOfUnit(unit);
  if (hole !== undefined) return areaOf(hole);
  const [first] = works.heldBy.get(unit) ?? nothing;
  const area = first === undefined ? undefined : areaOf(holeOfUnit(first) as string);
  return area !== undefined && works.carried.get(area)?.includes(unit) ? area : undefined;
}

function nearest(
  works: Works,
  ready: ReadonlySet<Unit>,
  facing: string | undefined,
  rankOf: (unit: Unit) => number,
): Unit {
  let best: Unit | undefined;
  let bestRank = Number.POSITIVE_INFINITY;
  for (const unit of ready) {
    // What the open area still holds goes before anything else.
    const rank = facing !== undefined && areaOfUnit(works, unit) === facing ? -2 : rankOf(unit);
    if (best !== undefined && rank >= bestRank) continue;
    best = unit;
    bestRank = rank;
  }
  return best as Unit;
}

/** Node → what may come only after it. */
function waysOf(works: Works, units: ReadonlySet<Unit>): Map<Node, Node[]> {
  const inPlanOrder = works.units.filter((unit) => units.has(unit));
  const after = new Map<Node, Node[]>(inPlanOrder.map((unit) => [unit, []]));
  const way = (first: Node, then: Node): void => {
    if (!after.has(then)) after.set(then, []);
    const there = after.get(first);
    if (there) there.push(then);
    else after.set(first, [then]);
  };
  const isThere = (subject: Subject) => !isUnit(subject) || units.has(subject);
  const openOf = (subject: Subject): Node => (sortOf(subject) === 'area' ? `reach:${subject}` : subject);
  const clearOf = (subject: Subject): Node => (sortOf(subject) === 'area' ? `clear:${subject}` : subject);
  const opened = new Set<string>();
  for (const unit of inPlanOrder) {
    const area = areaOfUnit(works, unit);
    if (area !== undefined) {
      opened.add(area);
      if (holeOfUnit(unit) !== undefined) way(`reach:area:${area}`, unit);
      way(unit, `clear:area:${area}`);
    }
    for (const hole of works.heldBy.get(unit) ?? nothing) if (units.has(hole)) way(hole, unit);
  }
  for (const [front, behinds] of works.behind) {
    if (!isThere(front)) continue;
    for (const behind of behinds) if (isThere(behind)) way(clearOf(front), openOf(behind));
  }
  for (const [drive, { areas, parts }] of works.drives) {
    const rotation = `rotation:${drive}`;
    if (!areas.some((area) => opened.has(area)) && !parts.some((part) => units.has(part))) {
      after.delete(rotation);
      for (const [node, next] of after)
        after.set(
          node,
          next.filter((one) => one !== rotation),
        );
      continue;
    }
    const before = inFrontOf(works, rotation);
    // What closes only after the check can't be what the check waits for.
    for (const area of areas) if (opened.has(area) && !before.has(`area:${area}`)) way(rotation, `reach:area:${area}`);
    for (const part of parts) if (units.has(part) && !before.has(part)) way(rotation, part);
  }
  return after;
}

/** All that is in front of a subject, near and far, with the areas of it. */
function inFrontOf(works: Works, subject: Subject): Set<Subject> {
  const seen = new Set<Subject>();
  const queue = [subject];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    const area = named('area', at) ?? areaOfUnit(works, at);
    const inside =
      named('area', at) === undefined
        ? nothing
        : [...(works.holes.get(area ?? '') ?? nothing), ...(works.carried.get(area ?? '') ?? nothing)];
    const whole = area !== undefined && named('hole', at) !== undefined ? [`area:${area}`] : nothing;
    for (const next of [
      ...(works.fronts.get(at) ?? nothing),
      ...inside,
      ...whole,
      ...(works.heldBy.get(at) ?? nothing),
    ]) {
      if (seen.has(next)) continue;
      seen.add(next);
      queue.push(next);
    }
  }
  return seen;
}

/** One round among nodes that never became free, told by what a person would name. */
function roundIn(after: ReadonlyMap<Node, readonly Node[]>, waits: ReadonlyMap<Node, number>): Subject[] {
  const stuck = (node: Node) => (waits.get(node) ?? 0) > 0;
  const before = new Map<Node, Node>();
  for (const [node, next] of after) if (stuck(node)) for (const one of next) if (stuck(one)) before.set(one, node);
  let at = [...before.keys()][0] as Node;
  const path: Node[] = [];
  while (!path.includes(at)) {
    path.push(at);
    at = before.get(at) as Node;
  }
  const round = [...path.slice(path.indexOf(at)), at].reverse();
  const spoken = round.map((node) => node.replace(/^(reach|clear):/, ''));
  return spoken.filter((subject, i) => subject !== spoken[i - 1]);
}
