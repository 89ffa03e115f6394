// A job with fasteners left over, out of one number: played through the job's one door with mistakes on the way, and what is
// true of each leftover beside it. Written before any ranking, and not to be changed to suit one.

import type { Ledger } from '../../src/job/ledger.ts';
import { every, stateOf } from '../../src/job/ledger.ts';
import { cannotBeToldApart, type Spec } from '../../src/job/spec.ts';
import { type Chance, chanceFrom } from '../agreement/chance.ts';
import { type Answer, specOfHole, standingOf } from './answer.ts';
import { boxOf, buildArea, countTrays } from './build.ts';
import { anySpec, type Car, type CarArea, inTheHand, inventedCar } from './car.ts';
import { type Mistake, type MistakeKind, mistakesOn } from './mistakes.ts';
import { boltAt, type Play, stripArea } from './strip.ts';
import { mustSay, newTold } from './told.ts';

/** What is known of a stray: as far as it is seen and measured, and where it lies, if that is remembered. */
export type Asked = { spec: Spec; tray?: string };
export type Left = { asked: Asked; kind: MistakeKind; really: Spec; answer: Answer };
export type Leftovers = { seed: number; ledger: Ledger; planned: boolean; fasteners: number; strays: readonly Left[] };

export function leftoversOf(seed: number): Leftovers {
  const chance = chanceFrom(seed);
  const car = inventedCar(chance);
  const built = areasBuilt(chance, car);
  const mistakes = mistakesOn(chance, car, built);
  const play: Play = { chance, car, told: newTold(), mistakes, bolts: new Map(), calledAs: new Map() };
  open(play);
  for (let at = 0; at < car.areas.length; at++) stripArea(play, at);
  const out = built.toReversed().flatMap((at) => buildArea(play, at).map((hole) => ({ at, hole })));
  const others = notFromAHole(play);
  if (chance.maybe(0.75)) {
    countTrays(
      play,
      others.map((one) => one.tray),
    );
  }
  const strays = [
    ...out.map(({ at, hole }) => leftOf(play, at, hole)),
    ...others.map(
      ({ kind, spec, tray, answer }): Left => ({ kind, really: spec, answer, asked: askedOf(chance, spec, tray) }),
    ),
  ];
  return { seed, ledger: play.told.ledger, planned: car.planned, fasteners: car.fasteners, strays };
}

/** The last off are the first back. A quarter of the leftovers are found in the middle of the build. */
function areasBuilt(chance: Chance, car: Car): number[] {
  const all = car.areas.map((_, at) => at);
  return chance.maybe(0.25) ? all.slice(chance.whole(1, Math.ceil(all.length / 2))) : all;
}

function open(play: Play): void {
  const { told, car, mistakes } = play;
  mustSay(told, { verb: 'open-job', label: 'invented car' }, 0);
  if (car.planned) {
    const entries = car.areas.flatMap((area) => [
      { kind: 'area-declared', area: area.name, planned: true },
      ...area.holes.map((wants, i) => ({ kind: 'hole-declared', hole: `${area.name}/${i + 1}`, wants })),
    ]);
    mustSay(told, { verb: 'declare', entries }, 1000);
  }
  for (const [at, area] of car.areas.entries()) {
    if (!area.renewed) continue;
    const over = mistakes.some((m) => m.area === at && m.kind === 'new one over') ? 1 : 0;
    // What is renewed is alike in its whole area.
    const quantity = area.holes.length + over;
    mustSay(told, { verb: 'fill-box', name: boxOf(area), quantity, spec: area.called[0] }, 5000);
  }
}

const askedOf = (chance: Chance, spec: Spec, tray: string): Asked => ({
  spec: inTheHand(chance, spec),
  ...(chance.maybe(0.85) && { tray }),
});

type Loose = { kind: MistakeKind; spec: Spec; tray: string; answer: Answer };
function notFromAHole({ chance, car, mistakes }: Play): Loose[] {
  return mistakes.flatMap(({ kind, area }): Loose[] => {
    const of = car.areas[area] as CarArea;
    if (kind === 'new one over') {
      return [{ kind, spec: of.holes[0] as Spec, tray: of.tray, answer: { as: 'new one', box: boxOf(of) } }];
    }
    return kind === 'not of this car'
      ? [{ kind, spec: anySpec(chance), tray: chance.of(car.trays), answer: { as: 'not of this job' } }]
      : [];
  });
}

function leftOf(play: Play, at: number, hole: number): Left {
  const { chance, car, bolts, mistakes } = play;
  const area = car.areas[at] as CarArea;
  const { kind } = mistakes.find((one) => one.area === at) as Mistake;
  const really = area.holes[hole] as Spec;
  const tray = bolts.get(boltAt(at, hole)) ?? area.tray;
  return { kind, really, answer: answerOf(play, at, hole, kind), asked: askedOf(chance, really, tray) };
}

function answerOf(play: Play, at: number, hole: number, kind: MistakeKind): Answer {
  const { ledger } = play.told;
  const area = (play.car.areas[at] as CarArea).name;
  // With a plan the hole's number is known although nobody called it.
  const name = play.calledAs.get(boltAt(at, hole)) ?? (play.car.planned ? `${area}/${hole + 1}` : undefined);
  const named = lastUncalled(play, at, kind) ?? name;
  const as = kind === 'old one kept' ? 'old one' : named === undefined ? 'never called' : standingOf(ledger, named);
  const spec = named === undefined ? undefined : specOfHole(ledger, named);
  const equals = [...every(ledger, 'hole')]
    .map((h) => h.hole)
    .filter((one) => one.startsWith(`${area}/`) && (kind === 'old one kept' || standingOf(ledger, one) === as))
    .filter((one) => spec === undefined || cannotBeToldApart(specOfHole(ledger, one), spec));
  // A number whose call was struck is known to nobody but the log.
  return { as, area, holes: equals.length === 0 && named !== undefined ? [named] : equals };
}

/** Planned, one key for two: the calls closed up, and the last hole of the area is the one nobody called. */
function lastUncalled(play: Play, at: number, kind: MistakeKind): string | undefined {
  const area = play.car.areas[at] as CarArea;
  const last = `${area.name}/${area.holes.length}`;
  return kind === 'one call for two' && play.car.planned && stateOf(play.told.ledger, 'hole', last) ? last : undefined;
}

/** The first job with so many fasteners or more that leaves several over. */
export function largeJobLeft(fasteners: number): Leftovers {
  for (let seed = 1; ; seed++) {
    if (inventedCar(chanceFrom(seed)).fasteners < fasteners) continue;
    const job = leftoversOf(seed);
    if (job.strays.length > 3) return job;
  }
}
