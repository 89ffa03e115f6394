// A hole whose number goes far past those called so far, in an area whose holes nobody has counted: perhaps a slipped figure.
import { holeNumbers } from './closed.ts';
import { type Ledger, stateOf } from './ledger.ts';
import { areaOf, type Hole, numberOf } from './subjects.ts';

/** Common practice, no source: what one leaves out for a moment is a few, not many. */
const mostLeftOut = 3;

export function numberJumps(ledger: Ledger, hole: Hole): string[] {
  const a = stateOf(ledger, 'area', areaOf(hole));
  const isKnown = !a || a.declared?.planned || a.declared?.outline !== undefined || a.counted !== undefined;
  if (isKnown || a.holes.includes(hole)) return [];
  const numbers = [...holeNumbers(ledger, a)].map(Number);
  const highest = Math.max(...numbers);
  return numbers.length > 0 && Number(numberOf(hole)) > highest + 1 + mostLeftOut
    ? [`${a.area} was called up to ${highest} so far: is ${numberOf(hole)} meant?`]
    : [];
}
