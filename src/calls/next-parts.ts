// Which part comes off next, as its plan has it, and which goes back or is renewed.
import { inFrontOf } from '../job/in-front.ts';
import { every } from '../job/ledger.ts';
import { openBehind } from '../job/order.ts';
import { areasThroughParts, partsOffBehind } from '../job/parts-behind.ts';
import type { PartState } from '../job/states.ts';
import { areaOf } from '../job/subjects.ts';
import { isWithdrawn } from '../job/withdrawn.ts';
import type { Desk } from './desk.ts';
import { isFromPlan, lastFirst, within } from './in-turn.ts';
import { areasOfPart } from './where-parts-are.ts';

const parts = ({ ledger }: Desk) => [...every(ledger, 'part')].filter((p) => !isWithdrawn(ledger, `part:${p.part}`));
/** Off, of the area in use, the last one first: held there, or said to be in front of it or behind it; not where it is gated. */
export function goesBackNext(desk: Desk, is: (p: PartState) => boolean): string[] {
  const { ledger, facing } = desk;
  const { area } = facing;
  const isHere = ({ part }: PartState) =>
    area !== undefined && (areasOfPart(ledger, part).includes(area) || areasThroughParts(ledger, part).includes(area));
  const isNext = ({ part }: PartState) =>
    openBehind(ledger, [`part:${part}`]).length === 0 && partsOffBehind(ledger, part).length === 0;
  const off = parts(desk).filter((p) => p.off && is(p) && isHere(p) && isNext(p));
  return lastFirst(off, (p) => p.removedAt).map((p) => p.part);
}

/** What stands in front of the area in use, then what is loose in it. */
export function comesOffNext(desk: Desk): string[] {
  if (!isFromPlan(desk.ledger)) return [];
  const on = parts(desk).filter(
    (p) => p.declared && !p.off && p.removedAt === 0 && inFrontOf(desk.ledger, `part:${p.part}`).length === 0,
  );
  const { area } = desk.facing;
  const front = new Set(area === undefined ? [] : inFrontOf(desk.ledger, `area:${area}`));
  const first = on.filter(({ part }) => front.has(`part:${part}`));
  const here = within(desk, on, (p) => p.declared?.heldBy.map(areaOf) ?? []);
  return [...new Set([...first, ...here])].map((p) => p.part);
}
