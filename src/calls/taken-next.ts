// Which fastener the next call is about: the one the job knows in that hole, else the one in use.
import { wantsOf } from '../job/closed.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import type { Spec } from '../job/spec.ts';
import type { ScreenId } from '../view/screens.ts';
import { type Desk, fastenerOf, nextBack, nextComing, nextTight } from './desk.ts';

/** What is known to sit in a hole, or planned there, before anything of it is called. */
export function knownIn(ledger: Ledger, hole: string | undefined): Spec | undefined {
  const h = hole === undefined ? undefined : stateOf(ledger, 'hole', hole);
  return h?.called.occupant?.spec ?? h?.declared?.wants;
}

/** The fastener that Enter takes on strip and build; on a list the one in use, where that is what would come off. */
export function takenNext(desk: Desk, screen: ScreenId): Spec {
  const { ledger, facing } = desk;
  const known = screen === 'build' ? undefined : knownIn(ledger, nextComing(desk));
  if (screen !== 'build') return known === undefined ? facing.spec : screen === 'strip' ? known : {};
  const hole = nextBack(desk) ?? nextTight(desk);
  const h = hole === undefined ? undefined : stateOf(ledger, 'hole', hole);
  const own = hole === undefined ? undefined : stateOf(ledger, 'fastener', fastenerOf(ledger, hole) ?? '');
  return own?.spec ?? (h && wantsOf(ledger, h)) ?? {};
}
