// Counts by eye: whether a tray's count stands (K1, K2), whether an area's holes were counted (K4), tools out.

import { holeNumbers, holesOf, isTouched } from './closed.ts';
import type { EntryKind } from './entry.ts';
import type { StrayState } from './hole-states.ts';
import { every, isStruck, type Ledger, lineAt, stateOf } from './ledger.ts';
import { oncePerArea } from './once-per-ledger.ts';
import type { AreaState, PileState, TrayState } from './states.ts';
import { type Hole, holesSaid, inTray } from './subjects.ts';

/** A count stands until something moves in or out, and only when it agrees with what the ledger has there. */
export const countStands = (t: TrayState): boolean =>
  t.counted !== undefined && t.counted.n > t.movedAt && t.counted.count === t.contents.length;

/** K2: counted since the last move, and not what the ledger has. */
export const countDiffers = (t: TrayState): boolean =>
  t.counted !== undefined && t.counted.n > t.movedAt && t.counted.count !== t.contents.length;

/** K2: it was counted again and still differs. */
export const differsAgain = (t: TrayState): boolean => countDiffers(t) && (t.counted?.times ?? 0) > 1;

/** Strays called in another tray: one of them may be what a tray holds over the ledger. */
export const straysElsewhere = (ledger: Ledger, { tray }: TrayState): StrayState[] =>
  [...every(ledger, 'stray')].filter((s) => !s.settled && s.place !== inTray(tray));

export const pileOf = (ledger: Ledger): PileState => stateOf(ledger, 'pile', '') ?? { contents: [], bought: {} };

/** All that lies on the scrap pile by the ledger: fasteners, pieces, strays, and new fasteners straight from the box. */
export const lyingOnPile = (ledger: Ledger): number => {
  const { contents, bought } = pileOf(ledger);
  return contents.length + fastenersOf(ledger, bought);
};
const fastenersOf = (ledger: Ledger, bought: PileState['bought']): number =>
  Object.entries(bought).reduce(
    (sum, [name, quantity]) => sum + (stateOf(ledger, 'box', name)?.sort === 'fastener' ? quantity : 0),
    0,
  );

/** K2: by how much the last count of the scrap pile was over what the ledger had there; below nothing is short. */
export function pileDiffersBy(ledger: Ledger): number {
  const { counted } = pileOf(ledger);
  return counted ? counted.count - counted.contents - fastenersOf(ledger, counted.bought) : 0;
}

export const uncounted = (ledger: Ledger): TrayState[] =>
  [...every(ledger, 'tray')].filter((t) => t.everUsed && !countStands(t));

/** K4: why the holes of an unplanned area still want counting; null when they do not. */
export const holesUncounted = oncePerArea((ledger, a): string | null => {
  if (a.declared?.planned) return null;
  if (!a.counted) return holesOf(ledger, a).some(isTouched) ? 'its holes were not counted by eye' : null;
  const known = holeNumbers(ledger, a).size;
  return a.counted.count === known ? null : `${holesSaid(a.counted.count)} counted by eye, ${known} called`;
});

/** K4 where a plan knows the number: holes nobody called of an area one of whose fasteners came off. */
export function plannedNotCalled(ledger: Ledger, a: AreaState): Hole[] {
  if (!a.declared?.planned) return [];
  const holes = holesOf(ledger, a);
  // The first thing known of a hole may be that it is empty: then nothing came off.
  const cameOff = holes.some(({ called }) => called.levels.some((r, i) => i > 0 && r.level === 'off'));
  return cameOff ? holes.filter((h) => h.declared && h.called.levels.length === 0).map((h) => h.hole) : [];
}

const work: ReadonlySet<EntryKind> = new Set<EntryKind>([
  'fastener-slackened',
  'fastener-removed',
  'fastener-fitted',
  'fastener-tightened',
  'fastener-made-final',
  'fastener-broken',
  'thread-chased',
  'repair-step',
  'part-removed',
  'part-fitted',
  'part-replaced',
  'part-made-final',
  'connection-parted',
  'connection-made',
  'temporary-put-in',
  'temporary-taken-out',
  'all-masked',
  'all-unmasked',
  'fluid-drained',
  'fluid-filled',
]);

/** K1: "tools out" was called after the last work on the car, or no work was called at all. */
export function toolsStandOut(ledger: Ledger): boolean {
  for (let n = ledger.lines.length; n > 0; n--) {
    if (isStruck(ledger, n)) continue;
    const kinds = lineAt(ledger, n)?.entries.map((e) => e.kind) ?? [];
    if (kinds.includes('tools-out')) return true;
    if (kinds.some((k) => work.has(k))) return false;
  }
  return true;
}
