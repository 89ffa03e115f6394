// F2: what the program suspects of the fasteners called, when it speaks, and how it is answered.
import { describe, expect, it } from 'vitest';
import { suspectedAt } from '../../src/job/suspicions.ts';
import { playLines, type ScriptLine, scriptLines } from '../jobs/lines.ts';
import { type Bench, bench, m6, m8, stretch } from './bench.ts';

const said = (on: Bench, hole: string): string[] =>
  (suspectedAt(on.ledger(), hole)?.suspicions ?? []).map(({ line }) => line);
const mount = { kind: 'bolt', head: 'hex 14', thread: 'M10x1.25', lengthMm: 60, class: '10.9' } as const;
const wrong = { ...mount, head: 'hex 17', lengthMm: 50, class: '8.8' } as const;

/** Two bolts of a mount are called, then a third that is none of theirs. */
function withWrongThird(): Bench {
  const on = bench();
  on.off('mount/1', mount);
  on.off('mount/2', mount);
  on.off('mount/3', wrong);
  return on;
}

describe('a suspicion', () => {
  it('[F2] is raised from the neighbours in the area, by head and class, with the length beside', () => {
    const on = withWrongThird();
    expect(said(on, 'mount/3')).toEqual([
      'class 8.8, not 10.9 as its neighbours; 10 mm shorter',
      'hex 17, not hex 14 as its neighbours',
    ]);
    expect(on.open('suspicion')).toEqual(['suspicion hole:mount/3']);
    expect(on.because('suspicion', 'hole:mount/3')).toMatch(/^suspected: class 8.8, not 10.9.*; hex 17, not hex 14/);
  });

  it('[F2] of the first one is raised once its neighbours are called', () => {
    const on = bench();
    on.off('mount/1', wrong);
    on.off('mount/2', mount);
    expect(on.open('suspicion')).toEqual([]);
    on.off('mount/3', mount);
    expect(on.open('suspicion')).toEqual(['suspicion hole:mount/1']);
  });

  it('[F2] is raised from the plan, as called off, slackened or only seen', () => {
    const on = bench();
    for (const number of [1, 2, 3]) on.declare({ kind: 'hole-declared', hole: `cover/${number}`, wants: m8 });
    const coarser = { ...m8, thread: 'M8x1' };
    on.off('cover/1', coarser);
    on.slack('cover/2', coarser);
    on.call('find-fastener', { hole: 'cover/3', spec: coarser });
    for (const number of [1, 2, 3]) {
      expect(said(on, `cover/${number}`).join()).toMatch(/M8x1, not M8 as planned: M8x1 in M8 does not start by hand/);
    }
  });

  it('[P2] is raised from what a plan taken later says of a hole called before, which keeps its spec', () => {
    const on = bench();
    on.off('cover/1', m8);
    on.declare({ kind: 'hole-declared', hole: 'cover/1', planSays: { ...m8, thread: 'M10', head: 'hex 16' } });
    expect(said(on, 'cover/1')[0]).toMatch(/M8, not M10 as planned/);
    on.call('state-wants', { hole: 'cover/1', spec: m8, because: 'by the maker' });
    expect(on.open('suspicion')).toEqual([]);
  });

  it.each([
    ['a head that goes with no such thread', { ...m8, head: 'hex 16' }, /hex 16 goes on M10/],
    ['a thread there is not', { ...m8, thread: 'M8x1.35' }, /there is no M8x1.35/],
  ])('[F2] is raised from %s', (_, spec, line) => {
    const on = bench();
    on.off('cover/1', spec);
    expect(said(on, 'cover/1').join()).toMatch(line);
  });

  it('[F2] is raised from an inch bolt among metric ones, with what the hand would feel', () => {
    const on = bench();
    for (const number of [1, 2, 3]) on.off(`cover/${number}`, m8);
    on.off('cover/4', { ...m8, thread: '5/16-18' });
    expect(said(on, 'cover/4')).toEqual([
      '5/16-18, not M8 as its neighbours: 5/16-18 in M8 binds within the first turn (0.6 free)',
    ]);
  });

  it.each<[string, Bench]>([
    ['length alone', called([m6, m6, { ...m6, lengthMm: 55 }])],
    ['one thread written two ways', called([m8, m8, { ...m8, thread: 'M8x1.25' }])],
    ['another kind', called([m8, m8, { kind: 'nut', head: 'hex 10', thread: 'M6' }])],
    [
      'a plug',
      called([
        { kind: 'plug', head: 'hex 17' },
        { kind: 'plug', head: 'hex 17' },
        { kind: 'plug', head: 'hex 8' },
      ]),
    ],
    ['the head of a wheel nut', called([{ kind: 'nut', head: 'hex 21', thread: 'M12x1.5' }], { role: 'wheel' })],
    ['the head of a crank bolt', called([{ ...stretch, head: 'hex 24' }], {}, { sprocketBolt: true })],
    ['what nobody knows', called([m8, m8, {}])],
  ])('[F2] is not raised from %s', (_, on) => expect(on.open('suspicion')).toEqual([]));

  it('[F2] is raised from the thread of a wheel nut all the same', () => {
    const nut = { kind: 'nut', head: 'hex 21', thread: 'M12x1.5' };
    const on = called([nut, nut, nut, { ...nut, thread: 'M12x1.25' }], { role: 'wheel' });
    expect(said(on, 'cover/4').join()).toMatch(/M12x1.25, not M12x1.5 as its neighbours/);
  });

  it('[F2] stops no call, is written nowhere, and goes with the line it came from', () => {
    const on = withWrongThird();
    expect(JSON.stringify(on.lines())).not.toMatch(/suspic/);
    const third = on.lines().length;
    on.count('mount', 3);
    on.back('mount/3');
    on.tight('mount/3');
    on.call('strike', { lines: [third, third + 2, third + 3] });
    expect(on.open('suspicion')).toEqual([]);
  });

  it('[F2] is confirmed by one call: a finding on the fastener, and the hole wants none like it', () => {
    const on = withWrongThird();
    const n = on.call('confirm-suspicion', { hole: 'mount/3' });
    expect(on.open('suspicion')).toEqual([]);
    expect(on.entriesOf(n)).toEqual([
      {
        kind: 'finding-made',
        finding: `d${n}.1`,
        at: 'hole:mount/3',
        what: 'class 8.8, not 10.9 as its neighbours; 10 mm shorter; hex 17, not hex 14 as its neighbours',
        when: 'on arrival',
        fastener: on.own('mount/3'),
        wrongOne: true,
      },
    ]);
    expect(on.openAt('hole:mount/3')).toContain('hole-open');
    expect(on.refused('close-finding', { finding: `d${n}.1`, how: 'put right' })).toBe('F3 nothing-put-right-yet');
    expect(on.refused('confirm-suspicion', { hole: 'mount/3' })).toBe('F2 nothing-suspected');
  });

  it('[F2] answered by a finding made at once is not raised, and the wrong one is no neighbour to go by', () => {
    const on = bench();
    for (const number of [1, 2]) on.off(`mount/${number}`, wrong, { wrong: 'odd' });
    expect(on.open('suspicion')).toEqual([]);
    on.off('mount/3', mount);
    expect(on.open('suspicion')).toEqual([]);
  });

  it('[F2] is dismissed by one call, with another reason where one is typed, and printed', () => {
    const on = withWrongThird();
    const n = on.call('dismiss-suspicion', { hole: 'mount/3' });
    expect(on.open('suspicion')).toEqual([]);
    expect(on.entriesOf(n)).toMatchObject([{ kind: 'suspicion-dismissed', because: 'meant so', spec: wrong }]);
    expect(on.refused('dismiss-suspicion', { hole: 'mount/3' })).toBe('F2 nothing-suspected');
    on.call('strike', { lines: [n] });
    expect(on.open('suspicion')).toEqual(['suspicion hole:mount/3']);
    const typed = on.call('dismiss-suspicion', { hole: 'mount/3', because: 'repaired with it in 2019' });
    expect(on.entriesOf(typed)).toMatchObject([{ because: 'repaired with it in 2019' }]);
  });

  it('[F2] dismissed speaks again once the fastener, or what is said of its hole, is known otherwise', () => {
    const on = withWrongThird();
    on.call('dismiss-suspicion', { hole: 'mount/3' });
    on.call('correct-spec', { fastener: on.own('mount/3'), spec: { ...wrong, head: 'hex 16' }, because: 'gauged' });
    expect(on.open('suspicion')).toEqual(['suspicion hole:mount/3']);
    on.call('dismiss-suspicion', { hole: 'mount/3' });
    on.declare({ kind: 'hole-declared', hole: 'mount/3', planSays: mount });
    expect(on.open('suspicion')).toEqual(['suspicion hole:mount/3']);
    on.call('dismiss-suspicion', { hole: 'mount/3' });
    expect(on.open('suspicion')).toEqual([]);
  });

  it('[F2] of a fastener nobody called is a line that does not fit', () => {
    const on = withWrongThird();
    on.forged({ kind: 'suspicion-dismissed', hole: 'mount/3', fastener: 'f1.1', spec: {}, because: 'so' });
    expect(on.open('misfit')).toHaveLength(1);
  });
});

/** Bolts called off one after the other, of an area and holes of which so much is said. */
function called(specs: readonly object[], area: object = {}, hole: object = {}): Bench {
  const on = bench();
  on.declare(
    { kind: 'area-declared', area: 'cover', ...area },
    ...specs.map((_, at) => ({ kind: 'hole-declared', hole: `cover/${at + 1}`, ...hole })),
  );
  for (const [at, spec] of specs.entries()) on.off(`cover/${at + 1}`, spec);
  return on;
}

describe('two threads', () => {
  it('[L5] are one where diameter and pitch are: M8 goes where M8x1.25 is wanted', () => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'cover', planned: true });
    on.declare({ kind: 'hole-declared', hole: 'cover/1', wants: { ...m8, thread: 'M8x1.25' } });
    on.off('cover/1', m8);
    on.back('cover/1');
    on.tight('cover/1');
    expect(on.openAt('hole:cover/1')).toEqual([]);
    on.call('correct-spec', { fastener: on.in('cover/1'), spec: { ...m8, thread: 'M8x1' }, because: 'gauged' });
    expect(on.because('hole-open', 'hole:cover/1')).toBe('wants another thread');
  });
});

describe('the reference job', () => {
  const playedTo = (name: string, change: (line: ScriptLine) => ScriptLine) => {
    const script = scriptLines(name).map(change);
    const { ledger } = playLines(
      script.slice(
        0,
        script.findIndex(({ text }) => text.startsWith('repair')),
      ),
    );
    return [...ledger.names.hole.all].filter((hole) => suspectedAt(ledger, hole));
  };
  const asCalled = (line: ScriptLine) => line;
  /** The wrong bolt is called off like any other, and said to be none. */
  const unseen = (line: ScriptLine): ScriptLine => ({ ...line, text: line.text.replace(/^wrong one 3/, 'off 3') });

  it.each(['reference-planned.calls', 'reference-free.calls'])(
    '[F2] speaks of the mount bracket 3 alone: %s',
    (name) => {
      expect(playedTo(name, unseen)).toEqual(['mount bracket/3']);
      expect(playedTo(name, asCalled)).toEqual([]);
    },
  );
});
