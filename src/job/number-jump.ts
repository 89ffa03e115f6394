// A hole whose number goes far past those called so far, in an area whose holes nobody has counted: perhaps a slipped figure.
import { holeNumbers } from './closed.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { OpenPoint } from './open-point.ts';
import type { AreaState } from './states.ts';
import { areaOf, type Hole, named, numberOf } from './subjects.ts';

/** Common practice, no source: what one leaves out for a moment is a few, not many. */
const mostLeftOut = 3;

export function numberJumps(ledger: Ledger, hole: Hole): string[] {
  const a = stateOf(ledger, 'area', areaOf(hole));
  if (!a || areNumbersKnown(a) || a.holes.includes(hole)) return [];
  const numbers = [...holeNumbers(ledger, a)].map(Number);
  const highest = Math.max(...numbers);
  return numbers.length > 0 && Number(numberOf(hole)) > highest + 1 + mostLeftOut
    ? [
        `${a.area} was called up to ${highest} so far: is ${numberOf(hole)} meant? Else: strike ${ledger.lines.length + 1}`,
      ]
    : [];
}

const areNumbersKnown = ({ declared, counted }: AreaState): boolean =>
  declared?.planned === true || declared?.outline !== undefined || counted !== undefined;

/** The numbers nobody called before one that was, and the call behind it. */
function gapsIn(ledger: Ledger, a: AreaState): { number: number; words: string }[] {
  const numbers = [...holeNumbers(ledger, a)].map(Number).sort((one, other) => one - other);
  return numbers.flatMap((number, i) => {
    const below = numbers[i - 1];
    if (below === undefined || number <= below + 1 + mostLeftOut) return [];
    const called = stateOf(ledger, 'hole', `${a.area}/${number}`)?.called.levels[0]?.n;
    const otherwise = called === undefined ? '' : ` Else: strike ${called}`;
    return [{ number, words: `${below + 1} to ${number - 1} never called: is ${number} meant?${otherwise}` }];
  });
}

/** Said beside the count that an area still wants. */
export function gapWords(ledger: Ledger, { code, at }: Pick<OpenPoint, 'code' | 'at'>): string {
  const area = code === 'holes-not-counted' ? named('area', at) : undefined;
  const a = area === undefined ? undefined : stateOf(ledger, 'area', area);
  return a
    ? gapsIn(ledger, a)
        .map(({ words }) => `; ${words}`)
        .join('')
    : '';
}

/** Of a hole that may be none: its number stands behind a gap, and nobody has counted. */
export function doubtOfNumber(ledger: Ledger, hole: Hole): string | undefined {
  const a = stateOf(ledger, 'area', areaOf(hole));
  return !a || areNumbersKnown(a)
    ? undefined
    : gapsIn(ledger, a).find(({ number }) => number === Number(numberOf(hole)))?.words;
}
