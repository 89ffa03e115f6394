// Lines drawn with braille dots, which are one cell wide on every terminal: two dots across and four down in a cell.
import type { Point } from '../trade/layout.ts';

const bits = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const;

/** Dots by "column,row" of their cell. */
export type Dots = Map<number, number>;
export const cellKey = (column: number, row: number, columns: number): number => row * columns + column;

function dot(dots: Dots, x: number, y: number, columns: number, rows: number): void {
  const column = Math.floor(x / 2);
  const row = Math.floor(y / 4);
  if (column < 0 || row < 0 || column >= columns || row >= rows) return;
  const key = cellKey(column, row, columns);
  dots.set(key, (dots.get(key) ?? 0) | (bits[y % 4]?.[x % 2] ?? 0));
}

/** A closed line through points given in cells, as dots. */
export function closedLine(points: readonly Point[], columns: number, rows: number): Dots {
  const dots: Dots = new Map();
  const fine = points.map(([x, y]): Point => [Math.round(x * 2), Math.round(y * 4)]);
  fine.forEach(([x0, y0], i) => {
    const [x1, y1] = fine[(i + 1) % fine.length] as Point;
    const steps = Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0), 1);
    for (let s = 0; s <= steps; s++) {
      dot(dots, Math.round(x0 + ((x1 - x0) * s) / steps), Math.round(y0 + ((y1 - y0) * s) / steps), columns, rows);
    }
  });
  return dots;
}
export const brailleOf = (dots: number): string => String.fromCharCode(0x2800 + dots);
