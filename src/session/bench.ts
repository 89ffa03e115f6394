// The bench: the shelf of jobs, the one that is open, and what is on view. A key press or a typed word goes in here and
// comes out as a call on the session or as a step of the view. It paints nothing.
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Bound, Keymap } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import { callsIn } from '../calls/line-reader.ts';
import type { Rows } from '../calls/listed.ts';
import { type SettingsFile, settingRows } from '../calls/lists/settings.ts';
import { type OnTheShelf, shelfRows } from '../calls/lists/shelf.ts';
import { listedOn } from '../calls/lists.ts';
import { type Pressing, pressing } from '../calls/pressing.ts';
import { meantBy, type Row, type Step } from '../calls/row.ts';
import { rowById } from '../calls/table.ts';
import { emptyLedger } from '../job/ledger.ts';
import { firstFacing } from '../view/facing.ts';
import type { ScreenId } from '../view/screens.ts';
import { acting, firstView, type View, type ViewStep, viewed } from '../view/view.ts';
import {
  aCall,
  callChoices,
  freshArea,
  notAsked,
  plainAsking,
  pressingAfter,
  questionOf,
  screenChoices,
  yesOrNo,
} from './asking.ts';
import { changeSetting } from './changing.ts';
import { type Habits, keymapFor, pedalCall, standardHabits, workshopOf } from './habits.ts';
import { createEar, type Heard } from './hearing.ts';
import { heldKey } from './held-key.ts';
import { createKeeping } from './keeping.ts';
import { greetingOf, questionsOnOpening } from './opening.ts';
import { createQuestions } from './questions.ts';
import type { Answer, Session } from './session.ts';
import { withNextOfKind } from './unasked.ts';
import {
  type Around,
  goTo,
  keepPicked,
  moveBy,
  onHoles,
  pickedOf,
  placedBy,
  startPlacing,
  startWhereItWaits,
} from './walking.ts';

export type BenchState = {
  view: View;
  session?: Session;
  /** Undefined until it was read. */
  shelf?: readonly OnTheShelf[];
  /** What the shelf or the opening of a job has to say; a job's own answers are its session's. */
  word?: string;
  /** What a key of the screen itself came to: keypad on, sounds off. */
  note?: string;
  /** Said on opening a job again, until the first key. */
  greeting?: readonly string[];
  /** What stands over it; without one, that it is how the job was left. */
  greetingHead?: string | undefined;
  /** Whether it listens; undefined where there is no recogniser. */
  listening?: boolean;
  /** Answers are spoken. */
  speaking?: boolean;
  /** What was asked or told about a phrase that was heard. */
  heard?: string;
  leaving: boolean;
  habits: Habits;
  keymap: Keymap;
};
export type Bench = {
  store: StoreApi<BenchState>;
  /** A key by its name: "enter", "escape", "a", "S", "up". */
  press(key: string): void;
  /** Text pasted or typed at once; it counts only where something is asked. */
  type(text: string): void;
  listed(): Rows;
  desk(): Desk;
  open(path: string): Promise<void>;
  /** A phrase an outside recogniser heard. */
  hear(what: Heard): void;
  /** What may be said next. */
  heed(): ReturnType<ReturnType<typeof createEar>['heed']>;
  /** Tells whether a recogniser is there, and why none is. */
  ears(are: boolean, why?: string): void;
  /** One line for whoever is at the bench, after what stands there to be read. */
  tell(line: string): void;
  quit(): void;
};
/** Opens a job; `fresh` makes it, `withoutLineAt` goes on without a last line that does not hold. Throws a fault. */
export type Opener = (
  named: string,
  how: { fresh?: boolean; withoutLineAt?: number; look?: boolean },
) => Promise<Session>;
export type BenchDoors = {
  /** Read when the bench is made, and again whenever it is gone to. */
  jobs(): Promise<readonly OnTheShelf[]>;
  /** A job is opened at once: the shelf is not read before it is gone to. */
  shelfLater?: boolean;
  open: Opener;
  habits?: Habits;
  /** What of the settings only the file holds, and where it is. */
  settingsFile?: SettingsFile;
  /** What is wrong with the settings, told once. */
  word?: string | undefined;
  /** How to get a recogniser, or a speaking program, where there is none. */
  howToHear?: string;
  howToSpeak?: string;
  /** Keeps what was set on the bench; the words of a fault when it could not. */
  keep?(habits: Habits): Promise<string | undefined>;
};

const pageRows = 10;
const mostSaidLines = 50;
/** Groups whose calls are made one after the other on the next hole or turn: what a pedal repeats. */
const repeatable: ReadonlySet<string> = new Set(['strip', 'build', 'check rotation']);

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
  /** The call whose slots are being asked for one after the other. */
  let gathering: Pressing | undefined;
  /** Keys pressed while a job is being opened: they are meant for it. */
  let pressedMeanwhile: string[] | undefined;
  let saidLines: readonly string[] = [];
  let lastCall: Bound | undefined;
  /** The next call asks which one it is about, whatever comes next by itself. */
  let which = false;
  let unasked = true;
  const held = heldKey();
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
    return listedOn(acting(view), view.before, desk(), keymap);
  };
  const around: Around = { view: () => get().view, session, desk, listed, step };
  const questions = createQuestions(step, () => get().view.asking, {
    pad: () => get().keymap.pad,
    freshArea: () => freshArea(desk()),
  });

  async function refreshShelf(): Promise<void> {
    set({ shelf: await doors.jobs() });
  }
  async function open(named: string, how: Parameters<Opener>[1] = {}): Promise<void> {
    // The job in hand is gone back to: opened again it would find itself in use.
    if (session()?.job.path === named && how.withoutLineAt === undefined)
      return step({ to: get().view.before === 'settings' ? 'strip' : get().view.before });
    if (session()?.store.getState().notSaved && how.withoutLineAt === undefined)
      return set({
        word: 'A call of the job in hand is NOT SAVED: save it first, or leave the program, which lists it.',
      });
    pressedMeanwhile = [];
    try {
      const opened = await doors.open(named, how);
      await session()?.close();
      if (how.fresh) opened.runLine(`job "${named.replaceAll('"', '')}"`, 'key');
      opening(named, opened);
    } catch (thrown) {
      set({ word: thrown instanceof Error ? thrown.message : String(thrown) });
      if (get().shelf === undefined) void refreshShelf();
    } finally {
      const keys = pressedMeanwhile ?? [];
      pressedMeanwhile = undefined;
      for (const key of keys) press(key);
    }
  }
  /** What a job has to say and to ask when it comes onto the bench. */
  function opening(name: string, opened: Session): void {
    set((b) => ({
      session: opened,
      ...greetingOf(opened, b.word),
      view: viewed({ ...b.view, at: {} }, { to: 'strip' }),
    }));
    questionsOnOpening(opened, ask, {
      timeIsRight: () => carryOut(rowById.get('clock-right') as Row, {}),
      goOnWithout: (byte) => void goOnWithout(name, byte),
    });
  }
  /** The job was open to look; it is let go first, so that it can be opened to write. */
  async function goOnWithout(named: string, byte: number): Promise<void> {
    await session()?.close();
    set({ session: undefined });
    await open(named, { withoutLineAt: byte });
  }

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

  function press(key: string): void {
    if (pressedMeanwhile) return void pressedMeanwhile.push(key);
    const { view, word, note, greeting } = get();
    const pace = held.press(key, desk().now.awakeMs);
    if (word !== undefined || note !== undefined) set({ word: undefined, note: undefined });
    if (key === 'ctrl+c') return quit();
    if (keeping.learns(key)) return;
    if (view.asking) return questions.press(key, view.asking);
    if (greeting) {
      set({ greeting: undefined });
      // What one presses only to go on calls nothing: on the strip screen it would be a bolt off.
      if (key === 'enter' || key === 'space') return;
    }
    const at = session();
    if (at && desk().facing.placing) {
      const placed = placedBy(key, at);
      return placed ? carryOut(rowById.get('placed') as Row, placed) : undefined;
    }
    const bound = boundBy(key, acting(view));
    // Before a job is open only the screen's own steps mean anything.
    if (!bound || (!at && bound.row.group !== 'the screen')) return;
    if (bound.row.group === 'the screen' || pace === 'fine') return begin(bound);
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
  function begin(bound: Bound): void {
    if (repeatable.has(bound.row.group)) lastCall = bound;
    gathering = pressing(bound, picks());
    unasked = !which;
    which = false;
    nextQuestion();
  }
  function nextQuestion(): void {
    if (!gathering) return;
    if (unasked) gathering = withNextOfKind(gathering, desk());
    const question = questionOf(gathering, desk());
    const stop = question && notAsked(gathering, question, desk());
    if (stop) {
      gathering = undefined;
      questions.stop();
      return session()?.refuse(stop);
    }
    if (question) return questions.ask(question, answered);
    const { bound, args } = gathering;
    gathering = undefined;
    questions.stop();
    const { sure: _, ...said } = args;
    carryOut(bound.row, said);
  }
  function answered(text: string): { why: string } | undefined {
    const { asking } = get().view;
    if (!gathering || !asking) return undefined;
    const after = pressingAfter(gathering, asking, text, desk());
    if (after === 'given up') return questions.stop() as undefined;
    if ('why' in after) return after;
    gathering = after;
    nextQuestion();
    return undefined;
  }

  function carryOut(row: Row, args: Args): void {
    const meant = meantBy(row, desk(), args);
    if ('step' in meant) return takeStep(meant.step);
    const at = session();
    if (!at) return;
    const { length } = at.store.getState().ledger.lines;
    const picked = onHoles(get().view) ? undefined : pickedOf(around)?.key;
    const { pad } = get().keymap;
    const answer = at.run(row, args, pad ? 'pad' : 'key');
    show(answer);
    // K4: a keypad has no key left for it, so the refusal asks.
    const wantsCount = answer.kind === 'refused' && answer.refusal?.code === 'holes-not-counted';
    if (pad && wantsCount) return begin({ row: rowById.get('holes') as Row, binding: { key: '', on: 'any' } });
    // In the log the newest line comes first; what was picked stays picked.
    const more = at.store.getState().ledger.lines.length - length;
    if (get().view.screen === 'log' && more > 0) step({ move: more, of: listed().length });
    else if (more > 0) keepPicked(around, picked);
  }
  function show(answer: Answer | undefined): void {
    if (answer?.kind === 'step') takeStep(answer.step);
  }

  function takeStep(s: Step): void {
    const { view, keymap } = get();
    if ('to' in s) {
      if (s.to === 'shelf') void refreshShelf();
      if (s.to === 'settings') return view.screen === s.to ? undefined : step({ to: s.to, from: view.screen });
      // Without a job every other screen would be empty.
      if (!session() && s.to !== 'shelf') return;
      step({ to: s.to });
      return startWhereItWaits(around);
    }
    switch (s.step) {
      case 'up':
      case 'down':
        return moveBy(around, s.step === 'up' ? -1 : 1);
      case 'page-up':
      case 'page-down':
        return moveBy(around, s.step === 'page-up' ? -pageRows : pageRows);
      case 'help':
        step({ to: view.screen === 'help' ? view.before : 'help' });
        return step({ move: view.screen === 'help' ? 0 : Number.NEGATIVE_INFINITY, of: 1 });
      case 'type':
        return typeLine('');
      case 'choose':
        return choose();
      case 'new':
        return ask(plainAsking('new job: its name', 'job name'), (name) => void open(name.trim(), { fresh: true }));
      case 'leave':
        return leave();
      case 'next-call':
        return typeLine((pickedOf(around)?.end ?? '').split('…')[0] ?? '');
      case 'place':
        return startPlacing(around);
      case 'more': {
        const all = keymap.keysOn(acting(view));
        return ask(aCall('which call', callChoices(all, desk(), picks())), (id) => {
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
        which = true;
        return set({ note: 'Which one? The next call asks, and takes nothing by itself.' });
      case 'same-again':
        return lastCall ? begin(lastCall) : undefined;
      case 'pad':
        return keeping.keep({ keypad: !get().habits.keypad });
      case 'sounds':
        return keeping.keep({ sounds: !get().habits.sounds });
      case 'listening': {
        if (get().listening === undefined)
          return set({ word: doors.howToHear ?? 'Listening needs the program started with --listen.' });
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
        return quit();
      default:
        return;
    }
  }

  function typeLine(typed: string): void {
    if (!session()) return;
    const asking = { ...plainAsking('a call in words', 'typed line'), typed };
    ask(
      asking,
      (line) => {
        saidLines = [...saidLines.filter((one) => one !== line), line].slice(-mostSaidLines);
        for (const call of callsIn(line)) {
          const answer = session()?.runLine(call, 'line');
          show(answer);
          // What comes after it may lean on it.
          if (answer?.kind === 'refused') break;
        }
      },
      saidLines,
    );
  }

  function choose(): void {
    const row = pickedOf(around);
    if (!row) return;
    if (get().view.screen === 'shelf') return void takeFromShelf(row.key);
    if (get().view.screen === 'settings') {
      const setting = rowById.get(row.key);
      return setting ? carryOut(setting, {}) : set({ note: `Only the file holds it: ${doors.settingsFile?.path}` });
    }
    if (row.leads) goTo(around, row.leads, row.leadsOn);
  }

  /** One that cannot be opened leads to its newest copy, where there is one. */
  async function takeFromShelf(path: string): Promise<void> {
    const broken = get().shelf?.find((one) => one.path === path)?.broken;
    if (!broken) return open(path);
    if (!broken.copy) return set({ word: broken.why });
    await open(broken.copy.path, { look: true });
    set({ note: `To look only: ${broken.copy.said}. The job itself is as it was.` });
  }

  function leave(): void {
    const { view } = get();
    const at = session();
    if (at && desk().facing.hole && !view.from) return at.face({ hole: undefined });
    if (at?.store.getState().answer?.kind === 'refused') return at.store.setState({ answer: undefined });
    if (view.screen === 'help' || view.screen === 'glance') return step({ to: view.before });
    if (view.screen === 'shelf')
      return ask(yesOrNo('leave the program', 'leave', 'not yet'), (yes) => (yes === 'yes' ? quit() : undefined));
    if (view.from) return step({ to: view.from });
    if (!at) return step({ to: 'shelf' });
    if (view.screen === 'todo' && view.todoFrom !== 'shelf') return step({ to: view.todoFrom ?? 'strip' });
    if (view.screen !== 'strip') return step({ to: 'strip' });
    void refreshShelf();
    step({ to: 'shelf' });
  }
  function quit(): void {
    set({ leaving: true });
  }

  const ear = createEar({
    desk,
    run(row, args) {
      const at = session();
      const meant = meantBy(row, desk(), args);
      if ('step' in meant) return void takeStep(meant.step);
      const asked = row.besides?.(desk(), args);
      if (asked) return { kind: 'refused', text: asked.title, instead: asked.inWords };
      return at?.run(row, args, 'voice');
    },
  });
  function hear(what: Heard): void {
    // A question on the screen is answered first: half of a call by key and half by voice would be a guess.
    if (what !== 'nothing' && get().view.asking)
      return set({ heard: 'a question stands on the screen: answer it first', note: 'answer this first' });
    if (what !== 'nothing') set({ greeting: undefined, word: undefined, note: undefined });
    const { answer, word } = ear.hear(what);
    set({ listening: ear.isOn(), ...(word !== undefined && { heard: word, note: word }) });
    if (answer?.kind === 'refused' && !answer.refusal) set({ note: `${answer.text}; ${answer.instead}` });
    show(answer);
  }

  if (!doors.shelfLater) void refreshShelf();
  return {
    hear,
    heed: ear.heed,
    ears: (are, why) => set({ listening: are ? ear.isOn() : undefined, ...(why !== undefined && { word: why }) }),
    tell: (line) => set({ word: [get().word, line].filter(Boolean).join(' ') }),
    store,
    press,
    type(text) {
      if (get().view.asking) questions.type(text);
    },
    listed,
    desk,
    open: (path) => open(path),
    quit,
  };
}
