// What is being asked on the bench and the keys that answer it: choosing, typing, going back to what was typed before.
// What an answer comes to is its asker's.
import { cap, padQuestionKeys, questionKeys } from '../calls/key-caps.ts';
import { choicesAPage } from '../calls/key-names.ts';
import { type Asking, areNumbered, isOfADay, offered, type ViewStep } from '../view/view.ts';
import { answerOf, begunBy, callType, isOfTheseOnly, meantAlready } from './answering.ts';
import { openedBy } from './opened-by.ts';

/** Told the answer in words; a reason is why it can't be read, and the question stays. */
export type Answered = (text: string) => { why: string } | undefined;
export type Questions = {
  /** @param before asks again the question before this one, where there was one */
  ask(asking: Asking, answered: Answered, recall?: readonly string[], before?: () => void): void;
  press(key: string, asking: Asking, awakeMs: number, inOneGo?: boolean): void;
  /** By which key the question that stands was opened, and whether that key had made a call right before. */
  openedBy(key: string, onceMore: boolean, awakeMs: number): void;
  /** One of its choices, however it was said. */
  choose(value: string): void;
  /** Text that was pasted. */
  type(text: string): void;
  stop(): void;
  /** Told once: the key before answered by itself, so that an Enter after it closes a question that is closed already. */
  tookItself(): 'number' | 'row' | undefined;
};

const inNumbers = ({ choices }: Asking): string => choices.map(({ text }, i) => `${i + 1} ${text}`).join(', ');

/** What its answer does is not taken back by a key: it signs, or a line goes. It is to be read first. */
export const isForGood = ({ slot, type }: Asking): boolean => slot === 'sure' || type === 'yes|no';

/** Of several: from there it goes on to the first, since a keypad has no way back. */
const isOnLastPage = (asking: Asking): boolean => {
  const [page, last] = [asking.at, offered(asking).length - 1].map((at) => Math.floor(at / choicesAPage));
  return page !== undefined && page > 0 && page === last;
};

export function createQuestions(
  step: (s: ViewStep) => void,
  asked: () => Asking | undefined,
  { pad, fresh, left }: { pad(): boolean; fresh(asking: Asking): string | undefined; left(asking: Asking): void },
): Questions {
  let answered: Answered | undefined;
  let recalled: readonly string[] = [];
  let before: (() => void) | undefined;
  let byItself: 'number' | 'row' | undefined;
  /** What the last key typed where nothing has it; and the one before this key. */
  let none = '';
  let noneBefore = '';
  const opener = openedBy();

  function stop(): void {
    answered = undefined;
    step({ stopAsking: true });
  }
  function leave(asking: Asking): void {
    stop();
    left(asking);
  }
  function answer(text: string): void {
    const then = answered;
    const before = asked();
    const wrong = then?.(text.trim() === '' ? text : `${text}${before?.tail ?? ''}`);
    if (wrong) return step({ wrong: wrong.why });
    // Another question may stand by now; this one is over.
    if (answered === then && asked() === before) stop();
  }
  function typed(text: string): void {
    const before = asked();
    // Twice asked, it is answered whole: what is typed on from the question before begins neither answer.
    if (before?.slot === 'sure') return step({ wrong: `"${text}" chooses nothing: ${inNumbers(before)}` });
    // One key by habit is put away; with a second behind it a word was begun, and none of it is lost.
    const added = before?.typed === '' ? noneBefore + text : text;
    const hasNone = before && isOfTheseOnly(before) && offered({ ...before, typed: before.typed + added }).length === 0;
    // A key pressed by habit empties no list: what is asked for is one of those that stand there.
    if (hasNone && before.typed === '' && added === text) {
      none = text;
      return step({ wrong: `none of these has "${text}": choose one by its number` });
    }
    step({ type: added });
    if (hasNone) return step({ wrong: `none of these has "${before.typed}${added}"` });
    const asking = asked();
    const meant = asking && meantAlready(asking);
    if (meant === undefined) return;
    answer(meant);
    // Among calls no number is ever gone on with, so that none is followed by an Enter out of habit.
    byItself = asking?.type !== callType && asked()?.why === undefined ? 'number' : undefined;
  }
  /** Half of a known name and Enter: asked once whether it is a new one. */
  function enter(asking: Asking): void {
    // What was typed is not there: the Enter behind it means that, and not the one pointed at.
    if (noneBefore !== '' && asking.at >= 0)
      return step({ wrong: `choose one by its number; ${cap.take} again takes ${offered(asking)[asking.at]?.text}` });
    const noName = opener.whyNoName(asking);
    if (noName) return step({ wrong: noName });
    const known = begunBy(asking);
    const why = `"${asking.typed.trim()}" would be a new one; ${cap.complete} takes ${known[0]}, ${cap.take} again the new one`;
    if (known.length === 0 || asking.why === why) return answer(answerOf(asking));
    step({ wrong: why });
  }
  /** Lines typed before, the last one first. */
  function sayAgain(asking: Asking, by: number): void {
    const at = recalled.indexOf(asking.typed);
    const line = recalled[(at < 0 ? recalled.length : at) + by];
    const { tail: _, ...still } = asking;
    if (line !== undefined) step({ ask: { ...still, typed: line } });
  }
  function move(asking: Asking, by: number): void {
    if (by !== 0 && recalled.length > 0 && asking.choices.length === 0) return sayAgain(asking, by);
    step({ move: by, of: offered(asking).length });
  }

  function erase({ typed }: Asking): void {
    if (typed === '' && before) return before();
    step({ erase: true });
  }

  const byKey: Record<string, (asking: Asking) => void> = {
    [questionKeys.leave]: leave,
    up: (asking) => move(asking, -1),
    down: (asking) => move(asking, 1),
    'page-up': (asking) => move(asking, -choicesAPage),
    'page-down': (asking) => move(asking, choicesAPage),
    left: (asking) => move(asking, 0),
    right: (asking) => move(asking, 0),
    [questionKeys.erase]: erase,
    'ctrl+u': () => step({ empty: true }),
    space: () => typed(' '),
    [questionKeys.take]: enter,
    [questionKeys.complete]: (asking) => answer(begunBy(asking)[0] ?? answerOf(asking)),
  };
  /** On a keypad nothing else is at hand for going back, erasing and turning the page. */
  const byPad: Record<string, (asking: Asking) => void> = {
    [padQuestionKeys.leave]: leave,
    [padQuestionKeys.erase]: erase,
    [padQuestionKeys.page]: (asking) => move(asking, isOnLastPage(asking) ? -asking.at : choicesAPage),
  };

  /** A paste is a text; it chooses nothing. */
  function pasted(text: string): void {
    const asking = asked();
    if (!asking || (!isOfTheseOnly(asking) && !isForGood(asking))) return step({ type: text });
    step({ wrong: 'what is pasted chooses nothing here: choose by its number' });
  }
  function press(key: string, asking: Asking, awakeMs: number, inOneGo = false): void {
    const early = opener.putsAway(key, asking, awakeMs);
    if (early) {
      none = early.letter;
      return step({ wrong: early.why });
    }
    noneBefore = none;
    none = '';
    if (inOneGo && isForGood(asking))
      return step({ wrong: `several keys at one moment answer nothing here: ${inNumbers(asking)}` });
    const said = byKey[key];
    if (said) return said(asking);
    const nothingTyped = asking.typed === '';
    const isUntouched = nothingTyped || asking.typed === asking.begun;
    const isFresh = nothingTyped && key === (pad() ? padQuestionKeys : questionKeys).fresh;
    const name = isFresh ? fresh(asking) : undefined;
    if (name !== undefined) return answer(name);
    const padSaid = pad() && (isUntouched || key === padQuestionKeys.erase) ? byPad[key] : undefined;
    if (padSaid) return padSaid(asking);
    const choices = offered(asking);
    // A day is typed in figures, of which none may be taken before the rest; a keypad has another way to say it.
    const isCounted = !areNumbered(choices) && (pad() || !isOfADay(asking));
    if (nothingTyped && /^[1-9]$/.test(key) && choices.length > 0 && isCounted) {
      const first = Math.floor(Math.max(0, asking.at) / choicesAPage) * choicesAPage;
      const choice = choices[first + Number(key) - 1];
      if (!choice) return step({ wrong: `no row ${key} stands here` });
      answer(choice.value);
      const next = asked();
      // What is typed next, or left out with nothing pointed at, no Enter answers unseen.
      const isPointed = next === undefined || (next.why === undefined && next.choices.length > 0 && next.at >= 0);
      byItself = isPointed ? 'row' : undefined;
      return;
    }
    if ([...key].length === 1) typed(key);
  }

  return {
    ask(asking, then, recall = [], goBack = undefined) {
      answered = then;
      opener.forget();
      none = '';
      recalled = recall;
      before = goBack;
      const begun = asking.typed === '' ? asking : { ...asking, begun: asking.typed };
      step({ ask: goBack ? { ...begun, after: true } : begun });
    },
    press,
    openedBy: opener.opened,
    choose: answer,
    type: pasted,
    stop,
    tookItself() {
      const was = byItself;
      byItself = undefined;
      return was;
    },
  };
}
