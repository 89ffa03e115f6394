// Whether the car may go, and what still stands against it, in words: a headline, and the open points one a line. The
// words of a call are asked of the caller: the table of calls is not this room's.
import { emptyLedger, type Ledger } from '../job/ledger.ts';
import type { Stamp } from '../job/line.ts';
import { openPointsWithNext } from '../job/next-call.ts';
import { firstWords } from '../job/next-elsewhere.ts';
import { notAskedText } from '../job/not-asked.ts';
import { gapWords } from '../job/number-jump.ts';
import type { OpenPoint } from '../job/open-point.ts';
import type { Said } from '../job/said.ts';
import { toldOnce } from '../job/told-once.ts';
import { voidBeadWords } from '../job/towards-bead.ts';
import { plainText } from '../trade/plain-text.ts';
import { headed } from './layout.ts';
import { placeWords } from './reading.ts';
import { type Standing, type StandingFacts, standingFacts } from './standing-facts.ts';
import { counted, dayText, why } from './words.ts';

export type StandingOptions = { now: Stamp; wordsOf: (said: Said) => string; zone?: number };

/** The headline, then one line for each open point, however long: to be read, cut and searched line by line. */
export function standingText(ledger: Ledger, { now, wordsOf, zone }: StandingOptions): string {
  const points = toldOnce(ledger, openPointsWithNext(ledger, now));
  const facts = standingFacts(ledger, { now, ...(zone !== undefined && { zone }) });
  return `${[
    ...standingLines(facts),
    ...points.map(
      (one) =>
        `- ${openPointLine({ ...one, because: `${one.because}${gapWords(ledger, one)}${voidBeadWords(ledger, one, now)}` }, wordsOf, ledger)}`,
    ),
    ...notAskedSentences(facts).map((one) => `not asked: ${one}`),
  ].join('\n')}\n`;
}

/** What nobody declared, and so nothing asked for. */
export const notAskedSentences = (facts: Pick<StandingFacts, 'notAsked'>): string[] => facts.notAsked.map(notAskedText);

/** "cam cover 7: off -> cam cover 7 back" */
export function openPointLine(point: OpenPoint, wordsOf: (said: Said) => string, ledger: Ledger = emptyLedger): string {
  const { code, at, because, next } = point;
  const call = next ? wordsOf(next) : 'no call is free towards it yet';
  // S7: from anywhere else it reads as a riddle.
  const forWhat = next?.verb === 'confirm-clock' && code !== 'bead-curing' ? ', for what cures before it' : '';
  return plainText(`${placeWords(at)}: ${because}${firstWords(ledger, point)} -> ${call}${forWhat}`);
}

/** X2: released only when X1 allowed it and nothing was written since; everything else says plainly that it is not. */
export const standingLines = (facts: StandingFacts): string[] => standingPoints(facts).flatMap(headed);

export function standingPoints({ fileEnd, standing, open, leavings }: StandingFacts): string[] {
  const points = counted(open.length, 'open point');
  // What was said before a release that held is history, and stands in the log.
  const none = standing.state === 'released' ? [] : leavings.filter((l) => l.how === 'said');
  return [
    ...(fileEnd === undefined ? [] : [`NOT SURE: ${fileEnd}`]),
    ...headline(standing, open.length, points),
    ...none.map((l) => `A RELEASE THAT WAS NONE: said by ${l.by} on ${dayText(l)} in line ${l.n}, and not allowed.`),
  ];
}

function headline(standing: Standing, open: number, points: string): string[] {
  switch (standing.state) {
    case 'released': {
      const { by, at, writtenAfter } = standing;
      const when = `by ${by} on ${dayText(at)}, line ${at.n}`;
      if (writtenAfter === 0 && open === 0) return [`RELEASED ${when}`];
      return [
        `NOT RELEASED AS IT STANDS, ${points}`,
        `The release ${when}, no longer covers the log: ${counted(writtenAfter, 'line')} written after it.`,
      ];
    }
    case 'left':
      return [
        `LEFT UNRELEASED: NOT FIT TO DRIVE, ${points}`,
        `called by ${standing.by} on ${dayText(standing.at)}${why(standing.because)}`,
      ];
    case 'here':
      return open > 0 ? [`NOT RELEASED, ${points}`] : ['NOT RELEASED; nothing is open, release may be called'];
  }
}
