// The settings for a command that answers in lines: what is wrong with the file is told, and the usual ones hold.
import { placesOn, thisMachine } from '../store/places.ts';
import { openSettings, type Settings } from '../store/settings.ts';
import type { Out } from './answer.ts';

export async function settingsTold(out: Out): Promise<Settings> {
  const { settings, faults } = await openSettings(placesOn(thisMachine()).settings);
  for (const fault of faults) out.complain(`countback: ${fault.message}`);
  return settings();
}
