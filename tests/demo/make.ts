// Plays the demo jobs into job files, through the same session and store as the program, on a clock of their own.
import { mkdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { plansAtHand } from '../../src/commands/plans.ts';
import { readLine } from '../../src/job/line.ts';
import { createSession } from '../../src/session/session.ts';
import { createJob, openJob } from '../../src/store/open-job.ts';
import { type DemoJob, finishedJob, midJob } from './demo-jobs.ts';

const minute = 60_000;
const secondsPerCall = 20;

/** Writes one demo job; throws with the line that was refused, since a demo has none. */
export async function makeDemo(demo: DemoJob, folder: string, root: URL): Promise<string> {
  const file = path.join(folder, demo.file);
  await mkdir(folder, { recursive: true });
  await rm(file, { force: true });
  await createJob(file, demo.name);
  let atMs = demo.beganMs;
  let beganMs = atMs;
  const clock = () => ({ atMs, zoneMin: demo.zoneMin, awakeMs: atMs - beganMs });
  const { offers } = plansAtHand(root);
  const plans = () => offers;
  const open = async () =>
    createSession({ job: await openJob({ path: file, readLine, now: () => new Date(atMs) }), clock, plans });
  let session = await open();
  for (const line of demo.lines) {
    const wait = /^~ (away )?(\d+) (min|h)$/.exec(line);
    if (wait) {
      atMs += Number(wait[2]) * (wait[3] === 'h' ? 60 : 1) * minute;
      if (!wait[1]) continue;
      await session.close();
      beganMs = atMs;
      session = await open();
      continue;
    }
    atMs += secondsPerCall * 1000;
    const answer = session.runLine(line);
    if (answer.kind === 'refused')
      throw new Error(`${demo.name}: "${line}" was refused: ${answer.text}; ${answer.instead}`);
    await session.settled();
  }
  await session.close();
  // Opening makes a copy of the day beside the job; the demo ships without.
  await rm(path.join(folder, 'copies'), { recursive: true, force: true });
  return file;
}

export const demos: readonly DemoJob[] = [midJob, finishedJob];

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const root = new URL('../../', import.meta.url);
  for (const demo of demos)
    process.stdout.write(`${await makeDemo(demo, new URL('demo-data', root).pathname, root)}\n`);
}
