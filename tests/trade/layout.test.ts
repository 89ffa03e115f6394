// Drawings of areas: rings, covers, lines and the grid of what nobody placed.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverOf, gridOf, type Layout, lineOf, type Point, ringOf } from '../../src/trade/layout.ts';

const apart = ([ax, ay]: Point, [bx, by]: Point) => Math.hypot(ax - bx, ay - by);
const nearest = ({ holes }: Layout) =>
  Math.min(Infinity, ...holes.flatMap((a, i) => holes.slice(i + 1).map((b) => apart(a, b))));
const within = ({ holes, outline }: Layout) => {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  return holes.every(
    ([x, y]) => x > Math.min(...xs) && x < Math.max(...xs) && y > Math.min(...ys) && y < Math.max(...ys),
  );
};

describe('a layout', () => {
  it('has as many holes as were said, none on another, all within its outline', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 9 }),
        fc.nat({ max: 3 }),
        (n, rows, mid) => {
          for (const layout of [ringOf(n), lineOf(n), gridOf(n)]) {
            expect(layout.holes).toHaveLength(n);
            expect(nearest(layout)).toBeGreaterThan(5);
            expect(within(layout)).toBe(true);
          }
          const cover = coverOf(n, rows, mid);
          expect(cover.holes).toHaveLength(n * rows + mid);
          expect(within(cover)).toBe(true);
        },
      ),
    );
  });
  it('numbers a ring clockwise from the top, opposite holes half the ring apart', () => {
    const { holes } = ringOf(8);
    const [first, second] = holes as [Point, Point];
    expect(first[0]).toBeCloseTo(0);
    expect(first[1]).toBeLessThan(0);
    expect(second[0]).toBeGreaterThan(0);
    for (let i = 0; i < 4; i++) {
      const [a, b] = [holes[i] as Point, holes[i + 4] as Point];
      expect(a[0] + b[0]).toBeCloseTo(0, 1);
      expect(a[1] + b[1]).toBeCloseTo(0, 1);
    }
  });
  it('puts the middle ones of a cover on its middle line', () => {
    const { holes } = coverOf(4, 2, 2);
    expect(holes.slice(8).map(([, y]) => y)).toEqual([5, 5]);
  });
  it('moves no hole of a grid when one more is known', () => {
    for (let n = 1; n < 40; n++) expect(gridOf(n + 1).holes.slice(0, n)).toEqual(gridOf(n).holes);
  });
});
