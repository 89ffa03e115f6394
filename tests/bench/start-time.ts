// How long the built program takes to answer, beside a Node that does nothing: trust the ratio.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const launcher = fileURLToPath(new URL('../../src/launcher.js', import.meta.url));

export function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

function milliseconds(args: readonly string[]): number {
  const before = performance.now();
  const { status } = spawnSync(process.execPath, args, { stdio: 'ignore' });
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}`);
  return performance.now() - before;
}

export function startTime(): string[] {
  const rounds = 15;
  const bare: number[] = [];
  const program: number[] = [];
  milliseconds([launcher, '--version']);
  for (let round = 0; round < rounds; round += 1) {
    bare.push(milliseconds(['-e', '0']));
    program.push(milliseconds([launcher, '--version']));
  }
  const [nothing, version] = [medianOf(bare), medianOf(program)];
  return [
    `node -e 0            ${nothing.toFixed(0)} ms (median of ${rounds}, taken in turns)`,
    `countback --version  ${version.toFixed(0)} ms, ${(version / nothing).toFixed(1)} times that`,
  ];
}
