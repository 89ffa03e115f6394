// Which lines stand, and what they say once holes called wrongly are exchanged. Always worked out from all lines.
import type { PlainEntry, PlainLine } from './plain.ts';

const speaksOfLines = (entry: PlainEntry) => entry.kind === 'calls-struck' || entry.kind === 'calls-restored';

/** X3: release and reopening can't be struck. */
const cannotBeStruck = (line: PlainLine) =>
  line.entries.some((entry) => entry.kind === 'released' || entry.kind === 'reopened');

/**
 * The numbers of the struck lines. Read from the last line to the first: whether a line is struck is settled by lines
 * after it alone, and the last of them that speaks of it and is not struck itself has the word.
 */
export function struckLines(lines: PlainLine[]): Set<number> {
  const settled = new Map<number, boolean>();
  const byNumber = new Map(lines.map((line) => [line.n, line]));
  for (const line of [...lines].reverse()) {
    if (settled.get(line.n) === true) continue;
    for (const entry of [...line.entries].reverse()) {
      if (!speaksOfLines(entry)) continue;
      for (const n of entry.lines) {
        const spokenOf = byNumber.get(n);
        if (spokenOf === undefined || n >= line.n || cannotBeStruck(spokenOf) || settled.has(n)) continue;
        settled.set(n, entry.kind === 'calls-struck');
      }
    }
  }
  return new Set([...settled].filter(([, struck]) => struck).map(([n]) => n));
}

/** Declarations say what there is; only what was called of a hole goes over to the other. */
const isCalled = (entry: PlainEntry) => !entry.kind.endsWith('-declared');

function renamed<T>(value: T, one: string, other: string): T {
  if (typeof value === 'string') {
    const names: Record<string, string> = {
      [one]: other,
      [other]: one,
      [`hole:${one}`]: `hole:${other}`,
      [`hole:${other}`]: `hole:${one}`,
    };
    return (names[value] ?? value) as T;
  }
  if (Array.isArray(value)) return value.map((inside) => renamed(inside, one, other)) as T;
  if (value !== null && typeof value === 'object') {
    return Object.fromEntries(Object.entries(value).map(([name, inside]) => [name, renamed(inside, one, other)])) as T;
  }
  return value;
}

/** U3: all that was called of one hole up to an exchange was of the other, and the other way round. */
export function standingLines(lines: PlainLine[]): PlainLine[] {
  const struck = struckLines(lines);
  let standing = lines.filter((line) => !struck.has(line.n));
  for (const line of [...standing]) {
    for (const exchange of line.entries) {
      if (exchange.kind !== 'holes-exchanged') continue;
      standing = standing.map((before) => {
        if (before.n >= line.n) return before;
        const entries = before.entries.map((entry) =>
          isCalled(entry) && entry.kind !== 'holes-exchanged' ? renamed(entry, exchange.one, exchange.other) : entry,
        );
        return { ...before, entries };
      });
    }
  }
  return standing;
}
