// U: striking and restoring lines, what leans on them, which proofs fall with them, and what was called wrongly put right.
import { describe, expect, it } from 'vitest';
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
