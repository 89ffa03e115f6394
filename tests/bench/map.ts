// From a key to its picture on the largest map there may be, beside the smallest: one more fastener off of 300 and of 5.
// Both programs stand open at once and take turns.
import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { type Figure, figure, medianOf, quantile } from './figure.ts';
import { benchFolder } from './job-file.ts';
import { bundled, programs } from './programs.ts';
import { comfortable, type Watched, watch } from './terminal.ts';

const rounds = 5;
const keysEach = 20;
const pause = () => new Promise((resolve) => setTimeout(resolve, 100));

async function coverOf(drawn: string): Promise<{ program: Watched; painted: number[] }> {
  const data = mkdtempSync(join(benchFolder, 'map-'));
  const env = { ...process.env, COUNTBACK_DATA: data };
  const lines = ['job map', 'area cover', `drawn as ${drawn}`, 'use bolt hex 10 M6x25'].join('\n');
  execFileSync(process.execPath, [programs.countback, 'take', 'map', '--new'], { input: lines, env });
  const program = watch(programs.countback, ['open', 'map'], data);
  await program.until(/Any key goes on|cover/);
  await program.quiet();
  program.press('S');
  await program.quiet();
  return { program, painted: [] };
}

/** One off, and struck again, so that the small one has always one more. */
async function press({ program, painted }: { program: Watched; painted: number[] }): Promise<void> {
  program.press('\r');
  painted.push(await program.until(/\(1 off, 0 slack\)/));
  await program.quiet();
  program.press('\u007f');
  await program.until(/ 0 off .* saved/);
  await pause();
}

export async function mapTime(): Promise<Figure[]> {
  await bundled();
  const few = await coverOf('ring of 5');
  const many = await coverOf('cover of 20 by 15');
  for (let key = 0; key < rounds * keysEach; key += 1) {
    await press(few);
    await press(many);
  }
  for (const { program } of [few, many]) await program.end();
  const inRounds = (values: readonly number[], of: (some: readonly number[]) => number) =>
    Array.from({ length: rounds }, (_, round) => of(values.slice(round * keysEach, (round + 1) * keysEach)));
  const p95 = (some: readonly number[]) => quantile(some, 0.95);
  const what = { of: `a map of 5, ${comfortable.cols} by ${comfortable.rows}`, unit: 'ms' } as const;
  return [
    figure(
      { ...what, name: 'key to painted p50, 300 holes', goal: '<= 2' },
      inRounds(many.painted, medianOf),
      inRounds(few.painted, medianOf),
    ),
    figure({ ...what, name: 'key to painted p95, 300 holes' }, inRounds(many.painted, p95), inRounds(few.painted, p95)),
  ];
}
