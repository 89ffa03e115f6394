// Runs a command in a data folder of its own and says what came of it: the command line itself, within this process, or
// the built program as a shell would start it.
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Out } from '../../src/commands/answer.ts';
import { runCommandLine } from '../../src/commands/command-line.ts';
import { plainLines, plainText } from '../../src/trade/plain-text.ts';

export const launcher = fileURLToPath(new URL('../../src/launcher.js', import.meta.url));
const packageRoot = pathToFileURL(fileURLToPath(new URL('../../', import.meta.url)));
const notOfAShell = /^(CI|NODE_ENV|NODE_OPTIONS|VITEST.*|npm_.*|FORCE_COLOR|NO_COLOR|COUNTBACK_.*)$/;

export type Ended = { exit: number; out: string; complaint: string };
export type Setting = {
  input?: string | Uint8Array;
  env?: Record<string, string>;
  cwd?: string;
  /** Another user, where the test runs as root, to whom nothing is forbidden. */
  uid?: number;
};

/** A scratch folder for one test: where the data lie, and commands run on them. */
export type Bench = {
  folder: string;
  dataDir: string;
  /** The command line, called. */
  run(args: readonly string[], setting?: Pick<Setting, 'input' | 'env' | 'cwd'>): Promise<Ended>;
  /** The built program, a process, until it ends. */
  runProgram(args: readonly string[], setting?: Setting): Promise<Ended>;
  /** Started and left running, its streams open. */
  begin(args: readonly string[], setting?: Setting): Running;
  fileOf(job: string): string;
  /** Puts a copy of another bench's data here, as they are. */
  copy(from: Bench): void;
  /** The texts of the lines on the disk, header apart. */
  callsOf(job: string): string[];
  remove(): void;
};
export type Running = {
  child: ChildProcess;
  type(text: string): void;
  /** Back when standard output holds this. */
  says(words: string): Promise<void>;
  ended: Promise<Ended>;
};

export function newBench(): Bench {
  const folder = mkdtempSync(join(tmpdir(), 'countback-commands-'));
  const dataDir = join(folder, 'data');
  const fileOf = (job: string) => join(dataDir, 'jobs', `${job}.countback.jsonl`);

  function begin(args: readonly string[], { env, cwd = folder, uid }: Setting = {}): Running {
    const kept = Object.entries(process.env).filter(([name]) => !notOfAShell.test(name));
    const child = spawn(process.execPath, [launcher, ...args], {
      cwd,
      env: { ...Object.fromEntries(kept), HOME: folder, COUNTBACK_DATA: dataDir, ...env },
      ...(uid !== undefined && { uid, gid: uid }),
    });
    let out = '';
    let complaint = '';
    const watchers = new Set<() => void>();
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
      for (const look of watchers) look();
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      complaint += text;
    });
    // It may have ended before it read everything.
    child.stdin.on('error', () => undefined);
    const ended = new Promise<Ended>((resolve) => {
      child.on('close', (code, signal) => {
        resolve({ exit: code ?? (signal === 'SIGKILL' ? 137 : -1), out, complaint });
        for (const look of watchers) look();
      });
    });
    return {
      child,
      ended,
      type: (text) => void child.stdin.write(text),
      says: (words) =>
        new Promise((resolve, reject) => {
          const look = () => {
            if (out.includes(words)) resolve();
            else if (child.exitCode !== null) reject(new Error(`ended without "${words}":\n${out}${complaint}`));
          };
          watchers.add(look);
          look();
        }),
    };
  }

  return {
    folder,
    dataDir,
    begin,
    run: (args, { input = '', env = {}, cwd = folder } = {}) =>
      oneAfterAnother(() => called(args, input, { HOME: folder, COUNTBACK_DATA: dataDir, ...env }, cwd)),
    runProgram(args, setting = {}) {
      const { child, ended } = begin(args, setting);
      child.stdin?.end(setting.input ?? '');
      return ended;
    },
    fileOf,
    copy: (from) => cpSync(from.dataDir, dataDir, { recursive: true }),
    callsOf: (job) => readFileSync(fileOf(job), 'utf8').split('\n').slice(1, -1),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

// A process has one environment and one folder it stands in.
let last: Promise<unknown> = Promise.resolve();
function oneAfterAnother<T>(work: () => Promise<T>): Promise<T> {
  const next = last.then(work, work);
  last = next.catch(() => undefined);
  return next;
}

async function called(
  args: readonly string[],
  input: string | Uint8Array,
  env: Record<string, string>,
  cwd: string,
): Promise<Ended> {
  const ended: Ended = { exit: 0, out: '', complaint: '' };
  const out: Out = {
    write(text) {
      ended.out += plainLines(text);
    },
    complain(text) {
      ended.complaint += `${plainText(text)}\n`;
    },
    isUnread: () => false,
  };
  const before = { env: { ...process.env }, cwd: process.cwd() };
  Object.assign(process.env, env);
  process.chdir(cwd);
  try {
    ended.exit = await runCommandLine(args, {
      out,
      packageRoot,
      show: () => Promise.reject(new Error('nothing is painted without a terminal')),
      input: () => Readable.from([Buffer.from(input)]),
    });
    return ended;
  } finally {
    process.chdir(before.cwd);
    for (const name of Object.keys(env)) {
      const was = before.env[name];
      if (was === undefined) delete process.env[name];
      else process.env[name] = was;
    }
  }
}

/** Nothing that steers a terminal or turns the reading direction. */
export const steersNothing =
  /^(?:\n|[^\p{Cc}\u{61c}\u{200b}\u{200e}\u{200f}\u{2028}-\u{202e}\u{2060}-\u{206f}\u{feff}])*$/u;

/** A bench with one job on it, of two calls: "hatchback", the area "cam cover" in use and its hole 1 off. */
export async function benchWithJob(): Promise<Bench> {
  const bench = newBench();
  const input = 'job "grey hatchback"\narea "cam cover"\noff 1\n';
  const { exit, complaint } = await bench.run(['take', 'hatchback', '--new'], { input });
  if (exit !== 0) throw new Error(`take ended with ${exit}: ${complaint}`);
  return bench;
}
