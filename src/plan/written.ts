// Declarations written as the lists of a plan file: the way back from declared-whole.ts, with holes that are alike in
// ranges. Adds nothing and judges nothing.
import type { EntryOf } from '../job/entry.ts';
import { numbersText } from '../job/numbers-text.ts';
import { areaOf, type Hole, withinArea } from '../job/subjects.ts';
import type { Declaration } from './declared-whole.ts';
import type { Plan, PlanArea } from './plan.ts';

/** What of a plan is declared on a job. */
export type DeclaredLists = Pick<
  Plan,
  'areas' | 'parts' | 'connections' | 'faces' | 'behind' | 'drives' | 'circuits' | 'temporaries' | 'products'
>;

/** The longest text of hole numbers a plan takes, less one piece. */
const longestNumbers = 380;
/** As many places behind one front as a plan writes in one go. */
const mostBehind = 40;

type Said<K extends Declaration['kind']> = Omit<EntryOf<K>, 'kind'>;
const of = <K extends Declaration['kind']>(all: readonly Declaration[], kind: K): Said<K>[] =>
  all.filter((one) => one.kind === kind).map(({ kind: _, ...said }) => said as unknown as Said<K>);

export function writtenFrom(declarations: readonly Declaration[]): DeclaredLists {
  const holes = Map.groupBy(of(declarations, 'hole-declared'), (one) => areaOf(one.hole));
  const listed = {
    parts: of(declarations, 'part-declared').map(({ heldBy, ...part }) => ({
      ...part,
      ...(heldBy.length > 0 && { heldBy: byArea(heldBy) }),
    })),
    connections: of(declarations, 'connection-declared'),
    faces: of(declarations, 'face-declared').map(({ pressedBy, ...face }) => ({
      ...face,
      pressedBy: byArea(pressedBy),
    })),
    behind: edgesWritten(of(declarations, 'behind-declared')),
    drives: of(declarations, 'drive-declared').map((one) => ({ ...one, areas: [...one.areas] })),
    circuits: of(declarations, 'circuit-declared'),
    temporaries: of(declarations, 'temporary-declared'),
    products: of(declarations, 'product-declared').map((one) => one.label),
  };
  const filled = Object.entries(listed).filter(([, all]) => all.length > 0);
  return {
    areas: of(declarations, 'area-declared').map(({ planned: _, order, ...area }) => ({
      ...area,
      ...(order && { order: numbersText(order) }),
      holes: groupsOf(holes.get(area.area) ?? []),
    })),
    ...(Object.fromEntries(filled) as Partial<typeof listed>),
  };
}

type HoleSaid = Said<'hole-declared'>;
type Group = PlanArea['holes'][number];

/** Neighbours that are alike in all but where they sit share a group. */
function groupsOf(holes: readonly HoleSaid[]): Group[] {
  const groups: { numbers: string[]; at: [number, number][]; rest: Omit<HoleSaid, 'hole' | 'at'> }[] = [];
  for (const { hole, at, ...rest } of holes) {
    const last = groups.at(-1);
    const number = withinArea(hole);
    const goesOn = last && last.at.length > 0 === (at !== undefined) && isAlike(last.rest, rest);
    if (goesOn && fits(last.numbers, number)) {
      last.numbers.push(number);
      if (at) last.at.push(at);
    } else groups.push({ numbers: [number], at: at ? [at] : [], rest });
  }
  return groups.map(({ numbers, at, rest }) => ({
    numbers: numbersText(numbers),
    ...rest,
    ...(at.length > 0 && { at }),
  }));
}

/** A few always fit, however long their levels are named. */
const fits = (numbers: readonly string[], more: string): boolean =>
  numbers.length < 15 || numbersText([...numbers, more]).length <= longestNumbers;
/** Holes of one group share what was said of them, so most are told by a look. */
function isAlike(one: object, other: object): boolean {
  const fields = Object.entries(one);
  const same = (value: unknown, field: string) => value === (other as Record<string, unknown>)[field];
  if (fields.length === Object.keys(other).length && fields.every(([field, value]) => same(value, field))) return true;
  return JSON.stringify(one) === JSON.stringify(other);
}

function byArea(holes: readonly Hole[]): Record<string, string> {
  const all = [...Map.groupBy(holes, areaOf)].map(([area, some]) => [area, numbersText(some.map(withinArea))]);
  return Object.fromEntries(all);
}

type EdgeSaid = Said<'behind-declared'>;
function edgesWritten(edges: readonly EdgeSaid[]): NonNullable<Plan['behind']> {
  const fronts = Map.groupBy(edges, (one) => JSON.stringify([one.front, one.until, one.gate]));
  return [...fronts.values()].flatMap((alike) => {
    const [{ front, until, gate }] = alike as [EdgeSaid];
    const behind = alike.map((one) => one.behind);
    return Array.from({ length: Math.ceil(behind.length / mostBehind) }, (_, i) => ({
      front,
      behind: behind.slice(i * mostBehind, (i + 1) * mostBehind),
      ...(until !== 'closed' && { until }),
      ...(gate && { gate }),
    }));
  });
}
