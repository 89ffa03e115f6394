// Going about the bench: up and down lists, from a line to its place and back, and moving a hole on its map. It makes no
// call but the one that keeps a hole where it was moved to.
import { type Desk, nextBack, nextOff } from '../calls/desk.ts';
import { acrossGroups, type Listed, pickedAt, type Rows } from '../calls/listed.ts';
import { areaDrawn } from '../calls/lists/map.ts';
import { mendedNow } from '../calls/repair-asked.ts';
import { isSentTo, rowSentTo } from '../calls/sent-to.ts';
import { type Ledger, lastLine } from '../job/ledger.ts';
import { areaOf, named, nameOf } from '../job/subjects.ts';
import type { ScreenId } from '../view/screens.ts';
import { acting, type View, type ViewStep } from '../view/view.ts';
import { screenFor } from './leading.ts';
import type { Session } from './session-shape.ts';

export type Around = {
  view(): View;
  session(): Session | undefined;
  desk(): Desk;
  listed(): Rows;
  step(s: ViewStep): void;
};
export const onHoles = (view: View): boolean => ['strip', 'build'].includes(acting(view));
export const pickedOf = ({ view, listed }: Around): Listed | undefined => pickedAt(listed(), view().at[view().screen]);

/** Up or down a list; on strip and build the arrows point at a hole. */
export function moveBy({ view, session, desk, listed, step }: Around, by: number): void {
  const all = listed();
  if (!onHoles(view())) return step({ move: by, of: all.length });
  const rows = all.slice(0, all.length).filter((one) => one.picks.hole !== undefined);
  const from = rows.findIndex((one) => one.picks.hole === desk().facing.hole);
  const to = from < 0 ? (by > 0 ? 0 : rows.length - 1) : Math.max(0, Math.min(rows.length - 1, from + by));
  const hole = rows[to]?.picks.hole;
  if (hole !== undefined) session()?.face({ hole: hole as string });
}

/** To the next area or heading of a list. */
export function moveAcross({ view, listed, step }: Around, by: 1 | -1): void {
  const { screen, at } = view();
  const rows = listed();
  const from = Math.min(at[screen] ?? 0, rows.length - 1);
  step({ move: acrossGroups(rows, from, by) - (at[screen] ?? 0), of: rows.length });
}

/** A list begins with what the area in use waits for; that of faces, which are worked on in turn, else with the first that waits. */
export function startWhereItWaits({ view, desk, listed, step }: Around): Listed | undefined {
  const { screen, before, at } = view();
  if (!isSentTo(screen)) return undefined;
  const rows = listed();
  const waits = rowSentTo(desk(), screen, before, rows.slice(0, rows.length));
  if (waits === undefined) return undefined;
  step({ move: waits - (at[screen] ?? 0), of: rows.length });
  return rows.at(waits);
}

/** A row that a call has moved in its list stays the one that is picked; one that is gone leaves the cursor where it stood. */
export function keepPicked({ view, listed, step }: Around, key: string | undefined): void {
  const { screen, at } = view();
  if (key === undefined || onHoles(view()) || screen === 'log') return;
  const rows = listed();
  for (let i = 0; i < rows.length; i++)
    if (rows.at(i)?.key === key) return step({ move: i - (at[screen] ?? 0), of: rows.length });
}

/** So many rows behind the picked one are known again where it is gone itself. */
const rowsKnown = 6;
/** The picked row of a list and what stands behind it, as it is left. */
export function rowsLeft({ view, listed }: Around): readonly string[] {
  const { screen, at } = view();
  if (onHoles(view()) || isPassing.has(screen)) return [];
  const rows = listed();
  const from = Math.min(at[screen] ?? 0, rows.length - 1);
  // What keeps the car is read from its top again, once what was picked there is done.
  return rows.slice(from, from + (screen === 'leaving' ? 1 : rowsKnown)).map(({ key }) => key);
}
/** Lists that begin anew, or are read from their end. */
const isPassing: ReadonlySet<ScreenId> = new Set(['help', 'glance', 'shelf', 'settings', 'log']);
/** A row of a long list is dear to make: so far around its old place it is looked for. */
const mostMoved = 40;
/** Back in a list whose rows have changed meanwhile: the row that was picked, else the next of those that stood behind it. */
export function backToRow({ view, listed, step }: Around, left: readonly string[]): void {
  if (left.length === 0) return;
  const { screen, at } = view();
  const rows = listed();
  const was = at[screen] ?? 0;
  const first = Math.max(0, was - mostMoved);
  const keys = rows.slice(first, was + mostMoved).map(({ key }) => key);
  const key = left.find((one) => keys.includes(one));
  if (key !== undefined) step({ move: first + keys.indexOf(key) - was, of: rows.length });
  else if (screen === 'leaving') step({ move: Number.NEGATIVE_INFINITY, of: rows.length });
}

/** The row to be read after a call: of the stray it made known, since that says whose it likely is; of the finding it has mended. */
export function rowToRead({ view }: Around, ledger: Ledger, picked: string | undefined): string | undefined {
  const stray = lastLine(ledger)?.entries.flatMap((e) => (e.kind === 'stray-found' ? e.stray : []))[0];
  const mended = view().screen === 'findings' ? mendedNow(ledger, picked) : undefined;
  return stray ?? mended ?? picked;
}

/** To the screen where a place is worked on, and to its line there. */
export function goTo({ view, session, listed, step }: Around, at: string, on = screenFor(at)): void {
  const hole = named('hole', at);
  if (hole) session()?.face({ area: areaOf(hole), hole });
  const area = named('area', at);
  if (area) session()?.face({ area, hole: undefined });
  step({ to: on, from: view().screen });
  const rows = listed();
  for (let i = 0; i < rows.length; i++) {
    const one = rows.at(i);
    const isIt = one?.leads === at || one?.key === nameOf(at) || Object.values(one?.picks ?? {}).includes(nameOf(at));
    if (isIt) return step({ move: i - (view().at[on] ?? 0), of: rows.length });
  }
}

/** The hole pointed at, or the next one, is moved by the arrow keys from where it is drawn. */
export function startPlacing({ view, session, desk }: Around): void {
  const next = desk().facing.hole ?? (acting(view()) === 'build' ? nextBack(desk()) : nextOff(desk()));
  const drawn = areaDrawn(desk(), next, false)?.holes.find((one) => one.hole === next);
  if (drawn) session()?.face({ hole: drawn.hole, placing: { hole: drawn.hole, at: drawn.at } });
}
/** By how much an arrow key moves a hole on the map, in units of its drawing. */
const moves: Record<string, readonly [number, number]> = { left: [-2, 0], right: [2, 0], up: [0, -2], down: [0, 2] };

/** A key while a hole is being moved; where it is to stay once Enter says so. */
export function placedBy(key: string, session: Session): { hole: string; x: number; y: number } | undefined {
  const { placing } = session.desk().facing;
  if (!placing) return undefined;
  const [x, y] = placing.at;
  const move = moves[key];
  if (move) session.face({ placing: { hole: placing.hole, at: [x + move[0], y + move[1]] } });
  if (key === 'escape' || key === 'enter') session.face({ placing: undefined });
  return key === 'enter' ? { hole: placing.hole, x, y } : undefined;
}
