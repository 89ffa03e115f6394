// Repairing a thread with a wire insert: what to drill and how deep, how long an insert, how much thread a bolt wants. Of
// solid bushes and of the makers' own kits nothing is here: their sheet goes before.
import { type Answer, absurd, figure, isRefused, refused } from './answer.ts';
import { chosenHere, cited, commonPractice } from './cited.ts';
import { nominalStrength } from './property-class.ts';
import type { Thread } from './threads.ts';

const lengthLimits = cited({ from: 1, to: 200 }, 'mm', chosenHere);
const engagementLimits = cited({ from: 0, to: 300 }, 'mm', chosenHere);
const drillLimits = cited({ from: 1, to: 60 }, 'mm', chosenHere);
const shearLimits = cited({ from: 30, to: 1000 }, 'N/mm²', chosenHere);

/** The bore of an insert's thread over the bolt's nominal diameter, in pitches. */
const boreOver = cited(
  0.216506,
  'pitches',
  'ASME B18.29.2M-2005 and DIN 8140-2, formula from memory (a quarter of the triangle)',
).value;
/** Tolerance of the bore, 5H, by pitch. */
const boreTolerance = cited<Readonly<Record<string, number>>>(
  { 0.5: 0.112, 0.7: 0.14, 0.75: 0.15, 0.8: 0.16, 1: 0.19, 1.25: 0.212, 1.5: 0.236, 1.75: 0.265, 2: 0.3 },
  'mm',
  'ISO 965-1:2013, minor diameter of nut threads, grade 5; pitches 0.5 to 0.8, 1.75 and 2 from memory',
);

/**
 * The bore into which an insert's thread is cut.
 * @returns smallest and largest, mm; refused: inch threads, and pitches without a tolerance here
 * Source: ASME B18.29.2M-2005, DIN 8140-2: d + 0.2165 P, tolerance 5H.
 */
export function insertBoreMm({ name, system, majorMm, pitchMm }: Thread): Answer<{ fromMm: number; toMm: number }> {
  const tolerance = boreTolerance.value[String(pitchMm)];
  if (system === 'inch') return refused(`inserts for ${name}: the drill is the kit's, no table is here`);
  if (tolerance === undefined) return refused(`no bore is known for an insert of ${name}`);
  const fromMm = majorMm + boreOver * pitchMm;
  return { fromMm, toMm: fromMm + tolerance };
}

/** The drill for cutting the thread itself, without an insert, mm: d - P. Source: ISO 2306:1972. */
export const tapDrillMm = ({ majorMm, pitchMm }: Thread): number => majorMm - pitchMm;

/** Drills come in tenths. */
const drillStep = cited(0.1, 'mm', 'ISO 235:2016, jobber drills').value;

/** The drill that is proposed for an insert, mm: the smallest that comes in tenths and fits the bore. Refused as `insertBoreMm`. */
export function insertDrillMm(thread: Thread): Answer<number> {
  const bore = insertBoreMm(thread);
  if (isRefused(bore)) return bore;
  const drill = Number((Math.ceil(bore.fromMm / drillStep) * drillStep).toFixed(1));
  return drill <= bore.toMm ? drill : refused(`no drill in tenths fits an insert of ${thread.name}`);
}

const widest = cited({ ofDiameter: 2 }, 'diameters', chosenHere).value;
/** Wider than any insert or bush of this thread wants: a figure that was meant for something else. */
export const isWiderThanAny = ({ majorMm }: Thread, drillMm: number): boolean => drillMm > widest.ofDiameter * majorMm;

export type DrillJudgement = { verdict: 'fits' | 'plain-tap-drill' | 'too-small' | 'too-large'; because: string };

/**
 * Whether a drill is right for an insert.
 * @param drillMm its diameter, mm
 * @returns the verdict with one line; the plain tap drill of the bolt's own thread is called what it is. Refused as `insertBoreMm`
 * Source: ASME B18.29.2M-2005, DIN 8140-2.
 */
export function judgeInsertDrill(thread: Thread, drillMm: number): Answer<DrillJudgement> {
  const wrong = absurd('a drill of', drillMm, drillLimits);
  const bore = insertBoreMm(thread);
  if (wrong) return wrong;
  if (isRefused(bore)) return bore;
  const band = `${bore.fromMm.toFixed(2)} to ${bore.toMm.toFixed(2)} mm`;
  if (drillMm >= bore.fromMm && drillMm <= bore.toMm) {
    return { verdict: 'fits', because: `${figure(drillMm)} mm for an insert of ${thread.name}: the bore is ${band}` };
  }
  if (Math.abs(drillMm - tapDrillMm(thread)) < drillStep) {
    return {
      verdict: 'plain-tap-drill',
      because: `${figure(drillMm)} mm is the drill for ${thread.name} itself; an insert wants ${band}`,
    };
  }
  const small = drillMm < bore.fromMm;
  return {
    verdict: small ? 'too-small' : 'too-large',
    because: `${figure(drillMm)} mm is too ${small ? 'small' : 'large'} for an insert of ${thread.name}: ${band}`,
  };
}

const depthNote = 'ASME B18.29.2M-2005, note to the table of hole data';
/** Tap chamfer, clearance at its end, countersink with set-down; a small plug tap has a point as well. */
const below = cited({ plugChamfer: 4, bottomingChamfer: 2, clearance: 1, setDown: 1 }, 'pitches', depthNote).value;
const pointed = cited({ upToMm: 8, ofDiameter: 0.5 }, 'mm, diameters', depthNote).value;

export type InsertTap = 'plug' | 'bottoming';

/**
 * How deep to drill for an insert.
 * @param insertLengthMm its nominal length, mm @param tap plug where nothing is said
 * @returns mm; refused: a length outside 1 to 200 mm
 * Source: ASME B18.29.2M-2005: length + 4 P (bottoming tap 2 P) + P + P, and half a diameter for plug taps up to 8 mm.
 */
export function insertDrillingDepthMm(thread: Thread, insertLengthMm: number, tap: InsertTap = 'plug'): Answer<number> {
  const wrong = absurd('an insert of', insertLengthMm, lengthLimits);
  if (wrong) return wrong;
  const chamfer = tap === 'plug' ? below.plugChamfer : below.bottomingChamfer;
  const point = tap === 'plug' && thread.majorMm <= pointed.upToMm ? pointed.ofDiameter * thread.majorMm : 0;
  return insertLengthMm + point + (chamfer + below.clearance + below.setDown) * thread.pitchMm;
}

export type DepthJudgement = { depthMm: number; tap: InsertTap; because: string };

/**
 * Whether the boss is deep enough, asked before anything is cut.
 * @param thereMm the depth there is in the boss, mm
 * @returns the drilling depth and the tap that will do, with the line to work by; refused beyond the depth there is
 * Source: ASME B18.29.2M-2005; that an oil gallery lies behind many a boss is common practice, no source.
 */
export function drillingDepthIn(thread: Thread, insertLengthMm: number, thereMm: number): Answer<DepthJudgement> {
  const wrong = absurd('a depth of', thereMm, lengthLimits);
  if (wrong) return wrong;
  const plug = insertDrillingDepthMm(thread, insertLengthMm, 'plug');
  const bottoming = insertDrillingDepthMm(thread, insertLengthMm, 'bottoming');
  if (isRefused(plug)) return plug;
  if (isRefused(bottoming)) return bottoming;
  if (bottoming > thereMm) {
    return refused(
      `an insert of ${figure(insertLengthMm)} mm wants ${figure(bottoming)} mm with a bottoming tap; there are ${figure(thereMm)} mm: a shorter one; behind many a boss lies an oil gallery`,
    );
  }
  const tap: InsertTap = plug <= thereMm ? 'plug' : 'bottoming';
  const depthMm = tap === 'plug' ? plug : bottoming;
  const how = tap === 'plug' ? '' : ', bottoming tap';
  return {
    depthMm,
    tap,
    because: `drill ${figure(depthMm)} mm deep of the ${figure(thereMm)} there are${how}: set the stop collar`,
  };
}

/** Insert length in diameters, by the shear strength of what it sits in and the class of the bolt. */
const lengthsByShear = cited(
  [
    { upToShear: 150, lengths: { '8.8': 2, '10.9': 2.5 } },
    { upToShear: 200, lengths: { '8.8': 2 } },
    { upToShear: 300, lengths: { '8.8': 1.5 } },
  ] as { upToShear: number; lengths: Record<string, number> }[],
  'N/mm², diameters',
  "Machinery's Handbook, 31st edition, p. 1757",
).value;
/** The weakest parent for which a length is printed, N/mm²: soft cast aluminium. */
export const weakestParentShear = Math.min(...lengthsByShear.map(({ upToShear }) => upToShear));
const softestListed = cited('8.8', 'property class', "Machinery's Handbook, 31st edition, p. 1757").value;

/**
 * How long an insert, in diameters of the bolt.
 * @param parentShear shear strength of what it sits in, N/mm² @param grade of the bolt
 * @returns the length of the next weaker parent printed, so never too short; a bolt softer than 8.8 as 8.8. Refused: parents weaker
 * than the table, classes it does not give
 * Source: Machinery's Handbook, 31st edition, p. 1757.
 */
export function insertLengthDiameters(parentShear: number, grade: string): Answer<number> {
  const wrong = absurd('a shear strength of', parentShear, shearLimits);
  if (wrong) return wrong;
  const strength = nominalStrength(grade);
  if (isRefused(strength)) return strength;
  const row = lengthsByShear.findLast(({ upToShear }) => upToShear <= parentShear);
  if (!row)
    return refused(
      `no length is printed for a parent of ${figure(parentShear)} N/mm²: take the longest the boss has room for`,
    );
  const soft = nominalStrength(softestListed);
  const as = !isRefused(soft) && strength.tensile <= soft.tensile ? softestListed : grade.trim();
  // A stronger parent needs no more than a weaker one.
  const length =
    row.lengths[as] ?? lengthsByShear.findLast((one) => one.upToShear <= parentShear && one.lengths[as])?.lengths[as];
  return length ?? refused(`no insert length is printed for class ${grade}`);
}

const lengthsSold = cited([3, 2.5, 2, 1.5, 1], 'diameters', commonPractice).value;

/**
 * The longest insert that goes into what there is, of the lengths they are sold in.
 * @param thereMm the depth there is in the boss, mm
 * @returns its nominal length, mm; refused where even the shortest does not go in
 * Source: `drillingDepthIn`; lengths of 1 to 3 diameters are common practice, no source.
 */
export function longestInsertMm(thread: Thread, thereMm: number): Answer<number> {
  const all = lengthsSold.map((diameters) => diameters * thread.majorMm);
  const longest = all.find((lengthMm) => !isRefused(drillingDepthIn(thread, lengthMm, thereMm)));
  return longest ?? refused(`no insert of ${thread.name} goes into ${figure(thereMm)} mm`);
}

/** Turns of thread a bolt wants, in diameters, by what it goes into. */
const engagement = cited({ aluminium: 2, steel: 1.25, iron: 1.25 }, 'diameters', "an engine maker's manual");
export type Parent = keyof typeof engagement.value;

/** Least engagement, mm. Source: an engine maker's manual: aluminium 2 d, steel and iron 1.25 d. */
export const leastEngagementMm = (thread: Thread, parent: Parent): number => engagement.value[parent] * thread.majorMm;

/** Whether a bolt has thread enough; empty when it has. `engagedMm` is the thread it turns into, mm. */
export function shortEngagement(thread: Thread, parent: Parent, engagedMm: number): Answer<string> {
  const wrong = absurd('an engagement of', engagedMm, engagementLimits);
  if (wrong) return wrong;
  const least = leastEngagementMm(thread, parent);
  return engagedMm >= least
    ? ''
    : `${figure(engagedMm)} mm of thread in ${parent}: ${thread.name} wants ${figure(least)} mm`;
}
