// Which areas a part belongs to: where it is held, and what it is said to be in front of or behind.
import { type Ledger, stateOf } from '../job/ledger.ts';
import { edgesOf } from '../job/order.ts';
import { areaOf, named } from '../job/subjects.ts';

export function areasOfPart(ledger: Ledger, part: string): string[] {
  const subject = `part:${part}`;
  const beside = edgesOf(ledger).flatMap((e) => {
    const other = e.front === subject ? e.behind : e.behind === subject ? e.front : undefined;
    return other === undefined ? [] : (named('area', other) ?? []);
  });
  const held = stateOf(ledger, 'part', part)?.declared?.heldBy.map(areaOf) ?? [];
  return [...new Set([...held, ...beside])];
}
