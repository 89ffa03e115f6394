// An invented car for the leftover review: areas of holes with the fasteners that are really in them, how the mechanic
// will call them, and the trays on the bench. It knows no ledger and no mistake.
import type { Spec } from '../../src/job/spec.ts';
import type { Chance } from '../agreement/chance.ts';

export type CarArea = {
  name: string;
  /** What is really in each hole. */
  holes: readonly Spec[];
  /** The same, as far as it is said in a call. */
  called: readonly Spec[];
  tray: string;
  /** One-use: new ones from the parts box go in. */
  renewed: boolean;
};
export type Car = { planned: boolean; areas: readonly CarArea[]; trays: readonly string[]; fasteners: number };

const lengths = {
  short: [12, 16, 20],
  cover: [16, 20, 25, 30, 35],
  bracket: [25, 30, 40, 50, 65],
  heavy: [35, 45, 55, 60, 80],
};
type Pattern = Omit<Spec, 'lengthMm'> & { lengths?: readonly number[] };
/** Heads with the threads they carry, as they are met on a car; how often each is met is common practice, no source. */
const patterns: readonly (readonly [often: number, of: Pattern])[] = [
  [6, { kind: 'bolt', head: 'hex 10', thread: 'M6', class: '8.8', lengths: lengths.cover }],
  [3, { kind: 'bolt', head: 'hex 8', thread: 'M6', class: '8.8', lengths: lengths.cover }],
  [4, { kind: 'bolt', head: 'hex 13', thread: 'M8', class: '8.8', lengths: lengths.bracket }],
  [3, { kind: 'bolt', head: 'hex 12', thread: 'M8', class: '8.8', lengths: lengths.bracket }],
  [2, { kind: 'bolt', head: 'hex 12', thread: 'M8x1', class: '10.9', lengths: lengths.bracket }],
  [2, { kind: 'bolt', head: 'hex 14', thread: 'M10x1.25', class: '10.9', lengths: lengths.heavy }],
  [2, { kind: 'bolt', head: 'hex 16', thread: 'M10', class: '8.8', lengths: lengths.heavy }],
  [1, { kind: 'bolt', head: 'hex 17', thread: 'M12x1.25', class: '10.9', lengths: lengths.heavy }],
  [1, { kind: 'bolt', head: 'hex 19', thread: 'M12x1.5', class: '10.9', lengths: lengths.heavy }],
  [2, { kind: 'bolt', head: 'hexkey 5', thread: 'M6', class: '8.8', lengths: lengths.cover }],
  [2, { kind: 'bolt', head: 'star 45', thread: 'M8', class: '10.9', lengths: lengths.bracket }],
  [2, { kind: 'screw', head: 'star 30', thread: 'M6', lengths: lengths.short }],
  [2, { kind: 'screw', head: 'cross', thread: 'M5', lengths: lengths.short }],
  [2, { kind: 'nut', head: 'hex 10', thread: 'M6' }],
  [2, { kind: 'nut', head: 'hex 13', thread: 'M8' }],
  [1, { kind: 'nut', head: 'hex 17', thread: 'M12x1.25' }],
  [2, { kind: 'clip', head: 'hex 10' }],
];
const sizes = [1, 2, 2, 3, 3, 4, 4, 5, 6, 6, 7, 8, 10, 12, 14, 18, 24];
const nouns = ['cover', 'bracket', 'panel', 'shield', 'rail', 'mount', 'guard', 'housing', 'pump', 'duct'];
const whereabouts = ['front', 'rear', 'upper', 'lower', 'left', 'right', 'inner', 'outer'];

function patternBy(chance: Chance): Pattern {
  const sum = patterns.reduce((all, [often]) => all + often, 0);
  let left = chance.roll() * sum;
  for (const [often, pattern] of patterns) {
    left -= often;
    if (left < 0) return pattern;
  }
  return (patterns[0] as readonly [number, Pattern])[1];
}

/** Any fastener a car could have. */
export function anySpec(chance: Chance): Spec {
  const { lengths: known, ...rest } = patternBy(chance);
  return { ...rest, ...(known && { lengthMm: chance.of(known) }) };
}

/** In a third of the larger areas some are longer: they go through a bracket or a pump as well. */
function holesOf(chance: Chance, main: Spec, count: number): Spec[] {
  const mixed = count >= 4 && main.lengthMm !== undefined && chance.maybe(0.35);
  const longer = { ...main, lengthMm: (main.lengthMm ?? 0) + chance.of([10, 20, 30]) };
  return Array.from({ length: count }, () => (mixed && chance.maybe(0.3) ? longer : main));
}

/** How much the mechanic says of a fastener is one habit for a whole area. */
function sayingOf(chance: Chance, holes: readonly Spec[]): (spec: Spec) => Spec {
  const mixed = new Set(holes.map((one) => one.lengthMm)).size > 1;
  const says = {
    kind: chance.maybe(0.8),
    thread: chance.maybe(0.65),
    lengthMm: chance.maybe(mixed ? 0.8 : 0.5),
    class: chance.maybe(0.2),
  };
  return (spec) => ({
    ...(says.kind && { kind: spec.kind }),
    ...(spec.head && { head: spec.head }),
    ...(says.thread && spec.thread && { thread: spec.thread }),
    ...(says.lengthMm && spec.lengthMm && { lengthMm: spec.lengthMm }),
    ...(says.class && spec.class && { class: spec.class }),
    ...(spec.oneUse && { oneUse: true as const }),
  });
}

/** 20 to 400 fasteners, as many small jobs as large ones by the logarithm. */
export function inventedCar(chance: Chance): Car {
  const wanted = Math.round(20 * 20 ** chance.roll());
  const planned = chance.maybe(0.5);
  const palette = Array.from({ length: chance.whole(4, 10) }, () => anySpec(chance));
  const areas: CarArea[] = [];
  const trays = Array.from({ length: 3 + Math.floor(wanted / 40) }, (_, i) => String(i + 1));
  let fasteners = 0;
  while (fasteners < wanted || areas.length < 3) {
    const count = chance.of(sizes);
    const renewed = chance.maybe(0.12);
    const chosen = chance.maybe(0.8) ? chance.of(palette) : anySpec(chance);
    const main: Spec = renewed ? { ...chosen, oneUse: true } : chosen;
    const holes = renewed ? Array.from({ length: count }, () => main) : holesOf(chance, main, count);
    const say = planned ? (spec: Spec) => spec : sayingOf(chance, holes);
    areas.push({
      name: `${chance.of(whereabouts)} ${chance.of(nouns)} ${areas.length + 1}`,
      holes,
      called: holes.map(say),
      tray: trays[Math.floor((areas.length / 3) % trays.length)] as string,
      renewed,
    });
    fasteners += count;
  }
  return { planned, areas, trays, fasteners };
}

/** What is known of a fastener in the hand: not all is measured, and a length is read by the eye. */
export function inTheHand(chance: Chance, spec: Spec): Spec {
  const misread = chance.maybe(0.15) ? chance.of([-2, -1, 1, 2]) : 0;
  const knows = {
    kind: chance.maybe(0.9),
    head: chance.maybe(0.95),
    thread: chance.maybe(0.7),
    lengthMm: chance.maybe(0.7),
    class: chance.maybe(0.35),
  };
  return {
    ...(knows.kind && { kind: spec.kind }),
    ...(knows.head && spec.head && { head: spec.head }),
    ...(knows.thread && spec.thread && { thread: spec.thread }),
    ...(knows.lengthMm && spec.lengthMm && { lengthMm: spec.lengthMm + misread }),
    ...(knows.class && spec.class && { class: spec.class }),
  };
}
