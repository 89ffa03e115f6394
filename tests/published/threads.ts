// Threads: diameters, stress areas and pitches against the standards and handbooks that print them.
import { readFastener } from '../../src/trade/designation.ts';
import {
  inInches,
  minorDiameterMm,
  pitchDiameterMm,
  rootDiameterMm,
  stressAreaMm2,
  threadNamed,
} from '../../src/trade/threads.ts';
import { from } from './published.ts';
import { sure, thread, toFigures, toPlaces } from './trade.ts';

const topic = 'threads';
const iso724 = from(topic, 'ISO 724:1993', 'seen');
const iso724Fine = from(topic, 'ISO 724:1993', 'derived');
const iso898 = from(topic, 'ISO 898-1:2013', 'seen');
const iso898Fine = from(topic, 'ISO 898-1:2013', 'derived');
const b11 = from(topic, 'ASME B1.1-2003', 'seen');
const handbook = from(topic, 'Mechanical Engineer’s Data Handbook, 8.2.4', 'seen');
const stressTable = from(
  topic,
  'ANSI inch thread stress and shear areas, as reprinted in an engineering table',
  'seen',
);
const boltedJoints = from(topic, 'Introduction to the Design and Behavior of Bolted Joints, 4th edition', 'seen');
const pcc1 = from(topic, 'ASME PCC-1, appendix H', 'seen');
const iso261 = from(topic, 'ISO 261:1998', 'seen');

const inches2 = (name: string) => stressAreaMm2(thread(name)) / 25.4 ** 2;

/** thread, d2, D1, stress area; `seen` where the reprint had that row. */
const metric = [
  ['M5', 4.48, 4.134, 14.2, true],
  ['M6', 5.35, 4.917, 20.1, true],
  ['M8', 7.188, 6.647, 36.6, true],
  ['M8x1', 7.35, 6.917, 39.2, true],
  ['M10', 9.026, 8.376, 58.0, true],
  ['M10x1.25', 9.188, 8.647, 61.2, true],
  ['M10x1', 9.35, 8.917, 64.5, true],
  ['M12', 10.863, 10.106, 84.3, true],
  ['M12x1.5', 11.026, 10.376, 88.1, true],
  ['M12x1.25', 11.188, 10.647, 92.1, true],
  ['M14', 12.701, 11.835, 115, true],
  ['M14x1.5', 13.026, 12.376, 125, true],
  ['M16', 14.701, 13.835, 157, true],
  ['M16x1.5', 15.026, 14.376, 167, true],
] as const;

export const threads = [
  ...metric.flatMap(([name, d2, d1, area]) => [
    ...(name.includes('x') ? iso724Fine : iso724)(pitchDiameterMm, 'table 1', { by: 0.0005 }, [
      [`d2 of ${name}, mm`, pitchDiameterMm(thread(name)), d2],
    ]),
    ...(name.includes('x') ? iso724Fine : iso724)(minorDiameterMm, 'table 1', { by: 0.0005 }, [
      [`D1 of ${name}, mm`, minorDiameterMm(thread(name)), d1],
    ]),
    ...(name.includes('x') ? iso898Fine : iso898)(stressAreaMm2, 'tables 4 to 7', 'exact', [
      [`stress area of ${name}, mm²`, toFigures(stressAreaMm2(thread(name)), 3), area],
    ]),
  ]),
  ...iso898(stressAreaMm2, 'tables 4 and 5, further sizes', 'exact', [
    ['stress area of M3, mm²', toFigures(stressAreaMm2(thread('M3')), 3), 5.03],
    ['stress area of M4, mm²', toFigures(stressAreaMm2(thread('M4')), 3), 8.78],
    ['stress area of M18, mm²', toFigures(stressAreaMm2(thread('M18')), 3), 192],
    ['stress area of M20, mm²', toFigures(stressAreaMm2(thread('M20')), 3), 245],
    ['stress area of M22, mm²', toFigures(stressAreaMm2(thread('M22')), 3), 303],
    ['stress area of M24, mm²', toFigures(stressAreaMm2(thread('M24')), 3), 353],
  ]),
  ...b11(pitchDiameterMm, 'table 10, UNC and UNF, as reprinted', { by: 0.000051 }, [
    ...(
      [
        ['#6-32', 0.1177],
        ['#8-32', 0.1437],
        ['#12-24', 0.1889],
        ['9/16-12', 0.5084],
        ['5/8-11', 0.566],
        ['3/4-10', 0.685],
        ['#6-40', 0.1218],
        ['#8-36', 0.146],
        ['#12-28', 0.1928],
        ['9/16-18', 0.5264],
        ['5/8-18', 0.5889],
        ['3/4-16', 0.7094],
        ['#10-24', 0.1629],
        ['1/4-20', 0.2175],
        ['5/16-18', 0.2764],
        ['3/8-16', 0.3344],
        ['7/16-14', 0.3911],
        ['1/2-13', 0.45],
        ['#10-32', 0.1697],
        ['1/4-28', 0.2268],
        ['5/16-24', 0.2854],
        ['3/8-24', 0.3479],
        ['7/16-20', 0.405],
        ['1/2-20', 0.4675],
      ] as const
    ).map(([name, d2]): [string, number, number] => [
      `pitch diameter of ${name}, in`,
      inInches(pitchDiameterMm(thread(name))),
      d2,
    ]),
  ]),
  ...b11(minorDiameterMm, 'table 10, UNC and UNF, as reprinted', { by: 0.000051 }, [
    ...(
      [
        ['#10-24', 0.1449],
        ['1/4-20', 0.1959],
        ['5/16-18', 0.2524],
        ['3/8-16', 0.3073],
        ['7/16-14', 0.3602],
        ['1/2-13', 0.4167],
        ['#10-32', 0.1562],
        ['1/4-28', 0.2113],
        ['5/16-24', 0.2674],
        ['3/8-24', 0.3299],
        ['7/16-20', 0.3834],
        ['1/2-20', 0.4459],
      ] as const
    ).map(
      ([name, d1]) =>
        [`minor diameter of the nut thread of ${name}, in`, inInches(minorDiameterMm(thread(name))), d1] as [
          string,
          number,
          number,
        ],
    ),
  ]),
  ...stressTable(stressAreaMm2, 'UNC and UNF rows', { by: 0.0001 }, [
    // One in the last place: the table goes by rounded diameters.
    ...(
      [
        ['#10-24', 0.0175],
        ['#10-32', 0.02],
        ['1/4-20', 0.0318],
        ['1/4-28', 0.0364],
        ['5/16-18', 0.0524],
        ['3/8-16', 0.0775],
        ['3/8-24', 0.0878],
        ['1/2-13', 0.1419],
        ['1/2-20', 0.1599],
      ] as const
    ).map(([name, area]): [string, number, number] => [`stress area of ${name}, in²`, inches2(name), area]),
  ]),
  ...b11(stressAreaMm2, 'UNF table, as reprinted', { by: 0.0001 }, [
    ['stress area of 5/16-24, in²', inches2('5/16-24'), 0.058],
    ['stress area of 7/16-20, in²', inches2('7/16-20'), 0.1187],
  ]),
  ...iso898Fine(rootDiameterMm, '9.1.6.1: the stress area is that of the mean of d2 and d3', { part: 1e-6 }, [
    ...(['M6', 'M8', 'M10x1.25', 'M14x1.5'] as const).map((name): [string, number, number] => [
      `stress area of ${name} over d2 and d3, mm²`,
      Math.PI * ((pitchDiameterMm(thread(name)) + rootDiameterMm(thread(name))) / 4) ** 2,
      stressAreaMm2(thread(name)),
    ]),
  ]),
  ...boltedJoints(stressAreaMm2, 'metric M series thread stress areas, as reprinted, five figures', { part: 5e-5 }, [
    ...(
      [
        ['M5', 14.183],
        ['M6', 20.123],
        ['M8', 36.609],
        ['M10', 57.99],
        ['M12', 84.267],
        ['M14', 115.44],
        ['M16', 156.67],
        ['M20', 244.79],
      ] as const
    ).map(([name, area]): [string, number, number] => [
      `stress area of ${name}, mm²`,
      stressAreaMm2(thread(name)),
      area,
    ]),
  ]),
  ...pcc1(stressAreaMm2, 'table H-1, tensile stress area', { by: 0.05 }, [
    ['stress area of M14-2, mm²', stressAreaMm2(thread('M14')), 115.4],
    ['stress area of M16-2, mm²', stressAreaMm2(thread('M16')), 156.7],
    ['stress area of M20-2.5, mm²', stressAreaMm2(thread('M20')), 244.8],
    ['stress area of M24-3, mm²', stressAreaMm2(thread('M24')), 352.5],
  ]),
  ...handbook(threadNamed, 'p. 299, coarse series, pitch', 'exact', [
    [
      'pitches of M3, M4, M5, M16, M20, M24, mm',
      ['M3', 'M4', 'M5', 'M16', 'M20', 'M24'].map((name) => thread(name).pitchMm),
      [0.5, 0.7, 0.8, 2, 2.5, 3],
    ],
  ]),
  ...iso261(threadNamed, 'coarse pitches, as reprinted', 'exact', [
    [
      'M3 M4 M5 M6 M8 M10 M12 M14 M16 M18 M20 M22 M24 without a pitch said, mm',
      'M3 M4 M5 M6 M8 M10 M12 M14 M16 M18 M20 M22 M24'.split(' ').map((name) => thread(name).pitchMm),
      [0.5, 0.7, 0.8, 1, 1.25, 1.5, 1.75, 2, 2, 2.5, 2.5, 2.5, 3],
    ],
  ]),
  ...iso261(
    threadNamed,
    'fine pitches, as reprinted',
    'exact',
    (
      [
        ['M3', [0.35]],
        ['M4', [0.5]],
        ['M5', [0.5]],
        ['M6', [0.75]],
        ['M8', [1, 0.75]],
        ['M10', [1.25, 1]],
        ['M12', [1.5, 1.25]],
        ['M14', [1.5]],
        ['M16', [1.5]],
        ['M18', [2, 1.5]],
        ['M20', [2, 1.5]],
        ['M22', [2, 1.5]],
        ['M24', [2]],
      ] as const
    ).map(([name, pitches]) => [
      `fine threads of ${name} there are, mm`,
      pitches
        .map((pitch) => threadNamed(`${name}x${pitch}`))
        .flatMap((one) => ('series' in one && one.series === 'fine' ? one.pitchMm : [])),
      pitches,
    ]),
  ),
  ...from(topic, 'ISO 965-1:2013', 'seen')(
    readFastener,
    'clause 5, designation: no pitch said means the coarse one',
    'exact',
    [
      ['M8 is M8 x 1.25', sure(readFastener('M8')).thread.pitchMm, 1.25],
      ['M8x1 is the fine one', sure(readFastener('M8x1')).thread.name, 'M8x1'],
      ['M8-1.25x30 is 30 long', sure(readFastener('M8-1.25x30')).lengthMm, 30],
      ['pitch of 5/16-18, mm, to two places', toPlaces(sure(readFastener('5/16-18 x 1')).thread.pitchMm, 2), 1.41],
    ],
  ),
];
