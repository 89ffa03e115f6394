// A line of calls in words: asked for, read, and made one after the other. What can't be read, or lacks something, stays
// open with its reason and what is left of the line; what the job refuses is answered as a key's call is.
import type { Keymap } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import { cap } from '../calls/key-caps.ts';
import { keyOf } from '../calls/key-names.ts';
import { callsIn, readLine } from '../calls/line-reader.ts';
import { askedInWords, type Step } from '../calls/row.ts';
import { plainText } from '../trade/plain-text.ts';
import type { ScreenId } from '../view/screens.ts';
import type { Asking } from '../view/view.ts';
import { plainAsking } from './asking.ts';
import type { Questions } from './questions.ts';
import type { Session } from './session-shape.ts';

type Hands = {
  session(): Session | undefined;
  desk(): Desk;
  questions: Questions;
  takeStep(step: Step): void;
  keymap(): Keymap;
  screen(): ScreenId;
};
/** What stands in the line already, before and behind where it is gone on with, how it is asked for, and the call it is typed for. */
export type LineBegun = { typed?: string; tail?: string; title?: string; row?: string };

/** A call with one thing left open, as "holes … in cover": it is said where it stands. With more of them the first is, and no more stands. */
export function lineBegun(words: string): LineBegun {
  const [typed = '', tail = '', more] = words.split('…');
  return { typed, ...(more === undefined && tail !== '' && { tail }) };
}

const mostSaidLines = 50;

export function createTypedLine({
  session,
  desk,
  questions,
  takeStep,
  keymap,
  screen,
}: Hands): (begun?: LineBegun) => void {
  let saidLines: readonly string[] = [];

  function ask(asking: Asking): void {
    questions.ask(asking, (line) => made(line), saidLines);
  }
  function made(line: string): undefined {
    questions.stop();
    if (line.trim() === '') return undefined;
    saidLines = [...saidLines.filter((one) => one !== line), line].slice(-mostSaidLines);
    const calls = callsIn(line);
    for (const [i, call] of calls.entries()) {
      const why = unread(call);
      // The question of the line is over: a new one stands with what is left of it.
      if (why)
        return void ask({ ...plainAsking('a call in words', 'typed line'), typed: calls.slice(i).join('; '), why });
      const answer = session()?.runLine(call, 'line');
      if (answer?.kind === 'step') takeStep(answer.step);
      // What comes after it may lean on it.
      if (answer?.kind === 'refused') break;
    }
    return undefined;
  }
  function unread(call: string): string | undefined {
    const read = readLine(desk(), plainText(call));
    if ('why' in read) return `${read.why}; ${read.instead}${read.by === undefined ? '' : wayFrom(read.by)}`;
    const besides = askedInWords(read.row, desk(), read.args);
    return besides && `${besides.title} ${besides.inWords}`;
  }

  /** While a line is typed a key is a sign of it: the line is left first. */
  const wayFrom = (call: string): string => `: ${cap.leave}, then ${keyOf(keymap(), screen(), call)}`;

  return ({ typed = '', tail, title = 'a call in words', row = '' } = {}) => {
    if (session()) ask({ ...plainAsking(title, 'typed line'), typed, row, ...(tail !== undefined && { tail }) });
  };
}
