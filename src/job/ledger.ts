// The standing ledger: every subject of the job as folded from its own chain of lines, and how to read it. How it is
// folded stands in fold.ts; nothing here refuses or decides.
import { type Drawers, emptyDrawers, emptyRow, pick, type Row } from './drawers.ts';
import type { Line } from './line.ts';
import type { Sort, States } from './states.ts';

/** `off` holes without their fastener, `empty` those of them that were so on arrival, `slack`, `on` (a few turns), `snug`, `closed` as L3, `open` the touched rest. */
export type Tally = {
  holes: number;
  touched: number;
  off: number;
  empty: number;
  slack: number;
  on: number;
  snug: number;
  closed: number;
  open: number;
};
export type Tallies = { readonly all: Tally; readonly areas: Readonly<Record<string, Tally>> };
export const zeroTally: Tally = {
  holes: 0,
  touched: 0,
  off: 0,
  empty: 0,
  slack: 0,
  on: 0,
  snug: 0,
  closed: 0,
  open: 0,
};
export const tallyOf = (ledger: Ledger, area: string): Tally => ledger.tallies.areas[area] ?? zeroTally;

export type Ledger = {
  readonly lines: Row<Line>;
  /** Line number → the line that struck it. */
  readonly struck: Drawers<number>;
  readonly chains: Drawers<Row<number>>;
  readonly states: { readonly [S in Sort]: Drawers<States[S]> };
  /** Names of each sort in the order in which they were first spoken of; some may have no state any more. */
  readonly names: { readonly [S in Sort]: Row<string> };
  /** Subject key → lines whose entry did not fit it. */
  readonly misfits: Drawers<readonly number[]>;
  readonly tallies: Tallies;
  /** Line of each `released` → whether nothing was open when it was said (X2). */
  readonly verdicts: Readonly<Record<number, boolean>>;
  /** The lines on which holes were exchanged, struck ones too: from there on two chains speak of one another. */
  readonly exchanges: readonly number[];
};

const sorts: Record<Sort, null> = {
  hole: null,
  fastener: null,
  piece: null,
  stray: null,
  area: null,
  part: null,
  connection: null,
  temporary: null,
  face: null,
  drive: null,
  circuit: null,
  tray: null,
  pile: null,
  box: null,
  finding: null,
  service: null,
  product: null,
  behind: null,
  vehicle: null,
};
export const everySort = Object.keys(sorts) as Sort[];
export function bySort<T>(make: (sort: Sort) => unknown): T {
  const made = {} as Record<Sort, unknown>;
  for (const sort of everySort) made[sort] = make(sort);
  return made as T;
}

export const emptyLedger: Ledger = {
  lines: emptyRow(),
  struck: emptyDrawers(),
  chains: emptyDrawers(),
  states: bySort(() => emptyDrawers()),
  names: bySort(() => emptyRow()),
  misfits: emptyDrawers(),
  tallies: { all: zeroTally, areas: {} },
  verdicts: {},
  exchanges: [],
};

export const stateOf = <S extends Sort>(ledger: Ledger, sort: S, name: string): States[S] | undefined =>
  pick(ledger.states[sort], name) as States[S] | undefined;

export function* every<S extends Sort>(ledger: Ledger, sort: S): Generator<States[S]> {
  const { all, length } = ledger.names[sort];
  for (let i = 0; i < length; i++) {
    const state = stateOf(ledger, sort, all[i] as string);
    if (state !== undefined) yield state;
  }
}
export const lineAt = (ledger: Ledger, n: number): Line | undefined =>
  n <= ledger.lines.length ? ledger.lines.all[n - 1] : undefined;
export const lastLine = (ledger: Ledger): Line | undefined => lineAt(ledger, ledger.lines.length);
export const isStruck = (ledger: Ledger, n: number): boolean => pick(ledger.struck, String(n)) !== undefined;

export const keySort = (key: string): Sort =>
  key.includes(':') ? (key.slice(0, key.indexOf(':')) as Sort) : 'vehicle';
export const keyName = (key: string): string => key.slice(key.indexOf(':') + 1);
