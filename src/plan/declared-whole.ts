// A plan written out as declaration entries, with none left out. What of it a job takes is another module's.
import type { Entry, EntryOf } from '../job/entry.ts';
import { holeIn } from '../job/subjects.ts';
import { holesIn, numbersIn } from './holes-written.ts';
import type { Path } from './place.ts';
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

/** A declaration and where in the file it is written. */
export type Declared = { declares: Declaration; path: Path };

/**
 * Every declaration of a plan: areas with their holes first, so that what speaks of a hole comes after it.
 * @param isWanted what of a list is to be declared; without it all
 */
export function declaredAt(plan: Plan, isWanted: (list: string, one: unknown) => boolean = () => true): Declared[] {
  const from = <T>(list: string, all: readonly T[] | undefined, declare: (one: T) => Declaration): Declared[] =>
    (all ?? []).flatMap((one, i): Declared[] =>
      isWanted(list, one) ? [{ declares: declare(one), path: [list, i] }] : [],
    );
  return [
    ...plan.areas.flatMap((area, i) => (isWanted('areas', area) ? areaDeclared(area, i) : [])),
    ...from('parts', plan.parts, ({ heldBy, ...part }) => ({
      kind: 'part-declared',
      ...part,
      heldBy: holesIn(heldBy ?? {}),
    })),
    ...from('circuits', plan.circuits, (circuit) => ({ kind: 'circuit-declared', ...circuit })),
    ...from('connections', plan.connections, (connection) => ({ kind: 'connection-declared', ...connection })),
    ...from('faces', plan.faces, ({ pressedBy, ...face }) => ({
      kind: 'face-declared',
      ...face,
      pressedBy: holesIn(pressedBy),
    })),
    ...from('drives', plan.drives, (drive) => ({ kind: 'drive-declared', ...drive })),
    ...from('temporaries', plan.temporaries, (temporary) => ({ kind: 'temporary-declared', ...temporary })),
    ...from('products', plan.products, (label) => ({ kind: 'product-declared', label })),
    ...(plan.behind ?? []).flatMap((edges, i) => (isWanted('behind', edges) ? edgesDeclared(edges, i) : [])),
  ];
}
export const declaredWhole = (plan: Plan): Declaration[] => declaredAt(plan).map((one) => one.declares);

function edgesDeclared({ front, behind, until, gate }: NonNullable<Plan['behind']>[number], i: number): Declared[] {
  return behind.map(
    (one, k): Declared => ({
      path: ['behind', i, 'behind', k],
      declares: {
        kind: 'behind-declared',
        front,
        behind: one,
        until: until ?? 'closed',
        ...(gate && { gate }),
        from: 'plan',
      },
    }),
  );
}

function areaDeclared({ holes, order, ...area }: PlanArea, i: number): Declared[] {
  return [
    {
      path: ['areas', i],
      declares: { kind: 'area-declared', ...area, planned: true, ...(order && { order: numbersIn(order) }) },
    },
    ...holes.flatMap(({ numbers, at, ...group }, g) =>
      numbersIn(numbers).map((number, k): Declared => {
        const place = at?.[k];
        const hole = holeIn(area.area, number);
        return {
          path: ['areas', i, 'holes', g],
          declares: { kind: 'hole-declared', hole, ...group, ...(place && { at: place }) },
        };
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
