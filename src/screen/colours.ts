// The one place where colours are, as functions of state. Colour is never alone: each state has a shape and a word.
import type { Mark } from '../calls/listed.ts';

/**
 * Numbers of the 256 colours, whose values no theme of a terminal changes. Shapes stand out on black and on white, for
 * every kind of colour vision; words in colour bring their own ground. tests/screen/colour-blind.test.ts measures both.
 */
export const palette = {
  magenta: { ink: 164 },
  green: { ink: 28 },
  warning: { ink: 231, ground: 124 },
  alarm: { ink: 124, ground: 231 },
} as const satisfies Record<string, { ink: number; ground?: number }>;
export type Colour = keyof typeof palette;
export type Look = { color?: Colour; bold?: true; dim?: true; inverse?: true; strike?: true; hidden?: true };
export type Paint = (look: Look) => Look;

export const uncoloured: Paint = ({ color: _, ...rest }) => rest;
/** NO_COLOR: shapes, words, bold and reverse stay. */
export const paintFor = (colours: boolean): Paint => (colours ? (look) => look : uncoloured);

const shapes: Record<Mark, string> = {
  open: '◉',
  half: '⠶',
  // As a thread goes in: lifted, started, drawn up; a rim with nothing in it.
  slack: '⠛',
  on: '⣀',
  snug: '⣤',
  empty: '⣉',
  gated: '⠿',
  done: '✓',
  found: '⠂',
  // To be lifted a little and no further.
  stays: '⠉',
  struck: '✗',
  plain: ' ',
};
export const shapeOf = (mark: Mark): string => shapes[mark];
const looks: Record<Mark, Look> = {
  open: { color: 'magenta', bold: true },
  half: { bold: true },
  slack: { bold: true },
  on: { bold: true },
  snug: { bold: true },
  empty: { color: 'magenta', bold: true },
  gated: { dim: true },
  done: { color: 'green' },
  found: { dim: true },
  stays: {},
  struck: { dim: true, strike: true },
  plain: {},
};
export const lookOf = (mark: Mark): Look => looks[mark];
/** Words beside a shape: the shape has the colour, so that a page of them stays quiet. */
export const wordsLook = (mark: Mark): Look =>
  mark === 'found' || mark === 'struck' || mark === 'gated' ? looks[mark] : {};
/** Red letters on black are lost to whoever sees no red: a refusal is white on red. */
export const refusedLook: Look = { color: 'warning', bold: true };
export const takenLook: Look = { bold: true };
export const quietLook: Look = { dim: true };
export const nextWordsLook: Look = { bold: true };
export const chosenLook: Look = { inverse: true, bold: true };
/** Reversed, so that it stays a band without colours: white on red. */
export const alarmLook: Look = { color: 'alarm', bold: true, inverse: true };
export const nextLook: Look = { inverse: true, bold: true };
