// How many random jobs, and at how many of their lines, were held against the second model, summed over all runs: tests/agreement/done.jsonl has a row a
// run, with the seeds it did and a mark of the sources it did them on. A run that was killed has its row, up to the last
// time it told of itself.
import { createHash } from 'node:crypto';
import { appendFileSync, existsSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * `beginnings`: after how many lines of all its jobs they were compared; older runs did not count them, and compared at
 * the end at least. `parted`: the seeds at which the ledgers parted, mended since or not.
 */
export type Run = { core: string; day: string; first: number; done: number; beginnings?: number; parted: number[] };

const root = fileURLToPath(new URL('../../', import.meta.url));
const file = fileURLToPath(new URL('done.jsonl', import.meta.url));

/** Of all the sources that both ledgers are made of. */
export function markOfCore(): string {
  const sum = createHash('sha256');
  for (const folder of ['src/trade', 'src/job', 'tests/model'])
    for (const name of (readdirSync(join(root, folder), { recursive: true }) as string[]).sort())
      if (name.endsWith('.ts')) sum.update(name).update(readFileSync(join(root, folder, name)));
  return sum.digest('hex').slice(0, 12);
}

export function runsDone(path = file): Run[] {
  if (!existsSync(path)) return [];
  const rows = readFileSync(path, 'utf8').split('\n').filter(Boolean);
  return rows.map((row) => JSON.parse(row) as Run);
}

/** Puts the run's row in the place of the one it had. */
export function noteRun(run: Run, path = file): void {
  const others = runsDone(path).filter(({ core, first }) => core !== run.core || first !== run.first);
  const draft = join(dirname(path), `.done-${process.pid}`);
  writeFileSync(draft, '');
  for (const each of [...others, run]) appendFileSync(draft, `${JSON.stringify(each)}\n`);
  renameSync(draft, path);
}

/** How many seeds were done at least once; the same seed on another core is counted once. */
export function seedsDone(runs: readonly Run[]): number {
  let upTo = Number.NEGATIVE_INFINITY;
  let all = 0;
  for (const { first, done } of [...runs].sort((a, b) => a.first - b.first)) {
    const end = first + done;
    all += Math.max(0, end - Math.max(first, upTo));
    upTo = Math.max(upTo, end);
  }
  return all;
}

/** Sequences of calls at whose end the two were compared: every beginning of a job is one. */
export const beginningsDone = (runs: readonly Run[]): number =>
  runs.reduce((sum, { done, beginnings }) => sum + (beginnings ?? done), 0);

/** The first seed behind all that were done. */
export const nextSeed = (runs: readonly Run[]): number =>
  runs.reduce((most, { first, done }) => Math.max(most, first + done), 1);
