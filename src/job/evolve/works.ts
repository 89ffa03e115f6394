// What each entry does to parts, connections, temporaries, trays, the parts box, circuits, findings, services, areas
// and the car.
import type { Entry } from '../entry.ts';
import type {
  AreaState,
  BoxState,
  CircuitState,
  ConnectionState,
  FindingState,
  PartState,
  ServiceState,
  TemporaryState,
  TrayState,
} from '../states.ts';
import { areaOf, inTray } from '../subjects.ts';
import { type Misfit, misfit } from './misfit.ts';

export function evolveArea(before: AreaState | undefined, entry: Entry, n: number, area: string): AreaState {
  const a: AreaState = before ?? { area, holes: [], parts: [], seenAt: 0, dryAt: 0, directionAt: 0, maskedAt: 0 };
  switch (entry.kind) {
    case 'area-declared': {
      const { kind: _, ...said } = entry;
      return { ...a, declared: { ...a.declared, ...said } };
    }
    case 'part-declared':
      return { ...a, parts: added(a.parts, entry.part) };
    case 'holes-counted':
      return { ...a, counted: { n, count: entry.count } };
    case 'companions-seen':
      return { ...a, seenAt: n };
    case 'blind-holes-dry':
      return { ...a, dryAt: n };
    case 'direction-seen':
      return { ...a, directionAt: n };
    case 'all-masked':
      return { ...a, maskedAt: n };
    case 'all-unmasked':
      return { ...a, maskedAt: 0 };
    case 'holes-exchanged':
      return { ...a, holes: [entry.one, entry.other].filter((h) => areaOf(h) === area).reduce(added, a.holes) };
    default:
      return 'hole' in entry && !a.holes.includes(entry.hole) ? { ...a, holes: [...a.holes, entry.hole] } : a;
  }
}
const added = (all: readonly string[], one: string): readonly string[] => (all.includes(one) ? all : [...all, one]);

export function evolvePart(before: PartState | undefined, entry: Entry, n: number, part: string): PartState | Misfit {
  const p: PartState = before ?? noPart(part);
  switch (entry.kind) {
    case 'part-declared': {
      const { kind: _, ...said } = entry;
      return { ...p, declared: { ...p.declared, ...said } };
    }
    case 'part-removed':
      return p.off ? misfit : { ...unjudged(p), off: true, forNow: false, removedAt: n, removals: [...p.removals, n] };
    case 'part-fitted':
      return p.off ? { ...p, off: false, forNow: entry.forNow === true, fittedAt: n } : misfit;
    case 'part-replaced': {
      const fresh = { off: false, forNow: entry.forNow === true, fittedAt: n, replacedAt: n, replacedFrom: entry.from };
      return p.off ? { ...p, ...fresh, oldWaits: p.oldWaits || !p.judged } : misfit;
    }
    case 'part-made-final':
      return p.off ? misfit : { ...p, forNow: false };
    case 'part-judged':
      return { ...p, oldWaits: false, judged: { n, verdict: entry.verdict, ...because(entry.because) } };
    default:
      return p;
  }
}

const because = (said: string | undefined) => (said ? { because: said } : {});
const noPart = (part: string): PartState => ({
  part,
  off: false,
  forNow: false,
  removedAt: 0,
  fittedAt: 0,
  replacedAt: 0,
  oldWaits: false,
  removals: [],
});

function unjudged(p: PartState): PartState {
  const { judged: _, ...rest } = p;
  return rest;
}

export function evolveConnection(
  before: ConnectionState | undefined,
  entry: Entry,
  n: number,
  connection: string,
): ConnectionState | Misfit {
  const c: ConnectionState = before ?? { connection, parted: false, forNow: false, partedAt: 0, madeAt: 0 };
  switch (entry.kind) {
    case 'connection-declared': {
      const { kind: _, ...said } = entry;
      return { ...c, declared: { ...c.declared, ...said } };
    }
    case 'connection-parted':
      return c.parted ? misfit : { ...c, parted: true, forNow: false, partedAt: n };
    case 'connection-made':
      return c.parted || c.forNow ? { ...c, parted: false, forNow: entry.forNow === true, madeAt: n } : misfit;
    default:
      return c;
  }
}

export function evolveTemporary(
  t: TemporaryState | undefined,
  entry: Entry,
  n: number,
  temporary: string,
): TemporaryState | Misfit {
  switch (entry.kind) {
    case 'temporary-declared':
      // Where it is in, it stays, whatever is said of its place meanwhile.
      return t?.in
        ? t
        : { temporary, sort: entry.sort, ...(entry.at && { at: entry.at }), in: false, putInAt: t?.putInAt ?? 0 };
    case 'temporary-put-in':
      return t?.in ? misfit : { temporary, sort: entry.sort, ...(entry.at && { at: entry.at }), in: true, putInAt: n };
    case 'temporary-taken-out':
      return t?.in && t.at === entry.at ? { ...t, in: false } : misfit;
    default:
      return t ?? misfit;
  }
}

export function evolveTray(before: TrayState | undefined, entry: Entry, n: number, tray: string): TrayState | Misfit {
  const t: TrayState = before ?? { tray, contents: [], everUsed: false, movedAt: 0 };
  const here = inTray(tray);
  const into = (id: string): TrayState | Misfit =>
    t.contents.includes(id) ? misfit : { ...t, contents: [...t.contents, id], everUsed: true, movedAt: n };
  const out = (id: string): TrayState | Misfit =>
    t.contents.includes(id) ? { ...t, contents: t.contents.filter((one) => one !== id), movedAt: n } : misfit;
  // It lies there already: nothing goes out or in.
  if ((entry.kind === 'fastener-moved' || entry.kind === 'piece-moved') && entry.from === entry.to) return misfit;
  switch (entry.kind) {
    case 'tray-declared':
      return { ...t, ...(entry.isPart && { isPart: true as const }) };
    case 'tray-counted':
      return { ...t, everUsed: true, counted: { n, count: entry.count, times: timesCounted(t) + 1 } };
    case 'fastener-removed':
      return into(entry.fastener);
    case 'fastener-fitted':
    case 'fastener-lost':
      return out(entry.fastener);
    case 'fastener-moved':
      return entry.from === here ? out(entry.fastener) : into(entry.fastener);
    case 'fastener-broken':
      return t.contents.includes(entry.fastener)
        ? t
        : entry.pieces.reduce<TrayState>((all, p) => pieceIn(all, p, n), t);
    case 'piece-moved':
      return entry.from === here ? out(entry.piece) : into(entry.piece);
    case 'piece-lost':
      return out(entry.piece);
    case 'stray-found': {
      // It lay there all along: what the eye counted counted it.
      const here = into(entry.stray);
      return here === misfit ? misfit : { ...(here as TrayState), movedAt: t.movedAt };
    }
    case 'stray-settled': {
      if (!t.contents.includes(entry.stray)) return misfit;
      const rest = t.contents.filter((one) => one !== entry.stray);
      return {
        ...t,
        contents: entry.fastener ? [...rest, entry.fastener] : rest,
        movedAt: entry.fastener ? t.movedAt : n,
      };
    }
    default:
      return t;
  }
}
const timesCounted = (t: TrayState): number => (t.counted && t.counted.n > t.movedAt ? t.counted.times : 0);
function pieceIn(t: TrayState, p: { piece: string; in: string }, n: number): TrayState {
  if (p.in !== inTray(t.tray)) return t;
  return { ...t, contents: [...t.contents, p.piece], everUsed: true, movedAt: n };
}

export function evolveBox(b: BoxState | undefined, entry: Entry, n: number, name: string): BoxState | Misfit {
  if (entry.kind === 'box-filled') {
    const { sort, spec, replaces, quantity } = entry;
    if (b && b.sort !== sort) return misfit;
    const bought = (b?.bought ?? 0) + quantity;
    return {
      name,
      sort,
      ...(spec && { spec }),
      ...(replaces && { replaces }),
      bought,
      left: (b?.left ?? 0) + quantity,
      moved: b?.moved ?? {},
      ...(b?.counted && { counted: b.counted }),
    };
  }
  if (!b) return misfit;
  const take = (quantity: number, to: string): BoxState | Misfit =>
    b.left < quantity
      ? misfit
      : { ...b, left: b.left - quantity, moved: { ...b.moved, [to]: (b.moved[to] ?? 0) + quantity } };
  switch (entry.kind) {
    case 'fastener-fitted':
    case 'fastener-lost':
    case 'part-replaced':
      return take(1, 'fitted');
    case 'box-used':
      return take(entry.quantity, 'fitted');
    case 'box-moved':
      return take(entry.quantity, entry.to);
    case 'box-counted': {
      const times = b.counted?.left === b.left ? b.counted.times : 0;
      return { ...b, counted: { n, count: entry.count, left: b.left, times: times + 1 } };
    }
    default:
      return b;
  }
}

export function evolveCircuit(
  before: CircuitState | undefined,
  entry: Entry,
  n: number,
  circuit: string,
): CircuitState {
  const c: CircuitState = before ?? { circuit, drainedAt: 0, filledAt: 0, checkedAt: 0 };
  switch (entry.kind) {
    case 'circuit-declared':
      return { ...c, fluid: entry.fluid };
    case 'fluid-drained':
      return { ...c, drainedAt: n };
    case 'fluid-filled':
      return { ...c, fluid: entry.fluid, filledAt: n, ...(entry.litres !== undefined && { litres: entry.litres }) };
    case 'leak-checked':
      return { ...c, checkedAt: n, checkedHow: entry.how };
    default:
      return c;
  }
}

export function evolveFinding(f: FindingState | undefined, entry: Entry, n: number, id: string): FindingState | Misfit {
  if (entry.kind === 'finding-made') {
    const { at, what, when, fastener } = entry;
    return f ? misfit : { id, at, what, when, ...(fastener && { fastener }), madeAt: n };
  }
  if (!f) return misfit;
  if (entry.kind === 'owner-told') {
    const { said, how } = entry;
    const tellings = [...(f.tellings ?? []), { n, said, ...(how && { how }) }];
    return { ...f, told: said || 'told', tellings };
  }
  if (entry.kind !== 'finding-closed' || f.closed || f.at !== entry.at) return misfit;
  const { how, who, because } = entry;
  return { ...f, closed: { n, how, ...(who && { who }), ...(because && { because }) } };
}

export function evolveService(
  s: ServiceState | undefined,
  entry: Entry,
  _n: number,
  service: string,
): ServiceState | Misfit {
  switch (entry.kind) {
    case 'service-ordered': {
      const { kind: _, ...ordered } = entry;
      return { ...ordered, service, state: 'ordered' };
    }
    case 'service-done':
      return s ? { ...s, state: 'done' } : misfit;
    case 'service-dropped':
      return s ? { ...s, state: 'dropped', because: entry.because } : misfit;
    default:
      return s ?? misfit;
  }
}
