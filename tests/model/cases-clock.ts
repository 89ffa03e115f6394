// Hand-made jobs about beads and their clock, and about the check rotation.
import {
  area,
  away,
  back,
  type Case,
  cleared,
  clockMoves,
  count,
  entry,
  type Fields,
  found,
  job,
  minutes,
  off,
  putIn,
  type Step,
  slack,
  snug,
  tight,
  toolsOut,
  wait,
} from './job-said.ts';

const rtv = {
  product: 'grey sealant',
  kind: 'moisture',
  skinMinutes: 10,
  runHours: 2,
  fullHours: 24,
  labelCelsius: 23,
  labelHumidityPct: 50,
};
const at23 = entry('conditions-noted', { celsius: 23, humidityPct: 50 });
const curing = ['bead-curing face:F'];
const missing = ['bead-missing face:F'];

const face = entry('face-declared', {
  face: 'F',
  area: 'pan',
  pressedBy: ['pan/1', 'pan/2', 'pan/3'],
  keepsIn: [],
  bead: true,
});
const stripped = [1, 2, 3].flatMap((n) => [found(`pan/${n}`, `f3.${n}`), off(`pan/${n}`, `f3.${n}`)]);
const closedUp = [1, 2, 3].flatMap((n) => [putIn(`pan/${n}`, `f3.${n}`), snug(`pan/${n}`, `f3.${n}`)]);
const pulledUp = [...[1, 2, 3].map((n) => tight(`pan/${n}`, `f3.${n}`)), ...cleared];
const laid = (label: object = rtv, ...before: Step[]): Step[] => [
  [area('pan'), face],
  stripped,
  ...before,
  entry('face-cleaned', { face: 'F' }),
  entry('bead-laid', { face: 'F', label }),
];
/** Bead laid and closed up at once; then what is told. */
const sealed = (label: object, ...after: Step[]) => job(...laid(label, at23), closedUp, pulledUp, ...after);

const oneAfterTheOther: Step[] = [1, 2].flatMap((n) => [
  slack(`pan/${n}`, `f3.${n}`),
  [tight(`pan/${n}`, `f3.${n}`), toolsOut],
]);

const drive = entry('drive-declared', {
  drive: 'D',
  areas: ['pan'],
  parts: ['belt'],
  marks: ['cam', 'crank'],
  turns: 2,
  tensioner: 'sprung',
});
const turn = (quarters: number, more: Fields = {}) => entry('crank-turned', { drive: 'D', quarters, ...more });
const mark = (name: string, teethOff = 0) => entry('mark-read', { drive: 'D', mark: name, teethOff });
const begun = entry('rotation-begun', { drive: 'D' });
const marks = [mark('cam'), mark('crank')];
const tension = entry('tension-read', { drive: 'D', how: 'pointer', right: true });
const opened = [found('pan/1', 'f3.1'), off('pan/1', 'f3.1')];
const turned = (...steps: Step[]) =>
  job([area('pan'), drive], opened, back('pan/1', 'f3.1'), ...steps, cleared, entry('road-tested', {}));
const needed = ['rotation-needed drive:D'];

export const clockCases: Case[] = [
  {
    name: '[S1] a face opened and not sealed',
    job: job([area('pan'), face], stripped, closedUp, pulledUp),
    open: missing,
  },
  {
    name: '[S1] laid on a face not clean, it does not stand',
    job: job(
      [area('pan'), face],
      entry('face-cleaned', { face: 'F' }),
      stripped,
      [entry('bead-laid', { face: 'F', label: rtv })],
      closedUp,
      pulledUp,
    ),
    open: missing,
  },
  {
    name: '[S1] without conditions nothing is earned until told',
    job: job(...laid(), closedUp, pulledUp, wait(100), at23, wait(23)),
    open: curing,
  },
  {
    name: '[S1] told, it counts from there',
    job: job(...laid(), closedUp, pulledUp, wait(100), at23, wait(24)),
    open: [],
  },
  {
    name: '[S2] not snug within the skin time, void',
    job: job(...laid(rtv, at23), wait(minutes(11)), closedUp, pulledUp, wait(30)),
    open: missing,
  },
  {
    name: '[S2] snug within the skin time, good',
    job: job(...laid(rtv, at23), wait(minutes(9)), closedUp, pulledUp, wait(24)),
    open: [],
  },
  {
    name: '[S2] a clock put back does not lengthen the skin time',
    job: job(...laid(rtv, at23), wait(minutes(8)), clockMoves(-1), count(3), wait(minutes(3)), closedUp, pulledUp),
    open: missing,
  },
  {
    name: '[S3] a later final pass does not restart the cure',
    job: job(...laid(rtv, at23), closedUp, wait(20), pulledUp, wait(4)),
    open: [],
  },
  { name: '[S4] at the label’s own conditions it takes the label’s own time', job: sealed(rtv, wait(24)), open: [] },
  {
    name: '[S4] at 10 °C it takes 2.29 times as long (IAPWS-IF97 ratio of vapour pressures)',
    job: job(...laid(rtv, entry('conditions-noted', { celsius: 10, humidityPct: 50 })), closedUp, pulledUp, wait(54)),
    open: curing,
  },
  {
    name: '[S4] and is done then',
    job: job(...laid(rtv, entry('conditions-noted', { celsius: 10, humidityPct: 50 })), closedUp, pulledUp, wait(56)),
    open: [],
  },
  {
    name: '[S4] below the lowest temperature nothing is earned',
    job: job(
      ...laid({ ...rtv, lowestCelsius: 5 }, entry('conditions-noted', { celsius: 4, humidityPct: 90 })),
      closedUp,
      pulledUp,
      wait(500),
    ),
    open: curing,
  },
  {
    name: '[S4] the label’s own figure comes first',
    job: job(
      ...laid(
        { ...rtv, atCelsius: [{ celsius: 5, fullHours: 48 }] },
        entry('conditions-noted', { celsius: 10, humidityPct: 50 }),
      ),
      closedUp,
      pulledUp,
      wait(48),
    ),
    open: [],
  },
  {
    name: '[S6] two holes slack at once void it, one does not',
    job: sealed(rtv, wait(24), slack('pan/1', 'f3.1'), slack('pan/2', 'f3.2'), [
      tight('pan/1', 'f3.1'),
      tight('pan/2', 'f3.2'),
      toolsOut,
    ]),
    open: missing,
  },
  {
    name: '[S3 S6] one after the other voids nothing, and the cure begins anew',
    job: sealed(rtv, wait(24), ...oneAfterTheOther),
    open: curing,
  },
  {
    name: '[S3 S6] cured again after that',
    job: sealed(rtv, wait(24), ...oneAfterTheOther, wait(24)),
    open: [],
  },
  {
    name: '[S3] while one is slack nothing is earned',
    job: sealed(rtv, slack('pan/1', 'f3.1'), wait(24), [tight('pan/1', 'f3.1'), toolsOut]),
    open: curing,
  },
  { name: '[S7] time away is not earned unasked', job: sealed(rtv, away(30)), open: curing },
  {
    name: '[S7] and is once the time shown was called right',
    job: sealed(rtv, away(30), entry('clock-confirmed', {})),
    open: [],
  },
  { name: '[S7] a clock put on earns nothing', job: sealed(rtv, clockMoves(30)), open: curing },
  {
    name: '[S7] a step back is owed before more is earned',
    job: sealed(rtv, clockMoves(-5), count(0), away(26), entry('clock-confirmed', {})),
    open: curing,
  },
  {
    name: '[S7] and is owed no longer once the time shown was called right',
    job: sealed(rtv, clockMoves(-5), entry('clock-confirmed', {}), away(26), entry('clock-confirmed', {})),
    open: [],
  },
  {
    name: '[S7] a step back takes nothing from what was earned',
    job: sealed(rtv, wait(20), count(0), clockMoves(-5), entry('clock-confirmed', {}), wait(4)),
    open: [],
  },
  {
    name: '[S8] non-setting has no cure',
    job: sealed({ ...rtv, kind: 'non-setting' }),
    open: [],
  },
  {
    name: '[S8] anaerobic has no skin time and no vapour ratio',
    job: job(
      ...laid({ ...rtv, kind: 'anaerobic' }, entry('conditions-noted', { celsius: 10 })),
      wait(1),
      closedUp,
      pulledUp,
      wait(24),
    ),
    open: [],
  },
  { name: '[R1] a drive opened wants a check', job: turned(), open: needed },
  {
    name: '[R1 T7] and the road, its belt off with no bolt of its areas',
    job: job(
      { ...drive, parts: ['belt'] },
      entry('part-removed', { part: 'belt' }),
      entry('part-fitted', { part: 'belt' }),
      toolsOut,
    ),
    open: [...needed, 'road-test vehicle'],
  },
  { name: '[R4] two turns, every mark, then the tension', job: turned(begun, turn(8), marks, tension), open: [] },
  { name: '[R4] a turn and a half is not enough', job: turned(begun, turn(6), marks, tension), open: needed },
  { name: '[R4] three turns are no whole multiple of two', job: turned(begun, turn(12), marks, tension), open: needed },
  {
    name: '[R4] marks are read after the last turn',
    job: turned(begun, turn(4), marks, turn(4), tension),
    open: needed,
  },
  {
    name: '[R4] locks slid in and out by hand serve for the marks',
    job: turned(begun, turn(8), entry('locks-slid', { drive: 'D' }), tension),
    open: [],
  },
  {
    name: '[R3] backwards starts the count again',
    job: turned(begun, turn(4), turn(1, { backwards: true }), turn(4), marks, tension),
    open: needed,
  },
  {
    name: '[R5] a mark off fails the try, and reading it again does not mend it',
    job: turned(begun, turn(8), mark('cam', 1), marks, tension),
    open: needed,
  },
  {
    name: '[R5] a new try after a bind',
    job: turned(begun, entry('bind-felt', { drive: 'D' }), begun, turn(8), marks, tension),
    open: [],
  },
  {
    name: '[R6] opened after it, it stands no more',
    job: turned(begun, turn(8), marks, tension, off('pan/1', 'f3.1'), back('pan/1', 'f3.1')),
    open: needed,
  },
  {
    name: '[R6] tension set again asks two more turns',
    job: turned(begun, turn(8), marks, tension, entry('tension-reset', { drive: 'D' }), turn(4), marks, tension),
    open: needed,
  },
  {
    name: '[R6] two more, where the maker asks four for the check itself',
    job: turned(
      { ...drive, turns: 4 },
      begun,
      turn(16),
      entry('tension-reset', { drive: 'D' }),
      turn(8),
      marks,
      tension,
    ),
    open: [],
  },
  {
    name: '[R6] and then passes without a new try',
    job: turned(begun, turn(8), marks, tension, entry('tension-reset', { drive: 'D' }), turn(8), marks, tension),
    open: [],
  },
];
