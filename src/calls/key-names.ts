// Which keys make a call, as they are named: on the screen that is up, on the one that has it, or
// by a keypad its number in the list of what has no key there. Wherever a key is named, it is named from here.

import type { ScreenId } from '../view/screens.ts';
import { screens } from '../view/screens.ts';
import { callIds, type Keymap, padKeys, screenIds } from './bindings.ts';
import type { Args } from './form.ts';
import { keyName } from './key-caps.ts';

const onPad: ReadonlySet<string> = new Set(padKeys);
/**
 * The number a call has among all calls of a screen: of two figures, so that none waits to be gone on with. What is pressed
 * before any other call has the same on every screen.
 */
export const numberAmongCalls = (id: string, at: number): string =>
  id === 'which' ? '00' : String(at + 1).padStart(2, '0');

/** The key of a call on a screen, as it is named there; empty where it has none. */
export function keyOf(keymap: Keymap, screen: ScreenId, call: string, args?: Args): string {
  const keys = keymap.keysOn(screen).filter((bound) => bound.row.id === call);
  const found = args ? keys.find((bound) => JSON.stringify(bound.binding.args) === JSON.stringify(args)) : keys[0];
  if (!found) return '';
  if (!keymap.pad || onPad.has(found.binding.key)) return keyName(found.binding.key);
  return behind(keymap, screen, call);
}
/** On a keypad what has no place of its own is behind the screens or behind the calls of the screen: "* 5", "/ 1 2". */
function behind(keymap: Keymap, screen: ScreenId, call: string): string {
  const toScreen = screenIds(keymap).indexOf(call);
  const at = toScreen >= 0 ? toScreen : callIds(keymap.keysOn(screen)).indexOf(call);
  if (at < 0) return '';
  const list = keyOf(keymap, screen, toScreen >= 0 ? 'screens' : 'more');
  const figures = toScreen >= 0 ? onItsPage(at) : [...numberAmongCalls(call, at)];
  return list && [list, ...figures].join(' ');
}
export const choicesAPage = 9;
const onItsPage = (at: number): string[] => [
  ...Array.from({ length: Math.floor(at / choicesAPage) }, () => '+'),
  String((at % choicesAPage) + 1),
];

/** How a call is reached from a screen: its key here, else the key of the screen that has it and then its own: "P i"; of several, one after the other. */
export function waySaid(keymap: Keymap, screen: ScreenId, call: string | readonly string[]): string {
  if (typeof call !== 'string') return call.map((one) => waySaid(keymap, screen, one)).join(' then ');
  const here = keyOf(keymap, screen, call);
  if (here !== '') return here;
  for (const there of screens) {
    const key = keyOf(keymap, there, call);
    const led = keyOf(keymap, screen, `to-${there}`);
    if (key !== '' && led !== '') return `${led} ${key}`;
  }
  return '';
}
