// What the store's tests share: lines of no meaning, a world of processes that live and die on command, jobs opened on
// the double. It asserts nothing.
import type { ReadLine } from '../../src/store/journal.ts';
import { createJob, type OpenJob, type OpenJobOptions, openJob } from '../../src/store/open-job.ts';
import type { Mark, Processes } from '../../src/store/processes.ts';
import { type DiskDouble, diskDouble } from './disk-double.ts';

export type PracticeLine = { n: number; said: string; more?: string[] };

export const readLine: ReadLine<PracticeLine> = (value) => {
  if (value === null || typeof value !== 'object') return { ok: false, what: 'not a line', newer: false };
  const unknown = Object.keys(value).find((key) => !['n', 'said', 'more'].includes(key));
  if (unknown) return { ok: false, what: `unknown field ${unknown}`, newer: true };
  const { n, said } = value as Partial<PracticeLine>;
  if (typeof n !== 'number' || typeof said !== 'string') return { ok: false, what: 'not a line', newer: false };
  return { ok: true, line: value as PracticeLine };
};

/** Lengths differ, and some reach over several blocks; umlauts take two bytes. */
export const lineNo = (n: number): PracticeLine => ({ n, said: `bolt ${n} off, ${'größer '.repeat((n * 7) % 11)}` });
export const linesTo = (last: number) => Array.from({ length: last }, (_, i) => lineNo(i + 1));

/** Processes of one host; `living` is empty after a power cut. */
export function processesDouble(pid: number, living: Set<number> = new Set([pid]), host = 'shed'): Processes {
  const mark: Mark = { host, pid, began: `began-${pid}` };
  return {
    self: async () => mark,
    isAlive: async (other) => living.has(other.pid) && other.began === `began-${other.pid}`,
  };
}

export const jobPath = '/jobs/blue.countback.jsonl';
export const noon = () => new Date(2026, 2, 4, 12, 0, 0);

let lastPid = 1000;

export function openOn(
  disk: DiskDouble,
  options: Partial<OpenJobOptions<PracticeLine>> = {},
): Promise<OpenJob<PracticeLine>> {
  lastPid++;
  return openJob({ path: jobPath, readLine, disk, processes: processesDouble(lastPid), now: noon, ...options });
}

export async function newJobOn(disk: DiskDouble = diskDouble()): Promise<DiskDouble> {
  await createJob(jobPath, 'blue estate', disk);
  return disk;
}

/** A closed job file with `last` lines, its bytes, and the place where each of its lines begins. */
export async function jobOf(last: number): Promise<{ disk: DiskDouble; bytes: Buffer; starts: number[] }> {
  const disk = await newJobOn();
  const job = await openOn(disk);
  for (const line of linesTo(last)) await job.append(line);
  await job.close();
  const bytes = disk.bytesAt(jobPath) ?? Buffer.alloc(0);
  const starts = [0];
  for (let at = bytes.indexOf(10); at >= 0; at = bytes.indexOf(10, at + 1)) starts.push(at + 1);
  return { disk, bytes, starts };
}

export function diskWith(bytes: Uint8Array): DiskDouble {
  const disk = diskDouble();
  disk.put(jobPath, bytes);
  return disk;
}
