// The program on the screen: the bench's state as a frame of rows, and the one component that owns the keyboard.
import { Box, Text, useApp, useIsScreenReaderEnabled, useWindowSize } from 'ink';
import {
  type ReactNode,
  useCallback,
  useEffect,
  useLayoutEffect,
  useMemo,
  useReducer,
  useRef,
  useSyncExternalStore,
} from 'react';
import type { Bench, BenchState } from '../session/bench-shape.ts';
import type { SessionState } from '../session/session-shape.ts';
import { paintFor } from './colours.ts';
import { rememberingFrames, smallest } from './frame.ts';
import { onceAKey } from './once-a-key.ts';
import { linesToRead } from './read-aloud.ts';
import { PaintedRow, paintedText } from './rows.tsx';
import { sceneMaker } from './scene.ts';

/** Tells key names and pasted text until the returned function is called. */
export type Keys = (told: { key(name: string, inOneGo?: boolean): void; paste(text: string): void }) => () => void;

/** The bench's state whenever it is to be painted; `ahead` works for the next frame while the disk does. */
function useShown(bench: Bench, ahead: () => void): BenchState {
  const once = useMemo(() => onceAKey(() => isSaving(bench), ahead), [bench, ahead]);
  const state = useSyncExternalStore(once.listen, bench.store.getState);
  useSyncExternalStore(once.listen, () => sessionOf(bench.store.getState()));
  useLayoutEffect(() => bench.store.subscribe(once.changed), [bench, once]);
  useLayoutEffect(() => state.session?.store.subscribe(once.changed), [state.session, once]);
  return state;
}
const sessionOf = ({ session }: BenchState): SessionState | undefined => session?.store.getState();
function isSaving(bench: Bench): boolean {
  const shown = sessionOf(bench.store.getState());
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
  const ticks = useTick();
  const sceneOn = useMemo(() => sceneMaker(bench), [bench]);
  const framed = useMemo(rememberingFrames, []);
  const glass = useRef({ columns, rows, ticks });
  glass.current = { columns, rows, ticks };
  const state = useShown(
    bench,
    useCallback(() => void framed(sceneOn(glass.current)), [framed, sceneOn]),
  );
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
  const scene = sceneOn(glass.current);
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
