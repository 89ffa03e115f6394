// Between jobs and what is remembered of their vehicles: what a vehicle's earlier jobs left, told when it comes again, and
// what is kept of a job when it is closed.
import { isDeepStrictEqual } from 'node:util';
import type { Line } from '../job/line.ts';
import { readLog } from '../job/log.ts';
import { machineClock } from '../session/clock.ts';
import { sheetFacts } from '../sheet/facts.ts';
import { memoryOf, remindersOf } from '../sheet/memory.ts';
import type { Fault } from '../store/fault.ts';
import { isFault } from '../store/fault.ts';
import { maybeSame, type Named, openVehicles, type Vehicles } from '../store/vehicles.ts';

/** Kept at once, not only when the job is closed: what ends the program may leave no time for it. */
const keptAtOnce: ReadonlySet<string> = new Set(['job-opened', 'registration-noted', 'released', 'left-unreleased']);

export type Remembering = {
  /** Told of every line that is on the disk. */
  saved(line: Line): void;
  /** The job is closed with these lines. @returns why they could not be kept; the next closing keeps all of it */
  closed(lines: readonly Line[]): Promise<Fault | undefined>;
};

/** Keeps of a job what is worth it, one after the other. @param lines those on the disk */
export function rememberingOf(path: string, job: string, lines: () => readonly Line[]): Remembering {
  const before = lines().length;
  let last: Promise<Fault | undefined> = Promise.resolve(undefined);
  return {
    saved(line) {
      if (!line.entries.some((e) => keptAtOnce.has(e.kind))) return;
      // What cannot be kept now is told at the closing, which tries again.
      last = last.then(() => keepMemory(path, job, lines())).catch(() => undefined);
    },
    async closed(all) {
      await last;
      return keepMemory(path, job, all, { onlyIfKnown: all.length === before });
    },
  };
}

/** What to tell when this job opens on a vehicle; what it left itself, when it was closed before, is no news to it. */
export const remindersFrom =
  (vehicles: Vehicles, { job, lines }: { job: string; lines(): readonly Line[] }) =>
  (vehicle: Named): string[] =>
    remindersOf(
      vehicles
        .all()
        .filter((one) => maybeSame(one, vehicle))
        .flatMap((one) => one.jobs)
        .filter((one) => one.job !== job || one.openedMs !== lines()[0]?.atMs)
        .sort((a, b) => a.openedMs - b.openedMs),
    );

/**
 * Keeps what is worth keeping of a job. The file is read anew, so that two programs closing two jobs lose neither.
 * @param onlyIfKnown no call was made: what is remembered of it may be behind, where the program was ended from outside;
 * what is not remembered at all may have been forgotten, and stays so
 * @returns why it could not be kept
 */
async function keepMemory(
  path: string,
  job: string,
  lines: readonly Line[],
  { onlyIfKnown = false } = {},
): Promise<Fault | undefined> {
  const now = { ...machineClock()(), run: (lines.at(-1)?.run ?? 0) + 1 };
  const facts = sheetFacts(readLog(lines), { now });
  const memory = memoryOf(job, facts);
  if (!memory) return undefined;
  try {
    const vehicles = await openVehicles(path);
    if (vehicles.fault) return onlyIfKnown ? undefined : vehicles.fault;
    const { label, registration } = facts.vehicle;
    const known = vehicles.all().flatMap(({ jobs, ...of }) => jobs.map((one) => ({ of, one })));
    const kept = known.find(({ one }) => one.job === memory.job && one.openedMs === memory.openedMs);
    const isAsKept = kept && kept.of.registration === registration && isDeepStrictEqual(kept.one, memory);
    if (kept ? isAsKept : onlyIfKnown) return undefined;
    await vehicles.remember({ label, ...(registration && { registration }) }, memory);
    return undefined;
  } catch (thrown) {
    if (isFault(thrown)) return thrown;
    throw thrown;
  }
}
