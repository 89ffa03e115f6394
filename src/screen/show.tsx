// Puts the program on the terminal, and says when it has left it, how to take it down, and how to leave it aside.
import { render, useApp } from 'ink';
import { type ReactNode, useLayoutEffect } from 'react';
import type { Bench } from '../session/bench.ts';
import { App, type Keys } from './app.tsx';

type Suspend = (work: () => Promise<void>) => Promise<void>;

/** Only a component is given the means to leave the terminal to another program and come back. */
function Lending({ lend, children }: { lend(suspend: Suspend): void; children: ReactNode }): ReactNode {
  const { suspendTerminal } = useApp();
  useLayoutEffect(() => lend(suspendTerminal), [lend, suspendTerminal]);
  return children;
}

export function show(bench: Bench, keys: Keys, { colours }: { colours: boolean }) {
  let suspend: Suspend = (work) => work();
  const lend = (by: Suspend) => {
    suspend = by;
  };
  const instance = render(
    <Lending lend={lend}>
      <App bench={bench} keys={keys} colours={colours} />
    </Lending>,
    {
      alternateScreen: true,
      incrementalRendering: true,
      // A call and its "saved" are two frames of one key: they must not wait for one another.
      maxFps: 240,
      exitOnCtrlC: false,
      patchConsole: false,
      interactive: true,
    },
  );
  return {
    left: instance.waitUntilExit().then(() => undefined),
    takeDown: () => instance.unmount(),
    aside: (work: () => Promise<void>) => suspend(work),
  };
}
