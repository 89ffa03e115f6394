// The voice at the bench: a phrase that was heard becomes a call, a step, or the answer to the question that stands there.
import type { Bound } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import { questionKeys } from '../calls/key-caps.ts';
import { meantBy, type Step } from '../calls/row.ts';
import type { Asking } from '../view/view.ts';
import type { Bench, BenchState } from './bench-shape.ts';
import { answeredAloud, createEar, type Ear, type Heard, heededAt, howAloud } from './hearing.ts';
import type { Questions } from './questions.ts';
import type { Answer, Session } from './session-shape.ts';

type Hands = {
  get(): BenchState;
  set(some: Partial<BenchState>): void;
  desk(): Desk;
  session(): Session | undefined;
  questions: Questions;
  takeStep(step: Step): void;
  begin(bound: Bound): void;
  show(answer: Answer | undefined): void;
};

export function createVoiced({ get, set, desk, session, questions, takeStep, begin, show }: Hands): {
  ear: Ear;
  hear: Bench['hear'];
  heed: Bench['heed'];
} {
  const ear = createEar({
    desk,
    run(row, args) {
      const meant = meantBy(row, desk(), args);
      if ('step' in meant) takeStep(meant.step);
      // Of several answers one is chosen on the screen, by its number.
      else if (row.besides?.(desk(), args)) begin({ row, binding: { key: '', on: 'any', args, fresh: true } });
      else return session()?.run(row, args, 'voice');
      return undefined;
    },
  });
  function hear(what: Heard): void {
    const { asking } = get().view;
    if (what !== 'nothing' && asking && ear.isOn()) return answer(asking, what);
    if (what !== 'nothing') set({ greeting: undefined, word: undefined, note: undefined });
    const { answer: answered, word } = ear.hear(what);
    set({ listening: ear.isOn(), ...(word !== undefined && { heard: word, note: word }) });
    if (answered?.kind === 'refused' && !answered.refusal) set({ note: `${answered.text}; ${answered.instead}` });
    show(answered);
    ask();
  }
  /** A question on the screen is answered first: half of a call by key and half by another phrase would be a guess. */
  function answer(asking: Asking, what: Exclude<Heard, 'nothing'>): void {
    const said = answeredAloud(asking, what);
    if ('word' in said) return set({ heard: said.word, note: said.word });
    set({ heard: undefined, note: undefined });
    if ('leave' in said) return questions.press(questionKeys.leave, asking, desk().now.awakeMs);
    questions.choose(said.choose);
    ask();
  }
  function ask(): void {
    const { asking } = get().view;
    if (asking && ear.isOn()) set({ heard: `${asking.title}: ${howAloud(asking)}`, note: howAloud(asking) });
  }
  return {
    ear,
    hear,
    heed() {
      const { asking } = get().view;
      return asking && ear.isOn() ? heededAt(asking) : ear.heed();
    },
  };
}
