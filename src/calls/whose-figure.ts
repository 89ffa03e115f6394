// O4: whose figure is asked for on the way back: of the next one, or the one pointed at, and its like, where they have a
// method of their own or are of another kind, thread or class than the rest; of the area where all are alike. One pointed
// at that has its figure is corrected alone. One said of the area goes to no fastener that has its own.
import type { Entry } from '../job/entry.ts';
import { type Ledger, stateOf } from '../job/ledger.ts';
import { methodFor } from '../job/passes.ts';
import { hasFigures, type Method } from '../job/spec.ts';
import { type Hole, withinArea } from '../job/subjects.ts';
import { specAt, threadAt, wantsFigure } from '../job/tightening.ts';
import { declare } from './declaring.ts';
import { type Desk, nextHole, nextTight } from './desk.ts';
import type { Meant } from './row.ts';

/** `holes`: none where it is the area's. `method`: as far as it was said. */
export type WhoseFigure = { area: string; holes: readonly Hole[]; method?: Method };

const methodAt = (ledger: Ledger, hole: Hole) => stateOf(ledger, 'hole', hole)?.declared?.method;
/** A nut is brought up to another figure than a bolt of its thread, a 10.9 than an 8.8. */
function likenessAt(ledger: Ledger, hole: Hole): string {
  const spec = specAt(ledger, hole);
  return JSON.stringify([methodAt(ledger, hole), spec?.kind, threadAt(ledger, hole), spec?.class]);
}

/** Where they are pulled up already, the figure is of the one that is drawn to it next, and of none that is still out. */
function snugNext(desk: Desk): Hole | undefined {
  const next = nextTight(desk);
  return next !== undefined && stateOf(desk.ledger, 'hole', next)?.called.occupant?.level === 'snug' ? next : undefined;
}

export function figureFor(desk: Desk): WhoseFigure | undefined {
  const { ledger, facing } = desk;
  if (facing.area === undefined) return undefined;
  const { area } = facing;
  const a = stateOf(ledger, 'area', area);
  const all: readonly Hole[] = a?.holes ?? [];
  // With all of them tight it is said late, of those that have none.
  const late = () => all.find((hole) => wantsFigure(methodFor(ledger, hole)));
  const next = facing.hole ?? snugNext(desk) ?? nextHole(desk, 'build') ?? late();
  const own = next === undefined ? undefined : methodAt(ledger, next);
  const isLike = (hole: Hole) => next === undefined || likenessAt(ledger, hole) === likenessAt(ledger, next);
  const said = facing.hole === undefined ? undefined : methodFor(ledger, facing.hole);
  const like = facing.hole && said && hasFigures(said) ? [facing.hole] : all.filter(isLike);
  const method = own ?? a?.declared?.method;
  return { area, holes: own || like.length < all.length ? like : [], ...(method && { method }) };
}

/** "left disc", "left disc 1, 2 stud". */
export const whoseWords = ({ area, holes }: WhoseFigure): string =>
  [area, holes.map(withinArea).join(', ')].filter(Boolean).join(' ');

export const declareMethod = ({ area, holes }: WhoseFigure, method: Method): Meant =>
  holes.length === 0
    ? declare({ kind: 'area-declared', area, method })
    : declare(...holes.map((hole): Entry => ({ kind: 'hole-declared', hole, method })));
