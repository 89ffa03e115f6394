// The shelf of jobs as the bench shows it: how each job stands, and of a file that cannot be opened why, and what there is
// to go back to.
import { basename } from 'node:path';
import { jobName } from '../calls/job-name.ts';
import type { OnTheShelf } from '../calls/lists/shelf.ts';
import { sheetWay } from '../calls/sheet-way.ts';
import { openSaid, outOf } from '../calls/tally-words.ts';
import { stateOf } from '../job/ledger.ts';
import { type Line, readLine } from '../job/line.ts';
import { readLog } from '../job/log.ts';
import { goneFrom } from '../store/copies.ts';
import { readFile, realDisk } from '../store/disk.ts';
import { type Fault, faultFrom, isFault } from '../store/fault.ts';
import { longestJobBytes } from '../store/journal-adapter.ts';
import { openJob } from '../store/open-job.ts';
import { fileNameOf, placesOn, thisMachine } from '../store/places.ts';
import { jobsIn, otherwiseCalled } from '../store/shelf.ts';
import { commandBack, type GoodCopy, goodCopyOf } from '../store/way-back.ts';
import { civilTime, timeOfDayText } from '../trade/civil-time.ts';
import { plainText } from '../trade/plain-text.ts';
import { startedAs } from './started-as.ts';

export async function jobsOnShelf(): Promise<readonly OnTheShelf[]> {
  const { jobs } = placesOn(thisMachine());
  try {
    const shelf: OnTheShelf[] = [];
    for (const { path, changedMs } of await jobsIn(realDisk, jobs)) {
      shelf.push(await onShelf(path, changedMs));
      // A key is not to wait for a hundred jobs.
      await new Promise(setImmediate);
    }
    const others = await otherwiseCalled(realDisk, jobs);
    return [
      ...shelf,
      ...(await goneOnes(jobs, new Set(shelf.map(({ path }) => path)))),
      ...others.map(({ path, as }) => ({
        path,
        name: plainText(basename(path)),
        said: 'a job, but its name is none of a job file',
        broken: { why: `It stands here once it is called ${as}.` },
      })),
    ];
  } catch (thrown) {
    if (!isFault(thrown)) throw thrown;
    return [{ name: plainText(jobs), path: jobs, said: plainText(thrown.what), broken: { why: thrown.message } }];
  }
}

const oddEnds: Partial<Record<Fault['kind'], string>> = {
  'last-line-bad': 'last line changed; ',
  'copy-differs': 'a copy says otherwise; ',
};
async function onShelf(path: string, changedMs: number): Promise<OnTheShelf> {
  const file = plainText(fileNameOf(path));
  const shared = { path, file, changed: whenText(changedMs) };
  try {
    const job = await openJob({ path, readLine, look: true });
    const ledger = readLog(job.lines());
    await job.close();
    const { all } = ledger.tallies;
    const releasedAt = releaseOf(ledger);
    const waits = stateOf(ledger, 'vehicle', 'vehicle')?.waiting ? ', waits' : '';
    const stands = releasedAt ? 'released' : `${outOf(all)} off, ${openSaid(all)}${waits}`;
    const end = job.doubt?.fault ?? job.notices[0];
    const odd = end ? (oddEnds[end.kind] ?? 'end cut off; ') : '';
    return {
      ...shared,
      // When its file was last written says nothing of when the car left.
      ...(releasedAt && { changed: whenText(releasedAt.atMs), sheet: sheetWay(file, startedAs(process.env)) }),
      name: jobName(ledger, job.job),
      said: `${odd}${stands}`,
    };
  } catch (thrown) {
    return { ...shared, name: file, ...(await refused(path, faultFrom(thrown, path))) };
  }
}

/** Those of which copies tell, and no file: but for one that only bears another name now. */
async function goneOnes(jobs: string, there: ReadonlySet<string>): Promise<OnTheShelf[]> {
  const gone = await goneFrom(realDisk, jobs, there);
  const held =
    gone.length === 0
      ? []
      : await Promise.all(
          [...there].map((path) => readFile(realDisk, path, longestJobBytes).catch(() => Buffer.alloc(0))),
        );
  const rows = gone.map(async (path): Promise<OnTheShelf[]> => {
    const copy = await goodCopyOf(realDisk, path, readLine);
    const bytes = copy && (await readFile(realDisk, copy.path));
    if (!copy || !bytes || held.some((one) => one.subarray(0, bytes.length).equals(bytes))) return [];
    const way = `it comes back with: ${commandBack(path, copy, process.platform, undefined)}`;
    const why = `No such file any more; ${way}; where it was put away on purpose, put its copies away as well`;
    const broken = { why, copy: { path: copy.path, said: copyWords(copy) } };
    const file = plainText(fileNameOf(path));
    return [{ path, file, name: file, said: 'the file is gone, copies of it are there', broken }];
  });
  return (await Promise.all(rows)).flat();
}

async function refused(path: string, told: Fault): Promise<Pick<OnTheShelf, 'said' | 'broken'>> {
  const copy = await goodCopyOf(realDisk, path, readLine);
  return {
    said: plainText(told.what),
    broken: { why: told.message, ...(copy && { copy: { path: copy.path, said: copyWords(copy) } }) },
  };
}
const copyWords = ({ changedMs, calls }: GoodCopy): string =>
  `its copy of ${whenText(changedMs)}, ${calls} ${calls === 1 ? 'call' : 'calls'}`;

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
/** "25 Nov 23:48", on this machine's clock. */
function whenText(atMs: number): string {
  const zoneMin = -new Date(atMs).getTimezoneOffset();
  const { day, month } = civilTime(atMs, zoneMin);
  return `${day} ${months[month - 1]} ${timeOfDayText(atMs, zoneMin)}`;
}

/** The line that released it, where it counts and nothing was reopened since. */
function releaseOf({ lines, verdicts }: ReturnType<typeof readLog>): Line | undefined {
  for (let i = lines.length - 1; i >= 0; i--) {
    const kinds = lines.all[i]?.entries.map((e) => e.kind) ?? [];
    if (kinds.includes('reopened')) return undefined;
    if (kinds.includes('released')) return verdicts[i + 1] === true ? lines.all[i] : undefined;
  }
  return undefined;
}
