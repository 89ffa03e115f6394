// Which areas lie together, as those of one corner of the car do: what is said to sit behind one another, followed either
// way and through the parts and connections between them.
import { every, type Ledger, stateOf } from './ledger.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { edgesOf } from './order.ts';
import { areaOf, named, type Subject } from './subjects.ts';

/** What a subject lies with by itself: a hole with its area, a part with what holds it, a joint with where it is. */
function liesWith(ledger: Ledger, subject: Subject): Subject[] {
  const hole = named('hole', subject);
  if (hole !== undefined) return [`area:${areaOf(hole)}`];
  const heldBy = stateOf(ledger, 'part', named('part', subject) ?? '')?.declared?.heldBy ?? [];
  const joint = stateOf(ledger, 'connection', named('connection', subject) ?? '')?.declared?.area;
  return [...heldBy.map(areaOf), ...(joint === undefined ? [] : [joint])].map((area) => `area:${area}`);
}

const placesIn = oncePerLedger((ledger): ReadonlyMap<Subject, number> => {
  const beside = new Map<Subject, Subject[]>();
  const lieAt = (one: Subject): Subject[] => {
    const there = beside.get(one) ?? [];
    beside.set(one, there);
    return there;
  };
  const join = (one: Subject, other: Subject): void => {
    lieAt(one).push(other);
    lieAt(other).push(one);
  };
  for (const { front, behind } of edgesOf(ledger)) {
    join(front, behind);
    for (const subject of [front, behind]) for (const area of liesWith(ledger, subject)) join(subject, area);
  }
  const places = new Map<Subject, number>();
  for (const { area } of every(ledger, 'area')) {
    const place = places.get(`area:${area}`) ?? places.size;
    const queue: Subject[] = [`area:${area}`];
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      if (places.has(at)) continue;
      places.set(at, place);
      queue.push(...(beside.get(at) ?? []));
    }
  }
  return places;
});

/** A number, the same for all areas that lie together. */
export const placeOf = (ledger: Ledger, area: string): number | undefined => placesIn(ledger, '').get(`area:${area}`);
