// The calls that settle a candidate: what is to be called when a look at that place says that the fastener belongs there.
// One fastener stays one in the books: a stray that was a fastener of the ledger all along is struck as a stray.
import { emptyRow, pick } from './drawers.ts';
import { every, isStruck, type Ledger, lineAt, stateOf } from './ledger.ts';
import type { Said } from './said.ts';
import type { Spec } from './spec.ts';
import { holeIn, inTray, named, numberOf, type Place } from './subjects.ts';
import type { Candidate, InHand } from './whose.ts';

/** What a name or a reason says before it is said. */
const toBeSaid = 'to be said';

/** @param stray its name where it was called a stray already */
export function settlingCalls(ledger: Ledger, candidate: Candidate, { spec, tray }: InHand, stray?: string): Said[] {
  const hole = named('hole', candidate.place);
  const to: Place = inTray(tray ?? toBeSaid);
  const unstray = stray === undefined ? [] : strikeOf(ledger, stray);
  switch (candidate.as) {
    case 'open':
      return hole === undefined ? [] : intoOpen(ledger, hole, spec, to, stray);
    case 'closed':
      // It is called into its hole and lies here: called off, it is where it is, and what was proven with it falls.
      return [...unstray, { verb: 'remove', hole, to }];
    case 'never called':
      return [...unstray, { verb: 'remove', hole: hole ?? nextFree(ledger, candidate.place), spec, to }];
    case 'old one':
      return [...unstray, ...ontoTheScrap(ledger, candidate.place, stray)];
    case 'new one':
      return [...unstray, ...backToTheSupplier(ledger, candidate.place)];
    case 'not of this job':
      return stray === undefined
        ? [{ verb: 'find-stray', spec, tray: tray ?? toBeSaid }]
        : [{ verb: 'disown-stray', stray, who: toBeSaid, because: toBeSaid }];
  }
}

/** Its own lies in a tray by the ledger: then this is it. */
function intoOpen(ledger: Ledger, hole: string, spec: Spec, to: Place, stray: string | undefined): Said[] {
  const own = stateOf(ledger, 'hole', hole)?.called.own;
  const lies = own === undefined ? undefined : stateOf(ledger, 'fastener', own)?.place;
  const isBooked = lies !== undefined && named('tray', lies) !== undefined;
  if (stray !== undefined) {
    return isBooked ? [...strikeOf(ledger, stray), { verb: 'fit', hole }] : [{ verb: 'give-stray', stray, hole }];
  }
  return isBooked ? [{ verb: 'fit', hole }] : [{ verb: 'find-stray', spec, tray: named('tray', to) }];
}

function strikeOf(ledger: Ledger, stray: string): Said[] {
  const { all, length } = pick(ledger.chains, `stray:${stray}`) ?? emptyRow<number>();
  const lines = all.slice(0, length).filter((n) => !isStruck(ledger, n));
  const areOfIt = lines.length > 0 && lines.every((n) => lineAt(ledger, n)?.entries.length === 1);
  return areOfIt ? [{ verb: 'strike', lines }] : [];
}

function nextFree(ledger: Ledger, place: string): string {
  const area = named('area', place) ?? '';
  const known = new Set((stateOf(ledger, 'area', area)?.holes ?? []).map((hole) => Number(numberOf(hole))));
  let free = 1;
  while (known.has(free)) free += 1;
  return holeIn(area, String(free));
}

/** In a tray by the ledger it is moved; booked there already, it is only laid there. */
function ontoTheScrap(ledger: Ledger, place: string, stray: string | undefined): Said[] {
  const old = [...every(ledger, 'fastener')].find((f) => f.origin === place && f.place.startsWith('tray:'));
  if (old) return [{ verb: 'move-fastener', fastener: old.id, to: 'scrap' }];
  return stray === undefined || strikeOf(ledger, stray).length > 0 ? [] : [{ verb: 'scrap-stray', stray }];
}

function backToTheSupplier(ledger: Ledger, place: string): Said[] {
  const name = named('box', place) ?? '';
  return (stateOf(ledger, 'box', name)?.left ?? 0) > 0 ? [{ verb: 'move-box', name, quantity: 1, to: 'supplier' }] : [];
}
