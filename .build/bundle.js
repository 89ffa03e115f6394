// Makes dist/countback.js: the whole program as one ES module that needs nothing but Node.
// Run by `npm run build`, by `npm ci` (prepare), by the launcher when the sources are newer, and once before
// the tests. It is not part of the program and is not in the published package.
import { mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../', import.meta.url));

/** Another entry is bundled the same way, to be measured beside the program. */
export async function bundle(entry = 'src/main.tsx', whole = join(root, 'dist/countback.js')) {
  const made = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    outfile: whole,
    write: false,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node22.12',
    jsx: 'automatic',
    define: {
      'process.env.NODE_ENV': '"production"',
      // Ink looks for a developer's inspector when DEV is set; a mechanic's environment must not reach it.
      'process.env.DEV': '"false"',
    },
    alias: { 'react-devtools-core': './.build/no-devtools.js' },
    // Some packages still call require() for Node's own modules.
    banner: {
      js: "import { createRequire as makeRequire } from 'node:module';\nconst require = makeRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
  mkdirSync(dirname(whole), { recursive: true });
  const fresh = join(dirname(whole), `.${basename(whole)}.${process.pid}`);
  // Renamed into place: a program started meanwhile reads the old bundle or the new one, never half of one.
  writeFileSync(fresh, made.outputFiles[0].contents);
  renameSync(fresh, whole);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await bundle();
