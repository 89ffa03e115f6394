// Figures readable across the bay: a tiny font of our own, painted as reversed blanks, which are one cell wide on every
// terminal and need no colour.
import { cellsOf } from './cells.ts';
import type { Look } from './colours.ts';
import type { Row, Run } from './rows.tsx';

/** Three dots wide, five high; from the top, one string a character. */
const font: Record<string, readonly string[]> = {
  '0': ['###', '# #', '# #', '# #', '###'],
  '1': [' # ', '## ', ' # ', ' # ', '###'],
  '2': ['###', '  #', '###', '#  ', '###'],
  '3': ['###', '  #', ' ##', '  #', '###'],
  '4': ['# #', '# #', '###', '  #', '  #'],
  '5': ['###', '#  ', '###', '  #', '###'],
  '6': ['###', '#  ', '###', '# #', '###'],
  '7': ['###', '  #', ' # ', ' # ', ' # '],
  '8': ['###', '# #', '###', '# #', '###'],
  '9': ['###', '# #', '###', '  #', '###'],
  '-': ['   ', '   ', '###', '   ', '   '],
};
const high = 5;
const wide = 3;

/** The largest scale at which a text fits; a dot is twice as many cells wide as high. 0: not even the smallest. */
export function scaleFor(text: string, columns: number, rows: number): number {
  return Math.max(0, Math.min(Math.floor(columns / figureCells(text, 1)), Math.floor(rows / high)));
}
/** How wide a text is at a scale, in cells. */
export const figureCells = (text: string, scale: number): number => ([...text].length * (wide + 1) - 1) * 2 * scale;

/** A number, or "-", as rows of that scale, each exactly `columns` wide, in the middle; plain text at scale 0. */
export function figureRows(text: string, scale: number, columns: number, look: Look): Row[] {
  if (scale === 0) return [inTheMiddle([{ text, look: { ...look, bold: true } }], cellsOf(text), columns)];
  const glyphs = [...text].map((char) => font[char] ?? (font['-'] as readonly string[]));
  const on: Look = { ...look, inverse: true };
  return Array.from({ length: high * scale }, (_, y): Row => {
    const dots = glyphs.map((glyph) => glyph[Math.floor(y / scale)]).join(' ');
    const runs = [...dots.matchAll(/#+| +/g)].map(
      ([dot]): Run => ({
        text: ' '.repeat(dot.length * scale * 2),
        ...(dot.startsWith('#') && { look: on }),
      }),
    );
    return inTheMiddle(runs, dots.length * scale * 2, columns);
  });
}

export function inTheMiddle(runs: readonly Run[], cells: number, columns: number): Row {
  const before = Math.max(0, Math.floor((columns - cells) / 2));
  return [{ text: ' '.repeat(before) }, ...runs, { text: ' '.repeat(Math.max(0, columns - cells - before)) }];
}
