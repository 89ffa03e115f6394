// Load in a bolt and the torque that makes it: proof load, the coefficient for a bolt's condition, and how far the one can
// be told from the other. Torque measures friction first: never one bare number.
import { type Answer, absurd, isRefused } from './answer.ts';
import { cited } from './cited.ts';
import { thousand } from './definitions.ts';
import { proofStressMPa } from './property-class.ts';
import { stressAreaMm2, type Thread } from './threads.ts';

/**
 * Proof load of a bolt: stress area, in three figures as ISO 898-1 prints it, × proof stress.
 * @returns N; the printed table is off it by up to 0.6 %. Refused: no such class
 * Source: ISO 898-1:2013, tables 3 to 7; SAE J429.
 */
export function proofLoadNewtons(thread: Thread, grade: string): Answer<number> {
  const stress = proofStressMPa(grade, thread);
  const areaMm2 = thread.system === 'metric' ? Number(stressAreaMm2(thread).toPrecision(3)) : stressAreaMm2(thread);
  return isRefused(stress) ? stress : stress * areaMm2;
}

const shigley = 'Shigley, Mechanical Engineering Design, table of torque factors';
/** Torque coefficient K by the bolt's condition. */
export const torqueCoefficients = cited(
  { 'non-plated': 0.3, zinc: 0.2, lubricated: 0.18, cadmium: 0.16, unknown: 0.2 },
  '–',
  shigley,
);
export type Condition = keyof typeof torqueCoefficients.value;
/** Part of the proof load a joint that is taken apart again is tightened to. */
export const reusablePreload = cited(0.75, 'of proof load', shigley);
/** How far torque misses the load aimed at, either way. */
export const torqueScatter = cited(
  0.3,
  'of the load',
  'Shigley, Mechanical Engineering Design: ±25 to 30 % by torque wrench',
);

const coefficientLimits = cited({ from: 0.05, to: 0.6 }, '–', 'chosen here, to catch slips of the keys');
export const forceLimits = cited({ from: 0, to: 1_000_000 }, 'N', 'chosen here, to catch slips of the keys');

/** T = K · d · F, in N·m. Source: Shigley, Mechanical Engineering Design. Refused: K or force absurd. */
export function torqueForPreload(thread: Thread, newtons: number, coefficient: number): Answer<number> {
  const wrong =
    absurd('a torque coefficient of', coefficient, coefficientLimits) ?? absurd('a load of', newtons, forceLimits);
  return wrong ?? (coefficient * thread.majorMm * newtons) / thousand.value;
}

export type Preload = { newtons: number; fromNewtons: number; toNewtons: number };

/** F = T / (K · d), in N, with the scatter of the method. Source: Shigley, Mechanical Engineering Design. */
export function preloadFromTorque(thread: Thread, newtonMetres: number, coefficient: number): Answer<Preload> {
  const wrong = absurd('a torque coefficient of', coefficient, coefficientLimits);
  if (wrong) return wrong;
  const newtons = (newtonMetres * thousand.value) / (coefficient * thread.majorMm);
  const scatter = newtons * torqueScatter.value;
  return { newtons, fromNewtons: newtons - scatter, toNewtons: newtons + scatter };
}

/** The torque that brings a bolt to three quarters of its proof load, N·m. Refused: no such class. */
export function usualTorque(thread: Thread, grade: string, condition: Condition = 'unknown'): Answer<number> {
  const proof = proofLoadNewtons(thread, grade);
  if (isRefused(proof)) return proof;
  return torqueForPreload(thread, proof * reusablePreload.value, torqueCoefficients.value[condition]);
}
