// A ledger being changed: drafts beside the one there is, and the one way in which a subject's state goes on by an entry.
import { type Draft, type Drawers, draftOf, noted, put, type Row } from './drawers.ts';
import type { Entry } from './entry.ts';
import { evolveArea, evolveConnection, evolvePart, evolveTemporary } from './evolve/area-and-parts.ts';
import { evolveDrive, evolveFace } from './evolve/face-and-drive.ts';
import { evolveFastener, evolvePiece, evolveStray } from './evolve/fastener.ts';
import { evolveHole } from './evolve/hole.ts';
import { type Misfit, misfit } from './evolve/misfit.ts';
import { evolvePile } from './evolve/pile.ts';
import { evolveBox, evolveTray } from './evolve/tray-and-box.ts';
import { evolveVehicle } from './evolve/vehicle.ts';
import { evolveCircuit, evolveFinding, evolveService } from './evolve/works.ts';
import { bySort, keyName, keySort, type Ledger } from './ledger.ts';
import type { Line } from './line.ts';
import type { Sort, States } from './states.ts';

/** What is new is noted beside the drawers, the rows grow in place for whoever sees that far. */
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

export function workOn(before: Ledger): Work {
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

/** The two holes of an exchange are folded together; their areas only hear of it. */
export const isFoldedAlone = (entry: Entry, key: string): boolean =>
  entry.kind !== 'holes-exchanged' || keySort(key) === 'area';

export function evolveOne(work: Work, key: string, entry: Entry, n: number): void {
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
