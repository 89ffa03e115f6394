// A candidate in the trade's words: the place, and why. What is to be called is worded by the table of calls.
import { subjectText, withinArea } from './subjects.ts';
import type { Candidate } from './whose.ts';

const shown = 4;

/** "cam cover 7 (or 2, 5)", "cam cover, a hole nobody called", "parts box: new bolt", "no part of this job". */
export function candidatePlace({ as, place, holes }: Candidate): string {
  const others = holes.slice(1, 1 + shown).map(withinArea);
  const more = holes.length - 1 - others.length;
  const or = others.length === 0 ? '' : ` (or ${others.join(', ')}${more > 0 ? ` and ${more} more` : ''})`;
  switch (as) {
    case 'open':
    case 'closed':
      return `${subjectText(place)}${or}`;
    case 'never called':
      return `${subjectText(place)}${or}${holes.length === 0 ? ', a hole nobody called' : ', never called off'}`;
    case 'old one':
      return `the old one of ${subjectText(place)}${or}`;
    case 'new one':
      return `parts box: ${subjectText(place)}`;
    case 'not of this job':
      return 'no part of this job';
  }
}

export const candidateLine = (candidate: Candidate): string =>
  `${candidate.verdict}: ${candidatePlace(candidate)}: ${candidate.because}`;
