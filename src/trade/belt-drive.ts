// A toothed belt between crank and cam of a four-stroke engine: what a tooth is worth in degrees, and after how many turns
// the printed marks of the belt meet the sprockets' again. Chains and gears turn alike; their marks are not the belt's.
import { type Answer, absurd, figure, isRefused, refused } from './answer.ts';
import { chosenHere, cited } from './cited.ts';
import { degreesPerTurn } from './definitions.ts';

/** Crank turns for one turn of the cam. */
const crankTurnsPerCamTurn = cited(2, 'turns', 'four-stroke cycle, by definition');
const crankLimits = cited({ from: 10, to: 60 }, 'teeth', chosenHere);
const beltLimits = cited({ from: 40, to: 400 }, 'teeth', chosenHere);
const offLimits = cited({ from: -30, to: 30 }, 'teeth', chosenHere);

function wrongTeeth(what: string, teeth: number, limits: typeof crankLimits) {
  return (
    absurd(what, teeth, limits) ?? (Number.isInteger(teeth) ? undefined : refused(`${teeth} is no count of teeth`))
  );
}

export type Degrees = { crankDegrees: number; camDegrees: number };

/**
 * What one tooth of the belt is worth.
 * @param crankTeeth of the crank sprocket; the cam's has twice as many, which is checked where it is said
 * @returns degrees at the crank and half of them at the cam, the same at whichever sprocket the belt sits wrong.
 * Refused: teeth outside 10 to 60, a cam sprocket that has not twice as many
 * Source: 360°/z, by definition.
 */
export function degreesPerTooth(crankTeeth: number, camTeeth?: number): Answer<Degrees> {
  const wrong = wrongTeeth('a crank sprocket of', crankTeeth, crankLimits);
  if (wrong) return wrong;
  if (camTeeth !== undefined && camTeeth !== crankTeeth * crankTurnsPerCamTurn.value) {
    return refused(
      `a cam sprocket of ${figure(camTeeth)} teeth on a crank sprocket of ${crankTeeth}: it has ${crankTeeth * crankTurnsPerCamTurn.value}`,
    );
  }
  const crankDegrees = degreesPerTurn.value / crankTeeth;
  return { crankDegrees, camDegrees: crankDegrees / crankTurnsPerCamTurn.value };
}

/** Teeth off in degrees, with the line that says so; above nothing is late or early as it was called. Refused as above. */
export function degreesOff(teethOff: number, crankTeeth: number): Answer<Degrees & { text: string }> {
  const one = degreesPerTooth(crankTeeth);
  if (isRefused(one)) return one;
  const wrong = wrongTeeth('off by', teethOff, offLimits);
  if (wrong) return wrong;
  const crankDegrees = one.crankDegrees * teethOff;
  const camDegrees = one.camDegrees * teethOff;
  const count = Math.abs(teethOff) === 1 ? '1 tooth' : `${Math.abs(teethOff)} teeth`;
  return {
    crankDegrees,
    camDegrees,
    text: `${count} off: ${degrees(crankDegrees)} at the crank, ${degrees(camDegrees)} at the cam`,
  };
}
const degrees = (value: number): string => `${Number(Math.abs(value).toFixed(1))}°`;

export type MarksMeet = {
  /** Crank turns until crank, cam and belt stand as they were fitted. */
  crankTurns: number;
  /** Crank turns until a belt mark meets the crank's again, whatever the cam does. */
  beltToCrankTurns: number;
  text: string;
};

/**
 * After how many turns the printed marks meet again: lcm(2z, Z)/z.
 * @param crankTeeth z @param beltTeeth Z
 * @returns crank turns. Refused: counts that are none, a belt too short to go round both sprockets
 * Source: counting; "something over a hundred turns" is common practice, no source.
 */
export function turnsUntilMarksMeet(crankTeeth: number, beltTeeth: number): Answer<MarksMeet> {
  const wrong =
    wrongTeeth('a crank sprocket of', crankTeeth, crankLimits) ?? wrongTeeth('a belt of', beltTeeth, beltLimits);
  if (wrong) return wrong;
  const camTeeth = crankTeeth * crankTurnsPerCamTurn.value;
  // Half of each sprocket is the least a belt lies on.
  const least = (crankTeeth + camTeeth) / 2;
  if (beltTeeth <= least)
    return refused(`a belt of ${beltTeeth} teeth does not go round sprockets of ${crankTeeth} and ${camTeeth}`);
  const crankTurns = leastCommonMultiple(camTeeth, beltTeeth) / crankTeeth;
  return {
    crankTurns,
    beltToCrankTurns: leastCommonMultiple(crankTeeth, beltTeeth) / crankTeeth,
    text: `the marks printed on the belt meet again after ${crankTurns} turns of the crank: they are for fitting it, not for checking`,
  };
}

function leastCommonMultiple(a: number, b: number): number {
  let [divisor, rest] = [a, b];
  while (rest > 0) [divisor, rest] = [rest, divisor % rest];
  return (a / divisor) * b;
}
