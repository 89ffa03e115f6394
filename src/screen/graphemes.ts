// Parts a text into what a reader takes for one character each, as Intl.Segmenter does, and in no time where every
// character stands alone. Ink compares each row that changed with the one before it this way, which for a drawing took
// a tenth of all a key costs (the bundle has it so, .build/bundle.js). Source: Unicode Standard Annex 29, rule GB999.

/** Characters of which none joins the one before or after it, as long as that is of them as well. */
const allAlone = /^[ -~\u00a1-\u00ac\u00ae-\u02ff\u2010-\u2027\u2190-\u23ff\u2500-\u27bf]*$/;

function* oneByOne(input: string): Generator<{ segment: string; index: number; input: string }> {
  for (let index = 0; index < input.length; index++) yield { segment: input[index] as string, index, input };
}

const { Segmenter } = Intl;
/** In place of `Intl.Segmenter` where graphemes of no certain language are asked for. */
export class GraphemeSegmenter {
  #whole: Intl.Segmenter | undefined;

  segment(text: string): Iterable<{ segment: string; index: number; input: string }> {
    if (allAlone.test(text)) return oneByOne(text);
    this.#whole ??= new Segmenter(undefined, { granularity: 'grapheme' });
    return this.#whole.segment(text);
  }
}
