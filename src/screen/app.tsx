// The program on the screen: the bench's state as a frame of rows, and the one component that owns the keyboard.
import { Box, Text, useApp, useIsScreenReaderEnabled, useWindowSize } from 'ink';
import { type ReactNode, useEffect, useLayoutEffect, useMemo, useReducer, useRef, useSyncExternalStore } from 'react';
import type { Bench, BenchState } from '../session/bench-shape.ts';
import type { SessionState } from '../session/session-shape.ts';
import { paintFor } from './colours.ts';
import { rememberingFrames, smallest } from './frame.ts';
import { onceAKey } from './once-a-key.ts';
import { linesToRead } from './read-aloud.ts';
import { PaintedRow, paintedText } from './rows.tsx';

/** Tells key names and pasted text until the returned function is called. */
export type Keys = (told: { key(name: string, inOneGo?: boolean): void; paste(text: string): void }) => () => void;

/** What is shown, as it stands whenever it is to be painted. */
function useShown(bench: Bench): { state: BenchState; session: SessionState | undefined } {
  const once = useMemo(() => onceAKey(() => isSaving(bench)), [bench]);
  const state = useSyncExternalStore(once.listen, bench.store.getState);
  const session = useSyncExternalStore(once.listen, () => bench.store.getState().session?.store.getState());
  useLayoutEffect(() => bench.store.subscribe(once.changed), [bench, once]);
  useLayoutEffect(() => state.session?.store.subscribe(once.changed), [state.session, once]);
  return { state, session };
}
function isSaving(bench: Bench): boolean {
  const shown = bench.store.getState().session?.store.getState();
  return shown !== undefined && !shown.notSaved && shown.savedTo < shown.ledger.lines.length;
}

const tickMs = 1000;
/** What cures is shown as the clock has it, although nothing is pressed. */
function useTick(): number {
  const [ticks, tick] = useReducer((n: number) => n + 1, 0);
  useEffect(() => {
    const ticking = setInterval(tick, tickMs);
    return () => clearInterval(ticking);
  }, []);
  return ticks;
}

export function App({ bench, keys, colours }: { bench: Bench; keys: Keys; colours: boolean }): ReactNode {
  const { columns, rows } = useWindowSize();
  const { state, session } = useShown(bench);
  const ticks = useTick();
  const { exit } = useApp();
  const aloud = useIsScreenReaderEnabled();
  const coloured = colours && state.habits.colours;
  const paint = useMemo(() => paintFor(coloured), [coloured]);
  const tooSmall = columns < smallest.columns || rows < smallest.rows;
  // What can't be seen can't be called; only leaving is. Known before the frame is painted: a key may follow at once.
  const unseen = useRef(tooSmall);
  unseen.current = tooSmall;
  useEffect(
    () =>
      keys({
        key: (name, inOneGo) => (unseen.current && name !== 'ctrl+c' ? undefined : bench.press(name, inOneGo)),
        paste: (text) => (unseen.current ? undefined : bench.type(text)),
      }),
    [bench, keys],
  );
  useEffect(() => {
    if (state.leaving) exit();
  }, [state.leaving, exit]);
  const { ledger, facing } = session ?? {};
  // biome-ignore lint/correctness/useExhaustiveDependencies: the bench reads what these stand for
  const [desk, listed] = useMemo(() => [bench.desk(), bench.listed()], [bench, state, ledger, facing, ticks]);
  const framed = useMemo(rememberingFrames, []);
  const scene = {
    view: state.view,
    desk,
    ...(session && { session }),
    ...(state.session && { begunAs: state.session.job.job }),
    listed,
    reading: state.shelf === undefined,
    keymap: state.keymap,
    ...(state.word !== undefined && { word: state.word }),
    ...(state.note !== undefined && { note: state.note }),
    ...(state.greeting && { greeting: state.greeting }),
    ...(state.greetingHead !== undefined && { greetingHead: state.greetingHead }),
    columns,
    rows,
  };
  if (aloud) {
    return (
      <Box flexDirection='column'>
        {linesToRead(scene).map((line, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a line read aloud is its place
          <Text key={i}>{line}</Text>
        ))}
      </Box>
    );
  }
  return (
    <Box flexDirection='column' width={columns} height={rows}>
      {framed(scene).map((row, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row of the screen is its place
        <PaintedRow key={i} painted={paintedText(row, paint)} />
      ))}
    </Box>
  );
}
