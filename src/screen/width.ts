// How many cells of the terminal a character takes. Ink asks the same of every text it paints, and is answered from here
// as well (.build/string-width.js): what was laid out by one measure is painted by it.
import { eastAsianWidth } from 'get-east-asian-width';

/** Takes no cell of its own: it is set upon the character before it, or nobody sees it. */
const unseen = /[\p{Mn}\p{Me}\p{Default_Ignorable_Code_Point}\p{Cf}]/u;

const looked = (char: string): number => (unseen.test(char) ? 0 : eastAsianWidth(char.codePointAt(0) as number));

/** What a drawing and its words are made of is looked up once: a cell more than the character takes, 0 where not yet. */
const known = new Uint8Array(0x3000);
function ofUnit(unit: number): number {
  const kept = known[unit] as number;
  if (kept > 0) return kept - 1;
  const cells = unit < 0xad ? 1 : looked(String.fromCharCode(unit));
  known[unit] = cells + 1;
  return cells;
}

/** 0, 1 or 2 cells; one whose width the standard leaves open is narrow. Source: Unicode Standard Annex 11. */
export function widthOf(char: string): number {
  const unit = char.charCodeAt(0);
  return unit < known.length ? ofUnit(unit) : looked(char);
}

/** Cells of a whole text. */
export function cellsOf(text: string): number {
  let sum = 0;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    if (unit < known.length) sum += ofUnit(unit);
    else {
      const char = String.fromCodePoint(text.codePointAt(i) as number);
      sum += looked(char);
      i += char.length - 1;
    }
  }
  return sum;
}
