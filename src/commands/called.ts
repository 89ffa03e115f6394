// A job found by what the shelf calls it, where its file bears another name. Every job is read for it: asked only where no
// file of that name is there.
import { basename } from 'node:path';
import { jobName } from '../calls/job-name.ts';
import { readLine } from '../job/line.ts';
import { readLog } from '../job/log.ts';
import { realDisk } from '../store/disk.ts';
import { openJob } from '../store/open-job.ts';
import { jobFileEnding, placesOn, slugOf, thisMachine } from '../store/places.ts';
import { jobsIn } from '../store/shelf.ts';

/** The file of the one job that is called so, by its car, within it, or by a file name of one's own; none where several are. */
export async function fileCalled(name: string): Promise<string | undefined> {
  const there = await jobsIn(realDisk, placesOn(thisMachine()).jobs).catch(() => []);
  const called: string[] = [];
  for (const one of there) if ('job' in one && (await isCalled(one.path, one.job, name))) called.push(one.path);
  return called.length === 1 ? called[0] : undefined;
}
async function isCalled(path: string, job: string, name: string): Promise<boolean> {
  if ([job, basename(path, jobFileEnding)].some((one) => slugOf(one) === slugOf(name))) return true;
  try {
    const opened = await openJob({ path, readLine, look: true });
    const label = jobName(readLog(opened.lines()), job);
    await opened.close();
    return slugOf(label) === slugOf(name);
  } catch {
    // One that cannot be read is called by its file alone.
    return false;
  }
}
