// Stands for the package of this name in the bundle: how many cells a text takes on the terminal. Ink measures by it what
// the screen laid out by src/screen/width.ts, so both measure alike; and the first answer of the package compiles all that
// is known of emoji, which takes longer than painting the first frame.
import { stripVTControlCharacters } from 'node:util';
import { cellsOf } from '../src/screen/width.ts';

export default function stringWidth(text) {
  return cellsOf(text.includes('\u001b') ? stripVTControlCharacters(text) : text);
}
