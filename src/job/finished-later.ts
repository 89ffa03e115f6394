// O1: what gets its final later than the rest of its area, and what it still waits for.
import { isTouched, laterOf } from './closed.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { nextPass, passesOf } from './passes.ts';
import { rotationNeeded } from './rotation.ts';
import { areaOf, type Hole, numberOf } from './subjects.ts';

/** T1: with one of them in, the weight is not on the wheels. */
const carries: ReadonlySet<string> = new Set(['stand', 'jack', 'block']);

/** What a final that comes later waits for now, in words; null where it may be done. */
export function laterWaitsFor(ledger: Ledger, hole: Hole): string | null {
  switch (laterOf(ledger, hole)) {
    case 'after-belt': {
      const belts = [...every(ledger, 'drive')].flatMap((d) => d.declared?.parts ?? []);
      const off = belts.filter((part) => stateOf(ledger, 'part', part)?.off);
      return off.length > 0 ? `final after ${off.join(' and ')}` : null;
    }
    case 'after-turning': {
      const d = [...every(ledger, 'drive')].find((one) => rotationNeeded(ledger, one));
      return d ? `final after the check rotation of ${d.drive}` : null;
    }
    case 'on-wheels': {
      const t = [...every(ledger, 'temporary')].find((one) => one.in && carries.has(one.sort));
      return t ? `final with the weight on, and ${t.temporary} is in` : null;
    }
    default:
      return null;
  }
}

/** Holes of an area that have had all but their final, and wait with it, by what they wait for. */
export function waitingFinals(ledger: Ledger, area: string): Map<string, Hole[]> {
  const last = passesOf(ledger, area).at(-1);
  const waiting = (stateOf(ledger, 'area', area)?.holes ?? []).flatMap((hole) => {
    const h = stateOf(ledger, 'hole', hole);
    const o = h?.called.occupant;
    if (!h || !isTouched(h) || !o || o.working || o.level === 'tight' || nextPass(ledger, hole) !== last) return [];
    const why = laterWaitsFor(ledger, hole);
    return why === null ? [] : [{ hole, why }];
  });
  return new Map([...Map.groupBy(waiting, ({ why }) => why)].map(([why, all]) => [why, all.map(({ hole }) => hole)]));
}
/** "4, 5: final with the weight on, and stand is in". */
export const waitingFinalsText = (ledger: Ledger, area: string): string[] =>
  [...waitingFinals(ledger, area)].map(([why, holes]) => `${holes.map(numberOf).join(', ')}: ${why}`);

/** Of holes due in a pass, those that need not wait. */
export function dueNow(ledger: Ledger, due: readonly Hole[], pass: string): Hole[] {
  return due.filter((hole) => passesOf(ledger, areaOf(hole)).at(-1) !== pass || laterWaitsFor(ledger, hole) === null);
}
