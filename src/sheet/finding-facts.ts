// What the sheet says of each finding: what, where, when, each time the owner was told, and how it ended.
import { isCritical } from '../job/closed.ts';
import { every, stateOf } from '../job/ledger.ts';
import { specText } from '../job/spec.ts';
import type { FindingState } from '../job/states.ts';
import { areaOf, named } from '../job/subjects.ts';
import { type Moment, moment, placeWords, type Reading, standingEntries } from './reading.ts';

/** The owner's say: when asked, how, by whom, and what was said. */
export type OwnerSaid = Moment & { how?: string; said?: string };
export type FindingFact = {
  id: string;
  place: string;
  critical: boolean;
  what: string;
  when: FindingState['when'];
  made: Moment;
  /** In the order of their lines. */
  told: OwnerSaid[];
  closed?: Moment & { how: 'put right' | 'accepted' | 'declined'; by?: string; because?: string };
};

export function findingFacts(of: Reading): FindingFact[] {
  const told = Map.groupBy(tellings(of), ([finding]) => finding);
  const wrong = new Set(wrongOnes(of));
  return [...every(of.ledger, 'finding')].map((f) =>
    findingFact(
      of,
      wrong.has(f.id) ? { ...f, what: withWhatWasIn(of, f) } : f,
      (told.get(f.id) ?? []).map(([, one]) => one),
    ),
  );
}

function findingFact(
  of: Reading,
  { id, at, what, when, madeAt, closed }: FindingState,
  told: OwnerSaid[],
): FindingFact {
  const hole = named('hole', at);
  const h = hole === undefined ? undefined : stateOf(of.ledger, 'hole', hole);
  const area = hole === undefined ? named('area', at) : areaOf(hole);
  const critical =
    area !== undefined &&
    (stateOf(of.ledger, 'area', area)?.declared?.critical === true ||
      (h !== undefined && isCritical(of.ledger, h, area)));
  return {
    id,
    place: placeWords(at),
    critical,
    what,
    when,
    made: moment(of, madeAt),
    told,
    ...(closed && {
      closed: {
        ...moment(of, closed.n),
        how: closed.how,
        ...(closed.who && { by: closed.who }),
        ...(closed.because && { because: closed.because }),
      },
    }),
  };
}

const wrongOnes = ({ ledger }: Reading): string[] =>
  [...standingEntries(ledger)].flatMap(({ entry }) =>
    entry.kind === 'finding-made' && entry.wrongOne ? [entry.finding] : [],
  );
/** "wrong fastener in it (bolt hex 13 M8x30)": the owner has not seen it. */
function withWhatWasIn({ ledger }: Reading, { what, fastener }: FindingState): string {
  const spec = stateOf(ledger, 'fastener', fastener ?? '')?.spec ?? {};
  return Object.keys(spec).length > 0 ? `${what} (${specText(spec)})` : what;
}
const tellings = (of: Reading): [string, OwnerSaid][] =>
  [...standingEntries(of.ledger)].flatMap(({ line, entry }): [string, OwnerSaid][] => {
    if (entry.kind !== 'owner-told') return [];
    const { finding, how, said } = entry;
    return [[finding, { ...moment(of, line.n), ...(how && { how }), ...(said && { said }) }]];
  });
