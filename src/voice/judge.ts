// Whether what the decoders made of an utterance is a call. Two must agree word for word, neither may have taken the path
// of mere sounds, and each word must fit well enough. Anything else is asked again, never guessed.

export type Decoded = {
  /** Words in order, without silence. */
  words: readonly { word: string /** Per frame; nearer to nought fits better. */; fit: number; frames: number }[];
};
export type Heard = { phrase: string } | { unsure: string } | 'nothing';

/** Fits below are no word: found on the tuning voices over noise, see tests/bench/voice.ts. */
export const floors = { whole: -1e9, word: -1e9 };
const isSound = (word: string): boolean => word.startsWith('zz');

export const phraseOf = (decoded: Decoded): string => decoded.words.map(({ word }) => word).join(' ');
export function fitOf({ words }: Decoded): number {
  const frames = words.reduce((sum, one) => sum + one.frames, 0);
  return frames === 0 ? 0 : words.reduce((sum, one) => sum + one.fit * one.frames, 0) / frames;
}
export const worstFit = ({ words }: Decoded): number => Math.min(...words.map(({ fit }) => fit));

export function judged(one: Decoded, other: Decoded, floor = floors): Heard {
  const both = [one, other];
  if (both.every(({ words }) => words.length === 0 || words.every(({ word }) => isSound(word)))) return 'nothing';
  const phrase = phraseOf(one);
  if (both.some(({ words }) => words.length === 0 || words.some(({ word }) => isSound(word))))
    return { unsure: phrase };
  if (phrase !== phraseOf(other)) return { unsure: phrase };
  const poor = both.some((decoded) => fitOf(decoded) < floor.whole || worstFit(decoded) < floor.word);
  return poor ? { unsure: phrase } : { phrase };
}
