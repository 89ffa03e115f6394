// Random entries, lines and calls, drawn from their own schemas: every field gets something its schema takes, out of a
// few names that meet one another often. It knows no rule and no kind by name.
import fc from 'fast-check';
import type { z } from 'zod';
import { verbs } from '../../src/job/decide.ts';
import { declaredEntries } from '../../src/job/entries/declared.ts';
import { fastenerEntries } from '../../src/job/entries/fasteners.ts';
import { workEntries } from '../../src/job/entries/works.ts';
import type { Entry } from '../../src/job/entry.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import type { Said } from '../../src/job/said.ts';
import { type Bench, bench, m6, m8, stretch } from './bench.ts';
import { defOf } from './schema-parts.ts';

const areas = ['cover', 'idler', 'wheel'];
const holes = [...areas.flatMap((area) => [`${area}/1`, `${area}/2`]), 'idler/1 nut'];
const names = ['1', '2', 'belt', 'hose', 'plug', 'lid', 'cooling', 'bolt', 'grey', ...areas];
const lineNumbers = Array.from({ length: 40 }, (_, i) => i + 3);
const ids = (letter: string) => lineNumbers.flatMap((n) => [`${letter}${n}.1`, `${letter}${n}.2`]);
const strings = [
  // A digest, as a photograph has one.
  '0123456789abcdef'.repeat(4),
  ...holes,
  ...names,
  ...['f', 'p', 's', 'd'].flatMap(ids),
  ...holes.map((hole) => `hole:${hole}`),
  ...['tray:1', 'tray:2', 'box:bolt', 'scrap', 'owner', 'supplier', 'lost', 'vehicle'],
  ...areas.map((area) => `area:${area}`),
  ...['part:hose', 'connection:plug', 'face:lid', 'drive:belt', 'rotation:belt', 'circuit:cooling'],
];
const specs = [m6, m8, stretch, {}, { kind: 'nut', oneUse: true }] as const;

const takes = (schema: z.ZodType, value: unknown): boolean => schema.safeParse(value).success;

const drawn = new WeakMap<z.ZodType, fc.Arbitrary<unknown>>();
/** Something a schema takes. */
function ofSchema(schema: z.ZodType): fc.Arbitrary<unknown> {
  const known = drawn.get(schema);
  if (known) return known;
  const made = make(schema);
  drawn.set(schema, made);
  return made;
}
function make(schema: z.ZodType): fc.Arbitrary<unknown> {
  const def = defOf(schema);
  switch (def.type) {
    case 'literal':
      return fc.constantFrom(...(def.values ?? []));
    case 'enum':
      return fc.constantFrom(...Object.values(def.entries ?? {}));
    case 'boolean':
      return fc.boolean();
    case 'number':
      return fc.constantFrom(...[1, 2, 4, 8, 0, 3, -1, 10, 50].filter((n) => takes(schema, n)));
    case 'string':
      return fc.constantFrom(...strings.filter((text) => takes(schema, text)));
    case 'optional':
      return fc.option(ofSchema(def.innerType as z.ZodType), { nil: undefined, freq: 2 });
    case 'union':
      return fc.oneof(...(def.options ?? []).map(ofSchema));
    case 'tuple':
      return fc.tuple(...(def.items ?? []).map(ofSchema));
    case 'array':
      return fc
        .array(ofSchema(def.element as z.ZodType), { minLength: 1, maxLength: 3 })
        .filter((all) => takes(schema, all));
    case 'object':
      return ofShape(schema, def.shape ?? {});
    default:
      throw new Error(`no way to draw a ${def.type}`);
  }
}
function ofShape(schema: z.ZodType, shape: Record<string, z.ZodType>): fc.Arbitrary<unknown> {
  if ('oneUse' in shape) return fc.constantFrom(...specs);
  const fields = Object.fromEntries(Object.entries(shape).map(([key, one]) => [key, ofSchema(one)]));
  return fc
    .record(fields)
    .map(withoutNothing)
    .filter((value) => takes(schema, value));
}
const withoutNothing = (value: Record<string, unknown>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined));

const entrySchemas: readonly z.ZodType[] = [...declaredEntries, ...fastenerEntries, ...workEntries].map((kind) =>
  kind.schema(),
);
export const anyEntry = fc.oneof(...entrySchemas.map(ofSchema)) as fc.Arbitrary<Entry>;

const anySaidOf = (id: string): fc.Arbitrary<Said> =>
  ofSchema(verbs.get(id)?.takes as z.ZodType).map((said) => ({ verb: id, ...(said as object) }));
/** What is called most on any job comes oftenest here too. */
const common = [
  'remove',
  'slacken',
  'fit',
  'fit',
  'tighten',
  'tighten',
  'complete-pass',
  'count-holes',
  'strike',
  'restore',
];
const said = [...verbs.keys()].filter((id) => !['open-job', 'leave-unreleased', 'release', 'count-trays'].includes(id));
/** A call, or the number of the open point whose next call is made. */
export type Move = Said | number;
export const anyMoves: fc.Arbitrary<Move[]> = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...common).chain(anySaidOf) },
    { weight: 3, arbitrary: fc.constantFrom(...said).chain(anySaidOf) },
    { weight: 3, arbitrary: fc.nat(30) },
  ),
  { minLength: 1, maxLength: 120, size: 'max' },
);

/** The same call about things that are there: which of them is drawn with the name. */
function aboutWhatIs(on: Bench, { verb, ...said }: Said): Said {
  const { names, lines } = on.ledger();
  const one = (sort: 'fastener' | 'finding' | 'stray' | 'piece', text: unknown) => {
    const row = names[sort];
    return row.length > 0
      ? row.all[[...String(text)].reduce((sum, c) => sum * 31 + c.charCodeAt(0), 7) % row.length]
      : text;
  };
  const about: Record<string, unknown> = { ...said };
  for (const sort of ['fastener', 'finding', 'stray', 'piece'] as const) {
    if (sort in about) about[sort] = one(sort, about[sort]);
  }
  if ('lost' in about) about.lost = one(names.piece.length > 0 ? 'piece' : 'fastener', about.lost);
  if (Array.isArray(about.lines)) about.lines = about.lines.map((n) => 1 + ((Number(n) * 7) % lines.length));
  return { verb, ...about };
}

/** One move at the bench: what was said, or undefined when no open point has that number. */
export function saidOf(on: Bench, move: Move): Said | undefined {
  if (typeof move !== 'number') return aboutWhatIs(on, move);
  const points = openPointsWithNext(on.ledger(), on.now());
  return points.length > 0 ? points[move % points.length]?.next : undefined;
}

/** A story that only takes what is not refused. */
export function played(all: readonly Move[]): Bench {
  const on = bench();
  on.declare(...declared);
  for (const move of all) {
    const next = saidOf(on, move);
    if (!next) continue;
    const { verb, ...one } = next;
    on.tried(verb, one);
  }
  return on;
}
const declared = [
  { kind: 'area-declared', area: 'wheel', role: 'wheel', critical: true },
  { kind: 'area-declared', area: 'idler', role: 'engine', companions: ['dowel'] },
  { kind: 'part-declared', part: 'lid', heldBy: ['cover/1', 'cover/2'] },
  { kind: 'connection-declared', connection: 'hose', area: 'cover', circuit: 'cooling' },
  {
    kind: 'face-declared',
    face: 'lid',
    area: 'cover',
    pressedBy: ['cover/1', 'cover/2'],
    keepsIn: ['cooling'],
    bead: true,
  },
  {
    kind: 'product-declared',
    label: {
      product: 'grey',
      kind: 'moisture',
      skinMinutes: 600,
      fullHours: 1,
      labelCelsius: 20,
      labelHumidityPct: 40,
    },
  },
  {
    kind: 'drive-declared',
    drive: 'belt',
    areas: ['idler'],
    parts: ['belt'],
    marks: ['1', '2'],
    turns: 2,
    tensioner: 'none',
    crankKeyed: true,
  },
  { kind: 'behind-declared', front: 'area:cover', behind: 'area:idler', until: 'closed', from: 'plan' },
] as const;
