// A plan improved by a job made after it: what the job says otherwise or more, one change a thing, and the plan with those
// that were chosen. What the job has not is left alone: it may have been made for fewer services.
import { specText } from '../job/spec.ts';
import { named, type Subject, sortOf, subjectText } from '../job/subjects.ts';
import { broughtBy } from './brought.ts';
import { type Declaration, declaredWhole, subjectOf } from './declared-whole.ts';
import type { Plan } from './plan.ts';
import { type AreaNames, renamed, renamedSubject } from './renamed.ts';
import { writtenFrom } from './written.ts';

type NewPart = NonNullable<Plan['newParts']>[number];
export type Change = {
  /** "cam cover 7: wants bolt hex 8 M6x35 -> bolt hex 8 M6x30" */
  words: string;
} & (
  | { is: 'declared'; key: string; declares: Declaration; services: readonly string[] }
  | { is: 'service'; service: Plan['services'][number] }
  | { is: 'bought'; newPart: NewPart }
);

/**
 * @param job the job as a plan of its own
 * @param names the job's own names for areas of the plan: what it says is said of those
 */
export function changesOf(plan: Plan, job: Plan, names: AreaNames = new Map()): Change[] {
  const back: AreaNames = new Map([...names].map(([planned, own]) => [own, planned]));
  const before = new Map(declaredWhole(plan).map((one) => [keyOf(one), one]));
  const own = renamed(back, declaredWhole(job)).map(withoutAlias);
  const declared = own.flatMap((one): Change[] => {
    const words = differs(before.get(keyOf(one)), one);
    if (words === undefined) return [];
    const at = subjectOf(one);
    const services = at === undefined || before.has(keyOf(one)) ? [] : servicesWith(plan, job, back, at);
    return [{ is: 'declared', key: keyOf(one), declares: one, services, words: `${nameIn(one)}: ${words}` }];
  });
  return [...servicesMore(plan, job, back), ...declared, ...boughtMore(plan, job)];
}

/** The plan with these changes in it. Whether it is sound is asked when it is read again. */
export function improved(plan: Plan, changes: readonly Change[]): Plan {
  const whole = new Map(declaredWhole(plan).map((one) => [keyOf(one), one]));
  const services = new Map(plan.services.map((one) => [one.service, one]));
  const newParts = new Map((plan.newParts ?? []).map((one) => [one.name, one]));
  for (const change of changes) {
    if (change.is === 'service') services.set(change.service.service, change.service);
    else if (change.is === 'bought') newParts.set(change.newPart.name, change.newPart);
    else whole.set(change.key, joined(whole.get(change.key), change.declares));
  }
  const next: Plan = {
    ...plan,
    ...(newParts.size > 0 && { newParts: [...newParts.values()] }),
    services: [...services.values()],
    ...writtenFrom(inOrder([...whole.values()])),
  };
  return changes.reduce(
    (so, change) => (change.is === 'declared' ? broughtToo(so, subjectOf(change.declares), change.services) : so),
    next,
  );
}

const keyOf = (one: Declaration): string => {
  if (one.kind === 'behind-declared') return `${one.front}\n${one.behind}`;
  return one.kind === 'product-declared' ? `product:${one.label.product}` : (subjectOf(one) as string);
};
const nameIn = (one: Declaration): string => {
  if (one.kind === 'behind-declared') return `${subjectText(one.behind)} behind ${subjectText(one.front)}`;
  return one.kind === 'product-declared' ? one.label.product : subjectText(subjectOf(one) as string);
};
function withoutAlias(one: Declaration): Declaration {
  if (one.kind !== 'area-declared') return one;
  const { inPlans: _, ...rest } = one;
  return rest;
}

type Fields = Readonly<Record<string, unknown>>;
/** Fields that a job may have lost on purpose; of others it only knows less. */
const mayGo = new Set(['slackOnly']);
/** What is drawn, and where an edge was said, are no change of the work. */
const notCompared = new Set(['kind', 'outline', 'from']);

/** What is new or other in it, in words; undefined where nothing is. */
function differs(before: Declaration | undefined, one: Declaration): string | undefined {
  if (!before) return 'new';
  const was = before as unknown as Fields;
  const is = one as unknown as Fields;
  const fields = [...new Set([...Object.keys(is), ...Object.keys(was).filter((f) => mayGo.has(f))])];
  const other = fields.filter(
    (f) => !notCompared.has(f) && JSON.stringify(was[f]) !== JSON.stringify(withKnown(was[f], is[f])),
  );
  return other.length === 0
    ? undefined
    : other
        .map((f) => `${fieldName(f)} ${valueText(f, was[f])} -> ${valueText(f, withKnown(was[f], is[f]))}`)
        .join(', ');
}
const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
/** What the plan knew of a spec or a method and the job does not say still holds. */
const withKnown = (was: unknown, is: unknown): unknown => (isFields(was) && isFields(is) ? { ...was, ...is } : is);
const joined = (before: Declaration | undefined, one: Declaration): Declaration => {
  if (!before) return one;
  const was = before as unknown as Fields;
  const is = one as unknown as Fields;
  const kept = Object.entries(was).filter(([field]) => !mayGo.has(field) || field in is);
  const said = Object.entries(is).map(([field, value]) => [
    field,
    notCompared.has(field) ? (was[field] ?? value) : withKnown(was[field], value),
  ]);
  return Object.fromEntries([...kept, ...said]) as unknown as Declaration;
};
const fieldName = (field: string): string => field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
function valueText(field: string, value: unknown): string {
  if (value === undefined) return 'nothing';
  if (field === 'wants') return specText(value as Parameters<typeof specText>[0]);
  if (isFields(value)) return Object.values(value).map(String).join(' ');
  return Array.isArray(value) ? value.join(' ') : value === true ? 'yes' : String(value);
}

/** Holes after their areas. */
const inOrder = (all: readonly Declaration[]): Declaration[] => [
  ...all.filter((one) => one.kind === 'area-declared'),
  ...all.filter((one) => one.kind !== 'area-declared'),
];

/** Which of the plan's services bring something new: those that do on the job, else the first they share. */
function servicesWith(plan: Plan, job: Plan, back: AreaNames, at: Subject): string[] {
  const there = new Set(plan.services.map((s) => s.service));
  const shared = job.services.map((s) => s.service).filter((service) => there.has(service));
  const bringing = shared.filter((service) =>
    broughtBy(job, [service]).some((one) => renamedSubject(back, subjectOf(one) ?? 'vehicle') === at),
  );
  if (bringing.length > 0) return bringing;
  return [shared[0] ?? (plan.services[0] as Plan['services'][number]).service];
}
/** Named in the services where nothing they have brings it of itself. */
function broughtToo(plan: Plan, at: Subject | undefined, services: readonly string[]): Plan {
  if (at === undefined || services.length === 0 || sortOf(at) === 'hole') return plan;
  const area = named('area', at);
  const withIt = plan.services.map((one) => {
    if (!services.includes(one.service)) return one;
    if (broughtBy(plan, [one.service]).some((said) => subjectOf(said) === at)) return one;
    return area === undefined ? { ...one, also: [...(one.also ?? []), at] } : { ...one, areas: [...one.areas, area] };
  });
  return { ...plan, services: withIt };
}

function servicesMore(plan: Plan, job: Plan, back: AreaNames): Change[] {
  const there = new Set(plan.services.map((s) => s.service));
  return job.services
    .filter((one) => !there.has(one.service))
    .map((one): Change => {
      const service = {
        ...one,
        areas: one.areas.map((area) => back.get(area) ?? area),
        ...(one.also && { also: one.also.map((at) => renamedSubject(back, at)) }),
      };
      return { is: 'service', service, words: `${one.service}: new service` };
    });
}

/** By what it replaces, by its spec, or by its name, as the parts box is read. */
function boughtMore(plan: Plan, job: Plan): Change[] {
  const services = new Set(plan.services.map((s) => s.service));
  return (job.newParts ?? []).flatMap((one): Change[] => {
    const before = (plan.newParts ?? []).find(
      (other) =>
        other.name === one.name ||
        (one.replaces !== undefined && other.replaces === one.replaces) ||
        (one.spec !== undefined && other.spec !== undefined && specText(one.spec) === specText(other.spec)),
    );
    if (before && before.quantity === one.quantity) return [];
    const wanting = one.services?.filter((service) => services.has(service));
    const { services: _, ...rest } = one;
    const newPart: NewPart = before
      ? { ...before, quantity: one.quantity }
      : { ...rest, ...(wanting && wanting.length > 0 && { services: wanting }) };
    const words = before ? `bought ${before.quantity} -> ${one.quantity}` : `new to buy, ${one.quantity}`;
    return [{ is: 'bought', newPart, words: `${newPart.name}: ${words}` }];
  });
}
