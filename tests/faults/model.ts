// Random call sequences against the second model: a few here, and beside them how many any run has ever done
// (`npm run model -- on MINUTES` goes on from there).
import { equal } from 'node:assert/strict';
import { compared } from '../agreement/compare.ts';
import { beginningsDone, markOfCore, runsDone, seedsDone } from '../agreement/tally.ts';
import { inWords } from '../model/agree.ts';
import { type Row, type Size, trialsOf } from './row.ts';

export async function secondModel({ long, seed: first }: Size): Promise<Row> {
  const trials = trialsOf('random call sequences against the second model');
  for (let seed = first; seed < first + (long ? 300 : 3); seed++)
    await trials.one(`npm run model -- 1 ${seed}`, () => {
      const { disagreement } = compared(seed, { atLines: 0.06, inAllWays: 0.15 });
      equal(disagreement ? inWords(disagreement.difference) : '', '');
    });
  const runs = runsDone();
  const now = runs.filter(({ core }) => core === markOfCore());
  const parted = runs.flatMap((run) => run.parted).length;
  const many = (of: typeof runs) =>
    `${seedsDone(of).toLocaleString('en')} jobs held at ${beginningsDone(of).toLocaleString('en')} of their lines`;
  trials.remark = `in all runs so far ${many(runs)}, parted at ${parted}; ${many(now)} on these very sources`;
  return trials;
}
