// Sets habits on the bench, at once and in the settings file; among them a pedal, which is learnt by pressing it.

import type { Keymap } from '../calls/bindings.ts';
import { cap, questionKeys } from '../calls/key-caps.ts';
import { type Habits, habitWords, keymapFor, wrongKeys } from './habits.ts';

type Told = { habits?: Habits; keymap?: Keymap; note?: string; word?: string };
export type Keeping = {
  keep(changed: Partial<Habits>): void;
  learnPedals(): void;
  /** Takes a key while a pedal is being learnt; false when none is. */
  learns(key: string): boolean;
};

export function createKeeping({
  get,
  set,
  toFile,
}: {
  get(): Habits;
  set(told: Told): void;
  /** The words of a fault when it could not be kept. */
  toFile?: (habits: Habits) => Promise<string | undefined>;
}): Keeping {
  let kept: Promise<void> = Promise.resolve();
  let learning: keyof Habits['pedals'] | undefined;

  function keep(changed: Partial<Habits>): void {
    const habits = { ...get(), ...changed };
    set({ habits, keymap: keymapFor(habits), note: habitWords(changed) });
    // One after the other: two at once would find the file changed under them.
    kept = kept.then(async () => {
      const fault = await toFile?.(habits);
      if (fault !== undefined) set({ word: `Not kept, it holds until the program is left: ${fault}` });
    });
  }
  /** The next key pressed is the pedal's; then that of a second one. Escape leaves one out. */
  function learn(key: string, which: keyof Habits['pedals']): void {
    const pedals = { ...get().pedals, [which]: key === questionKeys.leave ? undefined : key };
    const wrong = wrongKeys({ ...get(), pedals }).find(({ at }) => at.startsWith('pedals'));
    if (wrong) return set({ word: `${wrong.what}: press another, or ${cap.leave}.` });
    learning = which === 'again' && key !== questionKeys.leave ? 'strike' : undefined;
    keep({ pedals });
    if (learning)
      set({ note: `"${key}" is "same again". A second pedal, to strike the last call? Press it, or ${cap.leave}.` });
  }

  return {
    keep,
    learnPedals() {
      learning = 'again';
      set({ note: `Press the pedal now: it will be "same again". ${cap.leave}: no pedal.` });
    },
    learns(key) {
      if (!learning) return false;
      learn(key, learning);
      return true;
    },
  };
}
