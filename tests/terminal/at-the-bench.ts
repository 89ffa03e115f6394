// What a mechanic does at the bench, by the names of the table of calls: makes a job, takes it, presses the key of a call.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { rowById } from '../../src/calls/table.ts';
import type { ScreenId } from '../../src/view/screens.ts';
import { type BenchSide, type Setting, start } from './bench-side.ts';

export const launcher = fileURLToPath(new URL('../../src/launcher.js', import.meta.url));
const names: Record<string, string> = { enter: 'Enter', space: 'Space', backspace: 'Backspace', escape: 'Escape' };

/** The keys that a call has on a screen, as keys.ts names them. */
function keysFor(call: string, screen: ScreenId): string[] {
  const found = rowById.get(call)?.keys.filter((k) => k.on === 'any' || [k.on].flat().includes(screen)) ?? [];
  if (found.length === 0) throw new Error(`${call} has no key on ${screen}`);
  return found.map(({ key }) => names[key] ?? key);
}
export const keyFor = (call: string, screen: ScreenId): string => keysFor(call, screen)[0] as string;

export const labelOf = (call: string): string => rowById.get(call)?.label ?? `no call "${call}"`;

/** So many fasteners off, by two keys in turn: one key alone at a machine's pace is taken for one that is stuck. */
export function offKeys(many: number): string[] {
  const [one, other] = keysFor('off', 'strip');
  if (one === undefined || other === undefined) throw new Error('off has not two keys');
  return Array.from({ length: many }, (_, i) => (i % 2 === 0 ? one : other));
}

/** A job made by typed lines before the program is started. */
export function jobBy(dataDir: string, job: string, lines: readonly string[]): void {
  const { status, stderr, stdout } = spawnSync(process.execPath, [launcher, 'take', job, '--new'], {
    input: `${lines.join('\n')}\n`,
    env: { ...process.env, COUNTBACK_DATA: dataDir },
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`take ended with ${status}: ${stderr}${stdout}`);
}

export const fileOf = (dataDir: string, job: string): string => join(dataDir, 'jobs', `${job}.countback.jsonl`);

/** Who has the job: its lock says so. */
export const lockOf = (dataDir: string, job: string): { pid: number } =>
  JSON.parse(readFileSync(`${fileOf(dataDir, job)}.lock`, 'utf8'));

/** The calls on the disk, each as its entries' kinds. */
export function callsIn(dataDir: string, job: string): string[] {
  const path = fileOf(dataDir, job);
  if (!existsSync(path)) return [];
  const whole = readFileSync(path, 'utf8').split('\n').slice(1, -1);
  return whole.map((text) =>
    (JSON.parse(text) as { entries: { kind: string }[] }).entries.map((e) => e.kind).join(' '),
  );
}
/** How many fasteners were called off, by what is on the disk. */
export const offIn = (dataDir: string, job: string): number =>
  callsIn(dataDir, job).filter((kinds) => kinds.split(' ').includes('fastener-removed')).length;

export const beside = (dataDir: string): string[] => readdirSync(join(dataDir, 'jobs')).sort();

/** The first row of the screen, where the counts and "saved" stand. */
export const head = (frame: readonly string[]): string => frame[0] ?? '';
export const saysSaved = (off: number) => (frame: readonly string[]) =>
  head(frame).includes(`${off} off`) && /\bsaved\b/.test(head(frame));

/** Painted for a window of that width: the line above the answer goes from edge to edge. */
export const spans = (cols: number) => (frame: readonly string[]) => frame.includes('─'.repeat(cols));

/** Opens a job that has an area in use already, and waits until it is on the screen. */
export async function atJob(job: string, setting: Setting = {}): Promise<BenchSide> {
  const bench = start(['open', job], setting);
  await bench.waitFor((frame) => /\d+ off/.test(head(frame)));
  return bench;
}

/** What the screen says, wrapped rows put together. */
export const said = (frame: readonly string[]): string =>
  frame
    .map((row) => row.trim())
    .join(' ')
    .replaceAll(/ +/g, ' ');

/** The data folder of a job with one call off, made once and copied for each test. */
export function benchData(): { begin(): string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'at-the-bench-'));
  const first = join(folder, 'first');
  jobBy(first, 'hatchback', ['job "grey hatchback"', 'area "cam cover"', 'off 1']);
  let copies = 0;
  return {
    begin() {
      copies += 1;
      const copy = join(folder, String(copies));
      cpSync(first, copy, { recursive: true });
      return copy;
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
