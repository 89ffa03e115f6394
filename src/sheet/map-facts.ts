// Where the touched holes of an area sit and how each number stands: what a drawing of it needs. Holes nobody placed are
// laid in a plain grid. It draws nothing.
import { isClosed, isTouched } from '../job/closed.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import { numberOf } from '../job/subjects.ts';
import { gridOf, outlineOf, type Point } from '../trade/layout.ts';

export type MapHole = { number: string; at: Point; state: 'closed' | 'open' | 'as found' };
export type MapFact = { outline: Point[]; holes: MapHole[]; placed: boolean };

export function mapFact(ledger: Ledger, area: string): MapFact {
  const a = stateOf(ledger, 'area', area);
  const levels = Map.groupBy(a?.holes ?? [], numberOf);
  const turn = (number: string) => Number.parseInt(number, 10);
  const numbers = [...levels.keys()].sort((x, y) => turn(x) - turn(y) || (x < y ? -1 : 1));
  const placed = numbers.map((number) => stateOf(ledger, 'hole', `${area}/${number}`)?.declared?.at);
  const grid = gridOf(numbers.length);
  const points = placed.map((at, i): Point => at ?? (grid.holes[i] as Point));
  const isPlaced = placed.some((at) => at !== undefined);
  return {
    outline: [...(isPlaced ? (a?.declared?.outline ?? outlineOf(points)) : grid.outline)],
    holes: numbers.map((number, i) => ({ number, at: points[i] as Point, state: stateAt(ledger, levels.get(number)) })),
    placed: isPlaced,
  };
}

/** Levels under one number stand as the one of them that wants most. */
function stateAt(ledger: Ledger, holes: readonly string[] = []): MapHole['state'] {
  const touched = holes.flatMap((one) => stateOf(ledger, 'hole', one) ?? []).filter(isTouched);
  if (touched.length === 0) return 'as found';
  return touched.every((h) => isClosed(ledger, h)) ? 'closed' : 'open';
}
