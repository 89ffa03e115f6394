// The jobs at which the two ledgers once parted, kept so that they are played for ever: the seed they came from, and
// the smallest job it took, which stays what it was when the sequences change.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Line, readLine, type Stamp } from '../../src/job/line.ts';
import type { Job } from './compare.ts';

export type Kept = Job & { seed: number; about: string };

const file = fileURLToPath(new URL('seeds.json', import.meta.url));

export function keptJobs(): Kept[] {
  const all = JSON.parse(readFileSync(file, 'utf8')) as { seed: number; about: string; now: Stamp; lines: unknown[] }[];
  return all.map(({ lines, ...rest }) => ({ ...rest, lines: lines.map(readKept) }));
}

function readKept(value: unknown): Line {
  const read = readLine(value);
  if (!read.ok) throw new Error(`seeds.json holds a line that is none: ${read.what}`);
  return read.line;
}

/** One job a row of the file, so that a new one is one line of a diff. */
export function keep(one: Kept): void {
  const { atMs, zoneMin, run, awakeMs } = one.now;
  const row = { seed: one.seed, about: one.about, now: { atMs, zoneMin, run, awakeMs }, lines: one.lines };
  const rows = [...keptJobs().filter((kept) => kept.seed !== one.seed), row];
  writeFileSync(file, `[\n${rows.map((kept) => JSON.stringify(kept)).join(',\n')}\n]\n`);
}
