// The name a key gives to an area, a part or a connection that nobody named: on a keypad there are no letters.
import type { Desk } from '../calls/desk.ts';
import { stateOf } from '../job/ledger.ts';
import type { Asking } from '../view/view.ts';
import { mayNameNew } from './answering.ts';

/** A name nobody used yet, where a new one may be named: "area 3", "part 1". */
export function freshName({ ledger }: Desk, { row, type }: Asking): string | undefined {
  const sort = freshlyNamed.find((one) => one === type);
  if (sort === undefined || (sort !== 'area' && !mayNameNew.has(row))) return undefined;
  for (let n = 1; ; n++) if (!stateOf(ledger, sort, `${sort} ${n}`)) return `${sort} ${n}`;
}
const freshlyNamed = ['area', 'part', 'connection'] as const;
