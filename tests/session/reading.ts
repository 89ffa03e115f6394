// Short questions to a ledger, for stories at the bench.
import { type Ledger, stateOf } from '../../src/job/ledger.ts';

export function occupantOf(ledger: Ledger, hole: string) {
  const called = stateOf(ledger, 'hole', hole)?.called;
  return { own: called?.own, occupant: called?.occupant?.fastener };
}
