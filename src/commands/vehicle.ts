// vehicle: what is remembered of a vehicle, everything of it in one file, and forgetting it.
import { unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { stateOf } from '../job/ledger.ts';
import { type Line, readLine } from '../job/line.ts';
import { readLog } from '../job/log.ts';
import { memoryText } from '../sheet/memory.ts';
import { counted } from '../sheet/words.ts';
import { copiesOf } from '../store/copies.ts';
import { realDisk } from '../store/disk.ts';
import { fault, faultFrom, isFault } from '../store/fault.ts';
import { openJob } from '../store/open-job.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { jobsIn } from '../store/shelf.ts';
import { goesBy, type Named, openVehicles, type RememberedVehicle, type Vehicles } from '../store/vehicles.ts';
import { perhaps } from '../trade/perhaps.ts';
import { type Command, exits, type Out, type Parsed } from './answer.ts';
import { orFault } from './opening.ts';
import { write } from './sheet.ts';
import { notOne, tooMany } from './slips.ts';

type OnFile = { job: string; path: string; vehicle: Named; lines: readonly Line[] };

export const vehicle: Command = {
  name: 'vehicle',
  usage: 'vehicle list | show VEHICLE | export VEHICLE [-o FILE] [--force] | forget VEHICLE [--with-jobs [--force]]',
  help: 'what is remembered of a vehicle, named by registration or label; export gives everything of it as JSON, job logs too; forget takes it out of the memory, --with-jobs deletes its job files and their copies as well, those not released only with --force',
  branches: ['list', 'show', 'export', 'forget'],
  options: { o: 'value', force: 'flag', 'with-jobs': 'flag' },
  run: (args, out) =>
    orFault(out, async () => {
      const [what, named] = args.names;
      const isWhole = what === 'list' ? args.names.length === 1 : args.names.length === 2;
      const act = isWhole && what !== undefined ? acts.get(what) : undefined;
      if (!act) {
        out.complain(`countback: ${whyNot(args.names)}; ${vehicle.usage}`);
        return exits.usage;
      }
      const vehicles = await openVehicles(placesOn(thisMachine()).vehicles);
      if (vehicles.fault) throw vehicles.fault;
      return act(vehicles, named ?? '', args, out);
    }),
};

type Act = (vehicles: Vehicles, named: string, args: Parsed, out: Out) => Promise<number>;
const acts: ReadonlyMap<string, Act> = new Map(Object.entries({ list, show, export: exportAll, forget }));

function whyNot([what, ...names]: readonly string[]): string {
  if (what === undefined) return 'say what to do';
  const isKnown = acts.has(what);
  if (!isKnown) return `vehicle does not know ${JSON.stringify(what)}${perhaps(what, [...acts.keys()])}`;
  return what === 'list' ? tooMany(names) : notOne(names, 'vehicle');
}

const nameText = ({ label, registration }: Named): string => (registration ? `${label}, ${registration}` : label);

async function list(vehicles: Vehicles, _: string, __: Parsed, out: Out): Promise<number> {
  const all = vehicles.all();
  for (const one of all) out.write(`${nameText(one)}: ${counted(one.jobs.length, 'job')}\n`);
  if (all.length === 0) out.write('no vehicle is remembered yet: one is once a job on it is closed\n');
  return exits.fine;
}

async function show(vehicles: Vehicles, named: string, _: Parsed, out: Out): Promise<number> {
  const found = vehicles.all().filter((one) => goesBy(one, named));
  if (found.length === 0) return notRemembered(named, out);
  for (const one of found) out.write(`${[nameText(one), ...one.jobs.flatMap(memoryText)].join('\n')}\n`);
  return exits.fine;
}

async function notRemembered(named: string, out: Out): Promise<number> {
  const { jobs } = await jobsOf(named);
  if (jobs.length === 0) throw unknown(named);
  out.write('nothing is remembered of it; a call in one of its jobs is remembered anew:\n');
  for (const { path } of jobs) out.write(`  ${path}\n`);
  return exits.fine;
}

async function exportAll(vehicles: Vehicles, named: string, args: Parsed, out: Out): Promise<number> {
  const remembered = vehicles.all().filter((one) => goesBy(one, named));
  const { jobs, unread } = await jobsOf(named);
  if (remembered.length === 0 && jobs.length === 0) throw unknown(named);
  const files = await Promise.all(
    jobs.map(async ({ job, path, lines }) => ({ job, path, copies: await copiesOf(realDisk, path), lines })),
  );
  const text = `${JSON.stringify({ countback: 'vehicle', named, remembered, jobs: files }, null, 2)}\n`;
  const file = args.values.get('o');
  if (file === undefined) out.write(text);
  else if (await write(file, text, args.flags.has('force'))) out.write(`${file}: ${counted(jobs.length, 'job')}\n`);
  for (const path of unread)
    out.complain(`countback: ${path} could not be read, and is not in it if it is of this vehicle`);
  return exits.fine;
}

async function forget(vehicles: Vehicles, named: string, args: Parsed, out: Out): Promise<number> {
  const remembered = vehicles.all().filter((one) => goesBy(one, named));
  const { jobs, unread } = await jobsOf(named);
  if (remembered.length === 0 && jobs.length === 0) throw unknown(named);
  const names = new Set([...remembered, ...jobs.map((j) => j.vehicle)].map((one) => one.registration ?? one.label));
  if (names.size > 1) {
    const next = `say which: ${[...names].join(', ')}`;
    throw fault('bad-name', 'several vehicles go by this name', named, next);
  }
  if (args.flags.has('with-jobs')) {
    const open = args.flags.has('force') ? [] : jobs.filter(({ lines }) => !isReleased(lines));
    if (open.length > 0) {
      const what = `${counted(open.length, 'job')} of it ${open.length === 1 ? 'is' : 'are'} not released, and nothing was deleted`;
      throw fault('exists', what, open.map(({ path }) => path).join(', '), '--force deletes what is not released too');
    }
    // All or none, as far as that can be known before the first is gone.
    for (const one of jobs) await notInUse(one);
    for (const one of jobs) await deleteJob(one, out);
  }
  for (const one of remembered) await forgetOne(vehicles, one);
  out.write(`forgotten: ${[...names].join(', ')}\n`);
  if (!args.flags.has('with-jobs'))
    for (const { path } of jobs) out.write(`still tells of it, and a call in it is remembered anew: ${path}\n`);
  for (const path of [...unread, ...(await putAside())]) out.write(`could not be read, and may tell of it: ${path}\n`);
  out.write('Printed sheets, exports, backups and job files kept elsewhere are not reached.\n');
  return exits.fine;
}
/** Files put aside where a copy took their place. */
async function putAside(): Promise<string[]> {
  const { jobs } = placesOn(thisMachine());
  const names = await realDisk.readdir(jobs).catch(() => []);
  return names.filter((name) => /\.(?:broken|cut|aside)$/.test(name)).map((name) => join(jobs, name));
}
const isReleased = (lines: readonly Line[]): boolean =>
  (stateOf(readLog(lines), 'vehicle', 'vehicle')?.releasedAt ?? 0) > 0;
const forgetOne = (vehicles: Vehicles, one: RememberedVehicle) => vehicles.forget(one);

async function deleteJob({ path }: OnFile, out: Out): Promise<void> {
  for (const file of [...(await copiesOf(realDisk, path)), path]) {
    try {
      await unlink(file);
    } catch (thrown) {
      throw faultFrom(thrown, file);
    }
    out.write(`deleted: ${file}\n`);
  }
}

async function notInUse({ path }: OnFile): Promise<void> {
  const job = await openJob({ path, readLine });
  await job.close();
  if (job.mode !== 'write' && job.whyLook) throw job.whyLook;
}

/** The jobs in the folder of jobs that are on this vehicle. */
async function jobsOf(named: string): Promise<{ jobs: OnFile[]; unread: string[] }> {
  const jobs: OnFile[] = [];
  const unread: string[] = [];
  for (const one of await jobsIn(realDisk, placesOn(thisMachine()).jobs)) {
    try {
      if ('fault' in one) throw one.fault;
      const job = await openJob({ path: one.path, readLine, look: true });
      await job.close();
      const lines = job.lines();
      const vehicle = stateOf(readLog(lines), 'vehicle', 'vehicle');
      if (vehicle?.label !== undefined && goesBy(vehicle, named))
        jobs.push({ job: one.job, path: one.path, vehicle, lines });
    } catch (thrown) {
      if (!isFault(thrown)) throw thrown;
      unread.push(one.path);
    }
  }
  return { jobs, unread };
}

const unknown = (named: string) =>
  fault(
    'missing',
    'no vehicle goes by this registration or label',
    named,
    '"countback vehicle list" shows those known',
  );
