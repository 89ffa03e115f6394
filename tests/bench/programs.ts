// The program and the bare programs it is measured beside, all bundled in the same way before anything is timed.
import { join } from 'node:path';
import { bundle } from '../../.build/bundle.js';
import { benchFolder, root } from './job-file.ts';

export const programs = {
  countback: join(root, 'src/launcher.js'),
  bareInk: join(benchFolder, 'bare-ink.js'),
  bareSame: join(benchFolder, 'bare-same.js'),
  bareRead: join(benchFolder, 'bare-read.js'),
};

let made: Promise<unknown> | undefined;
export function bundled(): Promise<unknown> {
  made ??= bundle()
    .then(() => bundle('tests/bench/bare/ink.tsx', programs.bareInk))
    .then(() => bundle('tests/bench/bare/same.tsx', programs.bareSame))
    .then(() => bundle('tests/bench/bare/read.ts', programs.bareRead));
  return made;
}
