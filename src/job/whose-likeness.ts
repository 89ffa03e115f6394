// How much better what is known of a fastener in the hand agrees with what is on record than with just any fastener of
// this job: a ratio, 1 where nothing is known on both sides. The figures were chosen on played jobs.
import { isAlike, type SeenField, type Spec } from './spec.ts';

/** How often each value is met on this job, for every field. */
export type Common = Readonly<Record<Field, ReadonlyMap<string, number>>>;
const fields = ['kind', 'head', 'thread', 'class', 'lengthMm', 'coating'] as const satisfies readonly SeenField[];
type Field = (typeof fields)[number];

/** What is seen or gauged is seldom wrong. */
const agrees = 0.95;
const contradicts: Readonly<Record<Field, number>> = {
  kind: 0.02,
  head: 0.01,
  thread: 0.01,
  class: 0.03,
  lengthMm: 0.004,
  // Rust, oil and wear change what is seen. A guess: in the played jobs no coating is known.
  coating: 0.25,
};
/** A length is read to a millimetre or two. */
const length = { withinMm: 2.5, agrees: 0.85, nearly: 0.05 };
/** So many unseen fasteners there are to every one on record. */
const unseen = 3;

export function commonOf(specs: readonly Spec[]): Common {
  const of = (field: Field) => {
    const count = new Map<string, number>();
    const known = specs.filter((spec) => spec[field] !== undefined);
    for (const spec of known) count.set(String(spec[field]), (count.get(String(spec[field])) ?? 0) + 1);
    return new Map([...count].map(([value, n]) => [value, n / (known.length + unseen)]));
  };
  return {
    kind: of('kind'),
    head: of('head'),
    thread: of('thread'),
    class: of('class'),
    lengthMm: of('lengthMm'),
    coating: of('coating'),
  };
}

export function likeness(common: Common, seen: Spec, onRecord: Spec): number {
  let ratio = 1;
  for (const field of fields) {
    if (seen[field] === undefined || onRecord[field] === undefined) continue;
    const usual = common[field].get(String(onRecord[field])) ?? 0.02;
    ratio *= field === 'lengthMm' ? lengthRatio(seen, onRecord, usual) : fieldRatio(field, seen, onRecord, usual);
  }
  return ratio;
}

const fieldRatio = (field: Field, seen: Spec, onRecord: Spec, usual: number): number =>
  isAlike(field, seen, onRecord) ? agrees / Math.max(usual, 0.02) : contradicts[field];

function lengthRatio(seen: Spec, onRecord: Spec, usual: number): number {
  const apart = Math.abs((seen.lengthMm ?? 0) - (onRecord.lengthMm ?? 0));
  if (apart < 1) return length.agrees / Math.max(usual, 0.02);
  return apart <= length.withinMm ? length.nearly / Math.max(usual, 0.02) : contradicts.lengthMm;
}
