// The suite with one piece of the store taken out: does it see it? Each piece is a place in the sources that is written
// otherwise while the suite is bundled; the sources themselves stay as they are.
import { readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build, type Plugin } from 'esbuild';

type Piece = { file: string; was: string; becomes: string };

export const pieces = {
  fsync: { file: 'src/store/tail.ts', was: 'await file.sync();', becomes: '' },
  lock: {
    file: 'src/store/open-job.ts',
    was: 'return await takeLock(disk, processes, path);',
    becomes: 'return { release: async () => {}, stillMine: async () => undefined };',
  },
  'torn-line': {
    file: 'src/store/chain.ts',
    was: "if (!first) return done({ kind: 'torn', ...place, bytes: bytes.length - at });",
    becomes: "if (!first) return done({ kind: 'damaged', ...place });",
  },
} satisfies Record<string, Piece>;
export type PieceName = keyof typeof pieces;

export const isPiece = (name: string): name is PieceName => Object.hasOwn(pieces, name);

const root = fileURLToPath(new URL('../../', import.meta.url));

function otherwise(piece: Piece | undefined): Plugin {
  return {
    name: 'otherwise',
    setup(making) {
      making.onLoad({ filter: /\/(src|tests)\/.*\.tsx?$/ }, ({ path }) => {
        let text = readFileSync(path, 'utf8');
        if (piece && path.endsWith(piece.file)) {
          if (!text.includes(piece.was)) throw new Error(`${piece.file} has no "${piece.was}"; name the place anew`);
          text = text.replaceAll(piece.was, piece.becomes);
        }
        // Each module still finds the files that lie beside it.
        const here = JSON.stringify(pathToFileURL(path).href);
        return {
          contents: text.replaceAll('import.meta.url', here),
          loader: path.endsWith('x') ? 'tsx' : 'ts',
        };
      });
    },
  };
}

/** Bundles a module of the tests, with the piece taken out where one is named; answers where the bundle lies. */
export async function bundled(entry: string, without?: PieceName): Promise<string> {
  // Below the checkout, so that packages are found from there.
  const folder = `${root}node_modules/.cache/countback-faults`;
  await mkdir(folder, { recursive: true });
  const name = entry.replaceAll(/\W+/g, '-');
  const outfile = `${folder}/${name}${without ? `-without-${without}` : ''}-${process.pid}.mjs`;
  await build({
    entryPoints: [`${root}${entry}`],
    outfile,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    jsx: 'automatic',
    logLevel: 'error',
    plugins: [otherwise(without && pieces[without])],
  });
  return outfile;
}
