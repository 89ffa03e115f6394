// What the settings file says of the bench, and keeping what was set on it.

import { dirname } from 'node:path';
import { type Habits, wrongKeys } from '../session/habits.ts';
import { makeFolders, realDisk } from '../store/disk.ts';
import { fault } from '../store/fault.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { openSettings } from '../store/settings.ts';

export type HabitsAtHand = {
  habits: Habits;
  /** One line for each thing wrong with the file; what is wrong is left out, the rest holds. */
  wrong: readonly string[];
  keep(habits: Habits): Promise<string | undefined>;
};

export async function habitsAtHand(): Promise<HabitsAtHand> {
  const { settings: path } = placesOn(thisMachine());
  const file = await openSettings(path);
  const { keypad, sounds, keys, pedals } = file.settings();
  const habits = { keypad, sounds, keys, pedals } as Habits;
  const wrong = wrongKeys(habits).map(
    ({ at, what }) => fault('bad-settings', what, `${path}, ${at}`, 'put it right and start again').message,
  );
  return {
    habits,
    wrong: [...file.faults.map((one) => one.message), ...wrong],
    async keep({ keypad, sounds, pedals }) {
      await makeFolders(realDisk, dirname(path));
      const kept = Object.fromEntries(Object.entries(pedals).filter(([, key]) => key !== undefined));
      return (await file.save({ ...file.settings(), keypad, sounds, pedals: kept }))?.message;
    },
  };
}
