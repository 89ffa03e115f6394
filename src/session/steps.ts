// The steps of the screen itself: where one goes, what is opened, what is set, what is typed. None of them is a call on the
// job; what is typed in words becomes one.

import type { Bound } from '../calls/bindings.ts';
import type { Args } from '../calls/form.ts';
import { cap } from '../calls/key-caps.ts';
import { keyOf, waySaid } from '../calls/key-names.ts';
import { labelLine } from '../calls/label-line.ts';
import type { Row, Step } from '../calls/row.ts';
import { rowById } from '../calls/table.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import { mayLeave } from '../job/open-points.ts';
import type { ScreenId } from '../view/screens.ts';
import { acting, helped, workedOn } from '../view/view.ts';
import { aCall, callChoices, plainAsking, screenChoices } from './asking.ts';
import type { BenchDoors, BenchState, Opener } from './bench-shape.ts';
import { changeSetting } from './changing.ts';
import type { createEar } from './hearing.ts';
import type { Keeping } from './keeping.ts';
import { screenFor } from './leading.ts';
import { newJobOf, newJobTitle } from './new-job.ts';
import type { Questions } from './questions.ts';
import type { Answer, Session } from './session-shape.ts';
import { type LineBegun, lineBegun } from './typed-line.ts';
import {
  type Around,
  backToRow,
  goTo,
  moveAcross,
  moveBy,
  pickedOf,
  rowsLeft,
  startPlacing,
  startWhereItWaits,
} from './walking.ts';

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

const leadingElsewhere = ['to-strip', 'to-build', 'to-leaving', 'to-shelf'];
const isReleased = (ledger: Ledger): boolean => (stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt ?? 0) > 0;
const labelOf = (screen: ScreenId): string => rowById.get(`to-${screen}`)?.label ?? screen;
const pageRows = 10;

/** A refusal, or what was asked once, stands on the screen. */
const hasNo = (at: Session | undefined): boolean =>
  ['refused', 'asked'].includes(at?.store.getState().answer?.kind ?? '');

export function createSteps(floor: Floor): (s: Step) => void {
  const { get, set, around, doors, ask, begin, carryOut, open, refreshShelf, keeping, questions, picks, typeLine } =
    floor;
  const { session, desk, step } = around;
  /** The rows that were picked on the lists of this job as they were left. */
  const left = new WeakMap<Session, Map<ScreenId, readonly string[]>>();
  const rowsOf = (at: Session) => left.get(at) ?? left.set(at, new Map()).get(at);
  const leaveRow = (at = session()) => at && rowsOf(at)?.set(get().view.screen, rowsLeft(around));
  const findRow = (at = session()) => backToRow(around, (at && rowsOf(at)?.get(get().view.screen)) ?? []);
  /** How all stood when Escape found nothing to put away. */
  let stayed: { where: string; ledger: Ledger } | undefined;
  /** What was answered on the screen before: put away with the list it came along to. */
  let cameWith: Answer | undefined;
  const come = () => {
    cameWith = session()?.store.getState().answer;
  };

  function takeStep(s: Step): void {
    const { view, keymap } = get();
    if ('to' in s) {
      if (s.to === 'shelf') void refreshShelf();
      if (s.to === 'settings') return view.screen === s.to ? undefined : step({ to: s.to, from: view.screen });
      // The key that laid it over a screen takes it away.
      if (s.to === 'glance' && view.screen === s.to) return step({ to: view.before });
      // Without a job every other screen would be empty.
      if (!session() && s.to !== 'shelf') return;
      const isThere = view.screen === s.to;
      if (!isThere) session()?.putAway(s.to);
      if (!isThere) leaveRow();
      step({ to: s.to });
      if (!isThere) findRow();
      if (!isThere) come();
      if (s.to === 'todo' && isThere) return step({ move: Number.NEGATIVE_INFINITY, of: 1 });
      const sentTo = startWhereItWaits(around);
      const again = `${keyOf(keymap, 'todo', 'to-todo')} again: the top of the list.`;
      const { area } = desk().facing;
      const where = area === undefined ? 'on the whole car' : `at ${area}`;
      return sentTo?.name === 'mind' ? set({ note: `To be minded ${where}. ${again}` }) : undefined;
    }
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
        step({ to: view.screen === 'help' ? helped(view) : 'help' });
        come();
        return step({ move: view.screen === 'help' ? 0 : Number.NEGATIVE_INFINITY, of: 1 });
      case 'type':
        return typeLine();
      case 'choose':
        return choose();
      case 'new':
        return ask(plainAsking(newJobTitle, 'job name'), (typed) => {
          const { file, line } = newJobOf(typed, get().shelf ?? []);
          void open(file, { fresh: true }, line);
        });
      case 'leave':
        return leave();
      case 'next-call':
        return typeLine(lineBegun(pickedOf(around)?.end ?? ''));
      case 'label':
        return typeLine({
          typed: labelLine(desk()),
          title: 'the label in your hand; skin in minutes, else hours or "40 min"',
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

  function choose(): void {
    const row = pickedOf(around);
    if (!row) return;
    if (get().view.screen === 'shelf') return void takeFromShelf(row.key);
    if (get().view.screen === 'settings') {
      const setting = rowById.get(row.key);
      return setting ? carryOut(setting, {}) : set({ note: `Only the file holds it: ${doors.settingsFile?.path}` });
    }
    if (!row.leads) return set({ note: `No place belongs to this row. ${keysSaid(['next-group', 'leave'])}.` });
    const { screen: from } = get().view;
    if (from === 'leaving' && (row.leadsOn ?? screenFor(row.leads)) === from)
      return set({ note: `That is called here: ${keysSaid(['next-call'])}.` });
    leaveRow();
    goTo(around, row.leads, row.leadsOn);
    const { screen } = get().view;
    if (screen === from) return;
    const { goesOnBy = '' } = row;
    const key = keyOf(get().keymap, from, goesOnBy);
    const goesOn = key === '' ? '' : `, where ${rowById.get(goesOnBy)?.label} goes on: ${key}`;
    set({ note: `${openedFrom(from)}${goesOn}.` });
  }

  /** One that cannot be opened leads to its newest copy, where there is one. */
  async function takeFromShelf(path: string): Promise<void> {
    const brokenNow = () => get().shelf?.find((one) => one.path === path)?.broken;
    // It may have been put right meanwhile, elsewhere.
    if (brokenNow()) await refreshShelf();
    const broken = brokenNow();
    if (!broken) return open(path);
    if (!broken.copy) return set({ word: broken.why });
    await open(broken.copy.path);
  }

  function leave(): void {
    const { view } = get();
    const at = session();
    if (at && desk().facing.hole && !view.from) return at.face({ hole: undefined });
    if (hasNo(at)) {
      const isOfBefore = at?.store.getState().answer === cameWith && !workedOn.has(view.screen);
      at?.store.setState({ answer: undefined });
      if (!isOfBefore) return view.from && set({ note: `Put away. ${openedFrom(view.from)}.` });
    }
    if (view.screen === 'help') return step({ to: helped(view) });
    if (view.screen === 'glance') return step({ to: view.before });
    if (view.screen === 'shelf')
      return set({ note: `${cap.leave} leaves nothing here. ${keysSaid(['choose', 'quit'])}.` });
    if (view.from) return backTo(view.from);
    if (!at) return step({ to: 'shelf' });
    if (view.screen === 'todo' && view.todoFrom !== 'shelf') return backTo(view.todoFrom ?? 'strip');
    if (!workedOn.has(view.screen)) return backTo(view.trail?.at(-1) ?? view.work ?? 'strip');
    // Once too often by habit leads nowhere, and after that to the shelf: never where the same letters mean other calls.
    const { ledger } = at.store.getState();
    const where = JSON.stringify(view);
    const again = stayed?.where === where && stayed.ledger === ledger;
    stayed = again ? undefined : { where, ledger };
    if (again) return takeStep({ to: 'shelf' });
    set({ note: `No question stands here. ${cap.leave} again: the shelf. ${keysSaid(leadingElsewhere)}.` });
  }
  /** To where a list was opened from; a car that may leave does not go by being left. */
  function backTo(screen: ScreenId): void {
    const { view, keymap } = get();
    leaveRow();
    step({ to: screen });
    findRow();
    const back = `Back: ${labelOf(screen)}.`;
    const isReady = view.screen === 'leaving' && mayLeave(desk().ledger, desk().now) && !isReleased(desk().ledger);
    const way = waySaid(keymap, screen, 'release');
    set({ note: isReady ? `Not released: nothing is open, and release was not called (${way}). ${back}` : back });
  }
  const openedFrom = (from: ScreenId): string =>
    `${labelOf(get().view.screen)}, opened from ${labelOf(from)}. ${wayBack(from)}`;
  /** A keypad has no key that leaves: the screen it was opened from is gone to again. */
  function wayBack(from: ScreenId): string {
    const { view, keymap } = get();
    return keymap.pad ? `${keyOf(keymap, view.screen, `to-${from}`)} leads back` : keysSaid(['leave']);
  }
  /** "S Strip, B Build": what leads on from here. */
  function keysSaid(calls: readonly string[]): string {
    const { view, keymap } = get();
    const said = calls.flatMap((id) => {
      const key = id === `to-${view.screen}` ? '' : keyOf(keymap, view.screen, id);
      return key === '' ? [] : [`${key} ${rowById.get(id)?.label}`];
    });
    return said.join(', ');
  }

  return takeStep;
}
