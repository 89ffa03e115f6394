// Order and passes of tightening: what holds of every ring, line and cover, and what a maker's own order must be.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefused } from '../../src/trade/answer.ts';
import { coverOf, lineOf, type Point, ringOf } from '../../src/trade/layout.ts';
import { lineOrder, looseningOrder, type Place, ringOrder, tighteningOrder } from '../../src/trade/tightening-order.ts';
import { tighteningPasses } from '../../src/trade/tightening-passes.ts';
import { sure } from '../published/trade.ts';

const said = (answer: unknown): string => (isRefused(answer) ? answer.refused : `taken: ${JSON.stringify(answer)}`);
const places = (points: readonly Point[]): Place[] => points.map((at, index) => ({ hole: String(index + 1), at }));
const numbers = (count: number) => Array.from({ length: count }, (_, at) => at + 1);

describe('a ring', () => {
  it('is gone round once, whatever its number', () => {
    for (let count = 1; count <= 64; count++) {
      expect(sure(ringOrder(count)).toSorted((a, b) => a - b)).toEqual(numbers(count));
    }
  });
  it('of an even number goes straight across each second step', () => {
    for (let count = 4; count <= 64; count += 2) {
      const order = sure(ringOrder(count));
      for (let at = 0; at < count; at += 2) expect((order[at + 1] as number) - (order[at] as number)).toBe(count / 2);
    }
  });
  it('never steps to a neighbour from seven holes on', () => {
    for (let count = 7; count <= 64; count++) {
      const order = sure(ringOrder(count));
      for (let at = 1; at < count; at++) {
        const step = Math.abs((order[at] as number) - (order[at - 1] as number));
        expect([1, count - 1]).not.toContain(step);
      }
    }
  });
  it('of five is the star of a wheel', () => expect(ringOrder(5)).toEqual([1, 3, 5, 2, 4]));
  it('drawn as coordinates is known for one, wherever it begins and however it is turned', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 24 }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.integer({ min: 5, max: 300 }),
        (count, turned, radius) => {
          const points = numbers(count).map(
            (n): Point => [
              100 + radius * Math.cos(turned + (2 * Math.PI * n) / count),
              -40 + radius * Math.sin(turned + (2 * Math.PI * n) / count),
            ],
          );
          const order = sure(tighteningOrder(places(points)));
          expect(order.by).toBe('ring');
          expect(order.holes.map(Number)).toEqual(sure(ringOrder(count)));
        },
      ),
    );
    expect(sure(tighteningOrder(places(ringOf(9).holes))).by).toBe('ring');
  });
});

describe('a line', () => {
  it('goes from the middle outwards, sides in turn', () => {
    expect(lineOrder(5)).toEqual([3, 2, 4, 1, 5]);
    expect(lineOrder(6)).toEqual([3, 4, 2, 5, 1, 6]);
    expect(lineOrder(1)).toEqual([1]);
    expect(sure(tighteningOrder(places(lineOf(6).holes))).by).toBe('line');
    expect(sure(tighteningOrder(places(lineOf(6).holes))).holes.map(Number)).toEqual(lineOrder(6));
  });
});

describe('a cover', () => {
  const distances = (points: readonly Point[], holes: readonly string[]) => {
    const mean = (of: 0 | 1) => points.reduce((sum, point) => sum + point[of], 0) / points.length;
    const [cx, cy] = [mean(0), mean(1)];
    return holes.map((hole) => {
      const [x, y] = points[Number(hole) - 1] as Point;
      return { x: x - cx, y: y - cy, distance: Math.hypot(x - cx, y - cy) };
    });
  };

  it('begins nearest the middle and goes outwards, in any layout', () => {
    const point = fc.tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -100, max: 100 }));
    fc.assert(
      fc.property(
        fc.uniqueArray(point, { minLength: 4, maxLength: 24, selector: ([x, y]) => `${x},${y}` }),
        (points) => {
          const order = sure(tighteningOrder(places(points)));
          expect(order.holes.toSorted()).toEqual(numbers(points.length).map(String).toSorted());
          if (order.by === 'ring') return;
          const seen = distances(points, order.holes);
          const reach = Math.max(...seen.map(({ distance }) => distance));
          expect(seen[0]?.distance).toBeCloseTo(Math.min(...seen.map(({ distance }) => distance)), 9);
          // A round is what differs by less than 4 % of the reach.
          for (let at = 1; at < seen.length; at++) {
            expect(seen[at]?.distance as number).toBeGreaterThanOrEqual(
              (seen[at - 1]?.distance as number) - reach * 0.04 - 1e-9,
            );
          }
        },
      ),
    );
  });

  it('goes straight across each second step, where it has two equal rows', () => {
    for (let columns = 2; columns <= 9; columns++) {
      const points = coverOf(columns, 2).holes;
      const seen = distances(points, sure(tighteningOrder(places(points))).holes);
      for (let at = 0; at < seen.length; at += 2) {
        expect((seen[at]?.x as number) + (seen[at + 1]?.x as number)).toBeCloseTo(0, 9);
        expect((seen[at]?.y as number) + (seen[at + 1]?.y as number)).toBeCloseTo(0, 9);
      }
    }
  });
});

describe("a maker's order", () => {
  const four = places(coverOf(2, 2).holes);
  it('always wins', () => {
    expect(tighteningOrder(four, ['4', '3', '2', '1'])).toMatchObject({
      holes: ['4', '3', '2', '1'],
      by: "the maker's order",
    });
  });
  it.each([
    [['1', '2', '3'], /leaves out hole 4/],
    [['1', '2', '3', '3'], /names hole 3 twice/],
    [['1', '2', '3', '5'], /names hole 5, which is not there/],
    [[], /leaves out hole 1/],
  ])('%j is refused', (order, line) => expect(said(tighteningOrder(four, order))).toMatch(line));
});

describe('nonsense', () => {
  it.each([
    [() => ringOrder(0), /a count of 0/],
    [() => ringOrder(2.5), /2.5 is no count/],
    [() => ringOrder(Number.NaN), /a count of \?/],
    [() => lineOrder(-1), /a count of -1/],
    [() => tighteningOrder([]), /a count of 0/],
    [() => tighteningOrder([{ hole: '1', at: [0, Number.NaN] }]), /hole 1 has no place/],
    [
      () =>
        tighteningOrder([
          { hole: '1', at: [0, 0] },
          { hole: '1', at: [1, 0] },
        ]),
      /hole 1 stands in two places/,
    ],
    [() => tighteningPasses({ newtonMetres: -3 }), /a torque of -3/],
  ])('is refused: %s', (ask, line) => expect(said(ask())).toMatch(line));
  it('holes all on one spot are taken as they are listed', () => {
    expect(sure(tighteningOrder(['1', '2', '3', '4'].map((hole) => ({ hole, at: [5, 5] })))).holes).toEqual([
      '1',
      '2',
      '3',
      '4',
    ]);
  });
});

describe('passes', () => {
  const names = (what: Parameters<typeof tighteningPasses>[0]) => sure(tighteningPasses(what)).map(({ name }) => name);
  it('rise for a flange under pressure and nowhere else', () => {
    expect(names({ newtonMetres: 80, underPressure: true })).toHaveLength(5);
    expect(names({ newtonMetres: 80 })).toEqual(['snug', 'final']);
    expect(names({ newtonMetres: 9, underPressure: true })).toEqual(['snug', 'final']);
    expect(names({})).toEqual(['snug', 'final']);
  });
  it('[O3] have no closing round for torque-and-angle or shouldered fasteners', () => {
    expect(names({ newtonMetres: 40, underPressure: true, by: 'torque-angle' })).not.toContain('once round');
    expect(names({ newtonMetres: 40, underPressure: true, by: 'shoulder' })).toEqual(['snug', 'final']);
    expect(sure(tighteningPasses({ newtonMetres: 9, by: 'shoulder' })).some(({ newtonMetres }) => newtonMetres)).toBe(
      false,
    );
  });
  it('loosening is the other way round', () => {
    expect(looseningOrder(looseningOrder([3, 1, 2]))).toEqual([3, 1, 2]);
  });
});
