// What is said beside a bolt that is loosened or brought up: a lock as its holding tool, the torque that was to be read at
// its end or the figure it was brought up to; and beside a figure that is said late, or of several threads at once. It
// stands in no way.
import type { Entry, EntryOf } from './entry.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { methodFor } from './passes.ts';
import { hasFigures, isSameFigure } from './spec.ts';
import { areaOf, type Hole, withinArea } from './subjects.ts';
import { acceptanceOf, readFarOff, specAt, threadAt, wantsFigure } from './tightening.ts';

/** R2: a holding bar is made to hold, as is what the plan puts at the bolt itself; any other pin or lock only keeps a place. */
const locksPlace = (ledger: Ledger, holes: readonly Hole[]): string[] => {
  const at = new Set(holes.flatMap((hole) => [`hole:${hole}`, `area:${areaOf(hole)}`]));
  const locks = [...every(ledger, 'temporary')].filter((t) => t.in && (t.sort === 'lock' || t.sort === 'pin'));
  return locks.some((t) => at.has(t.at ?? '')) ? [] : locks.map((t) => t.temporary);
};

const turnsAShaft = (ledger: Ledger, hole: Hole): boolean =>
  stateOf(ledger, 'hole', hole)?.declared?.sprocketBolt === true ||
  [...every(ledger, 'drive')].some((d) => d.declared?.crankBolt === hole);

/** Loosened or brought up: also one that comes off in the same call without having been slack before. */
function wrenched(ledger: Ledger, entry: Entry): Hole | undefined {
  if (entry.kind === 'fastener-slackened' || entry.kind === 'fastener-tightened') return entry.hole;
  if (entry.kind !== 'fastener-removed') return undefined;
  const level = stateOf(ledger, 'hole', entry.hole)?.called.occupant?.level;
  return level === 'slack' || level === 'on' ? undefined : entry.hole;
}

/** A bolt that turns a shaft is loosened or brought up against what only keeps a place. */
export function heldByALock(ledger: Ledger, entries: readonly Entry[]): string[] {
  const shafts = entries.flatMap((entry) => wrenched(ledger, entry) ?? []).filter((hole) => turnsAShaft(ledger, hole));
  const locks = shafts.length > 0 ? locksPlace(ledger, shafts) : [];
  return locks.length > 0 ? [`${locks.join(' and ')} in: a lock is no holding tool`] : [];
}

/** O4: a method that ends in a torque to be accepted, and nobody said what the wrench showed. */
function unreadAcceptance(entry: Entry): string | undefined {
  if (entry.kind !== 'fastener-tightened' || !entry.last || entry.readNewtonMetres !== undefined) return undefined;
  const wanted = acceptanceOf(entry.method);
  return wanted && `the torque at the end was not said: ${wanted}`;
}

const misread = (entry: Entry): string | undefined =>
  entry.kind === 'fastener-tightened' && entry.last && entry.readNewtonMetres !== undefined
    ? readFarOff(entry.method, entry.readNewtonMetres)
    : undefined;
/** What the wrench showed at the end was not said, or is far from the figure. */
export const torqueNotRead = (entry: Entry): string[] => {
  const words = unreadAcceptance(entry) ?? misread(entry);
  return words === undefined ? [] : [words];
};

/** O4: said once an area, with the first of its finals, of those that have none. */
export function withoutFigure(ledger: Ledger, entries: readonly Entry[]): string[] {
  const finals = entries.flatMap((e) => (e.kind === 'fastener-tightened' && e.last ? [e] : []));
  const lacks = ({ hole, method }: EntryOf<'fastener-tightened'>) =>
    method === undefined ? hasItsLikeAFigure(ledger, hole) : wantsFigure(method);
  const lacking = finals.filter((e) => e.readNewtonMetres === undefined && lacks(e)).map((e) => e.hole);
  const wasSaid = (area: string) =>
    holesIn(ledger, area).some((hole) => {
      const { occupant, passes = [] } = stateOf(ledger, 'hole', hole)?.called ?? {};
      return occupant?.level === 'tight' && passes.some(({ last, method }) => last && wantsFigure(method));
    });
  return [...Map.groupBy(lacking, areaOf)]
    .filter(([area]) => !wasSaid(area))
    .map(([area, holes]) => {
      const isAll = !holesIn(ledger, area).some((hole) => hasAFigure(ledger, hole));
      const which = isAll ? area : `${area} ${holes.map(withinArea).join(', ')}`;
      return `no figure is known for ${which}: the torque is in the maker's manual`;
    });
}
const holesIn = (ledger: Ledger, area: string): readonly Hole[] => stateOf(ledger, 'area', area)?.holes ?? [];
function hasAFigure(ledger: Ledger, hole: Hole): boolean {
  const method = methodFor(ledger, hole);
  return method !== undefined && hasFigures(method);
}
/** Nobody said how it is tightened, and of one of its kind and thread in the area a figure was said. */
function hasItsLikeAFigure(ledger: Ledger, hole: Hole): boolean {
  const kindAt = (one: Hole) => `${specAt(ledger, one)?.kind} ${threadAt(ledger, one)}`;
  return holesIn(ledger, areaOf(hole)).some((one) => hasAFigure(ledger, one) && kindAt(one) === kindAt(hole));
}

type Said = Extract<Entry, { kind: 'area-declared' | 'hole-declared' }>;
const figuresIn = (entries: readonly Entry[]): Said[] =>
  entries.flatMap((e) =>
    (e.kind === 'area-declared' || e.kind === 'hole-declared') && e.method && hasFigures(e.method) ? [e] : [],
  );
/** Whom a figure is said of: the hole, or all of the area that have no method of their own. */
const heldTo = (ledger: Ledger, one: Said): Hole[] =>
  one.kind === 'hole-declared'
    ? [one.hole]
    : holesIn(ledger, one.area).filter((hole) => stateOf(ledger, 'hole', hole)?.declared?.method === undefined);

/** O4: what is tight was brought up to what was said before, or to nothing that was said, and the log keeps it so. */
export function tightByAnother(ledger: Ledger, entries: readonly Entry[]): string[] {
  const tight = figuresIn(entries).flatMap((one) =>
    heldTo(ledger, one).flatMap((hole) => {
      const c = stateOf(ledger, 'hole', hole)?.called;
      const last = c?.passes.at(-1);
      const isOther = !last?.method || (one.method && !isSameFigure(last.method, one.method));
      if (c?.occupant?.level !== 'tight' || !last?.last || !isOther) return [];
      const how = last.method ? 'by what was said before' : 'with no figure said';
      return [{ hole, how, isTurned: one.method?.by === 'torque-angle' }];
    }),
  );
  return [...Map.groupBy(tight, ({ how }) => how)].map(([how, some]) => {
    const [is, it] = some.length === 1 ? ['is', 'it'] : ['are', 'them'];
    const which = some.map(({ hole }) => withinArea(hole)).join(', ');
    const anew = some.some(({ isTurned }) => isTurned)
      ? `slacken ${it} and bring ${it} up anew: turned by an angle, none is pulled once more`
      : `pull ${it} up once more`;
    return `${areaOf((some[0] as (typeof some)[number]).hole)} ${which} ${is} tight ${how}; ${anew}`;
  });
}

/** O4: one figure said of an area with several threads. */
export function oneForSeveralThreads(ledger: Ledger, entries: readonly Entry[]): string[] {
  return figuresIn(entries).flatMap((one) => {
    const threads = [...new Set(heldTo(ledger, one).map((hole) => threadAt(ledger, hole)))].filter(Boolean);
    return threads.length > 1
      ? [`one figure for ${threads.join(' and ')}: of one hole it is said by its number, as "by torque at 1 25"`]
      : [];
  });
}
