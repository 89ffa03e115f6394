// A job at which the two ledgers part, made as small as it can be and part still: what is left is what it takes.
import type { Line } from '../../src/job/line.ts';
import { blank, type Disagreement, disagreementAtEnd, type Job } from './compare.ts';

/** Whether the ledgers part still, and over the same codes. */
function stillParts({ way, difference }: Disagreement): (job: Job) => boolean {
  const codes = (points: readonly string[]) => [...new Set(points.map((point) => point.split(' ')[0]))].sort().join();
  const about = (one: Disagreement['difference']) =>
    [codes(one.onlyAsked), codes(one.onlyModel), one.releasedAsked, one.releasedModel].join(' | ');
  return (job) => {
    const parted = disagreementAtEnd(job, [way]);
    return parted !== null && about(parted.difference) === about(difference);
  };
}

const isBlank = (line: Line): boolean => line.entries === blank;

/** Lines that are blank taken out, the rest numbered anew; what speaks of lines follows. */
function closedUp({ lines, now }: Job): Job {
  const kept = lines.filter((line) => !isBlank(line));
  const numbers = new Map(kept.map((line, at) => [line.n, at + 1]));
  const entries = (line: Line) =>
    line.entries.map((entry) =>
      entry.kind === 'calls-struck' || entry.kind === 'calls-restored'
        ? { ...entry, lines: entry.lines.map((n) => numbers.get(n) ?? 9999) }
        : entry,
    ) as Line['entries'];
  return { now, lines: kept.map((line, at) => ({ ...line, n: at + 1, entries: entries(line) })) };
}

export function shrunk(found: Disagreement): Job {
  const parts = stillParts(found);
  let job: Job = { lines: found.lines, now: found.now };
  const without = (at: number, entries: Line['entries']): Job => ({
    ...job,
    lines: job.lines.map((line, place) => (place === at ? { ...line, entries } : line)),
  });
  const orLess = (less: Job): boolean => {
    if (!parts(less)) return false;
    job = less;
    return true;
  };
  // A strike can go once what it struck is gone.
  for (let round = 0; round < 2; round++) {
    for (let at = job.lines.length - 1; at >= 0; at--) {
      if (!isBlank(job.lines[at] as Line)) orLess(without(at, blank));
    }
  }
  for (let at = job.lines.length - 1; at >= 0; at--) {
    for (let one = (job.lines[at] as Line).entries.length - 1; one >= 0; one--) {
      const entries = (job.lines[at] as Line).entries.filter((_, place) => place !== one);
      if (entries.length > 0) orLess(without(at, entries as unknown as Line['entries']));
    }
  }
  orLess(closedUp(job));
  return job;
}
