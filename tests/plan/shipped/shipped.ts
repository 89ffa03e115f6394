// The plans that come with the program, and how a list of what a practitioner would check is held against one.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { needOf } from '../../../src/plan/need.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { readPlan } from '../../../src/plan/read-plan.ts';
import { worksOf } from '../../../src/plan/works.ts';

const folder = fileURLToPath(new URL('../../../jobs/', import.meta.url));
export const shippedNames = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .sort();

export function shipped(name: string): Plan {
  const read = readPlan(readFileSync(`${folder}${name}`, 'utf8'), name);
  if (!read.ok) throw new Error(`${read.fault.where}: ${read.fault.what}`);
  return read.plan;
}

/** What comes off for a service, in order, as "area:cam cover" or "part:gasket". */
export const stripped = (plan: Plan, ...services: string[]): string[] =>
  needOf(worksOf(plan), plan, services, new Set()).order.map((step) => step.at);

/** A caution that says all of these. */
export const cautioned = (plan: Plan, ...words: RegExp[]): boolean =>
  (plan.cautions ?? []).some((one) => words.every((word) => word.test(one.words)));

/** In this order, whatever stands between. */
export function expectInOrder(all: readonly string[], some: readonly string[]): void {
  const places = some.map((one) => all.indexOf(one));
  expect({ some, places }).toEqual({ some, places: [...places].sort((one, other) => one - other) });
  expect(places).not.toContain(-1);
}

export const areaIn = (plan: Plan, area: string) => {
  const found = plan.areas.find((one) => one.area === area);
  if (!found) throw new Error(`no area ${area}`);
  return found;
};
