// How the sheet reads a ledger: when a line was called, the entries that stand, and places in words. It gathers nothing.

import { pick } from '../job/drawers.ts';
import type { Entry } from '../job/entry.ts';
import { isStruck, type Ledger, lineAt } from '../job/ledger.ts';
import type { Line, Stamp } from '../job/line.ts';
import { nameOf, sortOf, subjectText } from '../job/subjects.ts';
import { touches } from '../job/touches.ts';
import type { Units } from '../trade/units-shown.ts';

/** `zone` shows every time at one offset; without it each line is shown at the offset it was called in. */
export type Reading = {
  ledger: Ledger;
  now: Stamp;
  zone?: number /** Of figures in words; metric without. */;
  units?: Units;
};

/** When something was called: its line, the wall clock in UTC, the offset to show it at, and by whom if said. */
export type Moment = { n: number; atMs: number; zoneMin: number; who?: string };

export function momentOf({ ledger, zone }: Reading, n: number): Moment | undefined {
  const line = lineAt(ledger, n);
  return line && { n, atMs: line.atMs, zoneMin: zone ?? line.zoneMin, ...(line.who && { who: line.who }) };
}
/** Of a line that a state names, so that there is one. */
export const moment = (of: Reading, n: number): Moment => momentOf(of, n) as Moment;

/** The entries that count: of lines not struck, and that fitted what was there. */
export function* standingEntries(ledger: Ledger): Generator<{ line: Line; entry: Entry }> {
  for (let n = 1; n <= ledger.lines.length; n++) {
    const line = lineAt(ledger, n);
    if (!line || isStruck(ledger, n)) continue;
    for (const entry of line.entries) {
      if (!touches(entry).some((key) => pick(ledger.misfits, key)?.includes(n))) yield { line, entry };
    }
  }
}

/** U3: the hole that what line `n` called of `hole` really was of, after the exchanges called since. */
export function asCorrected(ledger: Ledger, hole: string, n: number): string {
  let really = hole;
  for (const at of ledger.exchanges) {
    if (at <= n || isStruck(ledger, at)) continue;
    for (const entry of lineAt(ledger, at)?.entries ?? []) {
      if (entry.kind !== 'holes-exchanged') continue;
      if (really === entry.one) really = entry.other;
      else if (really === entry.other) really = entry.one;
    }
  }
  return really;
}

/** "cam cover 7 nut", "tray 2", "finding d3.1", "the car". */
export function placeWords(at: string): string {
  const sort = sortOf(at);
  if (at === 'vehicle') return 'the car';
  if (sort === at || sort === 'hole' || sort === 'tray') return subjectText(at);
  return sort === 'box' ? `parts box, ${nameOf(at)}` : `${sort} ${nameOf(at)}`;
}
