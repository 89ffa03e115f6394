// Start to first frame, and opening a long job: the program beside bare ones, in a real terminal, turn about.
import { spawnSync } from 'node:child_process';
import { type Figure, figure } from './figure.ts';
import { dataWith } from './job-file.ts';
import { long, short } from './large-job.ts';
import { bundled, programs } from './programs.ts';
import { compiledOnce, watch } from './terminal.ts';

const rounds = 7;
/** As often as each order of the three comes twice. */
const starts = 12;
const jobIsUp = / Strip .* \d+ off .* \d+ holes open/;
const bareIsUp = /bare \d+ lines, 0 keys/;

async function firstFrame(script: string, args: readonly string[], data: string, up: RegExp): Promise<number> {
  const program = watch(script, args, data);
  const ms = await program.until(up);
  await program.end();
  return ms;
}

/** A program run to its end, without a terminal. `exit` is the one it should end with. */
export function toItsEnd(args: readonly string[], data: string, exit = 0): number {
  const before = performance.now();
  const { status, stderr } = spawnSync(process.execPath, args, {
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { ...process.env, NODE_ENV: '', COUNTBACK_DATA: data, ...compiledOnce },
  });
  if (status !== exit) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
  return performance.now() - before;
}

export async function startTime(): Promise<Figure[]> {
  await bundled();
  const { data } = dataWith('short', short);
  const shelf: number[] = [];
  const job: number[] = [];
  const bare: number[] = [];
  const turns = [
    async () => bare.push(await firstFrame(programs.bareInk, [], data, bareIsUp)),
    async () => shelf.push(await firstFrame(programs.countback, [], data, / Shelf of jobs/)),
    async () => job.push(await firstFrame(programs.countback, ['open', 'short'], data, jobIsUp)),
  ];
  // Another one begins each round: what is started right behind the bare program takes longer by a tenth.
  for (let round = 0; round < starts; round += 1)
    for (let turn = 0; turn < turns.length; turn += 1)
      await turns[(round * 2 + turn * (1 + (round % 2))) % turns.length]?.();
  const goal = '<= 1.3';
  return [
    figure({ name: 'start, shelf', of: 'start to first frame / bare Ink program', unit: 'ms', goal }, shelf, bare),
    figure({ name: 'start, short job', of: 'start to first frame / bare Ink program', unit: 'ms', goal }, job, bare),
  ];
}

export async function openingTime(): Promise<Figure[]> {
  await bundled();
  const { data, path } = dataWith('long', long);
  const opened: number[] = [];
  const bareInk: number[] = [];
  const standing: number[] = [];
  const bareRead: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    bareRead.push(toItsEnd([programs.bareRead, path], data));
    standing.push(toItsEnd([programs.countback, 'standing', 'long'], data, 1));
    bareInk.push(await firstFrame(programs.bareInk, [path], data, bareIsUp));
    opened.push(await firstFrame(programs.countback, ['open', 'long'], data, jobIsUp));
  }
  const goal = '<= 1.5';
  return [
    figure(
      { name: 'open, 20,000 lines', of: 'start to first frame / bare read and bare frame', unit: 'ms', goal },
      opened,
      bareInk,
    ),
    figure({ name: 'open, 20,000 lines', of: 'start to first frame / bare read', unit: 'ms' }, opened, bareRead),
    figure({ name: 'standing, 20,000 lines', of: 'start to end / bare read', unit: 'ms', goal }, standing, bareRead),
  ];
}
