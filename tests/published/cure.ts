// Cure: vapour pressures, and what air makes of a label's time.
import { createRequire } from 'node:module';
import { cureDepthMm, cureFactorIn, cureForecast } from '../../src/trade/cure.ts';
import { moistureCureFactor, saturationPascals } from '../../src/trade/vapour.ts';
import { from } from './published.ts';
import { sure } from './trade.ts';

// No types come with it, and it wants to be told its units.
const oracle = createRequire(import.meta.url)('psychrolib') as {
  SI: number;
  SetUnitSystem(system: number): void;
  GetSatVapPres(celsius: number): number;
  GetVapPresFromRelHum(celsius: number, humidity: number): number;
};
oracle.SetUnitSystem(oracle.SI);

const topic = 'cure';
const label = { kind: 'moisture', labelCelsius: 23, labelHumidityPct: 50, fullHours: 24 } as const;
const factor = (celsius: number, humidityPct: number) => sure(cureFactorIn(label, { celsius, humidityPct })).factor;
const hour = 3_600_000;

/** Kelvin and back are not the point: the Magnus form, in °C. */
const magnus = (celsius: number) => 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
const celsiuses = [0, 5, 10, 15, 20, 23, 25, 30, 40];

export const cure = [
  ...from(topic, 'IAPWS-IF97', 'derived')(
    saturationPascals,
    'region 4, saturation pressure, Pa',
    { part: 0.0005 },
    (
      [
        [0, 611.2],
        [5, 872.6],
        [10, 1228.2],
        [15, 1705.7],
        [20, 2339.2],
        [23, 2810.9],
        [25, 3169.7],
        [30, 4246.7],
        [40, 7384.4],
      ] as const
    ).map(([celsius, pascals]) => [`${celsius} °C`, saturationPascals(celsius), pascals]),
  ),
  ...from(topic, 'ASHRAE Handbook, Fundamentals 2017', 'seen')(
    saturationPascals,
    'chapter 1, table 3, Pa',
    { part: 0.0005 },
    [
      ['5 °C', saturationPascals(5), 872.6],
      ['25 °C', saturationPascals(25), 3169.7],
    ],
  ),
  ...from(topic, 'psychrolib 1.1 (another implementation, ASHRAE 2017)', 'derived')(
    saturationPascals,
    'GetSatVapPres, Pa',
    { part: 0.0006 },
    celsiuses.map((celsius) => [`${celsius} °C`, saturationPascals(celsius), oracle.GetSatVapPres(celsius)]),
  ),
  ...from(topic, 'WMO-No. 8, Magnus form 17.62 / 243.12', 'derived')(
    saturationPascals,
    'saturation pressure, Pa',
    { part: 0.0035 },
    celsiuses.map((celsius) => [`${celsius} °C`, saturationPascals(celsius), magnus(celsius)]),
  ),
  ...from(topic, 'J. Comyn, Int. J. Adhesion & Adhesives 18 (1998) 247-253, with IAPWS-IF97', 'derived')(
    cureFactorIn,
    'time as 1/p, label at 23 °C and 50 % (ISO 291)',
    { by: 0.0051 },
    [
      ['5 °C, 50 %', factor(5, 50), 3.22],
      ['10 °C, 50 %', factor(10, 50), 2.29],
      ['10 °C, 40 %', factor(10, 40), 2.86],
      ['15 °C, 50 %', factor(15, 50), 1.65],
      ['20 °C, 50 %', factor(20, 50), 1.2],
      ['23 °C, 30 %', factor(23, 30), 1.67],
      ['30 °C, 50 % would be 0.66: warmer never shortens', factor(30, 50), 1],
    ],
  ),
  ...from(topic, 'psychrolib 1.1 (another implementation, ASHRAE 2017)', 'derived')(
    moistureCureFactor,
    'GetVapPresFromRelHum, label over bench',
    { part: 0.001 },
    (
      [
        [6, 45],
        [12, 35],
        [18, 45],
        [21, 30],
      ] as const
    ).map(([celsius, humidityPct]) => [
      `${celsius} °C, ${humidityPct} %`,
      moistureCureFactor({ celsius, humidityPct }, { celsius: 23, humidityPct: 50 }),
      oracle.GetVapPresFromRelHum(23, 0.5) / oracle.GetVapPresFromRelHum(celsius, humidityPct / 100),
    ]),
  ),
  ...from(topic, 'J. Comyn, Int. J. Adhesion & Adhesives 18 (1998) 247-253', 'derived')(
    cureDepthMm,
    'depth goes with the root of time',
    { by: 0.005 },
    [
      ['7.5 mm in 7 days: mm in 24 h', cureDepthMm({ depthMm: 7.5, hours: 168 }, 24), 2.83],
      ['3 mm in 24 h: mm in 96 h', cureDepthMm({ depthMm: 3, hours: 24 }, 96), 6],
    ],
  ),
  ...from(topic, 'common practice, no source', 'practice')(cureForecast, '24 h as on the label', 'exact', [
    [
      '24 h at 23 °C, 50 %: ready after, h',
      (sure(cureForecast(label, 24, 0, [{ atMs: 0, air: { celsius: 23, humidityPct: 50 } }], 0)).readyAtMs as number) /
        hour,
      24,
    ],
  ]),
  ...from(topic, 'J. Comyn, Int. J. Adhesion & Adhesives 18 (1998) 247-253, with IAPWS-IF97', 'derived')(
    cureForecast,
    'time as 1/p, hours under each air added up',
    { by: 0.02 },
    [
      [
        '12 h at 23 °C 50 %, then 10 °C 50 %: ready after, h',
        (sure(
          cureForecast(
            label,
            24,
            0,
            [
              { atMs: 0, air: { celsius: 23, humidityPct: 50 } },
              { atMs: 12 * hour, air: { celsius: 10, humidityPct: 50 } },
            ],
            12 * hour,
          ),
        ).readyAtMs as number) / hour,
        12 + (12 * 2810.9) / 1228.2,
      ],
    ],
  ),
];
