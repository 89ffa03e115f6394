// What a workshop has set for the bench: keys of its own, the keypad, pedals, sounds. Kept in the settings file; here is
// what the bench makes of it, and why a key of one's own is refused.
import { type Keymap, keymapOf, type OwnKey } from '../calls/bindings.ts';
import { rowById } from '../calls/table.ts';
import { metric, torqueUnitOf, type Units } from '../trade/units-shown.ts';
import { screens } from '../view/screens.ts';

export type Habits = {
  name?: string | undefined;
  trays: readonly string[];
  units: Units;
  colours: boolean;
  keypad: boolean;
  sounds: boolean;
  keys: readonly OwnKey[];
  /** The keys that one or two foot pedals send. */
  pedals: { again?: string | undefined; strike?: string | undefined };
};
export const standardHabits: Habits = {
  trays: ['1', '2', '3', '4', '5', '6'],
  units: metric,
  colours: true,
  keypad: false,
  sounds: true,
  keys: [],
  pedals: {},
};

/** What of them a call is read and shown by. */
export const workshopOf = ({ name, trays, units }: Habits) => ({ name, trays, units });

/** Keys that can't be taken are left as the table has them; `wrongKeys` tells of them. */
export function keymapFor(habits: Habits): Keymap {
  const wrong = new Set(wrongKeys(habits).map(({ at }) => at));
  return keymapOf({ pad: habits.keypad, own: habits.keys.filter((_, i) => !wrong.has(`keys[${i}]`)) });
}

/** The call a pedal's key stands for, before any screen's own. */
export function pedalCall({ pedals }: Habits, key: string): string | undefined {
  if (key === pedals.again) return 'same-again';
  return key === pedals.strike ? 'strike-last' : undefined;
}

/** What was set, for the answer. */
export function habitWords(changed: Partial<Habits>): string {
  const { keypad, sounds, pedals, trays, units, colours } = changed;
  if ('name' in changed)
    return changed.name === undefined ? 'No name is offered.' : `"${changed.name}" is offered where a call is signed.`;
  if (trays) return `Trays: ${trays.join(', ')}.`;
  if (units)
    return `Distance in ${units.distance}, temperature in \u00b0${units.temperature}, torque in ${torqueUnitOf(units)}.`;
  if (colours !== undefined) return colours ? 'Colours are on.' : 'Colours are off; shapes and words stay.';
  if (keypad !== undefined)
    return keypad ? 'The keys are read by the numeric keypad.' : 'The keys are read by their letters.';
  if (sounds !== undefined) return sounds ? 'Bells are on.' : 'Bells are off.';
  const set = Object.values(pedals ?? {}).filter((key) => key !== undefined);
  return set.length > 0 ? `Pedals: ${set.join(', ')}.` : 'No pedal.';
}

const aKey = /^(?:.|enter|space|backspace|delete|tab|up|down|left|right|home|end|page-up|page-down|f\d{1,2})$/u;

export type WrongKey = { at: string; what: string };
/** Each key of one's own that is no key, is for no call, or is another call's on the same screen already. */
export function wrongKeys({ keys, pedals }: Habits): WrongKey[] {
  const wrong: WrongKey[] = [];
  const right: OwnKey[] = [];
  for (const [i, own] of keys.entries()) {
    const what = whyNotKey(own, right);
    if (what === undefined) right.push(own);
    else wrong.push({ at: `keys[${i}]`, what });
  }
  for (const [name, key] of Object.entries(pedals)) {
    if (key !== undefined && !aKey.test(key)) wrong.push({ at: `pedals.${name}`, what: `there is no key "${key}"` });
  }
  if (pedals.again !== undefined && pedals.again === pedals.strike)
    wrong.push({ at: 'pedals.strike', what: 'both pedals send the same key' });
  return wrong;
}
/** @param right those before it that are taken */
function whyNotKey({ call, key, on }: OwnKey, right: readonly OwnKey[]): string | undefined {
  const row = rowById.get(call);
  if (!row) return `there is no call "${call}"; "countback calls" lists them`;
  if (row.keys.length === 0) return `"${call}" has no key to be changed`;
  if (!aKey.test(key)) return `there is no key "${key}"`;
  if (on !== undefined && !screens.includes(on)) return `there is no screen "${on}"; there are ${screens.join(', ')}`;
  const map = keymapOf({ own: [...right, { call, key, ...(on && { on }) }] });
  for (const screen of on ? [on] : screens) {
    const bound = map.keysOn(screen).filter(({ binding }) => binding.key === key);
    const others = bound.find((one) => one.row.id !== call);
    if (others && bound.some((one) => one.row.id === call))
      return `"${key}" is the key of "${others.row.id}" on ${screen} already`;
  }
  return undefined;
}
