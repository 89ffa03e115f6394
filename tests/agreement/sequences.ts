// Whole jobs out of one number: a car is opened, taken apart, gets into trouble, goes together and is driven towards
// release, with awkward calls all the way. Some of them hold forged lines.

import type { Entry, EntryKind } from '../../src/job/entry.ts';
import { stateOf } from '../../src/job/ledger.ts';
import type { Line } from '../../src/job/line.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { nameOf } from '../../src/job/subjects.ts';
import { type Bench, benchFor, type Watch } from './bench.ts';
import { buildCall } from './build.ts';
import { chanceFrom, type Weighted, weighted } from './chance.ts';
import { forgedEntries } from './forged.ts';
import { inventedCar } from './invented-car.ts';
import { leadOn } from './leading.ts';
import { proofCall } from './proofs.ts';
import { type Row, stripCall } from './strip.ts';
import { troubleCall } from './trouble.ts';

export type Sequence = {
  seed: number;
  lines: readonly Line[];
  called: number;
  kinds: ReadonlySet<EntryKind>;
  /** The car left at some time. */
  released: boolean;
  forged: number;
};

function take(b: Bench, said: ReturnType<Row>): void {
  if (!said) return;
  const refused = b.call(said);
  if (!refused) return;
  if (refused.code === 'others-lean-on-it' && b.chance.maybe(0.6)) {
    take(b, { ...said, lines: [...(said.lines as number[]), ...refused.places.map((place) => Number(nameOf(place)))] });
  } else if (refused.kind === 'order' && b.chance.maybe(0.35)) b.call(said, { because: 'done already' });
}

/** What the plan says beforehand, in one or two services; the rest is said on the spot or never. */
function open(b: Bench): readonly Entry[] {
  b.call({ verb: 'open-job', label: 'blue one' });
  const all = [
    ...b.car.declarations,
    ...b.car.products.map((label): Entry => ({ kind: 'product-declared', label })),
    ...b.chance
      .some(['rag', 'cam lock'] as const, 0.5)
      .map(
        (temporary): Entry => ({ kind: 'temporary-declared', temporary, sort: temporary === 'rag' ? 'rag' : 'lock' }),
      ),
  ];
  const planned = b.chance.of([0, 0.7, 0.95, 1]);
  const [first, rest] = [b.chance.some(all, planned), [] as Entry[]];
  for (const one of all) if (!first.includes(one)) rest.push(one);
  b.call({ verb: 'order-service', service: 'belt service', ...(first.length > 0 && { declares: first }) });
  if (b.chance.maybe(0.4)) b.call({ verb: 'order-service', service: 'reseal', declares: b.chance.some(all, 0.2) });
  for (const one of b.chance.some(rest, 0.5)) take(b, { verb: 'declare', entries: [one] });
  if (b.chance.maybe(0.7)) b.call({ verb: 'note-conditions', celsius: b.chance.whole(5, 26) });
  if (b.chance.maybe(0.5)) b.call({ verb: 'note-odometer', distance: b.chance.whole(10, 200_000) });
  return all;
}

const declareAgain =
  (all: readonly Entry[]): Row =>
  (b) => {
    const one = b.chance.of(all);
    return { verb: 'declare', entries: [one] };
  };

/** Takes a forged line away again, so that what comes after is held against the second model in full. */
function strikeForged(b: Bench): void {
  const misfits = openPoints(b.ledger(), b.now()).filter((point) => point.code === 'misfit');
  for (const point of misfits) take(b, { verb: 'strike', lines: [Number(nameOf(point.at))] });
}

const hasLeft = (b: Bench): boolean => Boolean(stateOf(b.ledger(), 'vehicle', 'vehicle')?.releasedAt);

export function sequenceFrom(seed: number, watch: Watch = () => {}): Sequence {
  const chance = chanceFrom(seed);
  const b = benchFor(chance, inventedCar(chance), watch);
  const all = open(b);
  let forged = 0;
  let released = false;
  const forging = chance.maybe(0.4) ? chance.of([0.01, 0.03]) : 0;
  const awkward = chance.of([0.03, 0.1, 0.25]);

  const forge = (): void => {
    if (b.forge(...forgedEntries(b))) forged++;
    if (chance.maybe(0.3)) strikeForged(b);
  };
  const other: Weighted<Row> = [
    [5, troubleCall],
    [3, proofCall],
    [0.4, declareAgain(all)],
  ];
  const calls = (many: number, row: Row, astray: number): void => {
    for (let i = 0; i < many; i++) {
      take(b, chance.maybe(astray) ? weighted(chance, other)(b) : row(b));
      if (chance.maybe(forging)) forge();
    }
  };
  const lead = (many: number): void => {
    for (let stuck = 0, i = 0; i < many && stuck < 12 && !hasLeft(b); i++) {
      stuck = leadOn(b) ? 0 : stuck + 1;
      if (chance.maybe(awkward)) take(b, weighted(chance, [...other, [2, stripCall], [2, buildCall]] as const)(b));
      if (chance.maybe(forging)) forge();
    }
    released ||= hasLeft(b);
  };

  const holes = b.car.holes.size;
  calls(holes * 2 + chance.whole(25, 55), stripCall, 0.15 + awkward);
  if (chance.maybe(0.35)) b.say({ kind: 'tray-declared', tray: chance.of(['1', 'cover tray']), isPart: true });
  calls(chance.whole(35, 105), (one) => weighted(chance, other)(one), 0);
  calls(holes * 3 + chance.whole(30, 75), buildCall, 0.2 + awkward);
  lead(chance.maybe(0.08) ? 10 : 120);
  if (forging > 0) strikeForged(b);
  if (hasLeft(b) && chance.maybe(0.4)) {
    b.call({ verb: 'reopen', who: 'Ada', because: 'knocks' });
    calls(chance.whole(0, 12), stripCall, 0.3);
    lead(100);
  }
  if (chance.maybe(0.2)) {
    b.call({ verb: 'reopen', who: 'Ada', because: 'not paid for' });
    b.call({ verb: 'leave-unreleased', who: 'Ada', because: 'towed' });
    if (chance.maybe(0.5)) {
      b.call({ verb: 'reopen', who: 'Ada', because: 'back' });
      lead(60);
    }
  }
  return { seed, lines: b.lines(), called: b.called(), kinds: b.kinds, released, forged };
}
