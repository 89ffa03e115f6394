// The units a workshop reads and speaks in: of a figure that is typed without its own, and of figures that are shown. What
// is computed with and written down stays newton metres, degrees Celsius, and a distance with its unit.
import { figure } from './answer.ts';
import { type DistanceUnit, fahrenheitFromCelsius, torqueIn } from './units.ts';

/** Spelled as they are typed on any keyboard. */
export const temperatureUnits = ['C', 'F'] as const;
export const torqueUnits = ['N m', 'lbf ft'] as const;
export const distanceUnits = ['km', 'mi'] as const satisfies readonly DistanceUnit[];
export type Units = {
  distance: DistanceUnit;
  temperature: (typeof temperatureUnits)[number];
  torque: (typeof torqueUnits)[number];
};
export const metric: Units = { distance: 'km', temperature: 'C', torque: 'N m' };

export const torqueUnitOf = ({ torque }: Units): 'N·m' | 'lbf·ft' => (torque === 'N m' ? 'N·m' : 'lbf·ft');
/** Newton metres as the figure of these units: to a tenth where they are turned into another. */
export function torqueFigure(newtonMetres: number, units: Units): string {
  if (units.torque === 'N m') return figure(newtonMetres);
  const turned = torqueIn(newtonMetres, torqueUnitOf(units));
  return typeof turned === 'number' ? figure(Number(turned.toFixed(1))) : figure(newtonMetres);
}
/** "40 N·m", "29.5 lbf·ft". */
export const torqueText = (newtonMetres: number, units: Units): string =>
  `${torqueFigure(newtonMetres, units)} ${torqueUnitOf(units)}`;

export const temperatureFigure = (celsius: number, { temperature }: Units): string =>
  temperature === 'C' ? String(celsius) : String(Number(fahrenheitFromCelsius(celsius).toFixed(1)));
/** "20 °C", "68 °F". */
export const temperatureText = (celsius: number, units: Units): string =>
  `${temperatureFigure(celsius, units)} °${units.temperature}`;
