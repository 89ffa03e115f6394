// The same key once more: a refusal that it answers (O5), a question that it means, and a key that only bounced.
import type { Once } from '../calls/row.ts';
import type { Stamp } from '../job/line.ts';
import type { Said } from '../job/said.ts';
import type { Answer } from './session-shape.ts';

/** Sooner, nobody has read what stands on the screen. */
const leastMsToRead = 700;
const isSame = (one: Said, other: Said): boolean => JSON.stringify(one) === JSON.stringify(other);

export function onceMore() {
  let refused: { row: string; said: Said; awakeMs: number } | undefined;
  let asked: { said: Said; answer: Answer; awakeMs: number } | undefined;
  /** What was asked of this call and still stands on the screen. */
  const standing = (said: Said, shown: Answer | undefined) =>
    asked && asked.answer === shown && isSame(asked.said, said) ? asked : undefined;

  return {
    refused: () => refused,
    wasRefused(row: string, said: Said, { awakeMs }: Stamp) {
      refused = { row, said, awakeMs };
    },
    noneRefused() {
      refused = undefined;
    },
    answersRefusal: (row: string, said: Said): boolean => refused?.row === row && isSame(refused.said, said),
    couldBeRead: ({ awakeMs }: Stamp): boolean => awakeMs - (refused?.awakeMs ?? 0) >= leastMsToRead,

    isMeant(said: Said, shown: Answer | undefined, { awakeMs }: Stamp): boolean {
      const one = standing(said, shown);
      return one !== undefined && awakeMs - one.awakeMs >= leastMsToRead;
    },
    /** A key that bounces asks nothing anew: it would never have been asked long enough. */
    asks({ because: text, ...rest }: Once, said: Said, shown: Answer | undefined, { awakeMs }: Stamp): Answer {
      const one = standing(said, shown);
      if (one) return one.answer;
      asked = { said, answer: { kind: 'asked', text, ...rest }, awakeMs };
      return asked.answer;
    },
    noneAsked() {
      asked = undefined;
    },
  };
}
