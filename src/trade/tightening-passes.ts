// In how many passes an area is brought up: rising for flanges under pressure, snug and final for everything small. Which
// passes an area really has is the maker's or the plan's; this is for where nobody said.
import { type Answer, absurd } from './answer.ts';
import { chosenHere, cited, commonPractice } from './cited.ts';
import { hundred } from './definitions.ts';

export type TighteningPass = {
  name: string;
  /** Of the final torque; undefined by hand. */
  percent?: number;
  newtonMetres?: number;
  /** Once round in order of the holes, not crosswise. */
  around?: true;
};

const underPressure = cited(
  [30, 60, 100],
  '% of the final torque',
  'ASME PCC-1, legacy method: snug, 30, 60, 100 %, then once round at 100 %',
);
/** Below it steps cannot be told apart on a wrench. */
const worthSteps = cited(12, 'N·m', commonPractice);
const torqueLimits = cited({ from: 0.5, to: 2000 }, 'N·m', chosenHere);
/** A closing round would turn these on. */
const noClosingRound: ReadonlySet<string> = new Set(['torque-angle', 'shoulder', 'sleeve']);
const noTorque: ReadonlySet<string> = new Set(['shoulder', 'sleeve', 'hand', 'clamp']);

/**
 * The passes of an area.
 * @param what final torque in N·m, whether the joint is a flange under pressure, and how its fasteners are brought up
 * @returns snug and final; for a flange under pressure snug, 30, 60, 100 % and a closing round, which never touches
 * torque-and-angle or shouldered fasteners. Refused: a torque outside 0.5 to 2000 N·m
 * Source: ASME PCC-1, legacy method; that covers of 8 to 10 N·m get none of it is common practice, no source.
 */
export function tighteningPasses({
  newtonMetres,
  underPressure: pressed = false,
  by = 'torque',
}: {
  newtonMetres?: number;
  underPressure?: boolean;
  by?: string;
}): Answer<TighteningPass[]> {
  const wrong = newtonMetres === undefined ? undefined : absurd('a torque of', newtonMetres, torqueLimits);
  if (wrong) return wrong;
  const snug: TighteningPass = { name: 'snug' };
  const rising = pressed && newtonMetres !== undefined && newtonMetres >= worthSteps.value && !noTorque.has(by);
  if (!rising)
    return [snug, { name: 'final', ...(newtonMetres !== undefined && !noTorque.has(by) && { newtonMetres }) }];
  const steps = underPressure.value.map(
    (percent): TighteningPass => ({
      name: `${percent} %`,
      percent,
      newtonMetres: (newtonMetres * percent) / hundred.value,
    }),
  );
  return noClosingRound.has(by)
    ? [snug, ...steps]
    : [snug, ...steps, { name: 'once round', percent: hundred.value, newtonMetres, around: true }];
}
