// What goes wrong on a job and what is said besides: lost, broken, condemned, strays, findings, repairs, waiting, and
// lines struck, restored and put right.
import { every, isStruck } from '../../src/job/ledger.ts';
import type { Said } from '../../src/job/said.ts';
import { suspectedOn } from '../../src/job/suspicions.ts';
import type { Bench } from './bench.ts';
import { type Weighted, weighted } from './chance.ts';
import { specs } from './goods.ts';
import { anyHole, aTray, calledOf, holding, holesWhere, type Row, seenIn } from './strip.ts';

const fasteners = (b: Bench) => [...every(b.ledger(), 'fastener')];
const notInHoles = (b: Bench) => fasteners(b).filter((f) => !f.place.startsWith('hole:'));
const pieces = (b: Bench) => [...every(b.ledger(), 'piece')];
const lost = (b: Bench): string[] => [...fasteners(b), ...pieces(b)].filter((one) => one.loss).map((one) => one.id);

const lose: Row = (b) => {
  const box = b.chance.any([...every(b.ledger(), 'box')].filter((one) => one.sort === 'fastener' && one.left > 0));
  const fastener = b.chance.any(notInHoles(b));
  const which = box && b.chance.maybe(0.3) ? { box: box.name } : fastener && { fastener: fastener.id };
  return which && { verb: 'lose-fastener', ...which, reaches: b.chance.maybe(0.4), where: 'bay' };
};
const search: Row = (b) => {
  const one = b.chance.any(lost(b));
  return one && { verb: 'search', lost: one, how: b.chance.of(['magnet', 'camera']) };
};
const ruleOut: Row = (b) => {
  const one = b.chance.any(lost(b));
  return one && { verb: 'rule-out-loss', lost: one, who: 'Ada', because: 'seen on the floor' };
};
const move: Row = (b) => {
  const one = b.chance.any(notInHoles(b));
  const to = b.chance.maybe(0.75) ? aTray(b) : b.chance.of(['scrap', 'owner', 'supplier']);
  return one && { verb: 'move-fastener', fastener: one.id, to };
};
const condemn: Row = (b) => {
  const one = b.chance.any(fasteners(b));
  return one && { verb: 'condemn', fastener: one.id, because: 'thread torn' };
};
const measure: Row = (b) => {
  const one = b.chance.any(fasteners(b).filter((f) => f.spec.oneUse || b.chance.maybe(0.1)));
  return one && { verb: 'measure-fastener', fastener: one.id, what: 'length', measuredMm: 60, limitMm: 61 };
};
const movePiece: Row = (b) => {
  const one = b.chance.any(pieces(b));
  return (
    one && { verb: 'move-piece', piece: one.id, to: b.chance.of(['scrap', 'scrap', 'tray:1', `hole:${anyHole(b)}`]) }
  );
};
const losePiece: Row = (b) => {
  const one = b.chance.any(pieces(b));
  return one && { verb: 'lose-piece', piece: one.id, reaches: b.chance.maybe(0.5), where: 'sump' };
};
const scrapOwn: Row = (b) => {
  const hole = b.chance.any(holesWhere(b, (c) => c?.own !== undefined && !c.occupant));
  return hole && { verb: 'scrap-own', hole };
};
const stray: Row = (b) => ({ verb: 'find-stray', spec: b.chance.of(specs), tray: b.chance.of(['1', '2']) });
const settle: Row = (b) => {
  const one = b.chance.any([...every(b.ledger(), 'stray')].filter((s) => !s.settled));
  if (!one) return undefined;
  if (b.chance.maybe(0.3))
    return { verb: 'move-stray', stray: one.id, to: b.chance.of(['tray:1', 'tray:2', 'tray:3']) };
  const hole = b.chance.any(holesWhere(b, (c) => !c?.occupant));
  if (hole && b.chance.maybe(0.5)) return { verb: 'give-stray', stray: one.id, hole };
  return b.chance.maybe(0.5)
    ? { verb: 'scrap-stray', stray: one.id }
    : { verb: 'disown-stray', stray: one.id, who: 'Ada', because: 'from another car' };
};
const wants: Row = (b) => {
  const hole = anyHole(b);
  const spec = b.chance.maybe(0.7) ? (calledOf(b, hole)?.occupant?.spec ?? seenIn(b, hole)) : b.chance.of(specs);
  return { verb: 'state-wants', hole, spec: spec || {}, because: 'as the book says' };
};
const correctSpec: Row = (b) => {
  const one = b.chance.any(fasteners(b));
  const spec = b.chance.maybe(0.5) ? b.chance.of(specs) : { ...one?.spec, class: '8.8' };
  return one && { verb: 'correct-spec', fastener: one.id, spec, because: 'read again' };
};
const exchange: Row = (b) => {
  const one = b.chance.any(holding(b)) ?? anyHole(b);
  const near = [...b.car.holes.keys()].filter((hole) => hole.split('/')[0] === one.split('/')[0]);
  return {
    verb: 'exchange-holes',
    one,
    other: b.chance.maybe(0.7) ? b.chance.of(near) : anyHole(b),
    because: 'misread',
  };
};
const leaveEmpty: Row = (b) => {
  const hole = b.chance.any(holesWhere(b, (c) => c !== undefined && c.touchedAt > 0 && !c.occupant));
  return hole && { verb: 'leave-empty', hole, who: 'Ada', because: 'never had one' };
};
const openFindings = (b: Bench) => [...every(b.ledger(), 'finding')].filter((one) => !one.closed);
const tellOwner: Row = (b) => {
  const one = b.chance.any(openFindings(b));
  return one && { verb: 'tell-owner', finding: one.id, said: 'do it' };
};
const closeFinding: Row = (b) => {
  const one = b.chance.any(openFindings(b));
  const how = b.chance.of(['put right', 'accepted', 'declined']);
  return one && { verb: 'close-finding', finding: one.id, how, who: 'Ada', because: 'good enough' };
};
const repair: Row = (b) => {
  const hole = b.chance.any(holesWhere(b, (c) => !c?.occupant));
  const done = hole ? (calledOf(b, hole)?.repair ?? []).map((one) => one.step) : [];
  const step = (['depth', 'drilled', 'tapped', 'cleaned', 'insert', 'tried'] as const).find((s) => !done.includes(s));
  return hole && { verb: 'repair-thread', hole, step: step ?? 'tried', ...(step === 'depth' && { millimetres: 22 }) };
};
const chase: Row = (b) => {
  const hole = b.chance.any(holesWhere(b, (c) => !c?.occupant));
  return hole && { verb: 'chase-thread', hole };
};
const box = (b: Bench) => b.chance.any([...every(b.ledger(), 'box')]);
const useUp: Row = (b) => {
  const one = box(b);
  return one && { verb: 'use-from-box', name: one.name, ...(b.chance.maybe(0.5) && { at: `hole:${anyHole(b)}` }) };
};
const moveBox: Row = (b) => {
  const one = box(b);
  return one && { verb: 'move-box', name: one.name, to: b.chance.of(['supplier', 'owner', 'scrap', 'lost']) };
};
const answer: Row = (b) => {
  const one = b.chance.any(suspectedOn(b.ledger()));
  return one && { verb: b.chance.maybe(0.6) ? 'dismiss-suspicion' : 'confirm-suspicion', hole: one.hole };
};
const wait: Row = () => ({ verb: 'wait', who: 'Ada', because: 'parts on order' });
const resume: Row = () => ({ verb: 'resume' });

export const struckLines = (b: Bench): number[] =>
  b.lines().flatMap((line) => (isStruck(b.ledger(), line.n) ? [line.n] : []));
const strike: Row = (b) => {
  const last = b.lines().length;
  const n = b.chance.maybe(0.5) ? b.chance.whole(Math.max(1, last - 8), last) : b.chance.whole(1, last);
  return { verb: 'strike', lines: b.chance.maybe(0.9) ? [n] : [n, b.chance.whole(1, last)] };
};
const restore: Row = (b) => {
  const n = b.chance.any(struckLines(b));
  return n === undefined ? undefined : { verb: 'restore', lines: [n] };
};
const services: Row = (b) => {
  const service = b.chance.of(['belt service', 'reseal', 'brakes']);
  const roll = b.chance.roll();
  if (roll < 0.4) return { verb: 'service-done', service };
  return roll < 0.75 ? { verb: 'drop-service', service, because: 'next time' } : { verb: 'order-service', service };
};
const others: Row = (b) =>
  b.chance.of<Said>([
    { verb: 'note', words: 'smells of fuel' },
    { verb: 'note-photo', file: '/photos/a.jpg', sha256: 'a'.repeat(64), bytes: 9, at: `hole:${anyHole(b)}` },
    { verb: 'note-due', what: 'retorque', atDistance: 1000 },
    { verb: 'release', who: 'Ada' },
    { verb: 'reopen', who: 'Ada', because: 'knocks' },
    { verb: 'open-job', label: 'the other one' },
  ]);

const rows: Weighted<Row> = [
  [2, lose],
  [3, search],
  [2, ruleOut],
  [4, move],
  [1, condemn],
  [2, measure],
  [3, movePiece],
  [1.2, losePiece],
  [1, scrapOwn],
  [1, stray],
  [2, settle],
  [2, wants],
  [2, correctSpec],
  [2.5, exchange],
  [0.7, leaveEmpty],
  [2, tellOwner],
  [2, closeFinding],
  [3, repair],
  [1, chase],
  [1, useUp],
  [1.5, moveBox],
  [0.6, wait],
  [1, resume],
  [9, strike],
  [7, restore],
  [2, services],
  [2.5, answer],
  [1.5, others],
];
export const troubleCall: Row = (bench) => weighted(bench.chance, rows)(bench);
