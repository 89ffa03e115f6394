// What a job goes by wherever it is named: its vehicle, as the job says, else the name it was begun under.
import { type Ledger, stateOf } from '../job/ledger.ts';
import { plainText } from '../trade/plain-text.ts';

export const jobName = (ledger: Ledger, begunAs = ''): string =>
  plainText(stateOf(ledger, 'vehicle', 'vehicle')?.label || begunAs);
