// A program in a real terminal with a stopwatch beside it: when it was started, when a key was pressed, when what was
// waited for stood on the screen, how many bytes that took. The watch is read when the bytes come in, before the screen
// is worked out from them.
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import pty from '@lydell/node-pty';
import xterm from '@xterm/headless';
import { benchFolder } from './job-file.ts';

const notAtTheBench =
  /^(CI|CI_.*|CONTINUOUS_INTEGRATION|NODE_ENV|NODE_OPTIONS|VITEST.*|npm_.*|FORCE_COLOR|NO_COLOR|DEV|INK_SCREEN_READER|COUNTBACK_.*)$/;

/** The program keeps what it compiled; the bare programs beside it keep theirs as well. */
export const compiledOnce = { NODE_COMPILE_CACHE: join(benchFolder, '.compiled') };

export const comfortable = { cols: 120, rows: 40 } as const;
const patienceMs = 60_000;

export type Watched = {
  pid: number;
  /** Milliseconds from the last key (or from the start) to the bytes with which this stood on the screen. */
  until(painted: RegExp): Promise<number>;
  /** The screen as it stands, rows joined by line ends. */
  screen(): string;
  /** Sends keys; what is painted is counted anew from here. */
  press(bytes: string): void;
  /** Bytes painted since the last key. */
  bytes(): number;
  /** Back when nothing was painted for a while. */
  quiet(): Promise<void>;
  /** Resident memory of the program, in bytes. */
  resident(): number;
  end(): Promise<void>;
};

function environment(data: string): Record<string, string> {
  const kept = Object.entries(process.env).filter(([name, value]) => !notAtTheBench.test(name) && value !== undefined);
  return {
    ...(Object.fromEntries(kept) as Record<string, string>),
    TERM: 'xterm-256color',
    LANG: 'C.UTF-8',
    HOME: data,
    COUNTBACK_DATA: data,
    ...compiledOnce,
  };
}

/** Runs a script with this Node in a terminal of 120 by 40. */
export function watch(script: string, args: readonly string[], data: string): Watched {
  mkdirSync(join(data, 'jobs'), { recursive: true });
  let from = performance.now();
  let came = from;
  let count = 0;
  let told = () => {};
  let ended = false;
  const glass = new xterm.Terminal({ ...comfortable, allowProposedApi: true });
  const terminal = pty.spawn(process.execPath, [script, ...args], {
    ...comfortable,
    cwd: data,
    env: environment(data),
  });
  const left = new Promise<void>((resolve) => {
    terminal.onExit(() => {
      ended = true;
      told();
      resolve();
    });
  });
  terminal.onData((text) => {
    const at = performance.now();
    count += Buffer.byteLength(text);
    glass.write(text, () => {
      came = at;
      told();
    });
  });
  const screen = () => {
    const { active } = glass.buffer;
    return Array.from(
      { length: comfortable.rows },
      (_, row) => active.getLine(active.viewportY + row)?.translateToString(true) ?? '',
    ).join('\n');
  };
  const wait = (painted: RegExp) =>
    new Promise<number>((resolve, reject) => {
      const done = (say: () => void) => {
        clearTimeout(late);
        told = () => {};
        say();
      };
      const give = (why: string) =>
        done(() =>
          reject(new Error(`${script} ${args.join(' ')}: ${painted} ${why}; on the screen was:\n${screen()}`)),
        );
      const late = setTimeout(() => give('was not painted'), patienceMs);
      const look = () => {
        if (painted.test(screen())) done(() => resolve(came - from));
        else if (ended) give('was not painted before the end');
      };
      told = look;
      look();
    });
  return {
    pid: terminal.pid,
    until: wait,
    screen,
    press(bytes) {
      count = 0;
      from = performance.now();
      came = Number.NaN;
      terminal.write(bytes);
    },
    bytes: () => count,
    async quiet() {
      for (let before = -1; before !== count; ) {
        before = count;
        await new Promise((resolve) => setTimeout(resolve, 60));
      }
    },
    resident() {
      const kilobytes = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${terminal.pid}/status`, 'utf8'))?.[1];
      return Number(kilobytes) * 1024;
    },
    async end() {
      if (!ended) terminal.kill('SIGTERM');
      await left;
    },
  };
}
