// O3: the passes of an area, which one a hole is due for, which hole is next in it, and when a pass goes round again.
import { isRefused } from '../trade/answer.ts';
import { type Layout, tighteningOrder } from '../trade/tightening-order.ts';
import { isShouldered, laterOf } from './closed.ts';
import type { Pass } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { levelsOf, levelsToTighten } from './levels.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { hasFigures, isSameFigure, type Method } from './spec.ts';
import type { AreaState } from './states.ts';
import { areaOf, type Hole, holeIn, numberOf } from './subjects.ts';

const usualPasses = ['snug', 'final'] as const;

export const passesOf = (ledger: Ledger, area: string): readonly string[] =>
  stateOf(ledger, 'area', area)?.declared?.passes ?? usualPasses;

/** O4: the method belongs to the fastener, else its area. */
export const methodFor = (ledger: Ledger, hole: Hole): Method | undefined =>
  stateOf(ledger, 'hole', hole)?.declared?.method ?? stateOf(ledger, 'area', areaOf(hole))?.declared?.method;

const hadBy = (ledger: Ledger, hole: Hole): readonly Pass[] => stateOf(ledger, 'hole', hole)?.called.passes ?? [];

/** The pass after the last one this hole has had since it was fitted or slackened. Two passes may bear one name. */
export function nextPass(ledger: Ledger, hole: Hole): string {
  const passes = passesOf(ledger, areaOf(hole));
  let at = -1;
  for (const { pass } of hadBy(ledger, hole)) {
    const on = passes.indexOf(pass, at + 1);
    if (on >= 0) at = on;
  }
  return passes[Math.min(at + 1, passes.length - 1)] as string;
}

/**
 * What one tightening on a number brings up, and by which pass: the levels that have it still to come, a pin straight with
 * its nut. A stud that is snug is not snugged again with its nut; where none has it to come all are brought up once more.
 * @param said the pass that was said; else the one that its own fastener, the first of them, has to come
 */
export function broughtUpAt(ledger: Ledger, hole: Hole, said?: string): { pass: string; levels: readonly Hole[] } {
  const passes = passesOf(ledger, areaOf(hole));
  const held = levelsToTighten(ledger, hole);
  const pass = said ?? nextPass(ledger, held[0] ?? hole);
  const due = held.filter((level) => passes.indexOf(nextPass(ledger, level)) <= passes.indexOf(pass));
  return { pass, levels: due.length > 0 ? due : held };
}

/** Which order an area has: its maker's, as declared; else one proposed from where its holes sit; else as numbered. */
export const orderBy = (ledger: Ledger, area: string): "the maker's" | Layout | 'number' =>
  stateOf(ledger, 'area', area)?.declared?.order ? "the maker's" : (proposed(ledger, area)?.by ?? 'number');

/** Hole numbers of an area in tightening order: the declared order, then the rest as numbered. Levels ride with theirs. */
export const inOrder = oncePerLedger((ledger, area): readonly Hole[] => {
  const a = stateOf(ledger, 'area', area);
  const numbers = [...new Set((a?.holes ?? []).map(numberOf))];
  const order = a?.declared?.order ?? proposed(ledger, area)?.numbers ?? [];
  const rest = numbers.filter((h) => !order.includes(h)).sort((x, y) => Number(x) - Number(y));
  return [...order.filter((h) => numbers.includes(h)), ...rest].map((h) => holeIn(area, h));
});

/** Where an order of tightening is known or proposed, the other way round, as is common practice (no source); else by number. */
export const inLooseningOrder = (ledger: Ledger, area: string): readonly Hole[] =>
  orderBy(ledger, area) === 'number' ? inOrder(ledger, area) : inOrder(ledger, area).toReversed();

/** Fewer need no order; more of them and no maker's order is a drawing, not a cover. */
const proposedFor = { from: 4, to: 40 };
/** By hand and by clamp nothing is drawn askew. */
const pressesNothing: ReadonlySet<string> = new Set(['hand', 'clamp']);
/**
 * O3: an order from where the holes sit, for the holes of one cover: all of an area hold one part or press one face, all of
 * them are placed, and no maker's order is known.
 */
const proposed = oncePerLedger((ledger, area): { numbers: readonly string[]; by: Layout } | undefined => {
  const a = stateOf(ledger, 'area', area);
  const holes = (a?.holes ?? []).filter((hole) => hole === holeIn(area, numberOf(hole)));
  if (!a || a.declared?.order || holes.length < proposedFor.from || holes.length > proposedFor.to) return undefined;
  if (pressesNothing.has(a.declared?.method?.by ?? '') || !areOneCover(ledger, a, holes)) return undefined;
  const places = holes.flatMap((hole) => {
    const at = stateOf(ledger, 'hole', hole)?.declared?.at;
    return at ? [{ hole: numberOf(hole), at }] : [];
  });
  const order = places.length === holes.length ? tighteningOrder(places) : undefined;
  return order && !isRefused(order) && order.by !== "the maker's order"
    ? { numbers: order.holes, by: order.by }
    : undefined;
});
function areOneCover(ledger: Ledger, a: AreaState, holes: readonly Hole[]): boolean {
  const apart = holes.some((hole) => {
    const declared = stateOf(ledger, 'hole', hole)?.declared;
    return declared?.slackOnly === true || declared?.later !== undefined;
  });
  if (apart) return false;
  const all = (some: readonly Hole[] | undefined) => some !== undefined && holes.every((hole) => some.includes(hole));
  return (
    a.parts.some((part) => all(stateOf(ledger, 'part', part)?.declared?.heldBy)) ||
    [...every(ledger, 'face')].some(({ declared }) => declared?.area === a.area && all(declared.pressedBy))
  );
}

function levelIsDue(ledger: Ledger, level: Hole, pass: string): boolean {
  const c = stateOf(ledger, 'hole', level)?.called;
  const o = c?.occupant;
  if (!c || !o || o.working || c.touchedAt === 0) return false;
  return o.level !== 'tight' && nextPass(ledger, level) === pass;
}

/** Hole numbers still due in a pass, in order; when none is and one was taken out of order, those it goes round again. */
export const dueIn = (ledger: Ledger, area: string, pass: string): readonly Hole[] =>
  dueOnce(ledger, `${area}/${pass}`);
const dueOnce = oncePerLedger((ledger, areaAndPass): readonly Hole[] => {
  const [area = '', pass = ''] = areaAndPass.split('/');
  const all = inOrder(ledger, area);
  const due = all.filter((hole) => levelsOf(ledger, hole).some((level) => levelIsDue(ledger, level, pass)));
  const again = due.length > 0 ? due : dueAgain(ledger, area, all, pass);
  if (again.length > 0 || pass !== passesOf(ledger, area).at(-1)) return again;
  return all.filter((hole) =>
    levelsOf(ledger, hole).some((level) => bearsAnother(ledger, level) && isTightByAnother(ledger, level)),
  );
});
/** O4: tight with no figure said or by another one than is said now, and nobody read what it came to. */
function isTightByAnother(ledger: Ledger, hole: Hole): boolean {
  const c = stateOf(ledger, 'hole', hole)?.called;
  const last = c?.passes.at(-1);
  const now = methodFor(ledger, hole);
  if (c?.occupant?.level !== 'tight' || !last?.last || last.readNewtonMetres !== undefined) return false;
  return now !== undefined && hasFigures(now) && !(last.method && isSameFigure(last.method, now));
}

/** O3: a closing round never touches torque-and-angle or shouldered fasteners. */
function bearsAnother(ledger: Ledger, hole: Hole): boolean {
  const by = methodFor(ledger, hole)?.by;
  return by !== 'torque-angle' && by !== 'shoulder' && by !== 'sleeve' && !isShouldered(ledger, hole);
}

/** The pass once more, when all have had it and one out of order: each hole until it has had it after that. */
function dueAgain(ledger: Ledger, area: string, all: readonly Hole[], pass: string): Hole[] {
  const ofPass = (hole: Hole) => hadBy(ledger, hole).filter((p) => p.pass === pass);
  const holes = all.filter((hole) => ofPass(hole).length > 0);
  if (passesOf(ledger, area)[0] === pass) return [];
  const roundAt = Math.max(0, ...holes.map((hole) => ofPass(hole)[0]?.n ?? 0));
  const marked = holes.some((hole) => ofPass(hole).some((p) => p.outOfOrder && p.n <= roundAt));
  if (!marked) return [];
  return holes.filter((hole) => bearsAnother(ledger, hole) && (ofPass(hole).at(-1)?.n ?? 0) <= roundAt);
}

/** O3: in a pass after the first, another hole than the next one. An order that is only proposed marks nothing. */
export function outOfTurn(ledger: Ledger, hole: Hole, pass: string): boolean {
  const area = areaOf(hole);
  if (pass === passesOf(ledger, area)[0] || proposed(ledger, area)) return false;
  const due = dueIn(ledger, area, pass);
  const numbered = holeIn(area, numberOf(hole));
  // What is finished later is nobody's turn before: it keeps none from being the next.
  const next = due.find((one) => pass !== passesOf(ledger, area).at(-1) || laterOf(ledger, one) === undefined);
  return due.includes(numbered) && due[0] !== numbered && next !== numbered;
}
