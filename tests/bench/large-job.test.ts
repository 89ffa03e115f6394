// The job that is measured is a job: every call legal, nothing misfit, the books agree, and folding it line by line gives
// what folding it at once does.
import { expect, it } from 'vitest';
import { bookDifferences } from '../../src/job/books.ts';
import { type Drawers, everyKey } from '../../src/job/drawers.ts';
import { emptyLedger, everySort, isStruck } from '../../src/job/ledger.ts';
import { type Line, readLine } from '../../src/job/line.ts';
import { appendLine, readLog } from '../../src/job/log.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { largeJob } from './large-job.ts';

const size = { lines: 2000, fasteners: 500, areas: 6 };
const lines = largeJob(size);
const last = lines.at(-1) as Line;
const heldIn = (drawers: Drawers<unknown>) => Object.fromEntries(everyKey(drawers));

it('a long job is made of legal lines that read back, the same every time', () => {
  expect(lines).toHaveLength(size.lines);
  const read = lines.map((line) => readLine(JSON.parse(JSON.stringify(line))));
  expect(read.filter((one) => !one.ok)).toEqual([]);
  expect(largeJob({ ...size, lines: 300 })).toEqual(lines.slice(0, 300));
});

it('[U1] a long job with strikes and restores has no misfit, balanced books, and one standing however it is folded', () => {
  const whole = readLog(lines);
  let grown = emptyLedger;
  for (const line of lines) grown = appendLine(grown, line);
  expect([...everyKey(whole.misfits)]).toEqual([]);
  expect(bookDifferences(whole)).toEqual([]);
  for (const sort of everySort) expect(heldIn(grown.states[sort])).toEqual(heldIn(whole.states[sort]));
  expect(grown.tallies).toEqual(whole.tallies);
  expect(openPoints(grown, last)).toEqual(openPoints(whole, last));
  expect(whole.tallies.all.holes).toBe(size.fasteners);
  const struck = lines.filter((line) => isStruck(whole, line.n)).length;
  const restored = lines.filter((line) => line.call === 'restore').length;
  expect(struck).toBeGreaterThan(5);
  expect(restored).toBeGreaterThan(5);
});
