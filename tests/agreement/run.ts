// npm run model -- HOW-MANY [FIRST-SEED], or -- planted: random jobs held against the second model, for as long as one
// likes. Says how far it is and what the run is worth; stops at the first disagreement, shrinks it and keeps its seed.
// -- on MINUTES goes on behind the last seed that any run did, past disagreements, after every line of each job, and adds
// to the sum; -- sum tells it.
import { inWords } from '../model/agree.ts';
import { compared, type Often, shortestOf } from './compare.ts';
import { figuresText, noFigures, note, shortfalls } from './figures.ts';
import { keep } from './kept.ts';
import { everyPlantedIsFound } from './planted.ts';
import { shrunk } from './shrink.ts';
import { beginningsDone, markOfCore, nextSeed, noteRun, type Run, runsDone, seedsDone } from './tally.ts';

const often: Often = { atLines: 0.06, inAllWays: 0.15 };
/** One way after every line costs what all ways do after a few. */
const afterEveryLine: Often = { atLines: 1, inAllWays: 0.02 };

function usage(): never {
  process.stderr.write(
    'npm run model -- HOW-MANY [FIRST-SEED]\nnpm run model -- on MINUTES [FIRST-SEED]\nnpm run model -- sum\nnpm run model -- planted\n',
  );
  process.exit(64);
}

/** True when the ledgers agree over the whole run and the run was worth it. */
function run(howMany: number, first: number): boolean {
  const figures = noFigures();
  const began = performance.now();
  for (let seed = first; seed < first + howMany; seed++) {
    if (!agrees(seed, figures, often)) return false;
    const done = figures.sequences;
    if (done % 1000 === 0 || done === howMany) {
      const each = (performance.now() - began) / done;
      process.stdout.write(`${figuresText(figures)}; ${each.toFixed(0)} ms a job\n`);
    }
  }
  const lacks = shortfalls(figures);
  for (const lack of lacks) process.stdout.write(`the run is worth too little: ${lack}\n`);
  return lacks.length === 0;
}

/** Adds to the sum for so many minutes; every seed at which the ledgers part is kept, and the run goes on. */
function goOn(minutes: number, first: number): boolean {
  const figures = noFigures();
  const until = Date.now() + minutes * 60_000;
  const day = new Date().toISOString().slice(0, 10);
  const run: Run = { core: markOfCore(), day, first, done: 0, parted: [] };
  while (Date.now() < until) {
    const seed = first + run.done;
    if (!agrees(seed, figures, afterEveryLine)) run.parted.push(seed);
    run.done++;
    run.beginnings = figures.beginnings;
    if (run.done % 100 === 0) noteRun(run);
    if (run.done % 1000 === 0) process.stdout.write(`${figuresText(figures)}; parted ${run.parted.length}\n`);
  }
  noteRun(run);
  process.stdout.write(`${figuresText(figures)}; seeds ${first} to ${first + run.done - 1}\n${sumText()}\n`);
  return run.parted.length === 0;
}

function sumText(): string {
  const runs = runsDone();
  const parted = runs.flatMap((each) => each.parted);
  const here = markOfCore();
  const same = runs.filter(({ core }) => core === here);
  const many = (of: typeof runs) => `${seedsDone(of)} random jobs held at ${beginningsDone(of)} of their lines`;
  return `${many(runs)}, parted at ${parted.length}; ${many(same)} on the sources as they are now (${here})`;
}

function agrees(seed: number, figures: ReturnType<typeof noFigures>, how: Often): boolean {
  try {
    const { sequence, disagreement, beginnings } = compared(seed, how);
    note(figures, sequence, beginnings);
    if (!disagreement) return true;
    const shortest = shortestOf(disagreement);
    process.stdout.write(`seed ${seed}, ${shortest.way}: the ledgers part ${inWords(shortest.difference)}\n`);
    const job = shrunk(shortest);
    process.stdout.write(
      `what it takes:\n${job.lines.map((line) => `  ${JSON.stringify(line.entries)}`).join('\n')}\n`,
    );
    const { onlyAsked, onlyModel } = shortest.difference;
    keep({ seed, about: [...onlyAsked, ...onlyModel].join(', ') || 'released', ...job });
  } catch (bug) {
    process.stdout.write(`seed ${seed}: ${bug instanceof Error ? bug.stack : String(bug)}\n`);
    keep({ seed, about: String(bug), lines: [], now: { atMs: 0, zoneMin: 0, run: 1, awakeMs: 0 } });
  }
  return false;
}

const told = process.argv.slice(2);
if (told[0] === 'planted') process.exitCode = everyPlantedIsFound() ? 0 : 1;
else if (told[0] === 'sum') process.stdout.write(`${sumText()}\n`);
else if (told[0] === 'on') {
  const [minutes, first = nextSeed(runsDone())] = told.slice(1).map(Number);
  if (!minutes || !Number.isInteger(first)) usage();
  process.exitCode = goOn(minutes, first) ? 0 : 1;
} else {
  const [howMany, first = 1] = told.map(Number);
  if (!howMany || !Number.isInteger(howMany) || !Number.isInteger(first)) usage();
  process.exitCode = run(howMany, first) ? 0 : 1;
}
