// `npm run docs`: writes the generated blocks of README.md and DEVELOPERS.md. With --check it writes nothing and fails
// when one is behind.
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { blocks, documents } from './blocks.ts';
import { withBlocks } from './writing.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const checking = process.argv.includes('--check');

for (const name of documents) {
  const before = readFileSync(`${root}${name}`, 'utf8');
  const after = withBlocks(before, blocks);
  if (before === after) continue;
  if (checking) {
    process.stderr.write(`${name} is behind the sources: run npm run docs\n`);
    process.exitCode = 1;
  } else {
    writeFileSync(`${root}${name}`, after);
    process.stdout.write(`wrote ${name}\n`);
  }
}
