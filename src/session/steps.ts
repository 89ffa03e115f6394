// The steps of the screen itself: what is moved, opened, set, typed; where one goes stands in going.ts. None of them is a
// call on the job; what is typed in words becomes one.

import type { Bound } from '../calls/bindings.ts';
import type { Args } from '../calls/form.ts';
import { labelLine } from '../calls/label-line.ts';
import type { Row, Step } from '../calls/row.ts';
import { rowById } from '../calls/table.ts';
import { acting } from '../view/view.ts';
import { aCall, callChoices, plainAsking, screenChoices } from './asking.ts';
import type { BenchDoors, BenchState, Opener } from './bench-shape.ts';
import { changeSetting } from './changing.ts';
import { createGoing } from './going.ts';
import type { createEar } from './hearing.ts';
import type { Keeping } from './keeping.ts';
import { newJobOf, newJobTitle } from './new-job.ts';
import type { Questions } from './questions.ts';
import { type LineBegun, lineBegun } from './typed-line.ts';
import { type Around, moveAcross, moveBy, pickedOf, startPlacing } from './walking.ts';

/** What the steps are taken on: the bench, as far as they reach. */
export type Floor = {
  get(): BenchState;
  set(some: Partial<BenchState>): void;
  around: Around;
  doors: BenchDoors;
  questions: Questions;
  keeping: Keeping;
  ear(): Pick<ReturnType<typeof createEar>, 'isOn' | 'turn'>;
  /** Asks something that is no call's; an empty answer is none. */
  ask(asking: Parameters<Questions['ask']>[0], then: (text: string) => void, recall?: readonly string[]): void;
  picks(): Args;
  begin(bound: Bound): void;
  typeLine(begun?: LineBegun): void;
  /** The last call of those that are made one after the other, once more. */
  again(): void;
  asksWhich(): void;
  carryOut(row: Row, args: Args): void;
  open(named: string, how?: Parameters<Opener>[1], first?: string): Promise<void>;
  refreshShelf(): Promise<void>;
};

const pageRows = 10;

export function createSteps(floor: Floor): (s: Step) => void {
  const { get, set, around, doors, ask, begin, carryOut, open, keeping, questions, picks, typeLine } = floor;
  const { session, desk } = around;
  const going = createGoing(floor);

  function takeStep(s: Step): void {
    const { view, keymap } = get();
    if ('to' in s) return going.to(s.to);
    switch (s.step) {
      case 'up':
      case 'down':
        return moveBy(around, s.step === 'up' ? -1 : 1);
      case 'page-up':
      case 'page-down':
        return moveBy(around, s.step === 'page-up' ? -pageRows : pageRows);
      case 'first-row':
      case 'last-row':
        return moveBy(around, s.step === 'first-row' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY);
      case 'next-group':
      case 'group-before':
        return moveAcross(around, s.step === 'next-group' ? 1 : -1);
      case 'help':
        return going.help();
      case 'type':
        return typeLine();
      case 'choose':
        return going.choose();
      case 'new':
        return ask(plainAsking(newJobTitle, 'job name'), (typed) => {
          const { file, line } = newJobOf(typed, get().shelf ?? []);
          void open(file, { fresh: true }, line);
        });
      case 'leave':
        return going.leave();
      case 'next-call':
        return typeLine(lineBegun(pickedOf(around)?.end ?? ''));
      case 'label':
        return typeLine({
          typed: labelLine(desk()),
          title:
            'the label in your hand: name, kind (moisture, anaerobic, non-setting, dry), skin in minutes, full in hours or "40 min"',
        });
      case 'place':
        return startPlacing(around);
      case 'more': {
        const all = keymap.keysOn(acting(view));
        return ask(aCall('which call', callChoices(keymap, acting(view), desk(), picks())), (id) => {
          const bound = all.find((one) => one.row.id === id);
          if (bound) begin(bound);
        });
      }
      case 'screens':
        return ask(aCall('which screen', screenChoices(keymap)), (id) => {
          // What was typed may be none of them.
          const row = rowById.get(id);
          if (row) carryOut(row, {});
        });
      case 'which':
        floor.asksWhich();
        return set({ note: 'Which one? The next call asks, and takes nothing by itself.' });
      case 'same-again':
        return floor.again();
      case 'pad':
        return keeping.keep({ keypad: !get().habits.keypad });
      case 'sounds':
        return keeping.keep({ sounds: !get().habits.sounds });
      case 'listening': {
        if (get().listening === undefined)
          return set({ word: doors.howToHear ?? 'Listening needs the program started with --listen.' });
        const ear = floor.ear();
        ear.turn(!ear.isOn());
        return set({ listening: ear.isOn(), note: ear.isOn() ? 'Listening.' : 'Not listening.' });
      }
      case 'speaking': {
        if (doors.howToSpeak !== undefined) return set({ word: doors.howToSpeak });
        const speaking = !get().speaking;
        return set({ speaking, note: speaking ? 'Answers are spoken.' : 'Answers are not spoken.' });
      }
      case 'set':
        return changeSetting(s.what, get().habits, { keep: keeping.keep, ask: questions.ask });
      case 'pedal':
        return keeping.learnPedals();
      case 'retry':
        return session()?.store.getState().notSaved ? void session()?.retry() : undefined;
      case 'quit':
        return set({ leaving: true });
      default:
        return;
    }
  }

  return takeStep;
}
