// What might be called of what is lost (L9): the search, then that it is found, laid where it lay before.
import { pick } from './drawers.ts';
import { isStruck, type Ledger, lineAt, stateOf } from './ledger.ts';
import type { Said } from './said.ts';
import { inTray, named, nameOf } from './subjects.ts';

export function towardsLost(ledger: Ledger, at: string): Said[] {
  const id = nameOf(at);
  const piece = at.startsWith('piece:');
  const loss = stateOf(ledger, piece ? 'piece' : 'fastener', id)?.loss;
  const found: Said = piece
    ? { verb: 'move-piece', piece: id, to: 'scrap' }
    : { verb: 'move-fastener', fastener: id, to: inTray(trayBeforeLost(ledger, id) ?? '1') };
  return loss?.reaches && loss.searched.length === 0 ? [{ verb: 'search', lost: id, how: 'magnet' }, found] : [found];
}

/** The tray it lay in; undefined where it was dropped on its way out of its hole or the parts box. */
export function trayBeforeLost(ledger: Ledger, fastener: string): string | undefined {
  const chain = pick(ledger.chains, `fastener:${fastener}`);
  for (let i = (chain?.length ?? 0) - 1; i >= 0; i--) {
    const n = chain?.all[i] as number;
    if (isStruck(ledger, n)) continue;
    for (const e of lineAt(ledger, n)?.entries ?? []) {
      const isLosing = e.kind === 'fastener-lost' || (e.kind === 'fastener-moved' && e.to === 'lost');
      if (isLosing && e.fastener === fastener) return named('tray', e.from);
    }
  }
  return undefined;
}
