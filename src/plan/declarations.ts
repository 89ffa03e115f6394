// P1, P2: what the declares of an `order-service` say when services of a plan are taken onto a job. After that the job
// never reads the plan again.
import { type Ledger, stateOf } from '../job/ledger.ts';
import { edgesOf } from '../job/order.ts';
import { nameOf, type Subject, sortOf } from '../job/subjects.ts';
import { broughtBy } from './brought.ts';
import { type Declaration, declaredWhole, subjectOf } from './declared-whole.ts';
import type { Plan } from './plan.ts';
import { type AreaNames, renamed } from './renamed.ts';
import { knownNames } from './same-place.ts';

/**
 * The declarations that taking `services` adds to a job; what the job knows already is not said again.
 * P2: a hole called before keeps the spec it was called with; what the plan says of it is evidence against it.
 * @param names the job's own names for areas of the plan
 */
export function declarationsOf(
  plan: Plan,
  services: readonly string[],
  ledger: Ledger,
  names: AreaNames = knownNames(ledger),
): Declaration[] {
  const brought = renamed(names, broughtBy(plan, services));
  const there = new Set(brought.flatMap((one) => subjectOf(one) ?? []));
  const isThere = (subject: Subject) => there.has(standsFor(subject)) || isDeclared(ledger, standsFor(subject));
  const edges = renamed(names, declaredWhole(plan)).filter(
    (one) => one.kind === 'behind-declared' && isThere(one.front) && isThere(one.behind),
  );
  return [...brought.map((one) => asEvidence(one, ledger)), ...edges].filter((one) => !isKnown(one, ledger));
}

/** A check rotation is there with its drive. */
const standsFor = (subject: Subject): Subject =>
  sortOf(subject) === 'rotation' ? `drive:${nameOf(subject)}` : subject;

function isDeclared(ledger: Ledger, subject: Subject): boolean {
  const name = nameOf(subject);
  switch (sortOf(subject)) {
    case 'area':
    case 'hole':
    case 'part':
    case 'connection':
    case 'face':
    case 'drive':
      return stateOf(ledger, sortOf(subject) as 'area', name)?.declared !== undefined;
    case 'circuit':
    case 'temporary':
      return stateOf(ledger, sortOf(subject) as 'circuit', name) !== undefined;
    default:
      return false;
  }
}

function asEvidence(one: Declaration, ledger: Ledger): Declaration {
  if (one.kind !== 'hole-declared') return one;
  const hole = stateOf(ledger, 'hole', one.hole);
  if (!hole || hole.called.levels.length === 0) return one;
  const { wants, ...rest } = one;
  // Called by a plan's own wants, there is nothing to hold against it.
  const isKnownToWant = wants !== undefined && saysNothingNew(hole.declared?.wants, wants);
  return { ...rest, ...(wants && !isKnownToWant && { planSays: wants }) };
}

function isKnown(one: Declaration, ledger: Ledger): boolean {
  const { kind, ...said } = one;
  if (kind === 'behind-declared') {
    return edgesOf(ledger).some((e) => e.front === one.front && e.behind === one.behind && e.until === one.until);
  }
  return saysNothingNew(known(one, ledger), said);
}

function known(one: Declaration, ledger: Ledger): object | undefined {
  switch (one.kind) {
    case 'product-declared':
      return stateOf(ledger, 'product', one.label.product);
    case 'circuit-declared':
      return stateOf(ledger, 'circuit', one.circuit);
    case 'temporary-declared':
      return stateOf(ledger, 'temporary', one.temporary);
    case 'behind-declared':
      return undefined;
    default: {
      const subject = subjectOf(one) ?? '';
      return stateOf(ledger, sortOf(subject) as 'area', nameOf(subject))?.declared;
    }
  }
}

const saysNothingNew = (before: object | undefined, said: object): boolean =>
  before !== undefined &&
  Object.entries(said).every(([field, value]) => same((before as Record<string, unknown>)[field], value));

function same(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || !one || !other) return false;
  const fields = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...fields].every((f) => same((one as Record<string, unknown>)[f], (other as Record<string, unknown>)[f]));
}
