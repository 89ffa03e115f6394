// What is said beside a call that is taken, as one who stands beside the mechanic would say it. It stops nothing.
import { describe, expect, it } from 'vitest';
import { everyBead, noSealant } from '../../src/job/beads.ts';
import { decide } from '../../src/job/decide.ts';
import type { Entry } from '../../src/job/entry.ts';
import { missingWhereOpen } from '../../src/job/first-in.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import { notAsked } from '../../src/job/not-asked.ts';
import { gapWords } from '../../src/job/number-jump.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { warningsOf } from '../../src/job/warnings.ts';
import { bench } from './bench.ts';

const m8 = { kind: 'bolt', head: 'hex 13', thread: 'M8' } as const;
const said = (on: ReturnType<typeof bench>, verb: string, more: object): string[] => {
  const answer = decide(on.ledger(), { verb, ...more }, on.now());
  if ('refused' in answer) throw new Error(`${verb}: ${answer.refused.because}`);
  return answer.warnings ?? [];
};
const off = (hole: string) => ({ hole, to: 'tray:1', spec: m8 });
const area = (name: string, more: object = {}): Entry => ({ kind: 'area-declared', area: name, ...more }) as Entry;

it('[O1] names what still stands in front, with the first of an area only', () => {
  const on = bench();
  on.declare(
    { kind: 'part-declared', part: 'belt', heldBy: [] },
    { kind: 'behind-declared', front: 'part:belt', behind: 'area:tensioner', until: 'closed', from: 'said' },
  );
  const warning = ['belt still stands in front of it'];
  expect(said(on, 'slacken', { hole: 'tensioner/1', spec: m8 })).toEqual(warning);
  expect(said(on, 'remove', off('tensioner/1'))).toEqual(warning);
  on.call('remove', off('tensioner/1'));
  expect(said(on, 'remove', off('tensioner/2'))).toEqual([]);
});

it('[L5] says that a new one has another head than came out, which is a new pattern or was bought for another hole', () => {
  const on = bench();
  on.off('strut foot/1', m8);
  on.count('strut foot', 1);
  on.call('fill-box', { name: 'flanged', spec: { ...m8, head: 'hex 12' } });
  on.call('fill-box', { name: 'alike', spec: m8 });
  expect(said(on, 'fit', { hole: 'strut foot/1', box: 'flanged' })).toEqual([
    'new pattern: its head is hex 12, hex 13 came out',
  ]);
  expect(said(on, 'fit', { hole: 'strut foot/1', box: 'alike' })).toEqual([]);
});

it('[T3] says of a part set on that it is the old one where it is to be renewed, and what is on in front of it', () => {
  const on = bench();
  on.declare(
    { kind: 'part-declared', part: 'belt', heldBy: [], renew: true },
    { kind: 'part-declared', part: 'cover', heldBy: ['cover/1'] },
    { kind: 'behind-declared', front: 'area:cover', behind: 'part:belt', until: 'closed', from: 'said' },
  );
  on.off('cover/1', m8);
  on.call('remove-part', { part: 'belt' });
  const old = 'the old belt goes on, though it is to be renewed';
  expect(said(on, 'fit-part', { part: 'belt' })).toEqual([old]);
  expect(said(on, 'fit-part', { part: 'belt', forNow: true })).toEqual([]);
  on.call('fit-part', { part: 'cover' });
  expect(said(on, 'fit-part', { part: 'belt' })).toEqual([old, 'cover is on in front of it already']);
  on.call('fill-box', { name: 'new belt', replaces: 'belt' });
  expect(said(on, 'replace-part', { part: 'belt' })).toEqual(['cover is on in front of it already']);
});

it('[T9] says before the engine turns or starts what was searched for in its works and not found', () => {
  const on = bench();
  on.off('cover/1', m8);
  const lost = on.own('cover/1');
  on.call('lose-fastener', { fastener: lost, reaches: true, where: 'belt' });
  on.call('search', { lost, how: 'magnet' });
  on.call('see-oil-level');
  on.call('tools-out');
  on.countTrays();
  const left = [`${lost} (bolt hex 13 M8 of cover 1) is not found, searched by magnet: it may lie in there yet`];
  expect(said(on, 'start-engine', {})).toEqual(left);
  on.call('rule-out-loss', { lost, who: 'Ann', because: 'seen on the floor of the yard' });
  expect(said(on, 'start-engine', {})).toEqual([]);
});

it('[R2] scolds nobody who slackens a tensioner for its belt, and does for what else stands in front', () => {
  const on = bench();
  const behind = (front: string): Entry =>
    ({ kind: 'behind-declared', front, behind: 'area:tensioner', until: 'closed', from: 'said' }) as Entry;
  on.declare(
    { kind: 'part-declared', part: 'belt', heldBy: [] },
    { kind: 'part-declared', part: 'cover', heldBy: [] },
    behind('part:belt'),
    {
      kind: 'drive-declared',
      drive: 'timing',
      areas: ['tensioner'],
      parts: ['belt'],
      marks: [],
      turns: 2,
      tensioner: 'set',
      crankKeyed: true,
    },
  );
  const slack = { hole: 'tensioner/1', spec: m8 };
  expect(said(on, 'slacken', slack)).toEqual([]);
  expect(said(on, 'remove', off('tensioner/1'))).toEqual(['belt still stands in front of it']);
  on.declare(behind('part:cover'));
  expect(said(on, 'slacken', slack)).toEqual(['belt, cover still stands in front of it']);
});

it('[K4] asks whether a number far past those called so far is meant, where nobody knows how many there are', () => {
  const on = bench();
  expect(said(on, 'remove', off('sump/9'))).toEqual([]);
  on.call('remove', off('sump/2'));
  expect(said(on, 'remove', off('sump/6'))).toEqual([]);
  const asked = [`sump was called up to 2 so far: is 7 meant? Else: strike ${on.ledger().lines.length + 1}`];
  const gaps = () =>
    openPoints(on.ledger(), on.now())
      .map((point) => gapWords(on.ledger(), point))
      .join('');
  expect(gaps()).toBe('');
  expect(said(on, 'remove', off('sump/7'))).toEqual(asked);
  expect(said(on, 'find-empty', { hole: 'sump/7' })).toEqual(asked);
  on.call('remove', off('sump/7'));
  expect(said(on, 'remove', off('sump/7 nut'))).toEqual([]);
  expect(gaps()).toBe(`; 3 to 6 never called: is 7 meant? Else: strike ${on.ledger().lines.length}`);
  on.declare(area('sump', { planned: true }));
  expect(said(on, 'remove', off('sump/99'))).toEqual([]);
});

it('[K4] asks so of the holes that something is declared by, which may go on one from the other', () => {
  const on = bench();
  const saidOf = (...entries: Entry[]) => warningsOf(on.ledger(), entries, on.now());
  const slackOnly = (number: number) =>
    ({ kind: 'hole-declared', hole: `sump/${number}`, slackOnly: true }) as unknown as Entry;
  const held = (...numbers: number[]) =>
    ({ kind: 'part-declared', part: 'pan', heldBy: numbers.map((n) => `sump/${n}`) }) as unknown as Entry;
  const pressed = (...numbers: number[]) =>
    ({ ...facePressed, pressedBy: numbers.map((n) => `sump/${n}`) }) as unknown as Entry;
  const facePressed = { kind: 'face-declared', face: 'lip', area: 'sump', keepsIn: [] };
  expect(saidOf(slackOnly(77))).toEqual([]);
  on.call('remove', off('sump/1'));
  on.call('remove', off('sump/2'));
  const asked = (n: number) =>
    `sump was called up to 2 so far: is ${n} meant? Else: strike ${on.ledger().lines.length + 1}`;
  expect(saidOf(slackOnly(77))).toEqual([asked(77)]);
  expect(saidOf(slackOnly(6))).toEqual([]);
  expect(saidOf(held(1, 2, 3, 4, 5, 6, 7, 8))).toEqual([]);
  expect(saidOf(held(1, 2, 30))).toEqual([asked(30)]);
  expect(saidOf(pressed(3, 5, 7, 21))).toEqual([asked(21)]);
  // A plan knows its holes.
  expect(saidOf(slackOnly(77), held(30))).toEqual([]);
});

it('[R1] asks after an area that a drive goes over and nobody named, where others are known', () => {
  const on = bench();
  const drive = (...areas: string[]) =>
    ({
      kind: 'drive-declared',
      drive: 'timing',
      areas,
      parts: [],
      marks: [],
      turns: 2,
      tensioner: 'set',
      crankKeyed: true,
    }) as Entry;
  const saidOf = (entry: Entry) => warningsOf(on.ledger(), [entry], on.now());
  expect(saidOf(drive('nosuch'))).toEqual([]);
  on.call('remove', off('sump/1'));
  expect(saidOf(drive('sump'))).toEqual([]);
  expect(saidOf(drive('sump', 'sumo'))).toEqual([
    'nobody named an area "sumo" before; where it is a slip, strike it: sump',
  ]);
});

it('says nothing of a hose clamp in the area, off or slack, where a face is closed or its part comes off', () => {
  const on = bench();
  const clamp = { kind: 'clamp' } as const;
  on.declare({ kind: 'part-declared', part: 'housing', heldBy: ['housing/2', 'housing/3'] });
  on.call('remove', { hole: 'housing/1', to: 'tray:1', spec: clamp });
  for (const hole of ['housing/2', 'housing/3']) on.call('remove', off(hole));
  on.call('count-holes', { area: 'housing', count: 3 });
  on.call('fit', { hole: 'housing/2' });
  expect(said(on, 'tighten', { hole: 'housing/2', pass: 'final' })).toEqual(['1 of housing is still off']);
  on.call('fit', { hole: 'housing/3' });
  expect(said(on, 'tighten', { hole: 'housing/2', pass: 'final' })).toEqual([]);
  const other = bench();
  other.call('slacken', { hole: 'housing/1', spec: clamp });
  other.call('remove', off('housing/2'));
  expect(said(other, 'remove-part', { part: 'housing', heldBy: ['housing/1', 'housing/2'] })).toEqual([]);
});

it('[F1] asks whether what is found at a place was found there already', () => {
  const on = bench();
  const found = (at: string, what = 'head rounded') => said(on, 'make-finding', { at, what });
  on.call('remove', off('sump/1'));
  expect(found('hole:sump/1')).toEqual([]);
  on.call('make-finding', { at: 'hole:sump/1', what: 'head rounded' });
  on.call('make-finding', { at: 'area:sump', what: 'weeps' });
  expect(found('hole:sump/1', 'thread pulled')).toEqual([
    `found there already: head rounded; where it is the same, strike ${on.ledger().lines.length + 1}`,
  ]);
  expect(found('hole:sump/2')).toEqual([]);
  // Of a whole area or the car there may be many.
  expect(found('area:sump')).toEqual([]);
});

it('asks after an odometer that is noted lower than before, whatever its unit', () => {
  const on = bench();
  // 74,565 mi, by 1.609344 km.
  const asked = ['120000 km were noted before: an odometer does not run back. Was a figure left out?'];
  expect(said(on, 'note-odometer', { distance: 120_000 })).toEqual([]);
  expect(said(on, 'note-odometer', { distance: 12_000 })).toEqual(asked);
  expect(said(on, 'note-odometer', { distance: 74_564, unit: 'mi' })).toEqual(asked);
  expect(said(on, 'note-odometer', { distance: 74_565, unit: 'mi' })).toEqual([]);
});

it('[T1] misses the stand when the first nut of a wheel comes off, not when it is slackened', () => {
  const on = bench();
  on.declare(area('wheel', { role: 'wheel' }));
  expect(said(on, 'slacken', { hole: 'wheel/1', spec: m8 })).toEqual([]);
  expect(said(on, 'remove', off('wheel/1'))).toEqual(['no stand is in: on stands, never on the jack']);
  on.call('put-in', { temporary: 'jack', sort: 'jack' });
  expect(said(on, 'remove', off('wheel/1'))).toHaveLength(1);
  on.call('put-in', { temporary: 'stand', sort: 'stand' });
  expect(said(on, 'remove', off('wheel/1'))).toEqual([]);
});

it('[T1] misses what carries the engine at a mount that no plan describes, and what carries the car where a wheel is said to be one', () => {
  const on = bench();
  const carried = ['what carries the engine is not called: jack with block'];
  on.declare(area('engine mount', { role: 'mount' }));
  expect(said(on, 'slacken', { hole: 'engine mount/1', spec: m8 })).toEqual([]);
  expect(said(on, 'remove', off('engine mount/1'))).toEqual(carried);
  on.call('remove', off('engine mount/1'));
  expect(said(on, 'remove', off('engine mount/2'))).toEqual([]);
  // Named by the call that takes it off, and held by what is off already.
  expect(said(on, 'remove-part', { part: 'bracket', heldBy: ['engine mount/1'] })).toEqual(carried);
  on.call('remove', off('wheel/1'));
  const role = (name: string, more: object) => said(on, 'declare', { entries: [area(name, more)] });
  expect(role('wheel', { role: 'wheel' })).toEqual(['no stand is in: on stands, never on the jack']);
  expect(role('engine mount', { role: 'mount' })).toEqual(carried);
  on.call('put-in', { temporary: 'jack with block', sort: 'jack' });
  expect(said(on, 'remove-part', { part: 'bracket', heldBy: ['engine mount/1'] })).toEqual([]);
  expect(role('engine mount', { role: 'mount' })).toEqual([]);
});

it('[T3] says that the part a bolt holds is off and to be renewed, with the first bolt', () => {
  const on = bench();
  on.declare({ kind: 'part-declared', part: 'pump', heldBy: ['pump/1', 'pump/2'], renew: true });
  for (const hole of ['pump/1', 'pump/2']) on.call('remove', off(hole));
  on.call('count-holes', { area: 'pump', count: 2 });
  expect(said(on, 'fit', { hole: 'pump/1' })).toEqual(['pump is off: the new one goes on before its bolts']);
  on.call('fit', { hole: 'pump/1' });
  expect(said(on, 'fit', { hole: 'pump/2' })).toEqual([]);
});

it('[S1] misses the bead with the first bolt of a face, and when one is made tight', () => {
  const on = bench();
  on.declare({
    kind: 'face-declared',
    face: 'cover face',
    area: 'cover',
    pressedBy: ['cover/1', 'cover/2'],
    keepsIn: [],
    bead: true,
  });
  for (const hole of ['cover/1', 'cover/2']) on.call('remove', off(hole));
  on.call('count-holes', { area: 'cover', count: 2 });
  expect(said(on, 'fit', { hole: 'cover/1' })).toEqual([noBead]);
  on.call('fit', { hole: 'cover/1' });
  expect(said(on, 'fit', { hole: 'cover/2' })).toEqual([]);
  on.call('tighten', { hole: 'cover/1' });
  expect(said(on, 'tighten', { hole: 'cover/1' })).toEqual([noBead, '1 of cover is still off']);
  on.call('fit', { hole: 'cover/2' });
  expect(said(on, 'tighten', { hole: 'cover/1' })).toEqual([noBead]);
});

/** The way to call one that was laid in time and forgotten stands with it. */
const noBead = 'no bead is laid on cover face; laid before and not called: "bead cover face all the same"';

it('[S2] says that a face is closed over already', () => {
  const on = bench();
  on.declare({ kind: 'face-declared', face: 'cover face', area: 'cover', pressedBy: ['cover/1'], keepsIn: [] });
  on.call('remove', off('cover/1'));
  on.call('count-holes', { area: 'cover', count: 1 });
  expect(said(on, 'clean-face', { face: 'cover face' })).toEqual([]);
  on.call('fit', { hole: 'cover/1' });
  for (let pass = 0; pass < 2; pass++) on.call('tighten', { hole: 'cover/1' });
  expect(said(on, 'clean-face', { face: 'cover face' })).toEqual([
    'cover face is closed over: what presses it is tight',
  ]);
});

/** A drive whose belt the area "tensioner" tensions. */
const beltDrive = {
  kind: 'drive-declared',
  drive: 'drive',
  areas: ['tensioner'],
  parts: ['belt'],
  marks: ['crank'],
  tensioner: 'set',
  turns: 2,
  crankKeyed: true,
} as Entry;

it('[R2] says that a final comes after the belt, which is off', () => {
  const on = bench();
  on.declare(
    { kind: 'hole-declared', hole: 'tensioner/1', later: 'after-belt' },
    { kind: 'part-declared', part: 'belt', heldBy: [] },
    beltDrive,
  );
  on.call('remove', off('tensioner/1'));
  on.call('count-holes', { area: 'tensioner', count: 1 });
  on.call('remove-part', { part: 'belt' });
  on.call('fit', { hole: 'tensioner/1' });
  on.call('tighten', { hole: 'tensioner/1' });
  expect(said(on, 'tighten', { hole: 'tensioner/1' })).toEqual(['its final comes after belt, which is off']);
});

it('[K2] says what should lie in a tray where another number is counted', () => {
  const on = bench();
  for (const hole of ['cover/1', 'cover/2']) on.call('remove', off(hole));
  expect(said(on, 'count-trays', { counts: [{ tray: '1', count: 3 }] })).toEqual([
    '2 should lie in tray 1 by the ledger: count again',
  ]);
  expect(said(on, 'count-trays', { counts: [{ tray: '1', count: 2 }] })).toEqual([]);
});
it('[K2] asks for no third count, and names a stray called in another tray', () => {
  const on = bench();
  on.call('remove', off('cover/1'));
  const stray = `s${on.call('find-stray', { spec: { kind: 'bolt', thread: 'M6' }, tray: '2' })}.1`;
  const over = (count: number) => said(on, 'count-trays', { counts: [{ tray: '1', count }] });
  on.call('count-trays', { counts: [{ tray: '1', count: 2 }] });
  expect(over(2)).toEqual([
    `1 should lie in tray 1 by the ledger: counted again, 1 over; stray ${stray}, called in tray 2, may be it`,
  ]);
  expect(over(0)).toEqual(['1 should lie in tray 1 by the ledger: counted again, 1 short']);
});

it('[R2] misses what locks the shafts before the belt between them comes off', () => {
  const drive = {
    kind: 'drive-declared',
    drive: 'drive',
    areas: [],
    parts: ['belt'],
    marks: ['crank'],
    tensioner: 'none',
    turns: 2,
    crankKeyed: true,
  } as Entry;
  const on = bench();
  on.declare(
    { kind: 'part-declared', part: 'belt', heldBy: [] },
    { kind: 'part-declared', part: 'fan', heldBy: [] },
    drive,
  );
  expect(said(on, 'remove-part', { part: 'fan' })).toEqual([]);
  expect(said(on, 'remove-part', { part: 'belt' })).toEqual([
    'nothing locks its shafts; what does goes in at the marks, before the belt comes off',
  ]);
  on.declare(
    { kind: 'temporary-declared', temporary: 'clamp', sort: 'lock' },
    { kind: 'temporary-declared', temporary: 'pin', sort: 'pin' },
  );
  expect(said(on, 'remove-part', { part: 'belt' })).toEqual([
    'not in: clamp, pin; what locks the shafts goes in at the marks, before the belt comes off',
  ]);
  on.call('put-in', { temporary: 'clamp', sort: 'lock' });
  expect(said(on, 'remove-part', { part: 'belt' })).toEqual([
    'not in: pin; what locks the shafts goes in at the marks, before the belt comes off',
  ]);
  on.call('put-in', { temporary: 'pin', sort: 'pin' });
  expect(said(on, 'remove-part', { part: 'belt' })).toEqual([]);
});

it('[T5] misses the draining before the first bolt of an area that a hose of it says is full', () => {
  const on = bench();
  on.declare(
    { kind: 'circuit-declared', circuit: 'coolant', fluid: 'coolant mix' },
    { kind: 'connection-declared', connection: 'hose', area: 'pump', circuit: 'coolant' },
  );
  expect(said(on, 'remove', off('cover/1'))).toEqual([]);
  expect(said(on, 'remove', off('pump/1'))).toEqual([
    'coolant was not called drained: hot it stands under pressure, let it cool first',
  ]);
  on.call('part-connection', { connection: 'hose' });
  expect(said(on, 'remove', off('pump/1'))).toEqual([]);
  on.call('strike', { lines: [on.ledger().lines.length] });
  on.call('drain', { circuit: 'coolant' });
  expect(said(on, 'remove', off('pump/1'))).toEqual([]);
});

it('[T5 K4] minds with a name of which nobody spoke, where others are known', () => {
  const on = bench();
  expect(said(on, 'drain', { circuit: 'brakes' })).toEqual([]);
  on.declare({ kind: 'circuit-declared', circuit: 'brake', fluid: 'brake fluid' });
  on.off('lid/1', m8);
  expect(said(on, 'drain', { circuit: 'brakes' })).toEqual([
    'nobody named a circuit "brakes" before; where it is a slip, strike it: brake',
  ]);
  expect(said(on, 'count-holes', { area: 'lidd', count: 1 })).toEqual([
    'nobody named an area "lidd" before; where it is a slip, strike it',
  ]);
});
it.each([
  ['fuel', 'petrol', /let off as the maker's manual says; no flame, no spark$/],
  ['cooling', 'antifreeze mix', /let it cool first$/],
  ['air conditioning', 'refrigerant', /by licensed practice alone$/],
  ['gearbox oil', 'gear oil', /: it runs out where it is opened$/],
])('[T5] says of %s with %s how it stands where it is opened', (circuit, fluid, how) => {
  const on = bench();
  on.declare(
    { kind: 'circuit-declared', circuit, fluid },
    { kind: 'connection-declared', connection: 'hose', area: 'pump', circuit },
  );
  expect(said(on, 'remove', off('pump/1'))[0]).toMatch(how);
});
it('[O2] says of a part that comes off which bolts are only slack in it', () => {
  const on = bench();
  on.declare(
    { kind: 'part-declared', part: 'pan', heldBy: ['sump/1', 'sump/2', 'sump/3'] },
    { kind: 'hole-declared', hole: 'sump/3', slackOnly: true },
  );
  on.call('slacken', { hole: 'sump/3', spec: m8 });
  on.call('slacken', { hole: 'sump/1', spec: m8 });
  on.call('remove', { ...off('sump/2'), partStays: true });
  expect(said(on, 'remove-part', { part: 'pan' })).toEqual(['still slack in it: sump 1']);
  // The last of them brings its part off; it is not slack in it any more.
  expect(said(on, 'remove', { hole: 'sump/1', to: 'tray:1' })).toEqual([]);
});

it('[U3] says of a call that was of another hole what the plan has there, and of its fastener that it may be called wrong', () => {
  const on = bench();
  on.declare(
    { kind: 'hole-declared', hole: 'cover/3', wants: { ...m8, lengthMm: 45 } },
    { kind: 'hole-declared', hole: 'cover/4', wants: { ...m8, lengthMm: 25 } },
    { kind: 'hole-declared', hole: 'cover/5', wants: { ...m8, lengthMm: 25 } },
  );
  on.call('remove', { hole: 'cover/4', to: 'tray:1', spec: { ...m8, lengthMm: 25 } });
  const really = (other: string) => said(on, 'exchange-holes', { one: 'cover/4', other, because: 'miscounted' });
  expect(really('cover/5')).toEqual([]);
  const correction = 'correct cover 3 is bolt hex 13 M8x45 because called at the wrong hole';
  expect(really('cover/3')).toEqual([
    expect.stringMatching(new RegExp(`M8x25 at cover 4, .*M8x45 at cover 3.*${correction}`)),
  ]);
  on.call('exchange-holes', { one: 'cover/4', other: 'cover/3', because: 'miscounted' });
  on.call('count-holes', { area: 'cover', count: 5 });
  expect(decide(on.ledger(), { verb: 'fit', hole: 'cover/3' }, on.now())).toMatchObject({
    refused: { rule: 'L6', instead: expect.stringMatching(/^correct what its own is/) },
  });
});

it('misses what carries or locks before the first of its area is opened, and takes the call all the same', () => {
  const on = bench();
  on.declare(
    { kind: 'temporary-declared', temporary: 'jack', sort: 'jack', at: 'area:bracket' },
    { kind: 'temporary-declared', temporary: 'flywheel lock', sort: 'lock', at: 'hole:pulley/1' },
    { kind: 'temporary-declared', temporary: 'mask', sort: 'mask', at: 'area:bracket' },
  );
  const noJack = ['not in: jack; to go in before bracket is opened'];
  expect(said(on, 'slacken', { hole: 'bracket/1', spec: m8 })).toEqual(noJack);
  expect(said(on, 'remove', off('bracket/1'))).toEqual(noJack);
  expect(said(on, 'remove', off('pulley/1'))).toEqual(['not in: flywheel lock; to go in before pulley is opened']);
  expect(said(on, 'remove', off('cover/1'))).toEqual([]);
  // A bolt that was in to turn the crank by opens nothing.
  on.call('remove', off('pulley/1'));
  on.call('count-holes', { area: 'pulley', count: 1 });
  on.call('fit', { hole: 'pulley/1', working: true });
  expect(said(on, 'remove', { hole: 'pulley/1', to: 'tray:1' })).toEqual([]);
  on.call('put-in', { temporary: 'jack', sort: 'jack', at: 'area:bracket' });
  expect(said(on, 'remove', off('bracket/1'))).toEqual([]);
});

it('misses what locks the shafts before what tensions a belt that is on, and no more with the belt off', () => {
  const on = bench();
  on.declare(
    { kind: 'part-declared', part: 'belt', heldBy: [] },
    { kind: 'temporary-declared', temporary: 'clamp', sort: 'lock', at: 'part:belt' },
    beltDrive,
  );
  expect(said(on, 'remove', off('tensioner/1'))).toEqual([
    'not in: clamp; to go in before tensioner is opened, at the marks',
  ]);
  on.call('remove-part', { part: 'belt' });
  expect(said(on, 'remove', off('tensioner/1'))).toEqual([]);
});

it('[T1] says that a jack which comes out still carries what its open area held', () => {
  const on = bench();
  on.declare({ kind: 'temporary-declared', temporary: 'jack', sort: 'jack', at: 'area:bracket' });
  on.call('put-in', { temporary: 'jack', sort: 'jack', at: 'area:bracket' });
  expect(said(on, 'take-out', { temporary: 'jack' })).toEqual([]);
  on.call('remove', off('bracket/1'));
  const open = ['bracket is open: what jack carries hangs on nothing else'];
  expect(said(on, 'take-out', { temporary: 'jack' })).toEqual(open);
  on.count('bracket', 1);
  on.back('bracket/1');
  expect(said(on, 'take-out', { temporary: 'jack' })).toEqual(open);
  on.call('tighten', { hole: 'bracket/1' });
  expect(said(on, 'take-out', { temporary: 'jack' })).toEqual([]);
});

it('[S1] misses that a face which wants no bead was called clean, before its part goes back and with the first that presses it', () => {
  const on = bench();
  on.declare(
    { kind: 'part-declared', part: 'pump', heldBy: ['pump/1', 'pump/2'] },
    {
      kind: 'face-declared',
      face: 'pump face',
      area: 'pump',
      pressedBy: ['pump/1', 'pump/2'],
      keepsIn: ['coolant'],
      part: 'pump',
    },
  );
  for (const hole of ['pump/1', 'pump/2']) on.call('remove', off(hole));
  on.call('count-holes', { area: 'pump', count: 2 });
  const wanted = ['pump face was not called clean since it was opened'];
  expect(said(on, 'fit-part', { part: 'pump' })).toEqual(wanted);
  expect(said(on, 'fit', { hole: 'pump/1' })).toEqual(wanted);
  expect(said(on, 'fit', { hole: 'pump/1', working: true })).toEqual([]);
  on.call('fit', { hole: 'pump/1' });
  expect(said(on, 'fit', { hole: 'pump/2' })).toEqual([]);
  on.call('remove', { hole: 'pump/1', to: 'tray:1' });
  on.call('clean-face', { face: 'pump face' });
  expect(said(on, 'fit', { hole: 'pump/1' })).toEqual([]);
});

it('[O4] says once an area that no figure is known, with the first of its finals', () => {
  const on = bench();
  on.declare(area('mount', { method: { by: 'torque' } }));
  for (const hole of ['mount/1', 'mount/2']) on.call('remove', off(hole));
  on.call('count-holes', { area: 'mount', count: 2 });
  for (const hole of ['mount/1', 'mount/2']) on.call('fit', { hole });
  const wanted = ["no figure is known for mount: the torque is in the maker's manual"];
  expect(said(on, 'complete-pass', { area: 'mount' })).toEqual([]);
  on.call('complete-pass', { area: 'mount' });
  expect(said(on, 'complete-pass', { area: 'mount' })).toEqual(wanted);
  expect(said(on, 'tighten', { hole: 'mount/1' })).toEqual(wanted);
  expect(said(on, 'tighten', { hole: 'mount/1', readNewtonMetres: 40 })).toEqual([]);
  on.call('tighten', { hole: 'mount/1' });
  expect(said(on, 'tighten', { hole: 'mount/2' })).toEqual([]);
});

it('[O4] misses what its plan puts at a bolt to hold it, when it is brought up, but not under a working one', () => {
  const on = bench();
  on.declare({ kind: 'temporary-declared', temporary: 'flywheel lock', sort: 'lock', at: 'area:pulley' });
  on.call('remove', off('pulley/1'));
  on.call('count-holes', { area: 'pulley', count: 1 });
  const wanted = ['not in: flywheel lock, to hold while pulley is brought up'];
  on.call('fit', { hole: 'pulley/1', working: true });
  expect(said(on, 'tighten', { hole: 'pulley/1' })).toEqual([]);
  on.call('remove', { hole: 'pulley/1', to: 'tray:1' });
  on.call('fit', { hole: 'pulley/1' });
  expect(said(on, 'tighten', { hole: 'pulley/1' })).toEqual(wanted);
  on.call('tighten', { hole: 'pulley/1' });
  expect(said(on, 'tighten', { hole: 'pulley/1' })).toEqual(wanted);
  on.call('put-in', { temporary: 'flywheel lock', sort: 'lock' });
  expect(said(on, 'tighten', { hole: 'pulley/1' })).toEqual([]);
});

it('[O2] says of a part that comes back with its first bolt that a working one is in its way', () => {
  const on = bench();
  on.declare({ kind: 'part-declared', part: 'cover', heldBy: ['cover/1', 'cover/2'] });
  for (const hole of ['cover/1', 'cover/2']) on.call('remove', off(hole));
  on.call('count-holes', { area: 'cover', count: 2 });
  on.call('fit', { hole: 'cover/2', working: true });
  expect(said(on, 'fit', { hole: 'cover/1' })).toEqual(['a working fastener is in cover 2: cover goes on over it']);
});

it('[T6] says beside a road test that no first start was called since a bead was laid', () => {
  const on = bench();
  on.declare({ kind: 'face-declared', face: 'lid', area: 'lid', pressedBy: ['lid/1'], keepsIn: [] });
  on.call('clean-face', { face: 'lid' });
  on.call('lay-bead', { face: 'lid', label: noSealant });
  expect(said(on, 'road-test', {})).toEqual([]);
  on.call('clean-face', { face: 'lid' });
  on.call('lay-bead', { face: 'lid', label: { ...noSealant, product: 'grease', kind: 'non-setting' } });
  expect(said(on, 'road-test', {})).toEqual(['no first start was called since a bead was laid on lid']);
  on.call('see-oil-level');
  on.call('start-engine');
  on.wait(6);
  expect(said(on, 'road-test', {})).toEqual([]);
});

it('asks after a road test that is called as soon as the engine was started', () => {
  const on = bench();
  on.declare(area('sump'));
  expect(said(on, 'road-test', {})).toEqual([]);
  on.declare(area('mount', { role: 'mount' }));
  on.call('slacken', { hole: 'mount/1', spec: m8 });
  on.call('count-holes', { area: 'mount', count: 1 });
  on.call('tighten', { hole: 'mount/1', pass: 'snug' });
  on.call('tighten', { hole: 'mount/1', pass: 'final' });
  expect(said(on, 'road-test', {})).toEqual(['no first start was called on this job, and its engine was worked on']);
  on.call('tools-out');
  on.call('see-oil-level');
  on.call('start-engine');
  on.wait(1.2);
  expect(said(on, 'road-test', {})).toEqual([
    expect.stringMatching(/^the engine was called started 7\d s ago: where it was not driven yet, strike it$/),
  ]);
  on.wait(1.2);
  expect(said(on, 'road-test', {})).toEqual([]);
});

it('[K4] says with a count of holes how many of them are called, where no plan knows them', () => {
  const on = bench();
  expect(said(on, 'count-holes', { area: 'pan', count: 5 })).toEqual([]);
  for (const hole of ['pan/1', 'pan/2']) on.call('remove', off(hole));
  expect(said(on, 'count-holes', { area: 'pan', count: 2 })).toEqual([]);
  expect(said(on, 'count-holes', { area: 'pan', count: 5 })).toEqual([
    '2 of 5 called: 3 more to call, or to count again',
  ]);
  expect(said(on, 'count-holes', { area: 'pan', count: 1 })).toEqual([
    '2 called, and 1 counted: one is called that is none, or count again',
  ]);
  on.declare(area('pan', { planned: true }));
  expect(said(on, 'count-holes', { area: 'pan', count: 5 })).toEqual([]);
});

it('[F5 S1] minds chips over a bead that lies open, and over none that is together', () => {
  const on = bench();
  on.declare({ kind: 'face-declared', face: 'pan face', area: 'pan', pressedBy: ['pan/1'], keepsIn: [], bead: true });
  for (const hole of ['pan/1', 'pan/2']) on.call('remove', off(hole));
  on.call('count-holes', { area: 'pan', count: 2 });
  on.call('repair-thread', { hole: 'pan/2', step: 'depth', millimetres: 20 });
  const drilled = () => said(on, 'repair-thread', { hole: 'pan/2', step: 'drilled', millimetres: 8.4 });
  on.call('clean-face', { face: 'pan face' });
  expect(drilled()).toEqual([]);
  on.call('lay-bead', { face: 'pan face', label: { ...noSealant, product: 'grease', kind: 'non-setting' } });
  expect(drilled()).toEqual(['the bead on pan face lies open under the chips: cleaned, and laid anew']);
  // Told once more where the car may leave: nothing asks for it.
  const told = () => notAsked(on.ledger()).find(({ what }) => what.startsWith('chips'));
  expect(told()).toBeUndefined();
  on.call('repair-thread', { hole: 'pan/2', step: 'drilled', millimetres: 8.4 });
  expect(told()).toEqual({
    what: 'chips in the bead on pan face',
    because: 'pan 2 drilled or tapped while it lay open',
  });
  on.call('fit', { hole: 'pan/1' });
  on.call('tighten', { hole: 'pan/1' });
  expect(drilled()).toEqual([]);
});

it('[T5] asks whether a circuit that was not called drained is still in it, where a connection of it is parted', () => {
  const on = bench();
  on.declare(
    { kind: 'circuit-declared', circuit: 'coolant', fluid: 'coolant mix' },
    { kind: 'connection-declared', connection: 'bottom hose', circuit: 'coolant' },
    { kind: 'connection-declared', connection: 'pump plug' },
  );
  const full = [
    'is coolant still in it? Where it is not, call it drained; hot it stands under pressure, let it cool first',
  ];
  expect(said(on, 'part-connection', { connection: 'pump plug' })).toEqual([]);
  expect(said(on, 'part-connection', { connection: 'bottom hose' })).toEqual(full);
  const top = { connection: 'top hose', of: { circuit: 'coolant', area: 'radiator' } };
  expect(said(on, 'part-connection', top)).toEqual(full);
  on.call('drain', { circuit: 'coolant' });
  for (const one of [top, { connection: 'bottom hose' }]) expect(said(on, 'part-connection', one)).toEqual([]);
  on.call('fill-fluid', { circuit: 'coolant', fluid: 'coolant mix', litres: 6 });
  expect(said(on, 'part-connection', { connection: 'bottom hose' })).toEqual(full);
});

it('[T1 T7] says of a car set on its wheels after its road test that one of the two is out of turn', () => {
  const on = bench();
  on.call('road-test');
  expect(said(on, 'lower-car', {})).toEqual([
    `the road test was called in line ${on.ledger().lines.length}, before it: the one that is out of turn is struck and called anew`,
  ]);
  for (const verb of ['put-in', 'take-out'])
    on.call(verb, { temporary: 'jack', ...(verb === 'put-in' && { sort: 'jack' }) });
  expect(said(on, 'lower-car', {})).toEqual([]);
});

describe('the label of a bead', () => {
  const plans = {
    product: 'joint sealant',
    kind: 'moisture',
    skinMinutes: 10,
    runHours: 6,
    labelCelsius: 23,
    labelHumidityPct: 50,
  } as const;
  const label = { ...plans, runHours: 12 };
  const pressed = { area: 'cover', pressedBy: ['cover/1'], keepsIn: [] };
  const face: Entry = { kind: 'face-declared', face: 'cover face', bead: true, ...pressed };
  const cover = area('cover', { planned: true });
  const laid = { face: 'cover face', product: 'joint sealant' };
  function cleaned(...declared: Entry[]) {
    const on = bench();
    on.declare(...declared);
    on.call('note-conditions', { celsius: 23, humidityPct: 50 });
    on.call('remove', off('cover/1'));
    on.call('clean-face', { face: 'cover face' });
    return on;
  }
  it('[S1] is named where it is the plan\u2019s, and that the one in the hand goes before it', () => {
    const on = cleaned({ kind: 'product-declared', label: plans }, face, cover);
    const n = on.ledger().lines.length + 1;
    expect(said(on, 'lay-bead', laid)).toEqual([
      "it counts by the plan's label: skin 10 min, fill 6 h, run 6 h, full 6 h at 23 °C, 50 %; the one in your hand goes before it: " +
        `strike ${n}, say that one (label in hand), call the bead anew`,
    ]);
    on.declare({ kind: 'product-declared', label });
    expect(said(on, 'lay-bead', laid)).toEqual([]);
  });
  it('[S5] told later leaves a bead its own until it is struck and called anew', () => {
    const on = cleaned({ kind: 'product-declared', label: plans }, face, cover);
    const again = (one: object) => said(on, 'declare', { entries: [{ kind: 'product-declared', label: one }] });
    expect(again(label)).toEqual([]);
    const n = on.call('lay-bead', laid);
    on.call('fit', { hole: 'cover/1' });
    on.call('tighten', { hole: 'cover/1' });
    expect(again(plans)).toEqual([]);
    expect(again(label)).toEqual([
      'the bead on cover face keeps the label it was laid by: skin 10 min, fill 6 h, run 6 h, full 6 h at 23 °C, 50 %; to go by this one: ' +
        `strike ${n} and call the bead anew; it cures from then on`,
    ]);
    on.declare({ kind: 'product-declared', label });
    on.call('strike', { lines: [n] });
    on.call('lay-bead', laid);
    expect(everyBead(on.ledger(), on.now()).map(({ needs }) => needs.run)).toEqual([12]);
    expect(again(label)).toEqual([]);
  });
});

it.each([
  ['nut', 'locking', 1],
  ['bolt', 'microencapsulated', 1],
  ['nut', 'zinc', 0],
] as const)('[L7] minds with an old %s, %s, that goes back what holds once', (kind, coating, many) => {
  const on = bench();
  on.off('cover/1', { kind, thread: 'M8', coating });
  on.count('cover', 1);
  expect(said(on, 'fit', { hole: 'cover/1' }).filter((one) => one.includes('holds once'))).toHaveLength(many);
  expect(said(on, 'fit', { hole: 'cover/1', working: true })).toEqual([]);
  on.call('fill-box', { name: 'new one', spec: { kind, thread: 'M8', coating } });
  expect(said(on, 'fit', { hole: 'cover/1', box: 'new one' })).toEqual([]);
});
it('[T8] minds with the first call after the job was said to wait, and no more', () => {
  const on = bench();
  on.call('wait', { who: 'parts', because: 'ordered' });
  expect(said(on, 'remove', off('sump/1'))).toEqual([
    'the job still waits for parts; where it does not, call that it goes on',
  ]);
  on.call('remove', off('sump/1'));
  expect(said(on, 'remove', off('sump/2'))).toEqual([]);
});

it('[O1] minds with the first fastener of what goes back what stands open behind it', () => {
  const on = bench();
  on.declare({ kind: 'behind-declared', front: 'area:pulley', behind: 'area:cover', until: 'closed', from: 'plan' });
  on.declare({ kind: 'part-declared', part: 'pulley', heldBy: ['pulley/1', 'pulley/2'] });
  for (const hole of ['pulley/1', 'pulley/2', 'cover/1']) on.call('remove', off(hole));
  for (const area of ['pulley', 'cover']) on.count(area, area === 'pulley' ? 2 : 1);
  expect(said(on, 'fit', { hole: 'pulley/1' })).toEqual(['behind it cover is open: cover 1 off']);
});
it('[O1] minds of no area that closes only with the part itself, but of what stands open behind that', () => {
  const on = bench();
  const behind = (front: string, behind: string) =>
    on.declare({ kind: 'behind-declared', front, behind, until: 'closed', from: 'plan' });
  on.declare({ kind: 'part-declared', part: 'strut', heldBy: ['foot/1', 'top/1'] });
  behind('area:foot', 'area:top');
  for (const area of ['foot', 'top']) {
    on.call('remove', off(`${area}/1`));
    on.count(area, 1);
  }
  expect(said(on, 'fit-part', { part: 'strut' })).toEqual([]);
  expect(said(on, 'fit', { hole: 'foot/1' })).toEqual([]);
  behind('area:top', 'area:cover');
  on.call('remove', off('cover/1'));
  on.count('cover', 1);
  expect(said(on, 'fit-part', { part: 'strut' })).toEqual(['behind it cover is open: cover 1 off']);
  expect(said(on, 'fit', { hole: 'foot/1' })).toEqual(['behind it cover is open: cover 1 off']);
});

it('[U1] minds with a strike that a hole is as found again under a part that is off, and of no other', () => {
  const on = bench();
  on.declare({ kind: 'part-declared', part: 'lid', heldBy: ['cover/1', 'cover/2'] });
  on.call('remove', off('cover/1'));
  on.call('find-empty', { hole: 'cover/2' });
  const empty = on.ledger().lines.length;
  expect(said(on, 'strike', { lines: [empty] })).toEqual([]);
  on.call('remove-part', { part: 'lid' });
  const still = 'is as found again though lid, held by it, is off: call what came out, or that nothing was in it';
  expect(said(on, 'strike', { lines: [empty] })).toEqual([`cover 2 ${still}`]);
  on.call('find-empty', { hole: 'bracket/1' });
  expect(said(on, 'strike', { lines: [on.ledger().lines.length] })).toEqual([]);
  on.call('exchange-holes', { one: 'cover/1', other: 'cover/3', because: 'so' });
  expect(said(on, 'strike', { lines: [on.ledger().lines.length] })).toEqual([]);
});

it('[U1] minds with a strike what is open again behind an area that stands shut, and of nothing where that is open', () => {
  const on = bench();
  on.declare(
    { kind: 'part-declared', part: 'pads', heldBy: [], renew: true },
    { kind: 'behind-declared', front: 'area:caliper', behind: 'part:pads', until: 'closed', from: 'plan' },
    { kind: 'behind-declared', front: 'area:caliper', behind: 'area:bracket', until: 'closed', from: 'plan' },
  );
  for (const hole of ['caliper/1', 'bracket/1']) on.call('remove', off(hole));
  on.call('remove-part', { part: 'pads' });
  on.call('fill-box', { name: 'new pads', replaces: 'pads' });
  const line = () => on.ledger().lines.length;
  on.call('replace-part', { part: 'pads' });
  const renewed = line();
  for (const area of ['caliper', 'bracket']) on.count(area, 1);
  const tight = (hole: string) => {
    on.call('fit', { hole });
    for (const pass of ['snug', 'final']) on.call('tighten', { hole, pass });
  };
  tight('bracket/1');
  const final = line();
  expect(said(on, 'strike', { lines: [renewed] })).toEqual([]);
  tight('caliper/1');
  expect(said(on, 'strike', { lines: [renewed] })).toEqual(['caliper stands shut in front of pads: off']);
  expect(said(on, 'strike', { lines: [final] })).toEqual(['caliper stands shut in front of bracket: bracket 1 snug']);
  expect(said(on, 'strike', { lines: [line()] })).toEqual([]);
});

it('[T1] minds with what goes back over a pin that is in behind it, and of nothing once that is out', () => {
  const on = bench();
  on.declare(
    { kind: 'part-declared', part: 'liner', heldBy: ['liner/1', 'liner/2'] },
    { kind: 'part-declared', part: 'belt', heldBy: [] },
    { kind: 'behind-declared', front: 'area:liner', behind: 'part:belt', until: 'closed', from: 'plan' },
    { kind: 'temporary-declared', temporary: 'tensioner pin', sort: 'pin', at: 'part:belt' },
  );
  for (const hole of ['liner/1', 'liner/2']) on.call('remove', off(hole));
  on.count('liner', 2);
  const minded = ['tensioner pin is in behind it, and would be shut in'];
  expect(said(on, 'fit', { hole: 'liner/1' })).toEqual([]);
  on.call('put-in', { temporary: 'tensioner pin', sort: 'pin', at: 'part:belt' });
  expect(said(on, 'fit', { hole: 'liner/1' })).toEqual(minded);
  expect(said(on, 'fit-part', { part: 'liner' })).toEqual(minded);
  on.call('fit', { hole: 'liner/1' });
  expect(said(on, 'fit', { hole: 'liner/2' })).toEqual([]);
  on.call('remove-part', { part: 'belt' });
  on.call('remove', { hole: 'liner/1', to: 'tray:1' });
  // What stands open behind it is told instead.
  expect(said(on, 'fit', { hole: 'liner/1' })).not.toEqual(expect.arrayContaining(minded));
  on.call('fit-part', { part: 'belt' });
  on.call('take-out', { temporary: 'tensioner pin' });
  expect(said(on, 'fit', { hole: 'liner/1' })).toEqual([]);
});

it('[K4] minds what is called found where the part that it held is off, which leads to off', () => {
  const on = bench();
  on.declare(
    { kind: 'area-declared', area: 'strut', planned: true },
    { kind: 'hole-declared', hole: 'strut/1' },
    { kind: 'hole-declared', hole: 'strut/2' },
    { kind: 'part-declared', part: 'strut leg', heldBy: ['strut/1', 'strut/2'] },
  );
  const struck = on.call('remove', off('strut/2'));
  on.call('remove', off('strut/1'));
  on.call('strike', { lines: [struck] });
  const leads = openPointsWithNext(on.ledger(), on.now()).find((p) => p.at === 'hole:strut/2')?.next;
  expect(leads).toEqual({ verb: 'remove', hole: 'strut/2', to: 'tray:1' });
  expect(said(on, 'find-fastener', { hole: 'strut/2' })).toEqual([
    'strut leg is off, and strut 2 held it: where it came off, call it off',
  ]);
  expect(said(on, 'remove', { hole: 'strut/2', to: 'tray:1' })).toEqual([]);
});

it('[T1] minds once more what is not in when the last fastener frees the part', () => {
  const on = bench();
  on.declare(
    area('right wheel', { role: 'wheel' }),
    { kind: 'part-declared', part: 'wheel', heldBy: ['right wheel/1', 'right wheel/2'] },
    { kind: 'part-declared', part: 'caliper', heldBy: ['caliper/1', 'caliper/2'] },
    { kind: 'temporary-declared', temporary: 'hook', sort: 'strap', at: 'area:caliper' },
  );
  const noStand = 'no stand is in: on stands, never on the jack';
  expect(said(on, 'remove', off('right wheel/1'))).toContain(noStand);
  on.call('remove', off('right wheel/1'));
  expect(said(on, 'remove', off('right wheel/2'))).toEqual([noStand]);
  on.call('remove', off('caliper/1'));
  expect(said(on, 'remove', off('caliper/2'))).toEqual(['hook not in: caliper hangs on nothing else now']);
  on.call('put-in', { temporary: 'hook', sort: 'strap', at: 'area:caliper' });
  on.call('put-in', { temporary: 'stand', sort: 'stand' });
  for (const hole of ['right wheel/2', 'caliper/2']) expect(said(on, 'remove', off(hole))).toEqual([]);
});

it('[O1] minds what goes in behind an area that stands shut, called back or never opened', () => {
  const on = bench();
  on.declare(
    area('caliper', { role: 'brake' }),
    { kind: 'part-declared', part: 'pads', heldBy: [] },
    { kind: 'behind-declared', front: 'area:caliper', behind: 'part:pads', until: 'closed', from: 'plan' },
  );
  const shut = ['caliper stands shut in front of it: what was opened is to be called'];
  on.call('remove', off('caliper/1'));
  on.call('remove-part', { part: 'pads' });
  expect(said(on, 'fit-part', { part: 'pads' })).toEqual([]);
  on.count('caliper', 1);
  on.back('caliper/1');
  // Done already, as a hurried hand calls it (O5).
  for (let pass = 0; pass < 2; pass++) on.call('tighten', { hole: 'caliper/1' }, { because: 'done already' });
  expect(said(on, 'fit-part', { part: 'pads' })).toEqual(shut);
  on.call('fill-box', { name: 'new pads', replaces: 'pads' });
  expect(said(on, 'replace-part', { part: 'pads' })).toEqual(shut);
});

it('[T1] minds a mask that comes out from under what was set over it, and one of its own name when all are called away', () => {
  const on = bench();
  on.declare(
    area('cam cover', { keepClean: true }),
    { kind: 'part-declared', part: 'cover', heldBy: ['cam cover/1', 'cam cover/2'] },
    { kind: 'temporary-declared', temporary: 'mask', sort: 'mask', at: 'area:cam cover' },
  );
  for (const hole of ['cam cover/1', 'cam cover/2']) on.call('remove', off(hole));
  on.call('put-in', { temporary: 'mask' });
  expect(said(on, 'mask-all', {})).toEqual([]);
  on.call('mask-all', {});
  const own = 'mask at cam cover is in still by its own name: "out mask" once it is away';
  expect(said(on, 'unmask-all', {})).toEqual([own]);
  on.call('unmask-all', {});
  expect(said(on, 'take-out', { temporary: 'mask' })).toEqual([]);
  on.call('fit-part', { part: 'cover' });
  expect(said(on, 'take-out', { temporary: 'mask' })).toEqual([
    'cover called on over it: mask comes out with that off again',
  ]);
});

it('[F2] says of the wrong one what it may have done to the thread it was in, where the two nearly match', () => {
  const on = bench();
  on.declare({ kind: 'hole-declared', hole: 'cover/1', wants: { kind: 'bolt', head: 'hex 10', thread: 'M6' } });
  const wrong = (thread: string) =>
    said(on, 'remove', { hole: 'cover/1', to: 'tray:1', wrong: 'odd', spec: { kind: 'bolt', thread } });
  expect(wrong('1/4-20')).toEqual([
    expect.stringMatching(/^1\/4-20 in M6 does not start .*: look at the thread there, and call it if it is spoilt$/),
  ]);
  expect(wrong('M12')).toEqual([]);
});

it('[T1] minds a rag in a well in which its coil still sits, and asks for none there', () => {
  const on = bench();
  const at = 'area:coils';
  on.declare(
    area('coils'),
    ...[1, 2].flatMap((n): Entry[] => [
      { kind: 'part-declared', part: `coil ${n}`, heldBy: [`coils/${n}`] },
      { kind: 'temporary-declared', temporary: `rag in well ${n}`, sort: 'rag', at },
    ]),
  );
  on.call('remove', off('coils/1'));
  expect(missingWhereOpen(on.ledger()).map((t) => t.temporary)).toEqual(['rag in well 1']);
  expect(said(on, 'put-in', { temporary: 'rag in well 1' })).toEqual([]);
  expect(said(on, 'put-in', { temporary: 'rag in well 2' })).toEqual([
    'coil 2 is not called off: rag in well 2 goes in where that came out',
  ]);
});
