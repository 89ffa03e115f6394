// How often the right answer comes first, and how often among the first three: by kind of mistake and by size of job.
import { rankOf } from './answer.ts';
import type { Ranker } from './baselines.ts';
import { type Leftovers, leftoversOf } from './leftover.ts';

export type Hits = { strays: number; first: number; amongThree: number };
export type Missed = { seed: number; stray: number; kind: string; rank: number };
export type Score = { all: Hits; byKind: Map<string, Hits>; bySize: Map<string, Hits>; missed: Missed[] };

const none = (): Hits => ({ strays: 0, first: 0, amongThree: 0 });
export const newScore = (): Score => ({ all: none(), byKind: new Map(), bySize: new Map(), missed: [] });

export const sizeOf = (fasteners: number): string =>
  fasteners < 50 ? '20 to 49' : fasteners < 100 ? '50 to 99' : fasteners < 200 ? '100 to 199' : '200 and more';

export function scoreOn(job: Leftovers, rank: Ranker, score: Score): void {
  const answers = rank(
    job.ledger,
    job.strays.map((one) => one.asked),
  );
  for (const [i, stray] of job.strays.entries()) {
    const at = rankOf(job.ledger, stray.answer, answers[i] ?? []);
    const size = sizeOf(job.fasteners);
    for (const hits of [score.all, within(score.byKind, stray.kind), within(score.bySize, size)]) {
      hits.strays++;
      if (at === 1) hits.first++;
      if (at <= 3) hits.amongThree++;
    }
    if (at > 1) score.missed.push({ seed: job.seed, stray: i, kind: stray.kind, rank: at });
  }
}
function within(all: Map<string, Hits>, name: string): Hits {
  const hits = all.get(name) ?? none();
  all.set(name, hits);
  return hits;
}

/** Several rankings over the same jobs. */
export function scoresOver(from: number, to: number, rankers: readonly Ranker[]): Score[] {
  const scores = rankers.map(newScore);
  for (let seed = from; seed <= to; seed++) {
    const job = leftoversOf(seed);
    for (const [i, rank] of rankers.entries()) scoreOn(job, rank, scores[i] as Score);
  }
  return scores;
}
