// Brings a job onto the bench: opened by name, made new, or gone on with without an end that is in doubt.
import type { Row } from '../calls/row.ts';
import { rowById } from '../calls/table.ts';
import { isStruck, lineAt } from '../job/ledger.ts';
import { viewed } from '../view/view.ts';
import type { BenchDoors, BenchState, Opener } from './bench-shape.ts';
import { greetingOf, questionsOnOpening } from './opening.ts';
import type { Session } from './session-shape.ts';

type Hands = {
  get(): BenchState;
  set(part: Partial<BenchState> | ((b: BenchState) => Partial<BenchState>)): void;
  doors: BenchDoors;
  ask: Parameters<typeof questionsOnOpening>[1];
  carryOut(row: Row, args: object): void;
  /** Keys pressed while a job was being opened: they are meant for it. */
  press(key: string, inOneGo: boolean): void;
};

/** Taking apart or putting back: whichever the last call that has its key on one of the two alone was. */
function workedOnLast(opened: Session): 'strip' | 'build' {
  const { ledger } = opened.store.getState();
  for (let n = ledger.lines.length; n > 0; n--) {
    const call = lineAt(ledger, n)?.call;
    const keys = call === undefined || isStruck(ledger, n) ? [] : (rowById.get(call)?.keys ?? []);
    const [strip, build] = (['strip', 'build'] as const).map((on) => keys.some((key) => [key.on].flat().includes(on)));
    if (strip !== build) return build ? 'build' : 'strip';
  }
  return 'strip';
}

export function createOntoBench({ get, set, doors, ask, carryOut, press }: Hands) {
  let pressedMeanwhile: string[] | undefined;

  async function refreshShelf(): Promise<void> {
    set({ shelf: await doors.jobs() });
  }
  /** @param first the first line of a new job */
  async function open(named: string, how: Parameters<Opener>[1] = {}, first?: string): Promise<void> {
    // The job in hand is gone back to: opened again it would find itself in use. What was only looked at may be free now.
    const inHand = get().session;
    if (inHand?.job.path === named && inHand.job.mode === 'write')
      return set((b) => ({ view: viewed(b.view, { to: b.view.before === 'settings' ? 'strip' : b.view.before }) }));
    if (get().session?.store.getState().notSaved)
      return set({
        word: 'A call of the job in hand is NOT SAVED: save it first, or leave the program, which lists it.',
      });
    pressedMeanwhile = [];
    try {
      const opened = await doors.open(named, how);
      const before = get().session;
      await before?.close();
      const parted = before?.job.parted();
      if (first !== undefined) opened.runLine(first, 'key');
      opening(named, opened);
      if (parted) set(({ word }) => ({ word: [parted.message, word].filter(Boolean).join(' ') }));
    } catch (thrown) {
      set({ word: thrown instanceof Error ? thrown.message : String(thrown) });
      if (get().shelf === undefined) void refreshShelf();
    } finally {
      const keys = pressedMeanwhile ?? [];
      pressedMeanwhile = undefined;
      // Nobody had read yet what the job asks on opening.
      for (const key of keys) press(key, true);
    }
  }
  /** What a job has to say and to ask when it comes onto the bench. */
  function opening(name: string, opened: Session): void {
    set((b) => ({
      session: opened,
      ...greetingOf(opened, b.word),
      view: viewed({ ...b.view, at: {} }, { to: workedOnLast(opened) }),
    }));
    questionsOnOpening(opened, ask, {
      timeIsRight() {
        carryOut(rowById.get('clock-right') as Row, {});
        // What cures is further on than it was told before.
        if (get().greeting) set(({ word }) => greetingOf(opened, word));
      },
      goOn: (how) => void goOn(name, how),
    });
  }
  /** The job was open to look; it is let go first, so that it can be opened to write. */
  async function goOn(named: string, how: Parameters<Opener>[1]): Promise<void> {
    await get().session?.close();
    set({ session: undefined });
    await open(named, how);
  }

  return {
    open,
    refreshShelf,
    /** Whether a key was put by, for the job that is being opened. */
    putsBy(key: string): boolean {
      pressedMeanwhile?.push(key);
      return pressedMeanwhile !== undefined;
    },
  };
}
