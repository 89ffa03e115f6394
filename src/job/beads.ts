// Whether a bead stands, when its face came together, and how far it has cured (S1 to S8). Computed when asked.
import { isRefused } from '../trade/answer.ts';
import { type CureFactor, cureFactorIn, usualCureHours } from '../trade/cure.ts';
import { type Conditions, conditionsAt, earnedSince, longestMinutes, type Rate } from './clock.ts';
import type { Product } from './entries/declared.ts';
import type { Reached } from './hole-states.ts';
import { every, type Ledger, lastLine, stateOf } from './ledger.ts';
import type { Stamp } from './line.ts';
import type { FaceState } from './states.ts';
import type { Hole } from './subjects.ts';

const stages = ['fill', 'run', 'full'] as const;
export type Stage = (typeof stages)[number];

export type BeadStanding = {
  face: string;
  n: number;
  label: Product;
  void?: 'laid on a face that was not clean' | 'its part came off' | 'opened again' | 'skinned before it was together';
  /** S3: line at which its last hole came snug; 0 while one of them is not. */
  togetherAt: number;
  skinMinutesLeft?: number;
  earnedHours: number;
  /** Label hours that wait for the time shown to be called right. */
  awayHours: number;
  /** S7: no line of this run is a witness yet, so that all time is time away: nothing is earned until the clock is called right. */
  unwitnessed: boolean;
  needs: Record<Stage, number>;
  reached: Record<Stage, boolean>;
  /** Now + the time left at the conditions in force, ms UTC; undefined when nothing is being earned. */
  readyAtMs: Record<Stage, number | undefined>;
  /** How many times as long as on the label; Infinity when nothing is earned. */
  factor: number;
  /** "10 °C, 40 %: 2.9 times as long". */
  because: string;
};

/** S8: a face that goes on dry, or with a gasket moulded or coated already, where a bead was looked for. */
export const noSealant: Product = { product: 'no sealant', kind: 'dry', labelCelsius: 20, labelHumidityPct: 50 };

const usualHours = usualCureHours.value;

export function labelHours(label: Product): Record<Stage, number> {
  const { fillHours: fill, runHours: run, fullHours: full } = label;
  if (label.kind === 'non-setting' || label.kind === 'dry') return { fill: 0, run: 0, full: 0 };
  return {
    fill: fill ?? run ?? full ?? usualHours,
    run: run ?? full ?? fill ?? usualHours,
    full: full ?? run ?? fill ?? usualHours,
  };
}

/** S4: how many times as long as on the label, and why. Nothing is earned (Infinity) in air that is not told, or that cannot be. */
export function cureFactor(label: Product, at: Conditions | undefined): CureFactor {
  if (!at) return { factor: Number.POSITIVE_INFINITY, because: 'bench conditions not told' };
  const { celsius, humidityPct } = at;
  const air = { celsius, ...(humidityPct !== undefined && { humidityPct }) };
  const factor = cureFactorIn({ ...label, fullHours: labelHours(label).full }, air);
  return isRefused(factor) ? { factor: Number.POSITIVE_INFINITY, because: factor.refused } : factor;
}

/** `firstAt` ended the skin time; `since` is when it last came together, 0 while a hole of it is not even snug. */
type Together = { firstAt: number; since: number; openedAgainAt: number };

/** Walks the levels of the face's holes from the bead on, line by line. */
function together(ledger: Ledger, face: FaceState, from: number): Together {
  const holes = face.declared?.pressedBy ?? [];
  const rows = holes.map((h) => stateOf(ledger, 'hole', h)?.called.levels ?? []);
  const level: (Reached['level'] | undefined)[] = rows.map((row) => row.findLast((r) => r.n <= from)?.level);
  const pressed = (l: Reached['level'] | undefined) => l !== 'off' && l !== 'slack' && l !== 'on';
  const loose = () => level.filter((l) => l === 'off' || l === 'slack').length;
  const later = rows.flatMap((row, hole) => row.filter((r) => r.n > from).map((r) => ({ ...r, hole })));
  later.sort((a, b) => a.n - b.n);
  let since = level.every(pressed) ? from : 0;
  let firstAt = since;
  let openedAgainAt = 0;
  for (const [i, change] of later.entries()) {
    level[change.hole] = change.level;
    if (later[i + 1]?.n === change.n) continue;
    if (!level.every(pressed)) since = 0;
    else since ||= change.n;
    if (firstAt && !openedAgainAt && loose() >= 2) openedAgainAt = change.n;
    firstAt ||= since;
  }
  return { firstAt, since, openedAgainAt };
}

type Bead = FaceState['beads'][number];
const skinOf = ({ kind, skinMinutes }: Product): number | undefined => (kind === 'moisture' ? skinMinutes : undefined);
const minutesOpen = (ledger: Ledger, { n }: Bead, { firstAt }: Together, now: Stamp): number =>
  longestMinutes(ledger, n, firstAt || undefined, now);

function voidedBy(ledger: Ledger, face: FaceState, bead: Bead, at: Together, now: Stamp): BeadStanding['void'] {
  const part = face.declared?.part ? stateOf(ledger, 'part', face.declared.part) : undefined;
  if (face.cleanedAt === 0 || face.cleanedAt < openedBefore(ledger, face, bead.n))
    return 'laid on a face that was not clean';
  if (part && part.removedAt > bead.n) return 'its part came off';
  if (at.openedAgainAt) return 'opened again';
  const skin = skinOf(bead.label);
  return skin !== undefined && minutesOpen(ledger, bead, at, now) > skin ? 'skinned before it was together' : undefined;
}
/** Why the bead laid last does not stand; undefined where it does, and where none is laid. */
export function lastBeadVoid(ledger: Ledger, face: FaceState, now: Stamp): BeadStanding['void'] {
  const last = face.beads.at(-1);
  return last && voidedBy(ledger, face, last, together(ledger, face, last.n), now);
}

function beadStanding(ledger: Ledger, face: FaceState, bead: Bead, now: Stamp): BeadStanding {
  const { label, n } = bead;
  const came = together(ledger, face, n);
  const { firstAt, since: togetherAt } = came;
  const skin = skinOf(label);
  const voided = voidedBy(ledger, face, bead, came, now);
  const rate: Rate = (conditions) => 1 / cureFactor(label, conditions).factor;
  const earned = togetherAt ? earnedSince(ledger, togetherAt, now, rate) : { hours: 0, away: 0 };
  const { factor, because } = cureFactor(label, conditionsAt(ledger, ledger.lines.length));
  const needs = labelHours(label);
  const at = <T>(of: (stage: Stage) => T): Record<Stage, T> => ({ fill: of('fill'), run: of('run'), full: of('full') });
  const left = (stage: Stage) => Math.max(0, needs[stage] - earned.hours);
  return {
    face: face.face,
    n,
    label,
    ...(voided && { void: voided }),
    togetherAt,
    ...(skin !== undefined && !firstAt && { skinMinutesLeft: skin - minutesOpen(ledger, bead, came, now) }),
    earnedHours: earned.hours,
    awayHours: earned.away,
    unwitnessed: lastLine(ledger)?.run !== now.run,
    needs,
    // A tenth of a second of rounding must not hold a car.
    reached: at((stage) => (togetherAt > 0 && left(stage) < 1e-5) || needs[stage] === 0),
    readyAtMs: at((stage) =>
      togetherAt && Number.isFinite(factor) ? now.atMs + left(stage) * factor * 3_600_000 : undefined,
    ),
    factor,
    because,
  };
}

export const beadsOn = (ledger: Ledger, face: FaceState, now: Stamp): BeadStanding[] =>
  face.beads.map((bead) => beadStanding(ledger, face, bead, now));

export const everyBead = (ledger: Ledger, now: Stamp): BeadStanding[] =>
  [...every(ledger, 'face')].flatMap((face) => beadsOn(ledger, face, now));

/** Line at which the face was last opened: a hole of it opened, or its part removed. */
export function faceOpenedAt(ledger: Ledger, face: FaceState): number {
  const holes = face.declared?.pressedBy ?? [];
  const part = face.declared?.part ? stateOf(ledger, 'part', face.declared.part) : undefined;
  return Math.max(part?.removedAt ?? 0, 0, ...holes.map((h) => stateOf(ledger, 'hole', h)?.called.openedAt ?? 0));
}

/** Holes pressing the face that were called and hold something: over them nobody cleans it or lays a bead. */
export const coveringHoles = (ledger: Ledger, face: FaceState): Hole[] =>
  (face.declared?.pressedBy ?? []).filter((hole) => {
    const called = stateOf(ledger, 'hole', hole)?.called;
    return called !== undefined && called.touchedAt > 0 && called.occupant !== undefined;
  });

/** The part that closes it, where that is on it. */
export function partOver(ledger: Ledger, { declared }: FaceState): string | undefined {
  const part = declared?.part === undefined ? undefined : stateOf(ledger, 'part', declared.part);
  return part && !part.off ? part.part : undefined;
}

/** Line at which it was last opened before a bead was laid. */
function openedBefore(ledger: Ledger, face: FaceState, n: number): number {
  const part = face.declared?.part ? stateOf(ledger, 'part', face.declared.part) : undefined;
  const holes = (face.declared?.pressedBy ?? []).flatMap((h) => stateOf(ledger, 'hole', h)?.called.openings ?? []);
  return Math.max(0, ...[...(part?.removals ?? []), ...holes].filter((at) => at < n));
}

/** How many beads it wants once it was opened; none where it was not declared so. */
function beadsWanted(ledger: Ledger, face: FaceState): number {
  const wants = face.declared?.bead;
  if (wants === undefined || faceOpenedAt(ledger, face) === 0) return 0;
  return wants === true ? 1 : wants;
}

/** Why a face wants a bead that it has not; null when those it wants stand. */
export function beadMissing(
  ledger: Ledger,
  face: FaceState,
  now: Stamp,
  beads: readonly BeadStanding[] = beadsOn(ledger, face, now),
): string | null {
  const standing = beads.filter((b) => !b.void);
  const bad = beads.findLast((b) => b.void);
  const lastStanding = standing.at(-1)?.n ?? 0;
  if (bad && lastStanding < bad.n) return `the bead is void: ${bad.void}`;
  if (face.dropped && standing.length === 0) return 'cleaned again, and no bead laid since';
  const wanted = beadsWanted(ledger, face);
  if (standing.length >= wanted) return null;
  return wanted === 1 ? 'opened, and no bead laid' : `${standing.length} of ${wanted} beads laid`;
}
