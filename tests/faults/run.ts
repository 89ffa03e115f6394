// npm run faults: everything that can go wrong, tried on the program, and one table of it at the end. See the usage below.
import { rmSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { bundle } from '../../.build/bundle.js';
import { brokenText, holds, long, type Size, short, tableText } from './row.ts';
import { type FaultName, faults, isFault, restsOn, type runFaults } from './suite.ts';
import { bundled, isPiece, type PieceName, pieces } from './without.ts';

const usage = `npm run faults                      the long form, about half an hour
npm run faults -- --short           what npm test does of it
npm run faults -- --only NAME,…     some of it: ${Object.keys(faults).join(', ')}
npm run faults -- --seed N          from another seed (each has its own number where it breaks)
npm run faults -- --minutes N       of random keys (10); --kills N (300), --races N (200)
npm run faults -- --without PIECE   with ${Object.keys(pieces).join(', ')} taken out: ends well when the suite breaks
`;

async function main(): Promise<number> {
  const option = { type: 'string' } as const;
  const { values } = parseArgs({
    options: {
      short: { type: 'boolean' },
      only: option,
      seed: option,
      minutes: option,
      kills: option,
      races: option,
      without: option,
    },
  });
  const without = values.without;
  if (without !== undefined && !isPiece(without)) throw new Error(`no piece is called ${without}`);
  const usual = values.short || without ? short : long;
  const figure = (name: 'seed' | 'minutes' | 'kills' | 'races'): number => {
    const value = Number(values[name] ?? usual[name]);
    if (!(value >= 0)) throw new Error(`--${name} takes a number`);
    return value;
  };
  const size: Size = {
    long: usual.long,
    seed: figure('seed'),
    minutes: figure('minutes'),
    kills: figure('kills'),
    races: figure('races'),
  };
  const all = Object.keys(faults) as FaultName[];
  const names = values.only?.split(',') ?? (without ? restsOn[without] : all);
  const unknown = names.find((name) => !isFault(name));
  if (unknown !== undefined) throw new Error(`no fault is called ${unknown}`);
  return played(names.filter(isFault), size, without);
}

async function played(names: readonly FaultName[], size: Size, without: PieceName | undefined): Promise<number> {
  // What starts the built program wants it built; a piece is taken out of the suite's own bundle only.
  if (!without) await bundle();
  const suite = await bundled('tests/faults/suite.ts', without);
  const child = await bundled('tests/store/child.ts', without);
  try {
    const made = (await import(pathToFileURL(suite).href)) as { runFaults: typeof runFaults };
    const rows = await made.runFaults(names, size, child, ({ what, tried, held, skipped }, name, seconds) =>
      process.stdout.write(`${name}: ${what}: ${skipped ?? `${held} of ${tried}`}; ${seconds.toFixed(0)} s\n`),
    );
    process.stdout.write(`\n${tableText(rows)}\n\n${brokenText(rows)}`);
    const broken = rows.filter((row) => !holds(row)).length;
    if (!without) return broken === 0 ? 0 : 1;
    process.stdout.write(`without ${without}: ${broken} of ${rows.length} rows do not hold\n`);
    return broken > 0 ? 0 : 1;
  } finally {
    for (const path of [suite, child]) rmSync(path, { force: true });
  }
}

try {
  process.exitCode = await main();
} catch (thrown) {
  process.stderr.write(`${thrown instanceof Error ? thrown.stack : String(thrown)}\n${usage}`);
  process.exitCode = 64;
}
