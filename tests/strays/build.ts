// Putting it back as it was really done, and as it was called.
import { every, stateOf } from '../../src/job/ledger.ts';
import { numberOf } from '../../src/job/subjects.ts';
import type { CarArea } from './car.ts';
import type { Mistake } from './mistakes.ts';
import { boltAt, mistakeAt, type Play, paceOf, pauseMs, slipMs, strikesAndRedoes } from './strip.ts';
import { mustSay, say } from './told.ts';

/** What is put back without a call now and then, with nothing left over: it makes the ledger and the eye differ. */
const fittedUncalled = 0.05;

/** Holes of an area that are off, in order, as the program asks for them. */
function offIn({ told }: Play, area: string): string[] {
  return (stateOf(told.ledger, 'area', area)?.holes ?? [])
    .filter((hole) => {
      const c = stateOf(told.ledger, 'hole', hole)?.called;
      return c !== undefined && c.touchedAt > 0 && !c.occupant;
    })
    .sort((a, b) => Number(numberOf(a)) - Number(numberOf(b)));
}

/** What really stays out, by its number in the car. */
function leftOut(play: Play, at: number, slip: Mistake | undefined): number[] {
  const last = (play.car.areas[at]?.holes.length ?? 0) - 1;
  if (!slip) return [];
  switch (slip.kind) {
    case 'old one kept':
    case 'new one over':
    case 'not of this car':
      return [];
    case 'call too many':
      return [last];
    case 'one call for two':
      // The map asks for all but the last; without one the cover shows which is still in the tray.
      return [play.car.planned ? last : slip.hole];
    case 'back with the wrong area current':
      return Array.from({ length: slip.many }, (_, i) => i);
    default:
      return [slip.hole];
  }
}

/** @returns the fasteners of this area that stay in a tray, by their number in the car */
export function buildArea(play: Play, at: number): number[] {
  const { chance, car, told } = play;
  const area = car.areas[at] as CarArea;
  const slip = mistakeAt(play, at);
  told.facing = { area: area.name, tray: area.tray };
  const out = leftOut(play, at, slip);
  const isOpen = slip && ['left out, hole open', 'wrong size set', 'swapped trays'].includes(slip.kind);
  const closesAll = slip?.kind === 'swapped trays' && slip.hole % 3 === 0;
  const uncalled = new Set<string>();
  if (isOpen && !closesAll) uncalled.add(play.calledAs.get(boltAt(at, slip.hole)) ?? '');
  const own = ownHoles(play, at);
  const due = offIn(play, area.name).filter((hole) => own.has(hole));
  if (!slip && chance.maybe(fittedUncalled)) uncalled.add(due.at(-1) ?? '');
  const fitting = due.filter((hole) => !uncalled.has(hole));
  const doubled = slip?.kind === 'call too many' || closesAll ? chance.whole(1, fitting.length - 1) : -1;
  const pace = paceOf(chance);
  let after = pauseMs(chance);
  const slips = play.mistakes.filter((m) => m.kind === 'back with the wrong area current' && m.beside === at);
  for (const [i, hole] of fitting.entries()) {
    if (i === doubled) after = slipMs(chance);
    const said = { verb: 'fit', hole, ...(area.renewed && { box: boxOf(area) }) };
    mustSay(told, said, after);
    strikesAndRedoes(play, said);
    after = pace();
    if (i === 0) for (const one of slips) fitElsewhere(play, one, after);
  }
  for (let hole = 0; hole < area.holes.length; hole++) {
    if (!out.includes(hole) && slip?.kind !== 'old one kept') play.bolts.delete(boltAt(at, hole));
  }
  say(told, { verb: 'complete-pass', area: area.name }, pauseMs(chance));
  say(told, { verb: 'complete-pass', area: area.name }, pauseMs(chance));
  return slip?.kind === 'old one kept' ? [slip.hole] : out;
}

export const boxOf = ({ name }: CarArea): string => `new ${name}`;

/** Holes as called that are really there: the one that was called here and came off elsewhere is on no cover. */
function ownHoles(play: Play, at: number): Set<string> {
  const many = play.car.areas[at]?.holes.length ?? 0;
  return new Set(Array.from({ length: many }, (_, i) => play.calledAs.get(boltAt(at, i)) ?? ''));
}

/** The calls of this area go to one that still waits, and are then made again here. */
function fitElsewhere(play: Play, { area, many }: Mistake, after: number): void {
  const { told, car } = play;
  const here = told.facing;
  const there = car.areas[area] as CarArea;
  told.facing = { area: there.name, tray: there.tray };
  for (const hole of offIn(play, there.name).slice(0, many)) mustSay(told, { verb: 'fit', hole }, after);
  told.facing = here;
}

/** K1: what the eye counts in each tray. */
export function countTrays(play: Play, extra: readonly string[]): void {
  const { told } = play;
  const trays = [...every(told.ledger, 'tray')].map((t) => t.tray);
  const lying = [...play.bolts.values(), ...extra];
  const counts = [...new Set([...trays, ...lying])].map((tray) => ({
    tray,
    count: lying.filter((one) => one === tray).length,
  }));
  mustSay(told, { verb: 'count-trays', counts }, pauseMs(play.chance));
}
