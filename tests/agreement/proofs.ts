// Calls that prove something: faces and beads, the check rotation, counts, looks, leaks, start, road. Whether they are
// in turn is chance; the drive towards release makes the sensible ones.
import { every } from '../../src/job/ledger.ts';
import type { Said } from '../../src/job/said.ts';
import type { Bench } from './bench.ts';
import { type Weighted, weighted } from './chance.ts';
import { anyHole, type Row } from './strip.ts';

const ofCar =
  (list: 'faces' | 'drives' | 'areas' | 'circuits', say: (name: string, b: Bench) => Said): Row =>
  (b) => {
    const name = b.chance.any(b.car[list]);
    return name === undefined ? undefined : say(name, b);
  };
const plain =
  (verb: string): Row =>
  () => ({ verb });

/** What the ledger has in each tray, or one off now and then. */
export function trayCounts(b: Bench): Said | undefined {
  const trays = [...every(b.ledger(), 'tray')];
  const off = b.chance.maybe(0.05) ? 1 : 0;
  const counts = trays.map((tray) => ({ tray: tray.tray, count: tray.contents.length + off }));
  return counts.length > 0 ? { verb: 'count-trays', counts } : undefined;
}

/** What lies on the scrap pile, counted from where each is, or one off now and then. */
export function scrapCount(b: Bench): Said {
  const ledger = b.ledger();
  const all = [...every(ledger, 'fastener'), ...every(ledger, 'piece'), ...every(ledger, 'stray')];
  const bought = [...every(ledger, 'box')].filter((one) => one.sort === 'fastener');
  const lying = all.filter((one) => one.place === 'scrap').length;
  const count = bought.reduce((sum, one) => sum + (one.moved.scrap ?? 0), lying);
  return { verb: 'count-scrap', count: count + (b.chance.maybe(0.1) ? 1 : 0) };
}

/** What is left of one name in the parts box, or one off now and then. */
export function boxCount(b: Bench, name?: string): Said | undefined {
  const box = b.chance.any([...every(b.ledger(), 'box')].filter((one) => name === undefined || one.name === name));
  return box && { verb: 'count-box', name: box.name, count: box.left + (b.chance.maybe(0.1) ? 1 : 0) };
}

const mark = (b: Bench): string => b.chance.of(['cam', 'crank']);
const rows: Weighted<Row> = [
  [4, ofCar('faces', (face) => ({ verb: 'clean-face', face }))],
  [
    4,
    ofCar('faces', (face, b) => {
      const label = b.chance.of(b.car.products);
      return { verb: 'lay-bead', face, ...(b.chance.maybe(0.3) ? { label } : { product: label.product }) };
    }),
  ],
  [3, ofCar('drives', (drive) => ({ verb: 'tensioner-live', drive }))],
  [
    8,
    ofCar('drives', (drive, b) => ({
      verb: 'turn-crank',
      drive,
      quarters: b.chance.of([1, 3, 4, 8, 8]),
      ...(b.chance.maybe(0.1) && { backwards: true, ...(b.chance.maybe(0.5) && { makersStep: true }) }),
    })),
  ],
  [
    6,
    ofCar('drives', (drive, b) => ({
      verb: 'read-mark',
      drive,
      mark: mark(b),
      teethOff: b.chance.maybe(0.93) ? 0 : 1,
    })),
  ],
  [4, ofCar('drives', (drive) => ({ verb: 'slide-locks', drive }))],
  [4, ofCar('drives', (drive, b) => ({ verb: 'read-tension', drive, how: 'pointer', right: b.chance.maybe(0.9) }))],
  [8, ofCar('drives', (drive) => ({ verb: 'reset-tension', drive }))],
  [1.5, ofCar('drives', (drive) => ({ verb: 'feel-bind', drive }))],
  [2, ofCar('drives', (drive) => ({ verb: 'explain-bind', drive, cause: 'a lock was in' }))],
  [3, ofCar('areas', (area) => ({ verb: 'companions-seen', area }))],
  [2, ofCar('areas', (area) => ({ verb: 'blind-holes-dry', area }))],
  [2, ofCar('areas', (area) => ({ verb: 'direction-right', area }))],
  [4, trayCounts],
  [
    4,
    (b) => ({
      verb: 'look-again',
      holes: b.chance.maybe(0.5) ? [anyHole(b)] : [...every(b.ledger(), 'hole')].map((h) => h.hole).slice(0, 20),
    }),
  ],
  [
    3,
    ofCar('circuits', (circuit, b) => ({
      verb: 'check-leaks',
      circuit,
      how: b.chance.of(['under pressure', 'after running']),
    })),
  ],
  [2, plain('see-oil-level')],
  [2, plain('tools-out')],
  [2, scrapCount],
  [2, (b) => boxCount(b)],
  [3, plain('start-engine')],
  [2, plain('pedal-firm')],
  [1, plain('lower-car')],
  [2, (b) => ({ verb: 'move-car', how: b.chance.of(['own power', 'by hand']) })],
  [2, plain('road-test')],
  [0.5, () => ({ verb: 'waive-road-test', who: 'Ada', because: 'snow' })],
  [1, (b) => ({ verb: 'note-registration', registration: `AB ${b.chance.whole(1, 99)}` })],
  [1.5, (b) => ({ verb: 'note-odometer', distance: b.chance.whole(1, 200_000) })],
  [
    2,
    (b) => ({
      verb: 'note-conditions',
      celsius: b.chance.whole(2, 30),
      ...(b.chance.maybe(0.6) && { humidityPct: b.chance.whole(20, 80) }),
    }),
  ],
  [1.5, plain('confirm-clock')],
];
export const proofCall: Row = (bench) => weighted(bench.chance, rows)(bench);
