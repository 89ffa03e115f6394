// O3: the passes of an area, which one a hole is due for, which hole is next in it, and when a pass goes round again.
import { isShouldered } from './closed.ts';
import { type Ledger, stateOf } from './ledger.ts';
import { levelsOf } from './levels.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import type { Method } from './spec.ts';
import type { Pass } from './states.ts';
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

/** Hole numbers of an area in tightening order: the declared order, then the rest as numbered. Levels ride with theirs. */
export const inOrder = oncePerLedger((ledger, area): readonly Hole[] => {
  const a = stateOf(ledger, 'area', area);
  const numbers = [...new Set((a?.holes ?? []).map(numberOf))];
  const order = a?.declared?.order ?? [];
  const rest = numbers.filter((h) => !order.includes(h)).sort((x, y) => Number(x) - Number(y));
  return [...order.filter((h) => numbers.includes(h)), ...rest].map((h) => holeIn(area, h));
});

/** Loosened the other way round where an order of tightening was said, as is common practice (no source); else by number. */
export const inLooseningOrder = (ledger: Ledger, area: string): readonly Hole[] =>
  stateOf(ledger, 'area', area)?.declared?.order ? inOrder(ledger, area).toReversed() : inOrder(ledger, area);

function levelIsDue(ledger: Ledger, level: Hole, pass: string): boolean {
  const c = stateOf(ledger, 'hole', level)?.called;
  const o = c?.occupant;
  if (!c || !o || o.working || c.touchedAt === 0) return false;
  return o.level !== 'tight' && nextPass(ledger, level) === pass;
}

/** Hole numbers still due in a pass, in order; when none is and one was taken out of order, those it goes round again. */
export function dueIn(ledger: Ledger, area: string, pass: string): Hole[] {
  const all = inOrder(ledger, area);
  const due = all.filter((hole) => levelsOf(ledger, hole).some((level) => levelIsDue(ledger, level, pass)));
  return due.length > 0 ? due : dueAgain(ledger, area, all, pass);
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

/** O3: in a pass after the first, another hole than the next one. */
export function outOfTurn(ledger: Ledger, hole: Hole, pass: string): boolean {
  const area = areaOf(hole);
  if (pass === passesOf(ledger, area)[0]) return false;
  const due = dueIn(ledger, area, pass);
  const numbered = holeIn(area, numberOf(hole));
  return due.includes(numbered) && due[0] !== numbered;
}
