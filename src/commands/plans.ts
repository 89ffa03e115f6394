// The plans shipped with the program and those in the data folder, as the calls need them. A plan that can't be read is
// named once and left out; it never stops a job.
import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { PlanOffer } from '../calls/desk.ts';
import { declarationsOf } from '../plan/declarations.ts';
import type { Source } from '../plan/merge.ts';
import { type Fault, fault } from '../store/fault.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { readPlanFile } from './plan-file.ts';

/** `offers` and `sources` are the same plans, as the calls and as the desk of planning need them. */
export type Plans = { offers: PlanOffer[]; sources: Source[]; faults: Fault[] };

export async function plansAtHand(packageRoot: URL): Promise<Plans> {
  const folders = [fileURLToPath(new URL('jobs/', packageRoot)), path.join(placesOn(thisMachine()).data, 'plans')];
  const plans: Plans = { offers: [], sources: [], faults: [] };
  for (const folder of folders) {
    for (const file of await plansIn(folder)) {
      const read = await readPlanFile(file);
      if (!read.ok) {
        const { what, where, next } = read.fault;
        plans.faults.push(fault('bad-plan', `left out: ${what}`, where, next));
        continue;
      }
      const { plan } = read;
      const declares: PlanOffer['declares'] = (services, ledger) => declarationsOf(plan, services, ledger);
      plans.offers.push({ name: plan.name, services: plan.services.map((s) => s.service), declares });
      plans.sources.push({ plan, file });
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
