// The reference job's plan, read from the repository as the program reads it.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read-plan.ts';

export const referencePlanText = (): string =>
  readFileSync(fileURLToPath(new URL('../../jobs/inline-four-belt-service.json', import.meta.url)), 'utf8');

export function referencePlan(): Plan {
  const read = readPlan(referencePlanText(), 'inline-four-belt-service.json');
  if (!read.ok) throw new Error(`${read.fault.where}: ${read.fault.what}`);
  return read.plan;
}
