// O6: what can be looked at only before the faces meet: the companions between them, blind holes while they are empty. It is
// an open point either way; here it is said in time. It stands in no way.
import { companionsSaid } from './area-rest.ts';
import { holesOf, unsaidOf } from './closed.ts';
import { type Ledger, stateOf } from './ledger.ts';
import { areaOf } from './subjects.ts';

export type Unseen = { what: 'companions' | 'blind-holes'; words: string };

/** What of an opened area was not called yet and is out of sight once its faces meet. */
export function unseenBetween(ledger: Ledger, area: string): Unseen[] {
  const a = stateOf(ledger, 'area', area);
  if (!a) return [];
  const unseen = unsaidOf(ledger, a).filter((what) => what !== 'direction');
  return unseen.map((what) => ({ what, words: what === 'companions' ? companionsSaid(a) : `blind holes of ${area}` }));
}
/** Nothing that was taken off there, or loosened, is in its place again. */
function isApart(ledger: Ledger, area: string): boolean {
  const a = stateOf(ledger, 'area', area);
  const opened = a ? holesOf(ledger, a).filter((h) => h.called.openedAt > 0) : [];
  return opened.every(({ called: { occupant } }) => occupant === undefined || occupant.level === 'slack');
}
/** Said with the part that goes on, or with the first fastener that goes in. */
export function unseenUnder(ledger: Ledger, areas: readonly string[]): string[] {
  return [...new Set(areas)]
    .filter((area) => isApart(ledger, area))
    .flatMap((area) => unseenBetween(ledger, area))
    .map(({ what, words }) =>
      what === 'companions'
        ? `${words} not called seen: looked for before the faces meet`
        : `${words} not called dry: looked into before anything goes in`,
    );
}
/** The areas whose holes hold a part. */
export const areasUnder = (ledger: Ledger, part: string): string[] =>
  (stateOf(ledger, 'part', part)?.declared?.heldBy ?? []).map(areaOf);
