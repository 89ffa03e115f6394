// F2: what is odd about the fasteners found on a job, as the trade's computations have it. Computed when asked, never
// stored: a finding that calls it the wrong one answers it, so does "meant so". It stops no call.
import { type Called, type Suspicion, suspicionsOf } from '../trade/suspicion.ts';
import { holesOf } from './closed.ts';
import type { Entry } from './entry.ts';
import type { HoleState } from './hole-states.ts';
import { every, type Ledger, stateOf } from './ledger.ts';
import { oncePerLedger } from './once-per-ledger.ts';
import { cannotBeToldApart, type Spec, tellingFields } from './spec.ts';
import type { AreaState } from './states.ts';
import { areaOf, type Hole, subjectText } from './subjects.ts';
import { touches } from './touches.ts';

export type Suspected = { hole: Hole; fastener: string; suspicions: readonly Suspicion[] };
type Judged = { h: HoleState; fastener: string; spec: Spec; plan?: Spec };

/** What is said of a hole beforehand: what it was stated to want, else what a plan says. */
const plannedFor = ({ called, declared }: HoleState): Spec | undefined =>
  called.stated ?? declared?.planSays ?? declared?.wants;

/** The fasteners first found in an area, but for those a finding calls the wrong one. */
const foundIn = (ledger: Ledger, a: AreaState): Judged[] =>
  holesOf(ledger, a).flatMap((h): Judged[] => {
    const { first, firstIsWrong } = h.called;
    const f = first === undefined || firstIsWrong ? undefined : stateOf(ledger, 'fastener', first);
    const plan = plannedFor(h);
    return f ? [{ h, fastener: f.id, spec: f.spec, ...(plan && { plan }) }] : [];
  });

/** Meant so, as long as neither the fastener nor what is said of its hole is known otherwise. */
function isAnswered({ h, fastener, spec, plan }: Judged): boolean {
  const said = h.called.meantSo;
  if (!said || said.fastener !== fastener || !cannotBeToldApart(said.spec, spec)) return false;
  return said.beside && plan ? cannotBeToldApart(said.beside, plan) : said.beside === plan;
}

const isNutOfWheel = (ledger: Ledger, area: string): boolean =>
  stateOf(ledger, 'area', area)?.declared?.role === 'wheel';
const crankBolts = (ledger: Ledger): Set<Hole> =>
  new Set([...every(ledger, 'drive')].flatMap((d) => d.declared?.crankBolt ?? []));

const wordsOf = (spec: Spec): string => tellingFields.map((f) => spec[f] ?? '').join('|');

function judgeArea(ledger: Ledger, a: AreaState, cranks: ReadonlySet<Hole>): Suspected[] {
  const found = foundIn(ledger, a);
  const onWheel = isNutOfWheel(ledger, a.area);
  const known = new Map<string, readonly Suspicion[]>();
  return found.flatMap((one): Suspected[] => {
    const headIsItsOwn = onWheel || one.h.declared?.sprocketBolt === true || cranks.has(one.h.hole);
    // Two that can't be told apart, of holes of which the same is said, stand beside the same neighbours.
    const key = `${wordsOf(one.spec)} ${one.plan ? wordsOf(one.plan) : ''} ${headIsItsOwn}`;
    const suspicions =
      known.get(key) ??
      suspicionsOf(one.spec, {
        neighbours: found.flatMap((other): Called[] => (other === one ? [] : [other.spec])),
        ...(one.plan && { plan: one.plan }),
        headIsItsOwn,
      });
    known.set(key, suspicions);
    return suspicions.length === 0 || isAnswered(one) ? [] : [{ hole: one.h.hole, fastener: one.fastener, suspicions }];
  });
}

/** Those of one area: a call changes what is odd in its own area alone. */
export const suspectedIn = oncePerLedger((ledger, area): readonly Suspected[] => {
  const a = stateOf(ledger, 'area', area);
  return a ? judgeArea(ledger, a, crankBolts(ledger)) : [];
});

/** Every hole whose fastener is suspected and unanswered for. */
export const suspectedOn = (ledger: Ledger): Suspected[] =>
  [...every(ledger, 'area')].flatMap((a) => suspectedIn(ledger, a.area));

export const suspectedAt = (ledger: Ledger, hole: Hole): Suspected | undefined =>
  suspectedIn(ledger, areaOf(hole)).find((one) => one.hole === hole);

/** What the hole was known to want and hold, for an answer that stands as long as both do. */
export function besideOf(ledger: Ledger, hole: Hole): { spec: Spec; beside?: Spec } {
  const h = stateOf(ledger, 'hole', hole);
  const f = h?.called.first === undefined ? undefined : stateOf(ledger, 'fastener', h.called.first);
  const beside = h && plannedFor(h);
  return { spec: f?.spec ?? {}, ...(beside && { beside }) };
}

/** The gravest in words, with the others after it. */
export const suspicionText = (suspicions: readonly Suspicion[]): string =>
  suspicions.map(({ line }) => line).join('; ');

/** Of a fastener whose spec and first hole are known already: nothing is odd by these that was not so before. */
const tellsNoSpec: ReadonlySet<Entry['kind']> = new Set([
  'fastener-slackened',
  'fastener-removed',
  'fastener-fitted',
  'fastener-tightened',
  'fastener-made-final',
]);

/** What a call has made odd, in a line each: by what was called, or beside it. */
export function newlySuspected(before: Ledger, after: Ledger, entries: readonly Entry[]): string[] {
  const keys = entries.filter(({ kind }) => !tellsNoSpec.has(kind)).flatMap(touches);
  const areas = new Set(keys.flatMap((key) => (key.startsWith('hole:') ? [areaOf(key.slice('hole:'.length))] : [])));
  return [...areas].flatMap((area) =>
    suspectedIn(after, area)
      .filter(({ hole, suspicions }) => !isSaidAlready(before, hole, suspicions))
      .map(({ hole, suspicions }) => `${subjectText(`hole:${hole}`)} suspected: ${suspicionText(suspicions)}`),
  );
}
const isSaidAlready = (before: Ledger, hole: Hole, now: readonly Suspicion[]): boolean => {
  const said = suspectedAt(before, hole);
  return said !== undefined && suspicionText(said.suspicions) === suspicionText(now);
};
