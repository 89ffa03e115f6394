// What the sheet says of proofs: sealant laid and cured, check rotations with every try, fluids and leak checks.
import { type BeadStanding, beadsOn, noSealant } from '../job/beads.ts';
import { ranCold } from '../job/cold-run.ts';
import { every, isStruck, lineAt, stateOf } from '../job/ledger.ts';
import { circuitOpenedAt } from '../job/open-points.ts';
import { onceRightAtMs, wholeMinuteMs } from '../job/ready.ts';
import { isOfBrakes } from '../job/roles.ts';
import { driveOpenedAt, rotationNeeded } from '../job/rotation.ts';
import type { CircuitState, DriveState, FaceState, Try } from '../job/states.ts';
import { type Moment, moment, momentOf, type Reading, standingEntries } from './reading.ts';
import { conditionsText } from './words.ts';

/** `words` in the units of the workshop. */
export type ConditionsFact = Moment & { celsius: number; humidityPct?: number; words: string };
export type BeadFact = {
  face: string;
  product: string;
  kind: string;
  laid: Moment;
  /** Its face was closed when it was called laid: since when, or as it was found. */
  late?: { closed?: Moment };
  cleaned?: Moment;
  /** In force when it was laid, then each noted after that. */
  conditions: ConditionsFact[];
  together?: Moment;
  cure: 'void' | 'not together' | 'curing' | 'cured' | 'needs none';
  void?: string;
  earnedHours: number;
  fullHours: number;
  /** Label hours that wait for the time shown to be called right. */
  awayHours: number;
  /** S7: nothing is earned before that, and then it is ready when `ready` says. */
  onceRight?: true;
  /** When it will be fully cured at the conditions in force; absent when nothing is being earned. */
  ready?: { atMs: number; zoneMin: number };
};
export type FaceFact = { face: string; beads: BeadFact[]; laidBefore: number };

export type TryFact = {
  begun: Moment;
  turns: number;
  marks: { mark: string; teethOff: number }[];
  locksSlid: boolean;
  tension?: { how: string; right: boolean };
  result: 'passed' | 'failed' | 'not finished';
  passed?: Moment;
  failed?: string;
  explained?: string;
};
export type DriveFact = { drive: string; stands: boolean; tries: TryFact[] };
export type CircuitFact = {
  circuit: string;
  drained?: Moment;
  filled?: Moment & { fluid: string; litres?: number };
  /** `cold`: how short a time the engine had run. */
  checked?: Moment & { how: string; stands: boolean; cold?: string };
};

export function faceFacts(of: Reading): FaceFact[] {
  const laid = new Map<string, number>();
  for (const { entry } of standingEntries(of.ledger)) {
    if (entry.kind === 'bead-laid') laid.set(entry.face, (laid.get(entry.face) ?? 0) + 1);
  }
  const conditions = conditionsNoted(of);
  return [...every(of.ledger, 'face')].flatMap((face) => {
    const all = laid.get(face.face) ?? 0;
    const beads = beadsOn(of.ledger, face, of.now).map((bead) => beadFact(of, face, bead, conditions));
    return all > 0 ? [{ face: face.face, beads, laidBefore: all - beads.length }] : [];
  });
}

function conditionsNoted(of: Reading): ConditionsFact[] {
  return [...standingEntries(of.ledger)].flatMap(({ line, entry }) => {
    if (entry.kind !== 'conditions-noted') return [];
    const { celsius, humidityPct } = entry;
    const noted = { celsius, ...(humidityPct !== undefined && { humidityPct }) };
    return [{ ...moment(of, line.n), ...noted, words: conditionsText(noted, of.units) }];
  });
}

function beadFact(of: Reading, face: FaceState, bead: BeadStanding, noted: readonly ConditionsFact[]): BeadFact {
  const before = noted.findLast((c) => c.n <= bead.n);
  const onceRight = onceRightAtMs(bead, 'full');
  const readyAtMs = onceRight ?? bead.readyAtMs.full;
  const cure = cureOf(bead);
  const late = bead.label.product === noSealant.product ? undefined : closedBefore(of, face, bead.n);
  return {
    face: face.face,
    product: bead.label.product,
    kind: bead.label.kind,
    laid: moment(of, bead.n),
    ...(late && { late }),
    ...(face.cleanedAt > 0 && { cleaned: moment(of, face.cleanedAt) }),
    conditions: [...(before ? [before] : []), ...noted.filter((c) => c.n > bead.n)],
    ...(bead.togetherAt > 0 && { together: moment(of, bead.togetherAt) }),
    cure,
    ...(bead.void && { void: bead.void }),
    earnedHours: bead.earnedHours,
    fullHours: bead.needs.full,
    awayHours: bead.awayHours,
    ...(onceRight !== undefined && { onceRight: true as const }),
    ...(cure === 'curing' &&
      readyAtMs !== undefined && { ready: { atMs: wholeMinuteMs(readyAtMs), zoneMin: of.zone ?? of.now.zoneMin } }),
  };
}
/** Where every hole that presses it held something pulled up, or was as found, when that line was called. */
function closedBefore(of: Reading, { declared }: FaceState, n: number): BeadFact['late'] {
  const last = (declared?.pressedBy ?? []).map((hole) =>
    stateOf(of.ledger, 'hole', hole)?.called.levels.findLast((reached) => reached.n < n),
  );
  if (last.length === 0 || last.some((reached) => reached && !shut.has(reached.level))) return undefined;
  const closed = momentOf(
    of,
    Math.max(...last.map((reached) => (reached?.level === 'as-found' ? 0 : (reached?.n ?? 0)))),
  );
  return { ...(closed && { closed }) };
}
const shut: ReadonlySet<string> = new Set(['as-found', 'left', 'snug', 'tight']);

function cureOf(bead: BeadStanding): BeadFact['cure'] {
  if (bead.void) return 'void';
  if (bead.needs.full === 0) return 'needs none';
  if (bead.togetherAt === 0) return 'not together';
  return bead.reached.full ? 'cured' : 'curing';
}

export const driveFacts = (of: Reading): DriveFact[] =>
  [...every(of.ledger, 'drive')].flatMap((d) => {
    if (driveOpenedAt(of.ledger, d) === 0 && d.tries.length === 0) return [];
    return [
      {
        drive: d.drive,
        stands: !rotationNeeded(of.ledger, d) && d.tries.length > 0,
        tries: d.tries.map((t) => tryFact(of, d, t)),
      },
    ];
  });

function tryFact(of: Reading, d: DriveState, t: Try): TryFact {
  const named = d.declared?.marks ?? Object.keys(t.marks);
  const marks = named.flatMap((mark) => {
    const teethOff = t.marks[mark];
    return teethOff === undefined ? [] : [{ mark, teethOff }];
  });
  const passed = momentOf(of, t.passedAt);
  return {
    begun: moment(of, t.begunAt),
    turns: t.quarters / 4,
    marks,
    locksSlid: t.locksSlid,
    ...(t.tension && { tension: t.tension }),
    result: passed ? 'passed' : t.failed ? 'failed' : 'not finished',
    ...(passed && { passed }),
    ...(t.failed && { failed: t.failed }),
    ...(t.explained && { explained: t.explained }),
  };
}

export const circuitFacts = (of: Reading): CircuitFact[] =>
  [...every(of.ledger, 'circuit')].flatMap((c) => {
    const fact = circuitFact(of, c);
    return fact.drained || fact.filled || fact.checked ? [fact] : [];
  });

function circuitFact(of: Reading, c: CircuitState): CircuitFact {
  const drained = momentOf(of, c.drainedAt);
  const filled = momentOf(of, c.filledAt);
  const checked = momentOf(of, c.checkedAt);
  const stands = c.checkedAt > circuitOpenedAt(of.ledger, c);
  return {
    circuit: c.circuit,
    ...(drained && { drained }),
    ...(filled && { filled: { ...filled, ...fillingIn(of, c) } }),
    ...(checked && { checked: { ...checked, how: c.checkedHow ?? '', stands, ...coldAt(of, c) } }),
  };
}
/** T5: called dry all the same, so soon after the start. */
function coldAt({ ledger }: Reading, c: CircuitState): { cold?: string } {
  const at = lineAt(ledger, c.checkedAt);
  if (!at || c.checkedHow === 'under pressure' || isOfBrakes(c)) return {};
  const started = ledger.lines.all
    .slice(0, at.n)
    .findLast(({ n, entries }) => !isStruck(ledger, n) && entries.some((e) => e.kind === 'engine-started'));
  const cold = started && ranCold(started, at);
  return cold === undefined ? {} : { cold };
}
/** From the line itself: what an earlier filling measured says nothing of the last one. */
function fillingIn(of: Reading, c: CircuitState): { fluid: string; litres?: number } {
  const entries = isStruck(of.ledger, c.filledAt) ? [] : (lineAt(of.ledger, c.filledAt)?.entries ?? []);
  const filled = entries.findLast((e) => e.kind === 'fluid-filled' && e.circuit === c.circuit);
  const litres = filled?.kind === 'fluid-filled' ? filled.litres : undefined;
  return { fluid: c.fluid ?? c.circuit, ...(litres !== undefined && { litres }) };
}

/** The engine's oil level, as last seen. */
export const oilSeen = (of: Reading): Moment | undefined =>
  momentOf(of, stateOf(of.ledger, 'vehicle', 'vehicle')?.oilAt ?? 0);
