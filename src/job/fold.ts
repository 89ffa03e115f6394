// Folding lines onto a ledger. Appending evolves the call's own subjects; striking or restoring a line, new or old,
// folds only the chains it touches anew. It refuses nothing: an entry that does not fit is filed as a misfit.
import { appended, type Draft, type Drawers, draftOf, emptyRow, noted, put, type Row, settled } from './drawers.ts';
import type { Entry, EntryOf } from './entry.ts';
import { evolveArea, evolveConnection, evolvePart, evolveTemporary } from './evolve/area-and-parts.ts';
import { evolveDrive, evolveFace } from './evolve/face-and-drive.ts';
import { evolveFastener, evolvePiece, evolveStray } from './evolve/fastener.ts';
import { evolveHole } from './evolve/hole.ts';
import { type Misfit, misfit } from './evolve/misfit.ts';
import { evolvePile } from './evolve/pile.ts';
import { evolveBox, evolveTray } from './evolve/tray-and-box.ts';
import { evolveVehicle } from './evolve/vehicle.ts';
import { evolveCircuit, evolveFinding, evolveService } from './evolve/works.ts';
import { exchange } from './exchange.ts';
import { bySort, keyName, keySort, type Ledger } from './ledger.ts';
import type { Line, Stamp } from './line.ts';
import type { Sort, States } from './states.ts';
import { retally } from './tally.ts';
import { touches } from './touches.ts';

/** Whether the car might leave, judged over a ledger at the stamp of a `released` line. */
export type Judge = (ledger: Ledger, now: Stamp) => boolean;

/** A ledger being changed: what is new is noted beside the drawers, the rows grow in place for whoever sees that far. */
export type Work = {
  before: Ledger;
  lines: Row<Line>;
  struck: Draft<number>;
  chains: Draft<Row<number>>;
  states: { [S in Sort]: Draft<States[S]> };
  names: { [S in Sort]: Row<string> };
  misfits: Draft<readonly number[]>;
  verdicts: Record<number, boolean>;
  exchanges: readonly number[];
  changed: Set<string>;
  /** Subjects that a strike left to be folded anew, once, when they are next looked at: a log may strike a hundred times. */
  stale: Set<string>;
};

function workOn(before: Ledger): Work {
  return {
    before,
    lines: before.lines,
    struck: draftOf(before.struck),
    chains: draftOf(before.chains),
    states: bySort((s) => draftOf(before.states[s] as Drawers<unknown>)),
    names: { ...before.names },
    misfits: draftOf(before.misfits),
    verdicts: { ...before.verdicts },
    exchanges: before.exchanges,
    changed: new Set(),
    stale: new Set(),
  };
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

/** The two holes of an exchange are folded together; their areas only hear of it. */
const isFoldedAlone = (entry: Entry, key: string): boolean =>
  entry.kind !== 'holes-exchanged' || keySort(key) === 'area';

function evolveOne(work: Work, key: string, entry: Entry, n: number): void {
  const sort = keySort(key);
  const name = keyName(key);
  const draft = work.states[sort] as Draft<unknown>;
  const before = noted(draft, name);
  const next = evolvers[sort](before as never, entry, n, name, work.verdicts[n] ?? false);
  work.changed.add(key);
  if (next === misfit) put(work.misfits, key, [...(noted(work.misfits, key) ?? []), n]);
  else put(draft, name, next);
}

type Evolver<S extends Sort> = (
  state: States[S] | undefined,
  entry: Entry,
  n: number,
  name: string,
  allowed: boolean,
) => States[S] | Misfit;
const evolvers: { [S in Sort]: Evolver<S> } = {
  hole: evolveHole,
  fastener: evolveFastener,
  piece: evolvePiece,
  stray: evolveStray,
  area: evolveArea,
  part: evolvePart,
  connection: evolveConnection,
  temporary: evolveTemporary,
  face: evolveFace,
  drive: evolveDrive,
  circuit: evolveCircuit,
  tray: evolveTray,
  pile: evolvePile,
  box: evolveBox,
  finding: evolveFinding,
  service: evolveService,
  product: (_, entry) => (entry.kind === 'product-declared' ? { label: entry.label } : misfit),
  behind: (state, entry, n) => {
    if (entry.kind !== 'behind-declared') return misfit;
    const { kind: _, ...edge } = entry;
    return { edges: [...(state?.edges ?? []), { ...edge, n }] };
  },
  vehicle: (state, entry, n, _name, allowed) => evolveVehicle(state, entry, n, allowed),
};

/** X3: a forged line can't strike a release or a reopening either. */
const standsForEver = (line: Line): boolean => line.entries.some((e) => e.kind === 'released' || e.kind === 'reopened');

function strike(work: Work, entry: EntryOf<'calls-struck' | 'calls-restored'>, by: number): void {
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

function foldStale(work: Work): void {
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
