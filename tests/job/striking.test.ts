// U: striking and restoring lines, what leans on them, which proofs fall with them, and what was called wrongly put right.
import { describe, expect, it } from 'vitest';
import { type Drawers, everyKey } from '../../src/job/drawers.ts';
import { stateOf } from '../../src/job/ledger.ts';
import type { Spec } from '../../src/job/spec.ts';
import { losesFooting } from '../../src/job/striking.ts';
import { type Bench, bench, m6, m8 } from './bench.ts';

const loses = (on: Bench, lines: number[], kind: 'calls-struck' | 'calls-restored' = 'calls-struck') =>
  losesFooting(on.ledger(), lines, kind, on.now()).map((p) => `${p.code} ${p.at}`);

describe('proofs that lose their footing', () => {
  it('[U2] are named before the key is pressed, and are what then stands open', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.count('cover', 1);
    on.back('cover/1');
    const tight = on.tight('cover/1');
    on.countTrays();
    const tools = on.call('tools-out');
    expect(on.open()).toEqual([]);
    expect(loses(on, [tools])).toEqual(['tools vehicle']);
    expect(loses(on, [tight])).toEqual(['hole-open hole:cover/1']);
    const named = loses(on, [tight, tools]);
    expect(on.open()).toEqual([]);
    on.call('strike', { lines: [tight, tools] });
    expect(on.open()).toEqual(named);
  });

  it('[U2] nothing is named that stood open before, nor what striking is refused for', () => {
    const on = bench();
    const off = on.off('cover/1', m6);
    on.count('cover', 1);
    on.back('cover/1');
    expect(loses(on, [off])).toEqual([]);
    expect(on.refused('strike', { lines: [off] })).toBe('U2 others-lean-on-it');
  });

  it('[U2] restoring names them too: a brake that was open after all wants its pedal and its road again', () => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'caliper', role: 'brake', planned: true });
    on.slack('caliper/1', m8);
    on.tight('caliper/1');
    on.call('pedal-firm');
    on.call('road-test');
    const again = [on.slack('caliper/1'), on.tight('caliper/1')];
    on.call('strike', { lines: again });
    on.call('tools-out');
    expect(on.open()).toEqual([]);
    const named = ['pedal vehicle', 'road-test vehicle'];
    expect(loses(on, again, 'calls-restored')).toEqual(named);
    on.call('restore', { lines: again });
    expect(on.open()).toEqual(named);
  });
});

describe('what leans on a line', () => {
  const chain = () => {
    const on = bench();
    const off = on.off('cover/1', m6);
    on.count('cover', 1);
    const back = on.back('cover/1');
    const tight = on.tight('cover/1');
    return { on, off, back, tight };
  };

  it('[U2] alone it is refused, naming them; all may be struck together as one call', () => {
    const { on, off, back, tight } = chain();
    expect(on.no('strike', { lines: [off] }).places).toEqual([`line:${back}`, `line:${tight}`]);
    expect(on.no('strike', { lines: [back] }).places).toEqual([`line:${tight}`]);
    expect(on.no('strike', { lines: [off, tight] }).places).toEqual([`line:${back}`]);
    const n = on.call('strike', { lines: [off, back, tight] });
    expect(on.entriesOf(n)).toEqual([{ kind: 'calls-struck', lines: [off, back, tight] }]);
    expect(on.hole('cover/1')).toBeUndefined();
  });

  it('[U2] only where the same thing could not have been where the line takes it from', () => {
    const on = bench();
    const first = on.off('cover/1', m6);
    on.off('cover/2', m6);
    on.count('cover', 2);
    on.call('strike', { lines: [first] });
    const lay = on.call('move-fastener', { fastener: on.own('cover/2'), to: 'tray:2' });
    const there = on.call('move-fastener', { fastener: on.own('cover/2'), to: 'owner' });
    expect(on.no('strike', { lines: [lay] }).places).toEqual([`line:${there}`]);
    const filled = on.call('fill-box', { name: 'new', spec: m6 });
    const fitted = on.back('cover/2', { box: 'new' });
    expect(on.no('strike', { lines: [filled] }).places).toEqual([`line:${fitted}`]);
    const put = on.call('put-in', { temporary: 'pin', sort: 'pin' });
    const out = on.call('take-out', { temporary: 'pin' });
    expect(on.no('strike', { lines: [put] }).places).toEqual([`line:${out}`]);
    const parted = on.call('part-connection', { connection: 'plug' });
    const made = on.call('make-connection', { connection: 'plug' });
    expect(on.no('strike', { lines: [parted] }).places).toEqual([`line:${made}`]);
  });

  it('[U2] order and gates are not judged again', () => {
    const on = bench();
    on.declare({ kind: 'behind-declared', front: 'area:upper', behind: 'area:lower', until: 'closed', from: 'plan' });
    for (const area of ['upper', 'lower']) {
      on.off(`${area}/1`, m6);
      on.count(area, 1);
      on.back(`${area}/1`);
    }
    const behind = on.tight('lower/1');
    on.tight('upper/1');
    on.call('strike', { lines: [behind] });
    expect(on.level('upper/1')).toBe('tight');
    expect(on.open('hole-open')).toEqual(['hole-open hole:lower/1']);
    const count = on.lines().find((l) => l.call === 'count-holes')?.n as number;
    on.call('strike', { lines: [count] });
    expect(on.level('upper/1')).toBe('tight');
  });

  it('[U2] restoring is checked like striking', () => {
    const { on, off, back, tight } = chain();
    on.call('strike', { lines: [off, back, tight] });
    expect(on.no('restore', { lines: [back] }).places).toEqual([`line:${back}`]);
    const other = on.slack('cover/1', m8);
    expect(on.no('restore', { lines: [off] }).places).toContain(`line:${other}`);
    on.call('strike', { lines: [other] });
    on.call('restore', { lines: [off, back, tight] });
    expect(on.level('cover/1')).toBe('tight');
  });
});

describe('a struck line', () => {
  /** All that a job stands as, without the log itself. */
  const standing = (on: Bench) => {
    const { states, tallies, misfits, verdicts } = on.ledger();
    const of = (drawers: Drawers<unknown>) => Object.fromEntries(everyKey(drawers));
    const all = Object.fromEntries(
      Object.entries(states).map(([sort, drawers]) => [sort, of(drawers as Drawers<unknown>)]),
    );
    return { states: all, tallies, misfits: of(misfits), verdicts };
  };

  it('[U1] is not erased: striking is a line of its own, and so is restoring', () => {
    const on = bench();
    const off = on.off('cover/1', m6);
    const before = on.lines().slice(0, off);
    const struck = on.call('strike', { lines: [off] });
    const restored = on.call('restore', { lines: [off] });
    expect(on.lines().slice(0, off)).toEqual(before);
    expect(on.entriesOf(struck)).toEqual([{ kind: 'calls-struck', lines: [off] }]);
    expect(on.entriesOf(restored)).toEqual([{ kind: 'calls-restored', lines: [off] }]);
  });

  it('[U1] leaves the job as if it had never been', () => {
    const story = (withIt: boolean) => {
      const on = bench();
      on.off('cover/1', m6);
      const n = withIt ? on.off('cover/2', m6) : on.call('note', { words: 'nothing' });
      on.off('cover/3', m6);
      on.call('strike', { lines: [n] });
      return on;
    };
    expect(standing(story(true))).toEqual(standing(story(false)));
  });

  it('[U1] restored, all is as it was', () => {
    const on = bench();
    on.off('cover/1', m6);
    const n = on.off('cover/2', m6);
    on.off('cover/3', m6);
    const before = standing(on);
    on.call('strike', { lines: [n] });
    expect(standing(on)).not.toEqual(before);
    on.call('restore', { lines: [n] });
    expect(standing(on)).toEqual(before);
  });

  it('[U1] only what stands is struck, only what is struck restored, a strike itself is answered by restoring', () => {
    const on = bench();
    const n = on.off('cover/1', m6);
    expect(on.refused('restore', { lines: [n] })).toBe('U1 not-struck');
    const struck = on.call('strike', { lines: [n] });
    expect(on.refused('strike', { lines: [n] })).toBe('U1 no-such-line');
    expect(on.refused('strike', { lines: [struck] })).toBe('U1 no-such-line');
    expect(on.refused('strike', { lines: [99] })).toBe('U1 no-such-line');
    on.call('restore', { lines: [n] });
    on.call('strike', { lines: [n] });
  });

  it('[U1] a call of several entries is struck as one', () => {
    const on = bench();
    on.declare({ kind: 'part-declared', part: 'lid', heldBy: ['cover/1'] });
    const n = on.off('cover/1', m6, { wrong: 'damaged' });
    expect(on.entriesOf(n).length).toBeGreaterThan(3);
    on.call('strike', { lines: [n] });
    on.countTrays();
    on.call('tools-out');
    expect(on.open()).toEqual([]);
  });
});

describe('what was called wrongly', () => {
  const days = (on: Bench, n: number) => on.away(24 * n);
  const critical = () => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'mount', critical: true, planned: true });
    for (const n of [1, 2]) on.call('find-fastener', { hole: `mount/${n}`, spec: m8 });
    on.slack('mount/1');
    on.tight('mount/1');
    on.call('look-again', { holes: ['mount/1'] });
    on.call('tools-out');
    expect(on.open()).toEqual([]);
    return on;
  };

  it('[U3] of the wrong hole is put right by a correcting call with a reason, days later too', () => {
    const on = critical();
    days(on, 2);
    expect(on.refused('exchange-holes', { one: 'mount/1', other: 'mount/2' })).toBe('L1 badly-said');
    const because = 'it was the one behind';
    const n = on.call('exchange-holes', { one: 'mount/1', other: 'mount/2', because });
    expect(on.entriesOf(n)).toEqual([{ kind: 'holes-exchanged', one: 'mount/1', other: 'mount/2', because }]);
    expect(on.level('mount/1')).toBe('as-found');
    expect(on.level('mount/2')).toBe('tight');
    expect(on.hole('mount/1')).toMatchObject({ touchedAt: 0, openedAt: 0, changedAt: 0 });
    expect(on.hole('mount/2')?.passes).toHaveLength(1);
  });

  it('[U3] proofs over it are void: the second look', () => {
    const on = critical();
    on.call('exchange-holes', { one: 'mount/1', other: 'mount/2', because: 'mistaken' });
    expect(on.open()).toEqual(['second-look hole:mount/2']);
  });

  /** A drive that passed its check, and a circuit leak-checked, over a pump bolt that was called. */
  const proven = () => {
    const on = bench();
    on.declare(
      { kind: 'area-declared', area: 'pump', planned: true, companions: ['dowel'] },
      { kind: 'face-declared', face: 'pump', area: 'pump', pressedBy: ['pump/1', 'pump/2'], keepsIn: ['cooling'] },
      {
        kind: 'drive-declared',
        drive: 'belt',
        areas: ['pump'],
        parts: [],
        marks: ['cam'],
        turns: 2,
        tensioner: 'none',
        crankKeyed: true,
      },
    );
    on.call('find-fastener', { hole: 'pump/2', spec: m6 });
    on.slack('pump/1', m6);
    on.tight('pump/1');
    on.call('companions-seen', { area: 'pump' });
    on.call('turn-crank', { drive: 'belt', quarters: 8 });
    on.call('read-mark', { drive: 'belt', mark: 'cam', teethOff: 0 });
    on.call('drain', { circuit: 'cooling' });
    on.call('fill-fluid', { circuit: 'cooling' });
    on.call('check-leaks', { circuit: 'cooling', how: 'under pressure' });
    on.call('tools-out');
    on.call('waive-road-test', { who: 'Ann', because: 'no plates' });
    expect(on.open()).toEqual([]);
    return on;
  };
  const fallen = [
    'companions area:pump',
    'rotation-needed drive:belt',
    'circuit-unchecked circuit:cooling',
    'road-test vehicle',
  ];

  it('[U3] the check rotation, the leak check and what was seen before the area closed', () => {
    const on = proven();
    days(on, 2);
    on.call('exchange-holes', { one: 'pump/1', other: 'pump/2', because: 'it was the lower one' });
    expect(on.open()).toEqual(fallen);
  });

  it('[U3] the same where the fastener in a hole was another than called', () => {
    const on = proven();
    days(on, 2);
    const fastener = on.in('pump/1');
    expect(on.refused('correct-spec', { fastener, spec: m8 })).toBe('L1 badly-said');
    on.call('correct-spec', { fastener, spec: m8, because: 'read the wrong box' });
    expect(on.open()).toEqual(fallen);
    expect(stateOf(on.ledger(), 'fastener', fastener)?.spec).toEqual(m8);
  });

  it('[U3] of the wrong spec: what the hole wants goes with it where it was its first fastener', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.count('cover', 1);
    const fastener = on.own('cover/1');
    on.call('correct-spec', { fastener, spec: m8, because: 'measured it' });
    on.call('fill-box', { name: 'six', spec: m6 });
    expect(on.refused('fit', { hole: 'cover/1', box: 'six' })).toBe('L5 wants-another');
    on.back('cover/1');
    on.tight('cover/1');
    expect(on.openAt('hole:cover/1')).toEqual([]);
  });

  it.each<[string, (on: Bench, spec: Spec) => void]>([
    ['off', (on, spec) => on.off('front wheel/3', spec)],
    [
      'off as the wrong one',
      (on, spec) => on.call('remove', { hole: 'front wheel/3', to: 'tray:1', wrong: 'odd', spec }),
    ],
    ['broken', (on, spec) => on.call('break', { hole: 'front wheel/3', headTo: 'tray:1', pieces: ['hole'], spec })],
  ])('[U3] what was slackened unseen is what is said of it when it is %s', (_how, comesOut) => {
    const nut: Spec = { kind: 'nut', head: 'hex 19', thread: 'M12x1.5', class: '8' };
    const on = bench();
    for (const n of [1, 2, 3, 4]) on.slack(`front wheel/${n}`, nut);
    on.off('front wheel/1', { kind: 'nut', head: 'hex 19', thread: 'M12x1.5' });
    const fastener = on.in('front wheel/3');
    comesOut(on, { kind: 'nut', thread: 'M12x1.25' });
    expect(stateOf(on.ledger(), 'fastener', fastener)?.spec).toEqual({ ...nut, thread: 'M12x1.25' });
    expect(stateOf(on.ledger(), 'fastener', on.own('front wheel/1'))?.spec).toEqual(nut);
  });

  it('[F2] and is suspected beside its neighbours then', () => {
    const nut: Spec = { kind: 'nut', head: 'hex 19', thread: 'M12x1.5' };
    const on = bench();
    for (const n of [1, 2, 3, 4]) on.slack(`front wheel/${n}`, nut);
    on.off('front wheel/3', { kind: 'nut', head: 'hex 19', thread: 'M12x1.25' });
    expect(on.open('suspicion')).toEqual(['suspicion hole:front wheel/3']);
  });

  it('[U3] of the wrong fastener: two that were taken for one another, each corrected', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.off('lid/1', m8);
    const [short, long] = [on.own('cover/1'), on.own('lid/1')];
    on.call('correct-spec', { fastener: short, spec: m8, because: 'taken for the other' });
    on.call('correct-spec', { fastener: long, spec: m6, because: 'taken for the other' });
    for (const area of ['cover', 'lid']) on.count(area, 1);
    on.back('cover/1');
    expect(on.in('cover/1')).toBe(short);
    expect(stateOf(on.ledger(), 'fastener', short)?.spec).toEqual(m8);
    expect(on.open('hole-open')).toEqual(['hole-open hole:cover/1', 'hole-open hole:lid/1']);
  });

  it('[U3] a bolt called at 7 that was 8: fasteners, findings, pieces and temporaries go with it, declarations stay', () => {
    const on = bench();
    on.declare({ kind: 'hole-declared', hole: 'cover/8', tool: 'long bar' });
    const n = on.call('break', { hole: 'cover/7', headTo: 'tray:1', pieces: ['hole'], spec: m6 });
    on.call('put-in', { temporary: 'plug', sort: 'plug', at: 'hole:cover/7' });
    on.call('exchange-holes', { one: 'cover/7', other: 'cover/8', because: 'it was 8' });
    expect(on.hole('cover/7')).toMatchObject({ pieces: [], temporaries: [], findings: [], touchedAt: 0 });
    expect(on.hole('cover/8')).toMatchObject({ pieces: [`p${n}.1`], temporaries: ['plug'], findings: [`d${n}.1`] });
    expect(stateOf(on.ledger(), 'fastener', `f${n}.1`)?.origin).toBe('hole:cover/8');
    expect(stateOf(on.ledger(), 'finding', `d${n}.1`)?.at).toBe('hole:cover/8');
    expect(stateOf(on.ledger(), 'hole', 'cover/8')?.declared?.tool).toBe('long bar');
    expect(stateOf(on.ledger(), 'hole', 'cover/7')?.declared).toBeUndefined();
    on.call('take-out', { temporary: 'plug' });
    on.call('move-piece', { piece: `p${n}.1`, to: 'scrap' });
    expect(on.misfits()).toEqual([]);
  });

  it('[U3] not with a hole that could not have held it, nor where nothing was called', () => {
    const on = bench();
    on.declare({ kind: 'hole-declared', hole: 'cover/2', wants: m8 });
    on.slack('cover/1', m6);
    const said = { one: 'cover/1', other: 'cover/2', because: 'mistaken' };
    expect(on.refused('exchange-holes', said)).toBe('U3 could-not-have-held-it');
    expect(on.refused('exchange-holes', { ...said, other: 'cover/1' })).toBe('U3 nothing-to-exchange');
    expect(on.refused('exchange-holes', { ...said, one: 'cover/8', other: 'cover/9' })).toBe('U3 nothing-to-exchange');
  });

  it('[U3] exchanged twice, all but the proofs is as it was', () => {
    const on = critical();
    for (const _ of [1, 2]) on.call('exchange-holes', { one: 'mount/1', other: 'mount/2', because: 'mistaken' });
    expect([on.level('mount/1'), on.level('mount/2')]).toEqual(['tight', 'as-found']);
    expect(on.open()).toEqual(['second-look hole:mount/1']);
  });
});
