// What stands open behind only until something is said of it: the call that says it, where a refusal would else send to close
// a place whose every fastener is in.
import { keepsOpen } from '../job/area-rest.ts';
import { holesOf, isClosedForOrder, isTouched } from '../job/closed.ts';
import { stateOf } from '../job/ledger.ts';
import { named, type Subject } from '../job/subjects.ts';
import type { Desk } from './desk.ts';

/** Its key speaks of the area in use; another is taken in use first. */
export function saidToClose({ ledger, facing }: Desk, place: Subject): { instead: string; by: string } | undefined {
  const a = stateOf(ledger, 'area', named('area', place) ?? '');
  if (!a || holesOf(ledger, a).some((h) => isTouched(h) && !isClosedForOrder(ledger, h))) return undefined;
  const rest = keepsOpen(ledger, a.area);
  const unsaid = rest.find(({ what }) => what === 'unsaid');
  if (unsaid?.by === undefined || rest.some(({ what }) => what === 'part' || what === 'inside')) return undefined;
  return a.area === facing.area
    ? { instead: 'call that', by: unsaid.by }
    : { instead: `call that at ${a.area}`, by: 'area' };
}
