// The fastener in use: what comes off next is this, until another is said; those before it are the next ones of a row.
import { stateOf } from '../job/ledger.ts';
import type { Said } from '../job/said.ts';
import { type Spec, specText } from '../job/spec.ts';
import { areaOf, type Hole } from '../job/subjects.ts';
import type { Facing } from '../view/facing.ts';
import type { Desk } from './desk.ts';

const mostBefore = 3;
export const inUse = ({ facing }: Desk, spec: Spec): Partial<Facing> => {
  const before = [facing.spec, ...(facing.specsBefore ?? [])].filter((one) => specText(one) !== specText(spec));
  const once = new Map(before.map((one) => [specText(one), one]));
  return { spec, specsBefore: [...once.values()].slice(0, mostBefore) };
};
/**
 * What came off was slackened before another was said, which nothing of the area is: it is in use again, since the next of
 * the area is more likely its like.
 */
export function usedAgain(desk: Desk, { hole }: Said): Partial<Facing> {
  const { ledger, facing } = desk;
  const a = typeof hole === 'string' ? stateOf(ledger, 'area', areaOf(hole)) : undefined;
  if (!a || a.declared?.planned) return {};
  const specOf = (one: Hole): Spec | undefined =>
    stateOf(ledger, 'fastener', stateOf(ledger, 'hole', one)?.called.own ?? '')?.spec;
  const inUseNow = specText(facing.spec);
  const own = specOf(hole as Hole);
  const isElsewhere = a.holes.every((one) => specText(specOf(one) ?? {}) !== inUseNow);
  return own?.kind !== undefined && isElsewhere ? inUse(desk, own) : {};
}
