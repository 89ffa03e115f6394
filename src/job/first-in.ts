// What must be in before a fastener of an area is touched: the jack before its bracket, the lock before its bolt, and what
// holds the shafts before what tensions the belt between them, as long as that belt is on. Common practice, no source.
import { isOff, isTouched } from './closed.ts';
import { every, type Ledger, stateOf, tallyOf } from './ledger.ts';
import { gatedBy } from './order.ts';
import type { TemporaryState } from './states.ts';
import { areaOf, type Hole, named, type Subject } from './subjects.ts';
import { isWithdrawn } from './withdrawn.ts';

/** A stand is not among them: the nuts of a wheel are slackened before it, and it has its own warning. */
const carriesOrLocks: ReadonlySet<string> = new Set(['jack', 'block', 'lock', 'pin']);

/** The belts and chains that run over an area and are still on. */
const beltsOver = (ledger: Ledger, area: string): Subject[] =>
  [...every(ledger, 'drive')].flatMap(({ declared }) =>
    declared?.areas.includes(area)
      ? declared.parts
          .filter((part) => {
            const p = stateOf(ledger, 'part', part);
            return p !== undefined && !p.off && p.removedAt === 0;
          })
          .map((part): Subject => `part:${part}`)
      : [],
  );

function isAt({ at }: TemporaryState, area: string): boolean {
  const hole = at === undefined ? undefined : named('hole', at);
  return at === `area:${area}` || (hole !== undefined && areaOf(hole) === area);
}

/** What is declared to carry or to lock there, and is not in. */
export function missingBefore(ledger: Ledger, area: string): string[] {
  const belts = new Set<Subject | undefined>(beltsOver(ledger, area));
  return [...every(ledger, 'temporary')]
    .filter(
      (t) =>
        !t.in &&
        carriesOrLocks.has(t.sort) &&
        (isAt(t, area) || belts.has(t.at)) &&
        !isWithdrawn(ledger, `temporary:${t.temporary}`),
    )
    .map((t) => t.temporary);
}

/** What is final only after the belt tensions it: slack before the belt comes off, or it comes off under tension. */
export const slackBeforeBelt = (ledger: Ledger, area: string): Hole[] =>
  beltsOver(ledger, area).length === 0
    ? []
    : (stateOf(ledger, 'area', area)?.holes ?? []).filter((hole) => {
        const h = stateOf(ledger, 'hole', hole);
        return h !== undefined && h.declared?.later === 'after-belt' && !isTouched(h);
      });

const holds: ReadonlySet<string> = new Set(['lock', 'bar', 'pin']);
/** What is declared at a bolt, or at its area, to hold it while it is turned, and is not in. */
export function missingToHold(ledger: Ledger, hole: Hole): string[] {
  const at = new Set<Subject | undefined>([`hole:${hole}`, `area:${areaOf(hole)}`]);
  return [...every(ledger, 'temporary')]
    .filter((t) => !t.in && holds.has(t.sort) && at.has(t.at) && !isWithdrawn(ledger, `temporary:${t.temporary}`))
    .map((t) => t.temporary);
}
/** The same before the call that wants it: as long as it is no more than in by hand, or may go back now and has not. */
export function missingToBringUp(ledger: Ledger, hole: Hole): string[] {
  const h = stateOf(ledger, 'hole', hole);
  if (!h || !isTouched(h) || h.called.occupant?.working) return [];
  // Before the engine is turned by hand a lock that is put in would only have to come out again.
  if (isOff(h) && gatedBy(ledger, areaOf(hole)) !== undefined) return [];
  return h.called.occupant?.level === 'tight' ? [] : missingToHold(ledger, hole);
}

/** It bears what nothing else does: a stand while anything is off, a jack or a block while its place is open. */
export function carriesYet(ledger: Ledger, { sort, at }: TemporaryState): boolean {
  if (sort === 'stand') return ledger.tallies.all.off > 0;
  const area = at === undefined ? undefined : named('area', at);
  return (sort === 'jack' || sort === 'block') && area !== undefined && isOpened(ledger, area);
}
/** What it holds is off, or only in by the thread. */
export const isOpened = (ledger: Ledger, area: string): boolean => {
  const { off, slack } = tallyOf(ledger, area);
  return off + slack > 0;
};
