// A plan written out as declaration entries, with none left out. What of it a job takes is another module's.
import type { Entry, EntryOf } from '../job/entry.ts';
import { holeIn } from '../job/subjects.ts';
import { holesIn, numbersIn } from './holes-written.ts';
import type { Plan, PlanArea } from './plan.ts';

export type Declaration = EntryOf<
  | 'area-declared'
  | 'hole-declared'
  | 'part-declared'
  | 'connection-declared'
  | 'face-declared'
  | 'behind-declared'
  | 'drive-declared'
  | 'circuit-declared'
  | 'temporary-declared'
  | 'product-declared'
> &
  Entry;

/** Every declaration of a plan: areas with their holes first, so that what speaks of a hole comes after it. */
export function declaredWhole(plan: Plan): Declaration[] {
  return [
    ...plan.areas.flatMap(areaDeclared),
    ...(plan.parts ?? []).map(
      ({ heldBy, ...part }): Declaration => ({ kind: 'part-declared', ...part, heldBy: holesIn(heldBy ?? {}) }),
    ),
    ...(plan.circuits ?? []).map((circuit): Declaration => ({ kind: 'circuit-declared', ...circuit })),
    ...(plan.connections ?? []).map((connection): Declaration => ({ kind: 'connection-declared', ...connection })),
    ...(plan.faces ?? []).map(
      ({ pressedBy, ...face }): Declaration => ({ kind: 'face-declared', ...face, pressedBy: holesIn(pressedBy) }),
    ),
    ...(plan.drives ?? []).map((drive): Declaration => ({ kind: 'drive-declared', ...drive })),
    ...(plan.temporaries ?? []).map((temporary): Declaration => ({ kind: 'temporary-declared', ...temporary })),
    ...(plan.products ?? []).map((label): Declaration => ({ kind: 'product-declared', label })),
    ...(plan.behind ?? []).flatMap(({ front, behind, until, gate }) =>
      behind.map(
        (one): Declaration => ({
          kind: 'behind-declared',
          front,
          behind: one,
          until: until ?? 'closed',
          ...(gate && { gate }),
          from: 'plan',
        }),
      ),
    ),
  ];
}

function areaDeclared({ holes, order, ...area }: PlanArea): Declaration[] {
  return [
    { kind: 'area-declared', ...area, planned: true, ...(order && { order: numbersIn(order) }) },
    ...holes.flatMap(({ numbers, at, ...group }) =>
      numbersIn(numbers).map((number, i): Declaration => {
        const place = at?.[i];
        return { kind: 'hole-declared', hole: holeIn(area.area, number), ...group, ...(place && { at: place }) };
      }),
    ),
  ];
}

/** The subject a declaration speaks of; an edge and a product are none. */
export function subjectOf(declaration: Declaration): string | undefined {
  switch (declaration.kind) {
    case 'area-declared':
      return `area:${declaration.area}`;
    case 'hole-declared':
      return `hole:${declaration.hole}`;
    case 'part-declared':
      return `part:${declaration.part}`;
    case 'connection-declared':
      return `connection:${declaration.connection}`;
    case 'face-declared':
      return `face:${declaration.face}`;
    case 'drive-declared':
      return `drive:${declaration.drive}`;
    case 'circuit-declared':
      return `circuit:${declaration.circuit}`;
    case 'temporary-declared':
      return `temporary:${declaration.temporary}`;
    case 'behind-declared':
    case 'product-declared':
      return undefined;
  }
}
