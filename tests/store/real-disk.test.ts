// The real disk and real processes: racing for one job, killed while they hold it, killed in a storm of keys. A kill
// proves no fsync, memory outlives the process; the power cuts are in power-cut.test.ts.
import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createJob, openJob } from '../../src/store/open-job.ts';
import { linesTo, readLine } from './practice.ts';

let folder = '';
let child = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'countback-store-'));
  child = join(folder, 'child', 'child.mjs');
  // One file starts several times as fast, and thirty are started.
  const entryPoints = [fileURLToPath(new URL('child.ts', import.meta.url))];
  buildSync({ entryPoints, outfile: child, bundle: true, platform: 'node', format: 'esm', logLevel: 'error' });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function newJob(name: string): Promise<string> {
  const path = join(folder, name, `${name}.countback.jsonl`);
  await createJob(path, name);
  return path;
}

function run(path: string, manner: string, onOutput: (all: string, kill: () => void) => void = () => undefined) {
  return new Promise<{ output: string; signal: NodeJS.Signals | null; code: number | null }>((resolve, reject) => {
    const started = spawn(process.execPath, [child, path, manner], { stdio: ['ignore', 'pipe', 'inherit'] });
    let output = '';
    started.stdout.setEncoding('utf8').on('data', (text: string) => {
      output += text;
      onOutput(output, () => started.kill('SIGKILL'));
    });
    started.on('error', reject);
    started.on('close', (code, signal) => resolve({ output, signal, code }));
  });
}

it('[D3] eight processes at once, half of them killed while they hold the job: one owner at a time, no line lost', async () => {
  for (const round of [1, 2]) {
    const path = await newJob(`race-${round}`);
    await run(path, 'die');
    const manners = ['once', 'die', 'once', 'die', 'once', 'die', 'once', 'die'];
    const ended = await Promise.all(manners.map((manner) => run(path, manner)));
    expect(ended.map((e) => e.output)).toEqual(manners.map(() => ''));
    expect(ended.map((e) => e.signal)).toEqual(manners.map((m) => (m === 'die' ? 'SIGKILL' : null)));
    const job = await openJob({ path, readLine });
    expect(job.mode).toBe('write');
    expect(new Set(job.lines().map((line) => line.said)).size).toBe(9);
    expect(job.notices).toEqual([]);
    await job.close();
    expect(readdirSync(join(path, '..')).filter((n) => n.includes('.lock'))).toEqual([]);
  }
});

it('[D3] a process killed while it takes over a dead lock does not keep the job shut', async () => {
  const path = await newJob('thief');
  await run(path, 'die');
  for (let thief = 0; thief < 2; thief++) expect((await run(path, 'die-stealing')).signal).toBe('SIGKILL');
  expect(readdirSync(join(path, '..')).filter((n) => n.includes('.steal-')).length).toBe(2);
  expect(await run(path, 'once')).toEqual({ output: '', signal: null, code: 0 });
  expect(readdirSync(join(path, '..')).filter((n) => n.includes('.lock'))).toEqual([]);
});

it('[D2] killed in a storm of keys, again and again: every line shown as saved is there', async () => {
  const path = await newJob('storm');
  let before = 0;
  for (const many of [1, 40, 200, 90]) {
    const { output, signal } = await run(path, 'storm', (all, kill) => {
      if (all.split('\n').length > many) kill();
    });
    expect(signal).toBe('SIGKILL');
    const acknowledged = Number(output.trimEnd().split('\n').at(-1));
    expect(acknowledged).toBeGreaterThanOrEqual(before + many);
    const job = await openJob({ path, readLine });
    expect(job.mode).toBe('write');
    expect(job.lines().length).toBeGreaterThanOrEqual(acknowledged);
    expect(job.lines()).toEqual(linesTo(job.lines().length));
    before = job.lines().length;
    await job.close();
  }
});

it('[D4] a refused file on the real disk is left as it is, and so is its folder', async () => {
  const path = join(folder, 'foreign.countback.jsonl');
  writeFileSync(path, 'a shopping list\n');
  const before = readdirSync(folder);
  await expect(openJob({ path, readLine })).rejects.toMatchObject({ kind: 'foreign', where: path });
  await expect(openJob({ path: folder, readLine })).rejects.toMatchObject({ kind: 'foreign', where: folder });
  await expect(openJob({ path: `${path}.gone`, readLine })).rejects.toMatchObject({ kind: 'missing' });
  await expect(createJob(path, 'x')).rejects.toMatchObject({ kind: 'exists' });
  expect(readFileSync(path, 'utf8')).toBe('a shopping list\n');
  expect(readdirSync(folder)).toEqual(before);
});
