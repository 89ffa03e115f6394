// Whether a plan speaks only of what it has: names twice, holes twice, references to nothing, orders that go round,
// places no service brings. Finds the first that is wrong and where it is written.
import { areaOf, named, nameOf, type Subject, sortOf, subjectText } from '../job/subjects.ts';
import { cycleIn } from '../job/verbs/job.ts';
import { broughtBy } from './brought.ts';
import { type Declaration, declaredWhole, subjectOf } from './declared-whole.ts';
import { holesIn, numbersIn } from './holes-written.ts';
import type { Plan } from './plan.ts';

export type Unsound = { path: readonly (string | number)[]; what: string; next: string };
type Path = Unsound['path'];

/** More than this on one line of a log is no plan of one vehicle. */
const mostDeclarations = 4_500;

const subjectsOf = (declarations: readonly Declaration[]): string[] =>
  declarations.flatMap((one) => subjectOf(one) ?? []);

export function unsoundIn(plan: Plan): Unsound | undefined {
  const twice = namedTwice(plan) ?? holeTwice(plan);
  if (twice) return twice;
  const whole = declaredWhole(plan);
  if (whole.length > mostDeclarations) {
    return { path: [], what: `it declares ${whole.length} things`, next: 'make two plans of it' };
  }
  const there = new Set(subjectsOf(whole));
  return danglingIn(plan, there) ?? disordered(plan) ?? roundIn(plan) ?? broughtByNone(plan, there);
}

function namedTwice(plan: Plan): Unsound | undefined {
  const lists: [string, string, readonly string[]][] = [
    ['services', 'service', plan.services.map((s) => s.service)],
    ['areas', 'area', plan.areas.map((a) => a.area)],
    ['parts', 'part', (plan.parts ?? []).map((p) => p.part)],
    ['connections', 'connection', (plan.connections ?? []).map((c) => c.connection)],
    ['faces', 'face', (plan.faces ?? []).map((f) => f.face)],
    ['drives', 'drive', (plan.drives ?? []).map((d) => d.drive)],
    ['circuits', 'circuit', (plan.circuits ?? []).map((c) => c.circuit)],
    ['temporaries', 'temporary', (plan.temporaries ?? []).map((t) => t.temporary)],
    ['products', 'product', (plan.products ?? []).map((p) => p.product)],
  ];
  for (const [list, field, names] of lists) {
    const at = names.findIndex((name, i) => names.indexOf(name) < i);
    if (at >= 0) return { path: [list, at, field], what: `"${names[at]}" is there twice`, next: 'name one otherwise' };
  }
  return undefined;
}

function holeTwice(plan: Plan): Unsound | undefined {
  for (const [a, area] of plan.areas.entries()) {
    const seen = new Set<string>();
    for (const [g, group] of area.holes.entries()) {
      const numbers = numbersIn(group.numbers);
      for (const number of numbers) {
        if (seen.has(number)) {
          const what = `hole ${number} of ${area.area} is there twice`;
          return { path: ['areas', a, 'holes', g, 'numbers'], what, next: 'write each hole once' };
        }
        seen.add(number);
      }
      if (group.at && group.at.length !== numbers.length) {
        const what = `${numbers.length} holes, and ${group.at.length} places for them`;
        return { path: ['areas', a, 'holes', g, 'at'], what, next: 'give each hole its place, or none' };
      }
    }
  }
  return undefined;
}

/** Every place where the plan names something else of it, with what it must be. */
function* references(plan: Plan): Generator<[Path, Subject]> {
  for (const [i, s] of plan.services.entries()) {
    for (const [k, area] of s.areas.entries()) yield [['services', i, 'areas', k], `area:${area}`];
    for (const [k, one] of (s.also ?? []).entries()) yield [['services', i, 'also', k], one];
  }
  for (const [i, p] of (plan.parts ?? []).entries()) yield* holeReferences(['parts', i, 'heldBy'], p.heldBy ?? {});
  for (const [i, c] of (plan.connections ?? []).entries()) {
    if (c.area) yield [['connections', i, 'area'], `area:${c.area}`];
    if (c.circuit) yield [['connections', i, 'circuit'], `circuit:${c.circuit}`];
  }
  for (const [i, f] of (plan.faces ?? []).entries()) {
    yield [['faces', i, 'area'], `area:${f.area}`];
    yield* holeReferences(['faces', i, 'pressedBy'], f.pressedBy);
    for (const [k, circuit] of f.keepsIn.entries()) yield [['faces', i, 'keepsIn', k], `circuit:${circuit}`];
    if (f.part) yield [['faces', i, 'part'], `part:${f.part}`];
  }
  for (const [i, d] of (plan.drives ?? []).entries()) {
    for (const [k, area] of d.areas.entries()) yield [['drives', i, 'areas', k], `area:${area}`];
    for (const [k, part] of d.parts.entries()) yield [['drives', i, 'parts', k], `part:${part}`];
    if (d.crankBolt) yield [['drives', i, 'crankBolt'], `hole:${d.crankBolt}`];
  }
  for (const [i, t] of (plan.temporaries ?? []).entries()) if (t.at) yield [['temporaries', i, 'at'], t.at];
  for (const [i, edge] of (plan.behind ?? []).entries()) {
    yield [['behind', i, 'front'], edge.front];
    for (const [k, behind] of edge.behind.entries()) yield [['behind', i, 'behind', k], behind];
  }
}
function* holeReferences(path: Path, byArea: Readonly<Record<string, string>>): Generator<[Path, Subject]> {
  for (const area of Object.keys(byArea)) {
    yield [[...path, area], `area:${area}`];
    for (const hole of holesIn({ [area]: byArea[area] as string })) yield [[...path, area], `hole:${hole}`];
  }
}

function danglingIn(plan: Plan, there: ReadonlySet<string>): Unsound | undefined {
  for (const [path, subject] of references(plan)) {
    const drive = named('rotation', subject);
    if (subject === 'vehicle' || there.has(drive === undefined ? subject : `drive:${drive}`)) continue;
    const sort = drive === undefined ? sortOf(subject) : 'drive';
    return { path, what: `the plan has no ${sort} "${nameOf(subject)}"`, next: `declare it, or correct the name` };
  }
  return undefined;
}

function disordered(plan: Plan): Unsound | undefined {
  for (const [i, area] of plan.areas.entries()) {
    if (!area.order) continue;
    const holes = area.holes.flatMap((group) => numbersIn(group.numbers));
    const order = numbersIn(area.order);
    const stranger = order.find((number) => !holes.includes(number));
    const again = order.find((number, k) => order.indexOf(number) < k);
    const path = ['areas', i, 'order'];
    if (stranger) return { path, what: `${area.area} has no hole ${stranger}`, next: 'correct the order' };
    if (again) return { path, what: `hole ${again} is in the order twice`, next: 'correct the order' };
  }
  return undefined;
}

function roundIn(plan: Plan): Unsound | undefined {
  const edges = (plan.behind ?? []).flatMap(({ front, behind }) => behind.map((one) => ({ front, behind: one })));
  const round = cycleIn(edges);
  if (!round) return undefined;
  const at = (plan.behind ?? []).findIndex((e) => e.front === round[0] && e.behind.includes(round[1] as string));
  const what = `${round.map(subjectText).join(' in front of ')}: that goes round`;
  return { path: ['behind', at], what, next: 'leave one of them out' };
}

/** What no service brings would be declared and never reach a job. */
function broughtByNone(plan: Plan, there: ReadonlySet<string>): Unsound | undefined {
  const brought = new Set(
    subjectsOf(
      broughtBy(
        plan,
        plan.services.map((s) => s.service),
      ),
    ),
  );
  const lost = [...there].find((subject) => !brought.has(subject));
  if (!lost) return undefined;
  const sort = sortOf(lost) === 'hole' ? `area ${areaOf(nameOf(lost))}` : subjectText(lost);
  return { path: ['services'], what: `no service brings ${sort}`, next: 'name it in a service' };
}
