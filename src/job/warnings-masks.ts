// What is said beside a call of what closes an opening: it comes out from under what was set over it, and one that went in
// by a name of its own stays in when all masks are called away. It stands in no way.
import { partsOf } from './closed.ts';
import type { EntryOf } from './entry.ts';
import { closesOpenings, stillUnder } from './first-in.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import type { TemporaryState } from './states.ts';
import { named } from './subjects.ts';

const areaAt = ({ at }: TemporaryState): string | undefined => (at === undefined ? undefined : named('area', at));

/** Everything its area holds is on, and some of that went on since this is in. */
export function outFromUnder(ledger: Ledger, temporary: string): string[] {
  const t = stateOf(ledger, 'temporary', temporary);
  const a = t && closesOpenings.has(t.sort) ? stateOf(ledger, 'area', areaAt(t) ?? '') : undefined;
  if (!t || !a) return [];
  const over = partsOf(ledger, a).flatMap((part) => stateOf(ledger, 'part', part) ?? []);
  const since = over.filter((p) => p.fittedAt > t.putInAt).map((p) => p.part);
  if (since.length === 0 || over.some((p) => p.off)) return [];
  return [
    `${since.join(', ')} called on over it: ${temporary} comes out with ${since.length === 1 ? 'that' : 'those'} off again`,
  ];
}

/** What went in by its own name comes out by its own call, and is no matter before. */
export function ofItsOwnName(ledger: Ledger, { areas }: EntryOf<'all-unmasked'>): string[] {
  const own = [...every(ledger, 'temporary')].filter(
    (t) => t.in && t.sort === 'mask' && areas.includes(areaAt(t) ?? ''),
  );
  return own.map(
    (t) => `${t.temporary} at ${areaAt(t)} is in still by its own name: "out ${t.temporary}" once it is away`,
  );
}

/** What has its number sits where it is to lie. */
export function inUnderItsOwn(ledger: Ledger, entry: EntryOf<'temporary-put-in'>): string[] {
  const part = stillUnder(ledger, entry.temporary, entry);
  return part === undefined ? [] : [`${part} is not called off: ${entry.temporary} goes in where that came out`];
}
