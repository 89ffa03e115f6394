// Whether the folder of jobs changed while the shelf stands there: another window moves, adds or goes on with a job. It
// looks at names and times alone; what the shelf then reads is its own.
import { realDisk } from '../store/disk.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { jobsIn } from '../store/shelf.ts';

const everyMs = 2000;

/** What is to be looked at, told at each look: true where it is another than at the look before. */
export function changedSince(look: () => Promise<string>): () => Promise<boolean> {
  let last: string | undefined;
  return async () => {
    const before = last;
    last = await look();
    return before !== undefined && last !== before;
  };
}

async function folderLook(): Promise<string> {
  const { jobs } = placesOn(thisMachine());
  try {
    return JSON.stringify(await jobsIn(realDisk, jobs));
  } catch {
    // A folder that cannot be read is told by the shelf, where it is read.
    return '';
  }
}

/** Tells of a change as long as the shelf is up; keeps nothing alive. */
export function watchShelf(isUp: () => boolean, changed: () => void): () => void {
  const isChanged = changedSince(folderLook);
  const look = async () => {
    if (isUp() && (await isChanged()) && isUp()) changed();
  };
  void look();
  const timer = setInterval(() => void look(), everyMs);
  timer.unref();
  return () => clearInterval(timer);
}
