// A car nobody built, of a few areas: what could be declared of it, and what really is in its holes. Which of it a plan
// says beforehand, which is said on the spot and which never, is chance.
import type { Product } from '../../src/job/entries/declared.ts';
import type { Entry, EntryOf } from '../../src/job/entry.ts';
import type { Spec } from '../../src/job/spec.ts';
import type { Hole, Subject } from '../../src/job/subjects.ts';
import type { Chance } from './chance.ts';
import { products, specs } from './goods.ts';

type Role = NonNullable<EntryOf<'area-declared'>['role']>;
type Made = { area: string; role?: Role; part?: string; sealed?: true; circuit?: string; drive?: string };

const kinds: readonly Made[] = [
  { area: 'front wheel', role: 'wheel', part: 'wheel' },
  { area: 'brake caliper', role: 'brake', part: 'caliper', circuit: 'brake fluid' },
  { area: 'cam cover', part: 'cover', sealed: true, circuit: 'engine oil' },
  { area: 'sump', part: 'sump pan', sealed: true, circuit: 'engine oil' },
  { area: 'coolant pump', part: 'pump', sealed: true, circuit: 'coolant' },
  { area: 'belt bay', role: 'drive', part: 'tensioner', drive: 'timing' },
  { area: 'engine mount', role: 'mount', part: 'mount bracket' },
  { area: 'steering rack', role: 'steering' },
  { area: 'front strut', role: 'suspension', part: 'strut' },
  { area: 'air box', part: 'lid' },
  { area: 'harness rail' },
  { area: 'thermostat', part: 'housing', sealed: true, circuit: 'coolant', role: 'engine' },
];

export type Car = {
  areas: readonly string[];
  /** What is really in each hole when the car arrives; undefined where nothing is. */
  holes: ReadonlyMap<Hole, Spec | undefined>;
  parts: readonly string[];
  connections: readonly string[];
  faces: readonly string[];
  drives: readonly string[];
  circuits: readonly string[];
  temporaries: readonly string[];
  products: readonly Product[];
  declarations: readonly Entry[];
};

const yes = (often: boolean): true | undefined => (often ? true : undefined);

function holesOf(chance: Chance, area: string): Map<Hole, Spec | undefined> {
  const usual = chance.of(specs);
  const holes = new Map<Hole, Spec | undefined>();
  for (let number = 1; number <= chance.whole(1, 4); number++) {
    const hole = `${area}/${number}`;
    holes.set(hole, chance.maybe(0.04) ? undefined : chance.maybe(0.85) ? usual : chance.of(specs));
    if (chance.maybe(0.06)) holes.set(`${hole} washer`, { kind: 'washer', ...(chance.maybe(0.4) && { oneUse: true }) });
    if (chance.maybe(0.04)) holes.set(`${hole} nut`, { kind: 'nut', head: 'hex 13', thread: 'M8' });
  }
  return holes;
}

function areaDeclared(chance: Chance, { area, role }: Made): Entry {
  return {
    kind: 'area-declared',
    area,
    planned: yes(chance.maybe(0.6)),
    critical: yes(chance.maybe(0.2)),
    keepClean: yes(chance.maybe(0.25)),
    role,
    ...(chance.maybe(0.2) && { method: { by: chance.of(['torque', 'shoulder', 'hand', 'torque-angle'] as const) } }),
    ...(chance.maybe(0.15) && { passes: ['snug', 'half', 'final'] }),
    ...(chance.maybe(0.15) && { companions: ['dowel'] }),
    blindHoles: yes(chance.maybe(0.12)),
    marked: yes(chance.maybe(0.12)),
  };
}

function holeDeclared(chance: Chance, hole: Hole, spec: Spec | undefined): Entry {
  const wants = chance.maybe(0.92) ? spec : chance.of(specs);
  return {
    kind: 'hole-declared',
    hole,
    ...(chance.maybe(0.6) && wants && { wants }),
    slackOnly: yes(chance.maybe(0.06)),
    ownPlace: yes(chance.maybe(0.06)),
    critical: yes(chance.maybe(0.06)),
    ...(chance.maybe(0.08) && { later: chance.of(['after-belt', 'after-turning', 'on-wheels'] as const) }),
  };
}

function sealing(chance: Chance, { area, part, circuit }: Made, holes: readonly Hole[]): Entry[] {
  return [
    {
      kind: 'face-declared',
      face: `face of ${area}`,
      area,
      pressedBy: [chance.of(holes), ...chance.some(holes, 0.8)].filter((hole, at, all) => all.indexOf(hole) === at),
      keepsIn: circuit && chance.maybe(0.8) ? [circuit] : [],
      ...(part && chance.maybe(0.6) && { part }),
      ...(chance.maybe(0.6) && { bead: chance.maybe(0.85) ? true : 2 }),
    },
  ];
}

function driveDeclared(chance: Chance, { area, drive }: Made, holes: readonly Hole[]): Entry[] {
  if (!drive) return [];
  return [
    { kind: 'part-declared', part: `${drive} belt`, heldBy: [], renew: yes(chance.maybe(0.5)) },
    {
      kind: 'drive-declared',
      drive,
      areas: [area],
      parts: chance.maybe(0.7) ? [`${drive} belt`] : [],
      marks: chance.of([[], [], ['cam'], ['cam', 'crank']]),
      turns: chance.maybe(0.8) ? 2 : 4,
      tensioner: chance.of(['sprung', 'plunger', 'set', 'none'] as const),
      crankKeyed: chance.maybe(0.7),
      ...(chance.maybe(0.6) && { crankBolt: chance.of(holes) }),
    },
  ];
}

/** Some of it in front of some of it; what would go round is left to the job to refuse. */
function order(chance: Chance, subjects: readonly Subject[], drives: readonly string[]): Entry[] {
  const rotations = drives.map((drive) => `rotation:${drive}`);
  return Array.from({ length: chance.whole(0, 3) }, (): Entry => {
    const behind = rotations.length > 0 && chance.maybe(0.25) ? chance.of(rotations) : chance.of(subjects);
    return {
      kind: 'behind-declared',
      front: chance.of(subjects),
      behind,
      until: chance.maybe(0.7) ? 'closed' : 'snug',
      gate: yes(chance.maybe(behind.startsWith('rotation:') ? 0.6 : 0.1)),
      from: chance.maybe(0.7) ? 'plan' : 'said',
    };
  });
}

export function inventedCar(chance: Chance): Car {
  const withDrive = chance.maybe(0.65);
  const [drives, others] = [kinds.filter((one) => one.drive), kinds.filter((one) => !one.drive)];
  const made = [...(withDrive ? drives : []), ...chance.shuffled(others).slice(0, chance.whole(2, 4))];
  const holes = new Map<Hole, Spec | undefined>();
  const declarations: Entry[] = [];
  for (const one of made) {
    const its = holesOf(chance, one.area);
    for (const [hole, spec] of its) holes.set(hole, spec);
    const names = [...its.keys()];
    declarations.push(areaDeclared(chance, one), ...names.map((hole) => holeDeclared(chance, hole, its.get(hole))));
    if (one.part) {
      const heldBy = chance.maybe(0.85) ? names : chance.some([...holes.keys()], 0.3);
      declarations.push({ kind: 'part-declared', part: one.part, heldBy, renew: yes(chance.maybe(0.2)) });
    }
    if (one.sealed) declarations.push(...sealing(chance, one, names));
    declarations.push(...driveDeclared(chance, one, names));
  }
  const areas = made.map((one) => one.area);
  const circuits = [...new Set(made.flatMap((one) => one.circuit ?? []))];
  const connections = ['battery earth', ...circuits.map((circuit) => `${circuit} hose`)];
  for (const circuit of circuits) declarations.push({ kind: 'circuit-declared', circuit, fluid: circuit });
  for (const connection of connections) {
    const circuit = circuits.find((one) => connection.startsWith(one));
    const area = chance.maybe(0.7) ? (made.find((one) => one.circuit === circuit)?.area ?? areas[0]) : undefined;
    declarations.push({ kind: 'connection-declared', connection, ...(area && { area }), ...(circuit && { circuit }) });
  }
  const temporaries = ['stand', 'jack', 'cam lock', 'rag', 'plug', 'strap', 'mask'];
  const named = (kind: Entry['kind'], field: string): string[] =>
    declarations.flatMap((one) => (one.kind === kind ? [String((one as Record<string, unknown>)[field])] : []));
  const parts = named('part-declared', 'part');
  const declaredDrives = named('drive-declared', 'drive');
  const subjects: Subject[] = [
    ...areas.map((area) => `area:${area}`),
    ...parts.map((part) => `part:${part}`),
    ...connections.map((connection) => `connection:${connection}`),
    ...[...holes.keys()].map((hole) => `hole:${hole}`),
  ];
  declarations.push(...order(chance, subjects, declaredDrives));
  return {
    areas,
    holes,
    parts,
    connections,
    faces: named('face-declared', 'face'),
    drives: declaredDrives,
    circuits,
    temporaries,
    products: chance.shuffled(products).slice(0, 2),
    declarations,
  };
}
