// Figures that may be typed with their unit or without: without one they are in the units of the workshop. What comes out
// is degrees Celsius and newton metres; a distance keeps its unit, which is a slot of its own.
import { type Answer, isRefused } from '../trade/answer.ts';
import { readTemperature, readTorque } from '../trade/units.ts';
import { metric, temperatureFigure, torqueFigure, torqueUnitOf, type Units } from '../trade/units-shown.ts';
import type { Reading, Token } from './form.ts';

const mostWords = 3;
/** A figure alone or with the words of its unit, the longest reading first. */
function measured(rest: readonly Token[], what: string, read: (text: string) => Answer<number>): Reading {
  if (rest.length === 0) return { why: `${what} is missing` };
  const lengths = Array.from({ length: Math.min(mostWords, rest.length) }, (_, i) => i + 1).reverse();
  const found = lengths.flatMap((used) => {
    const text = rest.slice(0, used).map((token) => token.text);
    const value = read(text.join(' '));
    return isRefused(value) ? [] : [{ value: Number(value.toFixed(2)), used }];
  });
  if (found.length > 0) return found;
  const alone = read(rest[0]?.text ?? '');
  return { why: isRefused(alone) ? alone.refused : `"${rest[0]?.text}" is no ${what}` };
}
export const readTemperatureIn = (units: Units = metric, rest: readonly Token[]): Reading =>
  measured(rest, 'a temperature', (text) => readTemperature(text, units.temperature));
export const readTorqueIn = (units: Units = metric, rest: readonly Token[]): Reading =>
  measured(rest, 'a torque', (text) => readTorque(text, torqueUnitOf(units)));

/** Hours, as a label says them: "6", "6 h", "40 min". The longer reading first. */
export function readHours(rest: readonly Token[]): Reading {
  const [figure, unit] = rest.map((token) => token.text);
  if (figure === undefined) return { why: 'the hours are missing' };
  const [, said, joined = ''] = /^(\d+(?:[.,]\d+)?|[.,]\d+) ?([a-z]*)$/i.exec(figure) ?? [];
  if (said === undefined || (joined !== '' && perHour(joined) === undefined))
    return { why: `"${figure}" is no time, as "6", "6 h" or "40 min"` };
  const value = (per: number) => Number((Number(said.replace(',', '.')) / per).toFixed(4));
  if (joined !== '') return [{ value: value(perHour(joined) ?? 1), used: 1 }];
  const apart = perHour(unit ?? '');
  return [...(apart === undefined ? [] : [{ value: value(apart), used: 2 }]), { value: value(1), used: 1 }];
}
const perHour = (unit: string): number | undefined =>
  /^(h|hrs?|hours?)$/i.test(unit) ? 1 : /^(min|mins|minutes?)$/i.test(unit) ? 60 : undefined;

/** Litres, in whatever units the workshop reads the rest: "6.5", "6.5 l", "6.5 litres". Nothing comes after them. */
export function readLitres(rest: readonly Token[]): Reading {
  const text = rest.map((token) => token.text).join(' ');
  if (text === '') return { why: 'the litres are missing' };
  const [, said, unit = ''] = /^(\d+(?:[.,]\d+)?|[.,]\d+) ?([a-z]*)$/i.exec(text) ?? [];
  if (said === undefined || (unit !== '' && !isLitres(unit))) return { why: `"${text}" is not in litres, as "6.5 l"` };
  return [{ value: Number(said.replace(',', '.')), used: rest.length }];
}
export const isLitres = (unit: string): boolean => /^(l|ltrs?|lit(re|er)s?)$/i.test(unit);

/** A value in words that its reader takes; undefined where the type is none of these. */
export function showMeasure(units: Units = metric, type: string, value: number): string | undefined {
  if (type === 'temperature') return temperatureFigure(value, units);
  return type === 'torque' ? torqueFigure(value, units) : undefined;
}
/** How it is asked for. */
export function measureAsked(units: Units = metric, type: string): string | undefined {
  if (type === 'temperature') return `how many \u00b0${units.temperature}, as ${units.temperature === 'F' ? 64 : 18}`;
  if (type === 'torque') return `how many ${torqueUnitOf(units)}`;
  if (type === 'litres') return 'how many litres, as 6.5';
  return type === 'distance' ? `how many ${units.distance}` : undefined;
}
