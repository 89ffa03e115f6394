// Where the holes of an area sit when nobody measured them: rings, covers and lines as they are said on the spot, and a
// plain grid for the rest. Units are free (a map is scaled to its paper); x goes right, y goes down. No sources: these
// are drawings, not figures of the trade.

import { chosenForDrawings, cited } from './cited.ts';

/** x to the right, y down. */
export type Point = readonly [x: number, y: number];
export type Layout = { outline: Point[]; holes: Point[] };

const pitch: number = cited(10, 'drawn', chosenForDrawings).value;
const margin: number = cited(5, 'drawn', chosenForDrawings).value;
const corners: number = cited(24, 'corners of a round outline', chosenForDrawings).value;
const inARow: number = cited(6, 'holes', chosenForDrawings).value;
const finest: number = cited(100, 'parts of a drawn unit', chosenForDrawings).value;

/** `count` holes on a circle, the first at the top, numbered clockwise. */
export function ringOf(count: number): Layout {
  const radius = Math.max(pitch, (count * pitch) / (2 * Math.PI));
  const on = (r: number, part: number): Point => {
    const angle = 2 * Math.PI * part - Math.PI / 2;
    return [rounded(r * Math.cos(angle)), rounded(r * Math.sin(angle))];
  };
  return {
    holes: Array.from({ length: count }, (_, i) => on(radius, i / count)),
    outline: Array.from({ length: corners }, (_, i) => on(radius + margin, i / corners)),
  };
}

/** `columns` by `rows` holes, numbered row by row from the upper left, and `middle` more along the middle line. */
export function coverOf(columns: number, rows: number, middle = 0): Layout {
  const width = (columns - 1) * pitch;
  const height = (rows - 1) * pitch;
  const grid = Array.from(
    { length: columns * rows },
    (_, i): Point => [(i % columns) * pitch, rows === 1 ? height / 2 : Math.floor(i / columns) * pitch],
  );
  const between = Array.from(
    { length: middle },
    (_, i): Point => [rounded((width * (i + 1)) / (middle + 1)), rounded(height / 2)],
  );
  return { holes: [...grid, ...between], outline: box(0, 0, width, height) };
}

/** `count` holes in one line, from the left. */
export const lineOf = (count: number): Layout => {
  const holes = Array.from({ length: count }, (_, i): Point => [i * pitch, 0]);
  return { holes, outline: box(0, 0, (count - 1) * pitch, 0) };
};

/** What is drawn of an area nobody placed: rows of six, so that one hole more moves none of those there are. */
export function gridOf(count: number): Layout {
  const rows = Math.max(1, Math.ceil(count / inARow));
  const { holes, outline } = coverOf(inARow, rows);
  return { holes: holes.slice(0, count), outline };
}

/** A box around points, with a margin: the outline of an area of which only the holes were placed. */
export function outlineOf(points: readonly Point[]): Point[] {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return box(Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys));
}
const box = (left: number, top: number, right: number, bottom: number): Point[] => [
  [left - margin, top - margin],
  [right + margin, top - margin],
  [right + margin, bottom + margin],
  [left - margin, bottom + margin],
];
const rounded = (value: number): number => Math.round(value * finest) / finest;
