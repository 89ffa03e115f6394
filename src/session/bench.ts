// The bench: the shelf of jobs, the one that is open, and what is on view. A key press or a typed word goes in here and
// comes out as a call on the session or as a step of the view. It paints nothing.

import { createStore } from 'zustand/vanilla';
import type { Bound } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import { cap, questionKeys } from '../calls/key-caps.ts';
import type { Rows } from '../calls/listed.ts';
import { settingRows } from '../calls/lists/settings.ts';
import { shelfRows } from '../calls/lists/shelf.ts';
import { listedOn } from '../calls/lists.ts';
import { meantBy, type Row } from '../calls/row.ts';
import { rowById } from '../calls/table.ts';
import { emptyLedger } from '../job/ledger.ts';
import { firstFacing } from '../view/facing.ts';
import type { ScreenId } from '../view/screens.ts';
import { acting, firstView, helped, type ViewStep, viewed } from '../view/view.ts';
import type { Bench, BenchDoors, BenchState } from './bench-shape.ts';
import { freshName } from './fresh-name.ts';
import { createGathering } from './gathering.ts';
import { keymapFor, pedalCall, standardHabits, workshopOf } from './habits.ts';
import { handPace, heldKey } from './held-key.ts';
import { createKeeping } from './keeping.ts';
import { noKey } from './no-key.ts';
import { createOntoBench } from './onto-bench.ts';
import { createQuestions } from './questions.ts';
import type { Answer, Session } from './session-shape.ts';
import { createSteps } from './steps.ts';
import { createTypedLine, type LineBegun } from './typed-line.ts';
import { createVoiced } from './voiced.ts';
import { type Around, keepPicked, onHoles, pickedOf, placedBy, rowToRead } from './walking.ts';

/** Two figures of one number follow one another as fast as this. */
const oneBreathMs = 1000;

export function createBench(doors: BenchDoors): Bench {
  const habits = doors.habits ?? standardHabits;
  const store = createStore<BenchState>(() => ({
    view: firstView,
    leaving: false,
    ...(doors.word !== undefined && { word: doors.word }),
    habits,
    keymap: keymapFor(habits),
  }));
  const { getState: get, setState: set } = store;
  store.subscribe((b, before) => {
    if (b.session !== before.session || b.habits !== before.habits) b.session?.suits(workshopOf(b.habits));
  });
  const step = (s: ViewStep) => set((b) => ({ view: viewed(b.view, s) }));
  const held = heldKey();
  const byHand = handPace();
  const keeping = createKeeping({ get: () => get().habits, set, ...(doors.keep && { toFile: doors.keep }) });

  const session = (): Session | undefined => get().session;
  const desk = (): Desk =>
    session()?.desk() ?? {
      ledger: emptyLedger,
      facing: firstFacing,
      now: { atMs: 0, zoneMin: 0, run: 0, awakeMs: 0 },
      plans: () => [],
      ...workshopOf(get().habits),
    };
  const listed = (): Rows => {
    const { view, shelf, keymap } = get();
    if (view.screen === 'shelf') return shelfRows(shelf ?? []);
    if (view.screen === 'settings')
      return settingRows({ ...get().habits, speaking: get().speaking === true, file: doors.settingsFile });
    return listedOn(acting(view), helped(view), desk(), keymap);
  };
  const around: Around = { view: () => get().view, session, desk, listed, step };
  const questions = createQuestions(step, () => get().view.asking, {
    pad: () => get().keymap.pad,
    fresh: (asking) => freshName(desk(), asking),
    left: ({ row }) => notMade(rowById.get(row)),
  });

  function ask(asking: Parameters<typeof questions.ask>[0], then: (text: string) => void, recall?: readonly string[]) {
    questions.ask(
      asking,
      (text) => {
        questions.stop();
        if (text.trim() !== '') then(text);
        return undefined;
      },
      recall,
    );
  }

  const ontoBench = createOntoBench({ get, set, doors, ask, carryOut, press });

  const written = (): number => session()?.store.getState().ledger.lines.length ?? 0;
  let lastPressMs = Number.NEGATIVE_INFINITY;
  let wroteByAnswer = false;
  /** The key of the call just made, if no other key came since. */
  let calledBy: string | undefined;

  function press(key: string, inOneGo = false): void {
    const onceMore = calledBy === key;
    calledBy = undefined;
    if (ontoBench.putsBy(key)) return;
    const { view, word, note, greeting } = get();
    const pace = held.press(key, desk().now.awakeMs);
    if (word !== undefined || note !== undefined) set({ word: undefined, note: undefined });
    if (key === 'ctrl+c') return quit();
    if (keeping.learns(key)) return;
    const { awakeMs } = desk().now;
    const isInOneBreath = awakeMs - lastPressMs < oneBreathMs;
    lastPressMs = awakeMs;
    const took = questions.tookItself();
    // A row that only says what is in use, as the head, is followed by its call.
    if (took === 'number' || (took === 'row' && (wroteByAnswer || view.asking))) {
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
  }
  const boundBy = (key: string, screen: ScreenId): Bound | undefined => {
    const { habits, keymap } = get();
    const pedal = pedalCall(habits, key);
    const row = pedal === undefined ? undefined : rowById.get(pedal);
    return row ? { row, binding: { key, on: 'any' } } : keymap.boundTo(key, screen);
  };
  // On strip and build the arrows point at a hole, which the calls are about by themselves.
  const picks = (): Args => (onHoles(get().view) ? {} : (pickedOf(around)?.picks ?? {}));
  const typeLine = createTypedLine({
    session,
    desk,
    questions,
    takeStep: (s) => takeStep(s),
    notMade,
    keymap: () => get().keymap,
    screen: () => acting(get().view),
  });
  const lineFor = (begun: LineBegun): boolean => {
    // A line is no work for a keypad.
    if (get().keymap.pad) return false;
    typeLine(begun);
    return true;
  };
  const { begin, again, asksWhich } = createGathering({ around, questions, picks, carryOut, notMade, lineFor });

  /** Asked about and left: it says so, or one would look for what it came to. */
  function notMade(row: Row | undefined): void {
    if (row && session()) set({ note: row.notMade ?? `Left: "${row.label}" was not called.` });
  }
  function carryOut(row: Row, args: Args, isChosen = false): void {
    const meant = meantBy(row, desk(), args);
    if ('step' in meant) return takeStep(meant.step);
    const at = session();
    if (!at) return;
    if (isTooSoon(row, at)) {
      const words = `Too quick for a hand: this "${row.label}" was not called; once more when it is made.`;
      return set({ word: words });
    }
    const { length } = at.store.getState().ledger.lines;
    const picked = onHoles(get().view) ? undefined : pickedOf(around)?.key;
    const { pad } = get().keymap;
    const answer = at.run(row, args, pad ? 'pad' : 'key', isChosen);
    show(answer);
    // K4: a keypad has no key left for it, so the refusal asks.
    const wantsCount = answer.kind === 'refused' && answer.refusal?.code === 'holes-not-counted';
    if (pad && wantsCount) return begin({ row: rowById.get('holes') as Row, binding: { key: '', on: 'any' } });
    // In the log the newest line comes first; what was picked stays picked.
    const more = at.store.getState().ledger.lines.length - length;
    if (get().view.screen === 'log' && more > 0) step({ move: more, of: listed().length });
    else if (more > 0) keepPicked(around, rowToRead(around, at.store.getState().ledger, picked));
  }
  function isTooSoon({ id, leastMs }: Row, at: Session): boolean {
    const isSoon = leastMs !== undefined && byHand.isTooSoon(id, leastMs, desk().now.awakeMs);
    const { answer } = at.store.getState();
    return isSoon && answer?.kind === 'taken' && answer.call === id;
  }
  function show(answer: Answer | undefined): void {
    if (answer?.kind === 'step') takeStep(answer.step);
  }

  function quit(): void {
    set({ leaving: true });
  }

  const takeStep = createSteps({
    get,
    set,
    around,
    doors,
    questions,
    keeping,
    ear: () => ear,
    ask,
    picks,
    begin,
    typeLine,
    again,
    asksWhich,
    carryOut,
    open: ontoBench.open,
    refreshShelf: ontoBench.refreshShelf,
  });
  const { ear, hear, heed } = createVoiced({ get, set, desk, session, questions, takeStep, begin, show });

  if (!doors.shelfLater) void ontoBench.refreshShelf();
  return {
    hear,
    heed,
    ears: (are, why) => set({ listening: are ? ear.isOn() : undefined, ...(why !== undefined && { word: why }) }),
    tell: (line) => set({ word: [get().word, line].filter(Boolean).join(' ') }),
    store,
    press,
    type(text) {
      if (get().view.asking) questions.type(text);
    },
    listed,
    desk,
    open: (path) => ontoBench.open(path),
    quit,
    inFront() {
      if (get().view.screen !== 'shelf') return;
      void doors.jobs().then((shelf) => {
        // Read anew under the hand: the job pointed at stays the one that is opened.
        const picked = get().view.screen === 'shelf' ? pickedOf(around)?.key : undefined;
        set({ shelf });
        keepPicked(around, picked);
      });
    },
  };
}
