// K: what the eye counts: trays, tools, the holes of an area nobody planned; what is over is a stray.
import { describe, expect, it } from 'vitest';
import { readLine } from '../../src/calls/line-reader.ts';
import { leavingRows } from '../../src/calls/lists/leaving.ts';
import { meantBy } from '../../src/calls/row.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { firstFacing } from '../../src/view/facing.ts';
import { type Bench, bench, m6, m8 } from './bench.ts';

const count = (on: Bench, tray: string, n: number) => on.call('count-trays', { counts: [{ tray, count: n }] });
const desk = (on: Bench) => ({ ledger: on.ledger(), now: on.now(), facing: firstFacing, plans: () => [] });
/** A call in words, as it is typed at the bench. */
function typed(on: Bench, words: string): number {
  const read = readLine(desk(on), words);
  const meant = 'row' in read ? meantBy(read.row, desk(on), read.args) : read;
  if (!('say' in meant)) throw new Error(`"${words}" says nothing: ${JSON.stringify(meant)}`);
  const { verb, ...said } = meant.say;
  return on.call(verb, said);
}

const scrapCounted = (on: Bench, n: number) => on.call('count-scrap', { count: n });

/** Ready to start, turn and leave, but for the counts: a bolt in tray 1, one in tray 2, both areas open. */
function stripped(): Bench {
  const on = bench();
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
  on.call('remove', { hole: 'cover/1', to: 'tray:1', spec: m6 });
  on.call('remove', { hole: 'guard/1', to: 'tray:2', spec: m8 });
  on.call('see-oil-level');
  return on;
}
const start = (on: Bench) => on.refused('start-engine');
const turn = (on: Bench) => on.no('turn-crank', { drive: 'belt', quarters: 1 });

describe('a tray count', () => {
  it('[K1] is asked before check rotation, before first start and before release', () => {
    const on = stripped();
    on.call('tools-out');
    expect(turn(on)).toMatchObject({ rule: 'K1', kind: 'gate', places: ['tray:1', 'tray:2'] });
    expect(start(on)).toBe('K1 trays-not-counted');
    expect(on.refused('start-engine', {}, { because: 'sure' })).toBe('K1 trays-not-counted');
    expect(on.open('tray-uncounted')).toEqual(['tray-uncounted tray:1', 'tray-uncounted tray:2']);
    expect(on.no('release', { who: 'Ann' }).places).toContain('tray:1');
    count(on, '1', 1);
    count(on, '2', 1);
    on.call('start-engine');
    on.call('turn-crank', { drive: 'belt', quarters: 1 });
    expect(on.open('tray-uncounted')).toEqual([]);
  });

  it('[K1] only for trays without a standing count', () => {
    const on = stripped();
    count(on, '2', 1);
    expect(turn(on).places).toEqual(['tray:1']);
  });

  it('[K1] is asked when a try begins, not at every quarter of it', () => {
    const on = stripped();
    count(on, '1', 1);
    count(on, '2', 1);
    on.call('turn-crank', { drive: 'belt', quarters: 1 });
    on.call('remove', { hole: 'guard/2', to: 'tray:2', spec: m8 });
    on.call('turn-crank', { drive: 'belt', quarters: 1 });
  });

  it('[K1] one out and another in is no standing count, though the number is the same', () => {
    const on = stripped();
    count(on, '1', 1);
    count(on, '2', 1);
    on.call('move-fastener', { fastener: on.own('cover/1'), to: 'scrap' });
    on.call('remove', { hole: 'cover/2', to: 'tray:1', spec: m6 });
    expect(on.open('tray-uncounted')).toEqual(['tray-uncounted tray:1']);
  });

  it('[K1] stands until something moves in or out of that tray, and of no other', () => {
    const on = stripped();
    count(on, '1', 1);
    count(on, '2', 1);
    const moves: [string, () => void][] = [
      ['1', () => on.call('remove', { hole: 'cover/2', to: 'tray:1', spec: m6 })],
      ['2', () => on.call('move-fastener', { fastener: on.own('guard/1'), to: 'scrap' })],
      ['1', () => on.call('find-stray', { spec: m8, tray: '1' })],
      ['1', () => on.call('lose-fastener', { fastener: on.own('cover/2'), reaches: false, where: 'floor' })],
    ];
    for (const [tray, move] of moves) {
      move();
      expect(on.open('tray-uncounted')).toEqual([`tray-uncounted tray:${tray}`]);
      count(on, tray, on.tray(tray));
      expect(on.open('tray-uncounted')).toEqual([]);
    }
  });

  it('[K1] "all others empty" is one call', () => {
    const on = stripped();
    for (const hole of ['cover/1', 'guard/1']) on.call('move-fastener', { fastener: on.own(hole), to: 'owner' });
    on.call('remove', { hole: 'bracket/1', to: 'tray:3', spec: m8 });
    count(on, '3', 1);
    expect(on.entriesOf(typed(on, 'all others empty'))).toEqual([
      { kind: 'tray-counted', tray: '1', count: 0 },
      { kind: 'tray-counted', tray: '2', count: 0 },
    ]);
    expect(on.open('tray-uncounted')).toEqual([]);
  });

  it('[K1] is given before the figure of the ledger is shown', () => {
    const on = stripped();
    for (const n of [2, 3, 4, 5]) on.call('remove', { hole: `cover/${n}`, to: 'tray:1', spec: m6 });
    const shown = () => {
      const rows = leavingRows(desk(on));
      const all = Array.from({ length: rows.length }, (_, i) => rows.at(i));
      return all.flatMap((row) => (row?.leads === 'tray:1' ? `${row.text} ${row.end}` : [])).join();
    };
    expect(shown()).toContain('tray 1');
    expect(shown()).not.toContain('5');
    expect(turn(on).because).not.toContain('5');
    count(on, '1', 5);
    expect(shown()).toContain('5 still in it');
  });

  it('[K1] may be called at any time', () => {
    const on = bench();
    count(on, '7', 0);
    expect(on.open('tray-uncounted')).toEqual([]);
    count(on, '7', 2);
    expect(on.open('tray-uncounted')).toEqual(['tray-uncounted tray:7']);
  });

  it('[K1] "tools out" is asked with it before first start and release, and falls with the next work', () => {
    const on = stripped();
    count(on, '1', 1);
    count(on, '2', 1);
    expect(start(on)).toBe('K1 tools-not-out');
    expect(on.open('tools')).toEqual(['tools vehicle']);
    on.call('tools-out');
    on.call('start-engine');
    expect(on.open('tools')).toEqual([]);
    on.slack('cover/9', m6);
    expect(start(on)).toBe('K1 tools-not-out');
    expect(on.open('tools')).toEqual(['tools vehicle']);
  });
});

describe('a count that differs', () => {
  it('[K2] stops what asked for it: count again', () => {
    const on = stripped();
    count(on, '2', 1);
    count(on, '1', 2);
    on.call('tools-out');
    expect(turn(on)).toMatchObject({ instead: 'count again', places: ['tray:1'] });
    expect(start(on)).toBe('K1 trays-not-counted');
    expect(on.open('tray-uncounted')).toEqual(['tray-uncounted tray:1']);
    count(on, '1', 1);
    on.call('start-engine');
  });

  it('[K2] then the program names the holes and fasteners that could explain it: short', () => {
    const on = stripped();
    on.call('remove', { hole: 'cover/2', to: 'tray:1', spec: { ...m6, lengthMm: 45 } });
    on.call('remove', { hole: 'bracket/1', to: 'tray:2', spec: m6 });
    count(on, '2', 2);
    count(on, '1', 1);
    expect(turn(on).because).toBe('the count of tray 1 differs from the ledger');
    count(on, '1', 1);
    const no = turn(on);
    expect(no.because).toMatch(/^tray 1 is 1 short of the ledger; look at cover 1, cover 2, bracket 1, /);
    expect(no.places).toEqual([
      'tray:1',
      'hole:cover/1',
      'hole:cover/2',
      'hole:bracket/1',
      `fastener:${on.own('cover/1')}`,
      `fastener:${on.own('cover/2')}`,
    ]);
  });

  it('[K2] and over: what was called out of it, and what was never called off beside what lies in it', () => {
    const on = stripped();
    for (const n of [2, 3]) on.call('remove', { hole: `cover/${n}`, to: 'tray:1', spec: m6 });
    on.call('find-fastener', { hole: 'cover/4', spec: m6 });
    on.call('find-fastener', { hole: 'guard/2', spec: m6 });
    on.count('cover', 4);
    on.back('cover/1');
    on.back('cover/2');
    count(on, '2', 1);
    for (const _ of [1, 2]) count(on, '1', 2);
    const no = turn(on);
    expect(no.because).toMatch(/^tray 1 is 1 over the ledger; look at cover 2, cover 1, cover 4, /);
    expect(no.places).toEqual([
      'tray:1',
      'hole:cover/2',
      'hole:cover/1',
      'hole:cover/4',
      `fastener:${on.own('cover/2')}`,
      `fastener:${on.own('cover/1')}`,
    ]);
  });

  it('[K2] a move in between begins the counting anew', () => {
    const on = stripped();
    count(on, '2', 1);
    count(on, '1', 3);
    on.call('remove', { hole: 'cover/2', to: 'tray:1', spec: m6 });
    count(on, '1', 3);
    expect(turn(on).instead).toBe('count again');
  });

  it('[K2] what stays short is called lost by spec: the ledger takes one of its equals in that tray', () => {
    const on = stripped();
    on.call('remove', { hole: 'cover/2', to: 'tray:1', spec: m8 });
    const said = { short: { spec: { kind: 'bolt', head: 'hex 13' }, tray: '1' }, reaches: true, where: 'tray 1' };
    on.call('lose-fastener', said);
    expect(on.open('lost')).toEqual([`lost fastener:${on.own('cover/2')}`]);
    expect(on.tray('1')).toBe(1);
    expect(on.refused('lose-fastener', said)).toBe('L9 no-such-fastener');
    typed(on, 'short bolt hex 10 in 1');
    expect(on.open('lost')).toHaveLength(2);
    expect(on.tray('1')).toBe(0);
  });

  it('[K2] what is over is a stray, and with it the count agrees', () => {
    const on = stripped();
    for (const _ of [1, 2]) count(on, '1', 2);
    on.call('find-stray', { spec: m8, tray: '1' });
    count(on, '1', 2);
    expect(on.open('tray-uncounted')).toEqual(['tray-uncounted tray:2']);
    expect(on.open('stray')).toHaveLength(1);
  });

  it('[K2 K3] a stray called in the wrong tray is said to lie in the other, and the count there agrees', () => {
    const on = stripped();
    const stray = `s${on.call('find-stray', { spec: m8, tray: '2' })}.1`;
    for (const _ of [1, 2]) count(on, '1', 2);
    expect(on.open('tray-uncounted')).toContain('tray-uncounted tray:1');
    expect(on.refused('move-stray', { stray, to: 'scrap' })).toBe('K3 not-a-tray-to-lie-in');
    expect(on.refused('move-stray', { stray, to: 'tray:2' })).toBe('K3 not-a-tray-to-lie-in');
    on.call('move-stray', { stray, to: 'tray:1' });
    expect(on.open('tray-uncounted')).toEqual(['tray-uncounted tray:2']);
    expect(on.tray('1')).toBe(2);
  });

  it('[K2] over and short in one tray at once come to nothing by calls alone', () => {
    const on = bench();
    on.call('remove', { hole: 'cover/1', to: 'tray:1', spec: m6 });
    on.count('cover', 1);
    count(on, '1', 1);
    on.call('lose-fastener', { short: { spec: m6, tray: '1' }, reaches: false, where: 'floor' });
    const n = on.call('find-stray', { spec: m6, tray: '1' });
    on.call('give-stray', { stray: `s${n}.1`, hole: 'cover/1' });
    on.tight('cover/1');
    on.call('rule-out-loss', { lost: on.open('lost')[0]?.split(':')[1], who: 'Ann', because: 'it was this one' });
    on.countTrays();
    on.call('tools-out');
    expect(on.open()).toEqual([]);
  });
});

describe('a stray', () => {
  const found = () => {
    const on = bench();
    on.call('find-empty', { hole: 'cover/1' });
    on.call('close-finding', { finding: `d${on.lines().length}.1`, how: 'accepted', who: 'Ann', because: 'not ours' });
    on.count('cover', 1);
    const stray = `s${on.call('find-stray', { spec: m6, tray: '1' })}.1`;
    expect(on.open('stray')).toEqual([`stray stray:${stray}`]);
    expect(on.no('release', { who: 'Ann' }).places).toContain(`stray:${stray}`);
    return { on, stray };
  };

  it('[K3] blocks release until it is given to a hole', () => {
    const { on, stray } = found();
    on.call('give-stray', { stray, hole: 'cover/1' });
    expect(on.open('stray')).toEqual([]);
    expect(on.level('cover/1')).toBe('on');
    expect(on.tray('1')).toBe(0);
    expect(on.refused('give-stray', { stray, hole: 'cover/1' })).toBe('K3 no-such-stray');
  });

  it('[K3] which must be empty, want it, and be of an area whose holes were counted', () => {
    const { on, stray } = found();
    on.off('lid/1', m8);
    expect(on.refused('give-stray', { stray, hole: 'lid/1' })).toBe('K4 holes-not-counted');
    on.count('lid', 1);
    expect(on.refused('give-stray', { stray, hole: 'lid/1' })).toBe('L5 wants-another');
    on.back('lid/1');
    expect(on.refused('give-stray', { stray, hole: 'lid/1' })).toBe('L1 hole-is-taken');
  });

  it('[K3] or scrapped', () => {
    const { on, stray } = found();
    on.call('scrap-stray', { stray });
    expect(on.open('stray')).toEqual([]);
    expect(stateOf(on.ledger(), 'stray', stray)?.place).toBe('scrap');
    expect(on.tray('1')).toBe(0);
  });

  it('[K3] or stated by name to be no part of this vehicle', () => {
    const { on, stray } = found();
    expect(on.refused('disown-stray', { stray, because: 'a wood screw' })).toBe('L1 badly-said');
    expect(on.refused('disown-stray', { stray, who: 'Ann' })).toBe('L1 badly-said');
    on.call('disown-stray', { stray, who: 'Ann', because: 'a wood screw' });
    expect(on.open('stray')).toEqual([]);
    expect(stateOf(on.ledger(), 'stray', stray)?.settled).toMatchObject({ who: 'Ann', because: 'a wood screw' });
  });
});

describe('the holes of an area', () => {
  it('[K4] without a plan are counted by eye once, before its first fastener goes back', () => {
    const on = bench();
    for (const n of [1, 2]) on.off(`cover/${n}`, m6);
    expect(on.no('fit', { hole: 'cover/1' }, { because: 'sure' })).toMatchObject({
      rule: 'K4',
      kind: 'gate',
      places: ['area:cover'],
    });
    on.count('cover', 2);
    on.back('cover/1');
    on.back('cover/2');
    expect(on.open('holes-not-counted')).toEqual([]);
  });

  it('[K4] a bolt never called off shows here, and nowhere else', () => {
    const on = bench();
    for (const n of [1, 2]) on.off(`cover/${n}`, m6);
    on.count('cover', 3);
    for (const n of [1, 2]) on.back(`cover/${n}`);
    for (const n of [1, 2]) on.tight(`cover/${n}`);
    on.countTrays();
    on.call('tools-out');
    expect(on.open()).toEqual(['holes-not-counted area:cover']);
    expect(on.because('holes-not-counted', 'area:cover')).toBe('3 holes counted by eye, 2 called');
    on.call('find-fastener', { hole: 'cover/3' });
    expect(on.open()).toEqual([]);
  });

  it('[K4] a count that was called shows its one bolt though none was called at all', () => {
    const on = bench();
    on.count('tensioner', 1);
    expect(on.because('holes-not-counted', 'area:tensioner')).toBe('1 hole counted by eye, 0 called');
    on.call('find-fastener', { hole: 'tensioner/1', spec: m8 });
    expect(on.open()).toEqual([]);
  });

  it('[K4] a hole that was only looked at is none that was called', () => {
    const on = bench();
    on.off('cover/1', m6);
    const called = [on.slack('cover/2', m6), on.tight('cover/2')];
    on.call('look-again', { holes: ['cover/2'] });
    on.call('strike', { lines: called });
    on.count('cover', 1);
    expect(on.open('holes-not-counted')).toEqual([]);
  });

  it('[K4] levels of one number are one hole to the eye', () => {
    const on = bench();
    on.off('cover/1', m6);
    on.off('cover/1 washer', { kind: 'washer' });
    on.count('cover', 1);
    expect(on.open('holes-not-counted')).toEqual([]);
  });

  it('[K4] a planned area is not counted; a working fastener goes in uncounted', () => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'cover', planned: true });
    on.off('cover/1', m6);
    on.back('cover/1');
    on.off('nose/1', m8);
    on.back('nose/1', { working: true });
    expect(on.open('holes-not-counted')).toEqual(['holes-not-counted area:nose']);
  });

  it('[K4] where a plan knows the number, one never called shows once a fastener of it came off, slack-only too', () => {
    const on = bench();
    on.declare(
      { kind: 'area-declared', area: 'cover', planned: true },
      { kind: 'hole-declared', hole: 'cover/1', wants: m6 },
      { kind: 'hole-declared', hole: 'cover/2', wants: m6 },
      { kind: 'hole-declared', hole: 'cover/3', wants: m6, slackOnly: true },
    );
    on.slack('cover/1');
    expect(on.open('holes-not-counted')).toEqual([]);
    on.off('cover/1');
    expect(on.open('holes-not-counted')).toEqual(['holes-not-counted hole:cover/2', 'holes-not-counted hole:cover/3']);
    expect(on.next('holes-not-counted', 'hole:cover/2')).toEqual({ verb: 'find-fastener', hole: 'cover/2' });
    on.call('find-fastener', { hole: 'cover/2' });
    on.call('find-empty', { hole: 'cover/3' });
    expect(on.open('holes-not-counted')).toEqual([]);
  });
  it('[K4 X5] leads to a new one where nothing may go back into a planned hole, and to no count of its holes', () => {
    const on = bench();
    const spent = { ...m6, oneUse: true };
    on.declare(
      { kind: 'area-declared', area: 'caliper', planned: true },
      { kind: 'hole-declared', hole: 'caliper/1', wants: spent },
    );
    on.call('remove', { hole: 'caliper/1', to: 'tray:1', spec: spent });
    expect(on.next('hole-open', 'hole:caliper/1')).toMatchObject({ verb: 'fill-box', name: 'new for caliper 1' });
  });
});

describe('the scrap pile', () => {
  /** Two bolts, a broken one with its piece, a stray and a new one of the box lie there: six. */
  function pile(): Bench {
    const on = bench();
    on.call('remove', { hole: 'cover/1', to: 'scrap', spec: m6 });
    on.call('remove', { hole: 'cover/2', to: 'tray:1', spec: m6 });
    on.call('move-fastener', { fastener: on.own('cover/2'), to: 'scrap' });
    on.call('find-fastener', { hole: 'cover/3', spec: m6 });
    on.call('break', { hole: 'cover/3', headTo: 'scrap', pieces: ['found'] });
    on.call('find-stray', { spec: m8, tray: '1' });
    on.call('scrap-stray', { stray: `s${on.lines().length}.1` });
    on.call('fill-box', { name: 'M6x25', spec: m6, quantity: 2 });
    on.call('move-box', { name: 'M6x25', quantity: 1, to: 'scrap' });
    on.call('fill-box', { name: 'old gasket', replaces: 'gasket' });
    on.call('move-box', { name: 'old gasket', to: 'scrap' });
    return on;
  }
  const differs = (on: Bench) => on.open('scrap-differs');

  it('[K2] is asked for by nobody, and counted it holds fasteners, pieces, strays and new ones', () => {
    const on = pile();
    expect(differs(on)).toEqual([]);
    scrapCounted(on, 6);
    expect(differs(on)).toEqual([]);
  });

  it('[K2] that differs stays open until a count agrees, whatever comes onto it meanwhile', () => {
    const on = pile();
    scrapCounted(on, 7);
    expect(differs(on)).toEqual(['scrap-differs scrap']);
    on.call('remove', { hole: 'guard/1', to: 'scrap', spec: m8 });
    expect(differs(on)).toEqual(['scrap-differs scrap']);
    expect(on.next('scrap-differs', 'scrap')).toEqual({ verb: 'count-scrap', count: 7 });
    scrapCounted(on, 7);
    expect(differs(on)).toEqual([]);
    on.call('remove', { hole: 'guard/2', to: 'scrap', spec: m8 });
    expect(differs(on)).toEqual([]);
    on.call('move-fastener', { fastener: on.own('guard/2'), to: 'tray:1' });
    scrapCounted(on, 7);
    expect(differs(on)).toEqual([]);
  });

  it('[K2] struck calls are not counted on it, and the count is held to what then stands', () => {
    const on = pile();
    const n = on.call('remove', { hole: 'guard/1', to: 'scrap', spec: m8 });
    scrapCounted(on, 7);
    expect(differs(on)).toEqual([]);
    on.call('strike', { lines: [n] });
    expect(differs(on)).toEqual(['scrap-differs scrap']);
  });

  it('[K1] is counted before the figure of the ledger is told, and the next call tells none', () => {
    const on = pile();
    expect(on.decided('count-scrap', { count: 6 }).warnings ?? []).toEqual([]);
    expect(on.decided('count-scrap', { count: 5 }).warnings).toEqual([
      '6 should lie on the scrap pile by the ledger: count again',
    ]);
    scrapCounted(on, 5);
    const rows = leavingRows(desk(on));
    const row = Array.from({ length: rows.length }, (_, i) => rows.at(i)).find(
      (one) => one?.key === 'scrap-differs scrap',
    );
    expect(row).toMatchObject({ text: 'scrap pile: counted by eye, it differs from the ledger', end: 'scrap pile …' });
    expect(typed(on, 'count scrap pile is 6')).toBe(typed(on, 'scrap pile 6') - 1);
    expect(differs(on)).toEqual([]);
  });
});

describe('the parts box', () => {
  it('[K2] counted by eye, differs until a count agrees; what was never bought can not be counted', () => {
    const on = bench();
    on.call('fill-box', { name: 'M6x25', spec: m6, quantity: 3 });
    expect(on.decided('count-box', { name: 'M6x25', count: 2 }).warnings).toEqual([
      '3 of M6x25 should be left in the parts box by the ledger: count again',
    ]);
    on.call('count-box', { name: 'M6x25', count: 2 });
    on.call('fill-box', { name: 'M6x25', spec: m6, quantity: 1 });
    expect(on.open('box-differs')).toEqual(['box-differs box:M6x25']);
    on.call('count-box', { name: 'M6x25', count: 4 });
    expect(on.open('box-differs')).toEqual([]);
    expect(on.refused('count-box', { name: 'M8', count: 0 })).toBe('L12 not-in-the-box');
  });
});
