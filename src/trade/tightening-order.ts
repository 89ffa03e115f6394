// In which order fasteners of one area are brought up where the maker prints none: rings crosswise, covers and lines from
// the middle outwards, side by side. A maker's own order always wins. Units of coordinates are free.
import { type Answer, absurd, isRefused, refused } from './answer.ts';
import { chosenHere, cited, commonPractice } from './cited.ts';

export type Place = { hole: string; at: readonly [x: number, y: number] };
export type Layout = 'ring' | 'cover' | 'line';
export type Order = {
  holes: string[];
  by: Layout | "the maker's order";
  source: string;
};

const countLimits = cited({ from: 1, to: 500 }, 'holes', chosenHere);
const crossPattern = 'ASME PCC-1, cross-pattern tightening';
const middleOut = 'common practice, no source: from the middle outwards, sides in turn';
/** Quarters of a ring that need an order of their own: from sixteen holes on, every other one first. */
const quarters = cited({ inRing: 4, spreadFrom: 4 }, '–', crossPattern).value;

/**
 * A ring, crosswise.
 * @param count of holes, numbered clockwise from 1
 * @returns the numbers in order; odd rings go round star-wise. Refused: not a whole number from 1 to 500
 * Source: ASME PCC-1, cross pattern. Rings of an odd number and of 6, 10, 14 … are common practice, no source.
 */
export function ringOrder(count: number): Answer<number[]> {
  const wrong = wrongCount(count);
  if (wrong) return wrong;
  if (count <= 2) return upTo(count);
  if (count % 2 === 1) return upTo(count).map((_, step) => ((step * ((count - 1) / 2)) % count) + 1);
  const half = count / 2;
  if (count % quarters.inRing > 0) {
    // Nearest to a quarter turn that comes past every pair once.
    const stride = (half - 1) / 2;
    return upTo(half).flatMap((_, step) => pair(((step * stride) % half) + 1, half));
  }
  const quarter = count / quarters.inRing;
  const starts = upTo(quarter);
  const spread =
    quarter < quarters.spreadFrom
      ? starts
      : [...starts.filter((at) => at % 2 === 1), ...starts.filter((at) => at % 2 === 0)];
  return spread.flatMap((at) => [...pair(at, half), ...pair(at + quarter, half)]);
}
const pair = (at: number, half: number): [number, number] => [at, at + half];
const upTo = (count: number): number[] => Array.from({ length: count }, (_, at) => at + 1);

/** A row of holes numbered from one end: the middle first, then to either side in turn. Common practice, no source. */
export function lineOrder(count: number): Answer<number[]> {
  const wrong = wrongCount(count);
  if (wrong) return wrong;
  const order = middleOutwards(upTo(count).map((number) => ({ hole: String(number), at: [number, 0] })));
  return order.map(Number);
}

const wrongCount = (count: number) =>
  absurd('a count of', count, countLimits) ??
  (Number.isInteger(count) ? undefined : refused(`${count} is no count of holes`));

/** Holes whose distances from the middle differ by less are one round; and how round a ring must be. */
const alike = cited({ ofLargest: 0.04, ofRadius: 0.03 }, 'of the largest distance', commonPractice).value;
/** Directions that differ by less are the same but for rounding. */
const same = cited(1e-9, '–', chosenHere).value;
const fewestOfRing = cited(3, 'holes', commonPractice).value;

/**
 * Any layout of holes by their coordinates.
 * @param places each hole and where it sits; y may run either way
 * @param makersOrder the maker's, where there is one: it wins, if it names every hole once
 * @returns the holes in order, and by what. Refused: no hole, one twice, a coordinate that is none, a maker's order that
 * leaves a hole out, names one twice or one that is not there
 * Source: rings ASME PCC-1; else common practice, no source.
 */
export function tighteningOrder(places: readonly Place[], makersOrder?: readonly string[]): Answer<Order> {
  const wrong = wrongPlaces(places);
  if (wrong) return wrong;
  if (makersOrder) return asTheMakerSays(places, makersOrder);
  const ring = asRing(places);
  if (ring) {
    const numbers = ringOrder(ring.length);
    if (isRefused(numbers)) return numbers;
    return { holes: numbers.map((number) => (ring[number - 1] as Place).hole), by: 'ring', source: crossPattern };
  }
  return { holes: middleOutwards(places), by: isLine(places) ? 'line' : 'cover', source: middleOut };
}

function wrongPlaces(places: readonly Place[]) {
  const wrong = wrongCount(places.length);
  if (wrong) return wrong;
  const seen = new Set<string>();
  for (const { hole, at } of places) {
    if (seen.has(hole)) return refused(`hole ${hole} stands in two places`);
    if (!at.every(Number.isFinite)) return refused(`hole ${hole} has no place`);
    seen.add(hole);
  }
  return undefined;
}

function asTheMakerSays(places: readonly Place[], order: readonly string[]): Answer<Order> {
  const there = new Set(places.map(({ hole }) => hole));
  const twice = order.find((hole, at) => order.indexOf(hole) !== at);
  if (twice !== undefined) return refused(`the maker's order names hole ${twice} twice`);
  const strange = order.find((hole) => !there.has(hole));
  if (strange !== undefined) return refused(`the maker's order names hole ${strange}, which is not there`);
  const missing = places.find(({ hole }) => !order.includes(hole));
  if (missing) return refused(`the maker's order leaves out hole ${missing.hole}`);
  return { holes: [...order], by: "the maker's order", source: "the maker's manual" };
}

/** Loosened the other way round. Common practice, no source. */
export const looseningOrder = <Hole>(tightening: readonly Hole[]): Hole[] => [...tightening].reverse();

type Seen = Place & { x: number; y: number; distance: number };

/** Each hole as seen from the middle of them all. */
function fromTheMiddle(places: readonly Place[]): Seen[] {
  const mean = (of: 0 | 1) => places.reduce((sum, { at }) => sum + at[of], 0) / places.length;
  const [cx, cy] = [mean(0), mean(1)];
  return places.map((place) => {
    const [x, y] = [place.at[0] - cx, place.at[1] - cy];
    return { ...place, x, y, distance: Math.hypot(x, y) };
  });
}

/** Clockwise from the first, if the holes sit evenly on one circle. */
function asRing(places: readonly Place[]): Place[] | undefined {
  if (places.length < fewestOfRing) return undefined;
  const seen = fromTheMiddle(places);
  const radius = seen.reduce((sum, { distance }) => sum + distance, 0) / seen.length;
  if (radius === 0 || seen.some(({ distance }) => Math.abs(distance - radius) > radius * alike.ofRadius))
    return undefined;
  const turn = 2 * Math.PI;
  const first = Math.atan2((seen[0] as Seen).y, (seen[0] as Seen).x);
  const angled = seen
    .map((place) => ({ place, angle: (((Math.atan2(place.y, place.x) - first) % turn) + turn) % turn }))
    .map(({ place, angle }) => ({ place, angle: turn - angle < alike.ofRadius ? 0 : angle }))
    .sort((a, b) => a.angle - b.angle);
  const step = turn / seen.length;
  const even = angled.every(({ angle }, at) => Math.abs(angle - at * step) <= step * alike.ofRadius * 2);
  return even ? angled.map(({ place }) => place) : undefined;
}

function isLine(places: readonly Place[]): boolean {
  const seen = fromTheMiddle(places);
  const far = seen.reduce((a, b) => (b.distance > a.distance ? b : a));
  return seen.every(({ x, y }) => Math.abs(x * far.y - y * far.x) <= far.distance ** 2 * alike.ofLargest);
}

/** Round by round from the middle; in a round, each next hole is the one most opposite to the last. */
function middleOutwards(places: readonly Place[]): string[] {
  const seen = fromTheMiddle(places).map((place, at) => ({ ...place, listed: at }));
  const reach = Math.max(...seen.map(({ distance }) => distance));
  const left = seen.sort((a, b) => a.distance - b.distance || a.listed - b.listed);
  const order: Seen[] = [];
  while (left.length > 0) {
    const inner = (left[0] as Seen).distance;
    const round = left.filter(({ distance }) => distance - inner <= reach * alike.ofLargest);
    const last = order.at(-1);
    // Listed first where several are as far round: the way people number them.
    const next = last
      ? round.reduce((best, one) => (sameSide(one, last) < sameSide(best, last) - same ? one : best))
      : (round[0] as Seen);
    left.splice(left.indexOf(next as (typeof left)[number]), 1);
    order.push(next);
  }
  return order.map(({ hole }) => hole);
}

/** -1 opposite about the middle, 1 on the same side. */
function sameSide(one: Seen, other: Seen): number {
  const both = one.distance * other.distance;
  return both === 0 ? 0 : (one.x * other.x + one.y * other.y) / both;
}
