// What comes of a phrase that was heard: a call, a question to say it again, or a second word before a call that is hard
// to take back. It never guesses. Pure but for the doors it is given.
import { answersAloud, leaveAloud } from '../calls/answers-aloud.ts';
import type { Desk } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import { readLine } from '../calls/line-reader.ts';
import { readSaid } from '../calls/read-said.ts';
import { meantBy, type Row } from '../calls/row.ts';
import { blocked } from '../job/decide.ts';
import type { Asking } from '../view/view.ts';
import { isForGood } from './questions.ts';
import type { Answer } from './session-shape.ts';

export type Heard = { phrase: string } | { unsure: string } | 'nothing';
const confirming = { yes: 'really do it', no: leaveAloud } as const;
/** `answer` is what was called; `word` is asked or told. `heed` is what may be said next. */
export type Hearing = { answer?: Answer; word?: string };

export type Ear = {
  hear(what: Heard): Hearing;
  heed(): 'calls' | 'start' | 'second word';
  isOn(): boolean;
  turn(on: boolean): void;
};
type Doors = { desk(): Desk; run(row: Row, args: Args, phrase: string): Answer | undefined };

export function createEar({ desk, run }: Doors): Ear {
  let on = true;
  let waiting: { row: Row; args: Args; phrase: string } | undefined;

  function turn(to: boolean): void {
    on = to;
    waiting = undefined;
  }
  function second({ row, args, phrase }: NonNullable<typeof waiting>, what: string): Hearing {
    waiting = undefined;
    if (what !== confirming.yes) return { word: `not done: ${phrase}` };
    const answer = run(row, args, phrase);
    return answer ? { answer } : {};
  }
  return {
    turn,
    isOn: () => on,
    heed: () => (!on ? 'start' : waiting ? 'second word' : 'calls'),
    hear(what) {
      if (what === 'nothing') return {};
      if (!on) {
        if (!('phrase' in what) || what.phrase !== 'start listening') return {};
        turn(true);
        return { word: 'listening' };
      }
      // What was said to confirm is heard anew; what was to be confirmed is not done by a phrase half heard.
      if ('unsure' in what)
        return { word: waiting ? `say "${confirming.yes}" or "${confirming.no}"` : 'not understood: say it again' };
      if (waiting) return second(waiting, what.phrase);
      if (what.phrase === 'stop listening') {
        turn(false);
        return { word: 'not listening any more: say "start listening"' };
      }
      // Another recogniser may hear what no saying is: such words are read as if typed, where they are two or more.
      const said = readSaid(desk(), what.phrase);
      const read = said ?? (what.phrase.includes(' ') ? readLine(desk(), what.phrase) : undefined);
      if (!read || 'why' in read) return { word: `heard "${what.phrase}", which is no call here: say it again` };
      const asked = askedOf(desk(), read);
      if (asked) {
        waiting = { ...read, args: asked.args, phrase: what.phrase };
        return { word: `${what.phrase}: ${asked.why}; say "${confirming.yes}": ${asked.means}, or "${confirming.no}"` };
      }
      if (read.row.secondWord || read.row.twice !== undefined || strikesMany(read.args)) {
        waiting = { ...read, phrase: what.phrase };
        return { word: `${what.phrase}: say "${confirming.yes}", or "${confirming.no}"` };
      }
      const answer = run(read.row, read.args, what.phrase);
      return answer ? { answer } : {};
    },
  };
}
/** What a key is asked about this call, with the slots of the one answer that means it; a line says that in its own words. */
function askedOf(desk: Desk, { row, args }: Said): { why: string; means: string; args: Args } | undefined {
  const besides = row.besides?.(desk, args);
  if (besides) {
    const [meant, another] = besides.choices.filter(({ value }) => value !== besides.givesUp);
    if (!meant || another) return undefined;
    return { why: besides.title, means: meant.text, args: { ...args, [besides.key]: meant.value } };
  }
  const meant = meantBy(row, desk, args);
  if (!('say' in meant) || blocked(desk.ledger, meant.say, desk.now)) return undefined;
  const once = row.asksOnce?.(desk, meant.say);
  return once && { why: `${once.because}; ${once.instead}, else`, means: `it ${once.again}`, args };
}
type Said = { row: Row; args: Args };
const strikesMany = ({ lines }: Args): boolean => Array.isArray(lines) && lines.length > 1;

/** What may be said while a question stands on the screen. What its answer does for good, or signs, is read first, and answered by a key. */
const answersTo = (asking: Asking) => (isForGood(asking) || isSigned(asking) ? [] : answersAloud(asking));
const isSigned = ({ type, unpointed }: Asking): boolean => type === 'why' && unpointed === true;
export const heededAt = (asking: Asking): { answers: readonly string[] } => ({
  answers: [...answersTo(asking).map(({ say }) => say), leaveAloud],
});
/** How it is answered out loud. */
export function howAloud(asking: Asking): string {
  const [first] = answersTo(asking);
  const how = first ? `say "${first.say}", for the number that stands before it` : 'answer it by its keys';
  return `${how}, or "${leaveAloud}"`;
}
/** What a phrase comes to there: one of its choices, leaving it, or how it is answered. */
export function answeredAloud(
  asking: Asking,
  what: Exclude<Heard, 'nothing'>,
): { choose: string } | { leave: true } | { word: string } {
  const phrase = 'phrase' in what ? what.phrase : undefined;
  if (phrase === leaveAloud) return { leave: true };
  const meant = answersTo(asking).find(({ say }) => say === phrase);
  if (meant) return { choose: meant.value };
  const heard = phrase === undefined ? 'not understood' : `heard "${phrase}", and a question stands on the screen`;
  return { word: `${heard}: ${howAloud(asking)}` };
}
