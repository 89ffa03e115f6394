// The settings for a command that answers in lines: what is wrong with the file is told, and the usual ones hold.

import { type Fault, fault } from '../store/fault.ts';
import { placesOn, thisMachine } from '../store/places.ts';
import { openSettings, type Settings } from '../store/settings.ts';
import type { Out } from './answer.ts';

/** Of several the first, where there is room for one alone: the settings screen has them all. */
export function firstAlone(faults: readonly Fault[]): Fault[] {
  const [first, ...more] = faults;
  if (first === undefined || more.length === 0) return [...faults];
  const { kind, what, where, next } = first;
  return [fault(kind, what, where, `${next} (${more.length} more: the settings screen has them in its row "file")`)];
}

export async function settingsTold(out: Out): Promise<Settings> {
  const { settings, faults } = await openSettings(placesOn(thisMachine()).settings);
  for (const fault of faults) out.complain(`countback: ${fault.message}`);
  return settings();
}
