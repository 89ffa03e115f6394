// What is odd about the fasteners found, by the second ledger (F2): tables typed in once more from the trade's own sheets,
// M5 to M16 and a few inch sizes, no more than the jobs that are compared hold. Whether, never why.
import { areaOf, type PlainSpec } from './plain.ts';
import type { HoleNow, World } from './world.ts';

/** Pitches by diameter, the coarse one first. */
const metric: Record<string, string[]> = {
  '5': ['0.8', '0.5'],
  '6': ['1', '0.75'],
  '8': ['1.25', '1', '0.75'],
  '10': ['1.5', '1.25', '1', '0.75'],
  '12': ['1.75', '1.5', '1.25', '1'],
  '14': ['2', '1.5', '1.25', '1'],
  '16': ['2', '1.5', '1'],
};
const inch: Record<string, string[]> = { '1/4': ['20', '28'], '5/16': ['18', '24'], '3/8': ['16', '24'] };

/** Across flats, key or star number by diameter: every standard one goes by. */
const heads: Record<string, Record<string, number[]>> = {
  hex: {
    '5': [7, 8],
    '6': [8, 10],
    '8': [10, 12, 13],
    '10': [13, 14, 15, 16, 17],
    '12': [15, 17, 18, 19],
    '14': [18, 19, 21, 22],
    '16': [21, 22, 24],
    '1/4': [11.1125],
    '5/16': [12.7],
    '3/8': [14.2875],
  },
  hexkey: { '5': [3, 4], '6': [4, 5], '8': [5, 6], '10': [6, 8], '12': [8, 10], '14': [12], '16': [14] },
  star: { '5': [25, 27], '6': [27, 30, 40], '8': [40, 45], '10': [50], '12': [55], '14': [60] },
};
/** A socket that far off is taken for the right one on an inch head. */
const nearly = 0.35;

type Thread = { size: string; pitch: string; there: boolean };
function threadOf(written: string | undefined): Thread | undefined {
  if (written === undefined) return undefined;
  const [size = '', pitch] = written.replace(/^M/, '').split(written.startsWith('M') ? 'x' : '-');
  const pitches = (written.startsWith('M') ? metric : inch)[size];
  return pitches && { size, pitch: pitch ?? pitches[0] ?? '', there: pitch === undefined || pitches.includes(pitch) };
}
export function sameThread(one: string, other: string): boolean {
  const [a, b] = [threadOf(one), threadOf(other)];
  return one === other || (a !== undefined && b !== undefined && a.size === b.size && a.pitch === b.pitch);
}

const unjudgedKinds = 'stud clamp clip pin plug washer union bleeder sensor cap'.split(' ');
const differ = (one: string | undefined, other: string | undefined) =>
  one !== undefined && other !== undefined && one !== other;
const differInThread = (one: string | undefined, other: string | undefined) =>
  one !== undefined && other !== undefined && !sameThread(one, other);

function oddByItself(spec: PlainSpec): boolean {
  const thread = threadOf(spec.thread);
  if (thread === undefined) return false;
  if (!thread.there) return true;
  const [shape = '', size] = (spec.head ?? '').split(' ');
  const table = heads[shape];
  if (table === undefined) return false;
  const own = table[thread.size] ?? [];
  const isInch = thread.size in inch;
  return !own.some((one) => Math.abs(one - Number(size)) <= (isInch && shape === 'hex' ? nearly : 0.01));
}

const oddByPlan = (spec: PlainSpec, plan: PlainSpec): boolean =>
  differ(spec.kind, plan.kind) ||
  differ(spec.head, plan.head) ||
  differ(spec.class, plan.class) ||
  differInThread(spec.thread, plan.thread);

/** It stands alone in one thing, in which at least two others and two thirds of those known are of one mind. */
function oddAmong(spec: PlainSpec, others: PlainSpec[], plan: PlainSpec | undefined): boolean {
  return (['head', 'thread', 'class'] as const).some((field) => {
    const mine = spec[field];
    const is = (a: string, b: string) => (field === 'thread' ? sameThread(a, b) : a === b);
    const planned = plan?.[field];
    if (mine === undefined || (planned !== undefined && is(planned, mine))) return false;
    const known = others.map((other) => other[field]).filter((value) => value !== undefined);
    if (known.some((value) => is(value, mine))) return false;
    const most = Math.max(0, ...known.map((value) => known.filter((other) => is(value, other)).length));
    return most >= 2 && most * 3 >= known.length * 2;
  });
}

const saidOf = (hole: HoleNow): PlainSpec | undefined =>
  hole.wantsStated ?? hole.declared?.planSays ?? hole.declared?.wants;

function isOdd(world: World, hole: HoleNow, spec: PlainSpec, others: PlainSpec[]): boolean {
  const ofCrank = [...world.drives.values()].some((drive) => drive.crankBolt === hole.name);
  const headless =
    world.areas.get(areaOf(hole.name))?.role === 'wheel' || hole.declared?.sprocketBolt === true || ofCrank;
  const plan = saidOf(hole);
  if (unjudgedKinds.includes(spec.kind ?? ''))
    return plan !== undefined && oddByPlan({ ...spec, head: undefined }, plan);
  const judged = headless ? { ...spec, head: undefined } : spec;
  const asPlanned =
    judged.thread !== undefined &&
    plan?.thread !== undefined &&
    sameThread(judged.thread, plan.thread) &&
    judged.head === plan.head;
  const ownKind = others.filter((other) => other.kind === spec.kind);
  const asTwoOthers = ownKind.filter(
    (other) =>
      other.head === judged.head &&
      judged.thread !== undefined &&
      other.thread !== undefined &&
      sameThread(judged.thread, other.thread),
  );
  return (
    (!asPlanned && asTwoOthers.length < 2 && oddByItself(judged)) ||
    (plan !== undefined && oddByPlan(judged, plan)) ||
    oddAmong(judged, ownKind, plan)
  );
}

/** As it was when it was called meant so: neither it nor what is said of its hole is known otherwise. */
function isMeantSo(hole: HoleNow, spec: PlainSpec): boolean {
  const { meantSo } = hole;
  const alike = (one: PlainSpec, other: PlainSpec) =>
    one.kind === other.kind &&
    one.head === other.head &&
    one.lengthMm === other.lengthMm &&
    one.class === other.class &&
    one.coating === other.coating &&
    one.oneUse === other.oneUse &&
    (one.thread === other.thread ||
      (one.thread !== undefined && other.thread !== undefined && sameThread(one.thread, other.thread)));
  if (meantSo === undefined || meantSo.fastener !== hole.firstFound || !alike(meantSo.spec, spec)) return false;
  const plan = saidOf(hole);
  return meantSo.beside === undefined || plan === undefined ? meantSo.beside === plan : alike(meantSo.beside, plan);
}

/** Holes whose fastener is odd, and nobody has answered for it. */
export function suspectedHoles(world: World): string[] {
  const found = [...world.holes.values()].flatMap((hole) => {
    const fastener = hole.firstFound === undefined ? undefined : world.fasteners.get(hole.firstFound);
    return fastener === undefined ? [] : [{ hole, spec: fastener.spec }];
  });
  return found
    .filter(({ hole, spec }) => {
      const beside = found.filter((other) => other.hole !== hole && areaOf(other.hole.name) === areaOf(hole.name));
      return (
        isOdd(
          world,
          hole,
          spec,
          beside.map((other) => other.spec),
        ) && !isMeantSo(hole, spec)
      );
    })
    .map(({ hole }) => hole.name);
}
