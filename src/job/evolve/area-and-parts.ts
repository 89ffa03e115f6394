// What each entry does to an area, its parts, its connections and its temporaries.
import type { Entry } from '../entry.ts';
import type { AreaState, ConnectionState, PartState, TemporaryState } from '../states.ts';
import { areaOf } from '../subjects.ts';
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
