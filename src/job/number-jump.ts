// A hole whose number goes far past those called so far, in an area whose holes nobody has counted: perhaps a slipped figure.
import { holeNumbers } from './closed.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { OpenPoint } from './open-point.ts';
import { areaOf, type Hole, named, numberOf } from './subjects.ts';

/** Common practice, no source: what one leaves out for a moment is a few, not many. */
const mostLeftOut = 3;

export function numberJumps(ledger: Ledger, hole: Hole): string[] {
  const a = stateOf(ledger, 'area', areaOf(hole));
  const isKnown = !a || a.declared?.planned || a.declared?.outline !== undefined || a.counted !== undefined;
  if (isKnown || a.holes.includes(hole)) return [];
  const numbers = [...holeNumbers(ledger, a)].map(Number);
  const highest = Math.max(...numbers);
  return numbers.length > 0 && Number(numberOf(hole)) > highest + 1 + mostLeftOut
    ? [
        `${a.area} was called up to ${highest} so far: is ${numberOf(hole)} meant? Else: strike ${ledger.lines.length + 1}`,
      ]
    : [];
}

/** Said beside the count that an area still wants: the numbers nobody called in between, and the call behind them. */
export function gapWords(ledger: Ledger, { code, at }: Pick<OpenPoint, 'code' | 'at'>): string {
  const area = code === 'holes-not-counted' ? named('area', at) : undefined;
  const a = area === undefined ? undefined : stateOf(ledger, 'area', area);
  if (!a) return '';
  const numbers = [...holeNumbers(ledger, a)].map(Number).sort((one, other) => one - other);
  const gaps = numbers.flatMap((number, i) => {
    const below = numbers[i - 1];
    if (below === undefined || number <= below + 1 + mostLeftOut) return [];
    const called = stateOf(ledger, 'hole', `${a.area}/${number}`)?.called.levels[0]?.n;
    const otherwise = called === undefined ? '' : ` Else: strike ${called}`;
    return [`; ${below + 1} to ${number - 1} never called: is ${number} meant?${otherwise}`];
  });
  return gaps.join('');
}
