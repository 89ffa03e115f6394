// Who is running: a mark for this program's own process and whether the one with a given mark is still alive. A number
// alone is not enough, the system gives it out again; so the mark holds when the process began, too.
import { execFile } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { hostname } from 'node:os';

export type Mark = { host: string; pid: number; began: string };

export type Processes = {
  self(): Promise<Mark>;
  /** Of a mark made on this host. */
  isAlive(mark: Mark): Promise<boolean>;
};

export const realProcesses: Processes = {
  self: async () => ({ host: hostname(), pid: process.pid, began: (await beganOf(process.pid)) ?? unknown }),
  async isAlive(mark) {
    if (!hasProcess(mark.pid)) return false;
    const began = await beganOf(mark.pid);
    if (began === undefined) return !hasProcFolder;
    return began === unknown || mark.began === unknown || began === mark.began;
  },
};

/** Windows tells no beginning without a slow outside program: there the number alone decides. */
const unknown = 'unknown';
const hasProcFolder = process.platform === 'linux' || process.platform === 'android';

function hasProcess(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    // Another user's process: not ours to signal, but there.
    return thrown instanceof Error && 'code' in thrown && thrown.code === 'EPERM';
  }
}

/** Undefined when there is no such process, or only what is left of it. */
async function beganOf(pid: number): Promise<string | undefined> {
  if (process.platform === 'win32') return unknown;
  return hasProcFolder ? beganByProc(pid) : beganByPs(pid);
}

async function beganByProc(pid: number): Promise<string | undefined> {
  try {
    // Ticks count from the boot: the boot's own name goes with them.
    const boot = (await readFile('/proc/sys/kernel/random/boot_id', 'utf8')).trim();
    const stat = await readFile(`/proc/${pid}/stat`, 'utf8');
    // The second field is the program's name, which may hold spaces and brackets; the rest follows the last bracket.
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    const [state] = fields;
    const ticks = fields[19];
    return state === 'Z' || state === 'X' || ticks === undefined ? undefined : `${boot}/${ticks}`;
  } catch {
    return undefined;
  }
}

function beganByPs(pid: number): Promise<string | undefined> {
  return new Promise((resolve) => {
    execFile(
      'ps',
      ['-o', 'lstart=', '-p', String(pid)],
      { env: { ...process.env, LC_ALL: 'C', TZ: 'UTC' } },
      (error, out) => resolve(error ? undefined : out.trim() || undefined),
    );
  });
}
