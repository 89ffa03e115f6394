// What each key would take by itself now, shown before it is pressed: the next one of its kind, with what goes with it.
import { every, stateOf } from '../job/ledger.ts';
import { withinArea } from '../job/subjects.ts';
import type { Bound } from './bindings.ts';
import type { Desk } from './desk.ts';
import { nextOfKind } from './next-of-kind.ts';
import type { Otherwise, Row } from './row.ts';

/** Calls whose next one is worth seeing before the key is pressed: what is neither a fastener nor lies in a list. */
const shown: ReadonlySet<string> = new Set([
  'parted',
  'made',
  'put-in',
  'taken-out',
  'part-off',
  'part-back',
  'renewed',
  'working-out',
  'drained',
]);
/** What each key would take by itself now: the key's call, the name of the thing, and what it would write of it unasked. */
export const upNext = (desk: Desk, bound: readonly Bound[]): { bound: Bound; name: string; unasked?: Otherwise }[] =>
  bound.flatMap((one, i) => {
    // A call with two keys is named by its first.
    if (!shown.has(one.row.id) || bound.findIndex((other) => other.row === one.row) < i) return [];
    const args = nextOfKind(one.row, desk, {});
    const [name] = Object.values(args);
    if (typeof name !== 'string') return [];
    const unasked = one.row.unasked?.(desk, args);
    return [{ bound: one, name: shownName(desk, one.row, name), ...(unasked && { unasked }) }];
  });
function shownName(desk: Desk, { id }: Row, name: string): string {
  if (id === 'taken-out') return `${name}${alsoIn(desk, name)}`;
  if (id === 'part-off') return `${name}${withItsLast(desk, name)}`;
  return id === 'working-out' ? withinArea(name) : name;
}
/** Loose, and some that hold it are still to come off: with the last of them it is off by itself. */
function withItsLast({ ledger }: Desk, part: string): string {
  const held = stateOf(ledger, 'part', part)?.declared?.heldBy ?? [];
  const comesOff = held.some((hole) => {
    const h = stateOf(ledger, 'hole', hole);
    return h?.called.occupant !== undefined && !h.declared?.slackOnly;
  });
  return comesOff ? ', else by itself with its last' : '';
}
/** What else went in for the work and hangs there still: a lock that is forgotten stops a turn, or breaks. */
function alsoIn({ ledger }: Desk, name: string): string {
  const others = [...every(ledger, 'temporary')].filter((t) => t.in && t.temporary !== name).map((t) => t.temporary);
  return others.length > 0 ? `; in besides: ${others.join(', ')}` : '';
}
