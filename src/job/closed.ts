// L3 and READINGS: when a hole, an area, a part or a connection is closed, and if not, why in a few words.
import type { FastenerState, HoleState, Occupant } from './hole-states.ts';
import { snugOrBetter } from './hole-states.ts';
import { type Ledger, stateOf } from './ledger.ts';
import { contradictions, fieldWords, type Spec } from './spec.ts';
import type { AreaState } from './states.ts';
import { areaOf, type Hole, withinArea } from './subjects.ts';

/** L5: the last stated, else the declared, else what was first found in it, as it was corrected wherever it lies by now. */
export const wantsOf = (ledger: Ledger, h: HoleState): Spec | undefined =>
  h.called.stated ?? h.declared?.wants ?? firstFoundIn(ledger, h);
function firstFoundIn(ledger: Ledger, { called }: HoleState): Spec | undefined {
  return called.first && !called.firstIsWrong ? stateOf(ledger, 'fastener', called.first)?.spec : undefined;
}

export const isCritical = (ledger: Ledger, h: HoleState, area: string): boolean =>
  h.declared?.critical === true || stateOf(ledger, 'area', area)?.declared?.critical === true;

export const isSpent = (f: FastenerState): boolean => f.spec.oneUse === true && f.loosened;
export const isTouched = (h: HoleState): boolean => h.called.touchedAt > 0;
/** Off: touched, nothing in it, and not left so by statement. */
export const isOff = (h: HoleState): boolean => isTouched(h) && !h.called.occupant && !h.called.leftEmpty;

/** L11: nobody has taken its fastener out here. */
export const isEmptyOnArrival = (h: HoleState): boolean => h.called.foundEmptyAt > 0 && h.called.own === undefined;
/** L9: it is off, and its own lies nobody knows where. */
export function isOwnLost(ledger: Ledger, h: HoleState): boolean {
  const loss = isOff(h) && h.called.own ? stateOf(ledger, 'fastener', h.called.own)?.loss : undefined;
  return loss !== undefined && !loss.ruledOut;
}

/** U3: what the fastener in a hole is, as it was corrected before or since it went in. */
const specIn = (ledger: Ledger, o: Occupant): Spec => stateOf(ledger, 'fastener', o.fastener)?.spec ?? o.spec;

/** In by hand or pulled up, to stay, and its last pass is still to come. */
const isOnItsWay = (o: Occupant | undefined): boolean =>
  o !== undefined && !o.working && !o.forNow && (o.level === 'on' || o.level === 'snug');

export const workingIn = 'a working fastener is in it';
/** A finding keeps a hole open, and nothing else is to be said of it before. */
export const nothingElse = 'a finding on it is open';

/** Why a touched hole is not closed; null when it is, or when it is as found. */
export function openBecause(ledger: Ledger, h: HoleState): string | null {
  const c = h.called;
  if (!isTouched(h)) return null;
  if (c.pieces.length > 0) return 'a broken piece is in it';
  const o = c.occupant;
  if (c.findings.length > 0) return isOnItsWay(o) ? `in, not tight yet; ${nothingElse}` : nothingElse;
  if (c.temporaries.length > 0) return `${c.temporaries[0]} is in it`;
  if (!o) return c.leftEmpty ? null : c.foundEmptyAt && !c.own ? 'empty on arrival' : 'off';
  if (o.working) return workingIn;
  const f = stateOf(ledger, 'fastener', o.fastener);
  if (f?.condemned) return 'its fastener is condemned';
  if (f?.broken) return 'its fastener is broken';
  if (f && isSpent(f)) return 'its fastener is spent';
  if (o.level !== 'tight') return o.level === 'as-found' ? 'touched and not called tight' : o.level;
  if (o.forNow) return 'on for now';
  const wants = wantsOf(ledger, h);
  const differs = wants && !o.substitute && !o.newPattern ? contradictions(wants, specIn(ledger, o)) : [];
  return differs.length > 0 ? `wants another ${fieldWords(differs)}` : null;
}

/** L3: a hole as found needs nothing. */
export const isClosed = (ledger: Ledger, h: HoleState): boolean => openBecause(ledger, h) === null;

/** O1, T1: when its final is due, where that is later; wheel nuts get theirs on the ground whatever was declared. */
export function laterOf(ledger: Ledger, hole: Hole): 'after-belt' | 'after-turning' | 'on-wheels' | undefined {
  const wheel = stateOf(ledger, 'area', areaOf(hole))?.declared?.role === 'wheel';
  return stateOf(ledger, 'hole', hole)?.declared?.later ?? (wheel ? 'on-wheels' : undefined);
}

/** O1: closed, or with a `later` snug, or as found. */
export function isClosedForOrder(ledger: Ledger, h: HoleState): boolean {
  const o = h.called.occupant;
  if (laterOf(ledger, h.hole) && o && snugOrBetter(o.level) && !o.forNow && !o.working) return true;
  return isClosed(ledger, h);
}

export const holesOf = (ledger: Ledger, a: AreaState): HoleState[] =>
  a.holes.flatMap((h) => stateOf(ledger, 'hole', h) ?? []);

/** Parts held there, as they were last declared. */
export const partsOf = (ledger: Ledger, a: AreaState): string[] =>
  a.parts.filter((p) => stateOf(ledger, 'part', p)?.declared?.heldBy.some((hole) => areaOf(hole) === a.area));

/** Parts that this hole holds and that are off. */
export const partsOffHeldBy = (ledger: Ledger, hole: Hole): string[] =>
  (stateOf(ledger, 'area', areaOf(hole))?.parts ?? []).filter((name) => {
    const p = stateOf(ledger, 'part', name);
    return p?.off && p.declared?.heldBy.includes(hole);
  });

/** Line at which the area was last opened: a hole of it slackened or off, or a part held there removed. 0 = never. */
export function areaOpenedAt(ledger: Ledger, area: string): number {
  const a = stateOf(ledger, 'area', area);
  if (!a) return 0;
  let at = 0;
  for (const h of a.holes) at = Math.max(at, stateOf(ledger, 'hole', h)?.called.openedAt ?? 0);
  for (const p of partsOf(ledger, a)) at = Math.max(at, stateOf(ledger, 'part', p)?.removedAt ?? 0);
  return at;
}

/** F6: open while a hole of it is off or a part held there is off. */
export function areaStandsOpen(ledger: Ledger, a: AreaState): boolean {
  return holesOf(ledger, a).some(isOff) || partsOf(ledger, a).some((p) => stateOf(ledger, 'part', p)?.off === true);
}

/** O6: what an opened area still wants to hear before it is closed. */
export function unsaidOf(ledger: Ledger, a: AreaState): ('companions' | 'blind-holes' | 'direction')[] {
  const d = a.declared;
  if (!d?.companions?.length && !d?.blindHoles && !d?.marked) return [];
  const opened = areaOpenedAt(ledger, a.area);
  if (!opened) return [];
  return [
    ...(d.companions?.length && a.seenAt < opened ? (['companions'] as const) : []),
    ...(d.blindHoles && a.dryAt < opened ? (['blind-holes'] as const) : []),
    ...(d.marked && a.directionAt < opened ? (['direction'] as const) : []),
  ];
}

/** Hole numbers of an area that were called, without their levels (K4): what is declared is called by nobody yet. */
export const holeNumbers = (ledger: Ledger, a: AreaState): Set<string> =>
  new Set(
    holesOf(ledger, a)
      .filter((h) => h.called.levels.length > 0)
      .map((h) => withinArea(h.hole).split(' ')[0] as string),
  );

export const isShouldered = (ledger: Ledger, hole: Hole): boolean => {
  const h = stateOf(ledger, 'hole', hole);
  const o = h?.called.occupant;
  return (o && specIn(ledger, o).shouldered === true) || (h !== undefined && wantsOf(ledger, h)?.shouldered === true);
};
