// What is made of utterances: each is heard at several speeds; where the hearings part, their phrases are held to the sound
// one by one, and one that fits clearly better counts. See judge.ts for what counts.
import { alignAll } from './aligning.ts';
import type { Grammar } from './grammar.ts';
import { type Decoded, type Heard, judged, phrasesOf, settled } from './judge.ts';
import { decodeAll, decoders } from './pocketsphinx.ts';

/** Speeds at which phrases are held to the sound: a high voice fits best drawn out, a low one pressed together. */
export const alignedAt = [0.94, 1, 1.05, 1.12] as const;
type How = { nice?: number; oneAfterTheOther?: boolean };

export async function heardIn(
  utterances: readonly Buffer[],
  grammar: Grammar,
  { nice, oneAfterTheOther = false }: How = {},
): Promise<Heard[]> {
  const byDecoder: Decoded[][] = [];
  if (oneAfterTheOther) for (const one of decoders) byDecoder.push(await decodeAll(utterances, grammar, one, nice));
  else byDecoder.push(...(await Promise.all(decoders.map((one) => decodeAll(utterances, grammar, one, nice)))));
  const hearings = utterances.map((_, i) => byDecoder.flatMap((decoded) => decoded[i] ?? []));
  const splits = utterances.flatMap((pcm, i) => {
    const phrases = phrasesOf(hearings[i] ?? []);
    return phrases.length > 1 ? [{ i, pcm, phrases }] : [];
  });
  const fits = splits.length > 0 ? await alignAll(splits, alignedAt, nice) : [];
  const bySplit = new Map(splits.map(({ i, phrases }, s) => [i, { phrases, fits: fits[s] ?? [] }]));
  return hearings.map((all, i) => {
    const split = bySplit.get(i);
    return split ? settled(all, split) : judged(all);
  });
}
