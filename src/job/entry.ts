// The union of everything a job's log can say. Shapes are strict: an unknown name or field is from a newer program (V1).
import * as z from 'zod';
import { declaredEntries } from './entries/declared.ts';
import { fastenerEntries } from './entries/fasteners.ts';
import { workEntries } from './entries/works.ts';

export const entrySchema = z.discriminatedUnion('kind', [...declaredEntries, ...fastenerEntries, ...workEntries]);
export type Entry = z.infer<typeof entrySchema>;
export type EntryKind = Entry['kind'];
export type EntryOf<K extends EntryKind> = Extract<Entry, { kind: K }>;

export const entryKinds: readonly EntryKind[] = [...declaredEntries, ...fastenerEntries, ...workEntries].map(
  (e) => e.shape.kind.value,
);
