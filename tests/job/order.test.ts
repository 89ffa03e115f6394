// O: what sits behind what, parts before their fasteners, passes, methods, and what may be overridden.
import { describe, expect, it } from 'vitest';
import { verbs } from '../../src/job/decide.ts';
import { lineSchema } from '../../src/job/line.ts';
import { dueIn, inLooseningOrder, inOrder, orderBy } from '../../src/job/passes.ts';
import { numberOf } from '../../src/job/subjects.ts';
import { type Bench, bench, m6, m8 } from './bench.ts';

const behind = (front: string, one: string, more: object = {}) =>
  ({ kind: 'behind-declared', front, behind: one, until: 'closed', from: 'plan', ...more }) as const;

/** Upper cover in front of lower cover in front of the pump; all three off. */
function threeCovers(): Bench {
  const on = bench();
  on.declare(behind('area:upper', 'area:lower'), behind('area:lower', 'area:pump'));
  for (const area of ['upper', 'lower', 'pump']) {
    on.off(`${area}/1`, m6);
    on.count(area, 1);
  }
  return on;
}

describe('what sits behind', () => {
  it('[O1] is closed before what is in front is snug or tight; starting by hand and for now are free', () => {
    const on = threeCovers();
    on.back('upper/1');
    for (const last of [false, true]) expect(on.refused('tighten', { hole: 'upper/1', last })).toBe('O1 open-behind');
    on.call('remove', { hole: 'upper/1', to: 'tray:1' });
    on.back('upper/1', { forNow: true });
    on.tight('upper/1');
    expect(on.refused('make-final', { hole: 'upper/1' })).toBe('O1 open-behind');
    on.back('lower/1');
    on.back('pump/1');
    on.tight('pump/1');
    on.tight('lower/1');
    on.call('make-final', { hole: 'upper/1' });
    expect(on.open('hole-open')).toEqual([]);
  });

  it('[O1] or as found: what nobody touched needs nothing', () => {
    const on = bench();
    on.declare(behind('area:upper', 'area:lower'));
    on.call('find-fastener', { hole: 'lower/1', spec: m6 });
    on.off('upper/1', m6);
    on.count('upper', 1);
    on.back('upper/1');
    on.tight('upper/1');
    expect(on.level('upper/1')).toBe('tight');
  });

  it('[O1] a refusal names the nearest open place, then the rest', () => {
    const on = threeCovers();
    on.back('upper/1');
    const no = on.no('tighten', { hole: 'upper/1' });
    expect(no.places).toEqual(['area:lower', 'area:pump']);
    expect(no.because).toMatch(/^behind it lower is open: .*; then pump$/);
    on.back('pump/1');
    on.tight('pump/1');
    expect(on.no('tighten', { hole: 'upper/1' }).places).toEqual(['area:lower']);
  });

  it('[O1] it is followed through what lies between, closed or not', () => {
    const on = bench();
    on.declare(behind('area:upper', 'area:lower'), behind('area:lower', 'area:pump'));
    on.off('upper/1', m6);
    on.off('pump/1', m6);
    on.count('upper', 1);
    on.back('upper/1');
    expect(on.refused('tighten', { hole: 'upper/1' })).toBe('O1 open-behind');
  });

  it('[O1] where snug is said to be enough, snug is enough', () => {
    const on = bench();
    on.declare(behind('hole:upper/1', 'hole:lower/1', { until: 'snug' }));
    for (const hole of ['upper/1', 'lower/1']) on.off(hole, m6);
    for (const area of ['upper', 'lower']) on.count(area, 1);
    for (const hole of ['upper/1', 'lower/1']) on.back(hole);
    expect(on.refused('tighten', { hole: 'upper/1' })).toBe('O1 open-behind');
    on.snug('lower/1');
    on.tight('upper/1');
    expect(on.level('upper/1')).toBe('tight');
  });

  it('[O1] said by hand it holds as planned; said in a circle it is refused', () => {
    const on = bench();
    on.declare(behind('part:guard', 'connection:plug', { from: 'said' }));
    expect(on.refused('declare', { entries: [behind('connection:plug', 'part:guard', { from: 'said' })] })).toBe(
      'O1 goes-round',
    );
    on.call('part-connection', { connection: 'plug' });
    on.call('remove-part', { part: 'guard', heldBy: [] });
    expect(on.refused('fit-part', { part: 'guard' })).toBe('O1 open-behind');
    on.call('fit-part', { part: 'guard', forNow: true });
    expect(on.refused('make-part-final', { part: 'guard' })).toBe('O1 open-behind');
    on.call('make-connection', { connection: 'plug', forNow: true });
    expect(on.refused('make-part-final', { part: 'guard' })).toBe('O1 open-behind');
    on.call('make-connection', { connection: 'plug' });
    on.call('make-part-final', { part: 'guard' });
    expect(on.openAt('part:guard')).toEqual([]);
  });

  it('[O1] a connection in front waits for what is behind it', () => {
    const on = bench();
    on.declare(behind('connection:battery earth', 'area:starter'));
    on.call('part-connection', { connection: 'battery earth' });
    on.off('starter/1', m8);
    on.count('starter', 1);
    expect(on.refused('make-connection', { connection: 'battery earth' })).toBe('O1 open-behind');
    on.back('starter/1');
    on.tight('starter/1');
    on.call('make-connection', { connection: 'battery earth' });
    expect(on.open('connection-parted')).toEqual([]);
  });

  it('[O1] finished later: snug is enough for what is in front, and it stays an open point until tight', () => {
    const on = bench();
    on.declare(behind('area:cover', 'area:tensioner'));
    on.declare({ kind: 'hole-declared', hole: 'tensioner/1', later: 'after-belt' });
    for (const hole of ['cover/1', 'tensioner/1']) on.off(hole, m6);
    for (const area of ['cover', 'tensioner']) on.count(area, 1);
    for (const hole of ['cover/1', 'tensioner/1']) on.back(hole);
    expect(on.refused('tighten', { hole: 'cover/1' })).toBe('O1 open-behind');
    on.snug('tensioner/1');
    on.tight('cover/1');
    expect(on.openAt('hole:tensioner/1')).toEqual(['hole-open']);
  });

  it('[O1] on its wheels: the final wants the weight on, snug does not', () => {
    const on = bench();
    on.declare({ kind: 'hole-declared', hole: 'mount/4', later: 'on-wheels' });
    on.call('put-in', { temporary: 'stand', sort: 'stand' });
    on.slack('mount/4', m8);
    on.snug('mount/4');
    expect(on.refused('tighten', { hole: 'mount/4', last: true })).toBe('O1 weight-not-on');
    on.call('take-out', { temporary: 'stand' });
    on.tight('mount/4');
    expect(on.openAt('hole:mount/4')).toEqual([]);
  });
});

it('[O1] names every stand where the final wants the weight on, that of its own area first', () => {
  const on = bench();
  on.declare({ kind: 'hole-declared', hole: 'right wheel/1', later: 'on-wheels' });
  for (const side of ['left', 'right'])
    on.call('put-in', { temporary: `${side} stand`, sort: 'stand', at: `area:${side} wheel` });
  on.slack('right wheel/1', m8);
  on.snug('right wheel/1');
  expect(on.no('tighten', { hole: 'right wheel/1', last: true }).because).toContain(
    'right stand and left stand are in',
  );
});

describe('parts and their fasteners', () => {
  const cover = () => {
    const on = bench();
    on.declare({ kind: 'part-declared', part: 'cover', heldBy: ['cover/1', 'cover/2'] });
    return on;
  };

  it('[O2] a part is off with its last fastener and back with its first, unless called otherwise', () => {
    const on = cover();
    on.off('cover/1', m6);
    expect(on.open('part-off')).toEqual([]);
    on.off('cover/2', m6);
    expect(on.open('part-off')).toEqual(['part-off part:cover']);
    on.count('cover', 2);
    on.back('cover/1', { partStays: true });
    expect(on.open('part-off')).toHaveLength(1);
    on.back('cover/2');
    expect(on.open('part-off')).toEqual([]);
    on.off('cover/1');
    on.off('cover/2', undefined, { partStays: true });
    expect(on.open('part-off')).toEqual([]);
  });

  it('[O2] it is back before its fasteners are snug; a working fastener needs none', () => {
    const on = cover();
    on.off('cover/1', m6);
    on.off('cover/2', m6);
    on.count('cover', 2);
    on.back('cover/1', { partStays: true });
    on.back('cover/2', { partStays: true, working: true });
    expect(on.refused('tighten', { hole: 'cover/1', last: false })).toBe('O2 part-not-back');
    on.snug('cover/2');
    // It is in the way of the part; a guide that the part slides over is called done already.
    expect(on.refused('fit-part', { part: 'cover' })).toBe('O2 working-fastener-in-the-way');
    on.off('cover/2');
    on.call('fit-part', { part: 'cover' });
    on.snug('cover/1');
    expect(on.level('cover/1')).toBe('snug');
  });

  it('[O2] one to be renewed does not come back by itself', () => {
    const on = bench();
    on.declare({ kind: 'part-declared', part: 'pump', heldBy: ['pump/1'], renew: true });
    on.off('pump/1', m6);
    on.count('pump', 1);
    on.back('pump/1');
    expect(on.open('part-off')).toEqual(['part-off part:pump']);
    expect(on.no('tighten', { hole: 'pump/1' }).instead).toBe('put the new pump on');
  });

  it('[O2 T3] nor does one the parts box holds a new one for: the new one is called, or the old one by its name', () => {
    const on = cover();
    for (const hole of ['cover/1', 'cover/2']) on.off(hole, m6);
    on.count('cover', 2);
    on.call('fill-box', { name: 'new cover', replaces: 'cover' });
    on.back('cover/1');
    expect(on.open('part-off')).toEqual(['part-off part:cover']);
    expect(on.no('tighten', { hole: 'cover/1' })).toMatchObject({ rule: 'O2', instead: 'put the new cover on' });
    on.call('replace-part', { part: 'cover' });
    on.tight('cover/1');
    const old = cover();
    for (const hole of ['cover/1', 'cover/2']) old.off(hole, m6);
    old.count('cover', 2);
    old.call('fill-box', { name: 'new cover', replaces: 'cover' });
    old.call('fit-part', { part: 'cover' });
    old.call('move-box', { name: 'new cover', to: 'supplier' });
    old.back('cover/1');
    expect(old.open('part-off')).toEqual([]);
  });

  it('[O2] its fasteners are off, or slack, before it is off', () => {
    const on = cover();
    on.slack('cover/1', m6);
    expect(on.refused('remove-part', { part: 'cover' })).toBe('O2 still-held');
    expect(on.no('remove-part', { part: 'cover' }).places).toEqual(['hole:cover/2']);
    on.slack('cover/2', m6);
    on.call('remove-part', { part: 'cover' });
    expect(on.open('part-off')).toHaveLength(1);
  });

  it('[O2 L7] what is only to be slackened comes off all the same when it may not serve there any more', () => {
    const on = cover();
    on.declare({ kind: 'hole-declared', hole: 'cover/2', slackOnly: true });
    on.slack('cover/2', { ...m6, oneUse: true });
    on.off('cover/2');
    expect(on.level('cover/2')).toBe('empty');
  });

  it('[O2] what is only to be slackened is not called off unasked, and slack it holds no part', () => {
    const on = cover();
    on.declare({ kind: 'hole-declared', hole: 'cover/2', slackOnly: true });
    expect(on.refused('remove', { hole: 'cover/2', to: 'tray:1' })).toBe('O2 slack-only');
    on.slack('cover/2', m6);
    on.off('cover/1', m6);
    expect(on.open('part-off')).toHaveLength(1);
  });
});

describe('passes', () => {
  function ring(declared: object = {}, spec: object = m6): Bench {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'ring', ...declared });
    for (const n of [1, 2, 3, 4]) on.off(`ring/${n}`, spec);
    on.count('ring', 4);
    for (const n of [1, 2, 3, 4]) on.back(`ring/${n}`);
    return on;
  }
  const due = (on: Bench, pass: string) => dueIn(on.ledger(), 'ring', pass).map((h) => h.slice(5));

  it('[O3] two by default, snug and final; the area may name its own', () => {
    const on = ring();
    expect(on.entriesOf(on.call('tighten', { hole: 'ring/1' }))).toMatchObject([{ pass: 'snug', last: false }]);
    expect(on.entriesOf(on.call('tighten', { hole: 'ring/1' }))).toMatchObject([{ pass: 'final', last: true }]);
    const three = ring({ passes: ['by hand', '20 Nm', '40 Nm'] });
    const passes = [1, 2, 3].map(() => three.entriesOf(three.call('tighten', { hole: 'ring/1' }))[0]);
    expect(passes).toMatchObject([{ pass: 'by hand' }, { pass: '20 Nm' }, { pass: '40 Nm', last: true }]);
  });

  it('[O3] the area order says which is next; what it does not name follows as numbered', () => {
    const on = ring({ order: ['3', '1'] });
    expect(inOrder(on.ledger(), 'ring')).toEqual(['ring/3', 'ring/1', 'ring/2', 'ring/4']);
    expect(due(on, 'snug')).toEqual(['3', '1', '2', '4']);
    on.call('tighten', { hole: 'ring/3' });
    expect(due(on, 'snug')).toEqual(['1', '2', '4']);
  });

  it('[O3] another hole is taken; in a later pass it is marked, and the pass goes round once more', () => {
    const on = ring();
    const first = on.call('tighten', { hole: 'ring/4', pass: 'snug' });
    expect(on.entriesOf(first)[0]).not.toHaveProperty('outOfOrder');
    on.call('complete-pass', { area: 'ring' });
    expect(on.entriesOf(on.tight('ring/3', { pass: 'final' }))[0]).toMatchObject({ outOfOrder: true });
    for (const n of [1, 2, 4]) on.tight(`ring/${n}`, { pass: 'final' });
    expect(on.open('hole-open')).toEqual([]);
    expect(due(on, 'final')).toEqual(['1', '2', '3', '4']);
    on.call('complete-pass', { area: 'ring' });
    expect(due(on, 'final')).toEqual([]);
    expect(on.no('complete-pass', { area: 'ring' }).because).toBe('every one of ring is tight already');
    on.off('ring/1');
    expect(on.no('complete-pass', { area: 'ring' })).toMatchObject({
      code: 'nothing-due',
      because: 'no hole of ring is due',
    });
  });

  it('[O3] in order it does not', () => {
    const on = ring();
    on.call('complete-pass', { area: 'ring' });
    for (const n of [1, 2, 3, 4]) on.tight(`ring/${n}`, { pass: 'final' });
    expect(due(on, 'final')).toEqual([]);
  });

  it.each([
    ['torque-and-angle', { method: { by: 'torque-angle' } }, m6],
    ['shouldered', {}, { ...m6, shouldered: true }],
    ['sleeved', { method: { by: 'sleeve' } }, m6],
  ])('[O3] a closing round never touches %s fasteners', (_, declared, spec) => {
    const on = ring(declared, spec);
    on.call('complete-pass', { area: 'ring' });
    for (const n of [3, 1, 2, 4]) on.tight(`ring/${n}`, { pass: 'final' });
    expect(due(on, 'final')).toEqual([]);
  });

  it('[O3] pass complete is one call that writes one entry per hole; what stops one hole stops the pass', () => {
    const on = ring();
    const n = on.call('complete-pass', { area: 'ring', tool: 'small ratchet' });
    expect(on.entriesOf(n)).toHaveLength(4);
    on.declare(behind('hole:ring/3', 'area:inner'));
    on.off('inner/1', m6);
    const no = on.no('complete-pass', { area: 'ring' });
    expect(`${no.rule} ${no.because}`).toMatch(/^O1 ring 3: behind it inner is open/);
  });

  it('[O3] the record keeps method, value, pass and time', () => {
    const on = ring({ method: { by: 'torque', newtonMetres: 10 } });
    const n = on.tight('ring/1', { tool: 'wrench 2' });
    const method = { by: 'torque', newtonMetres: 10 };
    expect(on.hole('ring/1')?.passes).toEqual([
      { n, pass: 'snug', last: true, fastener: on.in('ring/1'), method, tool: 'wrench 2' },
    ]);
    expect(on.lines()[n - 1]?.atMs).toBe(on.now().atMs);
  });
});

describe('methods', () => {
  const tightened = (declared: object[], said: object = {}) => {
    const on = bench();
    if (declared.length > 0) on.call('declare', { entries: declared });
    on.off('head/1', m8);
    on.count('head', 1);
    on.back('head/1');
    return { on, entry: on.entriesOf(on.tight('head/1', said))[0] };
  };
  const ofArea = { kind: 'area-declared', area: 'head', method: { by: 'torque', newtonMetres: 20, with: 'oil' } };
  const stages = [{ newtonMetres: 40 }, { degrees: 90 }];
  const ofHole = { kind: 'hole-declared', hole: 'head/1', method: { by: 'torque-angle', stages } };

  it('[O4] the method belongs to the fastener, else its area, and what is said goes before both', () => {
    expect(tightened([ofArea]).entry).toMatchObject({ method: ofArea.method });
    expect(tightened([ofArea, ofHole]).entry).toMatchObject({ method: ofHole.method });
    const method = { by: 'hand', with: 'locking compound' };
    expect(tightened([ofArea, ofHole], { method }).entry).toMatchObject({ method });
    expect(tightened([]).entry).not.toHaveProperty('method');
  });

  it.each([
    ['to the shoulder', { kind: 'area-declared', area: 'head', method: { by: 'shoulder' } }],
    ['to the sleeve', { kind: 'area-declared', area: 'head', method: { by: 'sleeve' } }],
    ['of a shouldered one', { kind: 'hole-declared', hole: 'head/1', wants: { shouldered: true } }],
  ])('[O4] %s, then stop: no value beyond it', (_, declared) => {
    const { on } = tightened([declared]);
    const method = { by: 'torque', newtonMetres: 10 };
    expect(on.refused('tighten', { hole: 'head/1', method })).toBe('O4 no-value-beyond-the-shoulder');
  });

  it('[O4] a castle nut wants a new pin: the old one never goes back', () => {
    const on = bench();
    on.declare({
      kind: 'hole-declared',
      hole: 'hub/1',
      wants: { kind: 'nut', thread: 'M20x1.5' },
      method: { by: 'castle' },
    });
    on.declare({ kind: 'hole-declared', hole: 'hub/1 pin', wants: { kind: 'pin', oneUse: true } });
    on.off('hub/1');
    on.count('hub', 1);
    on.back('hub/1');
    on.tight('hub/1');
    expect(on.open('hole-open')).toEqual(['hole-open hole:hub/1 pin']);
    on.call('fill-box', { name: 'split pin', spec: { kind: 'pin', oneUse: true } });
    on.back('hub/1', { box: 'split pin' });
    on.tight('hub/1');
    expect(on.open('hole-open')).toEqual([]);
  });
});

describe('overriding', () => {
  it('[O5] only O1, O2 and O3 may be overridden: every guard of kind order carries one of them', () => {
    const order = [...verbs.values()].flatMap((v) => v.guards.filter((g) => g.kind === 'order').map((g) => g.rule));
    expect(order.length).toBeGreaterThan(5);
    expect(order.filter((rule) => !['O1', 'O2', 'O3'].includes(rule))).toEqual([]);
    const line = lineSchema.shape.overrides.unwrap().element.shape.rule.options;
    expect(line).toEqual(['O1', 'O2', 'O3']);
  });

  it('[O5] the same key again answers done already: taken, and marked with its reason', () => {
    const on = threeCovers();
    on.back('upper/1');
    const n = on.call('tighten', { hole: 'upper/1', last: true }, { because: 'done already' });
    expect(on.level('upper/1')).toBe('tight');
    expect(on.lines()[n - 1]?.overrides).toEqual([{ rule: 'O1', because: 'done already' }]);
    const plain = on.call('fit', { hole: 'lower/1' }, { because: 'done already' });
    expect(on.lines()[plain - 1]).not.toHaveProperty('overrides');
  });

  it('[O5] everything else is a rule or a gate and stays refused', () => {
    const on = bench();
    const sure = { because: 'done already' };
    on.declare({ ...behind('area:cover', 'rotation:belt'), gate: true });
    on.declare({
      kind: 'drive-declared',
      drive: 'belt',
      areas: ['idler'],
      parts: [],
      marks: ['cam'],
      turns: 2,
      tensioner: 'none',
      crankKeyed: true,
    });
    for (const hole of ['cover/1', 'idler/1']) on.off(hole, m6);
    expect(on.refused('fit', { hole: 'cover/1' }, sure)).toBe('K4 holes-not-counted');
    on.count('cover', 1);
    on.back('cover/1');
    expect(on.refused('tighten', { hole: 'cover/1' }, sure)).toBe('R7 hides-what-is-not-proven');
    expect(on.refused('release', { who: 'Ann' }, sure)).toBe('X1 open-points');
  });

  it('[O5] on a critical hole it asks a second look of that hole', () => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'upper', critical: true }, behind('area:upper', 'area:lower'));
    for (const area of ['upper', 'lower']) {
      on.off(`${area}/1`, m6);
      on.count(area, 1);
    }
    on.back('upper/1');
    on.call('tighten', { hole: 'upper/1', last: true }, { because: 'done already' });
    expect(on.openAt('hole:upper/1')).toEqual(['second-look']);
    on.call('look-again', { holes: ['upper/1'] });
    expect(on.openAt('hole:upper/1')).toEqual([]);
  });
});

describe('before an area closes', () => {
  it.each([
    ['companions', { companions: ['dowel', 'O-ring'] }, 'companions-seen'],
    ['blind-holes', { blindHoles: true }, 'blind-holes-dry'],
    ['direction', { marked: true }, 'direction-right'],
  ])('[O6] its %s are called, once it was opened and again after it was opened again', (code, declared, verb) => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'pump', ...declared }, behind('area:cover', 'area:pump'));
    expect(on.openAt('area:pump')).toEqual([]);
    for (const hole of ['cover/1', 'pump/1']) on.off(hole, m6);
    for (const area of ['cover', 'pump']) on.count(area, 1);
    expect(on.openAt('area:pump')).toEqual([code]);
    for (const hole of ['cover/1', 'pump/1']) on.back(hole);
    on.tight('pump/1');
    expect(on.no('tighten', { hole: 'cover/1' }).because).toContain('not called');
    on.call(verb, { area: 'pump' });
    expect(on.openAt('area:pump')).toEqual([]);
    on.tight('cover/1');
    on.slack('pump/1');
    expect(on.openAt('area:pump')).toEqual([code]);
  });
});

describe('an order nobody has said', () => {
  const ring = [0, 1, 2, 3, 4, 5].map((n) => [
    Math.round(1000 * Math.cos((n * Math.PI) / 3)),
    Math.round(1000 * Math.sin((n * Math.PI) / 3)),
  ]);
  const cover = [
    [0, 0],
    [10, 0],
    [20, 0],
    [0, 10],
    [10, 10],
    [20, 10],
  ];
  /** Six holes of one part, placed so. */
  const placed = (places: readonly (readonly number[] | undefined)[], area: object = {}, hole: object = {}): Bench => {
    const on = bench();
    const holes = places.map((_, i) => `pump/${i + 1}`);
    on.declare(
      { kind: 'area-declared', area: 'pump', planned: true, ...area },
      ...places.map((at, i) => ({ kind: 'hole-declared', hole: holes[i], wants: m6, ...(at && { at }), ...hole })),
      { kind: 'part-declared', part: 'pump', heldBy: holes },
    );
    return on;
  };
  const order = (on: Bench): string => inOrder(on.ledger(), 'pump').map(numberOf).join(' ');

  it('[O3] is proposed from where the holes sit: a ring crosswise, a cover from the middle outwards', () => {
    const on = placed(ring);
    expect([orderBy(on.ledger(), 'pump'), order(on)]).toEqual(['ring', '1 4 2 5 3 6']);
    const middle = order(placed(cover)).split(' ').slice(0, 2).sort();
    expect([orderBy(placed(cover).ledger(), 'pump'), middle]).toEqual(['cover', ['2', '5']]);
  });

  it('[O3] is loosened the other way round', () => {
    const on = placed(ring);
    expect(inLooseningOrder(on.ledger(), 'pump').map(numberOf).join(' ')).toBe('6 3 5 2 4 1');
  });

  it('[O3] gives way to the maker\u2019s, whenever that comes to be known', () => {
    const on = placed(ring);
    on.declare({ kind: 'area-declared', area: 'pump', order: ['6', '5', '4', '3', '2', '1'] });
    expect([orderBy(on.ledger(), 'pump'), order(on)]).toEqual(["the maker's", '6 5 4 3 2 1']);
  });

  it.each<[string, Bench]>([
    ['one hole has no place', placed([...ring.slice(0, 5), undefined])],
    ['there are three', placed(ring.slice(0, 3))],
    ['they are turned by hand', placed(ring, { method: { by: 'hand' } })],
    ['one of them is slack only', placed(ring, {}, { slackOnly: true })],
    ['they hold no one part together', apart()],
  ])('[O3] is by number where %s', (_, on) => {
    expect(orderBy(on.ledger(), 'pump')).toBe('number');
    expect(inLooseningOrder(on.ledger(), 'pump')[0]).toBe('pump/1');
  });
  function apart(): Bench {
    const on = placed(ring);
    on.declare({ kind: 'part-declared', part: 'pump', heldBy: ['pump/1', 'pump/2'] });
    return on;
  }

  it('[O3] marks nothing when another hole is taken, and asks for no round again', () => {
    const on = placed(ring);
    for (const n of [1, 2, 3, 4, 5, 6]) on.off(`pump/${n}`, m6);
    for (const n of [1, 2, 3, 4, 5, 6]) on.back(`pump/${n}`);
    on.call('complete-pass', { area: 'pump' });
    expect(dueIn(on.ledger(), 'pump', 'final').map(numberOf).join(' ')).toBe('1 4 2 5 3 6');
    for (const n of [6, 5, 4, 3, 2, 1]) on.call('tighten', { hole: `pump/${n}` });
    expect(JSON.stringify(on.lines())).not.toContain('outOfOrder');
    expect(dueIn(on.ledger(), 'pump', 'final')).toEqual([]);
  });
});
