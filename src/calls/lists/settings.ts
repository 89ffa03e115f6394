// The settings, one row each: its value, how it is changed, and, while it is picked, what it means. The key of a row is the
// call that changes it; what only the file can hold says where that is.

import type { Units } from '../../trade/units-shown.ts';
import { torqueUnitOf } from '../../trade/units-shown.ts';
import { cap } from '../key-caps.ts';
import type { Listed } from '../listed.ts';
import { rowById } from '../table.ts';

/** The file as it was read when the program started. */
export type SettingsFile = {
  path: string;
  keys: number;
  intervals: number;
  sealants: number;
  /** One line for each thing wrong with it. */
  wrong: readonly string[];
};
export type SettingsShown = {
  name?: string | undefined;
  trays: readonly string[];
  units: Units;
  colours: boolean;
  sounds: boolean;
  keypad: boolean;
  speaking: boolean;
  pedals: { again?: string | undefined; strike?: string | undefined };
  file?: SettingsFile | undefined;
};

const onOff = (on: boolean): string => (on ? 'on' : 'off');

export function settingRows(shown: SettingsShown): Listed[] {
  const { name, trays, units, pedals, file } = shown;
  const pressed = Object.values(pedals).filter((key) => key !== undefined);
  const changed = (call: string, label: string, text: string, how: string, more = rowById.get(call)?.help): Listed => ({
    key: call,
    mark: 'plain',
    name: label,
    text,
    end: `${cap.take}: ${how}`,
    ...(more !== undefined && { more }),
    picks: {},
  });
  return [
    changed('set-name', 'name', name ?? 'none', 'type it'),
    changed('set-trays', 'trays', trays.join(', '), 'type them'),
    changed(
      'set-distance',
      'distance',
      units.distance,
      'the other unit',
      'Where a distance is typed without its unit. An odometer that was noted keeps the unit it was noted in.',
    ),
    changed(
      'set-temperature',
      'temperature',
      `\u00b0${units.temperature}`,
      'the other unit',
      'Where a temperature is typed without its unit, and where one is shown. The job file keeps degrees Celsius.',
    ),
    changed(
      'set-torque',
      'torque',
      torqueUnitOf(units),
      'the other unit',
      'Where a torque is typed without its unit, and where one is shown beside a hole. The job file keeps newton metres.',
    ),
    changed(
      'set-colours',
      'colours',
      onOff(shown.colours),
      'on or off',
      'Colours never stand alone: shapes and words stay. NO_COLOR of the terminal goes before this.',
    ),
    changed('sounds', 'sounds', onOff(shown.sounds), 'on or off'),
    changed(
      'speaking',
      'speaking',
      onOff(shown.speaking),
      'on or off',
      'Answers spoken. It is not kept: it holds until the program is left.',
    ),
    changed('pad', 'keypad', onOff(shown.keypad), 'on or off'),
    changed('learn-pedal', 'pedals', pressed.join(', ') || 'none', 'press the pedal'),
    ...(file ? fileRows(file) : []),
  ];
}

function fileRows({ path, keys, intervals, sealants, wrong }: SettingsFile): Listed[] {
  const isBroken = wrong.length > 0;
  const only = (name: string, count: number, more: string): Listed => ({
    key: `file ${name}`,
    mark: 'plain',
    name,
    text: isBroken && count === 0 ? 'none read' : String(count || 'none'),
    end: 'in the file',
    more: `${more} ${path}`,
    picks: {},
  });
  return [
    only('own keys', keys, 'Keys of your own for calls, read when the program starts:'),
    only(
      'intervals',
      intervals,
      'When services are next due, before the usual intervals, read when the program starts:',
    ),
    only('sealants', sealants, 'The sealants on your shelf with their labels, read when a job is opened:'),
    {
      key: 'file',
      mark: isBroken ? 'open' : 'plain',
      name: 'file',
      text: path,
      end: isBroken ? (wrong.length === 1 ? 'a fault in it' : `${wrong.length} faults in it`) : '',
      more: isBroken ? wrong.join(' ') : 'What is changed here is written there at once.',
      picks: {},
    },
  ];
}
