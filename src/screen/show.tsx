// Puts the program on the terminal, and says when it has left it, how to take it down, and how to leave it aside.
import { render, useApp } from 'ink';
import { type ReactNode, useLayoutEffect } from 'react';
import type { Bench } from '../session/bench-shape.ts';
import { App, type Keys } from './app.tsx';

type Suspend = (work: () => Promise<void>) => Promise<void>;

/** Only a component is given the means to leave the terminal to another program and come back. */
function Lending({ lend, children }: { lend(suspend: Suspend): void; children: ReactNode }): ReactNode {
  const { suspendTerminal } = useApp();
  useLayoutEffect(() => lend(suspendTerminal), [lend, suspendTerminal]);
  return children;
}

/** Source: ECMA-48, 5th edition 1991, 8.3.21 (CUP) and 8.3.39 (ED). */
const homeAndBlank = '\u001b[H\u001b[2J';
const settledMs = 80;
/** A terminal moves its lines about while it is resized, and only rows that differ are painted: so all once, at the end. */
function onceSettled(work: () => void): { again(): void; stop(): void } {
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const stop = () => clearTimeout(waiting);
  return {
    stop,
    again() {
      stop();
      waiting = setTimeout(work, settledMs);
    },
  };
}

export function show(bench: Bench, keys: Keys, { colours }: { colours: boolean }) {
  let suspend: Suspend = (work) => work();
  const lend = (by: Suspend) => {
    suspend = by;
  };
  const program = () => (
    <Lending lend={lend}>
      <App bench={bench} keys={keys} colours={colours} />
    </Lending>
  );
  const instance = render(program(), {
    alternateScreen: true,
    incrementalRendering: true,
    // A call and the "saved" of a slow disk are two frames of one key: they must not wait for one another.
    maxFps: 240,
    exitOnCtrlC: false,
    patchConsole: false,
    interactive: true,
  });
  const settling = onceSettled(() => {
    instance.clear();
    process.stdout.write(homeAndBlank);
    instance.rerender(program());
  });
  process.stdout.on('resize', settling.again);
  return {
    left: instance.waitUntilExit().then(() => {
      process.stdout.off('resize', settling.again);
      settling.stop();
    }),
    takeDown: () => instance.unmount(),
    aside: (work: () => Promise<void>) => suspend(work),
  };
}
