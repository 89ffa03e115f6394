// The bench: the shelf of jobs, the one that is open, and what is on view. A key press or a typed word goes in here and
// comes out as a call on the session or as a step of the view. It paints nothing.
import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Bound, boundTo } from '../calls/bindings.ts';
import type { Desk } from '../calls/desk.ts';
import { type Args, matchForm, slotsOf, tokens, writeForm } from '../calls/form.ts';
import { type Listed, listedOn } from '../calls/lists.ts';
import { meantBy, type Row, type Step } from '../calls/row.ts';
import { choicesFor, readSlot, showSlot } from '../calls/slots.ts';
import { formOf, rowById } from '../calls/table.ts';
import { blocked } from '../job/decide.ts';
import { emptyLedger, stateOf } from '../job/ledger.ts';
import { areaOf, named, nameOf, sortOf } from '../job/subjects.ts';
import { firstFacing } from '../view/facing.ts';
import type { ScreenId } from '../view/screens.ts';
import { type Asking, type Choice, firstView, offered, type View, type ViewStep, viewed } from '../view/view.ts';
import type { Answer, Session } from './session.ts';

export type OnTheShelf = { name: string; path: string; said: string };
export type BenchState = {
  view: View;
  session?: Session;
  shelf: readonly OnTheShelf[];
  /** What the shelf or the opening of a job has to say; a job's own answers are its session's. */
  word?: string;
  leaving: boolean;
};
export type Bench = {
  store: StoreApi<BenchState>;
  /** A key by its name: "enter", "escape", "a", "S", "up". */
  press(key: string): void;
  /** Text pasted or typed at once; it counts only where something is asked. */
  type(text: string): void;
  listed(): Listed[];
  desk(): Desk;
  open(path: string): Promise<void>;
  quit(): void;
};
export type BenchDoors = {
  jobs(): Promise<readonly OnTheShelf[]>;
  /** Opens a job; `fresh` makes it. Throws a fault. */
  open(named: string, fresh: boolean): Promise<Session>;
};

const pageRows = 10;
const shelfAsk = 'job name';

export function createBench(doors: BenchDoors): Bench {
  const store = createStore<BenchState>(() => ({ view: firstView, shelf: [], leaving: false }));
  const { getState: get, setState: set } = store;
  const step = (s: ViewStep) => set((b) => ({ view: viewed(b.view, s) }));
  /** The call whose slots are being asked for one after the other. */
  let gathering: { bound: Bound; args: Args; left: readonly Asked[] } | undefined;

  const desk = (): Desk =>
    get().session?.desk() ?? {
      ledger: emptyLedger,
      facing: firstFacing,
      now: { atMs: 0, zoneMin: 0, run: 0, awakeMs: 0 },
      plans: [],
    };
  const listed = (): Listed[] => {
    const { view, shelf } = get();
    if (view.screen === 'shelf') {
      return shelf.map((one) => ({ key: one.path, mark: 'plain', name: '', text: one.name, end: one.said, picks: {} }));
    }
    return listedOn(view.screen, view.before, desk());
  };
  const picked = (): Listed | undefined => {
    const { view } = get();
    return listed()[view.at[view.screen] ?? 0];
  };

  async function refreshShelf(): Promise<void> {
    set({ shelf: await doors.jobs() });
  }
  async function open(named: string, fresh = false): Promise<void> {
    try {
      const session = await doors.open(named, fresh);
      await get().session?.close();
      if (fresh) session.runLine(`job "${named.replaceAll('"', '')}"`, 'key');
      set((b) => ({ session, view: viewed({ ...b.view, at: {} }, { to: 'strip' }), word: undefined }));
    } catch (thrown) {
      set({ word: thrown instanceof Error ? thrown.message : String(thrown) });
    }
  }

  function press(key: string): void {
    const { view } = get();
    if (view.asking) return pressAsking(key, view.asking);
    const bound = boundTo(key, view.screen);
    if (!bound) return;
    if (view.screen === 'shelf' && !bound.row.id.match(/^(up|down|page-up|page-down|choose|leave|quit|help|new-job)$/))
      return;
    gather(bound);
  }

  /** What the picked row of a list fills; on strip and build only where the arrows have pointed at a hole. */
  function picksFor(row: Row, screen: ScreenId): Args {
    const slots = slotsOf(formOf.get(row.id) ?? []);
    const picks = picked()?.picks ?? {};
    const pointed = screen === 'strip' || screen === 'build';
    if (pointed) return {};
    return Object.fromEntries(
      slots.flatMap(({ slot, type }) =>
        picks[type] === undefined || slot in picks
          ? slot in picks && picks[slot] !== undefined
            ? [[slot, picks[slot]]]
            : []
          : [[slot, picks[type]]],
      ),
    );
  }

  type Asked = { slot: string; type: string; optional: boolean };
  function gather(bound: Bound): void {
    const { row, binding } = bound;
    const args: Args = {
      ...picksFor(row, get().view.screen),
      ...binding.args,
      ...(binding.args && row.id === 'use' ? { merge: true } : {}),
    };
    const filled = row.fills?.(desk(), args) ?? {};
    const form = formOf.get(row.id) ?? [];
    const left = slotsOf(form).filter(({ slot, optional }) => {
      const known = args[slot] !== undefined || (filled[slot] !== undefined && !binding.asks?.includes(slot));
      return !known && (!optional || binding.asks?.includes(slot));
    });
    gathering = { bound, args, left };
    nextQuestion();
  }

  function nextQuestion(): void {
    if (!gathering) return;
    const { bound, args, left } = gathering;
    const [slot] = left;
    if (slot) return step({ ask: askingFor(bound.row, slot, args) });
    if (bound.row.twice && !args.sure) return step({ ask: sureAsking(bound.row) });
    gathering = undefined;
    step({ stopAsking: true });
    const { sure: _, ...said } = args;
    carryOut(bound.row, said);
  }

  function askingFor(row: Row, { slot, type, optional }: Asked, args: Args): Asking {
    const values = type === 'subject' || type === 'spec' ? [] : choicesFor(desk(), type, args);
    const judged = values.map((value): Choice => choiceOf(row, slot, type, value, args));
    const choices = [...judged.filter((c) => !c.blocked), ...judged.filter((c) => c.blocked)];
    return {
      title: `${row.label}: ${titleOf(slot, type)}`,
      row: row.id,
      slot,
      type,
      optional,
      choices,
      typed: '',
      at: 0,
    };
  }
  function choiceOf(row: Row, slot: string, type: string, value: string, args: Args): Choice {
    const d = desk();
    const read = readAnswer(type, value, args);
    const meant = 'value' in read ? meantBy(row, d, { ...args, [slot]: read.value }) : undefined;
    const stop = meant && 'say' in meant ? blocked(d.ledger, meant.say, d.now) : null;
    return { value, text: wordsFor(type, value), ...(stop && { blocked: stop.because }) };
  }
  function wordsFor(type: string, value: string): string {
    const d = desk();
    if (type === 'finding') {
      const f = stateOf(d.ledger, 'finding', value);
      return f ? `${value}  ${showSlot(d, 'subject', f.at)}: ${f.what}` : value;
    }
    return value;
  }
  const sureAsking = (row: Row): Asking => ({
    title: row.twice ?? row.label,
    row: row.id,
    slot: 'sure',
    type: 'yes|not yet',
    optional: false,
    choices: [
      { value: 'not yet', text: 'not yet' },
      { value: 'yes', text: row.label },
    ],
    typed: '',
    at: 0,
  });

  function pressAsking(key: string, asking: Asking): void {
    const choices = offered(asking);
    if (key === 'escape') {
      gathering = undefined;
      return step({ stopAsking: true });
    }
    if (key === 'up' || key === 'down') return step({ move: key === 'up' ? -1 : 1, of: choices.length });
    if (key === 'page-up' || key === 'page-down') return step({ move: key === 'page-up' ? -9 : 9, of: choices.length });
    if (key === 'backspace') return step({ erase: true });
    if (key === 'space') return step({ type: ' ' });
    if (key === 'enter') return answerWith(asking, chosenOf(asking, choices));
    if (asking.typed === '' && /^[1-9]$/.test(key) && choices.length > 0) {
      const first = Math.floor(asking.at / 9) * 9;
      const choice = choices[first + Number(key) - 1];
      return choice ? answerWith(asking, choice.value) : undefined;
    }
    if (asking.typed === '' && key === '+' && asking.type === 'area') return answerWith(asking, freshArea());
    if ([...key].length === 1) step({ type: key });
  }
  /** What stands typed, unless it picks one of the choices; with nothing typed, the choice the cursor is on. */
  function chosenOf(asking: Asking, choices: readonly Choice[]): string {
    const exact = choices.find((c) => c.text.toLowerCase() === asking.typed.trim().toLowerCase());
    if (exact) return exact.value;
    const typed = asking.typed.trim();
    const isOpen =
      asking.type.includes('|') ||
      ['finding', 'stray', 'lost', 'box', 'face', 'drive', 'plan', 'planned'].includes(asking.type);
    if (typed !== '' && !(isOpen && choices.length > 0)) return typed;
    if (asking.optional && typed === '' && asking.at === 0) return '';
    return choices[asking.at]?.value ?? typed;
  }
  function freshArea(): string {
    const { ledger } = desk();
    for (let n = 1; ; n++) if (!stateOf(ledger, 'area', `area ${n}`)) return `area ${n}`;
  }

  function readAnswer(type: string, text: string, args: Args = {}): { value: unknown } | { why: string } {
    const read = readSlot(desk());
    const matched = matchForm([{ slot: 'value', type }], tokens(text), (of, rest, stops) =>
      read(of, rest, stops, args),
    );
    return 'why' in matched ? matched : { value: matched.args.value };
  }

  function answerWith(asking: Asking, text: string): void {
    if (asking.slot === shelfAsk) {
      step({ stopAsking: true });
      if (text.trim() !== '') void open(text.trim(), true);
      return;
    }
    if (asking.slot === 'typed line') {
      step({ stopAsking: true });
      if (text.trim() !== '') show(get().session?.runLine(text, 'line'));
      return;
    }
    if (!gathering) return step({ stopAsking: true });
    if (asking.slot === 'sure' && text !== 'yes') {
      gathering = undefined;
      return step({ stopAsking: true });
    }
    const left = gathering.left.slice(1);
    if (asking.optional && text.trim() === '') gathering = { ...gathering, left };
    else {
      const read = asking.slot === 'sure' ? { value: true } : readAnswer(asking.type, text, gathering.args);
      if ('why' in read) return step({ wrong: read.why });
      gathering = { ...gathering, args: { ...gathering.args, [asking.slot]: read.value }, left };
    }
    nextQuestion();
  }

  function carryOut(row: Row, args: Args): void {
    const { session } = get();
    const meant = meantBy(row, desk(), args);
    if ('step' in meant) return takeStep(meant.step);
    if (session) show(session.run(row, args, 'key'));
  }
  function show(answer: Answer | undefined): void {
    if (answer?.kind === 'step') takeStep(answer.step);
  }

  function takeStep(s: Step): void {
    if ('to' in s) {
      if (s.to === 'shelf') void refreshShelf();
      return step({ to: s.to });
    }
    const { view } = get();
    switch (s.step) {
      case 'up':
      case 'down':
        return move(s.step === 'up' ? -1 : 1);
      case 'page-up':
      case 'page-down':
        return move(s.step === 'page-up' ? -pageRows : pageRows);
      case 'help':
        return step({ to: view.screen === 'help' ? view.before : 'help' });
      case 'type':
        return step({
          ask: {
            title: 'a call in words',
            row: '',
            slot: 'typed line',
            type: 'words',
            optional: true,
            choices: [],
            typed: '',
            at: 0,
          },
        });
      case 'choose':
        return choose();
      case 'new':
        return step({
          ask: {
            title: 'new job: its name',
            row: '',
            slot: shelfAsk,
            type: 'words',
            optional: true,
            choices: [],
            typed: '',
            at: 0,
          },
        });
      case 'leave':
        return leave();
      case 'retry':
        return void get().session?.retry();
      case 'quit':
        return quit();
    }
  }

  function move(by: number): void {
    const { view, session } = get();
    const all = listed();
    if (view.screen !== 'strip' && view.screen !== 'build') return step({ move: by, of: all.length });
    // On strip and build the arrows point at a hole, from the one that is next.
    const faced = session?.desk().facing.hole;
    const from = all.findIndex((one) => one.picks.hole === faced);
    const to = all[Math.max(0, Math.min(all.length - 1, from < 0 ? (by > 0 ? 0 : all.length - 1) : from + by))];
    if (to) session?.face({ hole: to.picks.hole as string });
  }

  function choose(): void {
    const { view } = get();
    const row = picked();
    if (!row) return;
    if (view.screen === 'shelf') return void open(row.key);
    if (row.leads) goTo(row.leads);
  }
  /** To the screen where a place is worked on. */
  function goTo(at: string): void {
    const { session } = get();
    const hole = named('hole', at);
    if (hole) session?.face({ area: areaOf(hole), hole });
    const area = named('area', at);
    if (area) session?.face({ area, hole: undefined });
    const to = screenFor(sortOf(at));
    step({ to });
    const index = listed().findIndex((one) => one.leads === at || Object.values(one.picks).includes(nameOf(at)));
    if (index >= 0) step({ move: index - (get().view.at[to] ?? 0), of: index + 1 });
  }

  function leave(): void {
    const { view, session } = get();
    if (session && desk().facing.hole) return session.face({ hole: undefined });
    if (view.screen === 'help') return step({ to: view.before });
    if (view.screen === 'shelf') return session ? step({ to: view.before }) : quit();
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

function screenFor(sort: string): ScreenId {
  const screens: Record<string, ScreenId> = {
    hole: 'build',
    area: 'build',
    part: 'build',
    connection: 'build',
    temporary: 'build',
    finding: 'findings',
    drive: 'rotation',
    face: 'sealing',
    circuit: 'sealing',
    tray: 'box',
    box: 'box',
    fastener: 'box',
    piece: 'box',
    stray: 'box',
    line: 'log',
  };
  return screens[sort] ?? 'leaving';
}

const titles: Record<string, string> = {
  why: 'why',
  who: 'who says so',
  words: 'in words',
  mm: 'millimetres',
  count: 'how many',
  number: 'how much',
  spec: 'which fastener, as "bolt hex 10 M6x25 8.8"',
  subject: 'where (leave out: here)',
  fastener: 'its hole, or f-number',
};
const titleOf = (slot: string, type: string): string => titles[type] ?? slot;
export const callLine = (rowId: string, args: Args, desk: Desk): string =>
  `${rowById.get(rowId)?.words[0] ?? ''} ${writeForm(formOf.get(rowId) ?? [], (type, slot) => showSlot(desk, type, args[slot])) ?? ''}`.trim();
