// O3: the passes of an area, which one a hole is due for, and which hole is next in it.
import { type Ledger, stateOf } from './ledger.ts';
import type { HoleState } from './states.ts';
import { areaOf, type Hole, holeIn, numberOf, withinArea } from './subjects.ts';

const usualPasses = ['snug', 'final'] as const;

export const passesOf = (ledger: Ledger, area: string): readonly string[] =>
  stateOf(ledger, 'area', area)?.declared?.passes ?? usualPasses;

/** The pass after the last one this hole has had since it was fitted or slackened. */
export function nextPass(ledger: Ledger, hole: Hole): string {
  const passes = passesOf(ledger, areaOf(hole));
  const had = stateOf(ledger, 'hole', hole)?.called.passes.at(-1)?.pass;
  const at = had === undefined ? -1 : passes.indexOf(had);
  return passes[Math.min(at + 1, passes.length - 1)] as string;
}

/** Holes of an area in tightening order: the declared order, then the rest as numbered. Levels ride with their number. */
export function inOrder(ledger: Ledger, area: string): Hole[] {
  const a = stateOf(ledger, 'area', area);
  const numbers = (a?.holes ?? []).map((h) => withinArea(h)).filter((h) => !h.includes(' '));
  const order = a?.declared?.order ?? [];
  const rest = numbers.filter((h) => !order.includes(h)).sort((x, y) => Number(x) - Number(y));
  return [...order.filter((h) => numbers.includes(h)), ...rest].map((h) => holeIn(area, h));
}

const dueFor = (ledger: Ledger, h: HoleState, pass: string): boolean => {
  const o = h.called.occupant;
  return (
    o !== undefined && !o.working && h.called.touchedAt > 0 && o.level !== 'tight' && nextPass(ledger, h.hole) === pass
  );
};

/** Holes still due in a pass, in order. */
export function dueIn(ledger: Ledger, area: string, pass: string): Hole[] {
  return inOrder(ledger, area).filter((hole) => {
    const h = stateOf(ledger, 'hole', hole);
    return h !== undefined && dueFor(ledger, h, pass);
  });
}

/** O3: in a pass after the first, another hole than the next one. */
export function outOfTurn(ledger: Ledger, hole: Hole, pass: string): boolean {
  const area = areaOf(hole);
  if (pass === passesOf(ledger, area)[0]) return false;
  const due = dueIn(ledger, area, pass);
  const numbered = holeIn(area, numberOf(hole));
  return due.length > 0 && due.includes(numbered) && due[0] !== numbered;
}
