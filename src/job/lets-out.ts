// T5, T6: what of a circuit lets its fluid out, and what of the mounts and drives of an engine is not together: nothing is
// filled into the one, and the other is not started. Snug is together: a final may wait for the turning or the wheels.
import { holesOf, isTouched } from './closed.ts';
import { type HoleState, snugOrBetter } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { roleOf } from './roles.ts';
import type { Subject } from './subjects.ts';

const isApart = (h: HoleState): boolean =>
  isTouched(h) && !h.called.leftEmpty && !(h.called.occupant && snugOrBetter(h.called.occupant.level));

/** A connection of it parted, the part of a face that keeps it in off, or a hole that presses such a face not snug. */
export function letsOut(ledger: Ledger, circuit: string): Subject[] {
  const parted = [...every(ledger, 'connection')].filter((c) => c.parted && c.declared?.circuit === circuit);
  const faces = [...every(ledger, 'face')].filter((f) => f.declared?.keepsIn.includes(circuit));
  const off = faces.flatMap((f) =>
    stateOf(ledger, 'part', f.declared?.part ?? '')?.off ? (f.declared?.part ?? []) : [],
  );
  const holes = faces
    .flatMap((f) => f.declared?.pressedBy ?? [])
    .flatMap((hole) => stateOf(ledger, 'hole', hole) ?? []);
  return [
    ...parted.map((c): Subject => `connection:${c.connection}`),
    ...[...new Set(off)].map((part): Subject => `part:${part}`),
    ...holes.filter(isApart).map((h): Subject => `hole:${h.hole}`),
  ];
}

const turnsOrCarries: ReadonlySet<string> = new Set(['mount', 'drive']);
/** Holes and parts of its mounts and its drives. */
export function engineApart(ledger: Ledger): Subject[] {
  const areas = [...every(ledger, 'area')].filter(({ area }) => turnsOrCarries.has(roleOf(ledger, area) ?? ''));
  return areas.flatMap((a): Subject[] => [
    ...holesOf(ledger, a)
      .filter(isApart)
      .map((h): Subject => `hole:${h.hole}`),
    ...a.parts.filter((part) => stateOf(ledger, 'part', part)?.off).map((part): Subject => `part:${part}`),
  ]);
}
