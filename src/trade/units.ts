// Torque, temperature, distance and small lengths in the units a manual, a label or an odometer gives them in. What is
// typed is read here; what is computed with is newton metres, degrees Celsius, kilometres and millimetres.
import { type Answer, absurd, isRefused, refused } from './answer.ts';
import { chosenHere, cited } from './cited.ts';
import {
  fahrenheit,
  inchesPerFoot,
  kilogramsPerPound,
  metresPerMile,
  millimetresPerInch,
  standardGravity,
  ten,
  thousand,
} from './definitions.ts';

export type TorqueUnit = 'N·m' | 'daN·m' | 'kgf·m' | 'kgf·cm' | 'lbf·ft' | 'lbf·in';
export type DistanceUnit = 'km' | 'mi';

const torqueLimits = cited({ from: 0, to: 2000 }, 'N·m', chosenHere);
const temperatureLimits = cited({ from: -60, to: 400 }, '°C', chosenHere);
const distanceLimits = cited({ from: 0, to: 5_000_000 }, 'km', chosenHere);
const centimetresPerMetre = cited(100, 'cm/m', 'SI brochure, 9th edition, table 7');

const poundForceNewtons = kilogramsPerPound.value * standardGravity.value;
const inchMetres = millimetresPerInch.value / thousand.value;

const inNewtonMetres: Readonly<Record<TorqueUnit, number>> = {
  N·m: 1,
  daN·m: ten.value,
  kgf·m: standardGravity.value,
  kgf·cm: standardGravity.value / centimetresPerMetre.value,
  lbf·ft: poundForceNewtons * inchMetres * inchesPerFoot.value,
  lbf·in: poundForceNewtons * inchMetres,
};

/**
 * @param value a torque in `unit`
 * @returns newton metres, exact but for the last bit. Refused: unknown unit, negative, above 2000 N·m
 * Source: factors of NIST SP 811, 2008, appendix B.8, from the exact inch, pound and standard gravity.
 */
export function newtonMetresOf(value: number, unit: string): Answer<number> {
  const known = torqueUnit(unit);
  if (isRefused(known)) return known;
  const newtonMetres = value * inNewtonMetres[known];
  return absurd('a torque of', newtonMetres, torqueLimits) ?? newtonMetres;
}

/** The other way round: newton metres in `unit`. Refused: unknown unit. Source as `newtonMetresOf`. */
export function torqueIn(newtonMetres: number, unit: string): Answer<number> {
  const known = torqueUnit(unit);
  return isRefused(known) ? known : newtonMetres / inNewtonMetres[known];
}

/** Spellings: points, spaces and dashes are dropped first, and letters made small. */
const torqueSpellings: Readonly<Record<string, TorqueUnit>> = {
  nm: 'N·m',
  mn: 'N·m',
  newtonmetre: 'N·m',
  newtonmetres: 'N·m',
  danm: 'daN·m',
  mdan: 'daN·m',
  kgfm: 'kgf·m',
  kgm: 'kgf·m',
  mkg: 'kgf·m',
  mkp: 'kgf·m',
  kpm: 'kgf·m',
  kgfcm: 'kgf·cm',
  kgcm: 'kgf·cm',
  cmkg: 'kgf·cm',
  lbfft: 'lbf·ft',
  lbft: 'lbf·ft',
  ftlb: 'lbf·ft',
  ftlbs: 'lbf·ft',
  lbsft: 'lbf·ft',
  ftlbf: 'lbf·ft',
  footpounds: 'lbf·ft',
  lbfin: 'lbf·in',
  lbin: 'lbf·in',
  inlb: 'lbf·in',
  inlbs: 'lbf·in',
  lbsin: 'lbf·in',
  inlbf: 'lbf·in',
  inchpounds: 'lbf·in',
};

function torqueUnit(written: string): Answer<TorqueUnit> {
  const plain = written.toLowerCase().replace(/[\s.·⋅*\-_]/g, '');
  // A name every object has is no unit.
  const known = Object.hasOwn(torqueSpellings, plain) ? torqueSpellings[plain] : undefined;
  return known ?? refused(`"${written}" is no unit of torque: N·m, kgf·m, lbf·ft, lbf·in`);
}

/** "25 Nm", "18.5 lb-ft", "250kgf.cm"; a bare number is in `bare`. Answers newton metres. */
export function readTorque(text: string, bare: TorqueUnit = 'N·m'): Answer<number> {
  const [value, unit] = apart(text);
  if (value === undefined) return refused(`"${text}" is no torque: a figure and its unit, like 25 Nm`);
  return newtonMetresOf(value, unit === '' ? bare : unit);
}

/** °C from °F. Source: NIST SP 811, 2008, appendix B.8, exact. */
export const celsiusFromFahrenheit = (degrees: number): number =>
  (degrees - fahrenheit.value.atFreezing) / fahrenheit.value.perCelsius;
/** °F from °C. Source: NIST SP 811, 2008, appendix B.8, exact. */
export const fahrenheitFromCelsius = (celsius: number): number =>
  celsius * fahrenheit.value.perCelsius + fahrenheit.value.atFreezing;

/** "10", "10 °C", "50F": answers °C; a bare number is in `bare`. Refused: another unit, below -60 °C, above 400 °C. */
export function readTemperature(text: string, bare: 'C' | 'F' = 'C'): Answer<number> {
  const [value, unit] = apart(text);
  if (value === undefined) return refused(`"${text}" is no temperature: a figure, and F where it is Fahrenheit`);
  const letter = unit.toLowerCase().replace(/[°º.]|deg(rees)?|elsius|elcius|ahrenheit|\s/g, '');
  if (letter !== '' && letter !== 'c' && letter !== 'f')
    return refused(`"${unit}" is no unit of temperature: °C or °F`);
  const celsius = (letter || bare.toLowerCase()) === 'f' ? celsiusFromFahrenheit(value) : value;
  return absurd('a temperature of', celsius, temperatureLimits) ?? celsius;
}

/** Kilometres from miles and kilometres. Source: NIST SP 811, 2008, appendix B.8, exact. Refused: unknown unit, negative. */
export function kilometresOf(distance: number, unit: string): Answer<number> {
  const known = distanceUnit(unit);
  if (isRefused(known)) return known;
  const kilometres = known === 'km' ? distance : (distance * metresPerMile.value) / thousand.value;
  return absurd('a distance of', kilometres, distanceLimits) ?? kilometres;
}

/** Kilometres in `unit`. */
export const distanceIn = (kilometres: number, unit: DistanceUnit): number =>
  unit === 'km' ? kilometres : (kilometres * thousand.value) / metresPerMile.value;

function distanceUnit(written: string): Answer<DistanceUnit> {
  const plain = written.toLowerCase().replace(/[\s.]/g, '');
  if (/^(km|kms|kilometres?|kilometers?)$/.test(plain)) return 'km';
  if (/^(mi|mile|miles)$/.test(plain)) return 'mi';
  return refused(`"${written}" is no unit of distance: km or mi`);
}

/** "60,000 miles", "90 000 km": the figure as typed, and its unit. A unit must be said. */
export function readDistance(text: string): Answer<{ distance: number; unit: DistanceUnit }> {
  const [distance, unit] = apart(text.replace(/(\d)[ ,'](?=\d{3}(?!\d))/g, '$1'));
  if (distance === undefined) return refused(`"${text}" is no distance: a figure and its unit, like 60000 mi`);
  const known = distanceUnit(unit);
  if (isRefused(known)) return known;
  const kilometres = kilometresOf(distance, known);
  return isRefused(kilometres) ? kilometres : { distance, unit: known };
}

/** Millimetres from mm, cm, inches and feet. Source: NIST SP 811, 2008, appendix B.8, exact. Refused: unknown unit. */
export function millimetresOf(length: number, unit: string): Answer<number> {
  const plain = unit.toLowerCase().replace(/[\s.]/g, '');
  if (plain === 'mm') return length;
  if (plain === 'cm') return length * ten.value;
  if (plain === 'in' || plain === '"') return length * millimetresPerInch.value;
  if (plain === 'ft') return length * millimetresPerInch.value * inchesPerFoot.value;
  return refused(`"${unit}" is no unit of length: mm, cm, in, ft`);
}

/** A figure and what stands behind it. */
function apart(text: string): [number | undefined, string] {
  const parts = /^\s*([-+]?\d+(?:[.,]\d+)?|[-+]?[.,]\d+)\s*(.*?)\s*$/.exec(text);
  return parts ? [Number((parts[1] as string).replace(',', '.')), parts[2] as string] : [undefined, ''];
}
