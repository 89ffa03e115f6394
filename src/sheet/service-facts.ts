// What became of each service, and of one called done what nobody did: the owner pays for it.
import type { Ledger } from '../job/ledger.ts';
import { isUntouched, notRenewedOf } from '../job/never-done.ts';
import type { ServiceState } from '../job/states.ts';

export type ServiceFact = {
  service: string;
  state: ServiceState['state'];
  because?: string;
  /** Called done, though these are the old ones yet. */
  notRenewed?: string[];
  /** Called done, though nothing of what its plan brought was ever touched. */
  untouched?: true;
};

export function serviceFact(ledger: Ledger, s: ServiceState): ServiceFact {
  const notRenewed = s.state === 'done' ? notRenewedOf(ledger, s) : [];
  return {
    service: s.service,
    state: s.state,
    ...(s.because && { because: s.because }),
    ...(notRenewed.length > 0 && { notRenewed }),
    ...(s.state === 'done' && isUntouched(ledger, s) && { untouched: true }),
  };
}

export const leftUndone = ({ untouched, notRenewed }: ServiceFact): string[] => [
  ...(notRenewed ? [`not renewed: ${notRenewed.join(', ')}`] : []),
  ...(untouched ? ['nothing of it was taken off'] : []),
];
