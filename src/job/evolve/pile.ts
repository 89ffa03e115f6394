// What each entry does to the scrap pile: what comes onto it, what is taken from it, what the eye counted there. It only
// keeps account; whether an entry fits is judged by what was moved and where from.
import type { Entry } from '../entry.ts';
import type { PileState } from '../states.ts';

const emptyPile: PileState = { contents: [], bought: {} };

export function evolvePile(before: PileState | undefined, entry: Entry, n: number): PileState {
  const p = before ?? emptyPile;
  const onto = (...ids: readonly string[]): PileState => {
    const fresh = ids.filter((id) => !p.contents.includes(id));
    return fresh.length > 0 ? { ...p, contents: [...p.contents, ...fresh] } : p;
  };
  const from = (id: string): PileState => ({ ...p, contents: p.contents.filter((one) => one !== id) });
  switch (entry.kind) {
    case 'scrap-counted':
      return { ...p, counted: { n, count: entry.count, ...lyingOn(p), times: timesCounted(p) + 1 } };
    case 'fastener-removed':
      return onto(entry.fastener);
    case 'fastener-fitted':
    case 'fastener-lost':
      return from(entry.fastener);
    case 'fastener-moved':
      return entry.to === 'scrap' ? onto(entry.fastener) : from(entry.fastener);
    case 'piece-moved':
      return entry.to === 'scrap' ? onto(entry.piece) : from(entry.piece);
    case 'piece-lost':
      return from(entry.piece);
    case 'fastener-broken':
      return onto(...entry.pieces.flatMap((one) => (one.in === 'scrap' ? [one.piece] : [])));
    case 'box-moved':
      return { ...p, bought: { ...p.bought, [entry.name]: (p.bought[entry.name] ?? 0) + entry.quantity } };
    case 'stray-found':
      return onto(entry.stray);
    case 'stray-moved':
      return entry.to === 'scrap' ? onto(entry.stray) : from(entry.stray);
    case 'stray-settled':
      if (entry.as === 'scrapped') return onto(entry.stray);
      return entry.fastener ? { ...p, contents: [...from(entry.stray).contents, entry.fastener] } : from(entry.stray);
    default:
      return p;
  }
}

const lyingOn = ({ contents, bought }: PileState) => ({ contents: contents.length, bought });

/** Nothing came or went since the count before. */
const timesCounted = (p: PileState): number =>
  p.counted?.contents === p.contents.length && p.counted.bought === p.bought ? p.counted.times : 0;
