// Belt drive: degrees and turns, against a belt turned tooth by tooth.
import { degreesOff, degreesPerTooth, turnsUntilMarksMeet } from '../../src/trade/belt-drive.ts';
import { from } from './published.ts';
import { sure } from './trade.ts';

const topic = 'belt drive';

/** Turns the crank until the mark on crank, cam and belt stand where they began. Counts; knows no common multiple. */
function turnedByHand(crankTeeth: number, beltTeeth: number): number {
  let [cam, belt, turns] = [0, 0, 0];
  do {
    for (let tooth = 0; tooth < crankTeeth; tooth++) {
      cam = (cam + 1) % (2 * crankTeeth);
      belt = (belt + 1) % beltTeeth;
    }
    turns++;
  } while (cam !== 0 || belt !== 0);
  return turns;
}
const drives = [
  [20, 107, 214],
  [24, 123, 82],
  [24, 145, 290],
  [22, 148, 74],
  [24, 151, 302],
  [24, 261, 174],
] as const;

export const belt = [
  ...from(topic, 'counting, lcm(2z, Z)/z', 'derived')(
    turnsUntilMarksMeet,
    'crank turns until all marks meet',
    'exact',
    drives.map(([z, belt, turns]) => [`z ${z}, Z ${belt}`, sure(turnsUntilMarksMeet(z, belt)).crankTurns, turns]),
  ),
  ...from(topic, 'a belt turned tooth by tooth', 'derived')(
    turnsUntilMarksMeet,
    'crank turns until all marks meet',
    'exact',
    [...drives, [19, 97], [20, 120], [21, 129], [23, 138]].map(([z, belt]): [string, unknown, unknown] => [
      `z ${z}, Z ${belt}`,
      sure(turnsUntilMarksMeet(z as number, belt as number)).crankTurns,
      turnedByHand(z as number, belt as number),
    ]),
  ),
  ...from(topic, 'the four-stroke cycle: two turns of the crank to one of the cam', 'derived')(
    degreesPerTooth,
    '360°/z, and half of it at the cam',
    'exact',
    [
      ['z 20', sure(degreesPerTooth(20)), { crankDegrees: 18, camDegrees: 9 }],
      ['z 24', sure(degreesPerTooth(24, 48)), { crankDegrees: 15, camDegrees: 7.5 }],
    ],
  ),
  ...from(topic, 'a workshop’s account of a belt fitted one and two teeth off, 24 and 48 teeth', 'seen')(
    degreesOff,
    'each tooth 15° at the crank and half as much at the cam',
    'exact',
    [
      ['one tooth, crank', sure(degreesOff(1, 24)).crankDegrees, 15],
      ['one tooth, cam', sure(degreesOff(1, 24)).camDegrees, 7.5],
      ['two teeth, crank', sure(degreesOff(2, 24)).crankDegrees, 30],
    ],
  ),
];
