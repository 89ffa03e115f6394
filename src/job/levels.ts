// What comes off together shares a number and has levels (7, 7 washer, 7 nut), each a hole of its own. Which of them one
// call on a number speaks of.
import { type Ledger, stateOf } from './ledger.ts';
import { areaOf, type Hole, holeIn, numberOf, withinArea } from './subjects.ts';

/** The levels of an area under their numbers, as long as its list of holes is the same. */
const known = new WeakMap<readonly Hole[], ReadonlyMap<Hole, Hole[]>>();
function levelsIn(holes: readonly Hole[]): ReadonlyMap<Hole, Hole[]> {
  const there = known.get(holes);
  if (there) return there;
  const levels = Map.groupBy(
    holes.filter((hole) => withinArea(hole).includes(' ')),
    (level) => level.slice(0, level.indexOf(' ', level.indexOf('/'))),
  );
  known.set(holes, levels);
  return levels;
}

/** All levels known under a hole's number, the one called first; a level called by name stands for itself. */
export function levelsOf(ledger: Ledger, hole: Hole): Hole[] {
  if (withinArea(hole).includes(' ')) return [hole];
  const area = stateOf(ledger, 'area', areaOf(hole));
  return [hole, ...((area && levelsIn(area.holes).get(hole)) ?? [])];
}

const calledOf = (ledger: Ledger, hole: Hole) => stateOf(ledger, 'hole', hole)?.called;

/** Levels with a fastener in them. */
const occupiedLevels = (ledger: Ledger, hole: Hole): Hole[] =>
  levelsOf(ledger, hole).filter((level) => calledOf(ledger, level)?.occupant);

/** Levels whose fastener came off or was missing. */
export const emptiedLevels = (ledger: Ledger, hole: Hole): Hole[] =>
  levelsOf(ledger, hole).filter((level) => {
    const c = calledOf(ledger, level);
    return c !== undefined && c.touchedAt > 0 && !c.occupant;
  });

/** The level a fastener goes into: the hole called, or what came off it where the hole itself is taken (nut on a stud). */
export function levelToFill(ledger: Ledger, hole: Hole): Hole {
  return calledOf(ledger, hole)?.occupant ? (emptiedLevels(ledger, hole)[0] ?? hole) : hole;
}

const numberUnder = (ledger: Ledger, hole: Hole): Hole[] => levelsOf(ledger, holeIn(areaOf(hole), numberOf(hole)));
/** What sits or sat there, as it is called or as it is named. */
const isOfKind = (ledger: Ledger, hole: Hole, kind: 'stud' | 'nut'): boolean => {
  const c = calledOf(ledger, hole);
  const fastener = stateOf(ledger, 'fastener', c?.occupant?.fastener ?? c?.own ?? '');
  return fastener?.spec.kind === undefined ? withinArea(hole).endsWith(` ${kind}`) : fastener.spec.kind === kind;
};
/** The stud under what goes onto a number, while it is out: nothing holds there. */
export const studOutUnder = (ledger: Ledger, hole: Hole): Hole | undefined =>
  isOfKind(ledger, hole, 'stud')
    ? undefined
    : numberUnder(ledger, hole).find((level) => {
        const c = calledOf(ledger, level);
        const isOut = c !== undefined && c.touchedAt > 0 && !c.occupant && !c.leftEmpty;
        return isOut && level !== hole && isOfKind(ledger, level, 'stud');
      });
/** The nut that is called in while the stud under it is out. */
export const nutOverStud = (ledger: Ledger, hole: Hole): Hole | undefined =>
  isOfKind(ledger, hole, 'stud')
    ? numberUnder(ledger, hole).find((level) => calledOf(ledger, level)?.occupant && isOfKind(ledger, level, 'nut'))
    : undefined;

/** The levels one tightening speaks of: what was put on or slackened; a stud nobody moved stays as found. */
export function levelsToTighten(ledger: Ledger, hole: Hole): Hole[] {
  const held = occupiedLevels(ledger, hole);
  const due = held.filter((level) => {
    const c = calledOf(ledger, level);
    return c !== undefined && c.touchedAt > 0 && c.occupant?.level !== 'tight';
  });
  if (due.length > 0) return due;
  return held.includes(hole) ? [hole] : held;
}
