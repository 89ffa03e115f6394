// The cardboard: every tag is on it, none over another, the next one whole, and nothing outside its paper.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mapRows, type Tag } from '../../src/screen/map.ts';
import { cellsOf } from '../../src/screen/width.ts';
import { coverOf, gridOf, lineOf, ringOf } from '../../src/trade/layout.ts';

const look = {};
const tagsOf = (holes: readonly (readonly [number, number])[], next = -1): Tag[] =>
  holes.map((at, i) => ({
    at,
    texts: i === next ? [`>${i + 1} next<`, `>${i + 1}<`, '>'] : [`◉${i + 1} off`, `◉${i + 1}`, '◉'],
    look,
    ...(i === next && { first: true }),
  }));
const drawn = (layout: ReturnType<typeof ringOf>, columns: number, rows: number, next = -1) =>
  mapRows({ outline: layout.outline, tags: tagsOf(layout.holes, next) }, columns, rows).map((row) =>
    row.map((run) => run.text).join(''),
  );
const numbersOn = (map: readonly string[]) =>
  [...map.join('\n').matchAll(/[◉>](\d+)/g)].map((match) => Number(match[1])).sort((a, b) => a - b);

describe('a map', () => {
  it.each([
    [53, 8],
    [56, 14],
  ])('keeps a cell free between the words of a hole and the outline behind them, at %d by %d', (columns, rows) => {
    const map = drawn(ringOf(8), columns, rows).join('\n');
    expect(map.match(/off/g)).toHaveLength(8);
    expect(map).not.toMatch(/off[\u2801-\u28ff]/);
  });
  it('shows every hole once, whatever its size, and is exactly as large as its paper', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 52, max: 150 }),
        fc.integer({ min: 11, max: 40 }),
        fc.constantFrom(ringOf, gridOf),
        (count, columns, rows, layout) => {
          const map = drawn(layout(count), columns, rows);
          expect(map).toHaveLength(rows);
          for (const row of map) expect(cellsOf(row)).toBe(columns);
          expect(map.join('').split('◉')).toHaveLength(count + 1);
          const numbers = numbersOn(map);
          expect(new Set(numbers).size).toBe(numbers.length);
          if (count <= 16) expect(numbers).toEqual(Array.from({ length: count }, (_, i) => i + 1));
        },
      ),
    );
  });
  it('keeps holes in their places: left of, right of, above', () => {
    const map = drawn(coverOf(4, 2, 2), 60, 15, 2);
    const row = map.find((text) => text.includes('◉1')) ?? '';
    expect(row.indexOf('◉1')).toBeLessThan(row.indexOf('◉2'));
    expect(row).toContain('>3');
    expect(map.findIndex((text) => text.includes('◉9'))).toBeGreaterThan(map.indexOf(row));
  });
  it('says the word of every hole only where all have room for it', () => {
    expect(drawn(ringOf(8), 60, 15).join('')).toContain('◉1 off');
    expect(drawn(gridOf(40), 60, 13).join('')).not.toContain('off');
  });
  it('draws 300 holes without losing the next one', () => {
    const map = drawn(coverOf(25, 12), 110, 30, 137);
    expect(map.join('\n')).toContain('>138');
  });
  it('has the next one between its two signs wherever it sits, however many crowd it and however small the paper', () => {
    const layouts = [ringOf, gridOf, lineOf, (count: number) => coverOf(count, 3)];
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.nat({ max: 59 }),
        fc.integer({ min: 30, max: 60 }),
        fc.integer({ min: 3, max: 12 }),
        fc.constantFrom(...layouts),
        (count, at, columns, rows, layout) => {
          const next = at % count;
          expect(drawn(layout(count), columns, rows, next).join('\n')).toMatch(new RegExp(`>${next + 1}( next)?<`));
        },
      ),
    );
  });
  it('writes no tag over the outline, and lets the next one say less before the others do', () => {
    for (const count of [1, 2, 3, 6, 7, 12]) {
      const map = drawn(gridOf(count), 52, 13, count - 1);
      const rows = map.filter((row) => /[◉>]/.test(row));
      for (const row of rows) expect(row, `${count}`).toMatch(/^ *[\u2801-\u28ff].*[\u2801-\u28ff] *$/u);
      if (count > 1) expect(rows.join('\n')).toContain('◉1 off');
    }
    expect(drawn(gridOf(6), 52, 13, 5).join('\n')).toMatch(/◉5 off +>6</);
  });
  it('draws its outline where no tag is', () => {
    expect(drawn(ringOf(5), 60, 15).join('')).toMatch(/[\u2801-\u28ff]{3}/);
  });
});
