// What the workshop remembers of vehicles, by registration or else by its own label: one small file, whole and durable.
// It can be read, taken out as a whole and forgotten; a job file does not depend on it.
import { Low } from 'lowdb';
import * as z from 'zod';
import { plainDeep } from '../trade/plain-text.ts';
import { type Disk, realDisk } from './disk.ts';
import { type Fault, fault, faultFrom } from './fault.ts';
import { whereJsonBreaks } from './json-place.ts';
import { wholeFileAdapter } from './whole-file-adapter.ts';

/** Made when a file is read: most starts show something before that. */
function fileSchema() {
  const words = z.string().max(2000);
  const distance = z.strictObject({ distance: z.number().nonnegative(), unit: z.enum(['km', 'mi']) });
  const stillKnown = z.strictObject({ place: words, what: words });
  const job = z.strictObject({
    job: words,
    /** When the job was opened, UTC; with its name it tells one job from another. */
    openedMs: z.number(),
    /** The day it was opened, where it was opened. */
    day: words,
    standing: z.enum(['here', 'released', 'left']),
    odometer: distance.optional(),
    services: z.array(z.strictObject({ service: words, state: words })),
    findings: z.array(stillKnown.extend({ closed: words.optional() })),
    /** What was fitted instead of what belongs there, why, and threads that were repaired. */
    substitutes: z.array(stillKnown),
    threads: z.array(stillKnown),
    due: z.array(z.strictObject({ what: words, on: words.optional(), atDistance: z.number().optional() })),
  });
  const vehicle = z.strictObject({ label: words, registration: words.optional(), jobs: z.array(job) });
  return z.strictObject({ countback: z.literal('vehicles'), vehicles: z.array(vehicle) });
}
type AsWritten = z.infer<ReturnType<typeof fileSchema>>;

export type RememberedVehicle = AsWritten['vehicles'][number];
export type RememberedJob = RememberedVehicle['jobs'][number];
export type Named = { label: string; registration?: string };

export type Vehicles = {
  all(): readonly RememberedVehicle[];
  /** Why the file could not be read; nothing is remembered then, and it is not written over. */
  readonly fault?: Fault;
  /** Puts a job in the place of what was remembered of it. Throws a fault. */
  remember(vehicle: Named, job: RememberedJob): Promise<void>;
  /** Throws a fault; afterwards nothing of the vehicle is in the file. */
  forget(vehicle: RememberedVehicle): Promise<void>;
};

export async function openVehicles(path: string, disk: Disk = realDisk): Promise<Vehicles> {
  const adapter = wholeFileAdapter(disk, path, (text) => readVehicles(text, path));
  const low = new Low<AsWritten>(adapter, { countback: 'vehicles', vehicles: [] });
  let unread: Fault | undefined;
  try {
    await low.read();
  } catch (thrown) {
    unread = faultFrom(thrown, path);
  }
  async function put(vehicles: RememberedVehicle[]): Promise<void> {
    const before = low.data;
    low.data = { countback: 'vehicles', vehicles };
    try {
      await low.write();
    } catch (thrown) {
      low.data = before;
      throw faultFrom(thrown, path);
    }
  }
  return {
    all: () => low.data.vehicles,
    ...(unread && { fault: unread }),
    async remember(vehicle, job) {
      const known = low.data.vehicles.find((one) => isSame(one, vehicle));
      const others = withoutJob(known?.jobs ?? [], job);
      const { label, registration } = vehicle;
      const now: RememberedVehicle = {
        label,
        ...(registration && { registration }),
        jobs: [...others, job].sort((a, b) => a.openedMs - b.openedMs),
      };
      // Of a registration that came to be known later it was remembered by its label alone.
      const rest = low.data.vehicles
        .filter((one) => one !== known)
        .map((one) => ({ ...one, jobs: withoutJob(one.jobs, job) }))
        .filter((one) => one.jobs.length > 0);
      await put([...rest, now]);
    },
    forget: (vehicle) => put(low.data.vehicles.filter((one) => one !== vehicle)),
  };
}

const withoutJob = (jobs: RememberedVehicle['jobs'], { job, openedMs }: RememberedVehicle['jobs'][number]) =>
  jobs.filter((one) => one.job !== job || one.openedMs !== openedMs);

function readVehicles(text: string, path: string): AsWritten {
  const bad = (what: string, where: string) =>
    fault('bad-settings', what, where, 'put it right, or move it elsewhere; nothing is remembered meanwhile');
  let value: unknown;
  try {
    value = plainDeep(JSON.parse(text) as unknown);
  } catch {
    const { line, column } = whereJsonBreaks(text) ?? { line: 1, column: 1 };
    throw bad('this is no JSON from here on', `${path}, line ${line}, column ${column}`);
  }
  const read = fileSchema().safeParse(value);
  if (read.success) return read.data;
  throw bad(
    'this is not what the program remembers of vehicles',
    `${path}, ${read.error.issues[0]?.path.join('.') ?? ''}`,
  );
}

const plate = (registration: string | undefined): string =>
  (registration ?? '').toUpperCase().replace(/[^\p{L}\p{N}]/gu, '');
const plainLabel = (label: string): string => label.trim().toLowerCase().replace(/\s+/g, ' ');

/** One vehicle: by registration where it has one, spaces and strokes apart, else by label. */
const isSame = (one: Named, other: Named): boolean =>
  plate(one.registration) === plate(other.registration) &&
  (plate(one.registration) !== '' || plainLabel(one.label) === plainLabel(other.label));

/** Those that a new job may be on: of its registration, or of its label where one of the two has no registration. */
export const maybeSame = (one: Named, other: Named): boolean =>
  isSame(one, other) ||
  ((plate(one.registration) === '' || plate(other.registration) === '') &&
    plainLabel(one.label) === plainLabel(other.label));

/** Those that go by this registration or label. */
export const goesBy = (vehicle: Named, named: string): boolean =>
  (plate(named) !== '' && plate(vehicle.registration) === plate(named)) ||
  plainLabel(vehicle.label) === plainLabel(named);
