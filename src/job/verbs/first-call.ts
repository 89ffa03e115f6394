// What the first call on a hole writes besides its own entry: the area and the fastener become known.
import type { Entry } from '../entry.ts';
import { holeState, occupantOf, wantsIn } from '../guards.ts';
import { stateOf } from '../ledger.ts';
import type { Spec } from '../spec.ts';
import { areaOf, type Hole } from '../subjects.ts';
import type { Standing } from '../verb.ts';

/** Declares an area that nobody has named before. */
export function areaIfNew(s: Standing, area: string): Entry[] {
  return stateOf(s.ledger, 'area', area)?.declared ? [] : [{ kind: 'area-declared', area }];
}

/**
 * Makes the fastener of a hole known when this is the first call on it.
 * @param k its number among those this line makes known, from 1
 */
export function foundIfNew(
  s: Standing,
  hole: Hole,
  spec: Spec | undefined,
  k: number,
): { entries: Entry[]; fastener: string } {
  const known = occupantOf(s, hole);
  if (known) return { entries: [], fastener: known.fastener };
  const fastener = `f${s.n}.${k}`;
  const entry: Entry = { kind: 'fastener-found', hole, fastener, spec: spec ?? wantsIn(s.ledger, hole) ?? {} };
  return { entries: [...(k === 1 ? areaIfNew(s, areaOf(hole)) : []), entry], fastener };
}

/** Something is in it, or nobody has called it yet. */
export const canComeOff = (s: Standing, hole: Hole): boolean => {
  const c = holeState(s, hole)?.called;
  return !c || c.occupant !== undefined || c.levels.length === 0;
};
