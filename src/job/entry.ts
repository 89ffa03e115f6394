// The union of everything a job's log can say. Shapes are strict: an unknown name or field is from a newer program (V1).
import * as z from 'zod';
import { declaredEntries } from './entries/declared.ts';
import { fastenerEntries } from './entries/fasteners.ts';
import { workEntries } from './entries/works.ts';

const all = [...declaredEntries, ...fastenerEntries, ...workEntries] as const;
export type Entry = z.infer<ReturnType<(typeof all)[number]['schema']>>;
export type EntryKind = Entry['kind'];
export type EntryOf<K extends EntryKind> = Extract<Entry, { kind: K }>;

export const entryKinds: readonly EntryKind[] = all.map(({ kind }) => kind);

const byKind: ReadonlyMap<unknown, (typeof all)[number]> = new Map(all.map((kind) => [kind.kind, kind]));
const ofNoKind = z.strictObject({ kind: z.enum(entryKinds) });

/** Holds a value to the shape of its kind. @param jitless without code made for it, which pays for itself only often used */
export function readEntry(value: unknown, jitless = false): z.ZodSafeParseResult<Entry> {
  const kind = byKind.get((value as { kind?: unknown } | null)?.kind);
  return (kind?.schema() ?? ofNoKind).safeParse(value, { jitless }) as z.ZodSafeParseResult<Entry>;
}
