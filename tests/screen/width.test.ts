// The width of characters that may reach the screen, held against string-width, by which Ink measures on its own.
import stringWidth from 'string-width';
import { expect, it } from 'vitest';
import { cellsOf } from '../../src/screen/width.ts';
import { plainText } from '../../src/trade/plain-text.ts';

it('a character takes as many cells as string-width says', () => {
  const otherwise: string[] = [];
  // All up to the kana; of the many beyond, which stand in few large blocks, one here and there.
  for (let at = 0x20; at < 0x11_0000; at += at < 0x3100 ? 1 : 61) {
    const char = String.fromCodePoint(at);
    if (/[\p{Cn}\p{Cs}\p{Co}]/u.test(char) || plainText(char) !== char) continue;
    if (cellsOf(char) !== stringWidth(char)) otherwise.push(at.toString(16));
  }
  expect(otherwise).toEqual([]);
});
