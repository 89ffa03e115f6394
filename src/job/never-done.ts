// Of a service, what its plan takes off and renews and nobody called: asked about before it is called done, and told on the
// sheet where it was called done all the same. It judges nothing.
import { areaOpenedAt } from './closed.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { ServiceState } from './states.ts';
import { named } from './subjects.ts';

/** Parts that its plan renews and that are the old ones yet. */
export const notRenewedOf = (ledger: Ledger, { brings = [] }: ServiceState): string[] =>
  brings.flatMap((one) => {
    const p = stateOf(ledger, 'part', named('part', one) ?? '');
    return p?.declared?.renew && p.replacedAt === 0 ? [p.part] : [];
  });

/** Nothing that its plan brought was slackened, came off, was parted or drained. False where no plan brought anything. */
export function isUntouched(ledger: Ledger, { brings = [] }: ServiceState): boolean {
  const at = brings.map((one) => {
    const area = named('area', one);
    if (area !== undefined) return areaOpenedAt(ledger, area);
    const part = stateOf(ledger, 'part', named('part', one) ?? '');
    const connection = stateOf(ledger, 'connection', named('connection', one) ?? '');
    const circuit = stateOf(ledger, 'circuit', named('circuit', one) ?? '');
    return part?.removedAt ?? connection?.partedAt ?? circuit?.drainedAt ?? 0;
  });
  return at.length > 0 && at.every((line) => line === 0);
}
