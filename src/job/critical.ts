// What is critical: an area or hole declared so, and whatever is held by, presses on or lies at one. Says nothing of what
// follows from it.
import { type Ledger, stateOf } from './ledger.ts';
import { areaOf, type Hole, named, nameOf, type Subject, sortOf } from './subjects.ts';

const areaIsCritical = (ledger: Ledger, area: string | undefined): boolean =>
  area !== undefined && stateOf(ledger, 'area', area)?.declared?.critical === true;

const holeIsCritical = (ledger: Ledger, hole: Hole): boolean =>
  stateOf(ledger, 'hole', hole)?.declared?.critical === true || areaIsCritical(ledger, areaOf(hole));

/** F3: whether a place is on a critical area. */
export function isCriticalAt(ledger: Ledger, at: Subject): boolean {
  const name = nameOf(at);
  switch (sortOf(at)) {
    case 'hole':
      return holeIsCritical(ledger, name);
    case 'area':
      return areaIsCritical(ledger, name);
    case 'part':
      return (stateOf(ledger, 'part', name)?.declared?.heldBy ?? []).some((h) => holeIsCritical(ledger, h));
    case 'connection':
      return areaIsCritical(ledger, stateOf(ledger, 'connection', name)?.declared?.area);
    case 'face': {
      const face = stateOf(ledger, 'face', name)?.declared;
      return areaIsCritical(ledger, face?.area) || (face?.pressedBy ?? []).some((h) => holeIsCritical(ledger, h));
    }
    case 'drive':
      return (stateOf(ledger, 'drive', name)?.declared?.areas ?? []).some((a) => areaIsCritical(ledger, a));
    case 'temporary': {
      const lies = stateOf(ledger, 'temporary', name)?.at;
      // At most one step: what a temporary lies at is never itself a temporary here.
      return lies !== undefined && named('temporary', lies) === undefined && isCriticalAt(ledger, lies);
    }
    default:
      return false;
  }
}
