// The ledger alone, without screen or disk: what grows with the length of the job and what does not.

import { decide } from '../../src/job/decide.ts';
import type { Ledger } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { appendLine, readLog } from '../../src/job/log.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { type Figure, figure } from './figure.ts';
import { largeLines } from './job-file.ts';
import { long, short } from './large-job.ts';

const rounds = 9;
const warmUp = 3;

/** Milliseconds of one of `times` runs, `rounds` times over. */
function timed(times: number, run: () => void): number[] {
  const one = () => {
    const before = performance.now();
    for (let i = 0; i < times; i += 1) run();
    return (performance.now() - before) / times;
  };
  for (let i = 0; i < warmUp; i += 1) one();
  return Array.from({ length: rounds }, one);
}

type Job = { ledger: Ledger; now: Stamp; slackAndTight: readonly Line[]; struck: number };

function jobOf(lines: readonly Line[]): Job {
  const ledger = readLog(lines);
  const last = lines.at(-1) as Line;
  const now: Stamp = { atMs: last.atMs + 1000, zoneMin: last.zoneMin, run: last.run, awakeMs: last.awakeMs + 1000 };
  const tight = lines.find((l) => l.call === 'tighten') as Line;
  const hole = tight.entries.flatMap((e) => (e.kind === 'fastener-tightened' ? [e.hole] : []))[0];
  const slack = called(ledger, now, 'slacken', { hole });
  const then = appendLine(ledger, slack);
  return { ledger, now, slackAndTight: [slack, called(then, now, 'tighten', { hole, last: true })], struck: tight.n };
}
function called(ledger: Ledger, now: Stamp, verb: string, said: Record<string, unknown>): Line {
  const answer = decide(ledger, { verb, ...said }, now);
  if ('refused' in answer) throw new Error(`${verb}: ${answer.refused.because}`);
  return { n: ledger.lines.length + 1, ...now, call: verb, by: 'key', facing: {}, entries: answer.entries };
}

/** Each goes onto the newest ledger, as on the bench: a row shared by two versions is copied when the older one grows. */
function appending({ ledger: from }: Job, lines: readonly Line[]): number[] {
  let ledger = from;
  let at = 0;
  return timed(20, () => {
    ledger = appendLine(ledger, { ...(lines[at++ % lines.length] as Line), n: ledger.lines.length + 1 });
  });
}
const striking = (job: Job): number[] =>
  appending(job, [called(job.ledger, job.now, 'strike', { lines: [job.struck] })]);
const deciding = ({ ledger, now, struck }: Job): number[] =>
  timed(5, () => decide(ledger, { verb: 'strike', lines: [struck] }, now));
const asking = ({ ledger, now }: Job, what: (ledger: Ledger, now: Stamp) => unknown): number[] =>
  timed(1, () => what(ledger, now));

export async function coreTime(): Promise<Figure[]> {
  const longLines = largeLines('long', long);
  const many = jobOf(longLines);
  const few = jobOf(largeLines('short', short));
  const pair = (name: string, measured: (job: Job) => number[], goal?: string): Figure =>
    figure(
      { name, of: '20,000 lines / 50 fasteners', unit: 'ms', ...(goal && { goal }) },
      measured(many),
      measured(few),
    );
  return [
    pair('append a line', (job) => appending(job, job.slackAndTight), '<= 1.25'),
    pair('fold a strike of an old line', striking),
    pair('decide a strike', deciding),
    pair('open points', (job) => asking(job, openPoints)),
    pair('open points, next calls', (job) => asking(job, openPointsWithNext)),
    figure(
      { name: 'fold 20,000 lines', of: 'writing and parsing their JSON', unit: 'ms' },
      timed(1, () => readLog(longLines)),
      timed(1, () => JSON.parse(JSON.stringify(longLines))),
    ),
  ];
}
