// Units: against the exact factors in print, an independent library, and the triples makers print.
import { unit as oracle } from 'mathjs';
import {
  celsiusFromFahrenheit,
  distanceIn,
  fahrenheitFromCelsius,
  kilometresOf,
  millimetresOf,
  newtonMetresOf,
  readTorque,
  torqueIn,
} from '../../src/trade/units.ts';
import { from } from './published.ts';

const nist = from('units', 'NIST SP 811, 2008 edition', 'derived');
const mathjs = from('units', 'mathjs 15, units (another implementation)', 'derived');
const manuals = from('units', 'torques printed in three units in a maker’s manual', 'seen');

export const units = [
  ...nist(newtonMetresOf, 'appendix B.8', { part: 1e-13 }, [
    ['1 lbf·ft in N·m', newtonMetresOf(1, 'lb-ft'), 1.3558179483314],
    ['1 lbf·in in N·m', newtonMetresOf(1, 'in-lb'), 0.1129848290276167],
    ['1 kgf·m in N·m', newtonMetresOf(1, 'kgf·m'), 9.80665],
  ]),
  ...nist(celsiusFromFahrenheit, 'appendix B.8', { by: 1e-12 }, [
    ['212 °F in °C', celsiusFromFahrenheit(212), 100],
    ['32 °F in °C', celsiusFromFahrenheit(32), 0],
    ['-40 °F in °C', celsiusFromFahrenheit(-40), -40],
  ]),
  ...nist(kilometresOf, 'appendix B.8', { part: 1e-13 }, [
    ['60 000 mi in km', kilometresOf(60_000, 'miles'), 96_560.64],
  ]),
  ...nist(millimetresOf, 'appendix B.8', { part: 1e-13 }, [
    ['1 in in mm', millimetresOf(1, 'in'), 25.4],
    ['1 ft in mm', millimetresOf(1, 'ft'), 304.8],
  ]),
  ...mathjs(newtonMetresOf, 'lbf, ft, in, kgf', { part: 1e-13 }, [
    ['41 lbf·ft in N·m', newtonMetresOf(41, 'ft lb'), oracle('41 lbf ft').toNumber('N m')],
    ['95 lbf·in in N·m', newtonMetresOf(95, 'in.lb'), oracle('95 lbf in').toNumber('N m')],
    ['11.5 kgf·m in N·m', newtonMetresOf(11.5, 'mkg'), oracle('11.5 kgf m').toNumber('N m')],
    ['250 kgf·cm in N·m', newtonMetresOf(250, 'kgf.cm'), oracle('250 kgf cm').toNumber('N m')],
  ]),
  ...mathjs(torqueIn, 'lbf, ft, in, kgf', { part: 1e-13 }, [
    ['120 N·m in lbf·ft', torqueIn(120, 'lbf·ft'), oracle('120 N m').toNumber('lbf ft')],
    ['9 N·m in lbf·in', torqueIn(9, 'lbf·in'), oracle('9 N m').toNumber('lbf in')],
  ]),
  ...mathjs(fahrenheitFromCelsius, 'degC, degF', { by: 1e-9 }, [
    ['23 °C in °F', fahrenheitFromCelsius(23), oracle('23 degC').toNumber('degF')],
    ['5 °C in °F', fahrenheitFromCelsius(5), oracle('5 degC').toNumber('degF')],
  ]),
  ...mathjs(distanceIn, 'mile', { part: 1e-13 }, [
    ['150 000 km in mi', distanceIn(150_000, 'mi'), oracle('150000 km').toNumber('mile')],
  ]),
  // Rounded by whoever printed them, so up to 5 % apart.
  ...manuals(readTorque, 'cylinder head, camshaft housing', { part: 0.05 }, [
    ['2.0 kgf·m beside 20 N·m', readTorque('2.0 kgf-m'), 20],
    ['15.0 lbf·ft beside 20 N·m', readTorque('15.0 lbf-ft'), 20],
    ['4.1 kgf·m beside 40 N·m', readTorque('4.1 kgf-m'), 40],
    ['29.5 lbf·ft beside 40 N·m', readTorque('29.5 lbf-ft'), 40],
    ['8.5 lbf·ft beside 11 N·m', readTorque('8.5 lbf-ft'), 11],
    ['62 lbf·in beside 7 N·m', readTorque('62 lb in'), 7],
    ['18.5 lbf·ft beside 25 N·m', readTorque('18.5 lbf-ft'), 25],
  ]),
];
