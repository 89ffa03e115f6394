// F: what is found wrong, how it is closed, threads repaired, metal cut only over covered works.
import { describe, expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { figureProposed, nextStepWords } from '../../src/job/repair-figures.ts';
import { sheetText } from '../../src/sheet/text.ts';
import { type Bench, bench, m6, readyToLeave } from './bench.ts';

const finding = (on: Bench, id: string) => stateOf(on.ledger(), 'finding', id);
const noted = (on: Bench, at: string, more: object = {}): string =>
  `d${on.call('make-finding', { at, what: 'cracked', ...more })}.1`;

describe('a finding', () => {
  it('[F1] says what and where, when it was found, and how it was closed', () => {
    const on = bench();
    const id = noted(on, 'part:hose', { when: 'on arrival' });
    const other = noted(on, 'area:cover');
    expect(finding(on, id)).toMatchObject({ at: 'part:hose', what: 'cracked', when: 'on arrival' });
    expect(finding(on, other)).toMatchObject({ at: 'area:cover', when: 'during the work' });
    expect(on.refused('make-finding', { at: 'part:hose' })).toBe('L1 badly-said');
    expect(on.refused('make-finding', { what: 'cracked' })).toBe('L1 badly-said');
    const n = on.call('close-finding', { finding: id, how: 'put right', because: 'replaced' });
    expect(finding(on, id)?.closed).toEqual({ n, how: 'put right', because: 'replaced' });
    expect(on.refused('close-finding', { finding: id, how: 'put right' })).toBe('F3 no-open-finding');
  });

  it.each([
    ['empty on arrival', 'find-empty', { hole: 'cover/1' }, 'on arrival'],
    ['the odd one', 'remove', { hole: 'cover/1', to: 'tray:1', wrong: 'odd' }, 'on arrival'],
    [
      'damaged',
      'remove',
      { hole: 'cover/1', to: 'tray:1', wrong: 'damaged', when: 'during the work' },
      'during the work',
    ],
    ['broken', 'break', { hole: 'cover/1', headTo: 'tray:1', pieces: ['hole'] }, 'during the work'],
  ])('[F1] one that comes with another call says it all too: %s', (_, verb, said, when) => {
    const on = bench();
    const n = on.call(verb, said);
    expect(finding(on, `d${n}.1`)).toMatchObject({ at: 'hole:cover/1', when, what: expect.stringMatching(/\w/) });
  });

  it('[F3] closes by put right: cleaned, replaced, thread repaired', () => {
    const on = bench();
    for (const because of ['cleaned', 'replaced', 'thread repaired']) {
      const id = noted(on, 'area:cover');
      on.call('close-finding', { finding: id, how: 'put right', because });
      expect(finding(on, id)?.closed?.because).toBe(because);
    }
    expect(on.open('finding-open')).toEqual([]);
    expect(on.refused('close-finding', { finding: noted(on, 'vehicle'), how: 'forgotten' })).toBe('L1 badly-said');
  });

  it.each([
    ['the odd one', 'remove', { hole: 'cover/1', to: 'tray:1', wrong: 'odd' }],
    ['damaged', 'remove', { hole: 'cover/1', to: 'tray:1', wrong: 'damaged' }],
    ['empty on arrival', 'find-empty', { hole: 'cover/1' }],
  ])('[F3] of a fastener it is put right by another one in its hole, not before: %s', (_, verb, said) => {
    const on = bench();
    const id = `d${on.call(verb, said)}.1`;
    const right = { finding: id, how: 'put right' };
    expect(on.no('close-finding', right)).toMatchObject({ code: 'nothing-put-right-yet', places: ['hole:cover/1'] });
    on.count('cover', 1);
    on.call('fill-box', { name: 'new', spec: m6 });
    on.back('cover/1', { box: 'new' });
    on.call('close-finding', right);
    expect(on.open('finding-open')).toEqual([]);
  });

  it('[F3] the same one back in it puts nothing right; left empty by statement, it does', () => {
    const on = bench();
    const odd = `d${on.off('cover/1', m6, { wrong: 'odd' })}.1`;
    on.count('cover', 1);
    on.back('cover/1', { fastener: on.own('cover/1'), substitute: 'until the right one comes' });
    expect(on.no('close-finding', { finding: odd, how: 'put right' }).because).toBe('the same fastener is still in it');
    const empty = `d${on.call('find-empty', { hole: 'lid/1' })}.1`;
    on.call('leave-empty', { hole: 'lid/1', who: 'Ann', because: 'no thread behind it' });
    on.call('close-finding', { finding: empty, how: 'put right' });
  });

  it.each(['accepted', 'declined'])('[F3] or by %s, with who and why, and not without', (how) => {
    const on = bench();
    const id = noted(on, 'area:cover');
    for (const said of [{}, { who: 'Ann' }, { because: 'looks only' }]) {
      expect(on.refused('close-finding', { finding: id, how, ...said })).toBe('F3 who-and-why');
    }
    const n = on.call('close-finding', { finding: id, how, who: 'Ann', because: 'looks only' });
    expect(finding(on, id)?.closed).toEqual({ n, how, who: 'Ann', because: 'looks only' });
  });

  it('[F3] declined by the owner keeps when it was asked and what was said', () => {
    const on = bench();
    const id = noted(on, 'area:cover');
    const asked = on.call('tell-owner', { finding: id, said: 'not this year' });
    on.call('close-finding', { finding: id, how: 'declined', who: 'owner', because: 'not this year' });
    expect(finding(on, id)?.told).toBe('not this year');
    expect(on.lines()[asked - 1]?.atMs).toBeGreaterThan(0);
    expect(on.open('finding-open')).toEqual([]);
  });

  it('[F3] the owner is told of what was put right already as well, and of nothing nobody found', () => {
    const on = bench();
    const id = noted(on, 'area:cover');
    on.call('close-finding', { finding: id, how: 'put right', because: 'replaced' });
    on.call('tell-owner', { finding: id, said: 'go on' });
    expect(finding(on, id)).toMatchObject({ told: 'go on', closed: { how: 'put right' } });
    expect(on.refused('tell-owner', { finding: 'd99.1' })).toBe('F3 no-such-finding');
  });

  it.each([
    ['the area', 'area:wheel'],
    ['a hole of it', 'hole:wheel/1'],
    ['a hole critical by itself', 'hole:cover/9'],
    ['a part it holds', 'part:rim'],
    ['a connection of it', 'connection:sensor'],
    ['a face of it', 'face:hub'],
    ['a drive it belongs to', 'drive:belt'],
  ])('[F3] on a critical area "accepted" also needs the owner told: %s', (_, at) => {
    const on = bench();
    on.declare(
      { kind: 'area-declared', area: 'wheel', critical: true },
      { kind: 'hole-declared', hole: 'cover/9', critical: true },
      { kind: 'part-declared', part: 'rim', heldBy: ['wheel/1'] },
      { kind: 'connection-declared', connection: 'sensor', area: 'wheel' },
      { kind: 'face-declared', face: 'hub', area: 'wheel', pressedBy: ['wheel/1'], keepsIn: [] },
      {
        kind: 'drive-declared',
        drive: 'belt',
        areas: ['wheel'],
        parts: [],
        marks: [],
        turns: 2,
        tensioner: 'none',
        crankKeyed: true,
      },
    );
    const id = noted(on, at);
    const accepted = { finding: id, how: 'accepted', who: 'Ann', because: 'within wear' };
    expect(on.refused('close-finding', accepted)).toBe('F3 owner-not-told');
    expect(on.refused('close-finding', accepted, { because: 'sure' })).toBe('F3 owner-not-told');
    on.call('tell-owner', { finding: id });
    on.call('close-finding', accepted);
    expect(on.open('finding-open')).toEqual([]);
  });

  it('[F3] elsewhere "accepted" needs no owner', () => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'wheel', critical: true });
    for (const at of ['area:cover', 'hole:cover/1', 'part:lid', 'vehicle']) {
      on.call('close-finding', { finding: noted(on, at), how: 'accepted', who: 'Ann', because: 'looks only' });
    }
    expect(on.open('finding-open')).toEqual([]);
  });

  it('[F4] open it blocks release; accepted and declined ones are printed on the sheet', () => {
    const on = bench();
    const [kept, refused, right] = [noted(on, 'part:hose'), noted(on, 'part:lid'), noted(on, 'part:grommet')];
    readyToLeave(on);
    on.call('close-finding', { finding: kept, how: 'accepted', who: 'Ann', because: 'paint only' });
    on.call('close-finding', { finding: refused, how: 'declined', who: 'owner', because: 'next year' });
    expect(on.open()).toEqual([`finding-open finding:${right}`]);
    expect(on.no('release', { who: 'Ann' }).places).toEqual([`finding:${right}`]);
    on.call('close-finding', { finding: right, how: 'put right' });
    on.call('release', { who: 'Ann' });
    const sheet = sheetText(on.ledger(), { now: on.now() }).replace(/\s+/g, ' ');
    expect(sheet).toMatch(/ACCEPTED AS IT IS.*part hose: cracked.*paint only/);
    expect(sheet).toMatch(/DECLINED BY THE OWNER.*part lid: cracked.*next year/);
  });
});

describe('a thread', () => {
  const step = (on: Bench, name: string, more: object = {}) =>
    on.call('repair-thread', { hole: 'cover/7', step: name, ...more });
  const stripped = () => {
    const on = bench();
    on.off('cover/7', m6);
    return { on, id: noted(on, 'hole:cover/7') };
  };

  it('[F5] is repaired in a sequence with a record: drill size, tap, insert, length, cleaned, tried by hand', () => {
    const { on, id } = stripped();
    step(on, 'depth', { millimetres: 24 });
    step(on, 'drilled', { millimetres: 6.3 });
    step(on, 'tapped', { words: 'insert tap' });
    step(on, 'cleaned');
    step(on, 'insert', { millimetres: 12, words: 'M6' });
    expect(on.no('close-finding', { finding: id, how: 'put right' })).toMatchObject({
      rule: 'F5',
      code: 'repair-not-complete',
      because: expect.stringContaining('tried'),
    });
    step(on, 'tried');
    expect(on.hole('cover/7')?.repair.map(({ n: _, ...one }) => one)).toEqual([
      { step: 'depth', millimetres: 24 },
      { step: 'drilled', millimetres: 6.3 },
      { step: 'tapped', words: 'insert tap' },
      { step: 'cleaned' },
      { step: 'insert', millimetres: 12, words: 'M6' },
      { step: 'tried' },
    ]);
    on.call('close-finding', { finding: id, how: 'put right' });
    expect(on.open('finding-open')).toEqual([]);
  });

  it('[F5] the depth there is in the boss is asked first, in millimetres', () => {
    const { on } = stripped();
    for (const name of ['drilled', 'tapped', 'cleaned', 'insert', 'tried']) {
      expect(on.refused('repair-thread', { hole: 'cover/7', step: name })).toBe('F5 depth-not-known');
    }
    expect(on.refused('repair-thread', { hole: 'cover/7', step: 'depth' })).toBe('F5 depth-not-known');
    step(on, 'depth', { millimetres: 15 });
    for (const name of ['drilled', 'tapped', 'cleaned']) step(on, name);
    // An insert of 12 mm in M6 wants 12 + 4 pitches = 16 mm even with a bottoming tap (ASME B18.29.2M-2005, note).
    for (const millimetres of [12, 16]) {
      expect(on.refused('repair-thread', { hole: 'cover/7', step: 'insert', millimetres })).toBe(
        'F5 deeper-than-the-boss',
      );
    }
    step(on, 'insert', { millimetres: 11 });
  });

  it('[F5] where it is not known, no figure but the depth stands against an insert', () => {
    const on = bench();
    on.off('cover/7', { kind: 'bolt' });
    expect(beside(on, 'depth', 10)).toEqual([]);
    step(on, 'depth', { millimetres: 10 });
    for (const name of ['drilled', 'tapped', 'cleaned']) step(on, name);
    const insert = { hole: 'cover/7', step: 'insert', millimetres: 11 };
    expect(on.no('repair-thread', insert).because).toBe('an insert of 11 mm does not go into 10 mm');
    step(on, 'insert', { millimetres: 10 });
  });

  /** What is said beside a step. */
  const beside = (on: Bench, name: string, millimetres: number): readonly string[] =>
    on.decided('repair-thread', { hole: 'cover/7', step: name, millimetres }).warnings ?? [];

  it('[F5] told its depth, says what to drill and how deep, and how long an insert', () => {
    const { on } = stripped();
    expect(beside(on, 'depth', 24)).toEqual([
      'drill 6.22 to 6.41 mm for an insert of M6',
      'insert 12 mm long (2 d): drill 21 mm deep of the 24 there are: set the stop collar',
    ]);
    expect(beside(on, 'depth', 16)[1]).toMatch(
      /drill 16 mm deep of the 16 there are, bottoming tap: set the stop collar/,
    );
    expect(beside(on, 'depth', 14)[1]).toMatch(/wants 16 mm with a bottoming tap; there are 14 mm: a shorter one/);
    // Printed worked value: M8x1.25 with an insert of 12.0 mm is drilled 23.5 mm deep; 16 mm of insert 27.5.
    const other = bench();
    other.off('cover/7', { ...m6, thread: 'M8', class: '10.9' });
    expect(beside(other, 'depth', 40)).toEqual([
      'drill 8.27 to 8.48 mm for an insert of M8',
      'insert 20 mm long (2.5 d): drill 31.5 mm deep of the 40 there are: set the stop collar',
    ]);
  });

  it('[F5] drilled for the bolt and not for the insert, it is called wrong', () => {
    const { on } = stripped();
    step(on, 'depth', { millimetres: 24 });
    expect(beside(on, 'drilled', 5)).toEqual(['5 mm is the drill for M6 itself; an insert wants 6.22 to 6.41 mm']);
    expect(beside(on, 'drilled', 6.3)).toEqual([]);
    expect(beside(on, 'drilled', 6.8).join()).toMatch(/too large/);
    step(on, 'drilled', { millimetres: 6.3 });
    step(on, 'tapped');
    step(on, 'cleaned');
    expect(beside(on, 'insert', 9).join()).toMatch(/9 mm of insert is less than .* 12 mm long \(2 d\)/);
    expect(beside(on, 'insert', 12)).toEqual([]);
  });

  it('[F5] says at each step which comes next, with its figure', () => {
    const { on } = stripped();
    const next = () => nextStepWords(on.ledger(), 'cover/7');
    expect(next()).toBeUndefined();
    step(on, 'depth', { millimetres: 24 });
    expect(next()).toBe('next drill 6.22 to 6.41 mm for an insert of M6');
    for (const [name, said] of [
      ['drilled', 'next tapped'],
      ['tapped', 'next cleaned'],
      ['cleaned', 'next insert, 12 mm long (2 d)'],
      ['insert', 'next tried'],
      ['tried', undefined],
    ] as const) {
      step(on, name);
      expect(next()).toBe(said);
    }
  });

  it('[F5] proposes the longest insert that goes into the depth there is', () => {
    const { on } = stripped();
    const proposed = () => figureProposed(on.ledger(), 'cover/7', 'insert');
    step(on, 'depth', { millimetres: 10 });
    for (const name of ['drilled', 'tapped', 'cleaned']) step(on, name);
    expect(proposed()).toBe(6);
    expect(nextStepWords(on.ledger(), 'cover/7')).toBe(
      'next insert, 6 mm long (1 d), the longest that goes into 10 mm',
    );
    step(on, 'insert', { millimetres: 6 });
    step(on, 'depth', { millimetres: 8 });
    for (const name of ['drilled', 'tapped', 'cleaned']) step(on, name);
    expect(proposed()).toBeUndefined();
    expect(nextStepWords(on.ledger(), 'cover/7')).toBe('next insert, no insert of M6 goes into 8 mm');
  });

  it('[F5] one step after the other, in an empty hole', () => {
    const { on } = stripped();
    step(on, 'depth', { millimetres: 24 });
    expect(on.no('repair-thread', { hole: 'cover/7', step: 'insert' })).toMatchObject({
      code: 'step-out-of-turn',
      because: 'drilled comes before insert',
    });
    on.count('cover', 1);
    on.back('cover/7');
    expect(on.refused('repair-thread', { hole: 'cover/7', step: 'drilled' })).toBe('F5 hole-is-taken');
  });

  it('[F5] a new depth begins another repair: nothing of the first counts for it', () => {
    const { on, id } = stripped();
    step(on, 'depth', { millimetres: 24 });
    for (const name of ['drilled', 'tapped', 'cleaned', 'insert', 'tried']) step(on, name);
    step(on, 'depth', { millimetres: 20 });
    expect(on.refused('repair-thread', { hole: 'cover/7', step: 'insert' })).toBe('F5 step-out-of-turn');
    expect(on.refused('close-finding', { finding: id, how: 'put right' })).toBe('F5 repair-not-complete');
    expect(on.hole('cover/7')?.repair).toHaveLength(7);
  });

  it('[F5] chased is one call and no repair', () => {
    const { on, id } = stripped();
    const n = on.call('chase-thread', { hole: 'cover/7' });
    expect(on.entriesOf(n)).toEqual([{ kind: 'thread-chased', hole: 'cover/7' }]);
    expect(on.hole('cover/7')?.repair).toEqual([]);
    on.call('close-finding', { finding: id, how: 'put right' });
    on.count('cover', 1);
    on.back('cover/7');
    expect(on.refused('chase-thread', { hole: 'cover/7' })).toBe('F5 hole-is-taken');
  });

  it('[F5] chased in a hole nobody touched, the hole is as found', () => {
    const on = bench();
    on.call('chase-thread', { hole: 'cover/3' });
    expect(on.hole('cover/3')).toMatchObject({ touchedAt: 0, changedAt: 0, openedAt: 0 });
    expect(on.openAt('hole:cover/3')).toEqual([]);
  });
});

describe('work that cuts metal', () => {
  const cuts: [string, string, Record<string, unknown>][] = [
    ['chasing', 'chase-thread', { hole: 'bracket/1' }],
    ['drilling', 'repair-thread', { hole: 'bracket/1', step: 'drilled', millimetres: 6.3 }],
  ];
  /** A bracket with a thread to repair, beside a valve cover that must stay clean. */
  const beside = () => {
    const on = bench();
    on.declare(
      { kind: 'area-declared', area: 'valve cover', keepClean: true },
      { kind: 'part-declared', part: 'valve lid', heldBy: ['valve cover/1', 'valve cover/2'] },
    );
    on.off('bracket/1', m6);
    on.call('repair-thread', { hole: 'bracket/1', step: 'depth', millimetres: 20 });
    return on;
  };

  it.each(cuts)(
    '[F6] %s is refused while a hole of an area that must stay clean is off, and not masked',
    (_, verb, said) => {
      const on = beside();
      on.slack('valve cover/1', m6);
      on.call('find-fastener', { hole: 'valve cover/2', spec: m6 });
      expect(on.open('masked')).toEqual([]);
      on.off('valve cover/2');
      const no = on.no(verb, said);
      expect(`${no.rule} ${no.code} ${no.kind} ${no.places}`).toBe('F6 open-works-not-masked gate area:valve cover');
      expect(on.refused(verb, said, { because: 'sure' })).toBe('F6 open-works-not-masked');
      on.call('mask-all');
      on.call(verb, said);
    },
  );

  it.each(cuts)('[F6] %s is refused while a part of it is off', (_, verb, said) => {
    const on = beside();
    for (const hole of ['valve cover/1', 'valve cover/2']) on.slack(hole, m6);
    on.call('remove-part', { part: 'valve lid' });
    expect(on.refused(verb, said)).toBe('F6 open-works-not-masked');
  });

  it('[F6] tapping too; measuring, cleaning, the insert and trying cut nothing', () => {
    const on = beside();
    on.call('repair-thread', { hole: 'bracket/1', step: 'drilled' });
    on.off('valve cover/1', m6);
    const step = (name: string) => ({ hole: 'bracket/1', step: name, ...(name === 'depth' && { millimetres: 20 }) });
    expect(on.refused('repair-thread', step('tapped'))).toBe('F6 open-works-not-masked');
    on.call('mask-all');
    on.call('repair-thread', step('tapped'));
    on.call('unmask-all');
    for (const name of ['cleaned', 'insert', 'tried']) on.call('repair-thread', step(name));
  });

  it('[F6] beside works that are closed, slack or need not stay clean, it is free', () => {
    const on = beside();
    on.slack('valve cover/1', m6);
    on.off('guard/1', m6);
    on.call('chase-thread', { hole: 'bracket/1' });
  });

  it('[F6] "all masked" covers every open area, and none that is opened after', () => {
    const on = beside();
    on.declare({ kind: 'area-declared', area: 'timing cover', keepClean: true });
    expect(on.entriesOf(on.call('mask-all'))).toEqual([{ kind: 'all-masked', areas: ['bracket'] }]);
    on.off('valve cover/1', m6);
    expect(on.refused('chase-thread', { hole: 'bracket/1' })).toBe('F6 open-works-not-masked');
    const n = on.call('mask-all');
    expect(on.entriesOf(n)).toEqual([{ kind: 'all-masked', areas: ['valve cover', 'bracket'] }]);
    on.call('chase-thread', { hole: 'bracket/1' });
    on.off('timing cover/1', m6);
    expect(on.no('chase-thread', { hole: 'bracket/1' }).places).toEqual(['area:timing cover']);
  });

  it('[F6] it ends by "all unmasked, chips out", and is an open point until then', () => {
    const on = beside();
    on.off('valve cover/1', m6);
    expect(on.refused('unmask-all')).toBe('F6 nothing-masked');
    on.call('mask-all');
    expect(on.refused('mask-all')).toBe('F6 nothing-open');
    expect(on.open('masked')).toEqual(['masked area:valve cover', 'masked area:bracket']);
    on.call('unmask-all');
    expect(on.open('masked')).toEqual([]);
    expect(on.refused('chase-thread', { hole: 'bracket/1' })).toBe('F6 open-works-not-masked');
  });
});
