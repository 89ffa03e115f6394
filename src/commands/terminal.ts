// The terminal while the program has it: taken before the first frame, lent to the shell while the program is stopped,
// and given back whichever way the program ends. It knows no keys and nothing of what is painted.
import { constants } from 'node:os';
import type { ReadStream, WriteStream } from 'node:tty';

const pasteOn = '\u001b[?2004h';
const pasteOff = '\u001b[?2004l';
const cursorShown = '\u001b[?25h';
const normalScreen = '\u001b[?1049l';

const endingSignals = ['SIGINT', 'SIGTERM', 'SIGHUP', 'SIGQUIT'] as const;
export type EndingSignal = (typeof endingSignals)[number];
/** As a shell sees a program that a signal ended. */
export const exitAfter = (signal: EndingSignal): number => 128 + constants.signals[signal];

/** What is painted on it. */
export type Shown = {
  /** Back when it has left the terminal by itself. */
  left: Promise<void>;
  takeDown(): void;
  /** Leaves the terminal to `work`, and paints everything anew after it. */
  aside(work: () => Promise<void>): Promise<void>;
};
export type Terminal = {
  shows(shown: Shown): void;
  /** What Ctrl+Z asks for: stops the program and all it was started with. */
  stop(): void;
  /** Once; every further time does nothing. */
  giveBack(): void;
  /** The signal that ended the program, if one did. */
  endedBy(): EndingSignal | undefined;
};

/**
 * @param leave asks the program to end in its own order; a second signal waits for nothing any more
 * @param inFront the terminal was lent, and is the program's again
 */
export function takeTerminal(
  stdin: ReadStream,
  stdout: WriteStream,
  leave: () => void,
  inFront: () => void = () => undefined,
): Terminal {
  let shown: Shown | undefined;
  let ended: EndingSignal | undefined;
  let isLent = false;
  let isBack = false;

  const take = () => {
    stdin.setRawMode(true);
    stdout.write(pasteOn);
  };
  const lay = () => {
    stdout.write(pasteOff + cursorShown);
    stdin.setRawMode(false);
  };

  const onEnd = (signal: EndingSignal) => {
    const isLeaving = ended !== undefined || isBack;
    // A window that is closed says so in several ways, and its streams often first: nobody is in a hurry there.
    if (isLeaving && signal !== 'SIGHUP') {
      giveBack();
      process.exit(exitAfter(signal));
    }
    ended ??= signal;
    if (isLeaving) return;
    leave();
  };
  const onStop = () => lend(() => stopped(process.pid));
  const onContinue = () => lend(async () => {});

  function lend(work: () => Promise<void>): void {
    if (isLent || isBack || !shown) return;
    isLent = true;
    const lent = async () => {
      lay();
      await work();
      if (isBack) return;
      take();
      // A window that changed its size meanwhile told only who was in front; known before it is painted anew.
      process.emit('SIGWINCH', 'SIGWINCH');
    };
    void shown.aside(lent).finally(() => {
      isLent = false;
      if (!isBack) inFront();
    });
  }
  /** Back when the program goes on; at once where nobody could continue it, since the kernel then stops nothing. */
  const stopped = (whom: number): Promise<void> =>
    new Promise((resolve) => {
      const goOn = () => {
        clearTimeout(notStopped);
        process.off('SIGCONT', goOn);
        process.on('SIGTSTP', onStop);
        resolve();
      };
      process.off('SIGTSTP', onStop);
      process.on('SIGCONT', goOn);
      const notStopped = setTimeout(goOn, 100);
      process.kill(whom, 'SIGTSTP');
    });

  function giveBack(): void {
    if (isBack) return;
    isBack = true;
    try {
      shown?.takeDown();
    } catch {
      // What paints is broken; it may have been on the other screen still.
      stdout.write(normalScreen);
    }
    try {
      lay();
    } catch {
      // The terminal is gone.
    }
    stdin.pause();
    // The signals that end the program stay: closing the job may wait for a disk.
    process.off('SIGTSTP', onStop);
    process.off('SIGCONT', onContinue);
    process.off('exit', giveBack);
    process.off('uncaughtException', giveBack);
    for (const stream of [stdin, stdout]) stream.off('error', leave);
    stdin.off('end', leave);
  }

  for (const signal of endingSignals) process.on(signal, onEnd);
  process.on('SIGTSTP', onStop);
  process.on('SIGCONT', onContinue);
  process.on('exit', giveBack);
  // Before whoever prints what happened: it would be painted over.
  process.prependListener('uncaughtException', giveBack);
  for (const stream of [stdin, stdout]) stream.on('error', leave);
  stdin.on('end', leave);
  take();

  return {
    shows(one) {
      shown = one;
    },
    stop: () => lend(() => stopped(0)),
    giveBack,
    endedBy: () => ended,
  };
}
