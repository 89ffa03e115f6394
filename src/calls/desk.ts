// What a call is read against: the ledger, what the mechanic faces, the time; and small questions asked of them.
import { isOff, isTouched } from '../job/closed.ts';
import type { Product } from '../job/entries/declared.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import type { Stamp } from '../job/line.ts';
import { oncePerLedger } from '../job/once-per-ledger.ts';
import { dueIn, inLooseningOrder, inOrder, passesOf } from '../job/passes.ts';
import { holeIn, nameOf, numberOf } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import type { Source } from '../plan/merge.ts';
import type { Interval } from '../trade/intervals.ts';
import type { Facing } from '../view/facing.ts';

/** A plan as the calls need it, with its file as it is to be named. */
export type PlanOffer = Source & { name: string; services: readonly string[] };
export const offerOf = ({ plan, file }: Source): PlanOffer => ({
  name: plan.name,
  services: plan.services.map((s) => s.service),
  plan,
  file,
});

export type Desk = {
  ledger: Ledger;
  facing: Facing;
  now: Stamp;
  plans: readonly PlanOffer[];
  /** The trays that stand on the bench, used or not. */
  trays?: readonly string[];
  /** The workshop's list of sealants; a job's own declarations go before it. */
  products?: readonly Product[];
  /** When services are next due, by the workshop's own table. */
  intervals?: Readonly<Record<string, Interval>>;
};

/** The hole that comes off next: the first declared one nobody has touched, else a slack one, else the first number free. */
export function nextOff({ ledger, facing: { area, hole } }: Desk): string | undefined {
  return hole ?? (area === undefined ? undefined : nextOffIn(ledger, area));
}
const nextOffIn = oncePerLedger((ledger, area): string | undefined => {
  const holes = inLooseningOrder(ledger, area);
  const untouched = holes.find((one) => {
    const h = stateOf(ledger, 'hole', one);
    return h && !isTouched(h) && !h.declared?.slackOnly;
  });
  if (untouched) return untouched;
  const slack = holes.find((one) => {
    const h = stateOf(ledger, 'hole', one);
    return h?.called.occupant?.level === 'slack' && !h.declared?.slackOnly;
  });
  if (slack) return slack;
  const planned = stateOf(ledger, 'area', area)?.declared?.planned;
  if (planned) return undefined;
  const known = new Set(holes.map((one) => Number(numberOf(one))));
  let free = 1;
  while (known.has(free)) free += 1;
  return holeIn(area, String(free));
});

/** The hole that is slackened next: a slack-only one first. */
export function nextSlack(desk: Desk): string | undefined {
  const { area, hole } = desk.facing;
  if (hole) return hole;
  if (area === undefined) return undefined;
  const only = inLooseningOrder(desk.ledger, area).find((one) => {
    const h = stateOf(desk.ledger, 'hole', one);
    return h?.declared?.slackOnly && !isTouched(h);
  });
  return only ?? nextOff(desk);
}

/** The hole that gets its fastener next: the first in order that is off. */
export function nextBack(desk: Desk): string | undefined {
  const { area, hole } = desk.facing;
  if (hole) return hole;
  if (area === undefined) return undefined;
  return inOrder(desk.ledger, area).find((one) => {
    const h = stateOf(desk.ledger, 'hole', one);
    return h && isOff(h);
  });
}

/** The hole that is tightened next: the first due in the earliest pass that has one due. */
export function nextTight(desk: Desk): string | undefined {
  const { area, hole } = desk.facing;
  if (hole) return hole;
  if (area === undefined) return undefined;
  for (const pass of passesOf(desk.ledger, area)) {
    const [first] = dueIn(desk.ledger, area, pass);
    if (first) return first;
  }
  return undefined;
}

export const theOnly = <T>(all: Iterable<T>): T | undefined => {
  const [first, second] = [...all].slice(0, 2);
  return second === undefined ? first : undefined;
};
export const theDrive = (desk: Desk): string | undefined =>
  theOnly([...every(desk.ledger, 'drive')].filter((d) => !isWithdrawn(desk.ledger, `drive:${d.drive}`)))?.drive;

/** Open findings on a subject or a hole of it. */
export const findingsOn = (ledger: Ledger, at: string): string[] =>
  [...every(ledger, 'finding')].filter((f) => !f.closed && (f.at === at || nameOf(f.at) === at)).map((f) => f.id);

/** The own fastener of a hole: in it, or the last that was. */
export function fastenerOf(ledger: Ledger, hole: string): string | undefined {
  const c = stateOf(ledger, 'hole', hole)?.called;
  return c?.occupant?.fastener ?? c?.own;
}
