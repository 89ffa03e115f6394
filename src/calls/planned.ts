// Services and the plans at hand, as the calls need them: which are chosen, whether they go together, what ordering them
// says to the job, and which places of the job a plan may mean by another name (P2).
import { every, stateOf } from '../job/ledger.ts';
import { contradictions, specText } from '../job/spec.ts';
import { subjectText } from '../job/subjects.ts';
import { type Merged, mergePlans } from '../plan/merge.ts';
import { countText } from '../plan/need-words.ts';
import { type Order, ordersOf, type Same } from '../plan/orders.ts';
import type { Plan } from '../plan/plan.ts';
import { type SamePlace, samePlaces } from '../plan/same-place.ts';
import { type Beside, type Chosen, type SideBySide, sideBySide } from '../plan/side-by-side.ts';
import type { Desk, PlanOffer } from './desk.ts';
import type { Args } from './form.ts';
import type { Besides, Meant } from './row.ts';

/** Chosen and not ordered yet. */
const chosenOn = ({ ledger, facing }: Desk): readonly Chosen[] =>
  (facing.chosen ?? []).filter(({ service }) => stateOf(ledger, 'service', service)?.state !== 'ordered');

const merged = new WeakMap<readonly PlanOffer[], Map<string, Merged>>();
/** The plans of these services as one; plans are read once and never change while the program runs. */
function togetherOf(desk: Desk, chosen: readonly Chosen[]): Merged {
  const plans = desk.plans();
  const names = new Set(chosen.map((one) => one.plan));
  const [first, ...more] = plans.filter((one) => names.has(one.name));
  if (!first) return { ok: false, clashes: [{ what: 'there is no such plan', places: [] }] };
  const known = merged.get(plans) ?? new Map<string, Merged>();
  merged.set(plans, known);
  const key = JSON.stringify([...names].sort());
  const there = known.get(key) ?? mergePlans([first, ...more]);
  known.set(key, there);
  return there;
}

const compared = new WeakMap<Desk['ledger'], Map<string, SideBySide>>();
export function servicesBeside(desk: Desk): SideBySide {
  const chosen = chosenOn(desk);
  const known = compared.get(desk.ledger) ?? new Map<string, SideBySide>();
  compared.set(desk.ledger, known);
  const key = JSON.stringify([chosen, desk.plans().map((one) => one.name)]);
  const plans = desk.plans().map((one) => one.plan);
  const there = known.get(key) ?? sideBySide(desk.ledger, plans, chosen);
  known.set(key, there);
  return there;
}

/** What is refused where plans do not go together, or say of a hole nobody called what this job does not. */
function clashWords(found: Merged): string | undefined {
  if (found.ok) return undefined;
  const [{ what, places } = { what: '', places: [] }] = found.clashes;
  return `${what}${places.length > 0 ? `: ${places.map(fileOnly).join(' and ')}` : ''}`;
}
const fileOnly = (place: string): string => place.replace(/^.*\/(?=[^/]+\.json)/, '');

export function chosenMeant(desk: Desk, one: Chosen): Meant {
  const chosen = chosenOn(desk);
  const isChosen = chosen.some((other) => other.plan === one.plan && other.service === one.service);
  if (isChosen) {
    const rest = chosen.filter((other) => other.plan !== one.plan || other.service !== one.service);
    return { face: { chosen: rest }, answer: `${one.service} not chosen` };
  }
  if (stateOf(desk.ledger, 'service', one.service)?.state === 'ordered')
    return { no: { because: `${one.service} is ordered already`, instead: 'go on' } };
  if (chosen.some((other) => other.service === one.service))
    return { no: { because: `${one.service} is chosen from another plan`, instead: 'leave that one out first' } };
  const clash = clashWords(togetherOf(desk, [...chosen, one]));
  if (clash) return { no: { because: clash, instead: 'correct one of the plans, or choose one of the two' } };
  const all = [...chosen, one];
  const side = servicesBeside({ ...desk, facing: { ...desk.facing, chosen: all } });
  const alike = sameWork(side, one);
  const asked = alike
    ? `; ${alike.service}${alike.plan ? ` of ${alike.plan}` : ''} opens the same: is it the same work?`
    : '';
  return { face: { chosen: all }, answer: `${one.service} chosen: together ${countText(side.together)}${asked}` };
}
/** One of another plan, chosen as well, that comes to the same fasteners in the same areas: two plans may both know it. */
function sameWork({ all }: SideBySide, chosen: Chosen): Beside | undefined {
  const mine = all.find(({ plan, service }) => plan === chosen.plan && service === chosen.service);
  if (!mine || mine.alone.fasteners === 0 || mine.more.fasteners > 0) return undefined;
  const where = (one: Beside) => one.shares.toSorted().join('\n');
  return all.find(
    (one) =>
      one.state === 'chosen' &&
      one.plan !== mine.plan &&
      one.more.fasteners === 0 &&
      one.alone.fasteners === mine.alone.fasteners &&
      where(one) === where(mine),
  );
}

/** Those chosen, else the one that is named. */
const orderedBy = (desk: Desk, { plan, service }: Args): readonly Chosen[] => {
  const chosen = chosenOn(desk);
  if (chosen.length > 0) return chosen;
  // Once some are ordered, Enter pressed once more by habit orders no other.
  if ([...every(desk.ledger, 'service')].length > 0) return [];
  return typeof plan === 'string' && typeof service === 'string' ? [{ plan, service }] : [];
};

const sameKey = (area: string): string => `same ${area}`;
/** No answer is a name of an area: a name has no ":". */
const noneOfThem = 'none:';

/** P2: the next place of the job to be asked about, before these are ordered. */
function askedSame(desk: Desk, chosen: readonly Chosen[], args: Args): Besides | undefined {
  const found = togetherOf(desk, chosen);
  if (!found.ok) return undefined;
  const taken = new Set(Object.entries(args).flatMap(([key, is]) => (key.startsWith('same ') ? [is] : [])));
  const open = placesOf(desk, found.plan, chosen).find(({ area }) => args[sameKey(area)] === undefined);
  const perhaps = open?.perhaps.filter((area) => !taken.has(area)) ?? [];
  const [first, ...more] = perhaps;
  if (!open || first === undefined) return undefined;
  const none = { value: noneOfThem, text: `no: "${open.area}" is another place` };
  const inWords = `say first: same place "${open.area}" is ${first} (or is ${open.area}, if it is another place)`;
  const key = sameKey(open.area);
  return more.length === 0
    ? {
        key,
        inWords,
        title: `Your "${open.area}" = its "${first}"?`,
        choices: [{ value: first, text: `yes: "${open.area}" is what the plan calls "${first}"` }, none],
      }
    : {
        key,
        inWords,
        title: `Your "${open.area}" = which of the plan's places: ${perhaps.map((area) => `"${area}"`).join(', ')}?`,
        choices: [...perhaps.map((area) => ({ value: area, text: `"${area}"` })), none],
      };
}
const placesOf = (desk: Desk, plan: Plan, chosen: readonly Chosen[]): SamePlace[] =>
  samePlaces(
    plan,
    chosen.map((one) => one.service),
    desk.ledger,
  );
export const askedOnOrdering = (desk: Desk, args: Args): Besides | undefined => {
  const chosen = orderedBy(desk, args);
  return chosen.length === 0 ? undefined : askedSame(desk, chosen, args);
};
export const askedOnTaking = (desk: Desk, { plan, service, ...args }: Args): Besides | undefined =>
  askedSame(desk, [{ plan: plan as string, service: service as string }], args);

const answeredSame = (desk: Desk, args: Args): Same[] =>
  [...every(desk.ledger, 'area')].flatMap(({ area }): Same[] => {
    const is = args[sameKey(area)];
    if (typeof is !== 'string') return [];
    return [is === noneOfThem ? { area } : { area, is }];
  });

export function orderMeant(desk: Desk, args: Args): Meant {
  const chosen = orderedBy(desk, args);
  return chosen.length === 0
    ? { no: { because: 'no service is chosen', instead: 'choose first' } }
    : ordering(desk, chosen, args);
}

export function ordering(desk: Desk, chosen: readonly Chosen[], args: Args): Meant {
  const found = togetherOf(desk, chosen);
  const clash = clashWords(found);
  if (!found.ok) return { no: { because: clash ?? '', instead: 'correct one of the plans' } };
  const services = chosen.map((one) => one.service);
  const orders = ordersOf(found.plan, services, desk.ledger, answeredSame(desk, args));
  const odd = saidOtherwise(desk, orders);
  if (odd) return { no: { because: odd, instead: "correct the plan, or state what the job's hole wants" } };
  const [first, ...more] = orders;
  return { say: more.length === 0 ? { verb: 'order-service', ...first } : { verb: 'order-services', orders } };
}

/** Two specs for one hole that nobody called, of which neither can be believed. */
function saidOtherwise({ ledger }: Desk, orders: readonly Order[]): string | undefined {
  for (const one of orders.flatMap((order) => order.declares ?? [])) {
    if (one.kind !== 'hole-declared' || !one.wants) continue;
    const h = stateOf(ledger, 'hole', one.hole);
    const before = h?.called.stated ?? h?.declared?.wants;
    if (!before || contradictions(before, one.wants).length === 0) continue;
    return `${subjectText(`hole:${one.hole}`)} wants ${specText(before)} on this job and ${specText(one.wants)} by the plan`;
  }
  return undefined;
}
