// A hole whose number goes far past those called so far, in an area whose holes nobody has counted: perhaps a slipped figure.
import { holeNumbers } from './closed.ts';
import { type Ledger, stateOf } from './ledger.ts';
import type { OpenPoint } from './open-point.ts';
import type { AreaState } from './states.ts';
import { areaOf, type Hole, named, numberOf } from './subjects.ts';

/** Common practice, no source: what one leaves out for a moment is a few, not many. */
const mostLeftOut = 3;

/** @param holes of one area; those named together may go on one from the other */
export function numberJumps(ledger: Ledger, holes: readonly Hole[]): string[] {
  const area = holes[0] && areaOf(holes[0]);
  const a = area === undefined ? undefined : stateOf(ledger, 'area', area);
  if (!a || areNumbersKnown(a)) return [];
  let highest = Math.max(...[...holeNumbers(ledger, a)].map(Number));
  if (!Number.isFinite(highest)) return [];
  const called = highest;
  const fresh = holes.filter((hole) => areaOf(hole) === a.area && !a.holes.includes(hole));
  for (const number of fresh.map((hole) => Number(numberOf(hole))).sort((one, other) => one - other)) {
    if (number > highest + 1 + mostLeftOut)
      return [
        `${a.area} was called up to ${called} so far: is ${number} meant? Else: strike ${ledger.lines.length + 1}`,
      ];
    highest = Math.max(highest, number);
  }
  return [];
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
