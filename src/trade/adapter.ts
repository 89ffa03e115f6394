// What to set on a torque wrench when an adapter, a crow's foot say, stands between wrench and fastener. Only for
// wrenches read at their own square; extensions along the axis change nothing.
import { type Answer, absurd, refused } from './answer.ts';
import { chosenHere, cited } from './cited.ts';
import { radians } from './definitions.ts';

export type Adapter = {
  /** From the middle of the grip to the middle of the square, mm. */
  wrenchLengthMm: number;
  /** From the middle of the square to the middle of the fastener, mm. */
  adapterLengthMm: number;
  /** Between wrench and adapter: 0 straight out, 90 square to it, 180 folded back towards the hand. */
  angleDegrees?: number;
};

const wrenchLimits = cited({ from: 50, to: 2500 }, 'mm', chosenHere);
const adapterLimits = cited({ from: 0, to: 1000 }, 'mm', chosenHere);
const angleLimits = cited({ from: 0, to: 180 }, '°', 'the angle between two lines');
const torqueLimits = cited({ from: 0.1, to: 2000 }, 'N·m', chosenHere);
/** A hand that pulls this near above the fastener pulls sideways more than round. */
const leastLever = cited(0.2, 'of the wrench', chosenHere);

/** Lever of the hand about the fastener, as a part of that about the square. */
function leverPart({ wrenchLengthMm, adapterLengthMm, angleDegrees = 0 }: Adapter): Answer<number> {
  const wrong =
    absurd('a wrench of', wrenchLengthMm, wrenchLimits) ??
    absurd('an adapter of', adapterLengthMm, adapterLimits) ??
    absurd('an angle of', angleDegrees, angleLimits);
  if (wrong) return wrong;
  const part = (wrenchLengthMm + adapterLengthMm * Math.cos(radians(angleDegrees))) / wrenchLengthMm;
  return part >= leastLever.value
    ? part
    : refused(`${adapterLengthMm} mm folded back on a wrench of ${wrenchLengthMm} mm: the hand is over the fastener`);
}

/**
 * What to set for a torque at the fastener: T · L / (L + E · cos a).
 * @param newtonMetres wanted at the fastener, N·m
 * @returns N·m to set. Refused: lengths, angle or torque absurd, the adapter folded back nearly as far as the hand
 * Source: L/(L + E) NAVEDTRA 14315 and aircraft maintenance manuals; at an angle, the lever's projection.
 */
export function torqueSettingFromAdapter(newtonMetres: number, adapter: Adapter): Answer<number> {
  const wrong = absurd('a torque of', newtonMetres, torqueLimits);
  if (wrong) return wrong;
  const part = leverPart(adapter);
  return typeof part === 'number' ? newtonMetres / part : part;
}

/** The other way round: what reaches the fastener at a setting, N·m. Refused and source as above. */
export function torqueAtFastenerFromSetting(settingNewtonMetres: number, adapter: Adapter): Answer<number> {
  const wrong = absurd('a setting of', settingNewtonMetres, torqueLimits);
  if (wrong) return wrong;
  const part = leverPart(adapter);
  return typeof part === 'number' ? settingNewtonMetres * part : part;
}
