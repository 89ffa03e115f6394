// Opening a job by its name or path for a command, with the plans and the workshop's list at hand.

import { existsSync, lstatSync, realpathSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { type Line, readLine as readJobLine } from '../job/line.ts';
import { machineClock } from '../session/clock.ts';
import { createSession } from '../session/session.ts';
import type { Session } from '../session/session-shape.ts';
import { makeFolders, readFile, realDisk } from '../store/disk.ts';
import { type Fault, fault, faultFrom, isFault } from '../store/fault.ts';
import { createJob, type OpenJob, type OpenJobOptions, openJob } from '../store/open-job.ts';
import { fileNameOf, isPath, type JobPlace, jobPlace, placesOn, slugOf, thisMachine } from '../store/places.ts';
import { openSettings } from '../store/settings.ts';
import { jobsIn, otherwiseCalled } from '../store/shelf.ts';
import { openVehicles } from '../store/vehicles.ts';
import { commandBack, goodCopyOf } from '../store/way-back.ts';
import { perhaps, stepsApart } from '../trade/perhaps.ts';
import { plainText } from '../trade/plain-text.ts';
import { exits, type Out } from './answer.ts';
import { fileCalled } from './called.ts';
import { type PlanShelf, planShelf } from './plans.ts';
import { rememberingOf, remindersFrom } from './remembering.ts';
import { firstAlone } from './settings-told.ts';
import { startedAs } from './started-as.ts';

const faultText = (fault: Fault): string => `countback: ${fault.message}`;

/** Runs `work` and answers a fault with its own line and `unreadable`. */
export async function orFault(out: Out, work: () => Promise<number>): Promise<number> {
  try {
    return await work();
  } catch (thrown) {
    if (!isFault(thrown)) throw thrown;
    out.complain(faultText(thrown));
    return exits.unreadable;
  }
}

/** To read and write nothing; what is odd about the file is told. */
export async function openToLook(named: string, out: Out): Promise<OpenJob<Line>> {
  const job = await openThere(named, placeOf(named), { look: true });
  for (const notice of [...job.notices, ...(job.doubt ? [job.doubt.fault] : [])]) out.complain(faultText(notice));
  return job;
}

export type Opening = {
  fresh?: boolean;
  goOnFrom?: number;
  fromCopy?: string;
  /** Told in one line when what the workshop remembers of the vehicle could not be kept. */
  tell?: (line: string) => void;
  /** The plans are read when they are first asked for, or a moment later; told of each that is left out. */
  plansLater?: (leftOut: Fault) => void;
};

export async function openSession(
  named: string,
  packageRoot: URL,
  { fresh = false, tell, plansLater, ...goOn }: Opening = {},
): Promise<Session> {
  const places = placesOn(thisMachine());
  const place = placeOf(named);
  const begun = fresh ? { goOnFrom: await makeNew(named, place) } : goOn;
  const settings = await openSettings(places.settings);
  const plans = planShelf(packageRoot);
  const job = await openThere(named, place, begun);
  const vehicles = await openVehicles(places.vehicles);
  const leftOut = plansLater ? [] : plans.all().faults;
  const wrong = plansLater ? firstAlone(settings.faults) : settings.faults;
  const notices = [...job.notices, ...wrong, ...leftOut, ...(vehicles.fault ? [vehicles.fault] : [])];
  // Looking at a job is no reason to remember it: it may have been forgotten since. One that lies elsewhere is not the
  // workshop's to remember: forgetting could not reach it.
  const isRemembered = job.mode === 'write' && dirname(place.path) === places.jobs;
  const savedOf = (unsaved: number) => job.lines().slice(0, job.lines().length - unsaved);
  const remembering = isRemembered
    ? rememberingOf(places.vehicles, job.job, () => savedOf(job.unsaved().length))
    : undefined;
  const session = createSession({
    job: {
      ...job,
      notices,
      async append(line) {
        const saved = await job.append(line);
        if (saved.saved) remembering?.saved(line);
        return saved;
      },
    },
    clock: machineClock(),
    plans: () => plans.all().offers,
    plansLeftOut: () => plans.all().faults.length,
    products: settings.settings().sealants,
    intervals: settings.settings().intervals,
    workshop: settings.settings(),
    program: startedAs(process.env),
    reminders: remindersFrom(vehicles, job),
  });
  const reading = plansLater && readInTime(plans, plansLater);
  return {
    ...session,
    async close() {
      clearTimeout(reading?.timer);
      const unsaved = await session.close();
      const unkept = await remembering?.closed(savedOf(unsaved.length));
      if (unkept) tell?.(`what is remembered of this vehicle was not kept: ${unkept.message}`);
      return unsaved;
    },
  };
}

/** Long enough for the first frame, shorter than a hand needs to ask for a plan. */
const plansAfterMs = 150;

/** One file at a time: a key pressed meanwhile waits for one of them at most. */
function readInTime(plans: PlanShelf, told: (leftOut: Fault) => void): { timer: NodeJS.Timeout } {
  const goOn = () => {
    if (plans.readOne()) reading.timer = setTimeout(goOn);
    else for (const one of plans.all().faults) told(one);
  };
  const reading = { timer: setTimeout(goOn, plansAfterMs) };
  return reading;
}

export function placeOf(named: string): JobPlace {
  const place = jobPlace(placesOn(thisMachine()), named);
  if (isFault(place)) throw place;
  return { ...place, path: whereItLies(place.path) };
}
/** D3: a lock lies beside the file. By a link to it another would be taken, and the file have two writers. */
function whereItLies(path: string): string {
  try {
    return lstatSync(path).isSymbolicLink() ? realpathSync(path) : path;
  } catch {
    // What is wrong with it is told where it is opened.
    return path;
  }
}

async function openThere(
  named: string,
  { path }: JobPlace,
  how: Pick<OpenJobOptions<Line>, 'look' | 'goOnFrom' | 'fromCopy'>,
): Promise<OpenJob<Line>> {
  try {
    return await openJob({ path, readLine: readJobLine, ...how });
  } catch (thrown) {
    const called = await calledInstead(thrown, named, path);
    if (called !== undefined) return openJob({ path: called, readLine: readJobLine, ...how });
    throw await notThere(thrown, named, path, how.look === true);
  }
}
/**
 * The file of the job that the shelf calls so, where none bears that name; not where a copy of the one that did holds what
 * is not in it.
 * @param path where one of that name would lie
 */
export async function calledInstead(thrown: unknown, named: string, path: string): Promise<string | undefined> {
  if (!isFault(thrown) || thrown.kind !== 'missing' || isPath(named)) return undefined;
  const called = await fileCalled(named);
  const copy = called === undefined ? undefined : await goodCopyOf(realDisk, path, readJobLine);
  if (called === undefined || !copy) return called;
  const held = await readFile(realDisk, copy.path);
  return (await readFile(realDisk, called, held.length)).equals(held) ? called : undefined;
}

/** Of a job that was named by its name and is not there: which jobs there are. */
export async function notThere(thrown: unknown, named: string, path: string, toLook = false): Promise<unknown> {
  if (!isFault(thrown) || thrown.kind !== 'missing') return thrown;
  const copy = await goodCopyOf(realDisk, path, readJobLine);
  if (isPath(named) && !copy) return thrown;
  const holder = copy && (await heldElsewhere(copy.path));
  if (holder !== undefined) {
    const next = `all that a copy of it holds is in "${fileNameOf(holder)}", which it was called since: name that one`;
    return fault('missing', `there is no job "${plainText(named)}" any more`, path, next, true);
  }
  if (copy) {
    const calls = copy.calls === 1 ? '1 call' : `${copy.calls} calls`;
    const way = commandBack(path, copy, process.platform, undefined);
    const next = `a copy of it has ${calls}, and comes back with: ${way}`;
    return fault('missing', `there is no job "${plainText(named)}" any more`, path, next, true);
  }
  const names = await jobsNear(named);
  // Whoever only reads is not after a new one.
  const makes = toLook && names.length > 0 ? '' : '; "countback take NAME --new" makes a new one';
  const meant = perhaps(slugOf(named), names.map(slugOf)) === '' ? '' : `, perhaps "${names[0]}"`;
  // The only one there is was just said.
  const [stray] = await otherwiseCalled(realDisk, placesOn(thisMachine()).jobs).catch(() => []);
  const also = stray ? `, and a job in "${basename(stray.path)}", which is found once it is called ${stray.as}` : '';
  const others = `${meant !== '' && names.length === 1 ? 'there is no other' : thereAre(names)}${also}`;
  return fault('missing', `there is no job "${plainText(named)}"${meant}`, path, `${others}${makes}`, true);
}

/** The job file that has all of a copy: the one it was made of, called otherwise since. */
async function heldElsewhere(copy: string): Promise<string | undefined> {
  const held = await readFile(realDisk, copy);
  for (const { path } of await jobsIn(realDisk, placesOn(thisMachine()).jobs).catch(() => [])) {
    const bytes = await readFile(realDisk, path, held.length).catch(() => undefined);
    if (bytes?.equals(held)) return path;
  }
  return undefined;
}

const mostNamed = 5;
/** Which jobs there are, those that are called alike first. */
async function jobsNear(named: string): Promise<string[]> {
  const there = await jobsIn(realDisk, placesOn(thisMachine()).jobs).catch(() => []);
  const names = [...new Set(there.flatMap((one) => ('job' in one ? [plainText(one.job)] : [])))];
  const wanted = slugOf(named);
  const apart = new Map(names.map((name) => [name, stepsApart(wanted, slugOf(name))]));
  return names.sort((a, b) => (apart.get(a) ?? 0) - (apart.get(b) ?? 0));
}
function thereAre(names: readonly string[]): string {
  if (names.length === 0) {
    const { data } = placesOn(thisMachine());
    const isNamed = process.env.COUNTBACK_DATA !== undefined;
    return isNamed && !existsSync(data)
      ? `the folder ${data} is not there: is its disk plugged in?`
      : 'there is none yet';
  }
  const said = names.slice(0, mostNamed).map((name) => `"${name}"`);
  const left = names.length - said.length;
  return `there is ${said.join(', ')}${left > 0 ? ` and ${left} more, which "countback" alone shows` : ''}`;
}
/** A name never makes a file anywhere but in the folder of jobs, and a path never makes a folder. */
async function makeNew(named: string, { path, job }: JobPlace): Promise<number> {
  const folder = dirname(path);
  try {
    if (!isPath(named)) await makeFolders(realDisk, folder);
    else if (!path.endsWith('.jsonl')) {
      const next = 'name it without "/" or "\\", or give the whole path of a new file that ends in .countback.jsonl';
      throw fault('bad-name', 'this is neither a name for a new job nor the path of a job file', named, next);
    } else await realDisk.stat(folder);
  } catch (thrown) {
    throw faultFrom(thrown, folder);
  }
  return createJob(path, job);
}
