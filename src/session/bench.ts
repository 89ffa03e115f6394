// The bench: the shelf of jobs, the one that is open, and what is on view. A key press or a typed word goes in here and
// comes out as a call on the session or as a step of the view. It paints nothing.

import { createStore } from 'zustand/vanilla';
import type { Desk } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import type { Rows } from '../calls/listed.ts';
import { settingRows } from '../calls/lists/settings.ts';
import { shelfRows } from '../calls/lists/shelf.ts';
import { listedOn } from '../calls/lists.ts';
import { meantBy, type Row } from '../calls/row.ts';
import { rowById } from '../calls/table.ts';
import { emptyLedger } from '../job/ledger.ts';
import { firstFacing } from '../view/facing.ts';
import { acting, firstView, helped, type ViewStep, viewed } from '../view/view.ts';
import type { Bench, BenchDoors, BenchState } from './bench-shape.ts';
import { freshName } from './fresh-name.ts';
import { createGathering } from './gathering.ts';
import { keymapFor, standardHabits, workshopOf } from './habits.ts';
import { handPace } from './held-key.ts';
import { createKeeping } from './keeping.ts';
import { createOntoBench } from './onto-bench.ts';
import { createPresses } from './presses.ts';
import { createQuestions } from './questions.ts';
import type { Answer, Session } from './session-shape.ts';
import { createSteps } from './steps.ts';
import { createTypedLine, type LineBegun } from './typed-line.ts';
import { createVoiced } from './voiced.ts';
import { type Around, keepPicked, onHoles, pickedOf, rowToRead } from './walking.ts';

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

  const ontoBench = createOntoBench({ get, set, doors, ask, carryOut, press: (key) => press(key) });

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
  const press = createPresses({
    get,
    set,
    around,
    questions,
    keeping,
    begin,
    carryOut,
    quit,
    putsOntoBench: ontoBench.putsBy,
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
