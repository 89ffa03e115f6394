// A key from the hand to what it means here: what it puts away, the question it answers, the call it begins; and what of it is
// no press of its own: held down, or behind a number that was taken already.
import type { Bound } from '../calls/bindings.ts';
import type { Args } from '../calls/form.ts';
import { cap, questionKeys } from '../calls/key-caps.ts';
import type { Row } from '../calls/row.ts';
import { rowById } from '../calls/table.ts';
import type { ScreenId } from '../view/screens.ts';
import { acting } from '../view/view.ts';
import type { BenchState } from './bench-shape.ts';
import { pedalCall } from './habits.ts';
import { heldKey } from './held-key.ts';
import type { Keeping } from './keeping.ts';
import { noKey } from './no-key.ts';
import type { Questions } from './questions.ts';
import { type Around, placedBy } from './walking.ts';

/** Two figures of one number follow one another as fast as this. */
const oneBreathMs = 1000;
/** Later than this behind a number that only pointed, who presses has seen where: that is the call there. */
const aGlanceMs = 2500;

type Hands = {
  get(): BenchState;
  set(some: Partial<BenchState>): void;
  around: Around;
  questions: Questions;
  keeping: Keeping;
  begin(bound: Bound): void;
  carryOut(row: Row, args: Args): void;
  quit(): void;
  /** What stands before any job does: whether this key was for that. */
  putsOntoBench(key: string): boolean;
};

/** @returns what one press does; `inOneGo` where it came in a burst, as a paste does */
export function createPresses({
  get,
  set,
  around: { session, desk },
  questions,
  keeping,
  begin,
  carryOut,
  quit,
  putsOntoBench,
}: Hands): (key: string, inOneGo?: boolean) => void {
  const held = heldKey();
  const written = (): number => session()?.store.getState().ledger.lines.length ?? 0;
  let lastPressMs = Number.NEGATIVE_INFINITY;
  let wroteByAnswer = false;
  /** The key of the call just made, if no other key came since. */
  let calledBy: string | undefined;

  const boundBy = (key: string, screen: ScreenId): Bound | undefined => {
    const { habits, keymap } = get();
    const pedal = pedalCall(habits, key);
    const row = pedal === undefined ? undefined : rowById.get(pedal);
    return row ? { row, binding: { key, on: 'any' } } : keymap.boundTo(key, screen);
  };

  return function press(key, inOneGo = false) {
    const onceMore = calledBy === key;
    calledBy = undefined;
    if (putsOntoBench(key)) return;
    const { view, word, note, greeting } = get();
    const pace = held.press(key, desk().now.awakeMs);
    if (word !== undefined || note !== undefined) set({ word: undefined, note: undefined });
    if (key === 'ctrl+c') return quit();
    if (keeping.learns(key)) return;
    const { awakeMs } = desk().now;
    const sinceMs = awakeMs - lastPressMs;
    const isInOneBreath = sinceMs < oneBreathMs;
    lastPressMs = awakeMs;
    const took = questions.tookItself();
    // A row that only says what is in use, as the head, is followed by its call.
    const isSeen = sinceMs >= aGlanceMs && !wroteByAnswer && !view.asking;
    if (!isSeen && (took === 'number' || (took === 'row' && (wroteByAnswer || view.asking)))) {
      if (key === questionKeys.take)
        return set({ word: `The number was taken without ${cap.take}: this ${cap.take} called nothing.` });
      // A second figure of a number there is none of would be a head, or on a keypad a call.
      // Where a figure is asked for next it is typed, and seen before it is taken.
      const isAskedFor = view.asking !== undefined && view.asking.choices.length === 0;
      if (/^\d$/.test(key) && isInOneBreath && !isAskedFor)
        return set({ word: `The number was taken already: this ${key} called nothing. Once more, and it does.` });
    }
    if (view.asking) {
      const before = written();
      questions.press(key, view.asking, awakeMs, inOneGo);
      wroteByAnswer = written() > before;
      return;
    }
    if (greeting) {
      set({ greeting: undefined });
      // What one presses only to go on calls nothing: on the strip screen it would be a bolt off.
      if (boundBy(key, acting(view))?.row.group !== 'the screen') return;
    }
    const at = session();
    if (at && desk().facing.placing) {
      const placed = placedBy(key, at);
      return placed ? carryOut(rowById.get('placed') as Row, placed) : undefined;
    }
    const bound = boundBy(key, acting(view));
    if (!bound && at) set({ note: noKey(key, acting(view), get().keymap) });
    // Before a job is open only the screen's own steps mean anything.
    if (!bound || (!at && bound.row.group !== 'the screen')) return;
    if (bound.row.group === 'the screen' || pace === 'fine') {
      const before = written();
      const shown = at?.store.getState().answer;
      begin(bound);
      if (get().view.asking) {
        questions.openedBy(key, onceMore, awakeMs);
        // Beneath a question it would be read as an answer to that.
        if (shown?.kind === 'refused' && at?.store.getState().answer === shown)
          at.store.setState({ answer: undefined });
      } else if (written() > before) calledBy = key;
      return;
    }
    const strike = get()
      .keymap.keysOn(acting(view))
      .find((one) => one.row.id === 'strike-last')?.binding.key;
    const undo = strike === undefined ? '' : ` What it called before stands; "${strike}" strikes the last call.`;
    set({ word: `"${key}" is held down or stuck: it is not taken any more until it is let go.${undo}` });
  };
}
