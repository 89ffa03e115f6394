// What the other side of the car has under the same name and this one lacks: offered where nothing else is known, and taken by
// a key alone. The two sides of an axle are built alike; common practice, no source.
import { stateOf } from '../job/ledger.ts';
import type { Method, Spec } from '../job/spec.ts';
import { hasFigures, specText } from '../job/spec.ts';
import { holeIn, numberOf, withinArea } from '../job/subjects.ts';
import { wantsFigure } from '../job/tightening.ts';
import { type Desk, nextComing } from './desk.ts';
import { knownIn } from './taken-next.ts';
import { figureFor, type WhoseFigure } from './whose-figure.ts';

const sides: Readonly<Record<string, string>> = {
  left: 'right',
  right: 'left',
  nearside: 'offside',
  offside: 'nearside',
};
/** "right" of "right stand". */
export const sideIn = (name: string): string | undefined =>
  /\b(left|right|nearside|offside)\b/i.exec(name)?.[1]?.toLowerCase();
/** "right caliper" of "left caliper", where both are areas of this job. */
export function otherSide({ ledger, facing: { area } }: Desk): string | undefined {
  const other = area?.replace(/\b(left|right|nearside|offside)\b/gi, (side) => sides[side.toLowerCase()] ?? side);
  return other === area || other === undefined || !stateOf(ledger, 'area', other) ? undefined : other;
}

/** The figures its fasteners are brought up to there; none are known here, and nothing is said against them. */
export function methodThere(desk: Desk): { from: string; method: Method; whose: WhoseFigure } | undefined {
  const { ledger } = desk;
  const from = otherSide(desk);
  const whose = figureFor(desk);
  if (from === undefined || !whose) return undefined;
  const [hole] = whose.holes;
  const there = hole === undefined ? undefined : stateOf(ledger, 'hole', holeIn(from, numberOf(hole)));
  const method = there?.declared?.method ?? stateOf(ledger, 'area', from)?.declared?.method;
  if (!method || !hasFigures(method)) return undefined;
  const here = whose.method;
  const isOpen = here === undefined || (wantsFigure(here) && here.by === method.by);
  return isOpen ? { from, method, whose } : undefined;
}

/** What came out of the same hole there, where neither plan nor call says what is in the one that comes off next. */
export function specThere(desk: Desk): { from: string; spec: Spec } | undefined {
  const { ledger, facing } = desk;
  const from = otherSide(desk);
  const next = nextComing(desk);
  if (from === undefined || next === undefined || knownIn(ledger, next)) return undefined;
  const c = stateOf(ledger, 'hole', `${from}/${withinArea(next)}`)?.called;
  const spec = c?.first === undefined || c.firstIsWrong ? undefined : stateOf(ledger, 'fastener', c.first)?.spec;
  return spec && specText(spec) !== specText({}) && specText(spec) !== specText(facing.spec)
    ? { from, spec }
    : undefined;
}

/** How many holes were counted there, where those here were not and no more than that are known. */
export function countThere(desk: Desk, area: string): { from: string; count: number } | undefined {
  const from = otherSide({ ...desk, facing: { ...desk.facing, area } });
  const count = from === undefined ? undefined : stateOf(desk.ledger, 'area', from)?.counted?.count;
  return from === undefined || count === undefined || stateOf(desk.ledger, 'area', area)?.counted
    ? undefined
    : { from, count };
}
