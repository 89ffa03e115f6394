// Whether a plan speaks only of what it has: names twice, holes twice, references to nothing, orders that go round,
// places no service brings. Finds all that is wrong and where it is written.
import { areaOf, named, nameOf, type Subject, sortOf, subjectText } from '../job/subjects.ts';
import { cycleIn } from '../job/verbs/job.ts';
import { broughtBy } from './brought.ts';
import { type Declaration, declaredWhole, subjectOf } from './declared-whole.ts';
import { noHeadOrThread } from './heads-and-threads.ts';
import { holesIn, numbersIn } from './holes-written.ts';
import type { Path } from './place.ts';
import type { Plan } from './plan.ts';
import { roundThroughPlaces } from './strip-order.ts';
import { worksFrom } from './works.ts';

export type Unsound = { path: Path; what: string; next: string };

/** More than this on one line of a log is no plan of one vehicle. */
const mostDeclarations = 4_500;

const subjectsOf = (declarations: readonly Declaration[]): string[] =>
  declarations.flatMap((one) => subjectOf(one) ?? []);

/** Nothing when the plan is sound. What only another slip brings about (an order that goes round) is left out. */
export function unsoundIn(plan: Plan): Unsound[] {
  const slips = [...namedTwice(plan), ...holeTwice(plan), ...noHeadOrThread(plan)];
  if (slips.length > 0) return slips;
  const whole = declaredWhole(plan);
  if (whole.length > mostDeclarations) {
    return [{ path: [], what: `it declares ${whole.length} things`, next: 'make two plans of it' }];
  }
  const there = new Set(subjectsOf(whole));
  const wrong = [...danglingIn(plan, there), ...disordered(plan), ...roundIn(plan, whole)];
  return wrong.length > 0 ? wrong : [...broughtByNone(plan, there)];
}

function* namedTwice(plan: Plan): Generator<Unsound> {
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
    ['newParts', 'name', (plan.newParts ?? []).map((n) => n.name)],
  ];
  for (const [list, field, names] of lists) {
    for (const [at, name] of names.entries()) {
      if (names.indexOf(name) === at) continue;
      yield { path: [list, at, field], what: `"${name}" is there twice`, next: 'name one otherwise' };
    }
  }
}

function* holeTwice(plan: Plan): Generator<Unsound> {
  for (const [a, area] of plan.areas.entries()) {
    const seen = new Set<string>();
    for (const [g, group] of area.holes.entries()) {
      const numbers = numbersIn(group.numbers);
      for (const number of numbers) {
        if (seen.has(number)) {
          const what = `hole ${number} of ${area.area} is there twice`;
          yield { path: ['areas', a, 'holes', g, 'numbers'], what, next: 'write each hole once' };
        }
        seen.add(number);
      }
      if (group.at && group.at.length !== numbers.length) {
        const what = `${numbers.length} holes, and ${group.at.length} places for them`;
        yield { path: ['areas', a, 'holes', g, 'at'], what, next: 'give each hole its place, or none' };
      }
    }
  }
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
  for (const [i, c] of (plan.cautions ?? []).entries()) if (c.at) yield [['cautions', i, 'at'], c.at];
  for (const [i, n] of (plan.newParts ?? []).entries())
    if (n.replaces) yield [['newParts', i, 'replaces'], `part:${n.replaces}`];
}
function* holeReferences(path: Path, byArea: Readonly<Record<string, string>>): Generator<[Path, Subject]> {
  for (const area of Object.keys(byArea)) {
    yield [[...path, area], `area:${area}`];
    for (const hole of holesIn({ [area]: byArea[area] as string })) yield [[...path, area], `hole:${hole}`];
  }
}

function* danglingIn(plan: Plan, there: ReadonlySet<string>): Generator<Unsound> {
  for (const [path, subject] of references(plan)) {
    const drive = named('rotation', subject);
    if (subject === 'vehicle' || there.has(drive === undefined ? subject : `drive:${drive}`)) continue;
    const sort = drive === undefined ? sortOf(subject) : 'drive';
    yield { path, what: `the plan has no ${sort} "${nameOf(subject)}"`, next: `declare it, or correct the name` };
  }
  const services = plan.services.map((s) => s.service);
  for (const [i, one] of (plan.newParts ?? []).entries()) {
    for (const [k, service] of (one.services ?? []).entries()) {
      if (services.includes(service)) continue;
      const path = ['newParts', i, 'services', k];
      yield { path, what: `the plan has no service "${service}"`, next: 'declare it, or correct the name' };
    }
  }
}

function* disordered(plan: Plan): Generator<Unsound> {
  for (const [i, area] of plan.areas.entries()) {
    if (!area.order) continue;
    const holes = area.holes.flatMap((group) => numbersIn(group.numbers));
    const order = numbersIn(area.order);
    const stranger = order.find((number) => !holes.includes(number));
    const again = order.find((number, k) => order.indexOf(number) < k);
    const path = ['areas', i, 'order'];
    if (stranger) yield { path, what: `${area.area} has no hole ${stranger}`, next: 'correct the order' };
    if (again) yield { path, what: `hole ${again} is in the order twice`, next: 'correct the order' };
  }
}

function* roundIn(plan: Plan, whole: readonly Declaration[]): Generator<Unsound> {
  const round = roundAmong(whole);
  if (!round) return;
  const at = (plan.behind ?? []).findIndex((e) => e.front === round[0] && e.behind.includes(round[1] as string));
  const what = `${round.map(subjectText).join(' in front of ')}: that goes round`;
  yield { path: at < 0 ? ['behind'] : ['behind', at], what, next: 'leave one of them out' };
}

/** An order that goes round, as it is written or through the holes and parts of an area. */
export function roundAmong(whole: readonly Declaration[]): Subject[] | undefined {
  const edges = whole.filter((one) => one.kind === 'behind-declared');
  return cycleIn(edges) ?? roundThroughPlaces(worksFrom(whole));
}

/** What no service brings would be declared and never reach a job. */
function* broughtByNone(plan: Plan, there: ReadonlySet<string>): Generator<Unsound> {
  const services = plan.services.map((s) => s.service);
  const brought = new Set(subjectsOf(broughtBy(plan, services)));
  const told = new Set<string>();
  for (const lost of there) {
    if (brought.has(lost)) continue;
    const text = sortOf(lost) === 'hole' ? `area ${areaOf(nameOf(lost))}` : subjectText(lost);
    if (!told.has(text)) yield { path: ['services'], what: `no service brings ${text}`, next: 'name it in a service' };
    told.add(text);
  }
}
