// What still stands in front of a place: seen when taking apart, where "behind" refuses nothing but says what comes first.
import { every, type Ledger, stateOf, tallyOf } from './ledger.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { edgesOf } from './order.ts';
import { areaOf, named, nameOf, type Subject, sortOf } from './subjects.ts';

/** Nobody has opened it yet: an area with a hole nobody called, a part that is on, a connection that is made. */
function standsClosed(ledger: Ledger, subject: Subject): boolean {
  const name = nameOf(subject);
  switch (sortOf(subject)) {
    case 'area': {
      const { holes, touched } = tallyOf(ledger, name);
      return touched < holes;
    }
    case 'part': {
      const p = stateOf(ledger, 'part', name);
      return p !== undefined && !p.off && p.removedAt === 0;
    }
    case 'connection':
      return stateOf(ledger, 'connection', name)?.partedAt === 0;
    default:
      return false;
  }
}

/** What stands in front of a place and was not opened yet. */
export const inFrontOf = oncePerLedger((ledger, behind: Subject): readonly Subject[] =>
  edgesOf(ledger)
    .filter((edge) => edge.behind === behind && standsClosed(ledger, edge.front))
    .map((edge) => edge.front),
);

const connectionsIn = (subjects: readonly Subject[]): string[] => [
  ...new Set(subjects.flatMap((one) => named('connection', one) ?? [])),
];
/** Connections in front of a part, or of where it is held, that nobody has called parted. */
export function unpartedBefore(ledger: Ledger, part: string): string[] {
  const held = stateOf(ledger, 'part', part)?.declared?.heldBy ?? [];
  const places = new Set<Subject>([`part:${part}`, ...held.map((hole): Subject => `area:${areaOf(hole)}`)]);
  return connectionsIn([...places].flatMap((place) => inFrontOf(ledger, place)));
}
/** The same of an area whose parts are off already: they must have been parted. */
export const unpartedOf = (ledger: Ledger, area: string): string[] => [
  ...new Set(
    (stateOf(ledger, 'area', area)?.parts ?? [])
      .filter((part) => stateOf(ledger, 'part', part)?.off)
      .flatMap((part) => unpartedBefore(ledger, part)),
  ),
];

/** It comes away by itself: a connection, or a part that no fastener holds and nothing stands in front of any more. */
function comesAway(ledger: Ledger, subject: Subject): boolean {
  if (sortOf(subject) === 'connection') return true;
  if (sortOf(subject) !== 'part' || inFrontOf(ledger, subject).length > 0) return false;
  const heldBy = stateOf(ledger, 'part', nameOf(subject))?.declared?.heldBy ?? [];
  return heldBy.every((hole) => !stateOf(ledger, 'hole', hole)?.called.occupant);
}

/** Areas that have something left to come off, in their order; which of them sit behind nothing but what comes away by itself. */
export const areasToStrip = (ledger: Ledger): { area: string; isFree: boolean }[] =>
  [...every(ledger, 'area')].flatMap(({ area }) => {
    const { holes, touched } = tallyOf(ledger, area);
    if (touched >= holes) return [];
    const isFree = inFrontOf(ledger, `area:${area}`).every((front) => comesAway(ledger, front));
    return [{ area, isFree }];
  });
