// What each entry does to a fastener, to a piece broken off one, and to a stray. The other of the two books: it keeps
// its own account of whereabouts, whatever the holes say.
import type { Entry, EntryOf } from '../entry.ts';
import type { FastenerState, Loss, PieceState, StrayState } from '../hole-states.ts';
import { inHole } from '../subjects.ts';
import { type Misfit, misfit } from './misfit.ts';

export function evolveFastener(
  f: FastenerState | undefined,
  entry: Entry,
  _n: number,
  id: string,
): FastenerState | Misfit {
  if (entry.kind === 'fastener-found') return f ? misfit : born(id, entry.spec, `hole:${entry.hole}`, true);
  if (entry.kind === 'stray-settled')
    return f ? misfit : born(id, entry.spec ?? {}, `stray:${entry.stray}`, false, entry.at);
  if (entry.kind === 'fastener-fitted' && entry.from.startsWith('box:')) {
    return f ? misfit : { ...born(id, entry.spec, entry.from, false), place: inHole(entry.hole) };
  }
  if (entry.kind === 'fastener-lost' && entry.from.startsWith('box:')) {
    return f ? misfit : { ...born(id, entry.spec ?? {}, entry.from, false), place: 'lost', loss: lossOf(entry) };
  }
  return f ? evolveKnown(f, entry) : misfit;
}

function born(id: string, spec: FastenerState['spec'], origin: string, tight: boolean, place = origin): FastenerState {
  return { id, spec, origin, place, everOff: false, loosened: false, tight };
}

function evolveKnown(f: FastenerState, entry: Entry): FastenerState | Misfit {
  switch (entry.kind) {
    case 'fastener-slackened':
      return f.place === inHole(entry.hole) ? loosened(f) : misfit;
    case 'fastener-removed':
      return f.place === inHole(entry.hole) ? { ...lyingAt(loosened(f), entry.to), everOff: true } : misfit;
    case 'fastener-fitted':
      return f.place === entry.from ? { ...unlost(f), place: inHole(entry.hole) } : misfit;
    case 'fastener-tightened':
      return f.place === inHole(entry.hole) ? { ...f, tight: f.tight || entry.last } : misfit;
    case 'fastener-made-final':
      return f.place === inHole(entry.hole) ? f : misfit;
    case 'fastener-moved': {
      const inAHole = entry.from.startsWith('hole:') || entry.to.startsWith('hole:');
      return f.place === entry.from && entry.to !== entry.from && !inAHole ? lyingAt(unlost(f), entry.to) : misfit;
    }
    case 'fastener-lost': {
      const outOfHole = entry.from.startsWith('hole:') ? { ...loosened(f), everOff: true } : f;
      return f.place === entry.from ? { ...outOfHole, place: 'lost', loss: lossOf(entry) } : misfit;
    }
    case 'search-made':
      return f.loss ? { ...f, loss: { ...f.loss, searched: [...f.loss.searched, entry.how] } } : misfit;
    case 'loss-ruled-out':
      return f.loss ? { ...f, loss: { ...f.loss, ruledOut: { who: entry.who, because: entry.because } } } : misfit;
    case 'fastener-condemned':
      return f.place === entry.at ? { ...f, condemned: entry.because } : misfit;
    case 'fastener-broken':
      return f.place === entry.at ? { ...f, broken: true } : misfit;
    case 'fastener-measured': {
      const { what, measuredMm, limitMm } = entry;
      return f.place === entry.at ? { ...f, loosened: false, measured: { what, measuredMm, limitMm } } : misfit;
    }
    case 'spec-corrected':
      return f.place === entry.at ? { ...f, spec: entry.spec } : misfit;
    default:
      return f;
  }
}

function unlost(f: FastenerState): FastenerState {
  const { loss: _, ...rest } = f;
  return rest;
}
/** What is lost without more said may have fallen anywhere: it is taken to reach the works (L9). */
const lyingAt = <T extends FastenerState | PieceState>(one: T, place: string): T =>
  place === 'lost' ? { ...one, place, loss: { reaches: true, where: '', searched: [] } } : { ...one, place };

const loosened = (f: FastenerState): FastenerState => (f.tight ? { ...f, tight: false, loosened: true } : f);
const lossOf = ({ reaches, where }: EntryOf<'fastener-lost' | 'piece-lost'>): Loss => ({
  reaches,
  where,
  searched: [],
});

export function evolvePiece(p: PieceState | undefined, entry: Entry, _n: number, id: string): PieceState | Misfit {
  if (entry.kind === 'fastener-broken') {
    const place = entry.pieces.find((one) => one.piece === id)?.in ?? 'lost';
    return p ? misfit : lyingAt({ id, fastener: entry.fastener, place }, place);
  }
  if (!p) return misfit;
  switch (entry.kind) {
    case 'piece-moved': {
      const { loss: _, ...rest } = p;
      return p.place === entry.from && entry.to !== entry.from ? lyingAt(rest, entry.to) : misfit;
    }
    case 'piece-lost':
      return p.place === entry.from ? { ...p, place: 'lost', loss: lossOf(entry) } : misfit;
    case 'search-made':
      return p.loss ? { ...p, loss: { ...p.loss, searched: [...p.loss.searched, entry.how] } } : misfit;
    case 'loss-ruled-out':
      return p.loss ? { ...p, loss: { ...p.loss, ruledOut: { who: entry.who, because: entry.because } } } : misfit;
    default:
      return p;
  }
}

export function evolveStray(s: StrayState | undefined, entry: Entry, _n: number, id: string): StrayState | Misfit {
  if (entry.kind === 'stray-found') return s ? misfit : { id, spec: entry.spec, place: entry.at };
  if (entry.kind === 'stray-moved')
    return s && !s.settled && s.place === entry.from && entry.to !== entry.from ? { ...s, place: entry.to } : misfit;
  if (entry.kind !== 'stray-settled' || !s || s.settled || s.place !== entry.at) return misfit;
  const { as, fastener, who, because } = entry;
  const settled = { as, ...(fastener && { fastener }), ...(who && { who }), ...(because && { because }) };
  return { ...s, settled, place: as === 'scrapped' ? 'scrap' : as === 'given' ? entry.at : 'owner' };
}
