// Tightening order and passes. The literal lists of the standard were only remembered and are no checks here: what is
// true of all of them is.
import { looseningOrder, ringOrder, tighteningOrder } from '../../src/trade/tightening-order.ts';
import { tighteningPasses } from '../../src/trade/tightening-passes.ts';
import { from } from './published.ts';
import { sure } from './trade.ts';

const topic = 'tightening';
const pcc1 = from(topic, 'ASME PCC-1, cross-pattern tightening', 'derived');
const bolting = from(
  topic,
  'a gasket seller’s bolting instructions: 12 and 6 o’clock, 3 and 9, then halve the angle',
  'seen',
);
const practice = from(topic, 'common practice, no source', 'practice');

const ring = (count: number) => sure(ringOrder(count));
const opposite = (count: number) =>
  ring(count).every((hole, at, all) => at % 2 === 0 || hole - (all[at - 1] as number) === count / 2);
const quarter = (count: number) => (ring(count)[2] as number) - (ring(count)[0] as number) === count / 4;
const noNeighbours = (count: number) =>
  ring(count).every((hole, at, all) => at === 0 || ![1, count - 1].includes(Math.abs(hole - (all[at - 1] as number))));
const permutation = (count: number) =>
  ring(count)
    .toSorted((a, b) => a - b)
    .every((hole, at) => hole === at + 1);
const rings = [4, 8, 12, 16, 20, 24];

const at = (points: readonly (readonly [number, number])[]) =>
  points.map((point, index) => ({ hole: String(index + 1), at: point }));
/** Two rows of five, as a cam cover's bolts sit, numbered row by row. */
const columns = [0, 80, 160, 240, 320];
const cover = at([0, 60].flatMap((y) => columns.map((x): [number, number] => [x, y])));
const clockFaces = at(
  [0, 45, 90, 135, 180, 225, 270, 315].map(
    (degrees) => [Math.sin((degrees * Math.PI) / 180), -Math.cos((degrees * Math.PI) / 180)] as const,
  ),
);

export const tightening = [
  ...pcc1(
    ringOrder,
    'every hole once',
    'exact',
    rings.map((count) => [`ring of ${count}`, permutation(count), true]),
  ),
  ...pcc1(
    ringOrder,
    'each second step goes straight across',
    'exact',
    rings.map((count) => [`ring of ${count}`, opposite(count), true]),
  ),
  ...pcc1(
    ringOrder,
    'the second pair a quarter turn away',
    'exact',
    rings.map((count) => [`ring of ${count}`, quarter(count), true]),
  ),
  ...pcc1(
    ringOrder,
    'no step to a neighbour, from eight holes on',
    'exact',
    rings.slice(1).map((count) => [`ring of ${count}`, noNeighbours(count), true]),
  ),
  ...bolting(tighteningOrder, 'bolt pattern, eight bolts numbered clockwise from 12 o’clock', 'exact', [
    ['first six', sure(tighteningOrder(clockFaces)).holes.slice(0, 6), ['1', '5', '3', '7', '2', '6']],
  ]),
  ...from(topic, 'a gasket seller’s bolting instructions: 30, 60, 100 %, then once round', 'seen')(
    tighteningPasses,
    'tightening sequence, of 80 N·m',
    'exact',
    [
      [
        'passes',
        sure(tighteningPasses({ newtonMetres: 80, underPressure: true })).map(({ name }) => name),
        ['snug', '30 %', '60 %', '100 %', 'once round'],
      ],
      [
        'torques, N·m',
        sure(tighteningPasses({ newtonMetres: 80, underPressure: true })).flatMap(
          ({ newtonMetres }) => newtonMetres ?? [],
        ),
        [24, 48, 80, 80],
      ],
    ],
  ),
  ...practice(tighteningOrder, 'covers from the middle outwards, sides in turn', 'exact', [
    ['two rows of five: the middle pair first', sure(tighteningOrder(cover)).holes.slice(0, 2), ['3', '8']],
    [
      'two rows of five: the corners last',
      sure(tighteningOrder(cover)).holes.slice(6).toSorted(),
      ['1', '10', '5', '6'],
    ],
  ]),
  ...practice(looseningOrder, 'the other way round', 'exact', [
    ['1 3 2 4', looseningOrder([1, 3, 2, 4]), [4, 2, 3, 1]],
  ]),
  ...practice(tighteningPasses, 'a cover of 10 N·m', 'exact', [
    [
      'passes',
      sure(tighteningPasses({ newtonMetres: 10, underPressure: true })).map(({ name }) => name),
      ['snug', 'final'],
    ],
  ]),
];
