// L: every hole and every fastener, and two books that must balance.
import { describe, expect, it } from 'vitest';
import { books } from '../../src/job/books.ts';
import { bench, m6, m8, readyToLeave, stretch } from './bench.ts';

describe('where a fastener is', () => {
  it('[L1] a hole holds at most one fastener', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.off('cover/2', m6);
    on.count('cover', 2);
    on.back('cover/1');
    expect(on.refused('fit', { hole: 'cover/1' })).toBe('L1 hole-is-taken');
    expect(on.refused('fit', { hole: 'cover/3' })).toBe('L1 hole-is-taken');
  });

  it('[L1] a fastener is in exactly one whereabouts, and is taken only from there', () => {
    const on = bench();
    on.off('cover/1', m6);
    const bolt = on.own('cover/1');
    expect(on.whereIs(bolt)).toBe('tray:1');
    expect(on.refused('remove', { hole: 'cover/1', to: 'tray:1' })).toBe('L1 hole-is-empty');
    expect(on.refused('slacken', { hole: 'cover/1' })).toBe('L1 hole-is-empty');
    expect(on.refused('tighten', { hole: 'cover/1' })).toBe('L1 nothing-known-in-hole');
    on.call('move-fastener', { fastener: bolt, to: 'tray:2' });
    expect([on.tray('1'), on.tray('2')]).toEqual([0, 1]);
    for (const to of ['owner', 'supplier', 'scrap', 'tray:1']) {
      on.call('move-fastener', { fastener: bolt, to });
      expect(on.whereIs(bolt)).toBe(to);
      expect(on.refused('move-fastener', { fastener: bolt, to })).toBe('L1 not-a-place-to-lay');
    }
    on.count('cover', 1);
    on.back('cover/1');
    expect(on.whereIs(bolt)).toBe('hole:cover/1');
    expect(on.refused('move-fastener', { fastener: bolt, to: 'tray:1' })).toBe('L1 still-in-its-hole');
  });

  it('[L1] nothing is moved into another hole or into the parts box by calling it off', () => {
    const on = bench();
    expect(on.refused('remove', { hole: 'cover/1', to: 'hole:cover/2' })).toBe('L1 not-a-place-to-lay');
    expect(on.refused('remove', { hole: 'cover/1', to: 'box:new' })).toBe('L1 not-a-place-to-lay');
  });

  it('[L2] a fastener called off lies in the tray the call names', () => {
    const on = bench();
    on.call('remove', { hole: 'cover/1', to: 'tray:3', spec: m6 });
    on.call('remove', { hole: 'cover/2', to: 'scrap', spec: m6 });
    expect(on.whereIs(on.own('cover/1'))).toBe('tray:3');
    expect(on.whereIs(on.own('cover/2'))).toBe('scrap');
  });

  it('[L2] captive bolts stay in their part, which is their tray', () => {
    const on = bench();
    on.declare({ kind: 'part-declared', part: 'cover', heldBy: ['cover/1', 'cover/2'] });
    for (const hole of ['cover/1', 'cover/2']) on.call('remove', { hole, to: 'tray:cover', spec: m6 });
    expect(on.tray('cover')).toBe(2);
    expect(on.openAt('part:cover')).toEqual(['part-off']);
    on.count('cover', 2);
    on.back('cover/1');
    on.back('cover/2');
    expect(on.tray('cover')).toBe(0);
    expect(on.openAt('part:cover')).toEqual([]);
  });
});

describe('a closed hole', () => {
  it('[L3] is closed when its fastener is tight, and not by less', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.count('cover', 1);
    const open = () => on.because('hole-open', 'hole:cover/1');
    expect(open()).toBe('off');
    on.back('cover/1');
    expect(open()).toBe('on');
    on.snug('cover/1');
    expect(open()).toBe('snug');
    on.tight('cover/1');
    expect(open()).toBeUndefined();
  });

  it('[L3] a hole as found needs nothing', () => {
    const on = bench();
    on.call('find-fastener', { hole: 'cover/1', spec: m6 });
    expect(on.openAt('hole:cover/1')).toEqual([]);
  });

  it('[L3] an open finding, a piece or a temporary keeps a tight one open', () => {
    const on = bench();
    on.call('tighten', { hole: on.off('cover/1', m6) && on.count('cover', 1) && on.back('cover/1') && 'cover/1' });
    on.tight('cover/1');
    const finding = `d${on.call('make-finding', { at: 'hole:cover/1', what: 'head rounded' })}.1`;
    expect(on.because('hole-open', 'hole:cover/1')).toBe('a finding on it is open');
    on.call('close-finding', { finding, how: 'put right' });
    expect(on.openAt('hole:cover/1')).toEqual([]);
    on.call('put-in', { temporary: 'plug 1', sort: 'plug', at: 'hole:cover/1' });
    expect(on.because('hole-open', 'hole:cover/1')).toBe('plug 1 is in it');
    on.call('take-out', { temporary: 'plug 1' });
    expect(on.openAt('hole:cover/1')).toEqual([]);
  });

  it('[L3] an accepted substitute closes it, one that is not what it wants does not', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.count('cover', 1);
    on.call('fill-box', { name: 'long bolt', spec: { ...m6, lengthMm: 30 } });
    const n = on.back('cover/1', { box: 'long bolt', substitute: 'only length in the drawer' });
    expect(on.because('hole-open', 'hole:cover/1')).toBe('in, not tight yet; a finding on it is open');
    on.tight('cover/1');
    expect(on.because('hole-open', 'hole:cover/1')).toBe('a finding on it is open');
    on.call('close-finding', { finding: `d${n}.1`, how: 'accepted', who: 'Ann', because: 'does not bottom' });
    expect(on.openAt('hole:cover/1')).toEqual([]);
    on.call('correct-spec', { fastener: on.in('cover/1'), spec: { ...m6, lengthMm: 45 }, because: 'measured' });
    expect(on.openAt('hole:cover/1')).toEqual([]);
  });

  it('[L4] a slack fastener leaves its hole open until it is tight again, and slack is not off', () => {
    const on = bench();
    on.slack('mount/4', m8);
    const tally = () => on.ledger().tallies.all;
    expect(tally()).toMatchObject({ slack: 1, off: 0, open: 1 });
    expect(on.because('hole-open', 'hole:mount/4')).toBe('slack');
    expect(on.refused('slacken', { hole: 'mount/4' })).toBe('L4 slack-already');
    on.off('mount/5', m8);
    expect(tally()).toMatchObject({ slack: 1, off: 1, open: 2 });
    on.snug('mount/4');
    expect(on.because('hole-open', 'hole:mount/4')).toBe('snug');
    on.tight('mount/4');
    expect(on.openAt('hole:mount/4')).toEqual([]);
    expect(tally()).toMatchObject({ slack: 0, off: 1, open: 1 });
  });
});

describe('levels under one number', () => {
  const washer = { kind: 'washer', thread: 'M8' } as const;
  const nut = { kind: 'nut', head: 'hex 13', thread: 'M8' } as const;
  const withLevels = () => {
    const on = bench();
    for (const hole of ['flange/7', 'flange/7 washer', 'flange/7 nut'] as const)
      on.declare({
        kind: 'hole-declared',
        hole,
        wants: hole.endsWith('washer') ? washer : hole.endsWith('nut') ? nut : m8,
      });
    return on;
  };

  it('[L1] each level is a hole of its own, and one call on the number takes every level known', () => {
    const on = withLevels();
    on.off('flange/7');
    expect(on.tray('1')).toBe(3);
    on.count('flange', 1);
    expect(on.openAt('area:flange')).toEqual([]);
    on.back('flange/7');
    expect(['flange/7', 'flange/7 washer', 'flange/7 nut'].map(on.level)).toEqual(['on', 'on', 'on']);
    on.tight('flange/7');
    expect(on.open('hole-open')).toEqual([]);
  });

  it('[L1] a level called by its name stands for itself', () => {
    const on = withLevels();
    on.off('flange/7 nut');
    expect(['flange/7 nut', 'flange/7'].map(on.level)).toEqual(['empty', 'empty']);
    expect(on.tray('1')).toBe(1);
    expect(on.open('hole-open')).toEqual(['hole-open hole:flange/7 nut']);
  });

  it('[L1] a nut back on a stud that stayed is one call on the number, and the stud stays as found', () => {
    const on = bench();
    on.call('find-fastener', { hole: 'manifold/3', spec: { kind: 'stud', thread: 'M8' } });
    on.off('manifold/3 nut', nut);
    on.count('manifold', 1);
    on.back('manifold/3');
    expect([on.level('manifold/3'), on.level('manifold/3 nut')]).toEqual(['as-found', 'on']);
    on.call('complete-pass', { area: 'manifold' });
    on.tight('manifold/3');
    expect([on.level('manifold/3'), on.level('manifold/3 nut')]).toEqual(['as-found', 'tight']);
    expect(on.open('hole-open')).toEqual([]);
  });

  it('[L1] a stud that comes out with its nut is one call and counts two', () => {
    const on = bench();
    on.call('find-fastener', { hole: 'manifold/3', spec: { kind: 'stud', thread: 'M8' } });
    on.call('find-fastener', { hole: 'manifold/3 nut', spec: nut });
    on.off('manifold/3');
    expect(on.tray('1')).toBe(2);
  });

  it('[L1] two washers under one number are never both the same one', () => {
    const on = bench();
    for (const hole of ['pipe/1', 'pipe/1 washer', 'pipe/1 washer 2'])
      on.call('find-fastener', { hole, spec: hole === 'pipe/1' ? m8 : washer });
    on.off('pipe/1');
    on.call('condemn', { fastener: on.own('pipe/1 washer'), because: 'scored' });
    on.count('pipe', 1);
    on.back('pipe/1');
    expect([on.level('pipe/1'), on.level('pipe/1 washer'), on.level('pipe/1 washer 2')].sort()).toEqual([
      'empty',
      'on',
      'on',
    ]);
  });
});

describe('what a hole wants', () => {
  it.each([
    ['kind', { ...m6, kind: 'screw' }],
    ['head', { ...m6, head: 'hex 8' }],
    ['thread', { ...m6, thread: 'M6x0.75' }],
    ['lengthMm', { ...m6, lengthMm: 40 }],
    ['class', { ...m6, class: '10.9' }],
  ])('[L5] a fastener whose %s is known on both and differs is refused', (_, other) => {
    const on = bench();
    on.off('cover/1', { ...m6, class: '8.8' });
    on.off('cover/2', other);
    on.count('cover', 2);
    const fastener = on.own('cover/2');
    expect(on.refused('fit', { hole: 'cover/1', fastener })).toBe('L5 wants-another');
    on.back('cover/1', { fastener, substitute: 'none other to be had' });
    expect(on.open('finding-open')).toHaveLength(1);
  });

  it('[L5] what came out as the wrong one says nothing of what its hole wants', () => {
    const on = bench();
    on.off('bracket/3', m8, { wrong: 'odd' });
    on.off('bracket/1', m6);
    on.count('bracket', 2);
    on.call('fill-box', { name: 'right bolt', spec: { ...m6, lengthMm: 60 } });
    on.back('bracket/3', { box: 'right bolt' });
    on.tight('bracket/3');
    expect(on.because('hole-open', 'hole:bracket/3')).toBe('a finding on it is open');
    on.off('bracket/3');
    on.call('state-wants', { hole: 'bracket/3', spec: m6, because: 'as the others' });
    expect(on.refused('fit', { hole: 'bracket/3', fastener: on.own('bracket/3') })).toBe('L5 wants-another');
  });

  it('[L6] nor is one like it taken for it, and the refusal says what is wrong with the one that came out', () => {
    const on = bench();
    for (const n of [1, 2]) on.off(`bracket/${n}`, m8);
    on.off('bracket/3', m8, { wrong: 'odd' });
    on.count('bracket', 3);
    expect(on.no('fit', { hole: 'bracket/3' }).because).toBe(
      'its own fastener may not: there is a finding on it: wrong fastener in it',
    );
    on.call('fill-box', { name: 'new', spec: m6 });
    on.back('bracket/3', { box: 'new' });
    on.call('close-finding', { finding: 'd5.1', how: 'put right' });
    expect(on.openAt('hole:bracket/3')).toEqual(['hole-open']);
  });

  it('[L5] what is not known on both differs from nothing', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.off('cover/2', { head: 'hex 10' });
    on.count('cover', 2);
    on.back('cover/1', { fastener: on.own('cover/2') });
    expect(on.level('cover/1')).toBe('on');
  });

  it('[L5] the plan says what it wants, else what came out, until a correction states another', () => {
    const on = bench();
    on.declare({ kind: 'hole-declared', hole: 'cover/1', wants: m6 });
    on.off('cover/1', { ...m6, lengthMm: 45 });
    on.off('cover/2', m8);
    on.count('cover', 2);
    expect(on.refused('fit', { hole: 'cover/1', fastener: on.own('cover/1') })).toBe('L5 wants-another');
    on.call('state-wants', { hole: 'cover/2', spec: m6, because: 'looked up' });
    expect(on.refused('fit', { hole: 'cover/2', fastener: on.own('cover/2') })).toBe('L5 wants-another');
    on.call('state-wants', { hole: 'cover/1', spec: { ...m6, lengthMm: 45 }, because: 'a bracket rides on it' });
    on.back('cover/1');
    on.tight('cover/1');
    expect(on.openAt('hole:cover/1')).toEqual([]);
  });

  const newOne = (spec: object) => {
    const on = bench();
    on.off('cover/1', { ...m6, class: '8.8' });
    on.count('cover', 1);
    on.call('fill-box', { name: 'new bolt', spec });
    return on;
  };
  it.each([
    ['another head', { ...m6, head: 'torx 30', class: '8.8' }, ['head']],
    ['a higher class', { ...m6, class: '10.9' }, ['class']],
  ])('[L5] a new one with %s is taken as new pattern and closes the hole', (_, spec, newPattern) => {
    const on = newOne(spec);
    const n = on.back('cover/1', { box: 'new bolt' });
    expect(on.entriesOf(n)[0]).toMatchObject({ newPattern });
    on.tight('cover/1');
    expect(on.openAt('hole:cover/1')).toEqual([]);
  });
  it.each([
    ['thread', { ...m6, thread: 'M8' }],
    ['length', { ...m6, lengthMm: 30 }],
    ['a lower class', { ...m6, class: '5.6' }],
  ])('[L5] a new one with another %s is refused', (_, spec) => {
    expect(newOne(spec).refused('fit', { hole: 'cover/1', box: 'new bolt' })).toBe('L5 wants-another');
  });
});

describe('which fastener is meant', () => {
  it('[L6] the hole gets its own back, else an equal from the same area, else from another, and it is written down', () => {
    const on = bench();
    for (const hole of ['cover/1', 'cover/2', 'pump/1']) on.off(hole, m6);
    on.count('cover', 2);
    on.count('pump', 1);
    const [one, two, pump] = ['cover/1', 'cover/2', 'pump/1'].map(on.own);
    const first = on.back('cover/2');
    expect(on.entriesOf(first)[0]).toMatchObject({ fastener: two });
    on.call('remove', { hole: 'cover/2', to: 'scrap' });
    expect(on.entriesOf(on.back('cover/2'))[0]).toMatchObject({ fastener: one });
    on.call('remove', { hole: 'cover/2', to: 'owner' });
    expect(on.entriesOf(on.back('cover/2'))[0]).toMatchObject({ fastener: pump });
  });

  it('[L6] equal means equal in every known field', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.off('cover/2', { ...m6, class: '8.8' });
    on.count('cover', 2);
    on.call('move-fastener', { fastener: on.own('cover/1'), to: 'owner' });
    expect(on.refused('fit', { hole: 'cover/1' })).toBe('L6 nothing-in-hand-fits');
  });

  it.each(['cover', 'pump'])('[L6] areas trade with one another only when neither is critical: %s is', (area) => {
    const on = bench();
    on.declare({ kind: 'area-declared', area, critical: true });
    on.off('cover/1', m6);
    on.off('pump/1', m6);
    on.count('cover', 1);
    const pump = on.own('pump/1');
    on.call('move-fastener', { fastener: on.own('cover/1'), to: 'owner' });
    expect(on.refused('fit', { hole: 'cover/1' })).toBe('L6 nothing-in-hand-fits');
    expect(on.refused('fit', { hole: 'cover/1', fastener: pump })).toBe('L6 trades-with-none');
  });

  it('[L6] never one condemned, spent or with a finding', () => {
    const on = bench();
    const oneUse = { ...m6, oneUse: true } as const;
    on.off('cover/1', oneUse);
    on.off('cover/2', m8, { wrong: 'odd' });
    on.off('cover/3', m6, { wrong: 'damaged' });
    on.count('cover', 3);
    for (const hole of ['cover/1', 'cover/2', 'cover/3'])
      expect(on.refused('fit', { hole })).toBe('L6 nothing-in-hand-fits');
    expect(on.no('fit', { hole: 'cover/1' }).because).toContain('one-use');
    const odd = on.own('cover/2');
    const [finding] = on.hole('cover/2')?.findings ?? [];
    on.call('close-finding', { finding, how: 'accepted', who: 'Ann', because: 'it is right after all' });
    expect(on.entriesOf(on.back('cover/2'))[0]).toMatchObject({ fastener: odd });
  });

  it('[L6] a finding on the hole itself does not bar its bolt', () => {
    const on = bench();
    on.off('cover/7', m6);
    on.count('cover', 1);
    on.call('make-finding', { at: 'hole:cover/7', what: 'thread stripped' });
    on.back('cover/7');
    expect(on.level('cover/7')).toBe('on');
  });

  it('[L6] a hole marked own place trades with none', () => {
    const on = bench();
    on.declare({ kind: 'hole-declared', hole: 'caps/1', ownPlace: true });
    on.off('caps/1', m8);
    on.off('caps/2', m8);
    on.count('caps', 2);
    const [one, two] = [on.own('caps/1'), on.own('caps/2')];
    expect(on.refused('fit', { hole: 'caps/1', fastener: two })).toBe('L6 trades-with-none');
    expect(on.refused('fit', { hole: 'caps/2', fastener: one })).toBe('L6 trades-with-none');
    on.call('move-fastener', { fastener: two, to: 'owner' });
    expect(on.refused('fit', { hole: 'caps/2' })).toBe('L6 nothing-in-hand-fits');
    on.back('caps/1');
    expect(on.in('caps/1')).toBe(one);
  });
});

describe('one-use fasteners', () => {
  it('[L7] one that was tight and came off never serves again', () => {
    const on = bench();
    on.off('crank/1', stretch);
    on.count('crank', 1);
    const fastener = on.own('crank/1');
    expect(on.refused('fit', { hole: 'crank/1', fastener })).toBe('L7 may-not-serve-again');
    on.call('fill-box', { name: 'new crank bolt', spec: stretch });
    on.back('crank/1', { box: 'new crank bolt' });
    on.tight('crank/1');
    expect(on.openAt('hole:crank/1')).toEqual([]);
    on.off('crank/1');
    expect(on.refused('fit', { hole: 'crank/1', fastener: on.own('crank/1') })).toBe('L7 may-not-serve-again');
  });

  it('[L7] one still slack in its hole must come off, and the hole wants a new one', () => {
    const on = bench();
    on.slack('crank/1', stretch);
    on.snug('crank/1');
    expect(on.refused('tighten', { hole: 'crank/1', last: true })).toBe('L7 spent-is-never-tight');
    expect(on.because('hole-open', 'hole:crank/1')).toBe('its fastener is spent');
    on.off('crank/1');
    on.count('crank', 1);
    on.call('fill-box', { name: 'new crank bolt', spec: stretch });
    on.back('crank/1', { box: 'new crank bolt' });
    on.tight('crank/1');
    expect(on.openAt('hole:crank/1')).toEqual([]);
  });

  it('[L7] a spent nut under the number of a good bolt is not called tight with it', () => {
    const on = bench();
    on.call('find-fastener', { hole: 'arm/1', spec: m8 });
    on.call('find-fastener', { hole: 'arm/1 nut', spec: { kind: 'nut', thread: 'M8', oneUse: true } });
    on.slack('arm/1');
    expect(on.refused('tighten', { hole: 'arm/1', last: true })).toBe('L7 spent-is-never-tight');
  });

  it('[L7] one that was only snug may come out and go back', () => {
    const on = bench();
    on.off('crank/1', stretch);
    on.count('crank', 1);
    on.call('fill-box', { name: 'new crank bolt', spec: stretch });
    on.back('crank/1', { box: 'new crank bolt' });
    on.snug('crank/1');
    on.off('crank/1');
    on.back('crank/1');
    on.tight('crank/1');
    expect(on.openAt('hole:crank/1')).toEqual([]);
  });

  it('[L7] loosening stages of its own method do not spend it', () => {
    const on = bench();
    const passes = ['40 Nm', '90 deg', 'loosen a turn', '40 Nm', '90 deg', '90 deg more'];
    const stages = [{ newtonMetres: 40 }, { degrees: 90 }, { loosenDegrees: 360 }, { newtonMetres: 40 }];
    on.declare({ kind: 'area-declared', area: 'head', passes, method: { by: 'torque-angle', stages } });
    for (const hole of ['head/1', 'head/2']) {
      on.off(hole, stretch);
    }
    on.count('head', 2);
    on.call('fill-box', { name: 'head bolt', quantity: 2, spec: stretch });
    for (const hole of ['head/1', 'head/2']) on.back(hole, { box: 'head bolt' });
    for (const pass of passes) {
      const n = on.call('complete-pass', { area: 'head' });
      expect(on.entriesOf(n)).toMatchObject([{ pass }, { pass }]);
    }
    expect(on.open('hole-open')).toEqual([]);
  });

  it('[L7] a spent one may serve as a working fastener, is never called tight, and is counted out', () => {
    const on = bench();
    on.off('crank/1', stretch);
    const old = on.own('crank/1');
    on.back('crank/1', { fastener: old, working: true });
    expect(on.refused('tighten', { hole: 'crank/1', last: true })).toBe('L7 spent-is-never-tight');
    expect(on.openAt('hole:crank/1')).toContain('working-in');
    on.call('remove', { hole: 'crank/1', to: 'scrap' });
    expect(on.openAt('hole:crank/1')).toEqual(['hole-open']);
    expect(on.whereIs(old)).toBe('scrap');
  });

  it('[L7] it serves again where the maker gives a limit and it measures within', () => {
    const on = bench();
    on.off('head/1', stretch);
    on.count('head', 1);
    const fastener = on.own('head/1');
    const measure = { fastener, what: 'length under the head', limitMm: 120.5 };
    expect(on.refused('measure-fastener', { ...measure, measuredMm: 121 })).toBe('L7 beyond-the-limit');
    on.call('measure-fastener', { ...measure, measuredMm: 120.1 });
    on.back('head/1');
    on.tight('head/1');
    expect(on.openAt('hole:head/1')).toEqual([]);
    on.off('head/1');
    expect(on.refused('fit', { hole: 'head/1', fastener })).toBe('L7 may-not-serve-again');
  });
});

describe('condemned, lost, broken', () => {
  it('[L8] a condemned one never goes back, lies in a tray as a pattern, and is away before release', () => {
    const on = bench();
    on.off('cover/1', m6, { wrong: 'damaged' });
    on.off('cover/2', m6);
    on.count('cover', 2);
    const bad = on.own('cover/1');
    for (const more of [{}, { working: true }, { substitute: 'please' }])
      expect(on.refused('fit', { hole: 'cover/1', fastener: bad, ...more })).toBe('L8 condemned-never-goes-back');
    expect(on.openAt(`fastener:${bad}`)).toEqual(['condemned-about']);
    on.call('move-fastener', { fastener: bad, to: 'owner' });
    expect(on.openAt(`fastener:${bad}`)).toEqual([]);
    expect(on.because('hole-open', 'hole:cover/1')).toBe('a finding on it is open');
  });

  it('[L8] its hole stays open until a replacement is tight, also when it was condemned in place', () => {
    const on = bench();
    on.call('find-fastener', { hole: 'cover/1', spec: m6 });
    on.call('condemn', { fastener: on.in('cover/1'), because: 'rounded' });
    on.slack('cover/1');
    expect(on.refused('tighten', { hole: 'cover/1', last: true })).toBe('L7 spent-is-never-tight');
    expect(on.because('hole-open', 'hole:cover/1')).toBe('its fastener is condemned');
    on.call('remove', { hole: 'cover/1', to: 'scrap' });
    on.count('cover', 1);
    on.call('fill-box', { name: 'new bolt', spec: m6 });
    on.back('cover/1', { box: 'new bolt' });
    expect(on.openAt('hole:cover/1')).toEqual(['hole-open']);
    on.tight('cover/1');
    expect(on.openAt('hole:cover/1')).toEqual([]);
  });

  const dropped = (reaches: boolean) => {
    const on = bench();
    on.off('cover/1', m6);
    on.count('cover', 1);
    const fastener = on.own('cover/1');
    on.call('lose-fastener', { fastener, reaches, where: 'belt bay' });
    return { on, fastener };
  };

  it('[L9] one dropped and not recovered is lost: the job stays open until it is found', () => {
    const { on, fastener } = dropped(true);
    expect(on.openAt(`fastener:${fastener}`)).toEqual(['lost']);
    expect(on.refused('fit', { hole: 'cover/1', fastener })).toBe('L6 nothing-in-hand-fits');
    on.call('search', { lost: fastener, how: 'magnet' });
    on.call('move-fastener', { fastener, to: 'tray:1' });
    expect(on.openAt(`fastener:${fastener}`)).toEqual([]);
    on.back('cover/1');
    expect(on.in('cover/1')).toBe(fastener);
  });

  it('[L9] or until a named person states that it is not in the vehicle, and why', () => {
    const { on, fastener } = dropped(false);
    expect(on.refused('rule-out-loss', { lost: fastener })).toBe('L1 badly-said');
    on.call('rule-out-loss', { lost: fastener, who: 'Ann', because: 'heard it roll under the bench' });
    expect(on.openAt(`fastener:${fastener}`)).toEqual([]);
  });

  it('[L9] where it can reach the works, no statement closes it without the search made', () => {
    const { on, fastener } = dropped(true);
    const state = { lost: fastener, who: 'Ann', because: 'not there' };
    expect(on.refused('rule-out-loss', state)).toBe('L9 search-not-made');
    expect(on.refused('rule-out-loss', state, { because: 'sure' })).toBe('L9 search-not-made');
    on.call('search', { lost: fastener, how: 'sump off' });
    on.call('rule-out-loss', state);
    expect(on.openAt(`fastener:${fastener}`)).toEqual([]);
  });

  it('[L9] one dropped while it came out is lost too, and taken to reach the works', () => {
    const on = bench();
    on.call('remove', { hole: 'cover/1', to: 'lost', spec: m6 });
    const lost = on.own('cover/1');
    expect(on.openAt(`fastener:${lost}`)).toEqual(['lost']);
    expect(on.refused('rule-out-loss', { lost, who: 'Ann', because: 'no' })).toBe('L9 search-not-made');
  });

  it('[L9] a new one dropped before it was ever fitted is lost as any other', () => {
    const on = bench();
    on.call('fill-box', { name: 'new bolt', quantity: 2, spec: m6 });
    const n = on.call('lose-fastener', { box: 'new bolt', reaches: true, where: 'valley' });
    expect(on.openAt(`fastener:f${n}.1`)).toEqual(['lost']);
    expect(on.openAt('box:new bolt')).toEqual(['box-left']);
    expect(on.refused('move-box', { name: 'new bolt', quantity: 1, to: 'lost' })).toBe('L9 lost-by-name');
  });

  it('[L10] a broken one is one fastener, where its head is, and each piece is booked by itself', () => {
    const on = bench();
    const n = on.call('break', { hole: 'manifold/2', headTo: 'tray:1', pieces: ['hole', 'lost'], spec: m8 });
    const id = on.own('manifold/2');
    expect(on.whereIs(id)).toBe('tray:1');
    expect(on.tray('1')).toBe(1);
    expect(on.openAt(`fastener:${id}`)).toEqual(['broken-about']);
    expect(on.openAt(`piece:p${n}.2`)).toEqual(['lost']);
    expect(on.because('hole-open', 'hole:manifold/2')).toBe('a broken piece is in it');
    on.count('manifold', 1);
    expect(on.refused('fit', { hole: 'manifold/2', fastener: id })).toBe('L10 broken-never-goes-back');
  });

  it('[L10] a piece in a hole is an open finding until it is out; a lost one is closed as any lost one', () => {
    const on = bench();
    const n = on.call('break', { hole: 'manifold/2', headTo: 'scrap', pieces: ['hole', 'lost'], spec: m8 });
    const finding = `d${n}.1`;
    expect(on.open('finding-open')).toEqual([`finding-open finding:${finding}`]);
    expect(on.refused('close-finding', { finding, how: 'put right' })).toBe('L10 piece-still-in');
    on.call('move-piece', { piece: `p${n}.1`, to: 'scrap' });
    const ruled = { lost: `p${n}.2`, who: 'Ann', because: 'on the floor' };
    expect(on.refused('rule-out-loss', ruled)).toBe('L9 search-not-made');
    on.call('search', { lost: `p${n}.2`, how: 'camera' });
    on.call('rule-out-loss', ruled);
    expect(on.refused('close-finding', { finding, how: 'put right' })).toBe('F3 nothing-put-right-yet');
    on.count('manifold', 1);
    on.call('fill-box', { name: 'new', spec: m8 });
    on.back('manifold/2', { box: 'new' });
    on.tight('manifold/2');
    on.call('close-finding', { finding, how: 'put right' });
    readyToLeave(on);
    expect(on.open()).toEqual([]);
  });

  it('[L10] one broken in its hole does not close it, tight or not', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.count('cover', 1);
    on.back('cover/1');
    on.tight('cover/1');
    const n = on.call('break', { hole: 'cover/1', headTo: 'hole:cover/1', pieces: ['found'] });
    on.call('close-finding', { finding: `d${n}.1`, how: 'accepted', who: 'Ann', because: 'only the flange' });
    expect(on.because('hole-open', 'hole:cover/1')).toBe('its fastener is broken');
  });
});

describe('empty holes', () => {
  it('[L11] a hole empty on arrival is open', () => {
    const on = bench();
    on.call('find-empty', { hole: 'cover/4' });
    expect(on.openAt('hole:cover/4')).toEqual(['hole-open']);
    expect(on.open('finding-open')).toHaveLength(1);
    expect(on.refused('find-empty', { hole: 'cover/4' })).toBe('L11 not-empty-on-arrival');
  });

  it('[L11] it may end empty only by a named statement with a reason', () => {
    const on = bench();
    const n = on.call('find-empty', { hole: 'cover/4' });
    expect(on.refused('leave-empty', { hole: 'cover/4', who: 'Ann' })).toBe('L1 badly-said');
    on.call('leave-empty', { hole: 'cover/4', who: 'Ann', because: 'boss is broken away' });
    on.call('close-finding', { finding: `d${n}.1`, how: 'accepted', who: 'Ann', because: 'boss is gone' });
    expect(on.openAt('hole:cover/4')).toEqual([]);
    on.off('cover/1', m6);
    on.call('state-wants', { hole: 'cover/4', spec: m6, because: 'as the others' });
    on.count('cover', 2);
    on.back('cover/4', { fastener: on.own('cover/1') });
    expect(on.openAt('hole:cover/4')).toEqual(['hole-open']);
  });

  it('[L11] never in a critical area, nor in a critical hole', () => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'wheel', critical: true });
    on.declare({ kind: 'hole-declared', hole: 'cover/4', critical: true });
    for (const hole of ['wheel/1', 'cover/4']) {
      on.call('find-empty', { hole });
      expect(on.refused('leave-empty', { hole, who: 'Ann', because: 'so' })).toBe('L11 never-on-a-critical-area');
    }
  });
});

describe('two books', () => {
  it('[L12] flow and stock agree for the job, each area of origin and each exact spec; new ones and strays apart', () => {
    const on = bench();
    for (const hole of ['cover/1', 'cover/2', 'cover/3', 'cover/4']) on.off(hole, m6);
    on.off('pump/1', m8);
    on.slack('pump/2', m8);
    on.count('cover', 4);
    on.back('cover/1');
    on.call('move-fastener', { fastener: on.own('cover/2'), to: 'scrap' });
    on.call('move-fastener', { fastener: on.own('cover/3'), to: 'owner' });
    on.call('lose-fastener', { fastener: on.own('cover/4'), reaches: false, where: 'floor' });
    on.call('fill-box', { name: 'new', quantity: 3, spec: m6 });
    on.back('cover/2', { box: 'new' });
    on.call('move-box', { name: 'new', quantity: 1, to: 'supplier' });
    const n = on.call('find-stray', { spec: m6, tray: '1' });
    on.call('give-stray', { stray: `s${n}.1`, hole: 'cover/3' });
    const kept = books(on.ledger());
    expect(kept.flow).toEqual(kept.stock);
    expect(kept.everOff).toBe(5);
    expect(kept.stock).toEqual({
      job: { refitted: 1, scrap: 1, owner: 1, lost: 1, tray: 1 },
      'area cover': { refitted: 1, scrap: 1, owner: 1, lost: 1 },
      'area pump': { tray: 1 },
      'spec bolt hex 10 M6x25': { refitted: 1, scrap: 1, owner: 1, lost: 1 },
      'spec bolt hex 13 M8x40': { tray: 1 },
      new: { refitted: 1, supplier: 1 },
      'new bolt hex 10 M6x25': { refitted: 1, supplier: 1 },
      strays: { refitted: 1 },
      'strays bolt hex 10 M6x25': { refitted: 1 },
    });
  });

  it('[L12] a fastener put where the log has no movement for it is seen as a difference', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.forged({ kind: 'fastener-fitted', hole: 'cover/2', fastener: 'f9.9', from: 'tray:1', spec: m6 });
    expect(on.open('books')).toEqual(['books vehicle']);
    expect(on.open('misfit')).toHaveLength(1);
  });

  it('[L12] more than the parts box holds can be neither fitted nor handed over', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.off('cover/2', m6);
    on.count('cover', 2);
    on.call('fill-box', { name: 'new', spec: m6 });
    on.back('cover/1', { box: 'new' });
    expect(on.refused('fit', { hole: 'cover/2', box: 'new' })).toBe('L12 not-in-the-box');
    expect(on.refused('move-box', { name: 'new', to: 'owner', quantity: 1 })).toBe('L12 not-in-the-box');
  });
});

describe('a coating', () => {
  const zinc = { ...m6, coating: 'zinc' };
  const black = { ...m6, coating: 'black' };

  it('[L5] refuses nothing, and keeps no hole open', () => {
    const on = bench();
    on.off('cover/1', zinc);
    on.off('cover/2', black);
    on.count('cover', 2);
    on.back('cover/1', { fastener: on.own('cover/2') });
    on.tight('cover/1');
    expect(on.openAt('hole:cover/1')).toEqual([]);
  });

  it('[L6] tells two apart: they do not trade unasked', () => {
    const on = bench();
    on.off('cover/1', zinc);
    on.off('cover/2', black);
    on.count('cover', 2);
    on.call('move-fastener', { fastener: on.own('cover/1'), to: 'scrap' });
    expect(on.no('fit', { hole: 'cover/1' }).because).toBeTruthy();
    const plain = bench();
    plain.off('cover/1', zinc);
    plain.off('cover/2', zinc);
    plain.count('cover', 2);
    const seconds = plain.own('cover/2');
    plain.call('move-fastener', { fastener: plain.own('cover/1'), to: 'scrap' });
    plain.back('cover/1');
    expect(plain.in('cover/1')).toBe(seconds);
  });
});
