// How the sheet words single facts: times, methods, conditions, counts. Everything it writes of its own is ASCII.
import type { Method } from '../job/spec.ts';
import { civilText, dateText, timeOfDayText, weekdayText } from '../trade/civil-time.ts';
import { metric, temperatureFigure, torqueFigure, type Units } from '../trade/units-shown.ts';
import type { ConditionsFact } from './proof-facts.ts';
import type { Moment } from './reading.ts';

type Shown = Pick<Moment, 'atMs' | 'zoneMin'>;
/** "2026-11-25 14:20" */
export const timeText = ({ atMs, zoneMin }: Shown): string => civilText(atMs, zoneMin);
/** "Wednesday 2026-11-25 14:20" */
export const dayText = ({ atMs, zoneMin }: Shown): string => weekdayText(atMs, zoneMin);
/** "2026-11-25" */
export const dateOf = ({ atMs, zoneMin }: Shown): string => dateText(atMs, zoneMin);
/** "14:20" */
export const clockText = ({ atMs, zoneMin }: Shown): string => timeOfDayText(atMs, zoneMin);
/** "2026-11-25 14:20 to 14:31": the first and the last of some moments in the order of their lines. */
export function spanText(moments: readonly Moment[]): string {
  const ordered = moments.toSorted((a, b) => a.n - b.n);
  const [first, last] = [ordered[0], ordered.at(-1)];
  if (!first || !last) return '';
  if (timeText(first) === timeText(last)) return timeText(first);
  const sameDay = dateText(first.atMs, first.zoneMin) === dateText(last.atMs, last.zoneMin);
  return `${timeText(first)} to ${sameDay ? timeOfDayText(last.atMs, last.zoneMin) : timeText(last)}`;
}

export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
export const by = (who: string | undefined): string => (who ? ` by ${who}` : '');
export const why = (because: string | undefined): string => (because ? `: ${because}` : '');
/** Up to two decimals, none that are not needed. */
export const figure = (value: number): string => String(Math.round(value * 100) / 100);

const manners = {
  torque: 'torque',
  'torque-angle': 'torque then angle',
  shoulder: 'to the shoulder, then stop',
  sleeve: 'to the sleeve, then stop',
  hand: 'by hand',
  clamp: 'clamp',
  castle: 'castle nut and new pin',
} as const;

/** "torque then angle: 30 Nm, 90 deg, 90 deg; with oil" */
export function methodText(method: Method, units: Units = metric): string {
  const torque = (newtonMetres: number) => torqueWords(newtonMetres, units);
  const stages = (method.stages ?? []).map((stage) => {
    if ('newtonMetres' in stage) return torque(stage.newtonMetres);
    if ('degrees' in stage) return `${figure(stage.degrees)} deg`;
    if ('loosenDegrees' in stage) return `loosen ${figure(stage.loosenDegrees)} deg`;
    const { acceptFromNewtonMetres: from, acceptToNewtonMetres: to } = stage;
    return to === undefined ? `accept from ${torque(from)}` : `accept ${torqueFigure(from, units)} to ${torque(to)}`;
  });
  const values = [...(method.newtonMetres === undefined ? [] : [torque(method.newtonMetres)]), ...stages];
  const how = values.length > 0 ? `${manners[method.by]}: ${values.join(', ')}` : manners[method.by];
  if (!method.with) return how;
  return `${how}; ${method.with === 'dry' ? 'dry' : `with ${method.with}`}`;
}

/** O4: beside a method that is brought up to a figure. */
export const figureNotNoted = 'figure not noted';
export const notTheFigure = ', not the figure';

/** "40 Nm", "29.5 lbf ft". */
export const torqueWords = (newtonMetres: number, units: Units = metric): string =>
  `${torqueFigure(newtonMetres, units)} ${units.torque === 'N m' ? 'Nm' : units.torque}`;

export const conditionsText = (
  { celsius, humidityPct }: Pick<ConditionsFact, 'celsius' | 'humidityPct'>,
  units: Units = metric,
): string =>
  `${temperatureFigure(celsius, units)} deg ${units.temperature}, ${humidityPct === undefined ? 'humidity unknown' : `${figure(humidityPct)} % humidity`}`;

/** "off by 1 tooth", "off by 2 teeth backwards", "on" */
export function teethText(teethOff: number): string {
  if (teethOff === 0) return 'on';
  return `off by ${counted(Math.abs(teethOff), 'tooth', 'teeth')}${teethOff < 0 ? ' backwards' : ''}`;
}

/** "3 h 05 min" */
export const minutesText = (minutes: number): string =>
  minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;

export const distanceText = (distance: number, unit: string): string => `${figure(distance)} ${unit}`;

/** "the owner was told by telephone, 2026-11-25 14:20 by Ola, and said: not this year" */
export const toldText = (told: Moment & { how?: string; said?: string }): string =>
  `the owner was told${told.how ? ` ${told.how},` : ''} ${timeText(told)}${by(told.who)}${told.said ? `, and said: ${told.said}` : ''}`;

export const cautions = [
  "This sheet says what was called, not what is right: torque, angles and order come from the maker's manual.",
  'Local codes and licensed practice come first, whatever is written here.',
] as const;
export const declinedCaution =
  'CAUTION: this is a place that steering, braking, wheels or the engine hang on, and it was left as it is on the ' +
  "owner's word. Have it put right before it is relied on.";
