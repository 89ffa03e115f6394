// A persistent map in drawers: setting a key copies one drawer, not the whole cabinet. A draft notes what is set beside
// the cabinet and puts it in when it is settled, each key once. Neither knows what it holds.
const count = 128;

export type Drawers<T> = readonly Readonly<Record<string, T>>[];
export type Draft<T> = { under: Drawers<T>; over: Map<string, T | undefined> };

const none: Drawers<never> = Array.from({ length: count }, () => Object.create(null) as Record<string, never>);
export const emptyDrawers = <T>(): Drawers<T> => none as Drawers<T>;

function drawerOf(key: string): number {
  let sum = 0;
  for (let i = 0; i < key.length; i++) sum = (Math.imul(sum, 31) + key.charCodeAt(i)) | 0;
  return (sum >>> 0) % count;
}

export const pick = <T>(from: Drawers<T>, key: string): T | undefined => from[drawerOf(key)]?.[key];

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
  const drawers = [...under] as Record<string, T>[];
  const owned: true[] = [];
  for (const [key, value] of over) {
    const at = drawerOf(key);
    if (!owned[at]) {
      drawers[at] = Object.assign(Object.create(null), drawers[at]);
      owned[at] = true;
    }
    const drawer = drawers[at] as Record<string, T>;
    if (value === undefined) delete drawer[key];
    else drawer[key] = value;
  }
  return drawers;
}

export function* everyKey<T>(of: Drawers<T>): Generator<[string, T]> {
  for (const drawer of of) for (const key in drawer) yield [key, drawer[key] as T];
}

/** An append-only row shared between versions: each sees only its own length, a fork copies. */
export type Row<T> = { readonly all: T[]; readonly length: number };
export const emptyRow = <T>(): Row<T> => ({ all: [], length: 0 });
export function appended<T>(row: Row<T>, value: T): Row<T> {
  const all = row.all.length === row.length ? row.all : row.all.slice(0, row.length);
  all.push(value);
  return { all, length: all.length };
}
