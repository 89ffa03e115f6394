// Which areas a part belongs to: where it is held, and what it is said to be in front of or behind; and whether a new one
// named like another area is meant, which the bolts in use would hold.

import type { Entry } from '../job/entry.ts';
import { isFreed } from '../job/freed.ts';
import { inFrontOf, unpartedBefore } from '../job/in-front.ts';
import { every, type Ledger, stateOf } from '../job/ledger.ts';
import { edgesOf, gatedBy, openBehind } from '../job/order.ts';
import { areasThroughParts, partsOffBehind } from '../job/parts-behind.ts';
import type { Said } from '../job/said.ts';
import { areaOf, named, type Subject, subjectText } from '../job/subjects.ts';
import type { Desk } from './desk.ts';
import type { Args } from './form.ts';
import type { Besides, Once, Otherwise } from './row.ts';

export function areasOfPart(ledger: Ledger, part: string): string[] {
  const subject = `part:${part}`;
  const beside = edgesOf(ledger).flatMap((e) => {
    const other = e.front === subject ? e.behind : e.behind === subject ? e.front : undefined;
    return other === undefined ? [] : (named('area', other) ?? []);
  });
  const held = stateOf(ledger, 'part', part)?.declared?.heldBy.map(areaOf) ?? [];
  return [...new Set([...held, ...beside])];
}

/** What still stands closed in front of a part, and of where it is held as long as it is. */
function closedBefore(ledger: Ledger, part: string): Subject[] {
  const p = stateOf(ledger, 'part', part);
  const held =
    !p?.declared || isFreed(ledger, p) ? [] : p.declared.heldBy.map((hole): Subject => `area:${areaOf(hole)}`);
  return [...new Set([`part:${part}` as Subject, ...held].flatMap((at) => inFrontOf(ledger, at)))];
}
/** Which one comes off: what stands in front of the area in use, what it holds, what is loose elsewhere; last what nobody reaches yet. */
export function inTurnToComeOff({ ledger, facing: { area } }: Desk, known: readonly string[]): readonly string[] {
  const front = area === undefined ? [] : inFrontOf(ledger, `area:${area}`);
  const rank = (part: string): number => {
    const p = stateOf(ledger, 'part', part);
    const heldBy = p?.declared?.heldBy ?? [];
    const isHeld = p !== undefined && heldBy.length > 0 && !isFreed(ledger, p);
    if (heldBy.some((hole) => areaOf(hole) === area)) return isHeld ? 2 : 1;
    if (isHeld) return 4;
    if (closedBefore(ledger, part).length > 0) return 5;
    return front.includes(`part:${part}`) ? 0 : 3;
  };
  return known
    .map((part) => ({ part, at: rank(part) }))
    .toSorted((a, b) => a.at - b.at)
    .map(({ part }) => part);
}
/** Which one goes back: of the area in use, then what is due, then what waits for something behind it; of each the last one off. */
export function inTurnToGoBack({ ledger, facing: { area } }: Desk, known: readonly string[]): readonly string[] {
  const isHere = (part: string): boolean =>
    area !== undefined && [...areasOfPart(ledger, part), ...areasThroughParts(ledger, part)].includes(area);
  const waits = (part: string): boolean => {
    const heldBy = stateOf(ledger, 'part', part)?.declared?.heldBy ?? [];
    const isGated = heldBy.some((hole) => gatedBy(ledger, areaOf(hole)) !== undefined);
    return isGated || openBehind(ledger, [`part:${part}`]).length > 0 || partsOffBehind(ledger, part).length > 0;
  };
  return known
    .map((part) => ({
      part,
      waits: waits(part),
      here: isHere(part),
      off: stateOf(ledger, 'part', part)?.removedAt ?? 0,
    }))
    .toSorted(
      (one, other) =>
        Number(other.here) - Number(one.here) || Number(one.waits) - Number(other.waits) || other.off - one.off,
    )
    .map(({ part }) => part);
}
/** It lies behind what is still closed, where no hand reaches it: nobody took it off. */
export function askedOnReaching({ ledger }: Desk, { part }: Said): Once | undefined {
  const before = typeof part === 'string' ? closedBefore(ledger, part).map(subjectText) : [];
  if (before.length === 0) return undefined;
  return {
    because: `${part} is behind ${before.join(', ')}, not opened yet`,
    instead: 'what is in front comes off first',
    by: 'area',
    again: `calls ${part} off all the same`,
    short: `behind ${before.join(', ')}`,
  };
}

/** T2: a part is off, and what stands in front of it was not called parted. */
export const callThemParted = (entries: readonly Entry[], _said: Said, { ledger }: Desk): Otherwise | undefined =>
  entries.some((e) => e.kind === 'part-removed' && unpartedBefore(ledger, e.part).length > 0)
    ? { words: 'One after the other parted', by: 'parted' }
    : undefined;

export const areaNamedLike = (ledger: Ledger, part: string): string | undefined =>
  [...every(ledger, 'area')].find(({ area }) => area.toLowerCase() === part.toLowerCase())?.area;

/** Answers that the part is that of the area it is named like. */
export const itsOwnArea = 'its own area';

/** Of one that is known, or said with what holds it, nothing is asked. */
export function askedOnPartOff({ ledger, facing }: Desk, args: Args): Besides | undefined {
  const { part, heldBy, sits, late } = args;
  if (typeof part !== 'string' || facing.area === undefined || (heldBy ?? sits ?? late) !== undefined) return undefined;
  if (stateOf(ledger, 'part', part)) return undefined;
  const other = areaNamedLike(ledger, part);
  if (other === undefined || other === facing.area) return undefined;
  return {
    key: 'late',
    title: `${other} is an area of its own, and ${facing.area} is in use: which part comes off?`,
    choices: [
      { value: itsOwnArea, text: `the ${other} whose holes are called there: it came off` },
      { value: 'all the same', text: `another of that name: the holes of ${facing.area} hold it` },
    ],
    inWords: `say "area ${other}" first, or what holds it, as "held by 1-3"`,
  };
}
