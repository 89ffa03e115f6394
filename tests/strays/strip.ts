// Taking the car apart as it was really done, and as it was called. What comes off lies in a tray whatever was called.
import { stateOf } from '../../src/job/ledger.ts';
import type { Said } from '../../src/job/said.ts';
import { holeIn } from '../../src/job/subjects.ts';
import type { Chance } from '../agreement/chance.ts';
import type { Car, CarArea } from './car.ts';
import type { Mistake } from './mistakes.ts';
import { mustSay, say, type Told } from './told.ts';

/** A job being played: what is really so lies in `bolts`, what was called in `told`. */
export type Play = {
  chance: Chance;
  car: Car;
  told: Told;
  mistakes: readonly Mistake[];
  /** "area index/hole index" → the tray its fastener really lies in; not there when it is in its hole or thrown away. */
  bolts: Map<string, string>;
  /** "area index/hole index" → the hole it was called as. */
  calledAs: Map<string, string>;
};
export const boltAt = (area: number, hole: number): string => `${area}/${hole}`;

const secondMs = 1000;
/** Some areas go quickly, most do not. */
export const paceOf = (chance: Chance): (() => number) => {
  const [least, most] = chance.maybe(0.15) ? [1, 3] : chance.maybe(0.5) ? [4, 15] : [8, 45];
  return () => secondMs * (least + chance.roll() * (most - least));
};
export const slipMs = (chance: Chance): number => 250 + chance.roll() * 900;
export const pauseMs = (chance: Chance): number => secondMs * chance.whole(40, 400);

export const mistakeAt = ({ mistakes }: Play, area: number): Mistake | undefined =>
  mistakes.find((one) => one.area === area);
const slipsBeside = ({ mistakes }: Play, beside: number): Mistake[] =>
  mistakes.filter((one) => one.kind === 'off with the wrong area current' && one.beside === beside);

export function stripArea(play: Play, at: number): void {
  const { chance, car, told } = play;
  const area = car.areas[at] as CarArea;
  const slip = mistakeAt(play, at);
  told.facing = { area: area.name, tray: area.tray };
  const really = slip?.kind === 'swapped trays' ? otherTray(chance, car, area.tray) : area.tray;
  const pace = paceOf(chance);
  let number = 1;
  let after = pauseMs(chance);
  const hosted = slipsBeside(play, at).map((one) => ({ one, before: chance.whole(1, area.holes.length) }));
  let hole = 0;
  const next = (said: object, key: string) => {
    const name = holeIn(area.name, String(number));
    if (car.planned && number > area.holes.length) return;
    mustSay(told, { verb: 'remove', hole: name, to: `tray:${area.tray}`, ...said }, after);
    play.calledAs.set(key, name);
    secondThought(play, { verb: 'remove', hole: name, to: `tray:${area.tray}`, ...said });
    number += 1;
    after = pace();
  };
  for (; hole < area.holes.length; hole++) {
    play.bolts.set(boltAt(at, hole), really);
    if (isSkipped(slip, hole)) {
      if (slip?.kind === 'one call for two') after = slipMs(chance);
      // With a plan the map shows the number that was really taken; one key for two only goes on to the next.
      else if (car.planned) number += 1;
    } else {
      next(specSaid(play, at, hole, slip), boltAt(at, hole));
    }
    for (const { one } of hosted.filter(({ before }) => before === hole + 1)) {
      play.bolts.set(boltAt(one.area, one.hole), area.tray);
      next(chance.maybe(0.6) ? specOf(play, one.area, one.hole) : specOf(play, at, hole), 'slip');
    }
  }
  if (slip?.kind === 'strike too many') strikeTooMany(play, at, slip.hole);
  if (!car.planned) {
    const known = new Set(stateOf(told.ledger, 'area', area.name)?.holes ?? []).size;
    mustSay(
      told,
      { verb: 'count-holes', area: area.name, count: chance.maybe(0.9) ? area.holes.length : known },
      after,
    );
  }
  if (area.renewed) scrapOld(play, at, slip);
}

const isSkipped = (slip: Mistake | undefined, hole: number): boolean =>
  slip?.hole === hole && ['one call for two', 'never called', 'off with the wrong area current'].includes(slip.kind);

const otherTray = (chance: Chance, car: Car, tray: string): string =>
  chance.any(car.trays.filter((one) => one !== tray)) ?? tray;

/** With a plan the hole's own spec is taken; else the one that is set. */
const specOf = ({ car }: Play, area: number, hole: number): object =>
  car.planned ? {} : { spec: car.areas[area]?.called[hole] };

function specSaid(play: Play, at: number, hole: number, slip: Mistake | undefined): object {
  const isLeft = slip?.kind === 'wrong size set' && Math.abs(hole - slip.hole) <= 1;
  return isLeft ? specOf(play, at - 1, 0) : specOf(play, at, hole);
}

/** Now and then a right call is struck and made again. */
function secondThought({ chance, told }: Play, said: Said): void {
  if (!chance.maybe(0.015)) return;
  const n = told.ledger.lines.length;
  if (say(told, { verb: 'strike', lines: [n] }, slipMs(chance) * 4)) mustSay(told, said, 4000);
}
export const strikesAndRedoes = secondThought;

function strikeTooMany(play: Play, at: number, hole: number): void {
  const name = play.calledAs.get(boltAt(at, hole));
  const lines = play.told.ledger.lines.all;
  const n = lines.findLast((line) => line.entries.some((e) => e.kind === 'fastener-removed' && e.hole === name))?.n;
  if (n !== undefined) mustSay(play.told, { verb: 'strike', lines: [n] }, pauseMs(play.chance));
}

/** The old ones go to the scrap pile, but for one that is only called so. */
function scrapOld(play: Play, at: number, slip: Mistake | undefined): void {
  const { told, car } = play;
  const area = car.areas[at] as CarArea;
  for (let hole = 0; hole < area.holes.length; hole++) {
    const name = play.calledAs.get(boltAt(at, hole));
    const own = name === undefined ? undefined : stateOf(told.ledger, 'hole', name)?.called.own;
    if (own !== undefined) mustSay(told, { verb: 'move-fastener', fastener: own, to: 'scrap' }, 3000);
    const isKept = slip?.kind === 'old one kept' && slip.hole === hole;
    if (!isKept) play.bolts.delete(boltAt(at, hole));
  }
}
