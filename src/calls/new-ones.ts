// Which new fastener of the parts box goes into a hole, which may, and what is said where none does.

import { unfit, wantsIn } from '../job/guards.ts';
import { every, stateOf } from '../job/ledger.ts';
import type { Said } from '../job/said.ts';
import { isAlike, type Spec, seenFields, specText } from '../job/spec.ts';
import type { BoxState } from '../job/states.ts';
import { areaOf, numberOf, subjectText, withinArea } from '../job/subjects.ts';
import { asTheOthers } from '../job/towards-hole.ts';
import { type Desk, fastenerOf, nextBack, nextNew } from './desk.ts';
import type { Args } from './form.ts';
import { cap } from './key-caps.ts';
import { likeNeighbours } from './like-neighbours.ts';
import type { No, Once, Ready } from './row.ts';
import { specWords } from './spec-words.ts';

/** New fasteners left in the parts box: those that may go into the hole, and those that may not (L5). */
export function newFor({ ledger }: Desk, hole: string | undefined): { fit: BoxState[]; others: BoxState[] } {
  const wants = hole === undefined ? undefined : wantsIn(ledger, hole);
  const left = [...every(ledger, 'box')].filter((b) => b.sort === 'fastener' && b.left > 0);
  const fits = (b: BoxState) => unfit(wants, b.spec ?? {}, true).length === 0;
  return { fit: left.filter(fits), others: left.filter((b) => !fits(b)) };
}
/** Of the new ones that fit the hole by thread and length the nearest to what it wants, else the only one that may go in. */
export function boxFor(desk: Desk, hole: string): string | undefined {
  const wants = wantsIn(desk.ledger, hole) ?? {};
  const { fit } = newFor(desk, hole);
  const [nearest] = fit
    .filter(({ spec = {} }) => isAlike('thread', spec, wants) && isAlike('lengthMm', spec, wants))
    .sort((one, other) => farFrom(wants, one.spec) - farFrom(wants, other.spec));
  return (nearest ?? (fit.length === 1 ? fit[0] : undefined))?.name;
}
/** A plain nut of another head stands behind the one-use one that was bought for the hole. */
const farFrom = (wants: Spec, spec: Spec = {}): number =>
  seenFields.filter((field) => !isAlike(field, wants, spec)).length + (wants.oneUse === spec.oneUse ? 0 : 1);
/** Nothing is bought for a hole pointed at that is full. */
function holdsOne({ ledger, facing }: Desk, hole: string): No | undefined {
  const held = stateOf(ledger, 'hole', hole)?.called.occupant;
  return held && facing.hole === hole
    ? { because: `${withinArea(hole)} still holds ${specText(held.spec)}`, instead: 'it comes off first', by: 'off' }
    : undefined;
}
/** It is full, or nothing new lies there that could go into it. */
export function noneNew(desk: Desk, hole: string | undefined): No | undefined {
  const full = hole === undefined ? undefined : holdsOne(desk, hole);
  if (full) return full;
  const { fit, others } = newFor(desk, hole);
  if (hole === undefined || fit.length > 0) return undefined;
  const wants = specText(wantsIn(desk.ledger, hole) ?? {});
  const beside = specText(likeNeighbours(desk.ledger, hole) ?? {});
  const isKnown = wants !== 'unknown';
  const wanted = isKnown ? `, which wants ${wants}` : beside === 'unknown' ? '' : `; beside it are ${beside}`;
  const said = isKnown ? wants : beside === 'unknown' ? 'bolt hex 10 M6x25' : beside;
  const none =
    others.length === 0
      ? `no new fastener is in the parts box for ${subjectText(`hole:${hole}`)}${wanted}`
      : `none of the new fasteners in the parts box fits ${subjectText(`hole:${hole}`)}${wanted}${fitsElsewhere(desk)}`;
  const next = nextBack(desk);
  const because = isElsewhere(desk, next, hole) ? `${withinArea(next)} is next, and has its own; ${none}` : none;
  return {
    because,
    instead: `put one in the box first, with what it is, as "box ${said}"`,
    by: 'box',
    ready: bought(desk, hole, because),
  };
}
/** Of a hole pointed at that nothing there fits: where what is there would go. */
function fitsElsewhere(desk: Desk): string {
  const other = desk.facing.hole && nextNew({ ...desk, facing: { ...desk.facing, hole: undefined } });
  const [found] = other ? newFor(desk, other).fit : [];
  return other && found ? `; ${found.name} there would go into ${withinArea(other)}` : '';
}
/** The line that puts it in the box, with what it is as far as that is known: more of it can be typed behind. */
function bought({ ledger }: Desk, hole: string, because: string): Ready {
  const name = `new for ${subjectText(`hole:${hole}`)}`.slice(0, 60);
  const spec = wantsIn(ledger, hole) ?? likeNeighbours(ledger, hole) ?? asTheOthers(ledger, areaOf(hole));
  return {
    line: `box "${name}" as ${specWords(spec)}`,
    title: boughtTitle(because),
  };
}
export const boughtTitle = (because: string): string =>
  `${because}. Bought, or at hand? ${cap.take} puts it in the box; the same key again then takes it`;
/** The hole that lacks its own; another that is next where something new fits that one alone. */
export function newHole(desk: Desk, args: Args): string | undefined {
  if (args.hole !== undefined) return args.hole as string;
  const lacking = nextNew(desk);
  const next = nextBack(desk);
  const fitsOnlyNext = newFor(desk, lacking).fit.length === 0 && newFor(desk, next).fit.length > 0;
  return next !== undefined && fitsOnlyNext ? next : lacking;
}
const isElsewhere = ({ facing }: Desk, next: string | undefined, hole: unknown): next is string =>
  facing.hole === undefined && next !== undefined && typeof hole === 'string' && numberOf(next) !== numberOf(hole);
/** "1 is next, and has its own in tray 2": why a new one is not for the hole that the other keys speak of. */
function whyNotNext(desk: Desk, next: string): string {
  const own = stateOf(desk.ledger, 'fastener', fastenerOf(desk.ledger, next) ?? '');
  if (newFor(desk, next).fit.length === 0)
    return `nothing new in the parts box fits ${withinArea(next)}, which is next`;
  return `${withinArea(next)} is next, and has its own${own ? ` in ${subjectText(own.place)}` : ''}`;
}
/** The hole that a new one goes into is not the one that is next, of which the other keys speak. */
export function askedOnNewElsewhere(desk: Desk, { hole, box }: Said): Once | undefined {
  const next = nextBack(desk);
  if (!isElsewhere(desk, next, hole) || hole !== nextNew(desk)) return undefined;
  return {
    because: whyNotNext(desk, next),
    instead: 'its own goes back',
    by: 'back',
    again: `puts ${box} into ${withinArea(String(hole))}`,
  };
}
