// Water vapour in air, for what cures by it.
import { cited } from './cited.ts';

/** Pa, and °C three times: p = a · exp((b - t/d) · t/(c + t)). */
const buck = cited(
  { a: 611.21, b: 18.678, c: 257.14, d: 234.5 },
  'Pa, –, °C, °C',
  'A. L. Buck, CR-1A hygrometer manual, Buck Research 1996 (revision of J. Appl. Meteorol. 20, 1981)',
);

/**
 * Saturation vapour pressure over water.
 * @param celsius air temperature, °C, -40 to 60
 * @returns Pa
 * Source: A. L. Buck, CR-1A hygrometer manual, Buck Research 1996 (revision of J. Appl. Meteorol. 20, 1981);
 * within 0.05 % of IAPWS-IF97 between 0 and 40 °C.
 */
export function saturationPascals(celsius: number): number {
  const { a, b, c, d } = buck.value;
  return a * Math.exp((b - celsius / d) * (celsius / (c + celsius)));
}

/** Assumed where the air's humidity is not known, %. Rule S1. */
export const unknownHumidityPct: number = cited(40, '%', 'rule S1 of this program: a dry workshop').value;

/** The air in which times on a label hold where the label says nothing else. */
export const standardAtmosphere = cited({ celsius: 23, humidityPct: 50 }, '°C, %', 'ISO 291:2008, table 1');

/**
 * How many times as long a moisture-curing product takes as at its label's conditions; never under 1.
 * Warmer or wetter than the label does not shorten, nor make up for the other being worse.
 * @param bench, label °C and % relative humidity
 * Source: at equal depth of cure, time goes with 1/p (J. Comyn, Int. J. Adhesion & Adhesives 18 (1998) 247-253).
 */
export function moistureCureFactor(
  bench: { celsius: number; humidityPct: number },
  label: { celsius: number; humidityPct: number },
): number {
  const celsius = Math.min(bench.celsius, label.celsius);
  const humidityPct = Math.min(bench.humidityPct, label.humidityPct);
  if (humidityPct <= 0) return Number.POSITIVE_INFINITY;
  const pressure = (t: number, rh: number) => rh * saturationPascals(t);
  return pressure(label.celsius, label.humidityPct) / pressure(celsius, humidityPct);
}
