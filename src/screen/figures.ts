// Figures and words readable across the bay: a tiny font of our own. A dot is a reversed cell, which is one cell wide on
// every terminal and needs no colour; the sign under it is hidden, and stands in a copy of the screen as plain text.

import type { Look } from './colours.ts';
import type { Row, Run } from './rows.tsx';
import { cellsOf } from './width.ts';

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
  ' ': [' ', ' ', ' ', ' ', ' '],
  A: [' # ', '# #', '###', '# #', '# #'],
  B: ['## ', '# #', '## ', '# #', '## '],
  C: [' ##', '#  ', '#  ', '#  ', ' ##'],
  D: ['## ', '# #', '# #', '# #', '## '],
  E: ['###', '#  ', '## ', '#  ', '###'],
  F: ['###', '#  ', '## ', '#  ', '#  '],
  G: [' ##', '#  ', '# #', '# #', ' ##'],
  H: ['# #', '# #', '###', '# #', '# #'],
  I: ['###', ' # ', ' # ', ' # ', '###'],
  J: ['  #', '  #', '  #', '# #', ' # '],
  K: ['# #', '# #', '## ', '# #', '# #'],
  L: ['#  ', '#  ', '#  ', '#  ', '###'],
  M: ['#   #', '## ##', '# # #', '#   #', '#   #'],
  N: ['#  #', '## #', '# ##', '#  #', '#  #'],
  O: [' # ', '# #', '# #', '# #', ' # '],
  P: ['## ', '# #', '## ', '#  ', '#  '],
  Q: [' # ', '# #', '# #', '###', ' ##'],
  R: ['## ', '# #', '## ', '# #', '# #'],
  S: [' ##', '#  ', ' # ', '  #', '## '],
  T: ['###', ' # ', ' # ', ' # ', ' # '],
  U: ['# #', '# #', '# #', '# #', '###'],
  V: ['# #', '# #', '# #', '# #', ' # '],
  W: ['#   #', '#   #', '# # #', '## ##', '#   #'],
  X: ['# #', '# #', ' # ', '# #', '# #'],
  Y: ['# #', '# #', ' # ', ' # ', ' # '],
  Z: ['###', '  #', ' # ', '#  ', '###'],
};
const high = 5;

/** Letters as the font has them: of one case, without accents. */
const asDrawn = (text: string): string[] => [...text.normalize('NFKD').replace(/\p{M}/gu, '').toUpperCase()];
/** Whether each of its characters can be drawn. */
export const canBeDrawn = (text: string): boolean => text !== '' && asDrawn(text).every((char) => char in font);

/**
 * How large a dot is: at 1 two cells wide and one high, which is square, and so on in whole steps. At "narrow" it is one
 * cell wide: words that would have no room otherwise. 0 is plain text.
 */
export type Scale = number | 'narrow';
const dotOf = (scale: Scale): readonly [wide: number, high: number] =>
  scale === 'narrow' ? [1, 1] : [2 * scale, scale];

const dotsOf = (text: string): string[] => {
  const glyphs = asDrawn(text).map((char) => font[char] ?? (font['-'] as readonly string[]));
  return Array.from({ length: high }, (_, y) => glyphs.map((glyph) => glyph[y]).join(' '));
};

/** The largest whole scale at which a text fits. 0: not even the smallest. */
export function scaleFor(text: string, columns: number, rows: number): number {
  return Math.max(0, Math.min(Math.floor(columns / figureCells(text, 1)), Math.floor(rows / high)));
}
/** How wide a text is at a scale, in cells; and how high. */
export const figureCells = (text: string, scale: Scale): number => (dotsOf(text)[0] as string).length * dotOf(scale)[0];
export const figureHeight = (scale: Scale): number => high * dotOf(scale)[1];

/** A number, a word or "-" as rows of that scale, each exactly `columns` wide, in the middle; plain text at scale 0. */
export function figureRows(text: string, scale: Scale, columns: number, look: Look): Row[] {
  if (scale === 0) return [inTheMiddle([{ text, look: { ...look, bold: true } }], cellsOf(text), columns)];
  const [wide, tall] = dotOf(scale);
  // Blanks are hidden as well: what does not change between a dot and a gap need not be painted again.
  const off: Look = { ...look, hidden: true };
  const on: Look = { ...off, inverse: true };
  return dotsOf(text).flatMap((dots) => {
    const runs = [...dots.matchAll(/#+| +/g)].map(
      ([dot]): Run => ({ text: dot.charAt(0).repeat(dot.length * wide), look: dot.startsWith('#') ? on : off }),
    );
    const row = inTheMiddle(runs, dots.length * wide, columns);
    return Array.from({ length: tall }, () => row);
  });
}

export function inTheMiddle(runs: readonly Run[], cells: number, columns: number): Row {
  const before = Math.max(0, Math.floor((columns - cells) / 2));
  return [{ text: ' '.repeat(before) }, ...runs, { text: ' '.repeat(Math.max(0, columns - cells - before)) }];
}
