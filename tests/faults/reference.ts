// The reference job as lines to be saved, one after the other, and the look at what a disk has of them.
import { equal, ok } from 'node:assert/strict';
import type { Line } from '../../src/job/line.ts';
import type { ReadLine } from '../../src/store/journal.ts';
import { createJob, type OpenJob, openJob } from '../../src/store/open-job.ts';
import { linesOf, playLines, scriptLines } from '../jobs/lines.ts';
import { type DiskDouble, diskDouble } from '../store/disk-double.ts';
import { jobPath, noon, processesDouble } from '../store/practice.ts';

const played = new Map<string, Line[]>();

function linesFrom(script: string): Line[] {
  const lines = played.get(script) ?? linesOf(playLines(scriptLines(script)).ledger);
  played.set(script, lines);
  return lines;
}

/** From the first bolt to release, from its plan. */
export const referenceLines = (): Line[] => linesFrom('reference-planned.calls');
/** The same without a plan: no line declares as much as a plan does, and all are short. */
export const freeLines = (): Line[] => linesFrom('reference-free.calls');

/** Takes a line for what it is: the shape of a line is checked elsewhere, and a file is opened thousands of times here. */
export const asItIs: ReadLine<Line> = (value) => ({ ok: true, line: value as Line });

let lastPid = 5000;

export function openOn(
  disk: DiskDouble,
  more: { look?: boolean; goOnFrom?: number; fromCopy?: string; living?: Set<number> } = {},
): Promise<OpenJob<Line>> {
  lastPid++;
  const { living, ...rest } = more;
  living?.add(lastPid);
  const processes = processesDouble(lastPid, living);
  return openJob({ path: jobPath, readLine: asItIs, disk, processes, now: noon, ...rest });
}

export async function newJob(): Promise<DiskDouble> {
  const disk = diskDouble();
  await createJob(jobPath, 'reference', disk);
  return disk;
}

/** The file that the lines make, whole. */
export async function fileWith(lines: readonly Line[]): Promise<Buffer> {
  const disk = await newJob();
  const job = await openOn(disk);
  for (const line of lines) await job.append(line);
  await job.close();
  return disk.bytesAt(jobPath) ?? Buffer.alloc(0);
}

export const lineStarts = (bytes: Buffer): number[] => {
  const starts = [0];
  for (let at = bytes.indexOf(10); at >= 0; at = bytes.indexOf(10, at + 1)) starts.push(at + 1);
  return starts;
};

/** Whole lines only, the right ones, and no fewer than were shown as saved. */
export function hasLines(
  kept: readonly Line[],
  expected: readonly Line[],
  { atLeast, atMost = expected.length }: { atLeast: number; atMost?: number },
): void {
  ok(kept.length >= atLeast, `${atLeast} lines were shown as saved, ${kept.length} are there`);
  ok(kept.length <= atMost, `${atMost} lines were called, ${kept.length} are there`);
  // A picture of the difference would take longer than all the rest.
  const other = kept.findIndex((line, i) => JSON.stringify(line) !== JSON.stringify(expected[i]));
  equal(other, -1, `line ${other + 1} says something else`);
}

/** Opens what is left as a mechanic would: confirms where that is asked, and can go on. */
export async function openedAgain(disk: DiskDouble): Promise<OpenJob<Line>> {
  const first = await openOn(disk);
  const job = first.doubt ? await openOn(disk, { goOnFrom: first.doubt.byte }) : first;
  equal(job.mode, 'write');
  equal(job.trouble(), undefined);
  return job;
}
