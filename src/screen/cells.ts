// Text cut and filled to a number of terminal cells, and lists cut to the rows there are. Nothing of ink or of a job.
import { plainText } from '../trade/plain-text.ts';
import { cellsOf, widthOf } from './width.ts';

/** Exactly `cells` wide; what does not fit is left out by whole words, and "…" stands for it. */
export function fitted(text: string, cells: number): string {
  if (cells <= 0) return '';
  const wanted = cellsOf(text);
  if (wanted <= cells) return text + ' '.repeat(cells - wanted);
  const out = begun(text, cells - 1);
  const used = cellsOf(out);
  const kept = wholeWords(out, text.slice(out.length), cells);
  return kept === undefined
    ? `${out}…${' '.repeat(cells - used - 1)}`
    : `${kept} …${' '.repeat(cells - cellsOf(kept) - 2)}`;
}
/** As much of it as has room, cut anywhere. */
function begun(text: string, cells: number): string {
  let out = '';
  let used = 0;
  for (const char of text) {
    const width = widthOf(char);
    if (used + width > cells) break;
    out += char;
    used += width;
  }
  return out;
}
/** Without the word that is cut; undefined where that one is most of it, as a long name is. */
function wholeWords(out: string, after: string, cells: number): string | undefined {
  const isWhole = after.startsWith(' ') && cellsOf(out) <= cells - 2;
  const end = isWhole ? out.length : out.lastIndexOf(' ');
  const kept = out.slice(0, Math.max(0, end)).replace(/[ ,;:]+$/, '');
  return cellsOf(kept) * 2 < cells ? undefined : kept;
}

/** A name cut so that it is taken for none of the others: where it would be, its middle goes and its last word stays. */
export function fittedApart(name: string, others: readonly string[], cells: number): string {
  const cut = fitted(name, cells);
  const read = cut.trimEnd().replace(/ ?…$/, '');
  if (cellsOf(name) <= cells || !others.some((other) => other !== name && other.startsWith(read))) return cut;
  const last = name.slice(name.lastIndexOf(' ') + 1);
  const room = cells - cellsOf(`… ${last}`);
  return room < fewestHeadCells || last === name ? cut : fitted(`${begun(name, room).trimEnd()}… ${last}`, cells);
}
const fewestHeadCells = 4;

/** Left text and right text on one row; the left one gives way. */
export function spread(left: string, right: string, cells: number, cut = fitted): string {
  const end = right === '' ? '' : ` ${right}`;
  const room = cells - cellsOf(end);
  return room < 10 ? cut(left, cells) : `${cut(left, room)}${end}`;
}

/** The first row to show so that `at` is in view, of `of` rows with room for `rows`. */
export function windowFrom(at: number, of: number, rows: number): number {
  if (of <= rows) return 0;
  return Math.max(0, Math.min(at - Math.floor(rows / 2), of - rows));
}

/** A word longer than a row, as a path may be, in pieces: none of it is lost. */
function inRows(word: string, cells: number): string[] {
  if (cellsOf(word) <= cells) return [word];
  const pieces = [''];
  for (const char of word) {
    if (cellsOf(pieces.at(-1) as string) + widthOf(char) > Math.max(2, cells)) pieces.push('');
    pieces[pieces.length - 1] += char;
  }
  return pieces;
}
/** Words broken into rows of at most `cells`. */
export function wrapped(text: string, cells: number, most: number): string[] {
  const out: string[] = [];
  let row = '';
  for (const word of text.split(' ').flatMap((whole) => inRows(whole, cells))) {
    if (row !== '' && cellsOf(row) + 1 + cellsOf(word) > cells) {
      out.push(row);
      row = word;
    } else row = row === '' ? word : `${row} ${word}`;
  }
  if (row !== '') out.push(row);
  return out.length <= most ? out : [...out.slice(0, most - 1), fitted(`${out.slice(most - 1).join(' ')}`, cells)];
}
/** Rows of pieces, none of them broken at the end of a row where it has room on the next. */
export function inPieces(pieces: readonly string[], columns: number, rows = 3): string[] {
  const solid = pieces.map((piece) =>
    cellsOf(piece) > columns ? plainText(piece) : plainText(piece).replaceAll(' ', '\u00a0'),
  );
  return wrapped(solid.join('\u00a0\u00a0 '), columns, rows).map((row) => row.replaceAll('\u00a0', ' '));
}
