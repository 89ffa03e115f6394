// What the settings file says of the bench, and keeping what was set on it.

import { dirname } from 'node:path';
import type { SettingsFile } from '../calls/lists/settings.ts';
import { type Habits, wrongKeys } from '../session/habits.ts';
import { makeFolders, realDisk } from '../store/disk.ts';
import { fault } from '../store/fault.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { openSettings, type Settings } from '../store/settings.ts';
import { firstAlone } from './settings-told.ts';

export type HabitsAtHand = {
  habits: Habits;
  /** What is wrong with the file: the first of it, and how many more there are. */
  wrong: string | undefined;
  file: SettingsFile;
  keep(habits: Habits): Promise<string | undefined>;
};

export async function habitsAtHand(): Promise<HabitsAtHand> {
  const { settings: path } = placesOn(thisMachine());
  const file = await openSettings(path);
  const { intervals, sealants, ...habits } = file.settings() as Settings & Habits;
  const wrong = wrongKeys(habits).map(({ at, what }) =>
    fault('bad-settings', what, `${path}, ${at}`, 'put it right and start again'),
  );
  const allWrong = [...file.faults, ...wrong];
  return {
    habits,
    wrong: firstAlone(allWrong)[0]?.message,
    file: {
      path,
      keys: habits.keys.length,
      intervals: Object.keys(intervals).length,
      sealants: sealants.length,
      wrong: allWrong.map((one) => one.message),
    },
    async keep({ keys: _, pedals, trays, ...set }) {
      await makeFolders(realDisk, dirname(path));
      const kept = Object.fromEntries(Object.entries(pedals).filter(([, key]) => key !== undefined));
      return (await file.save({ ...file.settings(), ...set, trays: [...trays], pedals: kept }))?.message;
    },
  };
}
