// Parts that nothing holds any more and nobody has taken off: all that held them is off or slack. One with slack bolts left
// in it comes off by no bolt of its own, and is easily left on.
import { isOff } from './closed.ts';
import { inFrontOf } from './in-front.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { PartState } from './states.ts';
import { isWithdrawn } from './withdrawn.ts';

export const isFreed = (ledger: Ledger, { declared }: PartState): boolean =>
  declared !== undefined &&
  declared.heldBy.length > 0 &&
  declared.heldBy.every((hole) => {
    const h = stateOf(ledger, 'hole', hole);
    return h !== undefined && (isOff(h) || h.called.occupant?.level === 'slack');
  });

/** Still on, of an area, and nothing stands in front of it; taken off before, it was put back as it is. */
export const freedIn = (ledger: Ledger, area: string): string[] =>
  (stateOf(ledger, 'area', area)?.parts ?? []).filter((name) => {
    const part = stateOf(ledger, 'part', name);
    if (!part || part.off || part.removedAt > 0 || isWithdrawn(ledger, `part:${name}`)) return false;
    return isFreed(ledger, part) && inFrontOf(ledger, `part:${name}`).length === 0;
  });
