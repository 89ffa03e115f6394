// The key that opened a question: pressed on by a hand that has not read it, it answers nothing there, nor does an Enter
// meant for the call that would have come next.
import { cap, questionKeys } from '../calls/key-caps.ts';
import { type Asking, offered } from '../view/view.ts';
import { answerOf, isOfTheseOnly } from './answering.ts';
import { leastMsToRead } from './once-more.ts';

type Opener = { key: string; onceMore: boolean; awakeMs: number };

export function openedBy() {
  let opener: Opener | undefined;
  return {
    /** @param onceMore the same key made a call right before: it was pressed once more than there are things of its kind */
    opened(key: string, onceMore: boolean, awakeMs: number) {
      opener = { key, onceMore, awakeMs };
    },
    forget() {
      opener = undefined;
    },
    /** Why this key is put away, and the letter of it that may begin a word; undefined when it is meant. */
    putsAway(key: string, asking: Asking, awakeMs: number): { why: string; letter: string } | undefined {
      if (!opener || asking.typed !== '' || awakeMs - opener.awakeMs >= leastMsToRead) return undefined;
      const { onceMore } = opener;
      const isLetter = /^\p{L}$/u.test(key);
      // A hand that has not stopped has not read.
      if (key === opener.key && (onceMore || isLetter)) {
        opener = { ...opener, awakeMs };
        return { why: `"${key}" opened this, and answers nothing so soon`, letter: isLetter ? key : '' };
      }
      const pointed = offered(asking)[asking.at];
      if (key !== questionKeys.take || !onceMore || !pointed) return undefined;
      opener = { ...opener, awakeMs };
      return { why: `this ${cap.take} came too soon and took nothing; again, it takes ${pointed.text}`, letter: '' };
    },
    /** The letter itself, pressed once too often, is no name of anything. */
    whyNoName(asking: Asking): string | undefined {
      const typed = asking.typed.trim();
      if (typed !== opener?.key || !/^\p{L}$/u.test(typed) || isOfTheseOnly(asking)) return undefined;
      return answerOf(asking) === typed ? `"${typed}" is the key that asks this, and no name` : undefined;
    },
  };
}
