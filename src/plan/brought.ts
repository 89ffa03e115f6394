// What a service of a plan brings onto the job: its areas with all that belongs to them, and what it names besides.
import { areaOf, named } from '../job/subjects.ts';
import { type Declaration, declaredWhole, subjectOf } from './declared-whole.ts';
import type { Plan } from './plan.ts';

/** The declarations these services bring; edges are left to whoever knows what else is on the job. */
export function broughtBy(plan: Plan, services: readonly string[]): Declaration[] {
  const taken = plan.services.filter((s) => services.includes(s.service));
  const areas = new Set(taken.flatMap((s) => s.areas));
  const also = new Set<string>(taken.flatMap((s) => s.also ?? []));
  const whole = declaredWhole(plan);
  const first = whole.filter((one) => also.has(subjectOf(one) ?? '') || comesWith(one, areas));
  const circuits = new Set(first.flatMap(circuitsOf));
  const beaded = first.some((one) => one.kind === 'face-declared' && one.bead);
  return whole.filter(
    (one) =>
      first.includes(one) ||
      (one.kind === 'circuit-declared' && circuits.has(one.circuit)) ||
      (one.kind === 'product-declared' && beaded),
  );
}

function comesWith(one: Declaration, areas: ReadonlySet<string>): boolean {
  switch (one.kind) {
    case 'area-declared':
    case 'face-declared':
      return areas.has(one.area);
    case 'hole-declared':
      return areas.has(areaOf(one.hole));
    case 'part-declared':
      return one.heldBy.some((hole) => areas.has(areaOf(hole)));
    case 'connection-declared':
      return one.area !== undefined && areas.has(one.area);
    case 'drive-declared':
      return one.areas.some((area) => areas.has(area));
    case 'temporary-declared':
      return one.at !== undefined && areas.has(areaAt(one.at) ?? '');
    default:
      return false;
  }
}

function areaAt(subject: string): string | undefined {
  const hole = named('hole', subject);
  return hole === undefined ? named('area', subject) : areaOf(hole);
}

function circuitsOf(one: Declaration): readonly string[] {
  if (one.kind === 'face-declared') return one.keepsIn;
  return one.kind === 'connection-declared' && one.circuit ? [one.circuit] : [];
}
