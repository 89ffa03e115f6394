// The plans shipped with the program and those in the data folder, as the calls need them. A plan that can't be read is
// named once and left out; it never stops a job.
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { PlanOffer } from '../calls/desk.ts';
import { declarationsOf } from '../plan/declarations.ts';
import { readPlan } from '../plan/read-plan.ts';
import { type Fault, fault, faultFrom } from '../store/fault.ts';
import { whereJsonBreaks } from '../store/json-place.ts';
import { placesOn, thisMachine } from '../store/places.ts';

export type Plans = { offers: PlanOffer[]; faults: Fault[] };

export async function plansAtHand(packageRoot: URL): Promise<Plans> {
  const folders = [fileURLToPath(new URL('jobs/', packageRoot)), path.join(placesOn(thisMachine()).data, 'plans')];
  const plans: Plans = { offers: [], faults: [] };
  for (const folder of folders) {
    for (const file of await plansIn(folder)) {
      const read = await readPlanFile(file);
      if ('fault' in read) plans.faults.push(read.fault);
      else plans.offers.push(read.offer);
    }
  }
  return plans;
}

async function readPlanFile(file: string): Promise<{ offer: PlanOffer } | { fault: Fault }> {
  try {
    const read = readPlan(await readFile(file, 'utf8'), file, whereJsonBreaks);
    if (!read.ok)
      return { fault: fault('bad-plan', `left out: ${read.fault.what}`, read.fault.where, read.fault.next) };
    const { plan } = read;
    const declares: PlanOffer['declares'] = (services, ledger) => declarationsOf(plan, services, ledger);
    return { offer: { name: plan.name, services: plan.services.map((s) => s.service), declares } };
  } catch (thrown) {
    const { what, where, next } = faultFrom(thrown, file);
    return { fault: fault('bad-plan', `left out: ${what}`, where, next) };
  }
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
