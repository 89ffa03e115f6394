// U3: all that was called of one hole was of the other. The called of both change places, with the fasteners, pieces
// and findings that came from or lie in them; what was declared of the holes stays.
import { everyKey, noted, put, settled } from './drawers.ts';
import type { EntryOf } from './entry.ts';
import { freshHole } from './evolve/hole.ts';
import { inHole } from './subjects.ts';
import type { Work } from './work.ts';

export function exchange(work: Work, entry: EntryOf<'holes-exchanged'>, n: number): void {
  const { one, other } = entry;
  const a = noted(work.states.hole, one) ?? freshHole(one);
  const b = noted(work.states.hole, other) ?? freshHole(other);
  // A hole nobody had touched stays as found: nothing was called of it.
  const touchedBy = (called: typeof a.called) =>
    called.touchedAt
      ? { ...called, touchedAt: n, changedAt: n, openedAt: n, openings: [...called.openings, n] }
      : called;
  put(work.states.hole, one, { ...a, called: touchedBy(b.called) });
  put(work.states.hole, other, { ...b, called: touchedBy(a.called) });

  const swapped = (of: string): string =>
    of === inHole(one) ? inHole(other) : of === inHole(other) ? inHole(one) : of;
  for (const [id, f] of [...everyKey(settled(work.states.fastener))]) {
    const place = swapped(f.place);
    const origin = swapped(f.origin);
    if (place !== f.place || origin !== f.origin) put(work.states.fastener, id, { ...f, place, origin });
  }
  for (const [id, p] of [...everyKey(settled(work.states.piece))]) {
    if (swapped(p.place) !== p.place) put(work.states.piece, id, { ...p, place: swapped(p.place) });
  }
  for (const [id, f] of [...everyKey(settled(work.states.finding))]) {
    if (swapped(f.at) !== f.at) put(work.states.finding, id, { ...f, at: swapped(f.at) });
  }
  for (const [name, t] of [...everyKey(settled(work.states.temporary))]) {
    if (t.at && swapped(t.at) !== t.at) put(work.states.temporary, name, { ...t, at: swapped(t.at) });
  }
  for (const hole of [one, other]) work.changed.add(`hole:${hole}`);
}
