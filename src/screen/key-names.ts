// Keys as they are printed on the caps, and which of them makes a call.
import { type Keymap, padKeys } from '../calls/bindings.ts';
import type { Args } from '../calls/form.ts';
import type { ScreenId } from '../view/screens.ts';

const names: Record<string, string> = {
  enter: 'Enter',
  space: 'Space',
  backspace: 'Bksp',
  escape: 'Esc',
  right: 'Right',
  left: 'Left',
  'page-up': 'PgUp',
  'page-down': 'PgDn',
};
export const keyName = (key: string): string => names[key] ?? key;

/** The key of a call on a screen, as it is named there; empty where it has none. */
export function keyOf(keymap: Keymap, screen: ScreenId, call: string, args?: Args): string {
  const keys = keymap.keysOn(screen).filter((bound) => bound.row.id === call);
  const found = args ? keys.find((bound) => JSON.stringify(bound.binding.args) === JSON.stringify(args)) : keys[0];
  if (!found) return '';
  // On a keypad what has no place of its own is behind the screens or behind the calls of the screen.
  const isThere = !keymap.pad || (padKeys as readonly string[]).includes(found.binding.key);
  return isThere ? keyName(found.binding.key) : behind(keymap, screen, call.startsWith('to-') ? 'screens' : 'more');
}
const behind = (keymap: Keymap, screen: ScreenId, call: string): string =>
  keyName(keymap.keysOn(screen).find((bound) => bound.row.id === call)?.binding.key ?? '');
