// A persistent map in drawers: setting a key copies one drawer, not the whole cabinet. A draft owns the drawers it has
// copied, so that folding many lines copies each drawer once. Neither knows what it holds.
const count = 128;

export type Drawers<T> = readonly Readonly<Record<string, T>>[];
export type Draft<T> = { drawers: Record<string, T>[]; owned: boolean[] };

const none: Drawers<never> = Array.from({ length: count }, () => Object.create(null) as Record<string, never>);
export const emptyDrawers = <T>(): Drawers<T> => none as Drawers<T>;

function drawerOf(key: string): number {
  let sum = 0;
  for (let i = 0; i < key.length; i++) sum = (Math.imul(sum, 31) + key.charCodeAt(i)) | 0;
  return (sum >>> 0) % count;
}

export const pick = <T>(from: Drawers<T>, key: string): T | undefined => from[drawerOf(key)]?.[key];

export const draftOf = <T>(of: Drawers<T>): Draft<T> => ({ drawers: [...of] as Record<string, T>[], owned: [] });
/** The draft must not be used any more afterwards. */
export const settled = <T>(draft: Draft<T>): Drawers<T> => draft.drawers;

export function put<T>(into: Draft<T>, key: string, value: T | undefined): void {
  const at = drawerOf(key);
  if (!into.owned[at]) {
    into.drawers[at] = Object.assign(Object.create(null), into.drawers[at]);
    into.owned[at] = true;
  }
  const drawer = into.drawers[at] as Record<string, T>;
  if (value === undefined) delete drawer[key];
  else drawer[key] = value;
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
