// The bench: the shelf of jobs, the one that is open, and what is on view. A key press or a typed word goes in here and
// comes out as a call on the session or as a step of the view. It paints nothing.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { boundTo } from '../calls/bindings.ts';
import { type Desk, nextBack, nextOff } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import type { Listed, Rows } from '../calls/listed.ts';
import { areaDrawn } from '../calls/lists/map.ts';
import { hangingWords, timeToConfirm } from '../calls/lists/on-return.ts';
import { listedOn } from '../calls/lists.ts';
import { type Pressing, pressing } from '../calls/pressing.ts';
import { meantBy, type Row, type Step } from '../calls/row.ts';
import { rowById } from '../calls/table.ts';
import { emptyLedger } from '../job/ledger.ts';
import { areaOf, named, nameOf } from '../job/subjects.ts';
import { firstFacing } from '../view/facing.ts';
import {
  type Asking,
  acting,
  areNumbered,
  firstView,
  offered,
  type View,
  type ViewStep,
  viewed,
} from '../view/view.ts';
import { answerOf, freshArea, meantAlready, plainAsking, pressingAfter, questionOf } from './asking.ts';
import { screenFor } from './leading.ts';
import type { Answer, Session } from './session.ts';

export type OnTheShelf = { name: string; path: string; said: string };
export type BenchState = {
  view: View;
  session?: Session;
  shelf: readonly OnTheShelf[];
  /** What the shelf or the opening of a job has to say; a job's own answers are its session's. */
  word?: string;
  /** Said on opening a job again, until the first key. */
  greeting?: readonly string[];
  leaving: boolean;
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
  quit(): void;
};
/** Opens a job; `fresh` makes it, `withoutLineAt` goes on without a last line that does not hold. Throws a fault. */
export type Opener = (named: string, how: { fresh?: boolean; withoutLineAt?: number }) => Promise<Session>;
export type BenchDoors = { jobs(): Promise<readonly OnTheShelf[]>; open: Opener };

const pageRows = 10;
const shelfAsk = 'job name';
const lineAsk = 'typed line';
const doubtAsk = 'without the last line';
const mostSaidLines = 50;
const timeAsk = 'the time is right';

/** By how much an arrow key moves a hole on the map, in units of its drawing. */
const moves: Record<string, readonly [number, number]> = { left: [-2, 0], right: [2, 0], up: [0, -2], down: [0, 2] };

const timeAsking = (time: string): Asking => ({
  ...plainAsking(`It is ${time}, and something cures. Is that time right? Time away counts only then.`, timeAsk),
  type: 'yes|no',
  optional: false,
  choices: [
    { value: 'yes', text: 'yes, it is right' },
    { value: 'no', text: 'no, not sure: time away is not counted' },
  ],
});

export function createBench(doors: BenchDoors): Bench {
  const store = createStore<BenchState>(() => ({ view: firstView, shelf: [], leaving: false }));
  const { getState: get, setState: set } = store;
  const step = (s: ViewStep) => set((b) => ({ view: viewed(b.view, s) }));
  /** The call whose slots are being asked for one after the other. */
  let gathering: Pressing | undefined;
  /** Keys pressed while a job is being opened: they are meant for it. */
  let pressedMeanwhile: string[] | undefined;
  let saidLines: readonly string[] = [];
  let doubted: { named: string; byte: number } | undefined;

  const desk = (): Desk =>
    get().session?.desk() ?? {
      ledger: emptyLedger,
      facing: firstFacing,
      now: { atMs: 0, zoneMin: 0, run: 0, awakeMs: 0 },
      plans: [],
    };
  const listed = (): Rows => {
    const { view, shelf } = get();
    if (view.screen === 'shelf') {
      return shelf.map((one) => ({ key: one.path, mark: 'plain', name: '', text: one.name, end: one.said, picks: {} }));
    }
    return listedOn(acting(view), view.before, desk());
  };
  const onHoles = (): boolean => ['strip', 'build'].includes(acting(get().view));
  const picked = (): Listed | undefined => {
    const { view } = get();
    return listed().at(view.at[view.screen] ?? 0);
  };

  async function refreshShelf(): Promise<void> {
    set({ shelf: await doors.jobs() });
  }
  async function open(named: string, how: Parameters<Opener>[1] = {}): Promise<void> {
    // The job in hand is gone back to: opened again it would find itself in use.
    if (get().session?.job.path === named && how.withoutLineAt === undefined) return step({ to: get().view.before });
    pressedMeanwhile = [];
    try {
      const session = await doors.open(named, how);
      await get().session?.close();
      if (how.fresh) session.runLine(`job "${named.replaceAll('"', '')}"`, 'key');
      const { doubt, notices } = session.job;
      doubted = doubt && { named, byte: doubt.byte };
      const hanging = session.store.getState().ledger.lines.length > 1 ? hangingWords(session.desk()) : [];
      set((b) => ({
        session,
        greeting: hanging.length > 0 ? hanging : undefined,
        view: viewed({ ...b.view, at: {} }, { to: 'strip' }),
        word: notices.length > 0 ? notices.map((n) => n.message).join(' ') : undefined,
      }));
      const time = session.store.getState().looking ? undefined : timeToConfirm(session.desk());
      if (time !== undefined) step({ ask: timeAsking(time) });
      if (doubt) {
        const asking = plainAsking(`${doubt.fault.message}. Go on without the last line?`, doubtAsk);
        const choices = [
          { value: 'look', text: 'no, only look' },
          { value: 'go on', text: 'go on without it; a copy is kept' },
        ];
        step({ ask: { ...asking, type: 'go on|look', optional: false, choices } });
      }
    } catch (thrown) {
      set({ word: thrown instanceof Error ? thrown.message : String(thrown) });
    } finally {
      const keys = pressedMeanwhile ?? [];
      pressedMeanwhile = undefined;
      for (const key of keys) press(key);
    }
  }

  function press(key: string): void {
    if (pressedMeanwhile) return void pressedMeanwhile.push(key);
    const { view, session } = get();
    if (get().word !== undefined) set({ word: undefined });
    if (get().greeting && !view.asking) set({ greeting: undefined });
    if (view.asking) return pressAsking(key, view.asking);
    if (session && desk().facing.placing) return pressPlacing(key, session);
    const bound = boundTo(key, acting(view));
    if (!bound) return;
    // Before a job is open only the screen's own steps mean anything.
    if (!session && bound.row.group !== 'the screen') return;
    // On strip and build the arrows point at a hole, which the calls are about by themselves.
    gathering = pressing(bound, onHoles() ? {} : (picked()?.picks ?? {}));
    nextQuestion();
  }

  function nextQuestion(): void {
    if (!gathering) return;
    const question = questionOf(gathering, desk());
    if (question) return step({ ask: question });
    const { bound, args } = gathering;
    gathering = undefined;
    step({ stopAsking: true });
    const { sure: _, ...said } = args;
    carryOut(bound.row, said);
  }

  function pressAsking(key: string, asking: Asking): void {
    const choices = offered(asking);
    const counted = asking.typed === '' && /^[1-9]$/.test(key) && choices.length > 0 && !areNumbered(choices);
    switch (key) {
      case 'escape':
        return stopAsking();
      case 'up':
      case 'down':
        if (asking.slot === lineAsk) return sayAgain(asking, key === 'up' ? -1 : 1);
        return step({ move: key === 'up' ? -1 : 1, of: choices.length });
      case 'page-up':
      case 'page-down':
        return step({ move: key === 'page-up' ? -9 : 9, of: choices.length });
      case 'backspace':
        return step({ erase: true });
      case 'space':
        return typed(' ');
      case 'enter':
        return answerWith(asking, answerOf(asking));
      case 'ctrl+c':
        return quit();
    }
    if (counted) {
      const choice = choices[Math.floor(asking.at / 9) * 9 + Number(key) - 1];
      return choice ? answerWith(asking, choice.value) : undefined;
    }
    if (asking.typed === '' && key === '+' && asking.type === 'area') return answerWith(asking, freshArea(desk()));
    if ([...key].length === 1) typed(key);
  }
  /** Lines typed before, the last one first. */
  function sayAgain(asking: Asking, by: number): void {
    const at = saidLines.indexOf(asking.typed);
    const line = saidLines[(at < 0 ? saidLines.length : at) + by];
    if (line !== undefined) step({ ask: { ...asking, typed: line } });
  }
  function typed(text: string): void {
    step({ type: text });
    const { asking } = get().view;
    const meant = asking && meantAlready(asking);
    if (asking && meant !== undefined) answerWith(asking, meant);
  }
  function stopAsking(): void {
    gathering = undefined;
    step({ stopAsking: true });
  }

  function answerWith(asking: Asking, text: string): void {
    if (gathering) {
      const after = pressingAfter(gathering, asking, text, desk());
      if (after === 'given up') return stopAsking();
      if ('why' in after) return step({ wrong: after.why });
      gathering = after;
      return nextQuestion();
    }
    stopAsking();
    if (text.trim() === '') return;
    if (asking.slot === shelfAsk) void open(text.trim(), { fresh: true });
    if (asking.slot === lineAsk) {
      saidLines = [...saidLines.filter((line) => line !== text), text].slice(-mostSaidLines);
      show(get().session?.runLine(text, 'line'));
    }
    if (asking.slot === timeAsk && text === 'yes') show(get().session?.run(rowById.get('clock') as Row, {}, 'key'));
    if (asking.slot === doubtAsk && text === 'go on' && doubted) void goOnWithout(doubted);
  }
  /** The job was open to look; it is let go first, so that it can be opened to write. */
  async function goOnWithout({ named, byte }: { named: string; byte: number }): Promise<void> {
    await get().session?.close();
    set({ session: undefined });
    await open(named, { withoutLineAt: byte });
  }

  function carryOut(row: Row, args: Args): void {
    const { session } = get();
    const meant = meantBy(row, desk(), args);
    if ('step' in meant) return takeStep(meant.step);
    if (!session) return;
    const { length } = session.store.getState().ledger.lines;
    show(session.run(row, args, 'key'));
    // In the log the newest line comes first; what was picked stays picked.
    const more = session.store.getState().ledger.lines.length - length;
    if (get().view.screen === 'log' && more > 0) step({ move: more, of: listed().length });
  }
  function show(answer: Answer | undefined): void {
    if (answer?.kind === 'step') takeStep(answer.step);
  }

  function takeStep(s: Step): void {
    const { view, session } = get();
    if ('to' in s) {
      if (s.to === 'shelf') void refreshShelf();
      // Without a job every other screen would be empty.
      return session || s.to === 'shelf' ? step({ to: s.to }) : undefined;
    }
    switch (s.step) {
      case 'up':
      case 'down':
        return move(s.step === 'up' ? -1 : 1);
      case 'page-up':
      case 'page-down':
        return move(s.step === 'page-up' ? -pageRows : pageRows);
      case 'help':
        step({ to: view.screen === 'help' ? view.before : 'help' });
        return step({ move: view.screen === 'help' ? 0 : Number.NEGATIVE_INFINITY, of: 1 });
      case 'type':
        return session ? step({ ask: plainAsking('a call in words', lineAsk) }) : undefined;
      case 'choose':
        return choose();
      case 'new':
        return step({ ask: plainAsking('new job: its name', shelfAsk) });
      case 'leave':
        return leave();
      case 'next-call':
        return proposeCall();
      case 'place':
        return startPlacing();
      case 'retry':
        return session?.store.getState().notSaved ? void session.retry() : undefined;
      case 'quit':
        return quit();
    }
  }

  function move(by: number): void {
    const all = listed();
    if (!onHoles()) return step({ move: by, of: all.length });
    const rows = all.slice(0, all.length).filter((one) => one.picks.hole !== undefined);
    const faced = desk().facing.hole;
    const from = rows.findIndex((one) => one.picks.hole === faced);
    const to = from < 0 ? (by > 0 ? 0 : rows.length - 1) : Math.max(0, Math.min(rows.length - 1, from + by));
    const hole = rows[to]?.picks.hole;
    if (hole !== undefined) get().session?.face({ hole: hole as string });
  }

  function choose(): void {
    const row = picked();
    if (!row) return;
    if (get().view.screen === 'shelf') return void open(row.key);
    if (row.leads) goTo(row.leads);
  }
  /** To the screen where a place is worked on. */
  function goTo(at: string): void {
    const { session } = get();
    const hole = named('hole', at);
    if (hole) session?.face({ area: areaOf(hole), hole });
    const area = named('area', at);
    if (area) session?.face({ area, hole: undefined });
    const to = screenFor(at);
    step({ to, from: get().view.screen });
    const rows = listed();
    for (let i = 0; i < rows.length; i++) {
      const one = rows.at(i);
      if (one?.leads !== at && one?.key !== nameOf(at) && !Object.values(one?.picks ?? {}).includes(nameOf(at)))
        continue;
      return step({ move: i - (get().view.at[to] ?? 0), of: rows.length });
    }
  }

  /** The call proposed on the picked line, up to where something is to be said; nothing is taken by this key. */
  function proposeCall(): void {
    const [words = ''] = (picked()?.end ?? '').split('…');
    if (words !== '') step({ ask: { ...plainAsking('a call in words', lineAsk), typed: words } });
  }
  /** The hole pointed at, or the next one, is moved by the arrow keys from where it is drawn. */
  function startPlacing(): void {
    const facing = desk().facing;
    const next = facing.hole ?? (get().view.screen === 'build' ? nextBack(desk()) : nextOff(desk()));
    const drawn = areaDrawn(desk(), next, false)?.holes.find((one) => one.hole === next);
    if (drawn) get().session?.face({ hole: drawn.hole, placing: { hole: drawn.hole, at: drawn.at } });
  }
  function pressPlacing(key: string, { face, run }: Session): void {
    const { placing } = desk().facing;
    if (!placing) return;
    const move = moves[key];
    if (move) return face({ placing: { hole: placing.hole, at: [placing.at[0] + move[0], placing.at[1] + move[1]] } });
    if (key === 'escape') return face({ placing: undefined });
    if (key !== 'enter') return;
    face({ placing: undefined });
    const [x, y] = placing.at;
    show(run(rowById.get('placed') as Row, { hole: placing.hole, x, y }, 'key'));
  }

  function leave(): void {
    const { view, session } = get();
    if (session && desk().facing.hole && !view.from) return session.face({ hole: undefined });
    if (session?.store.getState().answer?.kind === 'refused') return session.store.setState({ answer: undefined });
    if (view.screen === 'help' || view.screen === 'glance') return step({ to: view.before });
    if (view.screen === 'shelf') return session ? step({ to: view.before }) : quit();
    if (view.from) return step({ to: view.from });
    if (view.screen !== 'strip') return step({ to: 'strip' });
    void refreshShelf();
    step({ to: 'shelf' });
  }
  function quit(): void {
    set({ leaving: true });
  }

  void refreshShelf();
  return {
    store,
    press,
    type(text) {
      if (get().view.asking) step({ type: text });
    },
    listed,
    desk,
    open: (path) => open(path),
    quit,
  };
}
