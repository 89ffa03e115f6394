// A long job, invented and the same every time: areas behind one another, parts, sealing faces, a box of new bolts, calls
// struck and restored on the way. Every line goes through the job's one door. It ends in the middle of the build, with a
// few fasteners in their trays. It measures nothing.
import { decide } from '../../src/job/decide.ts';
import type { Product } from '../../src/job/entries/declared.ts';
import type { Entry } from '../../src/job/entry.ts';
import { emptyLedger, isStruck, type Ledger, lineAt } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { appendLine } from '../../src/job/log.ts';
import type { Said } from '../../src/job/said.ts';
import type { Spec } from '../../src/job/spec.ts';

export type Size = { lines: number; fasteners: number; areas: number };
export const long: Size = { lines: 20_000, fasteners: 5_000, areas: 60 };
export const short: Size = { lines: 200, fasteners: 50, areas: 2 };

/** mulberry32, public domain: a small generator whose whole state is one number. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const specs: readonly Spec[] = [
  { kind: 'bolt', head: 'hex 10', thread: 'M6', lengthMm: 25 },
  { kind: 'bolt', head: 'hex 13', thread: 'M8', lengthMm: 40 },
  { kind: 'nut', head: 'hex 17', thread: 'M12x1.25' },
  { kind: 'screw', head: 'star 30', thread: 'M6', lengthMm: 16 },
  { kind: 'bolt', head: 'hex 14', thread: 'M10x1.25', lengthMm: 60, class: '10.9' },
];
const areaKinds = ['cover', 'bracket', 'panel', 'shield', 'rail', 'mount'];
/** So many areas sit behind one another, the first of them in front. */
const depth = 5;
const faceHoles = 8;
const partHoles = 6;
/** Fitted and made snug in such stretches, so that a bead is closed before it skins. */
const stretch = 12;
const sealant: Product = {
  product: 'grey sealant',
  kind: 'moisture',
  skinMinutes: 30,
  fillHours: 2,
  runHours: 6,
  fullHours: 24,
  labelCelsius: 23,
  labelHumidityPct: 50,
};

type Area = { name: string; holes: readonly string[]; spec: Spec; face?: string; behind?: string };

function areasOf({ fasteners, areas }: Size): Area[] {
  const name = (i: number) => `${areaKinds[i % areaKinds.length]} ${i + 1}`;
  return Array.from({ length: areas }, (_, i): Area => {
    const many = Math.floor(fasteners / areas) + (i < fasteners % areas ? 1 : 0);
    const innermost = i % depth === depth - 1 || i === areas - 1;
    return {
      name: name(i),
      holes: Array.from({ length: many }, (_, h) => `${name(i)}/${h + 1}`),
      spec: specs[i % specs.length] as Spec,
      ...(innermost && i % (3 * depth) < depth && { face: `face of ${name(i)}` }),
      ...(!innermost && { behind: name(i + 1) }),
    };
  });
}

type Next = Said | ((ledger: Ledger) => Said | undefined);

/** One call, sometimes first on the wrong foot: made, struck, made again; or struck and restored. */
function* sure(said: Said, chance: () => number): Generator<Next> {
  const roll = chance();
  yield said;
  if (roll < 0.02) {
    yield strikeLast;
    yield said;
  } else if (roll < 0.04) {
    yield strikeLast;
    yield (ledger) => ({ verb: 'restore', lines: [ledger.lines.length - 1] });
  }
}
const strikeLast = (ledger: Ledger): Said => ({ verb: 'strike', lines: [ledger.lines.length] });

/** A line far back that nothing leans on is struck, and restored with the next call. */
function* secondThoughts(chance: () => number): Generator<Next> {
  let struck: number | undefined;
  yield (ledger) => {
    const n = 1 + Math.floor(chance() * ledger.lines.length);
    const tight = lineAt(ledger, n)?.entries.every((e) => e.kind === 'fastener-tightened');
    struck = tight && !isStruck(ledger, n) ? n : undefined;
    return struck === undefined ? undefined : { verb: 'strike', lines: [struck] };
  };
  yield () => (struck === undefined ? undefined : { verb: 'restore', lines: [struck] });
}

function* opening(areas: readonly Area[]): Generator<Next> {
  yield { verb: 'open-job', label: 'long inline-four' };
  yield { verb: 'note-odometer', distance: 118_400 };
  yield { verb: 'note-conditions', celsius: 20, humidityPct: 45 };
  const declared = areas.flatMap((a): Entry[] => [
    { kind: 'part-declared', part: `lid of ${a.name}`, heldBy: a.holes.slice(0, partHoles) },
    ...(a.face
      ? ([
          {
            kind: 'face-declared',
            face: a.face,
            area: a.name,
            pressedBy: a.holes.slice(0, faceHoles),
            keepsIn: ['oil'],
          },
        ] as Entry[])
      : []),
    ...(a.behind
      ? ([
          {
            kind: 'behind-declared',
            front: `area:${a.name}`,
            behind: `area:${a.behind}`,
            until: 'closed',
            from: 'said',
          },
        ] as Entry[])
      : []),
  ]);
  yield { verb: 'declare', entries: [...declared, { kind: 'product-declared', label: sealant }] };
  yield { verb: 'fill-box', name: 'new bolt', quantity: 40, spec: specs[0] };
}

function* strip(area: Area, tray: string, chance: () => number): Generator<Next> {
  for (const hole of area.holes) {
    const odd = chance() < 0.02 ? { lengthMm: (area.spec.lengthMm ?? 20) + 20 } : {};
    const spec = { ...area.spec, ...odd };
    if (chance() < 0.03) yield { verb: 'slacken', hole, spec };
    yield* sure({ verb: 'remove', hole, spec, to: `tray:${tray}` }, chance);
  }
  yield { verb: 'make-finding', at: `area:${area.name}`, what: 'oil about the joint', when: 'on arrival' };
  yield { verb: 'count-holes', area: area.name, count: area.holes.length };
}

function* build(area: Area, chance: () => number): Generator<Next> {
  if (area.face) {
    yield { verb: 'clean-face', face: area.face };
    yield { verb: 'lay-bead', face: area.face, product: sealant.product };
  }
  for (let from = 0; from < area.holes.length; from += stretch) {
    const some = area.holes.slice(from, from + stretch);
    for (const hole of some) yield* sure({ verb: 'fit', hole }, chance);
    for (const hole of some) yield { verb: 'tighten', hole };
  }
  for (const hole of area.holes) {
    yield* sure({ verb: 'tighten', hole, method: { by: 'torque', newtonMetres: 24 } }, chance);
    if (chance() < 0.01) yield* secondThoughts(chance);
  }
}

/** Without end: what is left when the areas are closed. */
function* reworking(areas: readonly Area[], chance: () => number): Generator<Next> {
  for (;;) {
    const area = areas[Math.floor(chance() * areas.length)] as Area;
    const hole = area.holes[partHoles + Math.floor(chance() * (area.holes.length - partHoles))];
    if (hole === undefined) continue;
    yield { verb: 'look-again', holes: [hole] };
    yield* secondThoughts(chance);
  }
}

function* calls(size: Size, chance: () => number): Generator<Next> {
  const areas = areasOf(size);
  yield* opening(areas);
  for (const [i, area] of areas.entries()) yield* strip(area, String(i + 1), chance);
  for (let from = 0; from < areas.length; from += depth) {
    for (const area of areas.slice(from, from + depth).reverse()) yield* build(area, chance);
  }
  yield* reworking(areas, chance);
}

const opened: Stamp = { atMs: Date.UTC(2026, 0, 5, 8), zoneMin: 60, run: 1, awakeMs: 0 };
const betweenCallsMs = 20_000;
/** So many calls, then the program is closed over night. */
const callsADay = 400;
const nightMs = 14 * 3_600_000;

function stampAt(n: number): Stamp {
  const day = Math.floor((n - 1) / callsADay);
  const today = (n - 1) % callsADay;
  const dayMs = callsADay * betweenCallsMs + nightMs;
  return {
    atMs: opened.atMs + day * dayMs + today * betweenCallsMs,
    zoneMin: opened.zoneMin,
    run: 1 + day,
    awakeMs: today * betweenCallsMs,
  };
}

const areaOfSaid = (said: Said): string | undefined =>
  typeof said.hole === 'string' ? said.hole.slice(0, said.hole.indexOf('/')) : undefined;

/** The job's lines; throws where a call is refused, which is a fault of this script. */
export function largeJob(size: Size, seed = 1): readonly Line[] {
  let ledger = emptyLedger;
  const lines: Line[] = [];
  let area: string | undefined;
  let tray = '1';
  for (const next of calls(size, seeded(seed))) {
    if (lines.length === size.lines) break;
    const said = typeof next === 'function' ? next(ledger) : next;
    if (!said) continue;
    const n = lines.length + 1;
    const now = stampAt(n);
    const answer = decide(ledger, said, now);
    if ('refused' in answer) {
      const { rule, code, because } = answer.refused;
      throw new Error(`line ${n}: ${JSON.stringify(said)} refused: ${rule} ${code}: ${because}`);
    }
    area = areaOfSaid(said) ?? area;
    if (typeof said.to === 'string' && said.to.startsWith('tray:')) tray = said.to.slice('tray:'.length);
    const facing = { ...(area !== undefined && { area }), tray };
    const line: Line = { n, ...now, call: said.verb, by: 'key', facing, entries: answer.entries };
    ledger = appendLine(ledger, line);
    lines.push(line);
  }
  return lines;
}
