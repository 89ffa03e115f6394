// Which key means which call on which screen, read from the table: as it stands, by the numeric keypad, or with keys of
// one's own. A keypad's digits are the same characters as a keyboard's, so the two are two ways of reading one key.
import { type ScreenId, screens } from '../view/screens.ts';
import type { Binding, Row } from './row.ts';
import { rows } from './table.ts';

export type Bound = { row: Row; binding: Binding };
export type Keymap = {
  /** Every key of a screen, in the order of the table. */
  keysOn(screen: ScreenId): readonly Bound[];
  /** What a key means on a screen; a screen's own binding goes before one that holds anywhere. */
  boundTo(key: string, screen: ScreenId): Bound | undefined;
  pad: boolean;
};
/** A call by another key; `on` where the call has keys on several screens and only one is meant. */
export type OwnKey = { call: string; key: string; on?: ScreenId };

/** What a numeric keypad has beside Enter. */
export const padKeys = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '+', '-', '*', '/', 'enter'] as const;
const onPad: ReadonlySet<string> = new Set(padKeys);

const isOn = (binding: Binding, screen: ScreenId): boolean =>
  binding.on === 'any' || binding.on === screen || (Array.isArray(binding.on) && binding.on.includes(screen));

/** The bindings of a row as they are read: by the pad, a key that has a place on it is shown and pressed there. */
function readBy(pad: boolean, { key, pad: padKey, ...rest }: Binding): Binding[] {
  if (!pad) return key === '' ? [] : [{ key, ...rest }];
  const there = padKey === undefined ? [] : [{ ...rest, key: padKey, footer: undefined }];
  return onPad.has(key) ? there : [...there, { key, ...rest, footer: padKey === undefined ? rest.footer : false }];
}

export function keymapOf({ pad = false, own = [] }: { pad?: boolean; own?: readonly OwnKey[] } = {}): Keymap {
  const all = rows.flatMap((row) =>
    row.keys.flatMap((binding) => readBy(pad, owned(row, binding, own)).map((one): Bound => ({ row, binding: one }))),
  );
  const bySreen = new Map<ScreenId, readonly Bound[]>();
  const keysOn = (screen: ScreenId): readonly Bound[] => {
    const known = bySreen.get(screen) ?? all.filter(({ binding }) => isOn(binding, screen));
    bySreen.set(screen, known);
    return known;
  };
  return {
    pad,
    keysOn,
    boundTo(key, screen) {
      const bound = keysOn(screen).filter(({ binding }) => binding.key === key);
      return bound.find(({ binding }) => binding.on !== 'any') ?? bound[0];
    },
  };
}
const owned = (row: Row, binding: Binding, own: readonly OwnKey[]): Binding => {
  const mine = own.find((one) => one.call === row.id && (one.on === undefined || isOn(binding, one.on)));
  return mine ? { ...binding, key: mine.key } : binding;
};

/** The calls that lead to a screen, in the order in which they are numbered where one is asked for. */
export const screenIds = (keymap: Keymap): string[] =>
  keymap
    .keysOn('strip')
    .flatMap(({ row: { id, group } }) => (id.startsWith('to-') && group === 'the screen' ? [id] : []));

/** The keys that lead from a screen to a call: its own there, else the screen's that has it and then its own; none by a keypad that has it nowhere. */
export function wayTo(keymap: Keymap, screen: ScreenId, call: string): string[] {
  const on = (one: ScreenId): string | undefined =>
    keymap.keysOn(one).find(({ row, binding }) => row.id === call && (!keymap.pad || onPad.has(binding.key)))?.binding
      .key;
  const here = on(screen);
  if (here !== undefined) return [here];
  for (const there of screens) {
    const key = on(there);
    const led = keymap.keysOn(screen).find(({ row }) => row.id === `to-${there}`)?.binding.key;
    if (key !== undefined && led !== undefined && (!keymap.pad || onPad.has(led))) return [led, key];
  }
  return [];
}

export const standardKeymap = keymapOf();
