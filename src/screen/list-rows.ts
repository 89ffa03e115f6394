// A list on the screen: rows with a shape, a name, words and an end; the picked one stands out, and has more to say.
import type { Listed, Rows } from '../calls/listed.ts';
import { plainText } from '../trade/plain-text.ts';
import { fitted, spread, windowFrom, wrapped } from './cells.ts';
import { chosenLook, lookOf, quietLook, shapeOf, wordsLook } from './colours.ts';
import { plainRow, type Row } from './rows.tsx';
import { cellsOf } from './width.ts';

const nameCells = 11;
export function listRows(listed: Rows, picked: number, columns: number, rows: number): Row[] {
  // A list may have grown shorter under the cursor.
  const at = Math.min(picked, listed.length - 1);
  const from = windowFrom(at, listed.length, rows);
  return listed.slice(from, from + rows).map((one, i) => listedRow(one, from + i === at, columns));
}
const mostMoreRows = 6;
/** What the picked row has to say beyond its own line. */
export function moreRows(picked: Listed | undefined, columns: number): Row[] {
  const more = typeof picked?.more === 'function' ? picked.more() : picked?.more;
  if (!more) return [];
  return wrapped(plainText(more), columns - 4, mostMoreRows).map((text) =>
    plainRow(fitted(`  ${text}`, columns), quietLook),
  );
}
/** What something is goes before a long state of it: then the end gives way, by whole words. */
export function givingWay(end: string, left: string, cells: number): string {
  const room = cells - cellsOf(left) - 1;
  return cellsOf(end) > Math.max(room, cells / 2) && room >= fewestEndCells ? fitted(end, room) : end;
}
const fewestEndCells = 10;
export function listedRow(one: Listed, chosen: boolean, columns: number, cells = nameCells): Row {
  const name = one.name === '' ? '' : fitted(one.name, cells);
  const left = (text: string) => plainText(` ${name}${name && ' '}${text}`);
  const { text: words, end = '' } = one;
  const fits = cellsOf(left(words)) + cellsOf(plainText(end)) < columns - 5;
  const { text: shown, end: shownEnd } = { text: words, end, ...(fits ? {} : one.brief) };
  const text = `${spread(left(shown), givingWay(plainText(shownEnd), left(shown), columns - 5), columns - 5)} `;
  return [
    { text: chosen ? ' > ' : '   ', look: chosen ? { bold: true } : {} },
    { text: shapeOf(one.mark), look: chosen ? chosenLook : lookOf(one.mark) },
    { text, look: chosen ? chosenLook : wordsLook(one.mark) },
  ];
}
