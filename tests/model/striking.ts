// Which lines stand, and what they say once holes called wrongly are exchanged. Always worked out from all lines.
import type { PlainEntry, PlainLine } from './plain.ts';

const speaksOfLines = (entry: PlainEntry) => entry.kind === 'calls-struck' || entry.kind === 'calls-restored';

/** X3: release and reopening can't be struck, not by a forged line either. */
const neverStruck = ['released', 'reopened'];
const cannotBeStruck = (line: PlainLine) => line.entries.some((entry) => neverStruck.includes(entry.kind));

/** The numbers of the struck lines: of all that speak of a line, the last has the word. */
export function struckLines(lines: PlainLine[]): Set<number> {
  const struck = new Set<number>();
  for (const line of lines) {
    for (const entry of line.entries) {
      if (!speaksOfLines(entry)) continue;
      for (const n of entry.lines) {
        const spokenOf = lines.find((other) => other.n === n);
        if (spokenOf === undefined || n >= line.n || cannotBeStruck(spokenOf)) continue;
        if (entry.kind === 'calls-struck') struck.add(n);
        else struck.delete(n);
      }
    }
  }
  return struck;
}

/** Declarations say what there is; only what was called of a hole goes over to the other. */
const isCalled = (entry: PlainEntry) => !entry.kind.endsWith('-declared');

type Names = Record<string, string>;
const swapping = ({ one, other }: PlainEntry): Names => ({
  [one]: other,
  [other]: one,
  [`hole:${one}`]: `hole:${other}`,
  [`hole:${other}`]: `hole:${one}`,
});

/** Holes are named in an entry's own fields and in those of its pieces, nowhere deeper. */
function renamed(entry: PlainEntry, names: Names): PlainEntry {
  const fresh = (value: unknown): unknown => {
    if (typeof value === 'string') return names[value] ?? value;
    if (!Array.isArray(value)) return value;
    return value.map((inside) =>
      typeof inside === 'object' && inside !== null ? renamed(inside as PlainEntry, names) : fresh(inside),
    );
  };
  const into: Record<string, unknown> = {};
  for (const [field, value] of Object.entries(entry)) into[field] = fresh(value);
  return into as PlainEntry;
}

/** U3: all that was called of one hole up to an exchange was of the other, and the other way round. */
export function standingLines(lines: PlainLine[]): PlainLine[] {
  const struck = struckLines(lines);
  let standing = lines.filter((line) => !struck.has(line.n));
  for (const line of [...standing]) {
    for (const exchange of line.entries) {
      if (exchange.kind !== 'holes-exchanged') continue;
      const names = swapping(exchange);
      standing = standing.map((before) => {
        if (before.n >= line.n) return before;
        const entries = before.entries.map((entry) => (isCalled(entry) ? renamed(entry, names) : entry));
        return { ...before, entries };
      });
    }
  }
  return standing;
}
