// plans: the plans shipped with the program and those of one's own, each with its services and how much comes off.

import { countOf, neededFor } from '../plan/need.ts';
import { countText } from '../plan/need-words.ts';
import { worksOf } from '../plan/works.ts';
import { exits, type Out } from './answer.ts';
import { plansAtHand } from './plans.ts';

export async function listPlans(out: Out, packageRoot: URL): Promise<number> {
  const { offers, faults } = plansAtHand(packageRoot);
  for (const { plan, file } of offers) {
    const works = worksOf(plan);
    out.write(`${plan.name}\n    ${plan.vehicle}\n    ${file}\n`);
    for (const service of plan.services) {
      out.write(`    ${service.service}: ${countText(countOf(works, neededFor(works, [service])))}\n`);
    }
  }
  for (const one of faults) out.complain(`countback: ${one.message}`);
  return faults.length > 0 ? exits.open : exits.fine;
}
