// The one place where colours are, as functions of state. Colour is never alone: each state has a shape and a word.
import type { Mark } from '../calls/listed.ts';

export type Look = { color?: string; bold?: true; dim?: true; inverse?: true; strike?: true };
export type Paint = (look: Look) => Look;

/** NO_COLOR: shapes, words, bold and reverse stay. */
export const paintFor = (colours: boolean): Paint => (colours ? (look) => look : ({ color: _, ...rest }) => rest);

const shapes: Record<Mark, string> = {
  open: '◉',
  half: '⠶',
  gated: '⠿',
  done: '✓',
  found: '⠂',
  struck: '✗',
  plain: ' ',
};
export const shapeOf = (mark: Mark): string => shapes[mark];
const looks: Record<Mark, Look> = {
  // Legible on a light and on a dark ground: yellow and cyan are lost on white, blue on black.
  open: { color: 'magenta', bold: true },
  half: { bold: true },
  gated: { dim: true },
  done: { color: 'green' },
  found: { dim: true },
  struck: { dim: true, strike: true },
  plain: {},
};
export const lookOf = (mark: Mark): Look => looks[mark];
/** Words beside a shape: the shape has the colour, so that a page of them stays quiet. */
export const wordsLook = (mark: Mark): Look =>
  mark === 'found' || mark === 'struck' || mark === 'gated' ? looks[mark] : {};
export const refusedLook: Look = { color: 'red', bold: true };
export const takenLook: Look = { bold: true };
export const quietLook: Look = { dim: true };
export const chosenLook: Look = { inverse: true, bold: true };
export const alarmLook: Look = { color: 'red', bold: true, inverse: true };
export const nextLook: Look = { inverse: true, bold: true };
