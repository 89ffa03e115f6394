// P1: what ordering services of a plan writes into a job: for each what it brings, what is bought for it, where it can
// hurt, and the declarations that the job does not know yet.
import type { EntryOf } from '../job/entry.ts';
import type { Ledger } from '../job/ledger.ts';
import { areaOf, nameOf, type Subject, sortOf } from '../job/subjects.ts';
import { broughtBy } from './brought.ts';
import { declarationsOf } from './declarations.ts';
import { type Declaration, subjectOf } from './declared-whole.ts';
import { asNamedOn } from './named-alike.ts';
import type { Plan } from './plan.ts';
import { type AreaNames, renamedSubject } from './renamed.ts';
import { knownNames } from './same-place.ts';

/** As the call that orders services takes it. */
export type Order = Omit<EntryOf<'service-ordered'>, 'kind'> & { declares?: Declaration[] };
/** P2: an area of the job, and the plan's that it is; nothing when it is none of them. */
export type Same = { area: string; is?: string };

/** Each service declares what those before it, in this call or on the job, have not declared. */
export function ordersOf(
  taken: Plan,
  services: readonly string[],
  ledger: Ledger,
  same: readonly Same[] = [],
): [Order, ...Order[]] {
  const names = namesWith(ledger, same);
  const plan = asNamedOn(ledger, taken, names);
  const said = new Set<string>();
  const orders = services.map((service, i): Order => {
    const declares = [
      ...(i === 0 ? noneOfThem(same) : []),
      ...declarationsOf(plan, services.slice(0, i + 1), ledger, names),
    ];
    const fresh = declares.filter((one) => !said.has(JSON.stringify(one)));
    for (const one of fresh) said.add(JSON.stringify(one));
    return { ...orderedFrom(plan, service, names), ...(fresh.length > 0 && { declares: fresh }) };
  });
  return orders as [Order, ...Order[]];
}

function namesWith(ledger: Ledger, same: readonly Same[]): AreaNames {
  return new Map([
    ...knownNames(ledger),
    ...same.flatMap(({ area, is }): [string, string][] => (is === undefined ? [] : [[is, area]])),
  ]);
}
/** Said to be no place of a plan, an area is not asked for again. */
const noneOfThem = (same: readonly Same[]): Declaration[] =>
  same.flatMap(({ area, is }): Declaration[] =>
    is === undefined ? [{ kind: 'area-declared', area, inPlans: area }] : [],
  );

function orderedFrom(plan: Plan, service: string, names: AreaNames): Omit<Order, 'declares'> {
  const brought = broughtBy(plan, [service]).flatMap((one) => subjectOf(one) ?? []);
  const there = new Set(brought);
  const about = (at: Subject): boolean =>
    at === 'vehicle' || there.has(at) || (sortOf(at) === 'hole' && there.has(`area:${areaOf(nameOf(at))}`));
  const interval = plan.services.find((one) => one.service === service)?.interval;
  const newParts = (plan.newParts ?? [])
    .filter((one) => !one.services || one.services.includes(service))
    .map(({ services: _, ...one }) => one);
  const cautions = (plan.cautions ?? [])
    .filter((one) => one.at === undefined || about(one.at))
    .map(({ words, at }) => ({ words, ...(at !== undefined && { at: renamedSubject(names, at) }) }));
  return {
    service,
    brings: brought.filter((one) => sortOf(one) !== 'hole').map((one) => renamedSubject(names, one)),
    ...(newParts.length > 0 && { newParts }),
    ...(cautions.length > 0 && { cautions }),
    ...(interval && { interval }),
  };
}
