// Several plans as one, where they are of the same vehicle: what two say alike is there once, what one knows more of is
// filled in, and what they say differently is refused with both places. A plan merged with nothing is itself.
import { areaOf, type Subject, subjectText, withinArea } from '../job/subjects.ts';
import { type Declaration, type Declared, declaredAt, subjectOf } from './declared-whole.ts';
import { joined, sameHoles } from './joined.ts';
import { knownOf, namedAlike } from './named-alike.ts';
import { type Path, placeText } from './place.ts';
import type { Plan } from './plan.ts';
import { roundAmong } from './sound.ts';
import { writtenFrom } from './written.ts';

/** A plan, and its file as it is to be named. */
export type Source = { plan: Plan; file: string };
export type Clash = { what: string; places: readonly string[] };
export type Merged = { ok: true; plan: Plan } | { ok: false; clashes: readonly Clash[] };

export function mergePlans(several: readonly [Source, ...Source[]]): Merged {
  const [first, ...more] = several;
  if (more.length === 0) return { ok: true, plan: first.plan };
  const sources = inNamesOfThoseBefore(first, more);
  const isNew = notYetSaid();
  const declared = sources.map(({ plan, file }) => ({ file, all: declaredAt(plan, isNew) }));
  const { declarations, there, clashes } = merged(declared);
  const services = servicesOf(sources);
  const all = [...clashes, ...services.clashes, ...holesDiffer(declared)];
  if (all.length > 0) return { ok: false, clashes: all };
  const plans = sources.map((one) => one.plan);
  const plan: Plan = {
    countback: 'plan',
    version: first.plan.version,
    name: plans
      .map((one) => one.name)
      .join(' and ')
      .slice(0, 60),
    vehicle: [...new Set(plans.map((one) => one.vehicle))].join('; '),
    ...lists(plans),
    services: services.services,
    ...writtenFrom(declarations),
  };
  const round = roundIn(declarations, there);
  return round ? { ok: false, clashes: [round] } : { ok: true, plan };
}

/** What a plan before calls otherwise is one thing with it. */
function inNamesOfThoseBefore(first: Source, more: readonly Source[]): [Source, ...Source[]] {
  const known = new Map(knownOf(first.plan));
  const others = more.map(({ plan, file }): Source => {
    const named = namedAlike(plan, knownOf(plan), known);
    for (const [subject, by] of knownOf(named)) known.set(subject, by);
    return { plan: named, file };
  });
  return [first, ...others];
}

/** What one plan says word for word like one before it adds nothing and contradicts nothing. */
function notYetSaid(): (list: string, one: unknown) => boolean {
  const said = new Set<string>();
  return (list, one) => {
    const text = `${list}${JSON.stringify(one)}`;
    return !said.has(text) && said.add(text) !== undefined;
  };
}

const keyOf = (one: Declaration): string => {
  if (one.kind === 'behind-declared') return `behind:${one.front}\n${one.behind}`;
  return one.kind === 'product-declared' ? `product:${one.label.product}` : (subjectOf(one) as string);
};

type DeclaredIn = { file: string; all: readonly Declared[] };

function merged(sources: readonly DeclaredIn[]) {
  const there = new Map<string, Standing>();
  const clashes: Clash[] = [];
  for (const { file, all } of sources) {
    for (const { declares, path } of all) {
      const key = keyOf(declares);
      const before = there.get(key);
      if (!before) {
        there.set(key, { said: declares, file, path });
        continue;
      }
      const both = joined(before.said, declares);
      if ('value' in both) before.said = both.value as Declaration;
      else {
        const what = `${nameOfKey(key)}: two say different ${both.differ.join(' ')}`;
        clashes.push({ what, places: [placeOf(before), placeText(file, path)] });
      }
    }
  }
  return { declarations: inOrder([...there.values()].map((one) => one.said)), there, clashes };
}
/** What is said of a thing so far, and where it was said first. */
type Standing = { said: Declaration; file: string; path: Path };
const placeOf = ({ file, path }: Standing): string => placeText(file, path);
const nameOfKey = (key: string): string =>
  key.startsWith('behind:')
    ? key.slice('behind:'.length).split('\n').map(subjectText).join(' in front of ')
    : subjectText(key);

/** Holes after their areas, whichever plan they came from. */
const inOrder = (all: readonly Declaration[]): Declaration[] => [
  ...all.filter((one) => one.kind === 'area-declared'),
  ...all.filter((one) => one.kind !== 'area-declared'),
];

/** A cover of ten holes is not the same cover as one of twelve. */
function holesDiffer(sources: readonly DeclaredIn[]): Clash[] {
  const first = new Map<string, { numbers: Set<string>; at: string }>();
  const clashes: Clash[] = [];
  for (const { file, all } of sources) {
    const areas = all.filter((one) => one.declares.kind === 'area-declared');
    const holes = all.flatMap(({ declares }) => (declares.kind === 'hole-declared' ? declares.hole : []));
    const byArea = Map.groupBy(holes, areaOf);
    for (const { declares, path } of areas) {
      if (declares.kind !== 'area-declared') continue;
      const numbers = new Set((byArea.get(declares.area) ?? []).map(withinArea));
      const at = placeText(file, path);
      const before = first.get(declares.area);
      if (!before) {
        first.set(declares.area, { numbers, at });
        continue;
      }
      const odd = [...before.numbers, ...numbers].find((n) => before.numbers.has(n) !== numbers.has(n));
      if (odd)
        clashes.push({ what: `${declares.area}: hole ${odd} is in one and not in the other`, places: [before.at, at] });
    }
  }
  return clashes;
}

function servicesOf(sources: readonly Source[]) {
  const services = new Map<string, { said: Plan['services'][number]; at: string }>();
  const clashes: Clash[] = [];
  for (const { plan, file } of sources) {
    for (const [i, said] of plan.services.entries()) {
      const at = placeText(file, ['services', i]);
      const before = services.get(said.service);
      if (!before) services.set(said.service, { said, at });
      else if (!isSameService(before.said, said)) {
        clashes.push({ what: `${said.service}: two services of one name`, places: [before.at, at] });
      }
    }
  }
  return { services: [...services.values()].map((one) => one.said), clashes };
}
const isSameService = (one: Plan['services'][number], other: Plan['services'][number]): boolean =>
  sameHoles(one.areas, other.areas) && sameHoles(one.also ?? [], other.also ?? []);

/** What is only read by people, each said once. */
function lists(plans: readonly Plan[]): Pick<Plan, 'notes' | 'cautions' | 'sources' | 'newParts'> {
  const once = <T>(all: readonly (readonly T[] | undefined)[]): T[] => [
    ...new Map(all.flatMap((some) => some ?? []).map((one) => [JSON.stringify(one), one])).values(),
  ];
  const joint = {
    notes: once(plans.map((one) => one.notes)),
    cautions: once(plans.map((one) => one.cautions)),
    sources: once(plans.map((one) => one.sources)),
    newParts: boughtTogether(plans),
  };
  return Object.fromEntries(Object.entries(joint).filter(([, all]) => all.length > 0));
}

type NewPart = NonNullable<Plan['newParts']>[number];
/** One of a name is bought once, for all services that want it; of those of two plans, the greater number. */
function boughtTogether(plans: readonly Plan[]): NewPart[] {
  const bought = new Map<string, NewPart>();
  for (const { newParts = [], services } of plans) {
    for (const one of newParts) {
      const before = bought.get(one.name);
      const wanting = [...(before?.services ?? []), ...(one.services ?? services.map((s) => s.service))];
      bought.set(one.name, {
        ...one,
        ...before,
        quantity: Math.max(before?.quantity ?? 0, one.quantity),
        services: [...new Set(wanting)],
      });
    }
  }
  return [...bought.values()];
}

/** Each edge of the round with the file it stands in. */
function roundIn(whole: readonly Declaration[], there: ReadonlyMap<string, Standing>): Clash | undefined {
  const round = roundAmong(whole);
  if (!round) return undefined;
  const edges = round.flatMap((front, i) => edgeAt(there, front, round[i + 1]));
  return { what: `${round.map(subjectText).join(' in front of ')}: that goes round`, places: edges };
}

function edgeAt(there: ReadonlyMap<string, Standing>, front: Subject, behind: Subject | undefined): string[] {
  const edge = there.get(`behind:${front}\n${behind}`);
  return edge ? [placeOf(edge)] : [];
}
