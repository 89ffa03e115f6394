// plans: the plans shipped with the program and those of one's own, each with its services and how much comes off.

import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { standardKeymap } from '../calls/bindings.ts';
import { countOf, neededFor } from '../plan/need.ts';
import { countText } from '../plan/need-words.ts';
import { worksOf } from '../plan/works.ts';
import type { ScreenId } from '../view/screens.ts';
import { exits, type Out } from './answer.ts';
import { inRows } from './in-rows.ts';
import { plansAtHand } from './plans.ts';

const keyFor = (call: string, screen: ScreenId): string =>
  standardKeymap.keysOn(screen).find(({ row }) => row.id === call)?.binding.key ?? '';

export async function listPlans(out: Out, packageRoot: URL): Promise<number> {
  const { offers, faults } = plansAtHand(packageRoot);
  const shipped = fileURLToPath(new URL('jobs/', packageRoot));
  const isShipped = (file: string) => file.startsWith(shipped);
  for (const { plan, file } of offers) {
    const works = worksOf(plan);
    out.write(`${plan.name}\n${inRows(plan.vehicle, 4)}\n`);
    for (const service of plan.services) {
      out.write(`    ${service.service}: ${countText(countOf(works, neededFor(works, [service])))}\n`);
    }
    out.write(`    ${basename(file)}${isShipped(file) ? '' : ', of your own'}\n`);
  }
  const [first] = offers;
  const service = first?.plan.services[0]?.service;
  if (first && service !== undefined) {
    const [one, side, more] = [
      keyFor('plan', 'strip'),
      keyFor('to-services', 'strip'),
      keyFor('choose-service', 'services'),
    ];
    out.write(`\nTo take one on a job: ${one} on the bench, or ${side} and ${more} for several together;\n`);
    out.write(`in a line: plan "${first.name}" for "${service}"\n`);
  }
  for (const one of faults) out.complain(`countback: ${one.message}`);
  return faults.length > 0 ? exits.open : exits.fine;
}
