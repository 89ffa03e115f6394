// A persistent map in chests of drawers: setting a key copies its drawer and the chest around it, not the whole cabinet. A
// draft notes what is set beside the cabinet and puts it in when it is settled, each key once. Neither knows what it holds.
const wide = 64;

/** Few keys, looked through in a row: of 5,000 subjects one or two lie in one. What was taken out is there without a value. */
type Drawer<T> = { keys: readonly string[]; values: (T | undefined)[] };
type Chest<T> = (Drawer<T> | undefined)[];
export type Drawers<T> = readonly (Readonly<Chest<T>> | undefined)[];
export type Draft<T> = { under: Drawers<T>; over: Map<string, T | undefined> };

const none: Drawers<never> = [];
const bare: readonly undefined[] = Array.from({ length: wide }, () => undefined);
export const emptyDrawers = <T>(): Drawers<T> => none;

/** Of the end of a key, where names differ. */
function placeOf(key: string): number {
  const { length } = key;
  let place = length;
  for (let i = Math.max(0, length - 6); i < length; i++) place = (Math.imul(place, 31) + key.charCodeAt(i)) | 0;
  return place;
}
const chestAt = (place: number): number => (place >>> 6) % wide;
const drawerAt = (place: number): number => place & (wide - 1);

export function pick<T>(from: Drawers<T>, key: string): T | undefined {
  if (from === none) return undefined;
  const place = placeOf(key);
  const drawer = from[chestAt(place)]?.[drawerAt(place)];
  return drawer?.values[drawer.keys.indexOf(key)];
}

export const draftOf = <T>(of: Drawers<T>): Draft<T> => ({ under: of, over: new Map() });

/** What stands under a key in a draft. */
export function noted<T>({ under, over }: Draft<T>, key: string): T | undefined {
  const value = over.get(key);
  if (value !== undefined || under === none || over.has(key)) return value;
  return pick(under, key);
}

export const put = <T>(into: Draft<T>, key: string, value: T | undefined): void => void into.over.set(key, value);

export function settled<T>({ under, over }: Draft<T>): Drawers<T> {
  if (over.size === 0) return under;
  const chests = (under === none ? bare : under).slice() as (Chest<T> | undefined)[];
  for (const [key, value] of over) {
    const place = placeOf(key);
    const at = chestAt(place);
    let chest = chests[at];
    if (!chest || chest === under[at]) {
      chest = (chest ?? bare).slice();
      chests[at] = chest;
    }
    layIn(chest, under[at], drawerAt(place), key, value);
  }
  return chests;
}

/** @param before the chest as others see it: what it shares with them is copied */
function layIn<T>(
  chest: Chest<T>,
  before: Readonly<Chest<T>> | undefined,
  at: number,
  key: string,
  value: T | undefined,
): void {
  let drawer = chest[at];
  if (!drawer || drawer === before?.[at]) {
    drawer = { keys: drawer?.keys ?? [], values: drawer?.values.slice() ?? [] };
    chest[at] = drawer;
  }
  const there = drawer.keys.indexOf(key);
  if (there >= 0) {
    drawer.values[there] = value;
  } else if (value !== undefined) {
    drawer.keys = [...drawer.keys, key];
    drawer.values.push(value);
  }
}

export function* everyKey<T>(of: Drawers<T>): Generator<[string, T]> {
  for (const chest of of)
    for (const { keys, values } of chest?.filter((drawer) => drawer !== undefined) ?? [])
      for (const [i, key] of keys.entries()) if (values[i] !== undefined) yield [key, values[i]];
}

/** An append-only row shared between versions: each sees only its own length, a fork copies. */
export type Row<T> = { readonly all: T[]; readonly length: number };
export const emptyRow = <T>(): Row<T> => ({ all: [], length: 0 });
export function appended<T>(row: Row<T>, value: T): Row<T> {
  const all = row.all.length === row.length ? row.all : row.all.slice(0, row.length);
  all.push(value);
  return { all, length: all.length };
}
