// What each entry does to a tray and to a name in the parts box: what lies there by the ledger, and when it was counted.
import type { Entry } from '../entry.ts';
import type { BoxState, TrayState } from '../states.ts';
import { inTray } from '../subjects.ts';
import { type Misfit, misfit } from './misfit.ts';

export function evolveTray(before: TrayState | undefined, entry: Entry, n: number, tray: string): TrayState | Misfit {
  const t: TrayState = before ?? { tray, contents: [], everUsed: false, movedAt: 0 };
  const here = inTray(tray);
  const into = (id: string): TrayState | Misfit =>
    t.contents.includes(id) ? misfit : { ...t, contents: [...t.contents, id], everUsed: true, movedAt: n };
  const out = (id: string): TrayState | Misfit =>
    t.contents.includes(id) ? { ...t, contents: t.contents.filter((one) => one !== id), movedAt: n } : misfit;
  /** It lay there, or elsewhere, all along: what the eye counted counted it, or did not. */
  const allAlong = (after: TrayState | Misfit): TrayState | Misfit =>
    after === misfit ? misfit : { ...(after as TrayState), movedAt: t.movedAt };
  // It lies there already: nothing goes out or in.
  const isMove = entry.kind === 'fastener-moved' || entry.kind === 'piece-moved' || entry.kind === 'stray-moved';
  if (isMove && entry.from === entry.to) return misfit;
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
    case 'stray-found':
      return allAlong(into(entry.stray));
    case 'stray-moved':
      return allAlong(entry.from === here ? out(entry.stray) : into(entry.stray));
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
