// Water vapour in air, for what cures by it.

/**
 * Saturation vapour pressure over water.
 * @param celsius air temperature, °C, -40 to 60
 * @returns Pa
 * Source: A. L. Buck, CR-1A hygrometer manual, Buck Research 1996 (revision of J. Appl. Meteorol. 20, 1981);
 * within 0.05 % of IAPWS-IF97 between 0 and 40 °C.
 */
export function saturationPascals(celsius: number): number {
  return 611.21 * Math.exp((18.678 - celsius / 234.5) * (celsius / (257.14 + celsius)));
}

/** Assumed where the air's humidity is not known, %. Rule S1. */
export const unknownHumidityPct = 40;

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
