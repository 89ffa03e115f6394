// Threads that nearly match: how far a bolt turns into a thread that is not its own, and what that feels like. It is
// geometry of the flanks alone; dirt, paint and force are not in it.
import { cited, commonPractice } from './cited.ts';
import { degreesPerHalfTurn } from './definitions.ts';
import { everyThread, minorDiameterMm, pitchDiameterMm, type Thread } from './threads.ts';

/** Half of the profile's angle, on which the flanks close up. */
const flankDegrees = cited(30, '°', 'ISO 68-1:1998, ASME B1.1-2003: 60° between the flanks');
const tanFlank = Math.tan((flankDegrees.value / degreesPerHalfTurn.value) * Math.PI);
const felt = cited({ bindsBelow: 1, feelsRightFrom: 3 }, 'turns', commonPractice);

export type NearMiss = {
  bolt: string;
  hole: string;
  /** Whether it starts at all: its pitch diameter is no larger than the hole's. */
  starts: boolean;
  /** Turns until the flanks meet; Infinity where the pitches are equal. 0 where it does not start. */
  freeTurns: number;
  feel: 'does not start' | 'binds at once' | 'binds soon' | 'feels right, then strips' | 'goes in loose';
  /** One line of what the hand feels and what it means. */
  text: string;
};

/**
 * A bolt in a hole of another thread.
 * @returns undefined for the same thread, and where bolt and hole miss each other altogether: the bolt falls through,
 * or is larger than the hole's thread by more than its depth
 * Source: free turns = difference of pitch diameters × tan 30° / difference of pitches, from the profile of ISO 68-1
 * and ASME B1.1; the words for it are common practice, no source.
 */
export function nearMiss(bolt: Thread, hole: Thread): NearMiss | undefined {
  if (bolt.name === hole.name || !meets(bolt, hole)) return undefined;
  const play = pitchDiameterMm(hole) - pitchDiameterMm(bolt);
  const starts = play >= 0;
  const perTurn = Math.abs(hole.pitchMm - bolt.pitchMm);
  const freeTurns = !starts ? 0 : perTurn === 0 ? Number.POSITIVE_INFINITY : (play * tanFlank) / perTurn;
  const feel = feelOf(starts, freeTurns);
  return { bolt: bolt.name, hole: hole.name, starts, freeTurns, feel, text: textOf(bolt, hole, feel, freeTurns) };
}

/** Crests of the one lie between root and crest of the other. */
const meets = (bolt: Thread, hole: Thread): boolean =>
  bolt.majorMm > minorDiameterMm(hole) && minorDiameterMm(bolt) < hole.majorMm;

function feelOf(starts: boolean, turns: number): NearMiss['feel'] {
  if (!starts) return 'does not start';
  if (!Number.isFinite(turns)) return 'goes in loose';
  if (turns < felt.value.bindsBelow) return 'binds at once';
  return turns < felt.value.feelsRightFrom ? 'binds soon' : 'feels right, then strips';
}

function textOf(bolt: Thread, hole: Thread, feel: NearMiss['feel'], turns: number): string {
  const pair = `${bolt.name} in ${hole.name}`;
  switch (feel) {
    case 'does not start':
      return `${pair} does not start by hand; forced, it crosses the thread`;
    case 'goes in loose':
      return `${pair} goes all the way in, loose, and holds by its crests alone`;
    case 'binds at once':
      return `${pair} binds within the first turn (${turns.toFixed(1)} free)`;
    case 'binds soon':
      return `${pair} turns freely for ${turns.toFixed(1)} turns and binds`;
    case 'feels right, then strips':
      return `${pair} turns freely for ${turns.toFixed(1)} turns, feels right and strips when tightened`;
  }
}

/** Every thread known that starts in this hole and is not its own, the most deceiving first. */
export const deceivingBolts = (hole: Thread): NearMiss[] =>
  everyThread
    .flatMap((bolt) => nearMiss(bolt, hole) ?? [])
    .filter(({ starts }) => starts)
    .sort((a, b) => b.freeTurns - a.freeTurns);
