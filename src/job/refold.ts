// Striking and restoring lines: what a line touched is folded anew without it, each subject from its own chain, and together
// where an exchange of holes has made several chains one.
import { type Draft, emptyRow, noted, put } from './drawers.ts';
import type { EntryOf } from './entry.ts';
import { exchange } from './exchange.ts';
import { keyName, keySort } from './ledger.ts';
import type { Line } from './line.ts';
import type { Sort } from './states.ts';
import { touches } from './touches.ts';
import { evolveOne, isFoldedAlone, type Work } from './work.ts';

/** X3: a forged line can't strike a release or a reopening either. */
const standsForEver = (line: Line): boolean => line.entries.some((e) => e.kind === 'released' || e.kind === 'reopened');

export function strike(work: Work, entry: EntryOf<'calls-struck' | 'calls-restored'>, by: number): void {
  const keys = new Set<string>();
  for (const n of entry.lines) {
    const struck = work.lines.all[n - 1];
    if (!struck || n >= by || standsForEver(struck)) continue;
    put(work.struck, String(n), entry.kind === 'calls-struck' ? by : undefined);
    for (const one of struck.entries) for (const key of touches(one)) keys.add(key);
  }
  const coupled = coupledKeys(work);
  const together = [...keys].some((key) => coupled.has(key));
  if (together) refoldTogether(work, coupled);
  for (const key of keys) if (!together || !coupled.has(key)) work.stale.add(key);
}

export function foldStale(work: Work): void {
  for (const key of work.stale) refold(work, key);
  work.stale.clear();
}

function refold(work: Work, key: string): void {
  const sort = keySort(key);
  put(work.states[sort] as Draft<unknown>, keyName(key), undefined);
  put(work.misfits, key, undefined);
  work.changed.add(key);
  const chain = noted(work.chains, key) ?? emptyRow<number>();
  for (let i = 0; i < chain.length; i++) {
    const n = chain.all[i] as number;
    if (noted(work.struck, String(n)) !== undefined) continue;
    const { entries } = work.lines.all[n - 1] as Line;
    for (const entry of entries) {
      // The only entry of a line in the chain is what brought the line into it.
      if (entries.length === 1 || touches(entry).includes(key)) evolveOne(work, key, entry, n);
    }
  }
}

/** What an exchange moves from hole to hole, beside the holes themselves. */
const movedByExchange: ReadonlySet<Sort> = new Set(['fastener', 'piece', 'finding', 'temporary']);

/** The chains that exchanges make one: the holes exchanged, and whatever was ever called at one of them. */
function coupledKeys(work: Work): Set<string> {
  const coupled = new Set<string>();
  const entriesOf = (n: number) => (work.lines.all[n - 1] as Line).entries;
  for (const entry of work.exchanges.flatMap(entriesOf)) {
    if (entry.kind !== 'holes-exchanged') continue;
    for (const hole of [`hole:${entry.one}`, `hole:${entry.other}`]) {
      if (coupled.has(hole)) continue;
      coupled.add(hole);
      const chain = noted(work.chains, hole) ?? emptyRow<number>();
      for (const one of chain.all.slice(0, chain.length).flatMap(entriesOf)) {
        for (const key of touches(one)) if (movedByExchange.has(keySort(key))) coupled.add(key);
      }
    }
  }
  return coupled;
}

/** Two chains speak of one another: all of them are folded anew, line by line. */
function refoldTogether(work: Work, keys: ReadonlySet<string>): void {
  const lines = new Set<number>();
  for (const key of keys) {
    put(work.states[keySort(key)] as Draft<unknown>, keyName(key), undefined);
    put(work.misfits, key, undefined);
    work.changed.add(key);
    work.stale.delete(key);
    const chain = noted(work.chains, key) ?? emptyRow<number>();
    for (let i = 0; i < chain.length; i++) lines.add(chain.all[i] as number);
  }
  for (const n of [...lines].sort((a, b) => a - b)) {
    if (noted(work.struck, String(n)) !== undefined) continue;
    for (const entry of (work.lines.all[n - 1] as Line).entries) {
      if (entry.kind === 'holes-exchanged') exchange(work, entry, n);
      for (const key of touches(entry)) {
        if (keys.has(key) && isFoldedAlone(entry, key)) evolveOne(work, key, entry, n);
      }
    }
  }
}
