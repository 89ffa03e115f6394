// What is said beside a call of something that comes off or out: what stands in front, what was to go in first, what is
// still full, what holds and carries. It stands in no way.
import { partsOffHeldBy } from './closed.ts';
import type { Entry, EntryOf } from './entry.ts';
import { carriesYet, missingBefore, notReady, unlockedTooSoon } from './first-in.ts';
import { inFrontOf, unpartedBefore } from './in-front.ts';
import { every, type Ledger, stateOf, tallyOf } from './ledger.ts';
import { areaOf, type Hole, named, type Subject, subjectText } from './subjects.ts';
import { specAt } from './tightening.ts';

/** Whatever held a part came off before it did. */
export function foundUnderOff(
  ledger: Ledger,
  { hole }: EntryOf<'fastener-found'>,
  entries: readonly Entry[],
): string[] {
  if (entries.some((e) => e.kind !== 'fastener-found' && 'hole' in e && e.hole === hole)) return [];
  return partsOffHeldBy(ledger, hole).map(
    (part) => `${part} is off, and ${subjectText(`hole:${hole}`)} held it: where it came off, call it off`,
  );
}
export const inTheWay = (ledger: Ledger, area: string): string[] => {
  if (tallyOf(ledger, area).off > 0) return [];
  const front = inFrontOf(ledger, `area:${area}`);
  return front.length > 0 ? [`${front.map(subjectText).join(', ')} still stands in front of it`] : [];
};
/** R2: a tensioner is slackened while its belt is on, so that the belt may come off. */
export const inTheWayOfSlack = (ledger: Ledger, area: string): string[] => {
  const drives = [...every(ledger, 'drive')].flatMap(({ declared }) =>
    declared?.areas.includes(area) ? declared : [],
  );
  const belts = new Set<Subject>(drives.flatMap(({ parts }) => parts.map((part): Subject => `part:${part}`)));
  const front = inFrontOf(ledger, `area:${area}`);
  return front.length > 0 && front.every((one) => belts.has(one)) ? [] : inTheWay(ledger, area);
};
export const notInFirst = (ledger: Ledger, area: string): string[] => {
  const missing = tallyOf(ledger, area).off > 0 ? [] : missingBefore(ledger, area);
  const atMarks = [...every(ledger, 'drive')].some((d) => d.declared?.areas.includes(area)) ? ', at the marks' : '';
  return missing.length > 0 ? [`not in: ${missing.join(', ')}; to go in before ${area} is opened${atMarks}`] : [];
};
export function stillCarries(ledger: Ledger, temporary: string): string[] {
  const t = stateOf(ledger, 'temporary', temporary);
  const area = t?.at === undefined ? undefined : named('area', t.at);
  return t && area !== undefined && t.sort !== 'stand' && carriesYet(ledger, t)
    ? [`${area} is open: what ${temporary} carries hangs on nothing else`]
    : [];
}
/** Common practice, no source: with the belt off neither crank nor cams may move. */
export function stillHolds(ledger: Ledger, temporary: string): string[] {
  const t = stateOf(ledger, 'temporary', temporary);
  const [first] = t ? unlockedTooSoon(ledger, t) : [];
  return first === undefined
    ? []
    : [`${notReady(ledger, first)}: nothing holds its shafts now, turn neither crank nor cams`];
}
/** Said with the first of an area that comes off. */
export const nothingUnder = (ledger: Ledger, area: string): string[] =>
  tallyOf(ledger, area).off > 0 ? [] : withoutWhatCarries(ledger, area);
/** The same where it is said what the area is, and something of it is off already. */
export const nothingUnderRole = (ledger: Ledger, { area, role }: EntryOf<'area-declared'>): string[] =>
  role !== undefined && tallyOf(ledger, area).off > 0 ? withoutWhatCarries(ledger, area, role) : [];
/** A wheel holds the car up, and a mount the engine. */
function withoutWhatCarries(
  ledger: Ledger,
  area: string,
  role = stateOf(ledger, 'area', area)?.declared?.role,
): string[] {
  const isIn = (which: (sort: string, at?: string) => boolean): boolean =>
    [...every(ledger, 'temporary')].some((t) => t.in && which(t.sort, t.at));
  if (role === 'wheel') return isIn((sort) => sort === 'stand') ? [] : ['no stand is in: on stands, never on the jack'];
  const isCarried = isIn((sort, at) => carries.has(sort) || at === `area:${area}`);
  // What its plan puts there is named by that.
  return role !== 'mount' || isCarried || missingToCarry(ledger, area).length > 0
    ? []
    : ['what carries the engine is not called: jack with block'];
}
const carries: ReadonlySet<string> = new Set(['jack', 'block', 'strap']);
const missingToCarry = (ledger: Ledger, area: string): string[] =>
  missingBefore(ledger, area).filter((name) => carries.has(stateOf(ledger, 'temporary', name)?.sort ?? ''));
/**
 * Minded with the first of its fasteners, and once more with the last: from now on nothing holds it, or the car. A part
 * that nobody has named before is declared by the same call.
 */
export function unheld(ledger: Ledger, part: string, entries: readonly Entry[]): string[] {
  const areas = [...new Set(heldByOf(ledger, part, entries).map(areaOf))].filter((a) => tallyOf(ledger, a).off > 0);
  const missing = areas.flatMap((area) => missingToCarry(ledger, area));
  return [
    ...(missing.length > 0 ? [`${missing.join(', ')} not in: ${part} hangs on nothing else now`] : []),
    ...areas.flatMap((area) => withoutWhatCarries(ledger, area)),
  ];
}
/** Where it holds, as it was declared, or by the call that takes it off. */
function heldByOf(ledger: Ledger, part: string, entries: readonly Entry[]): readonly Hole[] {
  const saidNow = entries.flatMap((e) => (e.kind === 'part-declared' && e.part === part ? e.heldBy : []));
  return stateOf(ledger, 'part', part)?.declared?.heldBy ?? saidNow;
}
/** A connection of the area says that what lies behind it is full: a cover that only keeps oil in has none. */
export function undrained(ledger: Ledger, area: string): string[] {
  if (tallyOf(ledger, area).off > 0) return [];
  const full = [...every(ledger, 'connection')].flatMap(({ declared, partedAt }) => {
    // Of one that was parted before it was asked then.
    const circuit = declared?.area === area && partedAt === 0 ? declared.circuit : undefined;
    const state = circuit === undefined ? undefined : stateOf(ledger, 'circuit', circuit);
    return state && state.drainedAt <= state.filledAt ? [state.circuit] : [];
  });
  return full.map((circuit) => {
    const how = howItStands(ledger, circuit) ?? 'it runs out where it is opened';
    return `${circuit} was not called drained: ${how}`;
  });
}
/** What hurts in its own way where it is opened. Common practice, no source: the maker's manual says how. */
const waysOfStanding: readonly (readonly [RegExp, string])[] = [
  [
    /fuel|petrol|diesel/i,
    "hot or cold it stands under pressure, let off as the maker's manual says; no flame, no spark",
  ],
  [/coolant|antifreeze|water/i, 'hot it stands under pressure, let it cool first'],
  [/refrigerant/i, 'it is taken out by licensed practice alone'],
];
function howItStands(ledger: Ledger, circuit: string): string | undefined {
  const named = [circuit, stateOf(ledger, 'circuit', circuit)?.fluid ?? ''];
  return waysOfStanding.find(([words]) => named.some((one) => words.test(one)))?.[1];
}
/** T5: what was filled runs out where it is parted, and nothing asks for it again unless that is called. */
export function stillFull(ledger: Ledger, connection: string, entries: readonly Entry[]): string[] {
  // One that nobody has named before is declared by the same call.
  const saidNow = entries.find((e) => e.kind === 'connection-declared' && e.connection === connection);
  const declared = stateOf(ledger, 'connection', connection)?.declared;
  const circuit = declared?.circuit ?? (saidNow?.kind === 'connection-declared' ? saidNow.circuit : undefined);
  const c = circuit === undefined ? undefined : stateOf(ledger, 'circuit', circuit);
  if (circuit === undefined || (c && c.drainedAt > c.filledAt)) return [];
  const how = howItStands(ledger, circuit);
  return [`is ${circuit} still in it? Where it is not, call it drained${how === undefined ? '' : `; ${how}`}`];
}
/** What holds the shafts of a drive in place, before the belt between them comes off; not what is only for a bolt of it. */
export function unlocked(ledger: Ledger, part: string): string[] {
  const drive = [...every(ledger, 'drive')].find((d) => d.declared?.parts.includes(part))?.declared;
  if (!drive) return [];
  const ofDrive = new Set([...drive.parts.map((one) => `part:${one}`), ...drive.areas.map((area) => `area:${area}`)]);
  const locks = [...every(ledger, 'temporary')].filter(
    (t) => (t.sort === 'lock' || t.sort === 'pin') && (t.at === undefined || ofDrive.has(t.at)),
  );
  const missing = locks.filter((t) => !t.in).map((t) => t.temporary);
  if (missing.length > 0)
    return [`not in: ${missing.join(', ')}; what locks the shafts goes in at the marks, before the belt comes off`];
  return locks.length > 0
    ? []
    : ['nothing locks its shafts; what does goes in at the marks, before the belt comes off'];
}
/** T2: what was never called parted is never asked to be joined. */
export function stillJoined(ledger: Ledger, part: string): string[] {
  const joined = unpartedBefore(ledger, part);
  return joined.length > 0 ? [`${joined.join(', ')} in front of ${part} not called parted`] : [];
}
/** A part that nobody has named before is declared by the same call, which may take the last of its fasteners out, too. */
export function slackIn(ledger: Ledger, part: string, entries: readonly Entry[]): string[] {
  const outNow = new Set(entries.flatMap((e) => (e.kind === 'fastener-removed' ? [e.hole] : [])));
  const slack = heldByOf(ledger, part, entries).filter((hole) => {
    const state = stateOf(ledger, 'hole', hole);
    const isClamp = specAt(ledger, hole)?.kind === 'clamp';
    return state?.called.occupant?.level === 'slack' && !isClamp && !state.declared?.slackOnly && !outNow.has(hole);
  });
  return slack.length > 0 ? [`still slack in it: ${slack.map((hole) => subjectText(`hole:${hole}`)).join(', ')}`] : [];
}
