// What a reader takes for one character, held against Intl.Segmenter, for which it stands in the bundle.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { GraphemeSegmenter } from '../../src/screen/graphemes.ts';

const whole = new Intl.Segmenter(undefined, { granularity: 'grapheme' });
const ours = new GraphemeSegmenter();
const parted = (by: Pick<Intl.Segmenter, 'segment'> | GraphemeSegmenter, text: string) =>
  [...by.segment(text)].map(({ segment, index, input }) => ({ segment, index, input }));

it('every character of the blocks it parts by itself stands alone among such', () => {
  const otherwise: string[] = [];
  for (let at = 1; at < 0x3000; at++) {
    const char = String.fromCharCode(at);
    const text = `a${char}${char}│${char}◉${char}é`;
    if (parted(ours, text).length !== parted(whole, text).length) otherwise.push(at.toString(16));
  }
  expect(otherwise).toEqual([]);
});

it('any text is parted as Intl.Segmenter parts it', () => {
  const char = fc.oneof(fc.constantFrom(...'Hole 7 ▏│─◉✓·éß°µ→⚠☐'), fc.string({ unit: 'binary', maxLength: 2 }));
  fc.assert(
    fc.property(fc.array(char, { maxLength: 20 }), (chars) => {
      const text = chars.join('');
      expect(parted(ours, text)).toEqual(parted(whole, text));
    }),
  );
});
