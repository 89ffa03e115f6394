// Services ordered, chosen and at hand, side by side on a running job: what each takes off alone, what it adds to the
// others, what it shares, and what is off that none of them needs. Plans are read here and never by the job.
import { every, type Ledger } from '../job/ledger.ts';
import type { ServiceState } from '../job/states.ts';
import { type Subject, sortOf } from '../job/subjects.ts';
import { declaredOn } from './declared-on-job.ts';
import { type Declaration, declaredWhole } from './declared-whole.ts';
import { asNamedOn } from './named-alike.ts';
import { type Count, countOf, effort, mustComeOff, type Step, stepsOf, targetsOf } from './need.ts';
import type { Plan } from './plan.ts';
import { type AreaNames, renamed, renamedSubject } from './renamed.ts';
import { knownNames } from './same-place.ts';
import { areaOfUnit } from './strip-order.ts';
import { offNow, unionOf, wasOff } from './together.ts';
import { type Unit, type Works, worksFrom } from './works.ts';

export type Beside = {
  service: string;
  /** The plan it is chosen or offered from. */
  plan?: string;
  state: ServiceState['state'] | 'chosen' | 'offered';
  alone: Count;
  /** Not off yet, and needed by none of the others that are ordered or chosen. */
  more: Count;
  /** Of an ordered one: not touched yet. */
  left: Count;
  /** Areas that another one ordered or chosen opens as well. */
  shares: readonly string[];
};
export type SideBySide = {
  /** Of all that are ordered or chosen. */
  together: Count;
  left: Count;
  all: readonly Beside[];
  /** Those only offered, the nearly free ones first. */
  nearby: readonly Beside[];
  /** Off now, and needed by none of them; nothing where it is not known what one of them needs. */
  needless: readonly Step[];
  /** To say the steps with. */
  works: Works;
};
export type Chosen = { plan: string; service: string };

type Wanted = Pick<Beside, 'service' | 'plan' | 'state'> & { works: Works; targets: readonly Subject[] };

export function sideBySide(ledger: Ledger, plans: readonly Plan[], chosen: readonly Chosen[]): SideBySide {
  const names = knownNames(ledger);
  const onJob = declaredOn(ledger);
  const said = new Map(plans.map((plan) => [plan.name, renamed(names, declaredWhole(asNamedOn(ledger, plan, names)))]));
  const fromChosen = [...new Set(chosen.map((one) => one.plan))];
  const base = [onJob, ...fromChosen.map((name): Declaration[] => said.get(name) ?? [])];
  const works = worksFrom(unionOf(base));
  const ordered = [...every(ledger, 'service')].map(
    (s): Wanted => ({ service: s.service, state: s.state, works, targets: comingOff(s.brings ?? []) }),
  );
  const known = new Set(ordered.filter((one) => one.state !== 'dropped').map((one) => one.service));
  const offered = plans.flatMap((plan): Wanted[] => {
    const here = fromChosen.includes(plan.name) ? works : worksFrom(unionOf([...base, said.get(plan.name) ?? []]));
    return plan.services
      .filter(({ service }) => !known.has(service))
      .map((one) => ({
        service: one.service,
        plan: plan.name,
        state: chosen.some((c) => c.plan === plan.name && c.service === one.service) ? 'chosen' : 'offered',
        works: here,
        targets: renamedTargets(names, one),
      }));
  });
  const dropped = ordered.filter((one) => one.state === 'dropped' && !offered.some((o) => o.service === one.service));
  const all = [...ordered.filter((one) => one.state !== 'dropped'), ...offered, ...dropped];
  return compared(ledger, works, all);
}

const comingOff = (subjects: readonly Subject[]): Subject[] =>
  subjects.filter((one) => ['area', 'part', 'connection'].includes(sortOf(one)));
const renamedTargets = (names: AreaNames, service: Plan['services'][number]): Subject[] =>
  targetsOf(service).map((one) => renamedSubject(names, one));

function compared(ledger: Ledger, works: Works, all: readonly Wanted[]): SideBySide {
  const off = offNow(ledger);
  const isTaken = ({ state }: Wanted) => state !== 'offered' && state !== 'dropped';
  const need = new Map(all.map((one) => [one, mustComeOff(one.works, one.targets)]));
  const taken = all.filter(isTaken);
  const whole = mustComeOff(
    works,
    taken.flatMap((one) => one.targets),
  );
  const rows = all.map((one): Beside => {
    const others = new Set(taken.flatMap((other) => (other === one ? [] : [...(need.get(other) ?? [])])));
    const alone = need.get(one) ?? new Set<Unit>();
    const { service, plan, state } = one;
    return {
      service,
      ...(plan !== undefined && { plan }),
      state,
      alone: countOf(one.works, alone),
      more: countOf(
        one.works,
        [...alone].filter((unit) => !others.has(unit) && !off.has(unit)),
      ),
      left: countOf(
        one.works,
        [...alone].filter((unit) => !wasOff(ledger, unit)),
      ),
      shares: areasOf(
        one.works,
        [...alone].filter((unit) => others.has(unit)),
      ),
    };
  });
  return {
    together: countOf(works, whole),
    left: countOf(
      works,
      [...whole].filter((unit) => !wasOff(ledger, unit)),
    ),
    all: rows,
    nearby: rows.filter((one) => one.state === 'offered').sort((a, b) => effort(a.more) - effort(b.more)),
    needless:
      taken.length === 0 || taken.some((one) => one.targets.length === 0)
        ? []
        : stepsOf(works, new Set([...off].filter((unit) => !whole.has(unit))), []),
    works,
  };
}
const areasOf = (works: Works, units: readonly Unit[]): string[] => [
  ...new Set(units.flatMap((unit) => areaOfUnit(works, unit) ?? [])),
];
