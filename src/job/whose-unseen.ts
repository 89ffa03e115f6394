// Leftovers of no hole the ledger sees open or closed: of holes nobody called off, old ones whose place a new one took, new
// ones left in the parts box.
import { holeNumbers, holesOf, isSpent, isTouched, wantsOf } from './closed.ts';
import { plannedNotCalled } from './counts.ts';
import type { FastenerState, HoleState } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { contradictions, type Spec } from './spec.ts';
import type { AreaState, BoxState } from './states.ts';
import { areaOf, type Hole, holesSaid, inHole, named } from './subjects.ts';
import type { LogTold } from './whose-log.ts';
import { type Belongs, bookedIn, odds, recordOf, struckWords } from './whose-odds.ts';

export function neverCalled(ledger: Ledger, told: LogTold, a: AreaState, phantoms: readonly Spec[]): Belongs[] {
  const holes = holesOf(ledger, a);
  const trays = holes.flatMap((h) => bookedIn(told, h) ?? []);
  const around = { as: 'never called' as const, tray: trays.at(-1), source: `${a.area} never called`, holds: 1 };
  const uncalled = plannedNotCalled(ledger, a);
  // One that was called off and struck goes before all of those together that nobody has come to yet.
  const among = uncalled.some((hole) => told.struckOff.has(hole)) ? uncalled.length : 1;
  const planned = uncalled.map((hole): Belongs => {
    const struck = told.struckOff.get(hole);
    const record = wantsOf(ledger, stateOf(ledger, 'hole', hole) as HoleState) ?? {};
    const because = struck ? struckWords(struck) : 'planned there, and nobody called it off';
    return {
      ...around,
      holds: uncalled.length,
      place: inHole(hole),
      record,
      odds: struck ? odds.struckOff : odds.plannedNotCalled / among,
      because,
      ...(struck && { struck: true as const }),
    };
  });
  if (a.declared?.planned) return planned;
  const struck = [...told.struckOff].flatMap(([hole, { spec, tray, n }]): Belongs[] =>
    areaOf(hole) === a.area && isUncalled(ledger, hole)
      ? [
          {
            ...around,
            place: inHole(hole),
            record: spec,
            tray,
            source: hole,
            odds: odds.struckOff,
            because: struckWords({ n }),
            struck: true,
          },
        ]
      : [],
  );
  const known = holeNumbers(ledger, a).size;
  const count = a.counted?.count ?? known;
  const more = count - known - struck.length;
  const specs = holes.map((h) => recordOf(ledger, h));
  const instead = [...share(odds.ofItsArea, specs), ...share(more > 0 ? odds.ofPhantoms : 0, phantoms)];
  return [
    ...struck,
    ...(known > 0
      ? [
          {
            ...around,
            place: `area:${a.area}`,
            record: {},
            instead,
            odds: more > 0 ? odds.moreHolesThanCalled : phantoms.length > 0 ? odds.calledElsewhere : odds.nobodyCounted,
            because:
              more > 0 ? `${holesSaid(count)} counted there, ${known} called off` : 'a hole there that nobody called',
            holds: Math.max(1, more),
          },
        ]
      : []),
  ];
}
const share = (of: number, specs: readonly Spec[]): (readonly [number, Spec])[] =>
  specs.length === 0 || of === 0 ? [] : specs.map((spec) => [of / specs.length, spec] as const);
const isUncalled = (ledger: Ledger, hole: Hole): boolean =>
  (stateOf(ledger, 'hole', hole)?.called.levels.length ?? 0) === 0;

/** Fasteners whose hole holds another by now. */
export function oldOnes(ledger: Ledger, told: LogTold): Belongs[] {
  return [...every(ledger, 'fastener')].flatMap((f): Belongs[] => {
    const hole = named('hole', f.origin);
    const occupant = hole === undefined ? undefined : stateOf(ledger, 'hole', hole)?.called.occupant;
    if (hole === undefined || f.place.startsWith('hole:') || (!occupant && f.place !== 'scrap')) return [];
    const scrapped = f.place === 'scrap';
    const because = scrapped
      ? 'its old one, called onto the scrap pile'
      : `its old one, ${occupant ? 'a new one is in' : 'out'}`;
    return [
      {
        as: 'old one',
        place: inHole(hole),
        record: f.spec,
        tray: told.trays.get(f.id),
        source: `${areaOf(hole)} old`,
        odds: oldOdds(ledger, f, hole),
        because,
        holds: 1,
      },
    ];
  });
}
const oldOdds = (ledger: Ledger, f: FastenerState, hole: Hole): number =>
  f.place === 'scrap' ? odds.scrapped / (stateOf(ledger, 'area', areaOf(hole))?.holes.length ?? 1) : odds.oldInTray;

export function newOnes(ledger: Ledger): Belongs[] {
  return [...every(ledger, 'box')].flatMap((b): Belongs[] =>
    b.sort === 'fastener'
      ? [
          {
            as: 'new one',
            place: `box:${b.name}`,
            record: b.spec ?? {},
            odds: b.left === 0 ? odds.newMissing : waitsFor(ledger, b) ? odds.newWaiting : odds.newLeft,
            because: b.left > 0 ? `${b.left} of ${b.bought} ${b.name} left over` : `one of ${b.bought} ${b.name}`,
            source: `box ${b.name}`,
            holds: Math.max(1, b.left),
          },
        ]
      : [],
  );
}

/** A hole stands open whose own fastener does not go back, and that wants one like this. */
const waitsFor = (ledger: Ledger, b: BoxState): boolean =>
  [...every(ledger, 'hole')].some((h) => {
    if (!isTouched(h) || h.called.occupant) return false;
    const own = h.called.own === undefined ? undefined : stateOf(ledger, 'fastener', h.called.own);
    const gone = !own || own.place === 'scrap' || own.condemned !== undefined || isSpent(own);
    return gone && contradictions(recordOf(ledger, h), b.spec ?? {}).length === 0;
  });
