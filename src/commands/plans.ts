// The plans shipped with the program and those in the data folder, as the calls need them. A plan that can't be read is
// named once and left out; it never stops a job.
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { offerOf, type PlanOffer } from '../calls/desk.ts';
import { type Fault, fault } from '../store/fault.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { readPlanFile } from './plan-file.ts';

export type Plans = { offers: PlanOffer[]; faults: Fault[] };

export async function plansAtHand(packageRoot: URL): Promise<Plans> {
  const folders = [fileURLToPath(new URL('jobs/', packageRoot)), path.join(placesOn(thisMachine()).data, 'plans')];
  const plans: Plans = { offers: [], faults: [] };
  for (const folder of folders) {
    for (const file of await plansIn(folder)) {
      const read = await readPlanFile(file);
      if (!read.ok) {
        const { what, where, next } = read.fault;
        plans.faults.push(fault('bad-plan', `left out: ${what}`, where, next));
        continue;
      }
      plans.offers.push(offerOf({ plan: read.plan, file }));
    }
  }
  return plans;
}

async function plansIn(folder: string): Promise<string[]> {
  try {
    const names = await readdir(folder);
    return names
      .filter((name) => name.endsWith('.json'))
      .sort()
      .map((name) => path.join(folder, name));
  } catch {
    // No folder of one's own plans is the usual case.
    return [];
  }
}
