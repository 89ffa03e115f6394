// What is exact because it was defined so: inches, pounds, turns, the calendar. Measured or agreed figures live with
// their topics.
import { cited } from './cited.ts';

const nist = 'NIST SP 811, 2008 edition, appendix B.8, exact';
const decimal = 'decimal notation';

export const millimetresPerInch = cited(25.4, 'mm/in', nist);
export const inchesPerFoot = cited(12, 'in/ft', nist);
export const kilogramsPerPound = cited(0.45359237, 'kg/lb', nist);
/** Of a kilogram-force or pound-force. */
export const standardGravity = cited(
  9.80665,
  'm/s²',
  'NIST SP 811, 2008 edition, appendix B.8: third General Conference 1901',
);
export const metresPerMile = cited(1609.344, 'm/mi', nist);
export const fahrenheit = cited(
  { perCelsius: 1.8, atFreezing: 32 },
  '°F',
  'NIST SP 811, 2008 edition, appendix B.8: t/°C = (t/°F - 32)/1.8',
);

export const thousand = cited(1000, '–', decimal);
export const hundred = cited(100, '–', decimal);
export const ten = cited(10, '–', decimal);

export const degreesPerTurn = cited(360, '°/turn', 'ISO 80000-3:2019, plane angle');
export const degreesPerHalfTurn = cited(180, '°', 'ISO 80000-3:2019, plane angle');

const clock = 'ISO 8601-1:2019, terms';
export const minutesPerHour = cited(60, 'min/h', clock);
export const minutesPerDay = cited(1440, 'min/d', clock);
export const millisecondsPerMinute = cited(60_000, 'ms/min', 'ISO 80000-3:2019, duration');
export const millisecondsPerHour = cited(3_600_000, 'ms/h', 'ISO 80000-3:2019, duration');
export const daysPerWeek = cited(7, 'd', clock);
export const monthsPerYear = cited(12, '–', clock);

export const radians = (degrees: number): number => (degrees / degreesPerHalfTurn.value) * Math.PI;
