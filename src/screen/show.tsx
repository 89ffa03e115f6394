// Puts the program on the terminal and takes it off again, whole, whichever way it ends.
import { render } from 'ink';
import type { Bench } from '../session/bench.ts';
import { App, type Keys } from './app.tsx';

/** Back when the program has left the screen. */
export async function show(bench: Bench, keys: Keys, { colours }: { colours: boolean }): Promise<void> {
  const instance = render(<App bench={bench} keys={keys} colours={colours} />, {
    alternateScreen: true,
    incrementalRendering: true,
    maxFps: 60,
    exitOnCtrlC: false,
    patchConsole: false,
    interactive: true,
  });
  await instance.waitUntilExit();
}
