// Folding lines onto a ledger. Appending evolves the call's own subjects; striking or restoring a line, new or old,
// folds only the chains it touches anew. It refuses nothing: an entry that does not fit is filed as a misfit.
import { appended, type Draft, emptyRow, noted, put, settled } from './drawers.ts';
import type { Entry } from './entry.ts';
import { exchange } from './exchange.ts';
import { bySort, keyName, keySort, type Ledger } from './ledger.ts';
import type { Line, Stamp } from './line.ts';
import { foldStale, strike } from './refold.ts';
import { retally } from './tally.ts';
import { touches } from './touches.ts';
import { evolveOne, isFoldedAlone, type Work, workOn } from './work.ts';

/** Whether the car might leave, judged over a ledger at the stamp of a `released` line. */
export type Judge = (ledger: Ledger, now: Stamp) => boolean;

/** Folds lines onto a ledger, in order; a `released` is judged over all that came before it. */
export function foldLines(ledger: Ledger, lines: readonly Line[], judge: Judge): Ledger {
  let work = workOn(ledger);
  for (const line of lines) {
    if (line.entries.some((e) => e.kind === 'released')) {
      const sofar = finish(work);
      work = workOn(sofar);
      work.verdicts[line.n] ??= judge(sofar, line);
    }
    takeLine(work, line);
  }
  return finish(work);
}

function takeLine(work: Work, line: Line): void {
  work.lines = appended(work.lines, line);
  for (const entry of line.entries) {
    if (entry.kind === 'calls-struck' || entry.kind === 'calls-restored') {
      strike(work, entry, line.n);
    } else {
      const keys = touches(entry);
      file(work, keys, line.n);
      evolveAll(work, entry, line.n, keys);
    }
  }
}

function file(work: Work, keys: readonly string[], n: number): void {
  for (const key of keys) {
    const chain = noted(work.chains, key) ?? emptyRow<number>();
    if (chain.length === 0) {
      const sort = keySort(key);
      work.names[sort] = appended(work.names[sort], keyName(key));
    }
    if (chain.all[chain.length - 1] !== n || chain.length === 0) put(work.chains, key, appended(chain, n));
  }
}

function evolveAll(work: Work, entry: Entry, n: number, keys: readonly string[]): void {
  if (entry.kind === 'holes-exchanged') {
    work.exchanges = [...work.exchanges, n];
    foldStale(work);
    exchange(work, entry, n);
  }
  for (const key of keys) if (isFoldedAlone(entry, key) && !work.stale.has(key)) evolveOne(work, key, entry, n);
}

function finish(work: Work): Ledger {
  foldStale(work);
  const ledger: Ledger = {
    lines: work.lines,
    struck: settled(work.struck),
    chains: settled(work.chains),
    states: bySort((s) => settled(work.states[s] as Draft<unknown>)),
    names: work.names,
    misfits: settled(work.misfits),
    verdicts: work.verdicts,
    exchanges: work.exchanges,
    tallies: work.before.tallies,
  };
  return { ...ledger, tallies: retally(work.before, ledger, work.changed) };
}
