// The plans shipped with the program and those in the data folder, as the calls need them. A plan that can't be read is
// named once and left out; it never stops a job.
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { PlanOffer } from '../calls/desk.ts';
import { declarationsOf } from '../plan/declarations.ts';
import { type PlanFault, readPlan } from '../plan/read-plan.ts';
import { whereJsonBreaks } from '../store/json-place.ts';
import { placesOn, thisMachine } from '../store/places.ts';

export type Plans = { offers: PlanOffer[]; faults: PlanFault[] };

export async function plansAtHand(packageRoot: URL): Promise<Plans> {
  const folders = [fileURLToPath(new URL('jobs/', packageRoot)), path.join(placesOn(thisMachine()).data, 'plans')];
  const plans: Plans = { offers: [], faults: [] };
  for (const folder of folders) {
    for (const file of await plansIn(folder)) {
      const read = readPlan(await readFile(file, 'utf8'), file, whereJsonBreaks);
      if (!read.ok) plans.faults.push(read.fault);
      else {
        const { plan } = read;
        plans.offers.push({
          name: plan.name,
          services: plan.services.map((s) => s.service),
          declares: (services, ledger) => declarationsOf(plan, services, ledger),
        });
      }
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
