// What the first call on a hole writes besides its own entry: the area and the fastener become known.
import type { Entry } from '../entry.ts';
import { fastenerState, holeState, occupantOf, wantsIn } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import { cannotBeToldApart, type Spec, seenAs } from '../spec.ts';
import { areaOf, type Hole, named } from '../subjects.ts';
import type { Standing } from '../verb.ts';

/** Declares an area that nobody has named before. */
export function areaIfNew(s: Standing, area: string): Entry[] {
  return stateOf(s.ledger, 'area', area)?.declared ? [] : [{ kind: 'area-declared', area }];
}

/**
 * Makes the fastener of a hole known when this is the first call on it. One that is known already and is said to be
 * another, as a nut that was slackened unseen, is corrected (U3): what was said last was seen best.
 * @param k its number among those this line makes known, from 1
 */
export function foundIfNew(
  s: Standing,
  hole: Hole,
  spec: Spec | undefined,
  k: number,
): { entries: Entry[]; fastener: string } {
  const known = occupantOf(s, hole);
  if (known) return { entries: spec ? seenOtherwise(s, known.fastener, spec) : [], fastener: known.fastener };
  const fastener = `f${s.n}.${k}`;
  const entry: Entry = { kind: 'fastener-found', hole, fastener, spec: spec ?? wantsIn(s.ledger, hole) ?? {} };
  return { entries: [...(k === 1 ? areaIfNew(s, areaOf(hole)) : []), entry], fastener };
}

function seenOtherwise(s: Standing, fastener: string, seen: Spec): Entry[] {
  const before = fastenerState(s, fastener)?.spec ?? {};
  const spec = seenAs(before, seen);
  const isTheSame = cannotBeToldApart(before, spec) && before.shouldered === spec.shouldered;
  return isTheSame ? [] : [corrected(s, fastener, spec, 'seen so at this call')];
}
/** U3: the fastener is another than it was called, and what its first hole wants with it. */
export function corrected(s: Standing, fastener: string, spec: Spec, because: string): Entry {
  const f = fastenerState(s, fastener);
  const hole = f && named('hole', f.origin);
  const cameFrom = hole && holeState(s, hole)?.called.first === fastener ? { cameFrom: hole } : {};
  return { kind: 'spec-corrected', at: f?.place as string, fastener, spec, because, ...cameFrom };
}

/** Something is in it, or nobody has called it yet. */
export const canComeOff = (s: Standing, hole: Hole): boolean => {
  const c = holeState(s, hole)?.called;
  return !c || c.occupant !== undefined || c.levels.length === 0;
};
