// The cardboard: an area's outline with a tag for each hole where it sits. Pure: the same sheet gives the same rows. It
// knows tags and places, not what a hole is.
import type { Point } from '../trade/layout.ts';
import type { Look } from './colours.ts';
import { brailleOf, cellKey, closedLine, type Dots } from './outline.ts';
import type { Row, Run } from './rows.tsx';
import { cellsOf } from './width.ts';

export type Tag = {
  at: Point;
  /** What is shown where there is room, then ever shorter; the last is one cell. */
  texts: readonly string[];
  look: Look;
  /** Of all behind the first cell, where that is another. */
  wordsLook?: Look;
  /** Placed before all others, so that it is shown whole. */
  first?: boolean;
};
export type Sheet = { outline: readonly Point[]; tags: readonly Tag[] };

type Cell = { text: string; look?: Look };

export function mapRows({ outline, tags }: Sheet, columns: number, rows: number): Row[] {
  const place = scaled([...outline, ...tags.map((tag) => tag.at)], columns, rows);
  const line = closedLine(outline.map(place), columns, rows);
  // All tags of one map say as much as the most crowded of them can.
  const longest = Math.max(0, ...tags.map((tag) => tag.texts.length - 1));
  const levels = Array.from({ length: longest }, (_, shorter) => shorter);
  // Beside the outline, however little is said, before over it.
  for (const { shorter, frame, apart } of [
    ...levels.flatMap((shorter) => [true, false].map((apart) => ({ shorter, frame: line, apart }))),
    ...levels.map((shorter) => ({ shorter, frame: undefined, apart: false })),
  ]) {
    const paper = papered(line, columns, rows);
    const said = tags.map((tag) => (tag.first ? tag : { ...tag, texts: tag.texts.slice(shorter) }));
    // The next one says what the others leave room for.
    const inTurn = [...said.filter((tag) => !tag.first), ...said.filter((tag) => tag.first)];
    if (inTurn.every((tag) => put(tag, place(tag.at), paper, besideFrame, frame, apart))) return rowsOf(paper);
  }
  // Even the shortest are too much: they give way to the next one, and those without room are left out.
  const paper = papered(line, columns, rows);
  const shortest = tags.map((tag) => (tag.first ? tag : { ...tag, texts: tag.texts.slice(longest) }));
  for (const tag of [...shortest.filter((one) => one.first), ...shortest.filter((one) => !one.first)])
    put(tag, place(tag.at), paper, allMoves);
  return rowsOf(paper);
}

/** Kept free at the edges whatever the tags say, so that the drawing stands still while they change. */
const roomForTags = 4;
/** From the drawing's units to cells, as large as fits; a cell is twice as high as wide, and a little stretch is allowed. */
function scaled(points: readonly Point[], columns: number, rows: number): (at: Point) => Point {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const width = Math.max(1e-9, Math.max(...xs) - left);
  const height = Math.max(1e-9, Math.max(...ys) - top);
  const mostStretch = 1.7;
  const fitX = Math.max(1, columns - 2 - roomForTags) / width;
  const fitY = Math.max(1, rows - 1) / height;
  const x = Math.min(fitX, fitY * 2 * mostStretch);
  const y = Math.min(fitY, (fitX / 2) * mostStretch);
  const fromLeft = (columns - 1 - width * x) / 2;
  const fromTop = (rows - 1 - height * y) / 2;
  return ([px, py]) => [fromLeft + (px - left) * x, fromTop + (py - top) * y];
}

type Paper = { cells: (Cell | undefined)[]; taken: Set<number>; columns: number; rows: number };
function papered(dots: ReadonlyMap<number, number>, columns: number, rows: number): Paper {
  const cells: (Cell | undefined)[] = new Array(columns * rows).fill(undefined);
  for (const [key, of] of dots) cells[key] = { text: brailleOf(of) };
  return { cells, taken: new Set(), columns, rows };
}
const rowsOf = ({ cells, columns, rows }: Paper): Row[] =>
  Array.from({ length: rows }, (_, row) => merged(cells.slice(row * columns, (row + 1) * columns)));

type Moves = readonly (readonly [right: number, down: number])[];
/** A tag is not written over the outline where a cell or three to the side frees it. */
const besideFrame: Moves = [
  [0, 0],
  [-1, 0],
  [1, 0],
  [-2, 0],
  [2, 0],
  [-3, 0],
  [3, 0],
];
const allMoves: Moves = [
  [0, 0],
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [2, 0],
  [-2, 0],
];

/** The longest text that touches no other tag, moved by a cell or two. False when none has room. */
function put(tag: Tag, [x, y]: Point, paper: Paper, moves: Moves, frame?: Dots, apart = false): boolean {
  const texts = moves === allMoves ? tag.texts : tag.first ? tag.texts.slice(0, -1) : tag.texts.slice(0, 1);
  for (const text of texts) {
    const width = cellsOf(text);
    for (const [right, down] of moves) {
      const column = Math.round(x) + right - Math.floor((width - 1) / 2);
      const row = Math.round(y) + down;
      if (!isFree(paper, column, row, width, frame, apart)) continue;
      write(paper, column, row, text, tag);
      return true;
    }
  }
  return false;
}
/** @param apart a cell stays free between its text and the outline behind it */
function isFree(
  { taken, columns, rows }: Paper,
  column: number,
  row: number,
  width: number,
  frame?: Dots,
  apart = false,
): boolean {
  if (row < 0 || row >= rows || column < 0 || column + width > columns) return false;
  for (let i = -1; i <= width; i++) {
    const key = cellKey(column + i, row, columns);
    const isGap = i < 0 || i === width;
    if (column + i < 0 || column + i >= columns) continue;
    if (taken.has(key) || ((!isGap || (apart && i === width)) && frame?.has(key))) return false;
  }
  return true;
}
function write({ cells, taken, columns }: Paper, column: number, row: number, text: string, tag: Tag): void {
  [...text].forEach((char, i) => {
    const key = cellKey(column + i, row, columns);
    cells[key] = { text: char, look: i === 0 ? tag.look : (tag.wordsLook ?? tag.look) };
    taken.add(key);
  });
}

/** Neighbouring cells of one look as one run: cost goes with the number of changes. */
function merged(cells: readonly (Cell | undefined)[]): Row {
  const runs: Run[] = [];
  for (const cell of cells) {
    const last = runs.at(-1);
    const text = cell?.text ?? ' ';
    if (last && last.look === cell?.look) last.text += text;
    else runs.push({ text, ...(cell?.look && { look: cell.look }) });
  }
  return runs;
}
