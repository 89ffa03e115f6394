// The plans shipped with the program and those in the data folder, as the calls need them. A plan that can't be read is
// named once and left out; it never stops a job.
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { offerOf, type PlanOffer } from '../calls/desk.ts';
import { type Fault, fault } from '../store/fault.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { readPlanFile } from './plan-file.ts';

export type Plans = { offers: readonly PlanOffer[]; faults: readonly Fault[] };

export const plansAtHand = (packageRoot: URL): Plans => planShelf(packageRoot).all();

export type PlanShelf = {
  /** All of them, read as far as they are not yet; the same lists every time. */
  all(): Plans;
  /** Reads one more file; false when none is left. */
  readOne(): boolean;
};

/** The plans, read one by one or when they are first asked for: the first frame of a job does without them. */
export function planShelf(packageRoot: URL): PlanShelf {
  const folders = [fileURLToPath(new URL('jobs/', packageRoot)), path.join(placesOn(thisMachine()).data, 'plans')];
  const offers: PlanOffer[] = [];
  const faults: Fault[] = [];
  let left: string[] | undefined;
  function readOne(): boolean {
    left ??= folders.flatMap(plansIn);
    const file = left.shift();
    if (file === undefined) return false;
    const read = readPlanFile(file);
    if (read.ok) offers.push(offerOf({ plan: read.plan, file }));
    else
      faults.push(
        fault('bad-plan', read.fault.what, read.fault.where, `${read.fault.next}; the plan is left out until then`),
      );
    return true;
  }
  return {
    readOne,
    all() {
      while (readOne());
      return { offers, faults };
    },
  };
}

function plansIn(folder: string): string[] {
  try {
    const names = readdirSync(folder);
    return names
      .filter((name) => name.endsWith('.json'))
      .sort()
      .map((name) => path.join(folder, name));
  } catch {
    // No folder of one's own plans is the usual case.
    return [];
  }
}
