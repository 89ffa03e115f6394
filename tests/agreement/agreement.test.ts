// The program's ledger against the second one: a short run of random jobs, and every job at which they once parted.
// The long run is npm run model.
import { describe, expect, it } from 'vitest';
import { inWords } from '../model/agree.ts';
import { compared, type Disagreement, disagreementIn } from './compare.ts';
import { kindsTooRare, noFigures, note, shortfalls } from './figures.ts';
import { keptJobs } from './kept.ts';
import { sequenceFrom } from './sequences.ts';

const inWordsOrNothing = (found: Disagreement | null): string => (found ? inWords(found.difference) : '');

describe('the two ledgers agree', () => {
  it('[X1 X2 U1] on random jobs, and the jobs are worth it', () => {
    const figures = noFigures();
    for (let seed = 1; seed <= 24; seed++) {
      const { sequence, disagreement } = compared(seed, { atLines: 0.1, inAllWays: 0.2 });
      expect(inWordsOrNothing(disagreement), `seed ${seed}`).toBe('');
      note(figures, sequence);
    }
    // A kind that is in one job of a hundred need not be in the first few.
    for (let seed = 25; seed <= 100 && kindsTooRare(figures).length > 0; seed++) note(figures, sequenceFrom(seed));
    expect(shortfalls(figures)).toEqual([]);
  });

  it('[U1 U2] after every single line of a few, line by line, all at once and with the struck ones blanked out', () => {
    for (const seed of [1001, 1002]) {
      const { disagreement } = compared(seed, { atLines: 1, inAllWays: 0.2 });
      expect(inWordsOrNothing(disagreement), `seed ${seed}`).toBe('');
    }
  });

  it.each(keptJobs())('where they parted once: $about (seed $seed)', ({ seed, ...job }) => {
    expect(inWordsOrNothing(disagreementIn(job))).toBe('');
    expect(inWordsOrNothing(compared(seed, { atLines: 0.03, inAllWays: 0 }).disagreement)).toBe('');
  });
});
