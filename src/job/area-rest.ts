// What of an area still waits when none of its holes can be brought further: one reading for the list of areas, for what
// stands below the cardboard, and for whether work leaves it.
import { areaOfJoint, areaOfPlace } from './area-of-place.ts';
import { holesOf, isCritical, isTouched, laterOf, partsOf, unsaidOf } from './closed.ts';
import { laterWaitsFor, waitingFinals } from './finished-later.ts';
import type { HoleState } from './hole-states.ts';
import { every, type Ledger, stateOf, tallyOf } from './ledger.ts';
import { oncePerArea, oncePerLedger } from './once-per-ledger.ts';
import { openBehind } from './order.ts';
import { repairOf, stepLacking } from './repair.ts';
import { rotationNeeded } from './rotation.ts';
import type { AreaState } from './states.ts';
import { areaOf, type Hole, named, numberOf, type Subject, subjectText, withinArea } from './subjects.ts';

export type Rest = {
  what: 'part' | 'working' | 'joint' | 'inside' | 'unsaid' | 'finding' | 'later' | 'look';
  /** In two words, for a list. */
  short: string;
  words: string;
  /** The call that closes it. */
  by?: string;
  /** It can be done where things stand now. */
  now: boolean;
};

/** T1: while one is in, its area stays open. */
export const keepsItsAreaOpen: ReadonlySet<string> = new Set(['plug', 'rag', 'mask', 'strap']);
const unsaidCalls = { companions: 'companions', 'blind-holes': 'dry', direction: 'direction' } as const;

const isFree = (ledger: Ledger, front: Subject): boolean => openBehind(ledger, [front]).length === 0;

/** What of the whole job is looked for by area, sorted out once a ledger and not once for each of its areas. */
const around = oncePerLedger((ledger) => ({
  // It turns the engine until that is proven; then it is in the way.
  stillTurns: [...every(ledger, 'drive')].some((d) => rotationNeeded(ledger, d)),
  inside: byAreaOf(
    [...every(ledger, 'temporary')].filter((t) => t.in && keepsItsAreaOpen.has(t.sort)),
    ({ at }) => areaAt(at),
  ),
  parted: byAreaOf(
    [...every(ledger, 'connection')].filter((c) => c.parted),
    ({ declared }) => declared?.area,
  ),
  // F4: nothing of its holes waits for one of the area itself, of a part or a joint of it, and the car does.
  found: byAreaOf(
    [...every(ledger, 'finding')].filter((f) => !f.closed && named('hole', f.at) === undefined),
    ({ at }) => areaOfPlace(ledger, at),
  ),
}));
const byAreaOf = <T>(all: readonly T[], area: (one: T) => string | undefined): Map<string | undefined, T[]> =>
  Map.groupBy(all, area);
function areaAt(at: Subject | undefined): string | undefined {
  const hole = at === undefined ? undefined : named('hole', at);
  return hole === undefined ? (at === undefined ? undefined : named('area', at)) : areaOf(hole as Hole);
}

function* restIn(ledger: Ledger, a: AreaState): Generator<Rest> {
  const { stillTurns, inside, parted, found } = around(ledger, 'all');
  const tally = tallyOf(ledger, a.area);
  for (const h of tally.open > 0 ? holesOf(ledger, a) : []) {
    if (!h.called.occupant?.working) continue;
    const words = `a working fastener is in ${withinArea(h.hole)}`;
    yield { what: 'working', short: 'working in', words, by: 'working-out', now: !stillTurns };
  }
  for (const name of partsOf(ledger, a)) {
    const p = stateOf(ledger, 'part', name);
    if (!p?.off && !p?.forNow) continue;
    const words = `${name} ${p.off ? 'off' : 'on for now'}`;
    const by = p.declared?.renew ? 'renewed' : 'part-back';
    yield { what: 'part', short: 'part off', words, by, now: isFree(ledger, `part:${name}`) };
  }
  for (const t of inside.get(a.area) ?? []) {
    yield { what: 'inside', short: `${t.sort} in`, words: `${t.temporary} is in`, by: 'taken-out', now: true };
  }
  if (tally.touched > 0) {
    for (const one of unsaidOf(ledger, a)) {
      const of = one === 'companions' ? companionsSaid(a) : one === 'direction' ? directionSaid(ledger, a.area) : '';
      const words = `${one.replace('-', ' ')} not called${of && ` (${of})`}`;
      yield { what: 'unsaid', short: 'not called', words, by: unsaidCalls[one], now: tally.off === 0 };
    }
  }
  for (const c of parted.get(a.area) ?? []) {
    const words = `${c.connection} parted`;
    yield {
      what: 'joint',
      short: 'joint parted',
      words,
      by: 'made',
      now: isFree(ledger, `connection:${c.connection}`),
    };
  }
  // A finding at a hole leaves it open; without an open one nothing is looked for.
  for (const h of tally.open > 0 ? holesOf(ledger, a) : []) {
    if (h.called.findings.length === 0 || h.called.occupant?.level !== 'tight') continue;
    const words = `${withinArea(h.hole)} tight, and what was found at it is open`;
    yield { what: 'finding', short: 'finding', words, by: 'put-right', now: isMended(ledger, h) };
  }
  for (const f of found.get(a.area) ?? []) {
    const where = f.at === `area:${a.area}` ? '' : ` at ${subjectText(f.at)}`;
    const words = `found${where} and open, ${f.what}`;
    yield { what: 'finding', short: 'finding', words, by: 'put-right', now: false };
  }
  for (const [why, holes] of tally.open > 0 ? waitingFinals(ledger, a.area) : []) {
    const words = `${holes.map(numberOf).join(', ')}: ${why}`;
    yield { what: 'later', short: 'finals wait', words, now: holes.some((hole) => beltCanGoOn(ledger, hole)) };
  }
  if (wantsLook(ledger, a))
    yield { what: 'look', short: 'look again', words: 'a second look', by: 'looked', now: true };
}
/** F3: another fastener is in than the one it was found of, or the thread is repaired: only the call is left. */
const isMended = (ledger: Ledger, { hole, called: { findings, occupant } }: HoleState): boolean =>
  findings.every((id) => {
    const of = stateOf(ledger, 'finding', id)?.fastener;
    const isWhole = repairOf(ledger, hole).length > 0 && stepLacking(ledger, hole) === undefined;
    return of === undefined ? isWhole : of !== occupant?.fastener;
  });
/** Which they are: nobody can call what he does not know as seen. */
export const companionsSaid = ({ declared }: AreaState): string => declared?.companions?.join(', ') ?? '';
/** What goes which way there, where a plan has words for it. */
const directionSaid = (ledger: Ledger, area: string): string =>
  [...every(ledger, 'service')]
    .flatMap(({ cautions = [] }) => cautions)
    .filter(({ at, words }) => at === `area:${area}` && /\b(directions?|routing|arrows?)\b/i.test(words))
    .map(({ words }) => words.replace(/\.$/, ''))
    .join('; ');
/** What it waits for is at hand: the belt itself goes on next. */
function beltCanGoOn(ledger: Ledger, hole: Hole): boolean {
  if (laterOf(ledger, hole) !== 'after-belt') return false;
  const belts = [...every(ledger, 'drive')].flatMap((d) => d.declared?.parts ?? []);
  return belts.some((part) => stateOf(ledger, 'part', part)?.off === true && isFree(ledger, `part:${part}`));
}
/** X1: critical, all of it tight, and not looked at since. */
function wantsLook(ledger: Ledger, a: AreaState): boolean {
  const { touched, off, slack, on, snug } = tallyOf(ledger, a.area);
  if (touched === 0 || off + slack + on + snug > 0 || !isTightUnseen(ledger, a)) return false;
  return touchedIn(ledger, a).every((h) => laterWaitsFor(ledger, h.hole) === null);
}
const isTightUnseen = oncePerArea((ledger, a): boolean => {
  const all = touchedIn(ledger, a);
  const unseen = all.some((h) => h.called.lookedAt <= h.called.changedAt && isCritical(ledger, h, a.area));
  return unseen && all.every((h) => h.called.occupant?.level === 'tight');
});
const touchedIn = (ledger: Ledger, a: AreaState): HoleState[] =>
  holesOf(ledger, a).filter((h) => isTouched(h) && !h.called.leftEmpty);

export const restOf = oncePerLedger((ledger, area): readonly Rest[] => {
  const a = stateOf(ledger, 'area', area);
  return a ? [...restIn(ledger, a)] : [];
});
/** Besides its holes, something of it stands in the way of calling it closed. A second look is taken of what is closed. */
export const keepsOpen = (ledger: Ledger, area: string): readonly Rest[] =>
  restOf(ledger, area).filter(({ what }) => what !== 'look');

/** Joints nobody declared, parted while work was in this area: they keep the car and no area. */
export const namedAsParted = (ledger: Ledger, area: string): Rest[] =>
  [...every(ledger, 'connection')]
    .filter((c) => c.parted && !c.declared && areaOfJoint(ledger, c) === area)
    .map((c) => ({ what: 'joint', short: 'joint parted', words: `${c.connection} parted`, by: 'made', now: true }));
