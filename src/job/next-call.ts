// X5: for every open point the next call towards closing it that is not refused. One that is refused for what stands in
// its way leads to that place instead.
import { decide } from './decide.ts';
import { outTooSoon } from './first-in.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { oncePerMoment } from './once-per-ledger.ts';
import type { OpenPoint } from './open-point.ts';
import { openPoints } from './open-points.ts';
import type { Said } from './said.ts';
import { named, nameOf } from './subjects.ts';
import { candidates } from './towards.ts';

const stamped = (point: OpenPoint): string => `${point.code} ${point.at}`;

/** The open points, each with its next call. */
export const openPointsWithNext = oncePerMoment((ledger, now): readonly OpenPoint[] => {
  const { points, withNext } = openPointsToLookAt(ledger, now);
  return points.map(withNext);
});

/** The same, with the next call of a point found only when it is asked for: it costs more than all the points. */
export function openPointsToLookAt(
  ledger: Ledger,
  now: Stamp,
): { points: readonly OpenPoint[]; withNext(point: OpenPoint): OpenPoint } {
  const points = openPoints(ledger, now);
  const ways: Ways = { ledger, now, byPlace: Map.groupBy(points, (p) => p.at), calls: new Map(), inTheWay: new Map() };
  return {
    points,
    withNext(point) {
      const next = nextFor(ways, point, new Set());
      return next ? { ...point, next } : point;
    },
  };
}

/** What is looked at on the way from any of the points, each once: many of them lead past the same place. */
type Ways = {
  ledger: Ledger;
  now: Stamp;
  byPlace: ReadonlyMap<string, readonly OpenPoint[]>;
  /** What might be called, by point. */
  calls: Map<string, readonly Said[]>;
  /** Places in the way of such a call. */
  inTheWay: Map<Said, readonly string[] | 'free'>;
};

function nextFor(ways: Ways, point: OpenPoint, asked: Set<string>): Said | undefined {
  if (asked.has(stamped(point)) || asked.size > 40) return undefined;
  asked.add(stamped(point));
  for (const place of waitsFor(ways.ledger, point)) {
    for (const one of pointsAt(ways, place)) {
      const next = nextFor(ways, one, asked);
      if (next) return next;
    }
  }
  for (const said of callsFor(ways, point)) {
    const inTheWay = placesInTheWay(ways, said);
    if (inTheWay === 'free') return said;
    // What stands in the way of the sensible call comes before a second choice that happens to be free.
    for (const place of inTheWay) {
      for (const one of pointsAt(ways, place)) {
        const next = nextFor(ways, one, asked);
        if (next) return next;
      }
    }
  }
  return undefined;
}

/** What refuses nothing and still comes first: what holds or carries something stays in until that is together. */
function waitsFor(ledger: Ledger, { code, at }: OpenPoint): readonly string[] {
  const t = code === 'temporary-in' ? stateOf(ledger, 'temporary', nameOf(at)) : undefined;
  return t ? outTooSoon(ledger, t) : [];
}

function callsFor({ ledger, now, calls }: Ways, point: OpenPoint): readonly Said[] {
  const known = calls.get(stamped(point)) ?? candidates(ledger, point, now);
  calls.set(stamped(point), known);
  return known;
}
function placesInTheWay({ ledger, now, inTheWay }: Ways, said: Said): readonly string[] | 'free' {
  const known = inTheWay.get(said);
  if (known) return known;
  const answer = decide(ledger, said, now);
  const places = 'refused' in answer ? answer.refused.places : 'free';
  inTheWay.set(said, places);
  return places;
}

/** The open points of a place; of an area those of its holes and parts, of a rotation its drive's. */
function pointsAt({ ledger, byPlace }: Ways, place: string): readonly OpenPoint[] {
  const area = named('area', place);
  const drive = named('rotation', place);
  if (drive) return byPlace.get(`drive:${drive}`) ?? [];
  if (!area) return byPlace.get(place) ?? [];
  const a = stateOf(ledger, 'area', area);
  const within = [...(a?.holes ?? []).map((h) => `hole:${h}`), ...(a?.parts ?? []).map((p) => `part:${p}`), place];
  const points = within.flatMap((at) => byPlace.get(at) ?? []);
  // K4: its holes are counted before anything goes back into one of them.
  return points.sort((one, other) => Number(isCounting(other)) - Number(isCounting(one)));
}
const isCounting = ({ code }: OpenPoint): boolean => code === 'holes-not-counted';
