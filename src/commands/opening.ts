// Opening a job by its name or path for a command, with the plans and the workshop's list at hand.

import { dirname } from 'node:path';
import { type Line, readLine as readJobLine } from '../job/line.ts';
import { machineClock } from '../session/clock.ts';
import { createSession, type Session } from '../session/session.ts';
import { makeFolders, realDisk } from '../store/disk.ts';
import { type Fault, isFault } from '../store/fault.ts';
import { createJob, type OpenJob, openJob } from '../store/open-job.ts';
import { jobPlace, placesOn, thisMachine } from '../store/places.ts';
import { openSettings } from '../store/settings.ts';
import { exits, type Out } from './answer.ts';
import { plansAtHand } from './plans.ts';

export const faultText = (fault: Fault): string => `countback: ${fault.message}`;

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

export async function openToLook(named: string): Promise<OpenJob<Line>> {
  const place = jobPlace(placesOn(thisMachine()), named);
  if (isFault(place)) throw place;
  return openJob({ path: place.path, readLine: readJobLine, look: true });
}

export type Opening = { fresh?: boolean; withoutLineAt?: number };

export async function openSession(
  named: string,
  packageRoot: URL,
  { fresh = false, withoutLineAt }: Opening = {},
): Promise<Session> {
  const places = placesOn(thisMachine());
  const place = jobPlace(places, named);
  if (isFault(place)) throw place;
  if (fresh) {
    await makeFolders(realDisk, dirname(place.path));
    await createJob(place.path, place.job);
  }
  const settings = await openSettings(places.settings);
  const job = await openJob({
    path: place.path,
    readLine: readJobLine,
    ...(withoutLineAt !== undefined && { withoutLineAt }),
  });
  const plans = await plansAtHand(packageRoot);
  return createSession({ job, clock: machineClock(), plans: plans.offers, products: settings.settings().sealants });
}
