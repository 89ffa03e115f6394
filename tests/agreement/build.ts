// What a mechanic may call while the car goes together again: fasteners, parts, connections, temporaries, fluids.
import { wantsOf } from '../../src/job/closed.ts';
import { every, stateOf } from '../../src/job/ledger.ts';
import type { Said } from '../../src/job/said.ts';
import type { Hole } from '../../src/job/subjects.ts';
import type { Bench } from './bench.ts';
import { type Weighted, weighted } from './chance.ts';
import { specs } from './goods.ts';
import { anyHole, calledOf, holding, holesWhere, type Row } from './strip.ts';

const emptied = (b: Bench): Hole[] => holesWhere(b, (c) => c !== undefined && c.touchedAt > 0 && !c.occupant);
const loose = (b: Bench): Hole[] =>
  holesWhere(b, (c) => c?.occupant !== undefined && c.touchedAt > 0 && c.occupant.level !== 'tight');
const inHand = (b: Bench) => [...every(b.ledger(), 'fastener')].filter((f) => f.place.startsWith('tray:'));
const boxes = (b: Bench) => [...every(b.ledger(), 'box')].filter((box) => box.left > 0);

const manner = (b: Bench) => ({
  ...(b.chance.maybe(0.09) && { forNow: true }),
  ...(b.chance.maybe(0.04) && { working: true }),
  ...(b.chance.maybe(0.05) && { substitute: 'nothing else at hand' }),
  ...(b.chance.maybe(0.05) && { partStays: true }),
});

const fit: Row = (b) => {
  const hole = b.chance.any(emptied(b));
  return hole && { verb: 'fit', hole, ...manner(b) };
};
const fitNamed: Row = (b) => {
  const hole = b.chance.any(emptied(b));
  const fastener = b.chance.any(b.chance.maybe(0.8) ? inHand(b) : [...every(b.ledger(), 'fastener')]);
  return hole && fastener && { verb: 'fit', hole, fastener: fastener.id, ...manner(b) };
};
const fitNew: Row = (b) => {
  const hole = b.chance.any(emptied(b));
  const box = b.chance.any(boxes(b));
  return hole && box && { verb: 'fit', hole, box: box.name, ...manner(b) };
};
/** A new one for a hole, as it wants it or nearly so. */
export function newFor(b: Bench, hole: Hole): Said {
  const h = stateOf(b.ledger(), 'hole', hole);
  const wants = (h && wantsOf(b.ledger(), h)) ?? {};
  const other = b.chance.maybe(0.1) ? { head: 'hex 12', class: '12.9' } : {};
  const spec = b.chance.maybe(0.06) ? b.chance.of(specs) : { ...wants, ...other };
  return { verb: 'fill-box', name: `new for ${hole.replace('/', ' ')}`, spec, quantity: b.chance.whole(1, 2) };
}
const buy: Row = (b) => {
  const part = b.chance.any(b.car.parts);
  if (b.chance.maybe(0.3) && part) return { verb: 'fill-box', name: `new ${part}`, replaces: part };
  if (b.chance.maybe(0.2)) return { verb: 'fill-box', name: 'cleaner', quantity: b.chance.whole(1, 3) };
  const hole = b.chance.any(emptied(b)) ?? anyHole(b);
  return newFor(b, hole);
};
const tighten: Row = (b) => {
  const hole = b.chance.any(b.chance.maybe(0.93) ? loose(b) : holding(b));
  const method = b.chance.maybe(0.04) ? { method: { by: 'torque', newtonMetres: 10 } } : {};
  return hole && { verb: 'tighten', hole, ...(b.chance.maybe(0.3) && { last: b.chance.maybe(0.7) }), ...method };
};
const completePass: Row = (b) => ({ verb: 'complete-pass', area: b.chance.of(b.car.areas) });
const makeFinal: Row = (b) => {
  const hole = b.chance.any(holesWhere(b, (c) => c?.occupant?.forNow === true));
  return hole && { verb: 'make-final', hole };
};
const partsOff = (b: Bench) => [...every(b.ledger(), 'part')].filter((part) => part.off);
const fitPart: Row = (b) => {
  const part = b.chance.any(partsOff(b));
  return part && { verb: 'fit-part', part: part.part, ...(b.chance.maybe(0.25) && { forNow: true }) };
};
const replacePart: Row = (b) => {
  const part = b.chance.any(partsOff(b));
  const bought = b.chance.any(boxes(b).filter((box) => box.sort === 'part'));
  return (
    part && {
      verb: 'replace-part',
      part: part.part,
      ...(bought && b.chance.maybe(0.3) && { from: bought.name }),
      ...(b.chance.maybe(0.1) && { forNow: true }),
      ...(b.chance.maybe(0.3) && { verdict: 'cracked' }),
    }
  );
};
const finalPart: Row = (b) => {
  const part = b.chance.any([...every(b.ledger(), 'part')].filter((one) => one.forNow));
  return part && { verb: 'make-part-final', part: part.part };
};
const judgePart: Row = (b) => {
  const part = b.chance.any([...every(b.ledger(), 'part')].filter((one) => one.removedAt > 0));
  return part && { verb: 'judge-part', part: part.part, verdict: b.chance.of(['worn', 'cracked', 'owner keeps']) };
};
const connect: Row = (b) => {
  const made = b.chance.any([...every(b.ledger(), 'connection')].filter((one) => one.parted || one.forNow));
  return (
    made && {
      verb: 'make-connection',
      connection: made.connection,
      ...(b.chance.maybe(0.1) && !made.forNow && { forNow: true }),
    }
  );
};
const takeOut: Row = (b) => {
  const there = b.chance.any([...every(b.ledger(), 'temporary')].filter((one) => one.in));
  return there && { verb: 'take-out', temporary: there.temporary };
};
const fill: Row = (b) => {
  const circuit = b.chance.any([...every(b.ledger(), 'circuit')].filter((one) => one.drainedAt > one.filledAt));
  return circuit && { verb: 'fill-fluid', circuit: circuit.circuit, litres: 4 };
};
const unmask: Row = (b) =>
  [...every(b.ledger(), 'area')].some((one) => one.maskedAt > 0) ? { verb: 'unmask-all' } : undefined;
const countHoles: Row = (b) => {
  const area = b.chance.of(b.car.areas);
  const known = new Set(
    [...b.car.holes.keys()].filter((hole) => hole.startsWith(`${area}/`)).map((hole) => hole.split(/[/ ](?=\d)/)[1]),
  );
  return { verb: 'count-holes', area, count: known.size + (b.chance.maybe(0.1) ? 1 : 0) };
};
const takeBack: Row = (b) => {
  const hole = b.chance.any(loose(b));
  return hole && { verb: 'remove', hole, to: calledOf(b, hole)?.occupant?.working ? 'scrap' : 'tray:1' };
};

const rows: Weighted<Row> = [
  [30, fit],
  [7, fitNamed],
  [8, fitNew],
  [6, buy],
  [30, tighten],
  [6, completePass],
  [3, makeFinal],
  [4, fitPart],
  [3, replacePart],
  [2, finalPart],
  [1, judgePart],
  [4, connect],
  [3, takeOut],
  [2, fill],
  [2, unmask],
  [4, countHoles],
  [2, takeBack],
];
export const buildCall: Row = (bench) => weighted(bench.chance, rows)(bench);
