// Merging plans: the first merge of a program that has just been started, since that is the one a mechanic waits for.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { type Figure, figure } from './figure.ts';

const rounds = 7;
const once = fileURLToPath(new URL('merge-once.ts', import.meta.url));

export async function mergeTime(): Promise<Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'countback-bench-'));
  const program = join(folder, 'merge-once.mjs');
  // Bundled as the program itself is.
  await build({ entryPoints: [once], outfile: program, bundle: true, platform: 'node', format: 'esm', minify: false });
  const runs = Array.from({ length: rounds }, () => {
    const text = execFileSync(process.execPath, [program], { encoding: 'utf8' });
    return JSON.parse(text) as { mergedMs: number; parsedMs: number };
  });
  rmSync(folder, { recursive: true });
  return [
    figure(
      {
        name: 'first merge',
        of: '20 services of 100 areas merged / their plans read as bare JSON',
        unit: 'ms',
        goal: '< 100 ms',
      },
      runs.map((one) => one.mergedMs),
      runs.map((one) => one.parsedMs),
    ),
  ];
}
