// A line of calls in words: asked for, read, and made one after the other. What can't be read, or lacks something, stays
// open with its reason and what is left of the line; what the job refuses is answered as a key's call is, and what a key is
// asked once, or a second time, is asked here too.
import type { Keymap } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import { cap } from '../calls/key-caps.ts';
import { keyOf } from '../calls/key-names.ts';
import { callsIn, type Read, readLine } from '../calls/line-reader.ts';
import { whyNot } from '../calls/pressing.ts';
import { askedInWords, type Binding, type Row, type Step } from '../calls/row.ts';
import { plainText } from '../trade/plain-text.ts';
import type { ScreenId } from '../view/screens.ts';
import { type Asking, typedLine } from '../view/view.ts';
import { besidesAsking, plainAsking, sureAsking } from './asking.ts';
import type { Questions } from './questions.ts';
import type { Answer, Session } from './session-shape.ts';

type Hands = {
  session(): Session | undefined;
  desk(): Desk;
  questions: Questions;
  takeStep(step: Step): void;
  /** Asked about a second time and left. */
  notMade(row: Row): void;
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

/** What was called before it stands, and nobody has called the rest. */
const notCalled = (rest: number): string =>
  rest === 1 ? 'and what follows is not called yet' : `and the ${rest} after it are not called yet`;
const mindWord = 'Mind: ';
const mostSaidLines = 50;
const lineTitle = 'a call in words';
const noKey: Binding = { key: '', on: 'any' };

export function createTypedLine({
  session,
  desk,
  questions,
  takeStep,
  notMade,
  keymap,
  screen,
}: Hands): (begun?: LineBegun) => void {
  let saidLines: readonly string[] = [];
  /** What calls of the line before its last were minded for: the last answer alone is shown. */
  let minded: readonly string[] = [];

  function ask(asking: Asking): void {
    questions.ask(asking, (line) => made(line), saidLines);
  }
  /** The question of the line is over: a new one stands with what is left of it. */
  const askLeft = (left: readonly string[], why: string): void =>
    ask({ ...plainAsking(lineTitle, typedLine), typed: left.join('; '), why });

  function made(line: string): undefined {
    questions.stop();
    if (line.trim() === '') return undefined;
    saidLines = [...saidLines.filter((one) => one !== line), line].slice(-mostSaidLines);
    minded = [];
    goOn(callsIn(line));
    return undefined;
  }
  function goOn(calls: readonly string[]): void {
    const [call, ...rest] = calls;
    if (call === undefined) {
      if (minded.length > 0) session()?.alsoSays(`Before it: ${minded.join('. ')}`);
      return;
    }
    const read = readLine(desk(), plainText(call));
    const why = unread(read);
    if ('why' in read || why !== undefined) return askLeft(calls, why ?? '');
    const besides = read.row.besides?.(desk(), read.args);
    if (besides)
      return put(besidesAsking(read.row, besides), (value) => {
        after(session()?.run(read.row, { ...read.args, [besides.key]: value }, 'line'), call, rest);
      });
    if (read.row.twice && !whyNot({ row: read.row, binding: noKey }, desk(), read.args))
      return put(sureAsking(read.row, read.args), (value) => {
        if (value === 'yes') take(call, rest);
        else notMade(read.row);
      });
    take(call, rest);
  }
  /** What a key is asked too, with its choices. */
  const put = (asking: Asking, then: (value: string) => void): void =>
    questions.ask(asking, (value) => {
      questions.stop();
      then(value);
      return undefined;
    });
  const take = (call: string, rest: readonly string[]): void =>
    after(session()?.runLine(call, 'line', 'asked'), call, rest);
  function after(answer: Answer | undefined, call: string, rest: readonly string[]): void {
    if (answer?.kind === 'step') takeStep(answer.step);
    if (answer?.kind === 'taken' && rest.length > 0 && answer.text.includes(mindWord))
      minded = [...minded, `${call}: ${answer.text.slice(answer.text.indexOf(mindWord))}`];
    if (answer?.kind === 'asked') askLeft([call, ...rest], `asked once: ${cap.take} again means it`);
    else if (answer?.kind !== 'refused') goOn(rest);
    // What comes after one that was refused may lean on it: it is not called, and stays to be gone on with.
    else if (rest.length > 0) askLeft([call, ...rest], `${answer.text}; ${answer.instead}; ${notCalled(rest.length)}`);
  }
  function unread(read: Read): string | undefined {
    if ('why' in read) return `${read.why}; ${read.instead}${read.by === undefined ? '' : wayFrom(read.by)}`;
    const besides = askedInWords(read.row, desk(), read.args);
    return besides && `${besides.title} ${besides.inWords}`;
  }

  /** While a line is typed a key is a sign of it: the line is left first. */
  const wayFrom = (call: string): string => `: ${cap.leave}, then ${keyOf(keymap(), screen(), call)}`;

  return ({ typed = '', tail, title = lineTitle, row = '' } = {}) => {
    if (session()) ask({ ...plainAsking(title, typedLine), typed, row, ...(tail !== undefined && { tail }) });
  };
}
