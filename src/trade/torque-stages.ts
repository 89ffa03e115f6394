// Torque and angle in stages, as makers print them: 20 → 40 N·m → +60° → +80°; loosening stages; a torque the last stage
// must come to. Two angles are never merged. What a stage is worth in load is not computed: by design it passes proof.
import { type Answer, absurd, figure, isRefused, refused } from './answer.ts';
import { chosenHere, cited, commonPractice } from './cited.ts';
import { degreesPerTurn } from './definitions.ts';
import { newtonMetresOf, type TorqueUnit } from './units.ts';
import { metric, torqueFigure, torqueText, torqueUnitOf, type Units } from './units-shown.ts';

export type Stage =
  | { newtonMetres: number }
  | { degrees: number }
  | { loosenDegrees: number }
  /** The torque read at the end of the last stage must lie between; 0 to: no upper limit. */
  | { acceptFromNewtonMetres: number; acceptToNewtonMetres?: number };

const newtonMetre = /n·?m\b\.?/gi;
const footPound = /\b(?:lb[fs]?[\s.·-]*ft|ft[\s.·-]*lb[fs]?)\b\.?/gi;

const mostStages = cited(8, 'stages', chosenHere).value;
const torqueLimits = cited({ from: 0.5, to: 2000 }, 'N·m', chosenHere);
const angleLimits = cited({ from: 1, to: 720 }, '°', chosenHere);
const loosenLimits = cited({ from: 1, to: 1080 }, '°', chosenHere);

/**
 * Reads stages as written, one unit of torque for all of them, `bare` where none is said: "20 40 +60 +80", "40 Nm, +90°, -1 turn, 40, +90, +90", "30 +90 accept 60-110".
 * @returns the stages in order; refused where one is none, or they make no sense together (see `soundStages`)
 */
export function readStages(text: string, bare: 'N·m' | 'lbf·ft' = 'N·m'): Answer<Stage[]> {
  const [inNewton, inFoot] = [newtonMetre, footPound].map((unit) => text.search(unit) >= 0);
  if (inNewton && inFoot) return refused('N·m and lbf·ft side by side: one unit for all stages');
  const unit = inFoot ? 'lbf·ft' : inNewton ? 'N·m' : bare;
  const words = text
    .replace(footPound, ' ')
    .replace(/,(?=\d)/g, '.')
    .replace(/→|->|,|;/g, ' ')
    .replace(newtonMetre, ' ')
    .replace(/°|deg(rees)?\b/gi, ' ')
    .replace(/([+-])\s+(?=\d)/g, '$1')
    // A keypad has no space: 40+90+90.
    .replace(/(?<=\d)\+/g, ' +')
    .trim()
    .split(/\s+(?!turns?\b)/)
    .filter((word) => word !== '');
  const stages: Stage[] = [];
  for (let at = 0; at < words.length; at++) {
    const word = words[at] as string;
    const stage = word.toLowerCase() === 'accept' ? readAccepted(words[++at] ?? '') : readStage(word);
    if (isRefused(stage)) return stage;
    stages.push(unit === 'N·m' ? stage : turnedFrom(unit, stage));
  }
  return soundStages(stages);
}

/** To a hundredth of a newton metre. */
function turnedFrom(unit: TorqueUnit, stage: Stage): Stage {
  const one = newtonMetresOf(1, unit) as number;
  const turned = (value: number): number => Number((value * one).toFixed(2));
  if ('newtonMetres' in stage) return { newtonMetres: turned(stage.newtonMetres) };
  if (!('acceptFromNewtonMetres' in stage)) return stage;
  const { acceptFromNewtonMetres: from, acceptToNewtonMetres: to } = stage;
  return {
    acceptFromNewtonMetres: turned(from),
    ...(to !== undefined && { acceptToNewtonMetres: turned(to) }),
  };
}

function readStage(word: string): Answer<Stage> {
  const parts = /^([+-]?)(\d+(?:\.\d+)?)(?: ?(turns?))?$/.exec(word);
  if (!parts) return refused(`"${word}" is no stage: 40 (N·m), +90 (degrees), -360 (loosen), accept 60-110`);
  const value = Number(parts[2]) * (parts[3] === undefined ? 1 : degreesPerTurn.value);
  if (parts[1] === '+') return { degrees: value };
  if (parts[1] === '-') return { loosenDegrees: value };
  return parts[3] === undefined ? { newtonMetres: value } : refused(`"${word}": +1 turn tightens, -1 turn loosens`);
}

function readAccepted(word: string): Answer<Stage> {
  const parts = /^(\d+(?:\.\d+)?)(?:-(\d+(?:\.\d+)?))?$/.exec(word);
  if (!parts) return refused('after "accept" stands a torque or two: accept 60, accept 60-110');
  return {
    acceptFromNewtonMetres: Number(parts[1]),
    ...(parts[2] !== undefined && { acceptToNewtonMetres: Number(parts[2]) }),
  };
}

/**
 * The stages, if they can be done as they stand.
 * @returns them unchanged; refused: none or too many, absurd figures, an angle or a loosening before any torque, a torque
 * lower than the one before it, nothing after a loosening, an acceptance that is not last
 * Source: the stages met in makers' manuals; that they be in this order is common practice, no source.
 */
export function soundStages(stages: readonly Stage[]): Answer<Stage[]> {
  if (stages.length === 0 || stages.length > mostStages)
    return refused(`1 to ${mostStages} stages are taken, not ${stages.length}`);
  let standing = 0;
  for (const [at, stage] of stages.entries()) {
    const wrong = absurdStage(stage);
    if (wrong) return wrong;
    const last = at === stages.length - 1;
    if ('newtonMetres' in stage) {
      // The same torque again is how manuals make sure that every bolt has had it.
      if (stage.newtonMetres < standing)
        return refused(`${figure(stage.newtonMetres)} N·m after ${figure(standing)} N·m turns nothing`);
      standing = stage.newtonMetres;
    } else if ('acceptFromNewtonMetres' in stage) {
      if (!last || at === 0) return refused('a torque to be accepted is the last of several stages');
      const { acceptFromNewtonMetres: from, acceptToNewtonMetres: to = from } = stage;
      if (to < from) return refused(`accept ${figure(from)}-${figure(to)} runs backwards`);
    } else if (standing === 0) {
      return refused(`${stageText(stage)} before any torque starts from nowhere`);
    } else if ('loosenDegrees' in stage) {
      if (last) return refused('nothing follows the loosening');
      standing = 0;
    }
  }
  return [...stages];
}

function absurdStage(stage: Stage): ReturnType<typeof absurd> {
  if ('newtonMetres' in stage) return absurd('a stage of', stage.newtonMetres, torqueLimits);
  if ('degrees' in stage) return absurd('a stage of', stage.degrees, angleLimits);
  if ('loosenDegrees' in stage) return absurd('a loosening of', stage.loosenDegrees, loosenLimits);
  return (
    absurd('an accepted torque of', stage.acceptFromNewtonMetres, torqueLimits) ??
    (stage.acceptToNewtonMetres === undefined
      ? undefined
      : absurd('an accepted torque of', stage.acceptToNewtonMetres, torqueLimits))
  );
}

/** "40 N·m", "+90°", "loosen 360°", "accept 60 to 110 N·m". */
function stageText(stage: Stage, units: Units = metric): string {
  if ('newtonMetres' in stage) return torqueText(stage.newtonMetres, units);
  if ('degrees' in stage) return `+${figure(stage.degrees)}°`;
  if ('loosenDegrees' in stage) return `loosen ${figure(stage.loosenDegrees)}°`;
  const { acceptFromNewtonMetres: from, acceptToNewtonMetres: to } = stage;
  const unit = torqueUnitOf(units);
  return to === undefined
    ? `accept from ${torqueFigure(from, units)} ${unit}`
    : `accept ${torqueFigure(from, units)} to ${torqueFigure(to, units)} ${unit}`;
}
export const stagesText = (stages: readonly Stage[], units: Units = metric): string =>
  stages.map((stage) => stageText(stage, units)).join(', ');

/** Whether the torque read at the end is what the last stage wants; null where it wants none. Units: N·m. */
export function isAccepted(stages: readonly Stage[], readNewtonMetres: number): boolean | null {
  const last = stages.at(-1);
  if (!last || !('acceptFromNewtonMetres' in last)) return null;
  return (
    readNewtonMetres >= last.acceptFromNewtonMetres &&
    readNewtonMetres <= (last.acceptToNewtonMetres ?? readNewtonMetres)
  );
}

/** Degrees turned after the last torque: what a mark on the head must have moved. */
export function degreesAfterTorque(stages: readonly Stage[]): number {
  const from = stages.findLastIndex((stage) => 'newtonMetres' in stage);
  return stages.slice(from + 1).reduce((sum, stage) => sum + ('degrees' in stage ? stage.degrees : 0), 0);
}

/**
 * The work on several fasteners: one stage on all of them before the next, each time in the order given.
 * Source: makers' manuals.
 */
export const stagesInTurn = <Hole>(stages: readonly Stage[], order: readonly Hole[]): { stage: Stage; hole: Hole }[] =>
  stages.flatMap((stage) => order.map((hole) => ({ stage, hole })));

/** How far what a wrench showed may lie from the torque that was wanted before it is worth a word. */
const nearEnough = cited(0.1, 'of the torque', commonPractice).value;
/** @param read and wanted, N·m */
export const isReadFarOff = (read: number, wanted: number): boolean => Math.abs(read - wanted) > wanted * nearEnough;
