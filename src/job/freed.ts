// Parts that nothing holds any more and nobody has taken off: all that held them is off or slack. One with slack bolts left
// in it comes off by no bolt of its own, and is easily left on.
import { isOff } from './closed.ts';
import { inFrontOf } from './in-front.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { areasThroughParts } from './parts-behind.ts';
import type { PartState } from './states.ts';
import { isWithdrawn } from './withdrawn.ts';

export const isFreed = (ledger: Ledger, { declared }: PartState): boolean =>
  declared !== undefined &&
  declared.heldBy.length > 0 &&
  declared.heldBy.every((hole) => {
    const h = stateOf(ledger, 'hole', hole);
    return h !== undefined && (isOff(h) || h.called.occupant?.level === 'slack');
  });

/** No fastener holds it, and a service that was ordered from a plan is about it. */
const isLooseAndMeant = (ledger: Ledger, { part, declared }: PartState): boolean =>
  declared?.heldBy.length === 0 &&
  [...every(ledger, 'service')].some((s) => s.state === 'ordered' && s.brings?.includes(`part:${part}`));

/**
 * Still on, of an area or loose behind it, and nothing stands in front of it; taken off before, it was put back as it is.
 */
export const freedIn = oncePerLedger((ledger, area): readonly string[] =>
  [...every(ledger, 'part')]
    .filter((p) => {
      if (p.off || p.removedAt > 0 || isWithdrawn(ledger, `part:${p.part}`)) return false;
      const isOfIt = stateOf(ledger, 'area', area)?.parts.includes(p.part) && isFreed(ledger, p);
      const isBehindIt = isLooseAndMeant(ledger, p) && areasThroughParts(ledger, p.part).includes(area);
      return (isOfIt || isBehindIt) && inFrontOf(ledger, `part:${p.part}`).length === 0;
    })
    .map(({ part }) => part),
);
