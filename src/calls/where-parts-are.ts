// Which areas a part belongs to: where it is held, and what it is said to be in front of or behind; and whether a new one
// named like another area is meant, which the bolts in use would hold.
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { edgesOf } from '../job/order.ts';
import { areaOf, named } from '../job/subjects.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import type { Besides } from './row.ts';

export function areasOfPart(ledger: Ledger, part: string): string[] {
  const subject = `part:${part}`;
  const beside = edgesOf(ledger).flatMap((e) => {
    const other = e.front === subject ? e.behind : e.behind === subject ? e.front : undefined;
    return other === undefined ? [] : (named('area', other) ?? []);
  });
  const held = stateOf(ledger, 'part', part)?.declared?.heldBy.map(areaOf) ?? [];
  return [...new Set([...held, ...beside])];
}

/** Of one that is known, or said with what holds it, nothing is asked. */
export function askedOnPartOff({ ledger, facing }: Desk, args: Args): Besides | undefined {
  const { part, heldBy, sits, late } = args;
  if (typeof part !== 'string' || facing.area === undefined || (heldBy ?? sits ?? late) !== undefined) return undefined;
  if (stateOf(ledger, 'part', part)) return undefined;
  const isSo = (name: string): boolean => name.toLowerCase() === part.toLowerCase();
  const other = [...every(ledger, 'area')].find((a) => isSo(a.area) && a.area !== facing.area)?.area;
  if (other === undefined) return undefined;
  return {
    key: 'late',
    title: `${other} is an area of its own, and ${facing.area} is in use: which part comes off?`,
    choices: [
      { value: 'no', text: `the ${other}: that area is taken in use first, then part off` },
      { value: 'all the same', text: `another of that name: the holes of ${facing.area} hold it` },
    ],
    givesUp: 'no',
    inWords: `say "area ${other}" first, or what holds it, as "held by 1-3"`,
  };
}
