// The call whose slots are being asked for, one after the other: begun by a key, carried out when nothing is left to ask.
import type { Bound } from '../calls/bindings.ts';
import type { Args } from '../calls/form.ts';
import { type Pressing, pressing } from '../calls/pressing.ts';
import type { Row } from '../calls/row.ts';
import { pressingAfter } from './answering.ts';
import { notAsked, questionOf } from './asking.ts';
import type { Questions } from './questions.ts';
import type { Answer } from './session-shape.ts';
import type { LineBegun } from './typed-line.ts';
import { withNextOfKind } from './unasked.ts';
import type { Around } from './walking.ts';

/** Groups whose calls are made one after the other on the next hole or turn: what a pedal repeats. */
const repeatable: ReadonlySet<string> = new Set(['strip', 'build', 'check rotation']);

export type Gathering = {
  begin(bound: Bound): void;
  /** The last call of the work, once more. */
  again(): void;
  /** The next call asks which one it is about, whatever comes next by itself. */
  asksWhich(): void;
};

type Hands = {
  around: Around;
  questions: Questions;
  picks(): Args;
  /** @param isChosen by an answer to a question, and no key alone */
  carryOut(row: Row, args: Args, isChosen: boolean): void;
  notMade(row: Row): void;
  /** Opens a line in words with the call ready in it, unless there is no keyboard to finish it. */
  lineFor(begun: LineBegun): boolean;
};

export function createGathering({
  around: { view, session, desk },
  questions,
  picks,
  carryOut,
  notMade,
  lineFor,
}: Hands): Gathering {
  let gathering: Pressing | undefined;
  /** As it stood at each question that is answered. */
  let asked: Pressing[] = [];
  /** What was chosen for a call that was then asked about: the same key again means that one. */
  let chosen: { pressing: Pressing; answer: Answer } | undefined;
  let lastCall: Bound | undefined;
  let which = false;

  function begin(bound: Bound): void {
    if (repeatable.has(bound.row.group)) lastCall = bound;
    const isShown = chosen?.answer === session()?.store.getState().answer;
    const kept = isShown && chosen?.pressing.bound.row === bound.row && !which ? chosen : undefined;
    if (!kept) chosen = undefined;
    gathering = kept ? { ...kept.pressing, bound } : { ...pressing(bound, picks()), which };
    asked = [];
    which = false;
    nextQuestion();
  }
  function nextQuestion(): void {
    if (!gathering) return;
    if (!gathering.which) gathering = withNextOfKind(gathering, desk());
    const question = questionOf(gathering, desk());
    const stop = question && notAsked(gathering, question, desk());
    if (stop) {
      const { row } = gathering.bound;
      gathering = undefined;
      questions.stop();
      if (stop.ready && lineFor({ typed: stop.ready.line, title: stop.ready.title, row: row.id })) return;
      return session()?.refuse(row, stop);
    }
    if (question) return questions.ask(question, answered, [], asked.length > 0 ? before : undefined);
    const meant = gathering;
    const { sure: _, ...said } = meant.args;
    const isAnswered = asked.length > 0;
    const isChosen = isAnswered || chosen !== undefined;
    gathering = undefined;
    questions.stop();
    carryOut(meant.bound.row, said, isAnswered);
    const answer = session()?.store.getState().answer;
    chosen = isChosen && answer?.kind === 'asked' ? { pressing: meant, answer } : undefined;
  }
  function before(): void {
    gathering = asked.pop() ?? gathering;
    nextQuestion();
  }
  function answered(text: string): { why: string } | undefined {
    const { asking } = view();
    if (!gathering || !asking) return undefined;
    const after = pressingAfter(gathering, asking, text, desk());
    if (after === 'given up') {
      questions.stop();
      return notMade(gathering.bound.row) as undefined;
    }
    if ('why' in after) return after;
    asked.push(gathering);
    gathering = after;
    nextQuestion();
    return undefined;
  }

  return {
    begin,
    again: () => void (lastCall && begin(lastCall)),
    asksWhich() {
      which = true;
    },
  };
}
