// What the settings file says of the bench, and keeping what was set on it.

import { dirname } from 'node:path';
import type { SettingsFile } from '../calls/lists/settings.ts';
import { type Habits, wrongKeys } from '../session/habits.ts';
import { makeFolders, realDisk } from '../store/disk.ts';
import { fault } from '../store/fault.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { openSettings, type Settings } from '../store/settings.ts';

export type HabitsAtHand = {
  habits: Habits;
  /** One line for each thing wrong with the file; what is wrong is left out, the rest holds. */
  wrong: readonly string[];
  file: SettingsFile;
  keep(habits: Habits): Promise<string | undefined>;
};

export async function habitsAtHand(): Promise<HabitsAtHand> {
  const { settings: path } = placesOn(thisMachine());
  const file = await openSettings(path);
  const { intervals, sealants, ...habits } = file.settings() as Settings & Habits;
  const wrong = wrongKeys(habits).map(
    ({ at, what }) => fault('bad-settings', what, `${path}, ${at}`, 'put it right and start again').message,
  );
  const allWrong = [...file.faults.map((one) => one.message), ...wrong];
  return {
    habits,
    wrong: allWrong,
    file: {
      path,
      keys: habits.keys.length,
      intervals: Object.keys(intervals).length,
      sealants: sealants.length,
      wrong: allWrong,
    },
    async keep({ keys: _, pedals, trays, ...set }) {
      await makeFolders(realDisk, dirname(path));
      const kept = Object.fromEntries(Object.entries(pedals).filter(([, key]) => key !== undefined));
      return (await file.save({ ...file.settings(), ...set, trays: [...trays], pedals: kept }))?.message;
    },
  };
}
