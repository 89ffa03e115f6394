// What a mechanic may call while the car comes apart: each row makes one call out of what lies on the bench, or none.
import { every, stateOf } from '../../src/job/ledger.ts';
import type { Said } from '../../src/job/said.ts';
import type { Hole } from '../../src/job/subjects.ts';
import type { Bench } from './bench.ts';
import { type Weighted, weighted } from './chance.ts';
import { specs } from './goods.ts';

/** '' where a name was wanted and there was none. */
export type Row = (bench: Bench) => Said | '' | undefined;

export const calledOf = (b: Bench, hole: Hole) => stateOf(b.ledger(), 'hole', hole)?.called;
export const anyHole = (b: Bench): Hole => b.chance.of([...b.car.holes.keys()]);
export const holesWhere = (b: Bench, is: (called: ReturnType<typeof calledOf>) => boolean): Hole[] =>
  [...b.car.holes.keys()].filter((hole) => is(calledOf(b, hole)));
const uncalled = (b: Bench) => holesWhere(b, (c) => (c?.levels.length ?? 0) === 0);
export const holding = (b: Bench) => holesWhere(b, (c) => c?.occupant !== undefined);
const canComeOff = (b: Bench) => holesWhere(b, (c) => c?.occupant !== undefined || (c?.levels.length ?? 0) === 0);

/** What is really in it, mostly; known in part or called wrongly now and then. */
export function seenIn(b: Bench, hole: Hole) {
  const there = b.car.holes.get(hole);
  if (b.chance.maybe(0.05)) return b.chance.of(specs);
  if (b.chance.maybe(0.1)) return there?.kind && { kind: there.kind };
  return there;
}
const specSeen = (b: Bench, hole: Hole) => {
  const spec = seenIn(b, hole);
  return spec ? { spec } : {};
};
export const aTray = (b: Bench): string => `tray:${b.chance.of(['1', '1', '1', '2', 'cover tray'])}`;
const layingPlace = (b: Bench): string =>
  b.chance.maybe(0.94) ? aTray(b) : b.chance.of(['scrap', 'owner', 'lost', 'supplier']);

const find: Row = (b) => {
  const hole = b.chance.any(uncalled(b));
  return hole && { verb: 'find-fastener', hole, ...specSeen(b, hole) };
};
const findEmpty: Row = (b) => {
  const hole = b.chance.any(uncalled(b).filter((one) => b.car.holes.get(one) === undefined || b.chance.maybe(0.02)));
  return hole && { verb: 'find-empty', hole };
};
const slacken: Row = (b) => {
  const hole = b.chance.any(canComeOff(b));
  return hole && { verb: 'slacken', hole, ...(calledOf(b, hole) ? {} : specSeen(b, hole)) };
};
const remove: Row = (b) => {
  const hole = b.chance.any(canComeOff(b));
  return (
    hole && {
      verb: 'remove',
      hole,
      to: layingPlace(b),
      ...(calledOf(b, hole)?.occupant ? {} : specSeen(b, hole)),
      ...(b.chance.maybe(0.06) && { wrong: b.chance.of(['odd', 'damaged']) }),
      ...(b.chance.maybe(0.08) && { partStays: true }),
    }
  );
};
const breaks: Row = (b) => {
  const hole = b.chance.any(canComeOff(b));
  const pieces = b.chance.some(['hole', 'found', 'lost'], 0.5);
  const headTo = hole && b.chance.of([`hole:${hole}`, 'tray:1', 'scrap', 'lost']);
  return hole && { verb: 'break', hole, headTo, pieces: pieces.length > 0 ? pieces : ['hole'], ...specSeen(b, hole) };
};
const removePart: Row = (b) => {
  const part = b.chance.any(b.car.parts);
  return part && { verb: 'remove-part', part, ...(b.chance.maybe(0.2) && { heldBy: [anyHole(b)] }) };
};
const partConnection: Row = (b) => ({ verb: 'part-connection', connection: b.chance.of(b.car.connections) });
const drain: Row = (b) => {
  const circuit = b.chance.any(b.car.circuits);
  return circuit && { verb: 'drain', circuit };
};

const sorts = {
  stand: 'stand',
  jack: 'jack',
  'cam lock': 'lock',
  rag: 'rag',
  plug: 'plug',
  strap: 'strap',
  mask: 'mask',
} as const;
const putIn: Row = (b) => {
  const temporary = b.chance.of(b.car.temporaries);
  const at = b.chance.of([
    undefined,
    `area:${b.chance.of(b.car.areas)}`,
    `hole:${anyHole(b)}`,
    ...(b.car.parts[0] ? [`part:${b.chance.of(b.car.parts)}`] : []),
  ]);
  return { verb: 'put-in', temporary, sort: sorts[temporary as keyof typeof sorts], ...(at && { at }) };
};
const makeFinding: Row = (b) => {
  const at = b.chance.of([
    `hole:${anyHole(b)}`,
    `area:${b.chance.of(b.car.areas)}`,
    'vehicle',
    `part:${b.car.parts[0] ?? 'belt'}`,
  ]);
  return { verb: 'make-finding', at, what: 'looks worn', when: b.chance.of(['on arrival', 'during the work']) };
};
const toMarks: Row = (b) => {
  const drive = b.chance.any(b.car.drives);
  return drive && { verb: 'turn-to-marks', drive };
};
const mask: Row = (b) => ([...every(b.ledger(), 'area')].some((a) => !a.maskedAt) ? { verb: 'mask-all' } : undefined);

const rows: Weighted<Row> = [
  [12, find],
  [6, findEmpty],
  [14, slacken],
  [45, remove],
  [2.5, breaks],
  [5, removePart],
  [3, partConnection],
  [2, drain],
  [2, putIn],
  [1.5, makeFinding],
  [1, toMarks],
  [1.5, mask],
];
export const stripCall: Row = (bench) => weighted(bench.chance, rows)(bench);
