// What was lost where it could reach the works, and was found again: the workshop's copy tells of it, for it was in there.
import { stateOf } from '../job/ledger.ts';
import { specText } from '../job/spec.ts';
import { subjectText } from '../job/subjects.ts';
import { type Moment, moment, type Reading, standingEntries } from './reading.ts';
import { timeText } from './words.ts';

export type RegainedFact = { what: string; where: string; lost: Moment; found: Moment };

export function regainedFacts(of: Reading): RegainedFact[] {
  const lost = new Map<string, { where: string; n: number }>();
  const regained: RegainedFact[] = [];
  for (const { line, entry } of standingEntries(of.ledger)) {
    if (entry.kind === 'fastener-lost' && entry.reaches) lost.set(entry.fastener, { where: entry.where, n: line.n });
    const isFound = (entry.kind === 'fastener-moved' || entry.kind === 'fastener-fitted') && entry.from === 'lost';
    const before = isFound ? lost.get(entry.fastener) : undefined;
    if (!isFound || !before) continue;
    const f = stateOf(of.ledger, 'fastener', entry.fastener);
    const what = f ? `${specText(f.spec)} of ${subjectText(f.origin)}` : entry.fastener;
    regained.push({ what, where: before.where, lost: moment(of, before.n), found: moment(of, line.n) });
  }
  return regained;
}

export const regainedText = ({ what, where, lost, found }: RegainedFact): string =>
  `${what}, lost${where && ` at ${where}`} ${timeText(lost)}, could reach the works; found again ${timeText(found)}`;
