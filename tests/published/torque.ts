// Torque: strength by class, proof loads, torque coefficients, adapters and stages.
import { torqueAtFastenerFromSetting, torqueSettingFromAdapter } from '../../src/trade/adapter.ts';
import {
  preloadFromTorque,
  proofLoadNewtons,
  torqueCoefficients,
  torqueForPreload,
  usualTorque,
} from '../../src/trade/preload.ts';
import { nominalStrength, proofStressMPa } from '../../src/trade/property-class.ts';
import { averageTorqueCoefficient, torqueByShortRule } from '../../src/trade/torque-coefficient.ts';
import { judgeTorque } from '../../src/trade/torque-judged.ts';
import { degreesAfterTorque, readStages, stagesText } from '../../src/trade/torque-stages.ts';
import { newtonMetresOf, torqueIn } from '../../src/trade/units.ts';
import { from } from './published.ts';
import { sure, thread } from './trade.ts';

const topic = 'torque';
const seen = (source: string) => from(topic, source, 'seen');
const derived = (source: string) => from(topic, source, 'derived');

const iso898 = seen('ISO 898-1:2013');
const proof = (name: string, grade: string) => sure(proofLoadNewtons(thread(name), grade));

const proofLoads = [
  ['M5', { 4.6: 3200, 4.8: 4400, 5.8: 5400, 6.8: 6250, 8.8: 8230, 10.9: 11_800, 12.9: 13_800 }],
  ['M6', { 4.6: 4520, 4.8: 6230, 5.8: 7640, 6.8: 8840, 8.8: 11_600, 10.9: 16_700, 12.9: 19_500 }],
  ['M8', { 4.6: 8240, 4.8: 11_400, 5.8: 13_900, 6.8: 16_100, 8.8: 21_200, 10.9: 30_400, 12.9: 35_500 }],
  ['M10', { 4.6: 13_000, 4.8: 18_000, 5.8: 22_000, 6.8: 25_500, 8.8: 33_700, 10.9: 48_100, 12.9: 56_300 }],
  ['M12', { 4.6: 19_000, 4.8: 26_100, 5.8: 32_000, 6.8: 37_100, 8.8: 48_900, 10.9: 70_000, 12.9: 81_800 }],
  ['M14', { 4.6: 25_900, 4.8: 35_600, 5.8: 43_700, 6.8: 50_600, 8.8: 66_700, 10.9: 95_500, 12.9: 112_000 }],
  ['M16', { 4.6: 35_300, 4.8: 48_700, 5.8: 59_700, 6.8: 69_100, 8.8: 91_000, 10.9: 130_000, 12.9: 152_000 }],
] as const;

/** Pounds of an inch bolt's proof load; the chart rounds to 50 lb. */
const pounds = (name: string, grade: string) => proof(name, grade) / (9.80665 * 0.45359237);
const j429: readonly [string, string, number][] = [
  ['1/4-20', '2', 1750],
  ['5/16-18', '2', 2900],
  ['3/8-16', '2', 4250],
  ['7/16-14', '2', 5850],
  ['1/4-20', '5', 2700],
  ['5/16-18', '5', 4450],
  ['3/8-16', '5', 6600],
  ['7/16-14', '5', 9050],
  ['1/4-28', '5', 3100],
  ['1/4-20', '8', 3800],
  ['5/16-18', '8', 6300],
  ['3/8-16', '8', 9300],
  ['7/16-14', '8', 12_800],
  ['1/4-28', '8', 4350],
];
/** Grade 2, K 0.20, three quarters of proof load: lbf·ft. */
const chart: readonly [string, number][] = [
  ['1/4-20', 5.4],
  ['5/16-18', 11.5],
  ['3/8-16', 20],
  ['7/16-14', 32],
  ['1/2-13', 48.8],
  ['1/4-28', 6.3],
  ['5/16-24', 12.5],
  ['3/8-24', 22.6],
  ['7/16-20', 35.7],
  ['1/2-20', 55],
];
const clamping: readonly [string, number][] = [
  ['1/4-20', 1312],
  ['5/16-18', 2162],
  ['3/8-16', 3197],
  ['7/16-14', 4385],
  ['1/2-13', 5853],
];

const columns = [0.08, 0.1, 0.12, 0.15, 0.2, 0.25, 0.3];
const coefficients: readonly [number, readonly number[]][] = [
  [0.08, [0.117, 0.13, 0.143, 0.163, 0.195, 0.228, 0.261]],
  [0.1, [0.127, 0.14, 0.153, 0.173, 0.206, 0.239, 0.271]],
  [0.12, [0.138, 0.151, 0.164, 0.184, 0.216, 0.249, 0.282]],
  [0.15, [0.153, 0.167, 0.18, 0.199, 0.232, 0.265, 0.297]],
  [0.2, [0.18, 0.193, 0.206, 0.226, 0.258, 0.291, 0.324]],
  [0.3, [0.232, 0.245, 0.258, 0.278, 0.311, 0.343, 0.376]],
];

/** An adapter's lengths in inches and its torque in any unit: the setting in that unit. */
const setting = (torque: number, unit: string, wrenchInches: number, adapterInches: number, angleDegrees = 0) =>
  sure(
    torqueIn(
      sure(
        torqueSettingFromAdapter(sure(newtonMetresOf(torque, unit)), {
          wrenchLengthMm: wrenchInches * 25.4,
          adapterLengthMm: adapterInches * 25.4,
          angleDegrees,
        }),
      ),
      unit,
    ),
  );
const bench = (angleDegrees: number) => ({ wrenchLengthMm: 400, adapterLengthMm: 50, angleDegrees });

export const torque = [
  ...iso898(proofStressMPa, 'table 3', 'exact', [
    ...Object.entries({
      4.6: 225,
      4.8: 310,
      5.6: 280,
      5.8: 380,
      6.8: 440,
      8.8: 580,
      9.8: 650,
      10.9: 830,
      12.9: 970,
    }).map(([grade, stress]): [string, unknown, unknown] => [
      `proof stress of ${grade}, M10, N/mm²`,
      proofStressMPa(grade, thread('M10')),
      stress,
    ]),
    ['proof stress of 8.8, M18, N/mm²', proofStressMPa('8.8', thread('M18')), 600],
  ]),
  ...iso898(nominalStrength, 'clause 5', 'exact', [
    ['8.8, N/mm²', nominalStrength('8.8'), { tensile: 800, yield: 640 }],
    ['10.9, N/mm²', nominalStrength('10.9'), { tensile: 1000, yield: 900 }],
    ['12.9, N/mm²', nominalStrength('12.9'), { tensile: 1200, yield: 1080 }],
    ['4.6, N/mm²', nominalStrength('4.6'), { tensile: 400, yield: 240 }],
  ]),
  // Printed values are not always the rounded product of the two tables they come from.
  ...iso898(
    proofLoadNewtons,
    'table 5, proof loads, coarse thread',
    { part: 0.006 },
    proofLoads.flatMap(([name, loads]) =>
      Object.entries(loads).map(([grade, newtons]): [string, unknown, unknown] => [
        `proof load of ${name} ${grade}, N`,
        proof(name, grade),
        newtons,
      ]),
    ),
  ),
  ...seen('SAE J429, as reprinted in a chart')(
    proofLoadNewtons,
    'proof loads, rounded to 50 lb',
    { by: 51 },
    j429.map(([name, grade, load]) => [`proof load of ${name} grade ${grade}, lbf`, pounds(name, grade), load]),
  ),
  ...seen('a fastener seller’s torque chart, SAE J429 grade 2, K 0.20, 75 % of proof')(
    usualTorque,
    'dry torque',
    { part: 0.025 },
    chart.map(([name, feet]) => [
      `torque of ${name}, lbf·ft`,
      sure(torqueIn(sure(usualTorque(thread(name), '2')), 'lbf·ft')),
      feet,
    ]),
  ),
  ...seen('a fastener seller’s torque chart, SAE J429 grade 2, K 0.20, 75 % of proof')(
    proofLoadNewtons,
    'clamping force, three quarters of proof',
    { part: 0.002 },
    clamping.map(([name, load]) => [`0.75 of the proof load of ${name}, lbf`, 0.75 * pounds(name, '2'), load]),
  ),
  ...derived('Shigley, Mechanical Engineering Design, table of torque factors')(
    usualTorque,
    'T = K d F, 0.75 of proof, K 0.20',
    { part: 0.0005 },
    [
      ['M6 8.8, N·m', usualTorque(thread('M6'), '8.8'), (0.2 * 6 * 0.75 * 580 * 20.1) / 1000],
      ['M8 8.8, N·m', usualTorque(thread('M8'), '8.8'), (0.2 * 8 * 0.75 * 580 * 36.6) / 1000],
      ['M10 8.8, N·m', usualTorque(thread('M10'), '8.8'), (0.2 * 10 * 0.75 * 580 * 58.0) / 1000],
      ['M12 8.8, N·m', usualTorque(thread('M12'), '8.8'), (0.2 * 12 * 0.75 * 580 * 84.3) / 1000],
      ['M10 10.9, N·m', usualTorque(thread('M10'), '10.9'), (0.2 * 10 * 0.75 * 830 * 58.0) / 1000],
    ],
  ),
  ...derived('Shigley, Mechanical Engineering Design, table of torque factors')(
    torqueForPreload,
    'T = K d F from the printed proof loads of ISO 898-1',
    { by: 0.005 },
    [
      ['M6 8.8, K 0.20, N·m', torqueForPreload(thread('M6'), 0.75 * 11_600, 0.2), 10.44],
      ['M8 8.8, K 0.20, N·m', torqueForPreload(thread('M8'), 0.75 * 21_200, 0.2), 25.44],
      ['M10 8.8, K 0.20, N·m', torqueForPreload(thread('M10'), 0.75 * 33_700, 0.2), 50.55],
      ['M12 8.8, K 0.20, N·m', torqueForPreload(thread('M12'), 0.75 * 48_900, 0.2), 88.02],
      ['M10 10.9, K 0.20, N·m', torqueForPreload(thread('M10'), 0.75 * 48_100, 0.2), 72.15],
      ['M6 8.8, K 0.15, N·m', torqueForPreload(thread('M6'), 0.75 * 11_600, 0.15), 7.83],
      ['M8 8.8, K 0.15, N·m', torqueForPreload(thread('M8'), 0.75 * 21_200, 0.15), 19.08],
      ['M10 8.8, K 0.15, N·m', torqueForPreload(thread('M10'), 0.75 * 33_700, 0.15), 37.91],
      ['M12 8.8, K 0.15, N·m', torqueForPreload(thread('M12'), 0.75 * 48_900, 0.15), 66.02],
      ['M10 10.9, K 0.15, N·m', torqueForPreload(thread('M10'), 0.75 * 48_100, 0.15), 54.11],
    ],
  ),
  ...seen('Shigley, Mechanical Engineering Design, table of torque factors')(
    usualTorque,
    'K by condition, read back from T / (d F)',
    { part: 1e-12 },
    [
      ...(['non-plated', 'zinc', 'lubricated', 'cadmium', 'unknown'] as const).map(
        (condition): [string, unknown, unknown] => [
          `K ${condition}`,
          sure(usualTorque(thread('M10'), '8.8', condition)) / (0.75 * proof('M10', '8.8') * 0.01),
          { 'non-plated': 0.3, zinc: 0.2, lubricated: 0.18, cadmium: 0.16, unknown: 0.2 }[condition],
        ],
      ),
    ],
  ),
  ...seen('Shigley, Mechanical Engineering Design, table of torque factors')(
    preloadFromTorque,
    'scatter of torque as a measure of load: 25 to 30 %',
    { part: 1e-9 },
    [
      [
        'lower end over the load aimed at',
        sure(preloadFromTorque(thread('M10'), 50, torqueCoefficients.value.zinc)).fromNewtons / 25_000,
        0.7,
      ],
      [
        'upper end over the load aimed at',
        sure(preloadFromTorque(thread('M10'), 50, torqueCoefficients.value.zinc)).toNewtons / 25_000,
        1.3,
      ],
    ],
  ),
  ...seen('Machinery’s Handbook, 31st edition')(
    averageTorqueCoefficient,
    'p. 1662, table 3, K of metric coarse hexagon bolts',
    { by: 0.0005 },
    coefficients.flatMap(([inThread, row]) =>
      row.map((coefficient, at): [string, unknown, unknown] => [
        `friction ${inThread} in the thread, ${columns[at]} under the head`,
        averageTorqueCoefficient({ thread: inThread, bearing: columns[at] as number }),
        coefficient,
      ]),
    ),
  ),
  ...seen('Machinery’s Handbook, 31st edition')(
    torqueByShortRule,
    'p. 1665, example 1/2-13 UNC, 11 707 lbf, friction 0.15',
    { part: 0.001 },
    [
      [
        'torque, lbf·in',
        sure(torqueIn(sure(torqueByShortRule(thread('1/2-13'), 11_707 * 9.80665 * 0.45359237, 0.15)), 'lbf·in')),
        1158,
      ],
      [
        'torque, lbf·ft',
        sure(torqueIn(sure(torqueByShortRule(thread('1/2-13'), 11_707 * 9.80665 * 0.45359237, 0.15)), 'lbf·ft')),
        96.5,
      ],
    ],
  ),
  ...seen('NAVEDTRA 14315')(torqueSettingFromAdapter, 'worked example', { by: 0.05 }, [
    ['100 lbf·in, 12 in, 6 in', setting(100, 'lbf·in', 12, 6), 66.7],
  ]),
  ...seen('an aircraft maintenance manual, torque wrench adapters')(
    torqueSettingFromAdapter,
    'worked example',
    { by: 1e-9 },
    [['30 lbf·ft, 1 ft, 0.25 ft', setting(30, 'lbf·ft', 12, 3), 24]],
  ),
  ...seen('a helicopter maintenance manual, torque wrench adapters')(
    torqueSettingFromAdapter,
    'worked examples',
    { by: 0.005 },
    [
      ['135 lbf·in, 10 in, 1.5 in longer', setting(135, 'lbf·in', 10, 1.5), 117.39],
      ['135 lbf·in, 10 in, 1.5 in shorter', setting(135, 'lbf·in', 10, 1.5, 180), 158.82],
    ],
  ),
  ...seen('US Army TM 1-1500-204-23-9')(torqueSettingFromAdapter, '8-16, worked example', { by: 0.5 }, [
    ['300 lbf·in, 10 in, 4 in', setting(300, 'lbf·in', 10, 4), 214],
  ]),
  ...seen('US Army TM 9-2350-277-40')(
    torqueSettingFromAdapter,
    'torque wrench adapters, worked example',
    { by: 1e-9 },
    [['40 lbf·ft, 12 in, 4 in', setting(40, 'lbf·ft', 12, 4), 30]],
  ),
  ...seen('US Army TM 5-3805-274-13')(torqueSettingFromAdapter, 'torque wrench adapters, worked example', { by: 0.5 }, [
    ['19 lbf·ft, 22 in, 3 in', setting(19, 'lbf·ft', 22, 3), 17],
  ]),
  ...seen('US Army TM 9-2350-277-20-2')(
    torqueSettingFromAdapter,
    'g: at right angles the reading is direct',
    { by: 1e-9 },
    [['40 lbf·ft, 12 in, 4 in at 90°', setting(40, 'lbf·ft', 12, 4, 90), 40]],
  ),
  ...derived('lever arms, projected: T L / (L + E cos a)')(
    torqueSettingFromAdapter,
    '40 N·m, 400 mm, 50 mm',
    { by: 0.0005 },
    [
      ['0°, N·m', torqueSettingFromAdapter(40, bench(0)), 35.556],
      ['45°, N·m', torqueSettingFromAdapter(40, bench(45)), 36.752],
      ['90°, N·m', torqueSettingFromAdapter(40, bench(90)), 40],
      ['180°, N·m', torqueSettingFromAdapter(40, bench(180)), 45.714],
    ],
  ),
  ...seen('US Army TM 1-1500-204-23-9')(
    torqueAtFastenerFromSetting,
    '8-16, worked example read backwards',
    { part: 0.002 },
    [
      [
        '214 lbf·in set, 10 in, 4 in',
        sure(
          torqueIn(
            sure(
              torqueAtFastenerFromSetting(sure(newtonMetresOf(214, 'lbf·in')), {
                wrenchLengthMm: 254,
                adapterLengthMm: 101.6,
              }),
            ),
            'lbf·in',
          ),
        ),
        300,
      ],
    ],
  ),
  ...seen('cylinder head bolts in makers’ manuals')(readStages, 'stages as printed', 'exact', [
    [
      '20 N·m → 40 N·m → +60° → +80°',
      stagesText(sure(readStages('20 N·m → 40 N·m → +60° → +80°'))),
      '20 N·m, 40 N·m, +60°, +80°',
    ],
    [
      '40, +90, loosen a full turn, 40, +90, +90',
      stagesText(sure(readStages('40 +90 -1 turn 40 +90 +90'))),
      '40 N·m, +90°, loosen 360°, 40 N·m, +90°, +90°',
    ],
    ['27 N·m, 27 N·m again, +90°, +90°', stagesText(sure(readStages('27 27 +90 +90'))), '27 N·m, 27 N·m, +90°, +90°'],
    [
      '20, 35, 45 N·m, +90°, +90°',
      stagesText(sure(readStages('20 35 45 +90 +90'))),
      '20 N·m, 35 N·m, 45 N·m, +90°, +90°',
    ],
  ]),
  ...seen('cylinder head bolts in makers’ manuals')(degreesAfterTorque, 'degrees after the last torque', 'exact', [
    ['40 N·m, +60°, +80°', degreesAfterTorque(sure(readStages('20 40 +60 +80'))), 140],
    ['30 N·m, 155°', degreesAfterTorque(sure(readStages('30 +155'))), 155],
    ['20 N·m, +90°, +90°, an accepted torque', degreesAfterTorque(sure(readStages('20 +90 +90 accept 60-110'))), 180],
  ]),
  ...derived('ISO 898-1:2013 and Shigley, table of torque factors')(
    judgeTorque,
    'proof load at K 0.20, N·m',
    { part: 0.006 },
    [
      [
        'M8 8.8: upper end of the band',
        sure(judgeTorque({ thread: thread('M8'), newtonMetres: 25, class: '8.8' })).band?.toNewtonMetres,
        0.2 * 8 * 21.2,
      ],
      [
        'M10 10.9: upper end of the band',
        sure(judgeTorque({ thread: thread('M10'), newtonMetres: 60, class: '10.9' })).band?.toNewtonMetres,
        0.2 * 10 * 48.1,
      ],
      [
        'M12 8.8: upper end of the band',
        sure(judgeTorque({ thread: thread('M12'), newtonMetres: 80, class: '8.8' })).band?.toNewtonMetres,
        0.2 * 12 * 48.9,
      ],
    ],
  ),
];
