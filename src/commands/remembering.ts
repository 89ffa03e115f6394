// Between jobs and what is remembered of their vehicles: what a vehicle's earlier jobs left, told when it comes again, and
// what is kept of a job when it is closed.
import type { Line } from '../job/line.ts';
import { readLog } from '../job/log.ts';
import { machineClock } from '../session/clock.ts';
import { sheetFacts } from '../sheet/facts.ts';
import { memoryOf, remindersOf } from '../sheet/memory.ts';
import type { Fault } from '../store/fault.ts';
import { isFault } from '../store/fault.ts';
import { maybeSame, type Named, openVehicles, type Vehicles } from '../store/vehicles.ts';

/** What to tell when a job opens on this vehicle. */
export const remindersFrom =
  (vehicles: Vehicles) =>
  (vehicle: Named): string[] =>
    remindersOf(
      vehicles
        .all()
        .filter((one) => maybeSame(one, vehicle))
        .flatMap((one) => one.jobs)
        .sort((a, b) => a.openedMs - b.openedMs),
    );

/**
 * Keeps what is worth keeping of a job. The file is read anew, so that two programs closing two jobs lose neither.
 * @returns why it could not be kept; the next closing of the job with a call on it keeps all of it
 */
export async function keepMemory(path: string, job: string, lines: readonly Line[]): Promise<Fault | undefined> {
  const now = { ...machineClock()(), run: (lines.at(-1)?.run ?? 0) + 1 };
  const facts = sheetFacts(readLog(lines), { now });
  const memory = memoryOf(job, facts);
  if (!memory) return undefined;
  try {
    const vehicles = await openVehicles(path);
    if (vehicles.fault) return vehicles.fault;
    const { label, registration } = facts.vehicle;
    await vehicles.remember({ label, ...(registration && { registration }) }, memory);
    return undefined;
  } catch (thrown) {
    if (isFault(thrown)) return thrown;
    throw thrown;
  }
}
