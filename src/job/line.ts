// One line is what one call wrote: the unit of writing, of "saved", of tearing and of striking.
import * as z from 'zod';
import { type Entry, entryKinds, readEntry } from './entry.ts';
import { issueWords } from './issue-words.ts';
import { nameSchema } from './subjects.ts';

/** `atMs` wall clock UTC, `zoneMin` its offset, `run` one opening of the program, `awakeMs` monotonic since it began. */
const stampSchema = z.strictObject({
  atMs: z.number().int(),
  zoneMin: z.number().int().min(-1440).max(1440),
  run: z.number().int().nonnegative(),
  awakeMs: z.number().int().nonnegative(),
});
export type Stamp = z.infer<typeof stampSchema>;

/** A line but for what its entries say: they are held to the shape of their kind one by one. */
export const lineSchema = z.strictObject({
  n: z.number().int().positive(),
  ...stampSchema.shape,
  call: z.string().min(1).max(60),
  by: z.enum(['key', 'pad', 'voice', 'line']),
  who: z.string().max(60).optional(),
  /** What was current when it was called: evidence for ranking strays, and for where a list begins; it judges nothing. */
  facing: z.strictObject({ area: nameSchema.optional(), tray: nameSchema.optional() }),
  /** O5: order only. */
  overrides: z
    .array(z.strictObject({ rule: z.enum(['O1', 'O2', 'O3']), because: z.string().min(1).max(400) }))
    .optional(),
  entries: z.array(z.unknown()).min(1),
});
export type Line = Omit<z.infer<typeof lineSchema>, 'entries'> & { entries: [Entry, ...Entry[]] };

export type ReadLine = { ok: true; line: Line } | { ok: false; what: string; newer: boolean };

/** The first lines of a job are checked as the schemas stand: code made for them pays for itself only in a long one. */
const isEarly = (value: unknown): boolean => (((value as { n?: unknown } | null)?.n ?? 0) as number) < 300;

/** Parses one line's value; `newer` when a name or field is unknown, so that the file is refused and not "repaired". */
export function readLine(value: unknown, jitless = isEarly(value)): ReadLine {
  const read = lineSchema.safeParse(value, { jitless });
  if (!read.success) return notALine(value, read.error.issues[0], []);
  const entries: Entry[] = [];
  for (const [i, said] of read.data.entries.entries()) {
    const entry = readEntry(said, jitless);
    if (!entry.success) return notALine(value, entry.error.issues[0], ['entries', i]);
    entries.push(entry.data);
  }
  // A list that grew one by one keeps room for sixteen more: several megabytes of a long job.
  return { ok: true, line: { ...read.data, entries: entries.slice() as Line['entries'] } };
}

/** What keeps a line from being written whose entries hold already: `decide` gives no other. */
export function whyNotWritten(line: Line): string | undefined {
  const read = lineSchema.safeParse(line);
  const no = read.success ? undefined : notALine(line, read.error.issues[0], []);
  return no && !no.ok ? no.what : undefined;
}

function notALine(value: unknown, issue: z.core.$ZodIssue | undefined, inside: readonly PropertyKey[]): ReadLine {
  const at = [...inside, ...(issue?.path ?? [])].join('.') || 'line';
  const kinds: readonly string[] = entryKinds;
  const entries = (value as { entries?: { kind?: unknown }[] } | null)?.entries;
  const unknownKind =
    Array.isArray(entries) && entries.some((e) => typeof e?.kind === 'string' && !kinds.includes(e.kind));
  const newer = unknownKind || issue?.code === 'unrecognized_keys';
  const part = inside.reduce<unknown>((all, step) => (all as Record<PropertyKey, unknown> | null)?.[step], value);
  return { ok: false, what: `${at}: ${issue ? issueWords(issue, part).what : 'not a line'}`, newer };
}
