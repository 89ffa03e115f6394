// Whether the car may go, as the log stands, with what is open and every release that was called. Nothing is judged
// here: X1's list and the verdict on each release are the ledger's.
import { areaOfPlace } from '../job/area-of-place.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import type { Stamp } from '../job/line.ts';
import { type NotAsked, notAsked } from '../job/not-asked.ts';
import { openPoints } from '../job/open-points.ts';
import { toldOnce } from '../job/told-once.ts';
import { plainDeep } from '../trade/plain-text.ts';
import { type LeavingFact, leavingFacts } from './log-facts.ts';
import { type Moment, moment, placeWords, type Reading } from './reading.ts';

export type OpenFact = { code: string; at: string; place: string; because: string; area?: string };
/** `writtenAfter` lines after a release are covered by nothing (X3). */
export type Standing =
  | { state: 'released'; at: Moment; by: string; writtenAfter: number }
  | { state: 'left'; at: Moment; by: string; because: string }
  | { state: 'here' };
/** `fileEnd`: why the file is perhaps not all of the job. */
export type StandingFacts = {
  fileEnd?: string;
  standing: Standing;
  leavings: LeavingFact[];
  open: OpenFact[];
  notAsked: NotAsked[];
};

export function standingFacts(ledger: Ledger, options: { now: Stamp; zone?: number }): StandingFacts {
  const of: Reading = { ledger, ...options };
  return plainDeep({
    standing: standingOf(of),
    leavings: leavingFacts(of),
    notAsked: notAsked(ledger),
    open: toldOnce(ledger, openPoints(ledger, of.now)).map(({ code, at, because }) => {
      const area = areaOfPlace(ledger, at);
      return { code, at, place: placeWords(at), because, ...(area !== undefined && { area }) };
    }),
  });
}

function standingOf(of: Reading): Standing {
  const v = stateOf(of.ledger, 'vehicle', 'vehicle');
  if (v?.releasedAt) {
    const writtenAfter = of.ledger.lines.length - v.releasedAt;
    return { state: 'released', at: moment(of, v.releasedAt), by: v.releasedBy ?? '', writtenAfter };
  }
  if (v?.left) return { state: 'left', at: moment(of, v.left.n), by: v.left.who, because: v.left.because };
  return { state: 'here' };
}
