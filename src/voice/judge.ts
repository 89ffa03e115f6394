// Whether what the decoders made of an utterance is a call. All that heard must agree word for word, and each word must fit
// well enough. Anything else is asked again, never guessed.

export type Decoded = {
  /** Words in order, without silence. */
  words: readonly { word: string /** Per frame; nearer to nought fits better. */; fit: number; frames: number }[];
};
export type Heard = { phrase: string } | { unsure: string } | 'nothing';

/** Fits below are no word: found on the tuning voices over noise, see tests/bench/voice.ts. */
const floors = { whole: -75, word: -110 };
const phraseOf = (decoded: Decoded): string => decoded.words.map(({ word }) => word).join(' ');
function fitOf({ words }: Decoded): number {
  const frames = words.reduce((sum, one) => sum + one.frames, 0);
  return frames === 0 ? 0 : words.reduce((sum, one) => sum + one.fit * one.frames, 0) / frames;
}
const worstFit = ({ words }: Decoded): number => Math.min(...words.map(({ fit }) => fit));

export function judged(all: readonly Decoded[], floor = floors): Heard {
  const [first] = all;
  if (!first || all.every(({ words }) => words.length === 0)) return 'nothing';
  const phrase = phraseOf(first);
  if (all.some((decoded) => phraseOf(decoded) !== phrase)) return { unsure: phrase };
  const poor = all.some((decoded) => fitOf(decoded) < floor.whole || worstFit(decoded) < floor.word);
  return poor ? { unsure: phrase } : { phrase };
}
