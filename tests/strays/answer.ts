// What is true of a leftover, what is answered, and whether the one is the other. Holes of one area with equal spec and in
// the same standing cannot be told apart and count as one answer; so does a number nobody called and its area.
import { type Ledger, stateOf } from '../../src/job/ledger.ts';
import { cannotBeToldApart, type Spec, specText } from '../../src/job/spec.ts';
import { areaOf, type Hole } from '../../src/job/subjects.ts';

export type As = 'open' | 'closed' | 'never called' | 'old one' | 'new one' | 'not of this job';
export type Answer = { as: As; area?: string; holes?: readonly Hole[]; box?: string };
/** `place` is hole:H, area:A where the number is not known, box:NAME, or vehicle. */
export type Candidate = { as: As; place: string };

/** How a hole stands in the ledger. */
export function standingOf(ledger: Ledger, hole: Hole): 'open' | 'closed' | 'never called' {
  const c = stateOf(ledger, 'hole', hole)?.called;
  if (!c || c.touchedAt === 0) return 'never called';
  return c.occupant && c.occupant.level !== 'slack' ? 'closed' : 'open';
}

export function specOfHole(ledger: Ledger, hole: Hole): Spec {
  const h = stateOf(ledger, 'hole', hole);
  const first = h?.called.first === undefined ? undefined : stateOf(ledger, 'fastener', h.called.first);
  return h?.declared?.wants ?? first?.spec ?? h?.called.occupant?.spec ?? {};
}

/** Candidates of one class cannot be told apart by the ledger. */
export function classOf(ledger: Ledger, { as, place }: Candidate): string {
  const hole = place.startsWith('hole:') ? place.slice('hole:'.length) : undefined;
  if (hole === undefined) return `${as} ${place}`;
  return `${as} ${areaOf(hole)} ${specText(specOfHole(ledger, hole))}`;
}

export function isRight(ledger: Ledger, answer: Answer, { as, place }: Candidate): boolean {
  if (as !== answer.as) return false;
  switch (as) {
    case 'not of this job':
      return true;
    case 'new one':
      return place === `box:${answer.box}`;
    case 'never called':
      if (place === `area:${answer.area}`) return true;
  }
  const hole = place.startsWith('hole:') ? place.slice('hole:'.length) : undefined;
  if (hole === undefined || areaOf(hole) !== answer.area) return false;
  if (answer.holes?.includes(hole)) return true;
  return (answer.holes ?? []).some((one) => cannotBeToldApart(specOfHole(ledger, one), specOfHole(ledger, hole)));
}

/** The place of the right answer among the classes answered, from 1; Infinity where it is not among them. */
export function rankOf(ledger: Ledger, answer: Answer, candidates: readonly Candidate[]): number {
  const classes = new Set<string>();
  for (const candidate of candidates) {
    classes.add(classOf(ledger, candidate));
    if (isRight(ledger, answer, candidate)) return classes.size;
  }
  return Number.POSITIVE_INFINITY;
}
