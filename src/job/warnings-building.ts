// What is said beside a call of something that goes back or is brought up: the part before its bolts, the face clean and its
// bead laid, what holds a bolt, its figure, what of the area is left. It stands in no way.
import { faceOpenedAt, lastBeadVoid, partOver } from './beads.ts';
import { isOff, laterOf } from './closed.ts';
import type { Entry, EntryOf } from './entry.ts';
import { dueNow, waitingFinals } from './finished-later.ts';
import { missingToHold } from './first-in.ts';
import { isRenewed, wantsIn } from './guards.ts';
import { every, type Ledger, stateOf, tallyOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import { edgesOf, type OpenBehind, openUnder } from './order.ts';
import { partsOffBehind } from './parts-behind.ts';
import { dueIn, passesOf } from './passes.ts';
import { pinsBehind } from './pins-behind.ts';
import type { FaceState } from './states.ts';
import { areaOf, type Hole, named, numberOf, subjectText } from './subjects.ts';
import { specAt } from './tightening.ts';

export function offItsPart(ledger: Ledger, hole: Hole): string[] {
  const parts = stateOf(ledger, 'area', areaOf(hole))?.parts ?? [];
  return parts.flatMap((name) => {
    const p = stateOf(ledger, 'part', name);
    const holds =
      p?.off && p.declared?.heldBy.includes(hole) && isRenewed(ledger, p) && p.declared.heldBy.every(isEmpty(ledger));
    return holds ? [`${name} is off: the new one goes on before its bolts`] : [];
  });
}
/** L5: a new one of another head is taken as a new pattern, and may have been bought for another hole. */
export function anotherHead(ledger: Ledger, { hole, spec, newPattern }: EntryOf<'fastener-fitted'>): string[] {
  const wanted = wantsIn(ledger, hole)?.head;
  return newPattern?.includes('head') && wanted && spec.head
    ? [`new pattern: its head is ${spec.head}, ${wanted} came out`]
    : [];
}
/** What holds by a locking thread or by compound on it holds once. Common practice, no source: the maker's manual says. */
export const holdsOnce = ({ from, spec, working }: EntryOf<'fastener-fitted'>): string[] =>
  !working && from.startsWith('tray:') && (spec.coating === 'locking' || spec.coating === 'microencapsulated')
    ? [`${spec.coating}: it holds once; a new one, unless the maker's manual has it serve again`]
    : [];
/** Said with the first fastener of what it holds: with more of them in, all of it would have to come off again. */
export function overOpen(ledger: Ledger, hole: Hole): string[] {
  const parts = stateOf(ledger, 'area', areaOf(hole))?.parts ?? [];
  const goesOn = parts.find((name) => {
    const p = stateOf(ledger, 'part', name);
    return p?.off && p.declared?.heldBy.includes(hole) && p.declared.heldBy.every(isEmpty(ledger));
  });
  const gate = goesOn === undefined ? undefined : gateUnder(ledger, goesOn, areaOf(hole));
  return gate ? [openWords(gate)] : [];
}
/** The same with a part that is set on by itself. */
export const setOverOpen = (ledger: Ledger, part: string): string[] => gatesOver(ledger, part).map(openWords);
const openWords = ({ subject, because }: OpenBehind): string => `behind it ${subjectText(subject)} is open: ${because}`;
function gatesOver(ledger: Ledger, part: string): OpenBehind[] {
  return [...areasHolding(ledger, part)].flatMap((area) => gateUnder(ledger, part, area) ?? []);
}
const areasHolding = (ledger: Ledger, part: string): ReadonlySet<string> =>
  new Set((stateOf(ledger, 'part', part)?.declared?.heldBy ?? []).map(areaOf));
/** Another area that holds the part closes only after it is on. */
function gateUnder(ledger: Ledger, part: string, area: string): OpenBehind | undefined {
  const holding = areasHolding(ledger, part);
  return openUnder(ledger, area).find(({ subject }) => !holding.has(named('area', subject) ?? ''));
}
export const isEmpty =
  (ledger: Ledger) =>
  (hole: Hole): boolean =>
    !stateOf(ledger, 'hole', hole)?.called.occupant;
const noBead = ({ face, because }: FaceWithoutBead): string =>
  because === undefined
    ? `no bead is laid on ${face}; laid before and not called: "bead ${face} all the same"`
    : `the bead on ${face} is void, ${because}: cleaned, and laid again`;
export const withoutBead = (ledger: Ledger, hole: Hole, now: Stamp, only?: (hole: Hole) => boolean): string[] =>
  facesWithoutBead(ledger, hole, now, only).map(noBead);
/** S1: before the part is on that closes the face, or that the same holes hold. */
export function withoutBeadUnder(ledger: Ledger, part: string, now: Stamp): string[] {
  const held = stateOf(ledger, 'part', part)?.declared?.heldBy ?? [];
  const closes = [...every(ledger, 'face')].filter((f) => f.declared?.part === part);
  const holes = [...held, ...closes.flatMap((f) => f.declared?.pressedBy ?? [])];
  return [...new Set(holes.flatMap((hole) => withoutBead(ledger, hole, now, isEmpty(ledger))))];
}
export type FaceWithoutBead = {
  face: string;
  /** Why the one that was laid is void. */
  because?: string;
};
/** Opened faces that a fastener presses, that want a bead and have none that stands. */
export function facesWithoutBead(
  ledger: Ledger,
  hole: Hole,
  now: Stamp,
  only: (hole: Hole) => boolean = () => true,
): FaceWithoutBead[] {
  const faces = [...every(ledger, 'face')].filter(
    (f) => f.declared?.bead && f.declared.pressedBy.includes(hole) && f.declared.pressedBy.every(only),
  );
  const opened = (f: FaceState) =>
    f.declared?.pressedBy.some((h) => (stateOf(ledger, 'hole', h)?.called.openedAt ?? 0) > 0);
  return faces.filter(opened).flatMap((f): FaceWithoutBead[] => {
    const because = lastBeadVoid(ledger, f, now);
    if (because !== undefined) return [{ face: f.face, because }];
    return f.beads.length === 0 ? [{ face: f.face }] : [];
  });
}
/** T1: said where the part goes on, with its first fastener or alone. */
export const overPins = (ledger: Ledger, part: string): string[] =>
  pinsBehind(ledger, part).map((name) => `${name} is in behind it, and would be shut in`);
/** Of an assembly what sits behind is on before what is set over it. */
export function goesOnFirst(ledger: Ledger, part: string): string[] {
  const told = gatesOver(ledger, part).map(({ subject }) => subject);
  const behind = partsOffBehind(ledger, part);
  const isTold = behind.every((one) => told.includes(`part:${one}`));
  return behind.length > 0 && !isTold ? [`${behind.join(' and ')} off behind it: on before ${part}`] : [];
}
/** O2: said where the part goes on with its first fastener; alone it is refused. */
export function workingUnder(ledger: Ledger, part: string): string[] {
  const held = stateOf(ledger, 'part', part)?.declared?.heldBy ?? [];
  const working = held.filter((hole) => stateOf(ledger, 'hole', hole)?.called.occupant?.working);
  return working.map((hole) => `a working fastener is in ${subjectText(`hole:${hole}`)}: ${part} goes on over it`);
}
export const notClean = (faces: readonly string[]): string[] =>
  faces.map((face) => `${face} was not called clean since it was opened`);
/**
 * S1: faces that keep something in, want no bead, and were not called clean since they were opened; before the first that
 * presses them, or before the part that closes them.
 */
export function facesNotClean(ledger: Ledger, { hole, part }: { hole?: Hole; part?: string }): string[] {
  const dirty = [...every(ledger, 'face')].filter((f) => {
    const d = f.declared;
    if (!d || d.bead || d.keepsIn.length === 0 || !d.pressedBy.every(isEmpty(ledger))) return false;
    const isMeant = hole === undefined ? d.part === part : d.pressedBy.includes(hole);
    return isMeant && faceOpenedAt(ledger, f) > f.cleanedAt;
  });
  return dirty.map((f) => f.face);
}
/** O4: what its plan puts at a bolt to hold it while it is turned. */
export function notHeld(ledger: Ledger, hole: Hole): string[] {
  const missing = stateOf(ledger, 'hole', hole)?.called.occupant?.working ? [] : missingToHold(ledger, hole);
  return missing.length > 0 ? [`not in: ${missing.join(', ')}, to hold while ${areaOf(hole)} is brought up`] : [];
}
/** A hose clamp presses nothing, and waits for its hose. */
const clampsOff = (ledger: Ledger, area: string): number =>
  (stateOf(ledger, 'area', area)?.holes ?? []).filter((hole) => {
    const h = stateOf(ledger, 'hole', hole);
    return h !== undefined && isOff(h) && specAt(ledger, hole)?.kind === 'clamp';
  }).length;
export const stillOff = (ledger: Ledger, area: string): string[] => {
  const { off: all, empty } = tallyOf(ledger, area);
  const off = all > empty ? all - clampsOff(ledger, area) : all;
  const say = (count: number, how: string) => `${count} of ${area} ${count === 1 ? 'is' : 'are'} still ${how}`;
  return [...(off > empty ? [say(off - empty, 'off')] : []), ...(empty > 0 ? [say(empty, 'empty')] : [])];
};
export function closedOver(ledger: Ledger, face: string): string[] {
  const f = stateOf(ledger, 'face', face);
  const pressedBy = f?.declared?.pressedBy ?? [];
  const isTight = (hole: Hole) => stateOf(ledger, 'hole', hole)?.called.occupant?.level === 'tight';
  if (pressedBy.length > 0 && pressedBy.every(isTight)) return [`${face} is closed over: what presses it is tight`];
  const part = f && partOver(ledger, f);
  return part === undefined ? [] : [`${part} is on ${face}: nobody reaches it now`];
}
/** R2: its final comes after the belt. */
export function beforeItsBelt(ledger: Ledger, hole: Hole): string[] {
  if (laterOf(ledger, hole) !== 'after-belt') return [];
  const belts = [...every(ledger, 'drive')].flatMap((d) => d.declared?.parts ?? []);
  const off = belts.filter((part) => stateOf(ledger, 'part', part)?.off);
  return off.length > 0 ? [`its final comes after ${off.join(' and ')}, which is off`] : [];
}
/** O1: with the last of a pass, what of the area was left out of it. */
export function leftForLater(ledger: Ledger, entries: readonly Entry[]): string[] {
  const had = new Map(entries.flatMap((e) => (e.kind === 'fastener-tightened' && e.last ? [[e.hole, e.pass]] : [])));
  const areas = new Set([...had.keys()].map(areaOf));
  return [...areas].flatMap((area) => {
    const pass = passesOf(ledger, area).at(-1) as string;
    const due = dueNow(ledger, dueIn(ledger, area, pass), pass).filter((hole) => !had.has(hole));
    const waiting = [...waitingFinals(ledger, area)].map(
      ([why, holes]) => [why, holes.filter((hole) => !had.has(hole))] as const,
    );
    return due.length > 0
      ? []
      : waiting.flatMap(([why, holes]) =>
          holes.length > 0 ? [`${holes.map(numberOf).join(', ')} left out: ${why}`] : [],
        );
  });
}

/** T3: bought new or to be renewed, and the old one goes on. */
export function oldOneOn(ledger: Ledger, part: string): string[] {
  const p = stateOf(ledger, 'part', part);
  return p && isRenewed(ledger, p) ? [`the old ${part} goes on, though it is to be renewed`] : [];
}
/** What goes in behind an area that stands shut, or behind a part that is on, went in through nothing. */
export function behindShut(ledger: Ledger, part: string): string[] {
  const fronts = [...new Set(edgesOf(ledger).flatMap((edge) => (edge.behind === `part:${part}` ? edge.front : [])))];
  const areas = fronts.flatMap((front) => named('area', front) ?? []);
  const shut = areas.filter((area) => tallyOf(ledger, area).open === 0);
  const held = areas.flatMap((area) => (shut.includes(area) ? [] : (stateOf(ledger, 'area', area)?.parts ?? [])));
  const on = [...held, ...fronts.flatMap((front) => named('part', front) ?? [])].filter(isBackOn(ledger));
  const stand = (many: readonly string[]) => `${many.join(', ')} ${many.length === 1 ? 'stands' : 'stand'}`;
  return [
    ...(shut.length > 0 ? [`${stand(shut)} shut in front of it: what was opened is to be called`] : []),
    ...on.map((one) => `${one} is on in front of it already`),
  ];
}
/** Set on again, its fasteners in or out. */
const isBackOn =
  (ledger: Ledger) =>
  (part: string): boolean => {
    const p = stateOf(ledger, 'part', part);
    return p !== undefined && !p.off && p.fittedAt > 0;
  };
