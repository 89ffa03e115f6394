// Whether a stated torque can be right for the bolt it is stated for. It never says what to tighten to: that is the
// maker's. Angle methods are not judged, and into aluminium the thread there is the limit, not the bolt.
import { type Answer, absurd, figure, isRefused } from './answer.ts';
import { cited, commonPractice } from './cited.ts';
import { hundred } from './definitions.ts';
import {
  type Condition,
  preloadFromTorque,
  proofLoadNewtons,
  reusablePreload,
  torqueCoefficients,
  torqueForPreload,
  torqueScatter,
} from './preload.ts';
import { kilonewtons } from './property-class.ts';
import type { Thread } from './threads.ts';
import { newtonMetresOf, type TorqueUnit } from './units.ts';

export type StatedTorque = {
  thread: Thread;
  newtonMetres: number;
  /** "8.8"; unknown is not judged. */
  class?: string;
  /** How it is brought up: "torque", "torque-angle", "shoulder", "sleeve", "hand", "clamp", "castle". */
  by?: string;
  /** What the bolt is turned into. */
  into?: 'aluminium' | 'steel' | 'iron';
  condition?: Condition;
};

export type TorqueJudgement = {
  verdict: 'fits' | 'passes-proof-load' | 'far-below' | 'no-figure-belongs' | 'not-judged';
  /** One line: the load, in a range, or why nothing is said. */
  because: string;
  /** Load by this torque, N, with the scatter of the method. */
  load?: { fromNewtons: number; toNewtons: number };
  /** Torques between far below and proof load, N·m. */
  band?: { fromNewtonMetres: number; toNewtonMetres: number };
  /** The same figure in another unit would fit. */
  perhaps?: string;
};

/** Below it no one means a bolt of that class: a slip of the unit, or not this bolt. */
const farBelow = cited(0.25, 'of proof load', commonPractice);
const torqueLimits = cited({ from: 0.1, to: 2000 }, 'N·m', 'chosen here, to catch slips of the keys');
/** Manners of bringing up that end at a stop or by feel. */
export const withoutFigure: ReadonlySet<string> = new Set(['shoulder', 'sleeve', 'hand', 'clamp']);

/**
 * Judges a stated torque.
 * @returns the verdict with one line; refused: a torque outside 0.1 to 2000 N·m, no such class
 * Sources: proof load ISO 898-1:2013; K and scatter Shigley, table of torque factors; the lower limit is common practice,
 * no source.
 */
export function judgeTorque(stated: StatedTorque): Answer<TorqueJudgement> {
  const { thread, newtonMetres, by = 'torque', into, condition = 'unknown' } = stated;
  const wrong = absurd('a torque of', newtonMetres, torqueLimits);
  if (wrong) return wrong;
  if (withoutFigure.has(by)) {
    return {
      verdict: 'no-figure-belongs',
      because: `"${by}" carries no figure: the thread goes before ${figure(newtonMetres)} N·m does`,
    };
  }
  if (by === 'torque-angle') return notJudged('an angle method passes proof load by design');
  if (stated.class === undefined) return beyondAny(stated) ?? notJudged(`no class known of ${thread.name}`);
  const proof = proofLoadNewtons(thread, stated.class);
  if (isRefused(proof)) return proof;
  const coefficient = torqueCoefficients.value[condition];
  const load = preloadFromTorque(thread, newtonMetres, coefficient);
  const atProof = torqueForPreload(thread, proof, coefficient);
  if (isRefused(load)) return load;
  if (isRefused(atProof)) return atProof;

  const band = { fromNewtonMetres: atProof * farBelow.value, toNewtonMetres: atProof };
  const verdict =
    newtonMetres > band.toNewtonMetres
      ? 'passes-proof-load'
      : newtonMetres < band.fromNewtonMetres && into !== 'aluminium'
        ? 'far-below'
        : 'fits';
  const perhaps = verdict === 'fits' ? undefined : otherUnit(newtonMetres, atProof);
  return {
    verdict,
    because: lineOf(stated, verdict, load, proof),
    load: { fromNewtons: load.fromNewtons, toNewtons: load.toNewtons },
    band,
    ...(perhaps !== undefined && { perhaps }),
  };
}

const strongest = cited('12.9', 'property class', 'ISO 898-1:2013, which names none of bolts above it');
/** Of a bolt whose class nobody read, what not even the strongest would bear, however little of it becomes load. */
function beyondAny(stated: StatedTorque): TorqueJudgement | undefined {
  const proof = proofLoadNewtons(stated.thread, strongest.value);
  const judged = judgeTorque({ ...stated, class: strongest.value });
  return isRefused(proof) || isRefused(judged) || (judged.load?.fromNewtons ?? 0) <= proof
    ? undefined
    : { ...judged, because: `no class known, and even of ${strongest.value}: ${judged.because}` };
}

const notJudged = (because: string): TorqueJudgement => ({ verdict: 'not-judged', because });

function lineOf(
  { thread, newtonMetres, class: grade, into }: StatedTorque,
  verdict: TorqueJudgement['verdict'],
  load: { fromNewtons: number; toNewtons: number },
  proof: number,
): string {
  const part = (newtons: number) => Math.round((newtons / proof) * hundred.value);
  const range = `${figure(newtonMetres)} N·m on ${thread.name} ${grade} is ${part(load.fromNewtons)} to ${part(load.toNewtons)} % of its proof load (${kilonewtons(proof)})`;
  if (verdict === 'passes-proof-load') return `${range}: it would stretch for good`;
  if (verdict === 'far-below') return `${range}: far below`;
  return into === 'aluminium' ? `${range}; in aluminium the thread there is the limit` : range;
}

/** The figure as it stands, read in another unit. */
function otherUnit(value: number, atProof: number): string | undefined {
  const usualFrom = atProof * reusablePreload.value * (1 - torqueScatter.value);
  const units: readonly TorqueUnit[] = ['lbf·ft', 'kgf·m', 'lbf·in'];
  for (const unit of units) {
    const inUnit = newtonMetresOf(value, unit);
    if (!isRefused(inUnit) && inUnit >= usualFrom && inUnit <= atProof)
      return `${figure(value)} ${unit} would be ${figure(inUnit)} N·m`;
  }
  return undefined;
}
