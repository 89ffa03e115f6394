// Reading names from words: known ones and new ones, and how far a name may reach. What a name stands for is read elsewhere.
import { type Ledger, stateOf } from '../job/ledger.ts';
import type { Sort } from '../job/states.ts';
import { nameSchema } from '../job/subjects.ts';
import type { Desk } from './desk.ts';
import type { Args, Reading, Token } from './form.ts';

export type Read = (desk: Desk, rest: readonly Token[], stops: readonly string[], args: Args) => Reading;

export const none = (why: string): Reading => ({ why });
export const missing = (what: string): Reading => none(`${what} is missing`);
export const joined = (rest: readonly Token[], used: number): string =>
  rest
    .slice(0, used)
    .map((t) => t.text)
    .join(' ');

/** How many tokens a name or text may take: up to the next word of the form, then all. */
export function lengths(rest: readonly Token[], stops: readonly string[]): number[] {
  const stop = rest.findIndex((t, i) => i > 0 && !t.quoted && stops.includes(t.text.toLowerCase()));
  if (rest[0]?.quoted) return [1];
  return stop > 0 ? [stop, rest.length] : [rest.length];
}

export function names(ledger: Ledger, sort: Sort): string[] {
  const { all, length } = ledger.names[sort];
  return all.slice(0, length).filter((name) => stateOf(ledger, sort, name) !== undefined);
}

// What is faced goes into every line, and no verb looks at it: what is no name must not become an area or a tray here.
const isName = ({ value }: { value: string }): boolean => value.trim() !== '' && nameSchema.safeParse(value).success;
export const named = <T extends { value: string }>(found: readonly T[], sort: string): T[] | { why: string } => {
  const fit = found.filter(isName);
  return fit.length > 0 ? fit : { why: `the name of ${sort} has 1 to 60 characters, and no "/" or ":" among them` };
};

/** A name of a sort: the longest known one that the words begin with, else a new one up to the next word of the form. */
export function readName(sort: Sort, what: string): Read {
  return (desk, rest, stops) => {
    if (rest.length === 0) return missing(what);
    const there = names(desk.ledger, sort);
    const byName = knownAtStart(there, rest);
    const known = byName.length > 0 ? byName : byItsNumber(there, sort, rest);
    const fresh = lengths(rest, stops).map((used) => ({ value: joined(rest, used), used }));
    const all = [...known, ...fresh.filter((one) => !known.some((k) => k.used === one.used))];
    return sort === 'area' ? named(all, 'an area') : all;
  };
}
/** "area 2", as a keypad names it, where a bare 2 is said of an area. */
function byItsNumber(
  known: readonly string[],
  sort: Sort,
  [first]: readonly Token[],
): { value: string; used: number }[] {
  const value = `${sort} ${first?.text}`;
  return !first?.quoted && /^\d+$/.test(first?.text ?? '') && known.includes(value) ? [{ value, used: 1 }] : [];
}
export function knownAtStart(known: readonly string[], rest: readonly Token[]): { value: string; used: number }[] {
  const first = rest[0]?.text.toLowerCase() ?? '';
  const found = known.flatMap((value) => {
    if (!value.toLowerCase().startsWith(first)) return [];
    const used = rest[0]?.quoted ? 1 : value.split(' ').length;
    return joined(rest, used).toLowerCase() === value.toLowerCase() && used <= rest.length ? [{ value, used }] : [];
  });
  return found.sort((a, b) => b.used - a.used);
}
