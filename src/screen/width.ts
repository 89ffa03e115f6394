// How many cells of the terminal a character takes. Ink asks the same of every text it paints, and is answered from here
// as well (.build/string-width.js): what was laid out by one measure is painted by it.
import { eastAsianWidth } from 'get-east-asian-width';

/** Takes no cell of its own: it is set upon the character before it, or nobody sees it. */
const unseen = /[\p{Mn}\p{Me}\p{Default_Ignorable_Code_Point}\p{Cf}]/u;

/** 0, 1 or 2 cells; one whose width the standard leaves open is narrow. Source: Unicode Standard Annex 11. */
export const widthOf = (char: string): number =>
  char < '\u00ad' ? 1 : unseen.test(char) ? 0 : eastAsianWidth(char.codePointAt(0) as number);
