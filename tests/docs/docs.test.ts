// README.md and DEVELOPERS.md say what the sources say: generated blocks are as generated, named paths are there,
// named npm scripts exist.
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { blocks, documents, table } from './blocks.ts';
import { whyEach } from './dependencies.ts';
import { pathsNamedIn } from './paths.ts';
import { blocksIn, strayMarkers, withBlocks } from './writing.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const read = (name: string): string => readFileSync(`${root}${name}`, 'utf8');
const { scripts, dependencies, devDependencies } = JSON.parse(read('package.json'));
const packages = Object.keys({ ...dependencies, ...devDependencies });

describe.each(documents)('%s', (name) => {
  const document = read(name);

  it('has its generated blocks as the sources make them', () => {
    expect(withBlocks(document, blocks) === document, `${name} is behind the sources: run npm run docs`).toBe(true);
    expect(strayMarkers(document)).toBe(0);
  });

  it('names only npm scripts there are', () => {
    const named = [...document.matchAll(/\bnpm run ([a-z:-]+)/g)].map(([, script]) => script);
    expect(named.filter((script) => !(String(script) in scripts))).toEqual([]);
  });

  it('names only paths there are', () => {
    expect(pathsNamedIn(document, packages).filter((path) => !existsSync(`${root}${path}`))).toEqual([]);
  });
});

describe('the blocks', () => {
  it('are each used somewhere', () => {
    const used = documents.flatMap((name) => blocksIn(read(name)));
    expect(Object.keys(blocks).filter((name) => !used.includes(name))).toEqual([]);
  });

  it('change nothing outside their markers, and writing twice is writing once', () => {
    const before = 'a\n<!-- made: x -->\nold\n<!-- /made -->\nb | c\n';
    const after = withBlocks(before, { x: () => table(['h'], [['1 | 2\n3']]) });
    expect(after).toBe('a\n<!-- made: x -->\n\n| h |\n|---|\n| 1 \\| 2 3 |\n\n<!-- /made -->\nb | c\n');
    expect(withBlocks(after, { x: () => table(['h'], [['1 | 2\n3']]) })).toBe(after);
  });

  it('must be known, and their markers a pair', () => {
    expect(() => withBlocks('<!-- made: y -->\n<!-- /made -->', {})).toThrow(/no block is called y/);
    expect(strayMarkers('<!-- made: y -->\nwithout an end')).toBe(1);
  });
});

describe('the packages', () => {
  it('have each a reason to be here, and no reason is left of one that went', () => {
    expect(Object.keys(whyEach).sort()).toEqual(packages.sort());
  });
});

describe('paths named in backticks', () => {
  it('are told from packages, commands and bare words', () => {
    const text =
      'in `src/job/RULES.md`, `tests/rules/` and `package.json`; not `zustand/vanilla`, `npm run docs`, `trade`, `1/2`';
    const fenced = '```\nnpm ci\n```\n';
    expect(pathsNamedIn(fenced + text, ['zustand'])).toEqual(['src/job/RULES.md', 'tests/rules/', 'package.json']);
  });
});
