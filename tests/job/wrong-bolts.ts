// How well suspicion (F2) sees: one wrong bolt put by chance into a car of a shipped plan or of the reference job, all of it
// called as it is, with the plan known to the job and with none. Counted is what is suspected, and what without cause.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Entry } from '../../src/job/entry.ts';
import { emptyLedger, every, type Ledger } from '../../src/job/ledger.ts';
import { appendLine } from '../../src/job/log.ts';
import type { Spec } from '../../src/job/spec.ts';
import { areaOf, type Hole } from '../../src/job/subjects.ts';
import { suspectedOn } from '../../src/job/suspicions.ts';
import { declarationsOf } from '../../src/plan/declarations.ts';
import { readPlan } from '../../src/plan/read-plan.ts';
import { isSameThread } from '../../src/trade/threads.ts';
import { type Chance, chanceFrom } from '../agreement/chance.ts';
import { playLines, scriptLines } from '../jobs/lines.ts';

/** What is in which hole, and what is said of the car beforehand. */
type Car = { name: string; holes: ReadonlyMap<Hole, Spec>; declares: readonly Entry[] };

const folder = fileURLToPath(new URL('../../jobs/', import.meta.url));
const shippedNames = readdirSync(folder).filter((name) => name.endsWith('.json'));

function plannedCar(name: string): Car {
  const read = readPlan(readFileSync(`${folder}${name}`, 'utf8'), name);
  if (!read.ok) throw new Error(`${read.fault.where}: ${read.fault.what}`);
  const { plan } = read;
  const declares = declarationsOf(
    plan,
    plan.services.map((one) => one.service),
    emptyLedger,
  );
  const holes = declares.flatMap((one): [Hole, Spec][] =>
    one.kind === 'hole-declared' && one.wants ? [[one.hole, one.wants]] : [],
  );
  return { name, holes: new Map(holes), declares };
}

/** The reference job as it was called off, but for the wrong bolt that is in it already. */
function referenceCar(): Car {
  const { ledger } = playLines(scriptLines('reference-free.calls'));
  const holes = [...every(ledger, 'hole')].flatMap(({ hole, called }): [Hole, Spec][] => {
    const found = called.firstIsWrong ? called.occupant?.spec : specOf(ledger, called.first);
    return found ? [[hole, found]] : [];
  });
  const areas = [...every(ledger, 'area')].flatMap(({ declared }): Entry[] =>
    declared ? [{ kind: 'area-declared', ...declared }] : [],
  );
  const said = [...every(ledger, 'hole')].flatMap(({ declared }): Entry[] =>
    declared ? [{ kind: 'hole-declared', ...declared }] : [],
  );
  const drives = [...every(ledger, 'drive')].flatMap(({ declared }): Entry[] =>
    declared ? [{ kind: 'drive-declared', ...declared }] : [],
  );
  return { name: 'reference job, free', holes: new Map(holes), declares: [...areas, ...said, ...drives] };
}
const specOf = (ledger: Ledger, id: string | undefined): Spec | undefined =>
  [...every(ledger, 'fastener')].find((f) => f.id === id)?.spec;

export const cars: readonly Car[] = [...shippedNames.map(plannedCar), referenceCar()];

const withoutWants = (entry: Entry): Entry => {
  if (entry.kind !== 'hole-declared') return entry;
  const { wants: _, ...rest } = entry;
  return rest;
};

/** Every fastener of a car called found, one after the other. */
function called({ holes, declares }: Car, planned: boolean): Ledger {
  const said = planned ? declares : declares.map(withoutWants);
  const found = [...holes].map(
    ([hole, spec], at): Entry => ({ kind: 'fastener-found', hole, fastener: `f1.${at + 1}`, spec }),
  );
  const entries = [...said, ...found] as [Entry, ...Entry[]];
  const stamp = { atMs: 0, zoneMin: 0, run: 1, awakeMs: 0 };
  return appendLine(emptyLedger, { n: 1, ...stamp, call: 'found', by: 'line', facing: {}, entries });
}

/** Suspected although all is as it should be. */
export const alarmsIn = (car: Car, planned: boolean): Hole[] =>
  suspectedOn(called(car, planned)).map(({ hole }) => hole);

const judgedKinds: ReadonlySet<string | undefined> = new Set(['bolt', 'nut', 'screw', undefined]);
const everySpec = cars.flatMap(({ holes }) => [...holes.values()]).filter(({ thread }) => thread !== undefined);
const nearly: Readonly<Record<string, readonly string[]>> = {
  M5: ['#10-32'],
  M6: ['1/4-20', '1/4-28'],
  M8: ['5/16-18', '5/16-24', 'M8x1'],
  'M8x1.25': ['5/16-18', '5/16-24', 'M8x1'],
  'M10x1.25': ['3/8-16', '3/8-24', 'M10', 'M10x1'],
  M10: ['3/8-16', '3/8-24', 'M10x1.25'],
  'M12x1.25': ['7/16-14', 'M12', 'M12x1.5'],
  'M12x1.5': ['1/2-20', 'M12', 'M12x1.25'],
  'M14x1.5': ['9/16-18', 'M14'],
};
const classes = ['4.8', '8.8', '10.9', '12.9'];

/** What the last hands may have put in: one from elsewhere on a car, one that nearly fits, one of another class. */
function wrongOne(chance: Chance, right: Spec): Spec {
  const roll = chance.roll();
  const near = nearly[right.thread ?? ''];
  if (roll < 0.3 && near) return { ...right, thread: chance.of(near) };
  if (roll < 0.5 && right.class) return { ...right, class: chance.of(classes.filter((one) => one !== right.class)) };
  const other = chance.of(everySpec.filter(({ kind }) => kind === right.kind));
  return { ...other, ...(right.lengthMm && chance.maybe(0.5) && { lengthMm: right.lengthMm }) };
}

const fields = ['head', 'thread', 'class'] as const;
const differs = (field: (typeof fields)[number], one: Spec, other: Spec): boolean => {
  const [a, b] = [one[field], other[field]];
  return a !== undefined && b !== undefined && a !== b && !(field === 'thread' && isSameThread(a, b));
};

/**
 * Visible in what was called: head, thread or class are known of it and not what belongs there, and that can be known
 * here: the plan says it, or two others of its kind in the area have it as it should be.
 */
function isVisible(car: Car, hole: Hole, wrong: Spec, planned: boolean): boolean {
  const right = car.holes.get(hole) as Spec;
  const fellows = [...car.holes].filter(
    ([other, { kind }]) => other !== hole && areaOf(other) === areaOf(hole) && kind === right.kind,
  );
  return fields.some((field) => {
    if (!differs(field, wrong, right)) return false;
    const like = fellows.filter(([, spec]) => spec[field] !== undefined && !differs(field, spec, right));
    return (planned && isSaid(car, hole)) || like.length >= 2;
  });
}

const isSaid = (car: Car, hole: Hole): boolean =>
  car.declares.some((one) => one.kind === 'hole-declared' && one.hole === hole && one.wants !== undefined);

export type Seen = { jobs: number; visible: number; suspected: number; alarms: number; missed: string[] };
export const nothingSeen = (): Seen => ({ jobs: 0, visible: 0, suspected: 0, alarms: 0, missed: [] });

/** One seed: one wrong bolt in one car, called with its plan or without one. */
export function plantedWith(seed: number, planned: boolean, seen: Seen): void {
  const chance = chanceFrom(seed);
  const car = chance.of(cars);
  const [hole, right] = chance.of([...car.holes].filter(([, { kind, thread }]) => judgedKinds.has(kind) && thread));
  const wrong = wrongOne(chance, right);
  const suspected = suspectedOn(called({ ...car, holes: new Map([...car.holes, [hole, wrong]]) }, planned));
  seen.jobs++;
  seen.alarms += suspected.filter((one) => one.hole !== hole).length;
  if (!isVisible(car, hole, wrong, planned)) return;
  seen.visible++;
  if (suspected.some((one) => one.hole === hole)) seen.suspected++;
  else seen.missed.push(`${car.name}, ${hole}: ${JSON.stringify(wrong)} for ${JSON.stringify(right)}`);
}

export function seenOver(seeds: number, planned: boolean): Seen {
  const seen = nothingSeen();
  for (let seed = 1; seed <= seeds; seed++) plantedWith(seed, planned, seen);
  return seen;
}
