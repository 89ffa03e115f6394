// T: temporaries, connections, parts, the parts box, fluids; starting, moving and driving the car.
import { describe, expect, it } from 'vitest';
import { partVerdicts } from '../../src/job/entries/works.ts';
import { every, stateOf } from '../../src/job/ledger.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import { type Bench, bench, m6, m8, stretch } from './bench.ts';

const behind = (front: string, one: string) =>
  ({ kind: 'behind-declared', front, behind: one, until: 'closed', from: 'plan' }) as const;
const put = (on: Bench, sort: string, at?: string) =>
  on.call('put-in', { temporary: `a ${sort}`, sort, ...(at && { at }) });
const out = (on: Bench, sort: string) => on.call('take-out', { temporary: `a ${sort}` });

/** An area whose one bolt came off and is back, not yet snug. */
function backOn(on: Bench, area: string): void {
  on.off(`${area}/1`, m6);
  on.count(area, 1);
  on.back(`${area}/1`);
}

describe('temporaries', () => {
  it('[T1] each is counted in and out', () => {
    const on = bench();
    put(on, 'pin');
    expect(on.open('temporary-in')).toEqual(['temporary-in temporary:a pin']);
    expect(on.refused('put-in', { temporary: 'a pin' })).toBe('T1 in-already');
    on.call('put-in', { temporary: 'another pin', sort: 'pin' });
    expect(on.open('temporary-in')).toHaveLength(2);
    out(on, 'pin');
    expect(on.refused('take-out', { temporary: 'a pin' })).toBe('T1 not-in');
    expect(on.open('temporary-in')).toEqual(['temporary-in temporary:another pin']);
    expect(on.no('release', { who: 'Ann' }).places).toContain('temporary:another pin');
  });

  it.each(['plug', 'rag', 'mask', 'strap'])('[T1] while it is in, a %s holds its area open', (sort) => {
    const on = bench();
    on.declare(behind('area:lid', 'area:port'));
    for (const area of ['lid', 'port']) backOn(on, area);
    on.tight('port/1');
    put(on, sort, 'area:port');
    expect(on.no('tighten', { hole: 'lid/1' })).toMatchObject({ rule: 'O1', places: ['area:port'] });
    out(on, sort);
    on.tight('lid/1');
  });

  it.each(['plug', 'rag', 'mask'])(
    '[T1] a %s in an area keeps its own fasteners from snug; one in a hole keeps that open',
    (sort) => {
      const on = bench();
      backOn(on, 'port');
      put(on, sort, 'area:port');
      expect(on.no('tighten', { hole: 'port/1', last: false })).toMatchObject({ rule: 'O1', kind: 'order' });
      out(on, sort);
      on.tight('port/1');
      put(on, sort, 'hole:port/1');
      expect(on.because('hole-open', 'hole:port/1')).toBe(`a ${sort} is in it`);
    },
  );

  it('[T1] a strap may stay while the fasteners of its own area are brought up', () => {
    const on = bench();
    backOn(on, 'port');
    put(on, 'strap', 'area:port');
    on.tight('port/1');
    expect(on.open('hole-open')).toEqual([]);
  });

  it.each(['lock', 'bar', 'pin'])('[T1] a %s holds rotation, and first start', (sort) => {
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
    put(on, sort);
    expect(on.refused('turn-crank', { drive: 'belt', quarters: 1 })).toBe('R2 pin-still-in');
    on.call('see-oil-level');
    expect(on.refused('start-engine')).toBe('T6 pin-still-in');
  });

  it('[T1] a working fastener may serve for one, and is out before first start', () => {
    const on = bench();
    on.off('nose/1', stretch);
    on.count('nose', 1);
    on.back('nose/1', { working: true });
    expect(on.openAt('hole:nose/1')).toContain('working-in');
    on.call('see-oil-level');
    on.call('tools-out');
    expect(on.no('start-engine')).toMatchObject({ rule: 'T1', code: 'working-fastener-in', places: ['hole:nose/1'] });
    on.call('remove', { hole: 'nose/1', to: 'scrap' });
    expect(on.openAt('hole:nose/1')).not.toContain('working-in');
  });

  it.each(['jack', 'block'])('[T1] a %s is out before first start and before mounts get their final', (sort) => {
    const on = bench();
    on.declare(
      { kind: 'area-declared', area: 'mount', role: 'mount', planned: true },
      { kind: 'hole-declared', hole: 'mount/4', later: 'on-wheels' },
    );
    on.call('see-oil-level');
    put(on, sort);
    on.slack('mount/4', m8);
    on.snug('mount/4');
    const no = on.no('tighten', { hole: 'mount/4', last: true }, { because: 'sure' });
    expect(`${no.rule} ${no.code} ${no.kind} ${no.places}`).toBe(`T1 jack-still-in gate temporary:a ${sort}`);
    on.call('tools-out');
    expect(on.refused('start-engine')).toBe('T1 jack-still-in');
    out(on, sort);
    on.tight('mount/4');
  });

  it('[T1] the car comes down only when that wheel is snug, and its final is on the ground', () => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'wheel', role: 'wheel', planned: true });
    put(on, 'stand', 'area:wheel');
    for (const hole of ['wheel/1', 'wheel/2']) on.off(hole, m8);
    on.back('wheel/1');
    on.back('wheel/2');
    on.snug('wheel/1');
    expect(on.no('take-out', { temporary: 'a stand' })).toMatchObject({
      rule: 'T1',
      kind: 'gate',
      places: ['hole:wheel/2'],
    });
    expect(on.refused('lower-car')).toBe('T1 wheel-not-snug');
    on.snug('wheel/2');
    expect(on.refused('tighten', { hole: 'wheel/1', last: true })).toBe('O1 weight-not-on');
    expect(on.refused('lower-car')).toBe('T1 stand-still-in');
    out(on, 'stand');
    on.call('lower-car');
    for (const hole of ['wheel/1', 'wheel/2']) on.tight(hole);
    expect(on.open('hole-open')).toEqual([]);
  });

  it('[T1] it comes down once, until it is raised on something or a wheel is touched again', () => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: 'wheel', role: 'wheel', planned: true });
    on.call('lower-car');
    expect(on.refused('lower-car')).toBe('T1 down-already');
    put(on, 'jack');
    out(on, 'jack');
    on.call('lower-car');
    expect(on.refused('lower-car')).toBe('T1 down-already');
    on.slack('wheel/1', m8);
    expect(on.refused('lower-car')).toBe('T1 wheel-not-snug');
    on.snug('wheel/1');
    on.call('lower-car');
  });

  it('[T1] what is put in is said to be one sort of thing, unless it is known already', () => {
    const on = bench();
    expect(on.refused('put-in', { temporary: 'long thing' })).toBe('T1 sort-not-known');
    on.declare({ kind: 'temporary-declared', temporary: 'cam clamp', sort: 'lock' });
    expect(on.entriesOf(on.call('put-in', { temporary: 'cam clamp' }))).toMatchObject([{ sort: 'lock' }]);
    on.call('put-in', { temporary: 'long thing', sort: 'bar' });
    on.call('take-out', { temporary: 'long thing' });
    expect(on.entriesOf(on.call('put-in', { temporary: 'long thing' }))).toMatchObject([{ sort: 'bar' }]);
  });

  it('[T1] a stand under another wheel asks for that one alone', () => {
    const on = bench();
    for (const area of ['left wheel', 'right wheel']) {
      on.declare({ kind: 'area-declared', area, role: 'wheel', planned: true });
    }
    on.call('put-in', { temporary: 'left stand', sort: 'stand', at: 'area:left wheel' });
    on.off('right wheel/1', m8);
    on.call('take-out', { temporary: 'left stand' });
    expect(on.refused('lower-car')).toBe('T1 wheel-not-snug');
  });
});

describe('connections', () => {
  it('[T2] every one parted is made again before release', () => {
    const on = bench();
    on.call('part-connection', { connection: 'plug' });
    expect(on.refused('part-connection', { connection: 'plug' })).toBe('T2 parted-already');
    expect(on.open('connection-parted')).toEqual(['connection-parted connection:plug']);
    on.call('make-connection', { connection: 'plug', forNow: true });
    expect(on.openAt('connection:plug')).toEqual(['for-now']);
    on.call('make-connection', { connection: 'plug' });
    expect(on.openAt('connection:plug')).toEqual([]);
    expect(on.refused('make-connection', { connection: 'plug' })).toBe('T2 not-parted');
  });
});

describe('parts', () => {
  const off = () => {
    const on = bench();
    on.call('remove-part', { part: 'hose', heldBy: [] });
    return on;
  };

  it('[T3] every part off is back before release', () => {
    const on = off();
    expect(on.openAt('part:hose')).toEqual(['part-off']);
    on.call('fit-part', { part: 'hose' });
    expect(on.openAt('part:hose')).toEqual([]);
    expect(on.refused('fit-part', { part: 'hose' })).toBe('O2 part-not-off');
  });

  it('[T3] or replaced from the parts box; the old one is on the scrap pile, worn, in the same call', () => {
    const on = off();
    expect(on.refused('replace-part', { part: 'hose' })).toBe('T3 not-in-the-box');
    on.call('fill-box', { name: 'new hose', replaces: 'hose' });
    const n = on.call('replace-part', { part: 'hose' });
    expect(on.entriesOf(n)).toEqual([
      { kind: 'part-replaced', part: 'hose', from: 'new hose' },
      { kind: 'part-judged', part: 'hose', verdict: 'worn' },
    ]);
    expect(on.openAt('part:hose')).toEqual([]);
    expect(on.open('box-left')).toEqual([]);
  });

  it.each(partVerdicts)('[T3] other verdicts may be called, before or with it: %s', (verdict) => {
    const on = off();
    on.call('fill-box', { name: 'new hose', replaces: 'hose' });
    on.call('replace-part', { part: 'hose', verdict });
    expect(stateOf(on.ledger(), 'part', 'hose')?.judged?.verdict).toBe(verdict);
    const before = off();
    before.call('judge-part', { part: 'hose', verdict });
    // The old one itself goes back only where it is to be used again.
    if (verdict !== 'reuse') expect(before.refused('fit-part', { part: 'hose' })).toBe('T3 old-one-judged');
    before.call('fill-box', { name: 'new hose', replaces: 'hose' });
    expect(before.entriesOf(before.call('replace-part', { part: 'hose' }))).toHaveLength(1);
    expect(before.openAt('part:hose')).toEqual([]);
  });

  it('[T3] an old one without a verdict is an open point', () => {
    const on = off();
    on.call('fill-box', { name: 'new hose', replaces: 'hose' });
    on.forged({ kind: 'part-replaced', part: 'hose', from: 'new hose' });
    expect(on.openAt('part:hose')).toEqual(['part-not-judged']);
    on.call('judge-part', { part: 'hose', verdict: 'aged' });
    expect(on.openAt('part:hose')).toEqual([]);
  });

  it('[T3] one that never came off is not judged', () => {
    const on = bench();
    on.declare({ kind: 'part-declared', part: 'hose', heldBy: [] });
    expect(on.refused('judge-part', { part: 'hose', verdict: 'worn' })).toBe('T3 never-came-off');
  });

  it('[T4] before release the parts box is empty: fitted, returned or handed over', () => {
    const on = bench();
    on.call('fill-box', { name: 'bolt', quantity: 3, spec: m6 });
    on.call('fill-box', { name: 'sealant' });
    on.off('cover/1', m6);
    on.count('cover', 1);
    expect(on.open('box-left')).toEqual(['box-left box:bolt', 'box-left box:sealant']);
    on.back('cover/1', { box: 'bolt' });
    expect(on.because('box-left', 'box:bolt')).toBe('2 left in the parts box');
    on.call('move-box', { name: 'bolt', quantity: 1, to: 'supplier' });
    on.call('move-box', { name: 'bolt', quantity: 1, to: 'owner' });
    expect(on.refused('move-box', { name: 'bolt', quantity: 1, to: 'owner' })).toBe('L12 not-in-the-box');
    on.call('use-from-box', { name: 'sealant' });
    expect(on.open('box-left')).toEqual([]);
  });
});

describe('fluids', () => {
  it('[T5] one drained is filled again: which, and how much', () => {
    const on = bench();
    on.declare({ kind: 'circuit-declared', circuit: 'cooling', fluid: 'coolant' });
    on.call('drain', { circuit: 'cooling' });
    expect(on.openAt('circuit:cooling')).toEqual(['circuit-empty']);
    expect(on.refused('check-leaks', { circuit: 'cooling', how: 'under pressure' })).toBe('T5 not-filled');
    const n = on.call('fill-fluid', { circuit: 'cooling', litres: 5.5 });
    expect(on.entriesOf(n)).toEqual([{ kind: 'fluid-filled', circuit: 'cooling', fluid: 'coolant', litres: 5.5 }]);
    expect(on.openAt('circuit:cooling')).toEqual(['circuit-unchecked']);
  });

  it('[T5] nothing is filled into a circuit that is open, nor its oil level seen', () => {
    const on = bench();
    on.declare(
      { kind: 'circuit-declared', circuit: 'engine oil', fluid: 'oil' },
      {
        kind: 'face-declared',
        face: 'seat',
        area: 'sump',
        pressedBy: ['sump/1'],
        keepsIn: ['engine oil'],
        part: 'pan',
      },
      { kind: 'part-declared', part: 'pan', heldBy: [] },
      { kind: 'connection-declared', connection: 'cooler hose', circuit: 'engine oil' },
    );
    const waitsFor = (...places: string[]) => {
      const runsOut = { rule: 'T5', code: 'runs-out-again', kind: 'gate', places };
      expect(on.no('fill-fluid', { circuit: 'engine oil' })).toMatchObject(runsOut);
      expect(on.no('see-oil-level')).toMatchObject({ rule: 'T6', code: 'oil-not-in' });
    };
    on.call('drain', { circuit: 'engine oil' });
    on.off('sump/1', m8);
    on.call('remove-part', { part: 'pan' });
    on.call('part-connection', { connection: 'cooler hose' });
    waitsFor('connection:cooler hose', 'part:pan', 'hole:sump/1');
    on.call('make-connection', { connection: 'cooler hose' });
    on.call('fit-part', { part: 'pan' });
    on.count('sump', 1);
    on.back('sump/1');
    waitsFor('hole:sump/1');
    on.snug('sump/1');
    expect(on.refused('see-oil-level')).toBe('T6 oil-not-in');
    on.call('fill-fluid', { circuit: 'engine oil' });
    on.call('see-oil-level');
  });

  it('[T5] its circuit is leak-checked after running', () => {
    const on = bench();
    on.call('see-oil-level');
    on.call('tools-out');
    on.call('start-engine');
    on.call('drain', { circuit: 'cooling' });
    on.call('fill-fluid', { circuit: 'cooling', fluid: 'coolant' });
    expect(on.refused('check-leaks', { circuit: 'cooling' })).toBe('T5 not-run-since-filled');
    on.call('tools-out');
    on.call('start-engine');
    on.call('check-leaks', { circuit: 'cooling' });
    expect(on.openAt('circuit:cooling')).toEqual([]);
  });

  const checked = () => {
    const on = bench();
    on.declare(
      { kind: 'face-declared', face: 'pump', area: 'pump', pressedBy: ['pump/1'], keepsIn: ['cooling'], part: 'pump' },
      { kind: 'part-declared', part: 'pump', heldBy: [] },
      { kind: 'connection-declared', connection: 'bottom hose', circuit: 'cooling' },
    );
    on.call('drain', { circuit: 'cooling' });
    on.call('fill-fluid', { circuit: 'cooling' });
    on.call('check-leaks', { circuit: 'cooling', how: 'under pressure' });
    expect(on.openAt('circuit:cooling')).toEqual([]);
    return on;
  };

  it.each([
    ['a hole of a face that keeps it in', (on: Bench) => on.slack('pump/1', m6)],
    ['the part of that face', (on: Bench) => on.call('remove-part', { part: 'pump' })],
    ['a connection of it', (on: Bench) => on.call('part-connection', { connection: 'bottom hose' })],
  ])('[T5] or under pressure, and the check stands only while nothing of it was opened after: %s', (_, open) => {
    const on = checked();
    on.off('cover/1', m6);
    expect(on.openAt('circuit:cooling')).toEqual([]);
    open(on);
    expect(on.openAt('circuit:cooling')).toEqual(['circuit-unchecked']);
    on.call('check-leaks', { circuit: 'cooling', how: 'under pressure' });
    expect(on.openAt('circuit:cooling')).toEqual([]);
  });

  it('[T5] drained again it is empty again', () => {
    const on = checked();
    on.call('drain', { circuit: 'cooling' });
    expect(on.openAt('circuit:cooling')).toEqual(['circuit-empty']);
  });

  it('[T5 X1] a face that keeps it in opened wants a check, drained or not, and whether its fluid was named or not', () => {
    const on = bench();
    on.declare({ kind: 'face-declared', face: 'lid', area: 'lid', pressedBy: ['lid/1'], keepsIn: ['engine oil'] });
    expect(on.openAt('circuit:engine oil')).toEqual([]);
    on.slack('lid/1', m6);
    expect(on.openAt('circuit:engine oil')).toEqual(['circuit-unchecked']);
    // Oil is under pressure only while the engine runs, and is not said to have been before.
    expect(on.no('check-leaks', { circuit: 'engine oil', how: 'under pressure' })).toMatchObject({
      code: 'not-run-since-filled',
      because: expect.stringMatching(/engine oil is under pressure only while it runs$/),
      instead: 'start it first',
    });
    on.tight('lid/1');
    on.call('see-oil-level');
    const next = () => openPointsWithNext(on.ledger(), on.now()).find(({ code }) => code === 'circuit-unchecked')?.next;
    expect(next()?.verb).toBe('tools-out');
    on.call('tools-out');
    on.call('start-engine');
    on.call('check-leaks', { circuit: 'engine oil', how: 'under pressure' });
    expect(on.openAt('circuit:engine oil')).toEqual([]);
  });

  it('[T5] a connection of it parted and made again wants a check, drained or not', () => {
    const on = bench();
    on.declare({ kind: 'connection-declared', connection: 'bottom hose', circuit: 'cooling' });
    on.declare({ kind: 'circuit-declared', circuit: 'cooling', fluid: 'coolant' });
    expect(on.openAt('circuit:cooling')).toEqual([]);
    on.call('part-connection', { connection: 'bottom hose' });
    on.call('make-connection', { connection: 'bottom hose' });
    expect(on.openAt('circuit:cooling')).toEqual(['circuit-unchecked']);
    on.call('check-leaks', { circuit: 'cooling', how: 'under pressure' });
    expect(on.openAt('circuit:cooling')).toEqual([]);
  });
});

describe('first start', () => {
  const readyToStart = () => {
    const on = bench();
    on.off('cover/1', m6);
    on.count('cover', 1);
    on.back('cover/1');
    on.tight('cover/1');
    on.call('see-oil-level');
    on.countTrays();
    on.call('tools-out');
    return on;
  };

  it('[T6] is a call', () => {
    const on = readyToStart();
    const n = on.call('start-engine');
    expect(on.entriesOf(n)).toEqual([{ kind: 'engine-started' }]);
  });

  it.each([
    [
      'rotation',
      'T6 rotation-not-passed',
      (on: Bench) => {
        on.declare({
          kind: 'drive-declared',
          drive: 'belt',
          areas: ['cover'],
          parts: [],
          marks: [],
          turns: 2,
          tensioner: 'none',
          crankKeyed: true,
        });
      },
    ],
    ['fluids', 'T6 fluid-missing', (on: Bench) => on.call('drain', { circuit: 'cooling' })],
    ['connections', 'T6 connection-parted', (on: Bench) => on.call('part-connection', { connection: 'plug' })],
    ['locks', 'T6 pin-still-in', (on: Bench) => put(on, 'lock')],
    ['jack', 'T1 jack-still-in', (on: Bench) => put(on, 'jack')],
    [
      'working fasteners',
      'T1 working-fastener-in',
      (on: Bench) => {
        on.off('nose/1', m8);
        on.count('nose', 1);
        on.back('nose/1', { working: true });
      },
    ],
    [
      'tools out',
      'K1 tools-not-out',
      (on: Bench) =>
        on.call('part-connection', { connection: 'plug' }) && on.call('make-connection', { connection: 'plug' }),
    ],
    [
      'tray count',
      'K1 trays-not-counted',
      (on: Bench) => {
        on.off('guard/1', m8);
        on.call('tools-out');
      },
    ],
  ])('[T6] is refused until %s allow it, and nothing overrides it', (_, refused, hinder) => {
    const on = readyToStart();
    hinder(on);
    expect(on.refused('start-engine')).toBe(refused);
    expect(on.refused('start-engine', {}, { because: 'sure' })).toBe(refused);
    expect(on.no('start-engine').kind).toBe('gate');
  });

  it('[T6] is refused until the oil level was looked at, and again once the oil was drained', () => {
    const on = bench();
    expect(on.refused('start-engine')).toBe('T6 oil-level-not-seen');
    on.call('see-oil-level');
    on.call('start-engine');
    on.call('drain', { circuit: 'engine oil' });
    on.call('fill-fluid', { circuit: 'engine oil' });
    on.call('tools-out');
    expect(on.refused('start-engine')).toBe('T6 oil-level-not-seen');
    on.call('see-oil-level');
    on.call('start-engine');
  });

  it('[T6] wants the oil level seen where the job speaks of no oil, and anew by the fluid of a circuit', () => {
    const on = bench();
    on.declare({ kind: 'circuit-declared', circuit: 'cooling', fluid: 'coolant mix' });
    expect(on.refused('start-engine')).toBe('T6 oil-level-not-seen');
    on.call('see-oil-level');
    on.declare({ kind: 'circuit-declared', circuit: 'sump', fluid: 'Oil 5W-30' });
    on.call('start-engine');
    on.call('drain', { circuit: 'sump' });
    on.call('fill-fluid', { circuit: 'sump' });
    on.call('tools-out');
    expect(on.refused('start-engine')).toBe('T6 oil-level-not-seen');
  });

  it('[T6] is refused while a plug or a face lets a fluid out', () => {
    const on = readyToStart();
    on.declare(
      { kind: 'circuit-declared', circuit: 'cooling', fluid: 'coolant mix' },
      { kind: 'face-declared', face: 'seat', area: 'drain', pressedBy: ['drain/1'], keepsIn: ['cooling'] },
    );
    on.slack('drain/1', m8);
    on.call('tools-out');
    expect(on.no('start-engine')).toMatchObject({ rule: 'T6', code: 'lets-its-fluid-out', places: ['hole:drain/1'] });
    on.snug('drain/1');
    on.call('tools-out');
    on.call('start-engine');
  });

  it.each(['mount', 'drive'])('[T6] is refused while a hole of a %s is not snug', (role) => {
    const on = readyToStart();
    on.declare({ kind: 'area-declared', area: 'bracket', role, planned: true });
    on.slack('bracket/1', m8);
    on.call('tools-out');
    expect(on.no('start-engine')).toMatchObject({ rule: 'T6', code: 'engine-apart', places: ['hole:bracket/1'] });
    on.snug('bracket/1');
    on.call('tools-out');
    on.call('start-engine');
  });

  it('[T6] is refused until beads may be run', () => {
    const on = readyToStart();
    const label = { product: 'grey', kind: 'moisture', runHours: 6, labelCelsius: 23, labelHumidityPct: 50 };
    on.declare({ kind: 'face-declared', face: 'lid', area: 'lid', pressedBy: ['lid/1'], keepsIn: [] });
    on.call('note-conditions', { celsius: 23, humidityPct: 50 });
    on.call('clean-face', { face: 'lid' });
    on.call('lay-bead', { face: 'lid', label });
    expect(on.refused('start-engine')).toBe('S5 bead-not-ready');
    on.wait(6 * 60);
    on.call('start-engine');
  });
});

describe('moving and driving', () => {
  const on4 = (role: string) => {
    const on = bench();
    on.declare({ kind: 'area-declared', area: role, role, planned: true });
    return on;
  };

  it('[T7] the car moves, by its own or by hand, only when the pedal was called firm since a caliper was off', () => {
    const on = on4('brake');
    on.call('move-car');
    on.slack('brake/1', m8);
    on.tight('brake/1');
    for (const how of ['own power', 'by hand']) {
      const no = on.no('move-car', { how }, { because: 'sure' });
      expect(`${no.rule} ${no.code} ${no.kind}`).toBe('T7 pedal-not-firm gate');
    }
    expect(on.open('pedal')).toEqual(['pedal vehicle']);
    on.call('pedal-firm');
    on.call('move-car', { how: 'own power' });
    expect(on.open('pedal')).toEqual([]);
  });

  it('[T7] or a line parted, or a pad out', () => {
    const line = on4('brake');
    line.declare({ kind: 'connection-declared', connection: 'brake hose', area: 'brake' });
    line.call('part-connection', { connection: 'brake hose' });
    line.call('make-connection', { connection: 'brake hose' });
    expect(line.refused('move-car')).toBe('T7 pedal-not-firm');
    expect(line.open('road-test')).toEqual(['road-test vehicle']);
    const pad = on4('brake');
    pad.declare({ kind: 'part-declared', part: 'pads', heldBy: ['brake/1'] });
    pad.slack('brake/1', m8);
    pad.tight('brake/1');
    pad.call('pedal-firm');
    pad.slack('brake/1');
    pad.call('remove-part', { part: 'pads' });
    pad.call('fit-part', { part: 'pads' });
    pad.tight('brake/1');
    expect(pad.refused('move-car')).toBe('T7 pedal-not-firm');
  });

  it.each<[string, (on: ReturnType<typeof bench>) => void]>([
    [
      'an area that nobody said belongs to a brake',
      (on) => {
        on.slack('Left caliper/1', m8);
        on.tight('Left caliper/1');
      },
    ],
    [
      'pads drawn with no bolt called',
      (on) => {
        on.call('remove-part', { part: 'right pads' });
        on.call('fit-part', { part: 'right pads' });
      },
    ],
    [
      'a brake hose of no area',
      (on) => {
        on.call('part-connection', { connection: 'brake hose' });
        on.call('make-connection', { connection: 'brake hose' });
      },
    ],
  ])('[T7] by its name too: %s', (_what, touched) => {
    const on = bench();
    touched(on);
    expect(on.refused('move-car')).toBe('T7 pedal-not-firm');
    expect(on.open('road-test')).toEqual(['road-test vehicle']);
    on.call('pedal-firm');
    on.call('move-car');
  });

  it('[T7] and the pedal is not pressed while they are out', () => {
    const on = bench();
    on.call('remove-part', { part: 'right pads' });
    expect(on.no('pedal-firm')).toMatchObject({ code: 'brake-still-open', places: ['part:right pads'] });
  });

  it('[T7] a name that only sounds so, or a role that was said, asks for no pedal', () => {
    const on = bench();
    on.call('remove-part', { part: 'pad of the jack' });
    on.call('part-connection', { connection: 'brake lamp plug' });
    on.declare({ kind: 'area-declared', area: 'caliper cover', role: 'engine', planned: true });
    on.slack('caliper cover/1', m8);
    expect(on.open('pedal')).toEqual([]);
  });

  it('[T6 T7] by its own power only where the engine may run and has run since; pushed it need not', () => {
    const on = on4('mount');
    on.declare({ kind: 'connection-declared', connection: 'hose', circuit: 'cooling' });
    on.slack('mount/1', m8);
    on.call('part-connection', { connection: 'hose' });
    const own = () => on.refused('move-car', { how: 'own power' });
    on.call('move-car', { how: 'by hand' });
    expect(own()).toBe('T6 connection-parted');
    on.call('make-connection', { connection: 'hose' });
    expect(own()).toBe('T6 engine-apart');
    on.tight('mount/1');
    expect(own()).toBe('T6 not-run-yet');
    on.call('see-oil-level');
    on.call('tools-out');
    on.call('start-engine');
    on.call('move-car', { how: 'own power' });
    on.off('lid/1', m6);
    on.call('lose-fastener', { fastener: on.own('lid/1'), reaches: true, where: 'belt' });
    expect(own()).toBe('T9 works-not-searched');
    expect(on.refused('road-test')).toBe('T9 works-not-searched');
  });

  it('[T7] only with its wheels snug or better', () => {
    const on = on4('wheel');
    on.off('wheel/1', m8);
    expect(on.no('move-car')).toMatchObject({ rule: 'T7', code: 'wheel-not-snug', places: ['hole:wheel/1'] });
    on.back('wheel/1', { forNow: true });
    expect(on.refused('move-car')).toBe('T7 wheel-not-snug');
    on.snug('wheel/1');
    on.call('move-car');
    expect(on.open('for-now')).toEqual(['for-now hole:wheel/1']);
  });

  it('[T7] only with its steering tight', () => {
    const on = on4('steering');
    on.slack('steering/1', m8);
    on.snug('steering/1');
    expect(on.no('move-car')).toMatchObject({ rule: 'T7', code: 'steering-not-tight', places: ['hole:steering/1'] });
    on.tight('steering/1');
    on.call('move-car');
  });

  it.each(['stand', 'jack', 'block'])('[T1] it does not move with a %s in', (sort) => {
    const on = bench();
    put(on, sort);
    expect(on.refused('move-car')).toBe('T1 car-still-up');
  });

  it.each(['steering', 'brake', 'wheel', 'engine', 'suspension', 'mount', 'drive'])(
    '[T7] a road test is a call where %s was touched; release wants it, or a reason why not',
    (role) => {
      const opened = () => {
        const on = on4(role);
        expect(on.open('road-test')).toEqual([]);
        on.slack(`${role}/1`, m8);
        on.tight(`${role}/1`);
        on.call('pedal-firm');
        on.call('tools-out');
        expect(on.open()).toEqual(['road-test vehicle']);
        return on;
      };
      const driven = opened();
      driven.call('road-test');
      expect(driven.open()).toEqual([]);
      const waived = opened();
      expect(waived.refused('waive-road-test', { who: 'Ann' })).toBe('L1 badly-said');
      waived.call('waive-road-test', { who: 'Ann', because: 'no plates' });
      expect(waived.open()).toEqual([]);
      waived.slack(`${role}/1`);
      waived.tight(`${role}/1`);
      expect(waived.open('road-test')).toEqual(['road-test vehicle']);
    },
  );

  it('[T7] the road test itself waits for what is not closed and for the pedal', () => {
    const on = on4('brake');
    on.slack('brake/1', m8);
    expect(on.refused('road-test')).toBe('T7 pedal-not-firm');
    on.tight('brake/1');
    on.call('pedal-firm');
    on.slack('bracket/1', m8);
    expect(on.no('road-test')).toMatchObject({ rule: 'T7', code: 'not-on-the-road-yet', places: ['hole:bracket/1'] });
    on.tight('bracket/1');
    on.call('road-test');
    on.call('note', { words: 'pulls straight' });
  });

  it('[T7] no pedal is firm while a hole, a part or a pipe of a brake is open', () => {
    const on = on4('brake');
    on.declare(
      { kind: 'part-declared', part: 'caliper', heldBy: ['brake/1'] },
      { kind: 'connection-declared', connection: 'brake hose', area: 'brake' },
      { kind: 'connection-declared', connection: 'wear sensor plug', area: 'brake' },
    );
    const open = (...places: string[]) =>
      expect(on.no('pedal-firm')).toMatchObject({ rule: 'T7', code: 'brake-still-open', kind: 'gate', places });
    on.off('brake/1', m8);
    open('hole:brake/1', 'part:caliper');
    expect(on.no('move-car', {})).toMatchObject({
      code: 'pedal-not-firm',
      because: 'the brake was open and the pedal was not called firm since; brake 1 is not tight',
      places: ['hole:brake/1', 'part:caliper'],
    });
    on.count('brake', 1);
    on.call('fit-part', { part: 'caliper' });
    on.back('brake/1');
    open('hole:brake/1');
    on.snug('brake/1');
    open('hole:brake/1');
    on.tight('brake/1');
    on.call('part-connection', { connection: 'wear sensor plug' });
    on.call('part-connection', { connection: 'brake hose' });
    open('connection:brake hose');
    on.call('make-connection', { connection: 'brake hose' });
    on.call('pedal-firm');
  });

  it('[T7] nor while the brake fluid is drained, and neither it nor a road test called before stands after it', () => {
    const on = on4('brake');
    on.call('pedal-firm');
    on.call('road-test');
    on.call('drain', { circuit: 'brake fluid' });
    expect(on.open('pedal')).toEqual(['pedal vehicle']);
    expect(on.open('road-test')).toEqual(['road-test vehicle']);
    expect(on.no('pedal-firm')).toMatchObject({ code: 'brake-still-open', places: ['circuit:brake fluid'] });
    on.call('fill-fluid', { circuit: 'brake fluid' });
    expect(on.open('pedal')).toEqual(['pedal vehicle']);
    on.call('pedal-firm');
    expect(on.open('pedal')).toEqual([]);
  });

  it('[T1] what alone carries the car stays, said where or not, until the nuts of its wheels are snug', () => {
    const on = on4('wheel');
    on.call('put-in', { temporary: 'jack', sort: 'jack' });
    on.off('wheel/1', m8);
    expect(on.no('take-out', { temporary: 'jack' })).toMatchObject({
      code: 'wheel-not-snug',
      places: ['hole:wheel/1'],
    });
    on.call('put-in', { temporary: 'stand', sort: 'stand' });
    on.call('take-out', { temporary: 'jack' });
    expect(on.refused('take-out', { temporary: 'stand' })).toBe('T1 wheel-not-snug');
    on.count('wheel', 1);
    on.back('wheel/1');
    on.snug('wheel/1');
    on.call('take-out', { temporary: 'stand' });
  });

  it('[F1] what is damaged after it went back is found during the work, not on arrival', () => {
    const on = on4('engine');
    const when = () => [...every(on.ledger(), 'finding')].map((f) => f.when);
    on.call('remove', { hole: 'engine/1', to: 'tray:1', spec: m8 });
    on.count('engine', 1);
    on.back('engine/1');
    on.call('remove', { hole: 'engine/1', to: 'tray:1', wrong: 'damaged' });
    on.call('remove', { hole: 'engine/2', to: 'tray:1', wrong: 'damaged', spec: m8 });
    expect(when()).toEqual(['during the work', 'on arrival']);
  });

  it('[T6 T7] nor while first start would be refused for beads, rotation, fluids or connections', () => {
    const closed = () => {
      const on = on4('engine');
      on.slack('engine/1', m8);
      on.tight('engine/1');
      return on;
    };
    const drained = closed();
    drained.call('drain', { circuit: 'cooling' });
    expect(drained.refused('road-test')).toBe('T6 fluid-missing');
    const parted = closed();
    parted.call('part-connection', { connection: 'plug' });
    expect(parted.refused('road-test')).toBe('T6 connection-parted');
    const unturned = closed();
    const drive = {
      drive: 'belt',
      areas: ['engine'],
      parts: [],
      marks: [],
      turns: 2,
      tensioner: 'none',
      crankKeyed: true,
    };
    unturned.declare({ kind: 'drive-declared', ...drive });
    expect(unturned.refused('road-test')).toBe('T6 rotation-not-passed');
    const wet = closed();
    wet.declare({ kind: 'face-declared', face: 'lid', area: 'engine', pressedBy: ['engine/1'], keepsIn: [] });
    wet.call('clean-face', { face: 'lid' });
    const label = { product: 'grey', kind: 'moisture', runHours: 6, labelCelsius: 23, labelHumidityPct: 50 };
    wet.call('lay-bead', { face: 'lid', label });
    expect(wet.refused('road-test')).toBe('S5 bead-not-ready');
  });

  it('[T6 T7] nor before the engine ran, where a circuit was filled and not found tight under pressure', () => {
    const on = on4('engine');
    on.slack('engine/1', m8);
    on.tight('engine/1');
    on.call('drain', { circuit: 'cooling' });
    on.call('fill-fluid', { circuit: 'cooling' });
    on.call('tools-out');
    expect(on.no('road-test')).toMatchObject({ rule: 'T6', code: 'not-run-yet' });
    const nextOf = (code: string) =>
      openPointsWithNext(on.ledger(), on.now()).find((point) => point.code === code)?.next?.verb;
    expect([nextOf('circuit-unchecked'), nextOf('road-test')]).toEqual(['see-oil-level', 'see-oil-level']);
    on.call('see-oil-level');
    expect([nextOf('circuit-unchecked'), nextOf('road-test')]).toEqual(['start-engine', 'start-engine']);
    on.call('start-engine');
    on.call('road-test');
    on.call('drain', { circuit: 'cooling' });
    on.call('fill-fluid', { circuit: 'cooling' });
    expect(on.refused('road-test')).toBe('T6 not-run-yet');
    on.call('check-leaks', { circuit: 'cooling', how: 'under pressure' });
    on.call('road-test');
  });

  it('[T7] elsewhere no road test is asked', () => {
    const on = bench();
    on.slack('cover/1', m6);
    on.tight('cover/1');
    expect(on.open('road-test')).toEqual([]);
  });
});
