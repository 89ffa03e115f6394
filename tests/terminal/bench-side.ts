// Sits at the bench for a test: runs the built program in a real terminal, presses keys, reads the screen as a person
// would see it, and says how the program left the terminal. It waits for what is expected and never for time to pass.
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pty from '@lydell/node-pty';
import xterm from '@xterm/headless';
import type { Glyph } from '../docs/screen-svg.ts';
import { bytesOf } from './keys.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** What a test runner, npm or a build machine sets and a mechanic's laptop does not, or what changes the painting. */
const notAtTheBench =
  /^(CI|CI_.*|CONTINUOUS_INTEGRATION|NODE_ENV|NODE_OPTIONS|VITEST.*|npm_.*|FORCE_COLOR|NO_COLOR|DEV|INK_SCREEN_READER|COUNTBACK_.*)$/;

/**
 * The shell a mechanic would have started the program from. It notes the terminal's settings before and after, and the
 * number of the program's process, and outlives every signal the terminal sends.
 */
const shell = `
notes=$1; shift
trap : INT QUIT TERM HUP TSTP
stty -g > "$notes/before"
sh -c 'echo $$ > "$0/pid.part" && mv "$0/pid.part" "$0/pid" && exec "$@"' "$notes" "$@"
code=$?
stty -g > "$notes/after"
exit $code
`;

export type Setting = {
  cols?: number;
  rows?: number;
  /** Added to the environment; undefined takes a variable away. */
  env?: Record<string, string | undefined>;
  /** Where job files are kept; a new empty folder otherwise, removed by close(). */
  dataDir?: string;
  cwd?: string;
  /** Another program to run instead of the launcher on the bundle, with its own arguments before `args`. */
  program?: readonly string[];
};

/** What the program asked the terminal for and did not take back. */
export type Asked = {
  alternateScreen: boolean;
  cursorHidden: boolean;
  bracketedPaste: boolean;
  mouseReported: boolean;
  keyProtocol: boolean;
};
/** How the program left the terminal; `usable` is how it should be. */
export type Leaving = Asked & {
  /** As a shell sees it: 128 and the number of the signal when one ended the program. */
  exit: number;
  settingsRestored: boolean;
};

export type BenchSide = {
  dataDir: string;
  /** One key after another, each as the terminal would send it; a name of keys.ts or one character. */
  press(...keys: string[]): void;
  /** Characters in one burst, as a paste or a fast typist gives them. */
  type(text: string): void;
  /** A long burst, at the pace at which the program takes it; what is left of it is dropped when the program ends. */
  paste(bytes: Uint8Array): Promise<void>;
  /** Resolves with the frame once the condition holds for it; fails with the last frame. */
  waitFor(condition: string | RegExp | ((frame: string[]) => boolean), timeoutMs?: number): Promise<string[]>;
  /** The screen as it is now: one string a row, right-hand blanks cut. */
  frame(): string[];
  /** Everything that scrolled by and the screen below it: what a program that paints nothing printed. */
  printed(): string;
  /** How many cells of the screen are in a colour of their own. */
  coloured(): number;
  /** Every cell of the screen with its look. */
  glyphs(): Glyph[][];
  cursor(): { row: number; col: number; hidden: boolean };
  isAlternateScreen(): boolean;
  asked(): Asked;
  resize(cols: number, rows: number): void;
  /** To the program itself, not to its shell. */
  kill(signal: NodeJS.Signals): Promise<void>;
  /** Closes the terminal window under the program. */
  hangUp(): void;
  /** Bytes the program has written so far. */
  bytesWritten(): number;
  /** Resolves when the program has ended and all it wrote is on the screen. */
  left(timeoutMs?: number): Promise<Leaving>;
  isRunning(): boolean;
  /** Ends whatever still runs and removes the folders made; safe to call twice. */
  close(): Promise<void>;
};

const open = new Set<BenchSide>();

/** For afterEach: no test leaves a program running. */
export async function closeAll(): Promise<void> {
  await Promise.all([...open].map((bench) => bench.close()));
}

function environment(dataDir: string, home: string, changes: Setting['env'] = {}): Record<string, string> {
  const env: Record<string, string | undefined> = { ...process.env };
  for (const name of Object.keys(env)) {
    if (notAtTheBench.test(name)) delete env[name];
  }
  Object.assign(env, { TERM: 'xterm-256color', LANG: 'C.UTF-8', HOME: home, XDG_DATA_HOME: join(home, 'data') });
  Object.assign(env, { XDG_CONFIG_HOME: join(home, 'config'), XDG_STATE_HOME: join(home, 'state') });
  Object.assign(env, { COUNTBACK_DATA: dataDir }, changes);
  return Object.fromEntries(Object.entries(env).filter((pair): pair is [string, string] => pair[1] !== undefined));
}

/** Runs the program in a terminal of the given size, 80 by 24 unless told. */
export function start(args: readonly string[] = [], setting: Setting = {}): BenchSide {
  const notes = mkdtempSync(join(tmpdir(), 'bench-side-'));
  const dataDir = setting.dataDir ?? join(notes, 'jobs');
  mkdirSync(dataDir, { recursive: true });
  mkdirSync(join(notes, 'home'));
  const program = setting.program ?? [process.execPath, join(root, 'src/launcher.js')];
  const size = { cols: setting.cols ?? 80, rows: setting.rows ?? 24 };
  const line = pty.spawn('/bin/sh', ['-c', shell, 'sh', notes, ...program, ...args], {
    ...size,
    cwd: setting.cwd ?? notes,
    env: environment(dataDir, join(notes, 'home'), setting.env),
  });
  const glass = new xterm.Terminal({ ...size, allowProposedApi: true, scrollback: 5000 });

  const modes = new Map<number, boolean>();
  let keyProtocolDepth = 0;
  for (const [final, on] of [
    ['h', true],
    ['l', false],
  ] as const) {
    glass.parser.registerCsiHandler({ prefix: '?', final }, (params) => {
      for (const mode of params.flat()) modes.set(mode, on);
      return false;
    });
  }
  glass.parser.registerCsiHandler({ prefix: '>', final: 'u' }, () => {
    keyProtocolDepth += 1;
    return true;
  });
  glass.parser.registerCsiHandler({ prefix: '<', final: 'u' }, () => {
    keyProtocolDepth -= 1;
    return true;
  });

  const watchers = new Set<() => void>();
  const look = (): void => {
    for (const watcher of [...watchers]) watcher();
  };
  let written = 0;
  let exit: number | undefined;
  let lineIsOpen = true;
  line.onData((text) => {
    written += Buffer.byteLength(text);
    glass.write(text, look);
  });
  // What a terminal answers when asked, so that a program which asks is not left waiting.
  glass.onData((reply) => {
    if (lineIsOpen) line.write(reply);
  });
  line.onExit(({ exitCode, signal }) => {
    lineIsOpen = false;
    // An empty write comes back after everything written before it has been parsed.
    glass.write('', () => {
      exit = signal === undefined || signal === 0 ? exitCode : 128 + signal;
      look();
    });
  });

  /** Looks after everything painted, and now and then for what a condition sees elsewhere, a file for one. */
  const until = (holds: () => boolean, timeoutMs: number, complaint: () => string): Promise<void> =>
    new Promise((resolve, reject) => {
      const settle = (outcome: () => void): void => {
        watchers.delete(watch);
        clearInterval(again);
        clearTimeout(late);
        outcome();
      };
      const watch = (): void => {
        try {
          if (holds()) settle(resolve);
        } catch (fault) {
          settle(() => reject(fault));
        }
      };
      const again = setInterval(watch, 20);
      const late = setTimeout(() => settle(() => reject(new Error(complaint()))), timeoutMs);
      watchers.add(watch);
      watch();
    });

  const rowsFrom = (first: number, last: number): string[] =>
    Array.from(
      { length: last - first },
      (_, row) => glass.buffer.active.getLine(first + row)?.translateToString(true) ?? '',
    );
  const frame = (): string[] => rowsFrom(glass.buffer.active.baseY, glass.buffer.active.baseY + glass.rows);
  const printed = (): string => rowsFrom(0, glass.buffer.active.length).join('\n').trimEnd();
  const note = (name: string): string | undefined => {
    const path = join(notes, name);
    return existsSync(path) ? readFileSync(path, 'utf8').trim() : undefined;
  };
  const isAlternateScreen = (): boolean => glass.buffer.active.type === 'alternate';
  const asked = (): Asked => ({
    alternateScreen: isAlternateScreen(),
    cursorHidden: modes.get(25) === false,
    bracketedPaste: modes.get(2004) === true,
    mouseReported: [9, 1000, 1002, 1003, 1006, 1015].some((mode) => modes.get(mode) === true),
    keyProtocol: keyProtocolDepth > 0,
  });
  const framed = (): string => `\n${frame().join('\n')}\n${exit === undefined ? 'still running' : `exit ${exit}`}`;

  const bench: BenchSide = {
    dataDir,
    press: (...keys) => {
      for (const key of keys) line.write(bytesOf(key));
    },
    type: (text) => line.write(text),
    paste: async (bytes) => {
      // As much as the terminal takes, and no more once nobody reads: the library's own write waits for that for ever.
      const { fd } = line as unknown as { fd: number };
      for (let at = 0; at < bytes.length && exit === undefined; ) {
        try {
          at += writeSync(fd, bytes, at, Math.min(4096, bytes.length - at));
        } catch (thrown) {
          const { code } = thrown as NodeJS.ErrnoException;
          if (code === 'EIO' || code === 'EBADF') return;
          if (code !== 'EAGAIN') throw thrown;
        }
        await new Promise((resolve) => setTimeout(resolve, 2));
      }
    },
    waitFor: async (condition, timeoutMs = 10_000) => {
      const holds = (): boolean => {
        const rows = frame();
        if (typeof condition === 'function') return condition(rows);
        const text = rows.join('\n');
        return typeof condition === 'string' ? text.includes(condition) : condition.test(text);
      };
      await until(
        () => {
          if (holds()) return true;
          if (exit !== undefined) throw new Error(`the program ended before ${String(condition)}:${framed()}`);
          return false;
        },
        timeoutMs,
        () => `not within ${timeoutMs} ms: ${String(condition)}${framed()}`,
      );
      return frame();
    },
    frame,
    printed,
    coloured: () => {
      const { active } = glass.buffer;
      const cells = Array.from({ length: glass.rows * glass.cols }, (_, i) =>
        active.getLine(active.baseY + Math.floor(i / glass.cols))?.getCell(i % glass.cols),
      );
      return cells.filter((cell) => cell && !(cell.isFgDefault() && cell.isBgDefault())).length;
    },
    glyphs: () =>
      Array.from({ length: glass.rows }, (_, row) =>
        Array.from({ length: glass.cols }, (_, column): Glyph => {
          const { active } = glass.buffer;
          const cell = active.getLine(active.baseY + row)?.getCell(column);
          if (!cell) return { text: ' ' };
          return {
            text: cell.getWidth() === 0 ? '' : cell.isInvisible() ? ' ' : cell.getChars() || ' ',
            ...(!cell.isFgDefault() && { ink: cell.getFgColor() }),
            ...(!cell.isBgDefault() && { ground: cell.getBgColor() }),
            ...(cell.isBold() && { bold: true }),
            ...(cell.isDim() && { dim: true }),
            ...(cell.isInverse() && { inverse: true }),
            ...(cell.isStrikethrough() && { strike: true }),
          };
        }),
      ),
    cursor: () => ({
      row: glass.buffer.active.cursorY,
      col: glass.buffer.active.cursorX,
      hidden: modes.get(25) === false,
    }),
    isAlternateScreen,
    asked,
    resize: (cols, rows) => {
      glass.resize(cols, rows);
      try {
        line.resize(cols, rows);
      } catch (thrown) {
        // It has just ended, and its terminal is closed already.
        if (!/EBADF/.test(String(thrown))) throw thrown;
      }
    },
    kill: async (signal) => {
      await until(
        () => note('pid') !== undefined,
        10_000,
        () => `no program to send ${signal} to${framed()}`,
      );
      process.kill(Number(note('pid')), signal);
    },
    hangUp: () => {
      lineIsOpen = false;
      // Closing our end is what a closed window does; the typings leave it out.
      (line as unknown as { destroy(): void }).destroy();
    },
    bytesWritten: () => written,
    left: async (timeoutMs = 10_000) => {
      await until(
        () => exit !== undefined,
        timeoutMs,
        () => `did not end within ${timeoutMs} ms${framed()}`,
      );
      return {
        exit: exit ?? -1,
        settingsRestored: note('before') !== undefined && note('before') === note('after'),
        ...asked(),
      };
    },
    isRunning: () => exit === undefined,
    close: async () => {
      open.delete(bench);
      const pid = Number(note('pid') ?? Number.NaN);
      if (exit === undefined) {
        for (const each of [pid, line.pid]) {
          try {
            if (Number.isInteger(each)) process.kill(each, 'SIGKILL');
          } catch {
            // It ended by itself meanwhile.
          }
        }
        await until(
          () => exit !== undefined,
          5_000,
          () => 'the terminal would not close',
        );
      }
      glass.dispose();
      rmSync(notes, { recursive: true, force: true });
    },
  };
  open.add(bench);
  return bench;
}

/** Nothing asked for is still on. */
export const nothingAsked: Asked = {
  alternateScreen: false,
  cursorHidden: false,
  bracketedPaste: false,
  mouseReported: false,
  keyProtocol: false,
};

/** A terminal given back as it was found. */
export const usable: Omit<Leaving, 'exit'> = { settingsRestored: true, ...nothingAsked };
