// Small random plans and the plainest reading of what "behind" asks: by trying every subset, and by looking at every
// pair. Shares no code with src/plan but the shape of a plan.
import type { Plan } from '../../src/plan/plan.ts';

/** The same numbers for the same seed (a linear congruence; constants from Knuth's MMIX, cut to 31 bits). */
export function chance(seed: number): (below: number) => number {
  let state = BigInt(seed) * 2_654_435_761n + 1n;
  return (below) => {
    state = (state * 6_364_136_223_846_793_005n + 1_442_695_040_888_963_407n) % 2n ** 64n;
    return Number((state >> 33n) % BigInt(below));
  };
}

/** At most ten things that come off, and edges between places of every sort. */
export function smallPlan(seed: number): Plan {
  const upTo = chance(seed);
  const areas = Array.from({ length: 2 + upTo(3) }, (_, i) => ({ area: `a${i}`, count: 1 + upTo(2) }));
  const holes = areas.flatMap(({ area, count }) => Array.from({ length: count }, (_, i) => `${area}/${i + 1}`));
  const parts = Array.from({ length: upTo(3) }, (_, i) => {
    const held = upTo(4) === 0 ? [] : holes.filter(() => upTo(3) === 0);
    return { part: `p${i}`, held };
  });
  const connections = Array.from({ length: Math.min(upTo(3), 10 - holes.length - parts.length) }, (_, i) => `c${i}`);
  const subjects = shuffled(
    [
      ...areas.map((a) => `area:${a.area}`),
      ...holes.filter(() => upTo(3) === 0).map((hole) => `hole:${hole}`),
      ...parts.map((p) => `part:${p.part}`),
      ...connections.map((c) => `connection:${c}`),
    ],
    upTo,
  );
  const behind = subjects.flatMap((front, i) => {
    const later = subjects.slice(i + 1).filter(() => upTo(4) === 0);
    return later.length > 0 ? [{ front, behind: later }] : [];
  });
  const also = [...parts.map((p) => `part:${p.part}`), ...connections.map((c) => `connection:${c}`)];
  const some = { areas: areas.map((a) => a.area).filter(() => upTo(3) === 0), also: also.filter(() => upTo(3) === 0) };
  return {
    countback: 'plan',
    version: 1,
    name: `small ${seed}`,
    vehicle: 'none',
    services: [
      { service: 'some', ...some },
      { service: 'other', areas: areas.map((a) => a.area).filter(() => upTo(3) === 0) },
      { service: 'all', areas: areas.map((a) => a.area), also },
    ],
    areas: areas.map(({ area, count }) => ({ area, holes: [{ numbers: `1-${count}` }] })),
    parts: parts.map(({ part, held }) => ({ part, heldBy: heldIn(held) })),
    connections: connections.map((connection) => ({ connection })),
    behind,
  };
}
const heldIn = (holes: readonly string[]): Record<string, string> =>
  Object.fromEntries(
    [...Map.groupBy(holes, (hole) => hole.split('/')[0] as string)].map(([area, all]) => [
      area,
      all.map((hole) => hole.split('/')[1]).join(' '),
    ]),
  );
function shuffled<T>(all: readonly T[], upTo: (below: number) => number): T[] {
  const left = [...all];
  return all.map(() => left.splice(upTo(left.length), 1)[0] as T);
}

export type Plain = {
  units: string[];
  held: [part: string, holes: string[]][];
  edges: [front: string, behind: string][];
};

export function plainly(plan: Plan): Plain {
  const holes = plan.areas.flatMap(({ area, holes: groups }) => {
    const [, last] = /^1-(\d)$/.exec(groups[0]?.numbers ?? '') ?? [];
    return Array.from({ length: Number(last) }, (_, i) => `hole:${area}/${i + 1}`);
  });
  const held = (plan.parts ?? []).map(({ part, heldBy }): [string, string[]] => [
    `part:${part}`,
    Object.entries(heldBy ?? {}).flatMap(([area, n]) => n.split(' ').map((number) => `hole:${area}/${number}`)),
  ]);
  const connections = (plan.connections ?? []).map((c) => `connection:${c.connection}`);
  const edges = (plan.behind ?? []).flatMap(({ front, behind }) => behind.map((one): [string, string] => [front, one]));
  return { units: [...holes, ...held.map(([part]) => part), ...connections], held, edges };
}
const isIn = (hole: string, area: string): boolean => hole.startsWith(`hole:${area.slice('area:'.length)}/`);

/** What is asked to be off when this is: an area is its holes and the parts that only they hold. */
function allOf({ units, held }: Plain, subject: string): string[] {
  if (!subject.startsWith('area:')) return [subject];
  const holes = units.filter((unit) => isIn(unit, subject));
  const parts = held.filter(([, by]) => by.length > 0 && by.every((hole) => isIn(hole, subject)));
  return [...holes, ...parts.map(([part]) => part)];
}
/** What can't come off before the fronts of this are off: of an area, its fasteners. */
const reachedBy = (plain: Plain, subject: string): string[] =>
  subject.startsWith('area:') ? plain.units.filter((unit) => isIn(unit, subject)) : [subject];

/** The smallest of all subsets that hold the targets and leave nothing in front of what is off. */
export function leastByTrying(plain: Plain, targets: readonly string[]): { least: Set<string>; only: boolean } {
  const { units, held, edges } = plain;
  const bits = new Map(units.map((unit, i) => [unit, 1 << i]));
  const maskOf = (all: readonly string[]) => all.reduce((mask, unit) => mask | (bits.get(unit) as number), 0);
  const wanted = maskOf(targets.flatMap((target) => allOf(plain, target)));
  const rules = [
    ...edges.map(([front, behind]) => ({ some: maskOf(reachedBy(plain, behind)), all: maskOf(allOf(plain, front)) })),
    ...held.filter(([, by]) => by.length > 0).map(([part, by]) => ({ some: maskOf([part]), all: maskOf(by) })),
  ];
  const carried = held
    .filter(([, by]) => by.length > 0)
    .map(([part, by]) => ({ by: maskOf(by), part: maskOf([part]) }));
  let best = [2 ** units.length - 1];
  const size = (mask: number) => units.filter((_, i) => mask & (1 << i)).length;
  for (let mask = 0; mask < 2 ** units.length; mask++) {
    if ((mask & wanted) !== wanted || size(mask) > size(best[0] as number)) continue;
    const stands =
      rules.every(({ some, all }) => (mask & some) === 0 || (mask & all) === all) &&
      carried.every(({ by, part }) => (mask & by) !== by || (mask & part) !== 0);
    if (stands) best = size(mask) < size(best[0] as number) ? [mask] : [...new Set([...best, mask])];
  }
  const [least] = best as [number];
  return { least: new Set(units.filter((_, i) => least & (1 << i))), only: best.length === 1 };
}

/** Every pair of units of which the first must be off before the second. */
export function pairsOf(plain: Plain): [string, string][] {
  return [
    ...plain.held.flatMap(([part, by]) => by.map((hole): [string, string] => [hole, part])),
    ...plain.edges.flatMap(([front, behind]) =>
      allOf(plain, front).flatMap((one) => reachedBy(plain, behind).map((other): [string, string] => [one, other])),
    ),
  ];
}

/** Sorts by taking away, again and again, what nothing left stands before; undefined when that stops short. */
export function sortedByTaking(units: readonly string[], pairs: readonly [string, string][]): string[] | undefined {
  let left = [...units];
  const sorted: string[] = [];
  while (left.length > 0) {
    const free = left.filter((unit) => !pairs.some(([first, then]) => then === unit && left.includes(first)));
    if (free.length === 0) return undefined;
    sorted.push(...free);
    left = left.filter((unit) => !free.includes(unit));
  }
  return sorted;
}
