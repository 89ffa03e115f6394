// A question that stands on the screen, answered out loud: what may be chosen there by the number that stands before it, each
// number said with the one before it, as wherever a number settles a call.
import { type Asking, areNumbered, type Choice, offered } from '../view/view.ts';
import { choicesAPage } from './key-names.ts';
import { countedOn } from './sayings.ts';

/** Said instead of an answer, or of a second word: nothing is called. */
export const leaveAloud = 'leave it be';
export type AnswerAloud = { say: string; value: string };

/** The choices that a key would take as they stand there; none where something is typed. */
export function answersAloud(asking: Asking): readonly AnswerAloud[] {
  const choices = offered(asking);
  const numbers = areNumbered(choices) ? numbersOf(choices) : numbersOnPage(asking, choices);
  return numbers.map(({ number, value }) => ({ say: `the answer is ${countedOn(number, number)}`, value }));
}
type Numbered = { number: string; value: string };
function numbersOnPage({ at }: Asking, choices: readonly Choice[]): Numbered[] {
  const first = Math.floor(Math.max(0, at) / choicesAPage) * choicesAPage;
  return choices.slice(first, first + choicesAPage).map(({ value }, i) => ({ number: String(i + 1), value }));
}
/** "07  part off" by its number alone, "7 nut" as a whole where there is a 7 besides. */
function numbersOf(choices: readonly Choice[]): Numbered[] {
  const numberIn = ({ text }: Choice) => /^\d+/.exec(text)?.[0];
  return choices.flatMap((one) => {
    const number = numberIn(one);
    if (number === undefined) return [];
    const isOnly = choices.filter((other) => numberIn(other) === number).length === 1;
    return [{ number: isOnly ? number : one.text, value: one.value }];
  });
}
