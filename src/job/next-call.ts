// X5: for every open point the next call towards closing it that is not refused. One that is refused for what stands in
// its way leads to that place instead.
import { decide } from './decide.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import type { OpenPoint } from './open-point.ts';
import { openPoints } from './open-points.ts';
import type { Said } from './said.ts';
import { named } from './subjects.ts';
import { candidates } from './towards.ts';

const stamped = (point: OpenPoint): string => `${point.code} ${point.at}`;

/** The open points, each with its next call. */
export const openPointsWithNext = (ledger: Ledger, now: Stamp): OpenPoint[] => {
  const { points, withNext } = openPointsToLookAt(ledger, now);
  return points.map(withNext);
};

/** The same, with the next call of a point found only when it is asked for: it costs more than all the points. */
export function openPointsToLookAt(
  ledger: Ledger,
  now: Stamp,
): { points: readonly OpenPoint[]; withNext(point: OpenPoint): OpenPoint } {
  const points = openPoints(ledger, now);
  const byPlace = Map.groupBy(points, (p) => p.at);
  return {
    points,
    withNext(point) {
      const next = nextFor(ledger, point, now, byPlace, new Set());
      return next ? { ...point, next } : point;
    },
  };
}

function nextFor(
  ledger: Ledger,
  point: OpenPoint,
  now: Stamp,
  byPlace: ReadonlyMap<string, readonly OpenPoint[]>,
  asked: Set<string>,
): Said | undefined {
  if (asked.has(stamped(point)) || asked.size > 40) return undefined;
  asked.add(stamped(point));
  for (const said of candidates(ledger, point)) {
    const answer = decide(ledger, said, now);
    if (!('refused' in answer)) return said;
    // What stands in the way of the sensible call comes before a second choice that happens to be free.
    for (const place of answer.refused.places) {
      for (const one of pointsAt(ledger, place, byPlace)) {
        const next = nextFor(ledger, one, now, byPlace, asked);
        if (next) return next;
      }
    }
  }
  return undefined;
}

/** The open points of a place; of an area those of its holes and parts, of a rotation its drive's. */
function pointsAt(
  ledger: Ledger,
  place: string,
  byPlace: ReadonlyMap<string, readonly OpenPoint[]>,
): readonly OpenPoint[] {
  const area = named('area', place);
  const drive = named('rotation', place);
  if (drive) return byPlace.get(`drive:${drive}`) ?? [];
  if (!area) return byPlace.get(place) ?? [];
  const a = stateOf(ledger, 'area', area);
  const within = [...(a?.holes ?? []).map((h) => `hole:${h}`), ...(a?.parts ?? []).map((p) => `part:${p}`), place];
  return within.flatMap((at) => byPlace.get(at) ?? []);
}
