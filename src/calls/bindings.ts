// Which key means which call on which screen, read from the table: as it stands, by the numeric keypad, or with keys of
// one's own. A keypad's digits are the same characters as a keyboard's, so the two are two ways of reading one key.
import type { ScreenId } from '../view/screens.ts';
import type { Binding, Row } from './row.ts';
import { rowById, rows } from './table.ts';

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

/** The calls of a screen, each once, without those that are made by moving: as they are numbered where one is asked for. */
export const callIds = (all: readonly Bound[]): string[] => [
  ...new Set(all.map(({ row }) => row.id).filter((id) => !notChosen.has(id) && !isScreenStep(id))),
];
const isScreenStep = (id: string): boolean => id.startsWith('to-') && rowById.get(id)?.group === 'the screen';
/** Steps that are made by moving, or are the question itself. */
const notChosen = new Set([
  'up',
  'down',
  'page-up',
  'page-down',
  'first-row',
  'last-row',
  'next-group',
  'group-before',
  'choose',
  'more',
  'screens',
  'leave',
]);

export const standardKeymap = keymapOf();
