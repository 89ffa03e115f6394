// Whether the next call of an open point is of another place than its own, and how that is told beside the point: one who
// reads of a bolt and is led to a count wants to know why. It judges nothing.
import { type Ledger, stateOf } from './ledger.ts';
import type { OpenPoint } from './open-point.ts';
import type { Said } from './said.ts';
import { named, nameOf, sortOf } from './subjects.ts';

/** What stands open as long as something of it is not done; what lies about is cleared away by a call of where it goes. */
const ofAPlace = new Set(['hole', 'area', 'part', 'connection', 'face', 'circuit', 'drive', 'service', 'vehicle']);
const placesOf = ({ hole, holes, area, part, connection, temporary, face, circuit, drive, counts }: Said): unknown[] =>
  [hole, holes, area, part, connection, temporary, face, circuit, drive, counts]
    .flat()
    .filter((one) => one !== undefined);

/** Said after why it is open, of a finding as of its place: "", or what the call beside it is to it. */
export function firstWords(ledger: Ledger, { code, at: place, next }: OpenPoint): string {
  const at = stateOf(ledger, 'finding', named('finding', place) ?? '')?.at ?? place;
  if (!next || !(ofAPlace.has(sortOf(at)) || code === 'temporary-in')) return '';
  const places = placesOf(next);
  if (Object.values(next).flat().includes(nameOf(at))) return '';
  // A call of the whole car, as the oil level, closes no circuit by itself; of the clock it is said what for.
  if (places.length === 0) {
    // Bought for a hole, which is all that it closes.
    const isBought = next.verb === 'fill-box' && sortOf(at) !== 'hole';
    const isOther = isBought || sortOf(at) === 'circuit' || (code === 'road-test' && next.verb !== 'road-test');
    return isOther && next.verb !== 'confirm-clock' ? '; first' : '';
  }
  return next.verb === 'count-holes' ? '; its holes are counted first' : '; first';
}
