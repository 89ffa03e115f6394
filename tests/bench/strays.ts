// How often the right place of a leftover comes first, and among the first three, on played jobs that no odds were chosen on;
// beside the better of two baselines on the same jobs, by size of job and by kind of mistake. And how long it takes.
import { whose } from '../../src/job/whose.ts';
import { knownFieldsAndTray, openWithThisHead } from '../strays/baselines.ts';
import { largeJobLeft } from '../strays/leftover.ts';
import { type Hits, type Score, scoresOver } from '../strays/scoring.ts';
import { type Figure, figure } from './figure.ts';

/** Held out: the odds in src/job were chosen on other seeds, all below 9000. */
const held = { from: 9000, to: 9999 };
const rounds = 9;

const share = (hits: Hits | undefined, of: 'first' | 'amongThree'): number =>
  hits && hits.strays > 0 ? hits[of] / hits.strays : 0;

function compared(name: string, what: string, ours: Hits, theirs: readonly (Hits | undefined)[]): Figure[] {
  const better = (of: 'first' | 'amongThree') => Math.max(...theirs.map((hits) => share(hits, of)));
  const many = `${ours.strays} strays`;
  return (['first', 'amongThree'] as const).map((of) =>
    figure(
      {
        name,
        of: `${of === 'first' ? 'right place first' : 'among three'} / by the better baseline, ${what}, ${many}`,
        unit: 'share',
        ...(name === 'all' && { goal: of === 'first' ? '0.20 above the baseline, or >= 0.95' : '>= 0.95' }),
      },
      [share(ours, of)],
      [better(of)],
    ),
  );
}

const byName = (of: 'byKind' | 'bySize', [ours, ...theirs]: readonly Score[], what: string): Figure[] =>
  [...(ours as Score)[of]]
    .toSorted(([a], [b]) => a.localeCompare(b, 'en', { numeric: true }))
    .flatMap(([name, hits]) =>
      compared(
        name,
        what,
        hits,
        theirs.map((one) => one[of].get(name)),
      ),
    );

/** Ten strays of a job of 400 fasteners at once, each time with a ledger that was never asked before. */
function answerTime(): Figure {
  const job = largeJobLeft(400);
  const ten = Array.from({ length: 10 }, (_, i) => job.strays[i % job.strays.length]?.asked ?? { spec: {} });
  const time = (rank: (ledger: typeof job.ledger, strays: typeof ten) => unknown): number => {
    const before = performance.now();
    rank({ ...job.ledger }, ten);
    return performance.now() - before;
  };
  const ours = Array.from({ length: rounds }, () => time(whose));
  const theirs = Array.from({ length: rounds }, () => time(knownFieldsAndTray));
  return figure(
    {
      name: 'answer',
      of: `${job.fasteners} fasteners, 10 strays at once / known fields and tray`,
      unit: 'ms',
      goal: '< 100 ms',
    },
    ours,
    theirs,
  );
}

export async function straysPlaced(): Promise<Figure[]> {
  const scores = scoresOver(held.from, held.to, [whose, openWithThisHead, knownFieldsAndTray]);
  const [ours, ...theirs] = scores as [Score, ...Score[]];
  return [
    answerTime(),
    ...compared(
      'all',
      `seeds ${held.from} to ${held.to}`,
      ours.all,
      theirs.map((one) => one.all),
    ),
    ...byName('bySize', scores, 'jobs of so many fasteners'),
    ...byName('byKind', scores, 'after this mistake'),
  ];
}
