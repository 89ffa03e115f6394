// Which fastener the next call is about: the one the job knows in that hole, else the one in use; of what goes back, the one
// that Enter takes, which need not be the hole's own (L6).
import { chosenFor } from '../job/choose.ts';
import { isOff, isOwnLost, wantsOf } from '../job/closed.ts';
import type { Entry } from '../job/entry.ts';
import type { FastenerState, HoleState } from '../job/hole-states.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import { levelToFill } from '../job/levels.ts';
import { contradictions, type Spec } from '../job/spec.ts';
import { areaOf, type Hole, named, subjectText, withinArea } from '../job/subjects.ts';
import type { ScreenId } from '../view/screens.ts';
import { type Desk, fastenerOf, nextBack, nextComing, nextTight } from './desk.ts';
import { specWords } from './spec-words.ts';

/** What is known to sit in a hole, or planned there, before anything of it is called. */
export function knownIn(ledger: Ledger, hole: string | undefined): Spec | undefined {
  const h = hole === undefined ? undefined : stateOf(ledger, 'hole', hole);
  return h?.called.occupant?.spec ?? h?.declared?.wants;
}

/** What is said of another in use than the one known in the hole that comes next: that one is called, not this. */
export function anotherKnown(desk: Desk, inUse: Spec): string {
  const hole = nextComing({ ...desk, facing: { ...desk.facing, spec: inUse } });
  const known = knownIn(desk.ledger, hole);
  if (hole === undefined || !known || contradictions(known, inUse).length === 0) return '';
  const number = withinArea(hole);
  return `. Mind: ${number} is known as ${specWords(known)}, and off calls that; this one there is "wrong one", or typed: off ${number} as …`;
}

/** The fastener that Enter takes on strip and build; on a list the one in use, where that is what would come off. */
export function takenNext(desk: Desk, screen: ScreenId): Spec {
  const { ledger, facing } = desk;
  const coming = screen === 'build' ? undefined : nextComing(desk);
  // Of a planned area that is through nothing more comes off: what was in use last, as the odd one of another area, is no next.
  const isThrough = coming === undefined && stateOf(ledger, 'area', facing.area ?? '')?.declared?.planned === true;
  if (screen === 'strip') return isThrough ? {} : (knownIn(ledger, coming) ?? facing.spec);
  if (screen !== 'build') return coming === undefined || knownIn(ledger, coming) ? {} : facing.spec;
  const back = nextBack(desk);
  const hole = back ?? nextTight(desk);
  const h = hole === undefined ? undefined : stateOf(ledger, 'hole', hole);
  const own = hole === undefined ? undefined : stateOf(ledger, 'fastener', fastenerOf(ledger, hole) ?? '');
  const chosen = back === undefined ? undefined : chosenFor(ledger, levelToFill(ledger, back));
  return chosen?.spec ?? own?.spec ?? (h && wantsOf(ledger, h)) ?? {};
}

/** "the bolt hex 8 M6x35 that came out of 5", said at another hole of its area. */
function whence({ spec, origin }: FastenerState, hole: Hole): string {
  const from = named('hole', origin);
  if (from === undefined) return `the ${specWords(spec)} of ${subjectText(origin)}`;
  return `the ${specWords(spec)} that came out of ${areaOf(from) === areaOf(hole) ? withinArea(from) : subjectText(origin)}`;
}
/** L9: an equal in its place closes the hole and not the search. */
const ownLost = (ledger: Ledger, h: HoleState): string => (isOwnLost(ledger, h) ? '; its own is lost' : '');
/** L6: what goes back into a hole where it is another than its own. */
export function takenForIt(ledger: Ledger, hole: Hole): string | undefined {
  const into = levelToFill(ledger, hole);
  const h = stateOf(ledger, 'hole', into);
  const chosen = h && isOff(h) ? chosenFor(ledger, into) : undefined;
  return h && chosen && chosen.id !== h.called.own ? `${whence(chosen, into)}${ownLost(ledger, h)}` : undefined;
}
/** L6: the same of what was called; a new one is no other hole's. */
export const tradedWords = (before: Ledger, entries: readonly Entry[]): string[] =>
  entries.flatMap((e) => {
    const f = e.kind === 'fastener-fitted' ? stateOf(before, 'fastener', e.fastener) : undefined;
    const h = e.kind === 'fastener-fitted' ? stateOf(before, 'hole', e.hole) : undefined;
    if (e.kind !== 'fastener-fitted' || !f || !h || h.called.own === f.id) return [];
    return [`In ${withinArea(e.hole)} is ${whence(f, e.hole)}${ownLost(before, h)}`];
  });
