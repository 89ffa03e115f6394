// Whether what the hearings of an utterance came to is a call. Where all agree word for word and each word fits, it is. Where
// they part, the phrases were held to the sound one by one: one that fits clearly better counts, if hearings enough had it.
// Anything else is asked again, never guessed.

export type Decoded = {
  /** Words in order, without silence. */
  words: readonly { word: string /** Per frame; nearer to nought fits better. */; fit: number; frames: number }[];
};
export type Heard = { phrase: string } | { unsure: string } | 'nothing';
/** Phrases and how each fits at several speeds, as aligning.ts tells. */
export type Weighed = { phrases: readonly string[]; fits: readonly (readonly (number | undefined)[])[] };

/**
 * Found on the tuning voices over noise and on noise alone, see tests/bench/voice.ts. A fit below a floor is no word. Of
 * hearings that part more is asked: two of three now and then come to the same words over a ratchet alone.
 */
const floors = { agreed: { whole: -75, word: -140 }, parted: { whole: -70, word: -100 } };
/** By how much the best must fit better than the next, at the speed that suits it and over all speeds. */
const clearly = { atBest: 400, overAll: 1200, heardBy: 2 };

const phraseOf = (decoded: Decoded): string => decoded.words.map(({ word }) => word).join(' ');
function fitOf({ words }: Decoded): number {
  const frames = words.reduce((sum, one) => sum + one.frames, 0);
  return frames === 0 ? 0 : words.reduce((sum, one) => sum + one.fit * one.frames, 0) / frames;
}
const worstFit = ({ words }: Decoded): number => Math.min(...words.map(({ fit }) => fit));
const isBelow =
  ({ whole, word }: (typeof floors)['agreed']) =>
  (decoded: Decoded): boolean =>
    fitOf(decoded) < whole || worstFit(decoded) < word;

export const phrasesOf = (all: readonly Decoded[]): string[] => [...new Set(all.map(phraseOf))].filter(Boolean);

export function judged(all: readonly Decoded[]): Heard {
  const [phrase, ...others] = phrasesOf(all);
  if (phrase === undefined) return 'nothing';
  const agree = others.length === 0 && all.every(({ words }) => words.length > 0);
  return agree && !all.some(isBelow(floors.agreed)) ? { phrase } : { unsure: phrase };
}

/** Of hearings that part. */
export function settled(all: readonly Decoded[], { phrases, fits }: Weighed): Heard {
  const worst = -1e6;
  const weighed = phrases
    .map((phrase, i) => {
      const each = (fits[i] ?? []).map((fit) => fit ?? worst);
      return { phrase, atBest: Math.max(worst, ...each), overAll: each.reduce((sum, fit) => sum + fit, 0) };
    })
    .sort((a, b) => b.atBest - a.atBest);
  const [best, ...others] = weighed;
  if (!best) return 'nothing';
  const heard = all.filter((decoded) => phraseOf(decoded) === best.phrase);
  const isClear =
    heard.length >= clearly.heardBy &&
    !heard.some(isBelow(floors.parted)) &&
    others.every(
      (other) => best.atBest - other.atBest >= clearly.atBest && best.overAll - other.overAll >= clearly.overAll,
    );
  return isClear ? { phrase: best.phrase } : { unsure: best.phrase };
}
