// Makes dist/: the whole program as ES modules that need nothing but Node.
// Run by `npm run build`, by `npm ci` (prepare), by the launcher when the sources are newer, and once before
// the tests. It is not part of the program and is not in the published package.
import { mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../', import.meta.url));

/** Another entry is bundled the same way, to be measured beside the program. */
export async function bundle(entry = 'src/main.tsx', whole = join(root, 'dist/countback.js')) {
  const folder = dirname(whole);
  const name = basename(whole, '.js');
  const made = await build({
    absWorkingDir: root,
    entryPoints: { [name]: entry },
    outdir: folder,
    write: false,
    bundle: true,
    // The screen comes in a file of its own: a command that answers in a line need not read it.
    splitting: true,
    chunkNames: `${name}-[name]-[hash]`,
    // Names stay: a bug's report shows the functions it came through.
    minifyWhitespace: true,
    minifySyntax: true,
    legalComments: 'none',
    platform: 'node',
    format: 'esm',
    target: 'node22.12',
    jsx: 'automatic',
    define: {
      'process.env.NODE_ENV': '"production"',
      // Ink looks for a developer's inspector when DEV is set; a mechanic's environment must not reach it.
      'process.env.DEV': '"false"',
      // The program opens no connection. One package would take its own bytes through fetch, which brings in all of it.
      fetch: 'undefined',
      'Intl.Segmenter': 'GraphemeSegmenter',
    },
    inject: ['./src/screen/graphemes.ts'],
    alias: { 'react-devtools-core': './.build/no-devtools.js', 'string-width': './.build/string-width.js' },
    // Some packages still call require() for Node's own modules.
    banner: {
      js: "import { createRequire as makeRequire } from 'node:module';\nconst require = makeRequire(import.meta.url);",
    },
    logLevel: 'warning',
  });
  mkdirSync(folder, { recursive: true });
  // Each is renamed into place, the one that names the others last: a program started meanwhile reads the old ones or
  // the new ones, never half of one.
  const entryLast = made.outputFiles.toSorted((a, b) => Number(a.path === whole) - Number(b.path === whole));
  for (const { path, text } of entryLast) {
    const fresh = join(folder, `.${basename(path)}.${process.pid}`);
    writeFileSync(fresh, inAscii(text));
    renameSync(fresh, path);
  }
  const kept = new Set(made.outputFiles.map(({ path }) => basename(path)));
  for (const old of readdirSync(folder)) {
    if (old.startsWith(`${name}-`) && !kept.has(old)) rmSync(join(folder, old), { force: true });
  }
}

/**
 * The bundler leaves characters beyond ASCII in regular expressions only. One of them, and Node keeps the whole file in
 * twice the room and takes twice as long to read it.
 */
const inAscii = (text) =>
  text.replace(/[\u0080-\uffff]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);

if (process.argv[1] === fileURLToPath(import.meta.url)) await bundle();
