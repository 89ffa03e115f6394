// What goes wrong on a played job, and where: each leaves one fastener or a few over at the end. At most one of them an
// area, so that what is true stays known. How often each happens is a guess: no source.
import type { Chance } from '../agreement/chance.ts';
import { type Weighted, weighted } from '../agreement/chance.ts';
import type { Car } from './car.ts';

export const mistakeKinds = [
  'left out, hole open',
  'call too many',
  'one call for two',
  'never called',
  'off with the wrong area current',
  'back with the wrong area current',
  'wrong size set',
  'swapped trays',
  'strike too many',
  'old one kept',
  'new one over',
  'not of this car',
] as const;
export type MistakeKind = (typeof mistakeKinds)[number];

/** `hole` counts from 0 and is what is in the car; `beside` is the other area that was current. */
export type Mistake = { kind: MistakeKind; area: number; hole: number; beside: number; many: number };

const often: Weighted<MistakeKind> = [
  [2, 'left out, hole open'],
  [3, 'call too many'],
  [2, 'one call for two'],
  [2, 'never called'],
  [2, 'off with the wrong area current'],
  [2, 'back with the wrong area current'],
  [2, 'wrong size set'],
  [2, 'swapped trays'],
  [2, 'strike too many'],
  [1, 'old one kept'],
  [1, 'new one over'],
  [1, 'not of this car'],
];

const mostOfAJob = 10;

/** @param built the areas that are built when the leftovers are looked at, by number */
export function mistakesOn(chance: Chance, car: Car, built: readonly number[]): Mistake[] {
  const most = Math.min(mostOfAJob, 1 + Math.floor(car.fasteners / 50));
  const wanted = chance.whole(1, Math.max(1, most));
  const free = new Set(built);
  const hosts = new Set<number>();
  const made: Mistake[] = [];
  for (let tries = 0; made.length < wanted && tries < 60; tries++) {
    const one = mistakeFor(chance, car, built, weighted(chance, often));
    if (!one) continue;
    const clashes = hosts.has(one.area) || (one.beside !== one.area && !free.has(one.beside));
    if (!free.has(one.area) || clashes) continue;
    free.delete(one.area);
    if (one.beside !== one.area) hosts.add(one.beside).add(one.area);
    made.push(one);
  }
  return made;
}

function mistakeFor(chance: Chance, car: Car, built: readonly number[], kind: MistakeKind): Mistake | undefined {
  const wantsRenewed = kind === 'old one kept' || kind === 'new one over';
  const area = chance.any(built.filter((a) => car.areas[a]?.renewed === wantsRenewed));
  if (area === undefined) return undefined;
  const count = car.areas[area]?.holes.length ?? 0;
  const hole = chance.whole(0, count - 1);
  const many = kind === 'back with the wrong area current' ? chance.whole(1, Math.min(3, count)) : 1;
  const one = { kind, area, hole, beside: area, many };
  switch (kind) {
    case 'call too many':
    case 'never called':
    case 'strike too many':
      return count > 1 ? one : undefined;
    case 'one call for two':
      return hole > 0 ? one : undefined;
    case 'wrong size set':
      return car.planned || area === 0 || car.areas[area - 1]?.renewed ? undefined : one;
    case 'off with the wrong area current':
    case 'back with the wrong area current': {
      // Off: another area is being stripped, before or after its own. Back: another one is being built, its own still waits.
      const others = built.filter((b) => !car.areas[b]?.renewed && (kind.startsWith('off') ? b !== area : b > area));
      const beside = chance.any(others);
      return beside === undefined || count < 2 ? undefined : { ...one, beside };
    }
    default:
      return one;
  }
}
