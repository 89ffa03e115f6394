// The torque coefficient from friction in the thread and under the head, as handbooks compute it. For judging a torque
// the coefficients by a bolt's condition in preload.ts are used; this is what they rest on.
import { type Answer, absurd, isRefused, refused } from './answer.ts';
import { cited } from './cited.ts';
import { radians, thousand } from './definitions.ts';
import { forceLimits } from './preload.ts';
import { pitchDiameterMm, type Thread } from './threads.ts';

const handbook = "Machinery's Handbook, 31st edition, p. 1662";
/** Outer edge of the bearing face, as part of the width across flats; and of the mean friction radius. */
const bearing = cited({ ofFlats: 0.95, ofCubes: 2 / 3 }, '–', handbook);
const flank = cited(30, '°', 'ISO 68-1:1998');
const frictionLimits = cited({ from: 0.03, to: 0.5 }, '–', 'chosen here, to catch slips of the keys');

export type Bearing = { acrossFlatsMm: number; holeMm: number };
export type Friction = { thread: number; bearing: number };

/**
 * Torque coefficient from friction in thread and under the head.
 * @param thread its diameter and pitch, mm @param head width across flats and the hole it bears on, mm
 * @returns K; refused: friction outside 0.03 to 0.5, a hole as wide as the head
 * Source: Machinery's Handbook, 31st edition, p. 1662: K = (1/2d)[P/π + μs·d2·sec α' + μw·Dw], tan α' = tan 30° · cos of
 * the lead angle, Dw = (2/3)(Do³ - Di³)/(Do² - Di²), Do = 0.95 across flats.
 */
export function torqueCoefficient(
  thread: Pick<Thread, 'majorMm' | 'pitchMm'>,
  head: Bearing,
  friction: Friction,
): Answer<number> {
  const outerMm = bearing.value.ofFlats * head.acrossFlatsMm;
  const wrong =
    absurd('friction in the thread of', friction.thread, frictionLimits) ??
    absurd('friction under the head of', friction.bearing, frictionLimits);
  if (wrong) return wrong;
  const noFace = !(head.holeMm > 0 && outerMm > head.holeMm);
  if (noFace) return refused(`a head of ${head.acrossFlatsMm} mm has no bearing face on a hole of ${head.holeMm} mm`);
  const { majorMm, pitchMm } = thread;
  const d2 = pitchDiameterMm(thread);
  const lead = Math.atan(pitchMm / (Math.PI * d2));
  const onFlank = Math.atan(Math.tan(radians(flank.value)) * Math.cos(lead));
  const cubes = outerMm ** 2 * outerMm - head.holeMm ** 2 * head.holeMm;
  const meanMm = (bearing.value.ofCubes * cubes) / (outerMm ** 2 - head.holeMm ** 2);
  return (pitchMm / Math.PI + (friction.thread * d2) / Math.cos(onFlank) + friction.bearing * meanMm) / (2 * majorMm);
}

/** Diameter, pitch, width across flats and hole, mm, over which the handbook averages. */
const averagedOver = cited(
  [
    [4, 0.7, 7, 4.5],
    [5, 0.8, 8, 5.5],
    [6, 1, 10, 6.6],
    [8, 1.25, 13, 9],
    [10, 1.5, 16, 11],
    [12, 1.75, 18, 13.5],
    [16, 2, 24, 17.5],
    [20, 2.5, 30, 22],
    [24, 3, 36, 26],
    [30, 3.5, 46, 33],
    [36, 4, 55, 39],
  ] as [number, number, number, number][],
  'mm',
  `${handbook}, table 3, metric coarse hexagon`,
);

/**
 * The same, averaged over the metric coarse hexagon bolts from M4 to M36: what a table of K prints.
 * Source: Machinery's Handbook, 31st edition, p. 1662, table 3.
 */
export function averageTorqueCoefficient(friction: Friction): Answer<number> {
  const each = averagedOver.value.map(([majorMm, pitchMm, acrossFlatsMm, holeMm]) =>
    torqueCoefficient({ majorMm, pitchMm }, { acrossFlatsMm, holeMm }, friction),
  );
  const refusal = each.find(isRefused);
  return refusal ?? (each as number[]).reduce((sum, one) => sum + one, 0) / each.length;
}

/** Of the lead, and of friction × diameter. */
const shortRule = cited({ ofLead: 0.159, ofFriction: 1.156 }, '–', "Machinery's Handbook, 31st edition, p. 1665");

/**
 * Torque for a load by the handbook's short rule, one friction for thread and head: T = P(0.159·l + 1.156·μ·d).
 * @returns N·m; refused: load or friction absurd
 * Source: Machinery's Handbook, 31st edition, p. 1665.
 */
export function torqueByShortRule(thread: Thread, newtons: number, friction: number): Answer<number> {
  const wrong = absurd('a load of', newtons, forceLimits) ?? absurd('a friction of', friction, frictionLimits);
  const { ofLead, ofFriction } = shortRule.value;
  return wrong ?? (newtons * (ofLead * thread.pitchMm + ofFriction * friction * thread.majorMm)) / thousand.value;
}
