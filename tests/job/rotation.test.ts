// R: when a drive is to be turned over by hand, what must be ready, what makes the check pass and for how long it stands.
import { describe, expect, it } from 'vitest';
import { decide } from '../../src/job/decide.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import { rotationNeeded } from '../../src/job/rotation.ts';
import { type Bench, bench, m6, m8, stretch } from './bench.ts';

const declared = (more: object = {}) =>
  ({
    kind: 'drive-declared',
    drive: 'belt',
    areas: ['idler'],
    parts: ['timing belt'],
    marks: ['crank', 'cam'],
    turns: 2,
    tensioner: 'none',
    crankKeyed: true,
    ...more,
  }) as const;

/** The idler was off and is tight again; nothing stands in the way of turning. */
function ready(more: object = {}, before: (on: Bench) => void = () => {}): Bench {
  const on = bench();
  on.declare(declared(more));
  before(on);
  on.off('idler/1', m8);
  on.count('idler', 1);
  on.back('idler/1');
  on.tight('idler/1');
  on.countTrays();
  return on;
}
const needed = (on: Bench): string[] => on.open('rotation-needed');
const why = (on: Bench) => on.because('rotation-needed', 'drive:belt');
const turn = (on: Bench, quarters: number, more: object = {}) =>
  on.call('turn-crank', { drive: 'belt', quarters, ...more });
const read = (on: Bench, mark: string, teethOff = 0) => on.call('read-mark', { drive: 'belt', mark, teethOff });
const marks = (on: Bench): void => {
  for (const mark of ['crank', 'cam']) read(on, mark);
};
const tension = (on: Bench, right = true, how = 'pointer') => on.call('read-tension', { drive: 'belt', how, right });
const state = (on: Bench) => stateOf(on.ledger(), 'drive', 'belt');
const toTurn = { drive: 'belt', quarters: 1 };

describe('whether it is needed', () => {
  it('[R1] only where a drive was open on the job', () => {
    const on = bench();
    on.declare(declared());
    on.off('cover/1', m6);
    expect(needed(on)).toEqual([]);
    on.slack('idler/1', m8);
    expect(needed(on)).toEqual(['rotation-needed drive:belt']);
  });

  it('[R1] a part of it off opens it, also one that no fastener holds', () => {
    const on = bench();
    on.declare(declared(), { kind: 'part-declared', part: 'timing belt', heldBy: [] });
    expect(needed(on)).toEqual([]);
    on.call('remove-part', { part: 'timing belt' });
    expect(needed(on)).toEqual(['rotation-needed drive:belt']);
  });

  it('[R1] each drive for itself', () => {
    const on = bench();
    on.declare(declared(), declared({ drive: 'balance chain', areas: ['chain cover'], parts: [] }));
    on.slack('chain cover/1', m6);
    expect(needed(on)).toEqual(['rotation-needed drive:balance chain']);
  });

  it('[R1] without it the engine is not started and the car not released', () => {
    const on = ready();
    on.call('see-oil-level');
    on.call('tools-out');
    expect(on.refused('start-engine')).toBe('T6 rotation-not-passed');
    expect(on.open()).toEqual(['rotation-needed drive:belt', 'road-test vehicle']);
    turn(on, 8);
    marks(on);
    on.call('start-engine');
    on.call('road-test');
    on.call('release', { who: 'Ann' });
  });
});

describe('it is refused', () => {
  it('[R2] until the parts of the drive are on', () => {
    const on = ready({}, (b) => {
      b.declare({ kind: 'part-declared', part: 'timing belt', heldBy: [] });
      b.declare({ kind: 'part-declared', part: 'idler pulley', heldBy: ['idler/1'] });
      b.call('remove-part', { part: 'timing belt' });
    });
    expect(on.no('turn-crank', toTurn)).toMatchObject({ code: 'drive-part-off', rule: 'R2', kind: 'gate' });
    expect(on.no('turn-crank', toTurn).places).toEqual(['part:timing belt']);
    on.call('fit-part', { part: 'timing belt' });
    on.off('idler/1');
    expect(on.no('turn-crank', toTurn).places).toEqual(['part:idler pulley']);
  });

  it('[R2] live, while what tensions or guides the belt is off', () => {
    const on = ready({}, (b) => b.declare({ kind: 'part-declared', part: 'tensioner', heldBy: ['idler/1'] }));
    on.off('idler/1');
    expect(on.no('tensioner-live', { drive: 'belt' }).places).toEqual(['part:tensioner']);
  });

  it('[R2] until every hole of it is tight', () => {
    const on = ready({ areas: ['idler', 'tensioner'] }, (b) => b.slack('tensioner/1', m8));
    expect(on.no('turn-crank', toTurn)).toMatchObject({ code: 'drive-not-tight', places: ['hole:tensioner/1'] });
    on.snug('tensioner/1');
    expect(on.refused('turn-crank', toTurn)).toBe('R2 drive-not-tight');
    expect(on.refused('turn-crank', toTurn, { because: 'sure' })).toBe('R2 drive-not-tight');
    on.tight('tensioner/1');
    turn(on, 1);
  });

  it('[R2] a hole as found needs nothing, and one finished after turning or on its wheels only to be snug', () => {
    const on = ready({ areas: ['idler', 'mount'] }, (b) => {
      b.declare(
        { kind: 'hole-declared', hole: 'mount/1', later: 'after-turning' },
        { kind: 'hole-declared', hole: 'mount/2', later: 'on-wheels' },
      );
      b.slack('mount/1', m8);
      b.slack('mount/2', m8);
      b.call('find-fastener', { hole: 'mount/3', spec: m8 });
    });
    expect(on.no('turn-crank', toTurn).places).toEqual(['hole:mount/1', 'hole:mount/2']);
    for (const hole of ['mount/1', 'mount/2']) on.snug(hole);
    turn(on, 1);
  });

  it('[R2] what is finished after the belt is tight before rotation, wherever it is', () => {
    const on = ready({}, (b) => {
      b.declare({ kind: 'hole-declared', hole: 'bracket/1', later: 'after-belt' });
      b.slack('bracket/1', m8);
      b.snug('bracket/1');
    });
    expect(on.no('turn-crank', toTurn).places).toEqual(['hole:bracket/1']);
    on.tight('bracket/1');
    turn(on, 1);
  });

  it('[R2] with the crank bolt where the crank sprocket has no key, and without it where it has one', () => {
    const withBolt = (crankKeyed: boolean) =>
      ready({ crankBolt: 'pulley/1', crankKeyed }, (b) => {
        b.off('pulley/1', stretch);
        b.count('pulley', 1);
        b.back('pulley/1', { working: true });
      });
    turn(withBolt(true), 1);
    const on = withBolt(false);
    expect(on.no('turn-crank', toTurn).places).toEqual(['hole:pulley/1']);
    on.call('remove', { hole: 'pulley/1', to: 'scrap' });
    on.call('fill-box', { name: 'new crank bolt', spec: stretch });
    on.back('pulley/1', { box: 'new crank bolt' });
    on.tight('pulley/1');
    on.countTrays();
    turn(on, 1);
  });

  it.each([
    ['cam', 'lock'],
    ['crank', 'pin'],
    ['flywheel', 'lock'],
    ['holding', 'bar'],
  ])('[R2] until every lock is out: %s', (name, sort) => {
    const on = ready();
    on.call('put-in', { temporary: `${name} tool`, sort });
    const no = on.no('turn-crank', toTurn);
    expect(`${no.rule} ${no.code} ${no.places}`).toBe(`R2 pin-still-in temporary:${name} tool`);
    expect(on.refused('turn-to-marks', { drive: 'belt' })).toBe('R2 pin-still-in');
    on.call('take-out', { temporary: `${name} tool` });
    turn(on, 1);
  });

  it('[R2] a lock holds the engine also where the drive was never open', () => {
    const on = bench();
    on.declare(declared());
    on.call('put-in', { temporary: 'cam lock', sort: 'lock' });
    expect(on.refused('turn-to-marks', { drive: 'belt' })).toBe('R2 pin-still-in');
    on.call('take-out', { temporary: 'cam lock' });
    on.call('turn-to-marks', { drive: 'belt' });
  });

  it.each([
    ['sprung', 'pin pulled'],
    ['plunger', 'plunger released'],
    ['set', 'set and tight'],
  ])('[R2] until a tensioner that is %s is live: %s', (tensioner, how) => {
    const on = ready({ tensioner });
    expect(on.refused('turn-crank', toTurn)).toBe('R2 tensioner-not-live');
    const n = on.call('tensioner-live', { drive: 'belt' });
    expect(on.entriesOf(n)).toEqual([{ kind: 'tensioner-live', drive: 'belt', how }]);
    turn(on, 1);
    on.slack('idler/1');
    on.tight('idler/1');
    expect(on.refused('turn-crank', toTurn)).toBe('R2 tensioner-not-live');
  });

  it('[R2] none, as on gears, asks for none', () => {
    turn(ready({ tensioner: 'none' }), 1);
  });

  it('[R2] a crank or sprocket bolt called slack or tight with a lock in warns: a lock is no holding tool', () => {
    const on = bench();
    on.declare(declared({ crankBolt: 'pulley/1' }), { kind: 'hole-declared', hole: 'cam gear/1', sprocketBolt: true });
    const warned = (verb: string, said: object) => {
      const answer = decide(on.ledger(), { verb, ...said }, on.now());
      return 'refused' in answer ? answer.refused.code : answer.warnings;
    };
    const off = { hole: 'pulley/1', to: 'tray:1', spec: m8 };
    expect(warned('slacken', { hole: 'pulley/1', spec: m8 })).toBeUndefined();
    on.call('put-in', { temporary: 'flywheel lock', sort: 'lock' });
    const warning = ['flywheel lock in: a lock is no holding tool'];
    expect(warned('slacken', { hole: 'pulley/1', spec: m8 })).toEqual(warning);
    expect(warned('remove', off)).toEqual(warning);
    expect(warned('slacken', { hole: 'cam gear/1', spec: m8 })).toEqual(warning);
    expect(warned('slacken', { hole: 'idler/1', spec: m8 })).toBeUndefined();
    on.slack('cam gear/1', m8);
    expect(warned('remove', { hole: 'cam gear/1', to: 'tray:1' })).toBeUndefined();
    expect(warned('tighten', { hole: 'cam gear/1' })).toEqual(warning);
    // Held by what is put at the bolt itself, no other lock holds it.
    on.call('put-in', { temporary: 'pulley lock', sort: 'lock', at: 'area:pulley' });
    expect(warned('slacken', { hole: 'pulley/1', spec: m8 })).toBeUndefined();
    for (const temporary of ['pulley lock', 'flywheel lock']) on.call('take-out', { temporary });
    on.call('put-in', { temporary: 'holding bar', sort: 'bar' });
    expect(warned('tighten', { hole: 'cam gear/1' })).toBeUndefined();
  });
});

describe('turns', () => {
  it('[R3] are called as they are made, in quarters or as one number', () => {
    const on = ready();
    for (let i = 0; i < 8; i++) turn(on, 1);
    const one = ready();
    turn(one, 8);
    for (const b of [on, one]) {
      expect(state(b)?.tries.at(-1)?.quarters).toBe(8);
      marks(b);
      expect(needed(b)).toEqual([]);
    }
    expect(on.refused('turn-crank', { drive: 'belt', quarters: 0.5 })).toBe('L1 badly-said');
  });

  it('[R3] backwards starts the count again', () => {
    const on = ready();
    turn(on, 7);
    turn(on, 1, { backwards: true });
    expect(state(on)?.tries.at(-1)?.quarters).toBe(0);
    turn(on, 4);
    expect(on.refused('read-mark', { drive: 'belt', mark: 'cam', teethOff: 0 })).toBe('R4 turns-not-complete');
    turn(on, 4);
    marks(on);
    expect(needed(on)).toEqual([]);
  });

  it('[R3] but for a step of the maker own procedure, which is only taken off it', () => {
    const on = ready();
    turn(on, 8);
    turn(on, 1, { backwards: true, makersStep: true });
    expect(on.refused('read-mark', { drive: 'belt', mark: 'cam', teethOff: 0 })).toBe('R4 turns-not-complete');
    turn(on, 1);
    marks(on);
    expect(needed(on)).toEqual([]);
  });

  it('[R3] turned on, what was looked at is looked at anew', () => {
    const on = ready();
    turn(on, 8);
    read(on, 'crank');
    turn(on, 8);
    read(on, 'cam');
    expect(needed(on)).toHaveLength(1);
    read(on, 'crank');
    expect(needed(on)).toEqual([]);
  });
});

describe('what passes', () => {
  it('[R4] at least two turns, a whole multiple of two', () => {
    const on = ready();
    for (const [more, enough] of [
      [4, false],
      [3, false],
      [1, true],
      [4, false],
      [4, true],
    ] as const) {
      turn(on, more);
      const answer = decide(on.ledger(), { verb: 'read-mark', drive: 'belt', mark: 'cam', teethOff: 0 }, on.now());
      expect('refused' in answer ? answer.refused.code : 'taken').toBe(enough ? 'taken' : 'turns-not-complete');
    }
  });

  it('[R4] or the maker number, which is such a multiple too', () => {
    const on = ready({ turns: 6 });
    turn(on, 16);
    expect(on.refused('read-mark', { drive: 'belt', mark: 'cam', teethOff: 0 })).toBe('R4 turns-not-complete');
    turn(on, 8);
    marks(on);
    expect(needed(on)).toEqual([]);
    for (const turns of [1, 3, 5]) {
      expect(on.refused('declare', { entries: [declared({ drive: 'other', turns })] })).toBe('L1 badly-said');
    }
  });

  it('[R4] then every mark called', () => {
    const on = ready();
    turn(on, 8);
    read(on, 'crank');
    expect(needed(on)).toHaveLength(1);
    expect(on.refused('read-mark', { drive: 'belt', mark: 'pump', teethOff: 0 })).toBe('R4 no-such-mark');
    read(on, 'cam');
    expect(needed(on)).toEqual([]);
  });

  it('[R4] or every lock slid in by hand and out again, which is all there is without marks', () => {
    const on = ready();
    turn(on, 8);
    on.call('slide-locks', { drive: 'belt' });
    expect(needed(on)).toEqual([]);
    const bare = ready({ marks: [] });
    turn(bare, 8);
    expect(needed(bare)).toHaveLength(1);
    bare.call('slide-locks', { drive: 'belt' });
    expect(needed(bare)).toEqual([]);
    const early = ready();
    turn(early, 4);
    expect(early.refused('slide-locks', { drive: 'belt' })).toBe('R4 turns-not-complete');
  });

  it.each(['pointer', 'play', 'reading'])('[R4] then the tension: %s', (how) => {
    const on = ready({ tensioner: 'sprung' });
    on.call('tensioner-live', { drive: 'belt' });
    turn(on, 8);
    expect(on.refused('read-tension', { drive: 'belt', how, right: true })).toBe('R4 marks-not-called');
    marks(on);
    expect(needed(on)).toHaveLength(1);
    tension(on, true, how);
    expect(needed(on)).toEqual([]);
  });

  it('[R4] a tension read before the marks counts for nothing', () => {
    const on = ready({ tensioner: 'sprung' });
    on.call('tensioner-live', { drive: 'belt' });
    turn(on, 8);
    on.forged({ kind: 'tension-read', drive: 'belt', how: 'pointer', right: true });
    marks(on);
    expect(needed(on)).toHaveLength(1);
  });
});

describe('what fails', () => {
  it('[R5] any mark off, by however few teeth, and the next try is another', () => {
    const on = ready();
    turn(on, 8);
    read(on, 'crank', -1);
    expect(why(on)).toBe('last try failed: crank off by -1');
    expect(on.refused('read-mark', { drive: 'belt', mark: 'cam', teethOff: 0 })).toBe('R3 no-try-runs');
    turn(on, 8);
    marks(on);
    expect(needed(on)).toEqual([]);
    expect(state(on)?.tries.map((t) => t.failed ?? 'passed')).toEqual(['crank off by -1', 'passed']);
  });

  it('[R5] a mark seen off when the check had passed fails it', () => {
    const on = ready();
    turn(on, 8);
    marks(on);
    expect(needed(on)).toEqual([]);
    read(on, 'cam', 2);
    expect(why(on)).toBe('last try failed: cam off by 2');
  });

  it('[R5] a bind felt: stop, never force; its cause is entered before the next try', () => {
    const on = ready();
    turn(on, 3);
    on.call('feel-bind', { drive: 'belt' });
    expect(why(on)).toBe('last try failed: bind felt');
    for (const verb of ['turn-crank', 'turn-to-marks', 'feel-bind']) {
      const said = verb === 'turn-crank' ? toTurn : { drive: 'belt' };
      expect(on.no(verb, said)).toMatchObject({
        code: 'bind-not-explained',
        kind: 'gate',
        instead: expect.stringContaining('never force'),
      });
    }
    expect(on.refused('explain-bind', { drive: 'belt' })).toBe('L1 badly-said');
    on.call('explain-bind', { drive: 'belt', cause: 'a spanner left on the nose' });
    turn(on, 8);
    marks(on);
    expect(needed(on)).toEqual([]);
  });

  it('[R5] a bind before the first quarter was called is a try all the same', () => {
    const on = ready();
    on.call('feel-bind', { drive: 'belt' });
    expect(state(on)?.tries).toMatchObject([{ quarters: 0, failed: 'bind felt' }]);
    expect(on.refused('turn-crank', toTurn)).toBe('R5 bind-not-explained');
  });

  it('[R5] each try stays in the log', () => {
    const on = ready();
    turn(on, 8);
    read(on, 'cam', 1);
    turn(on, 2);
    on.call('feel-bind', { drive: 'belt' });
    on.call('explain-bind', { drive: 'belt', cause: 'lock half in' });
    turn(on, 8);
    marks(on);
    expect(state(on)?.tries.map((t) => [t.quarters, t.failed, t.explained])).toEqual([
      [8, 'cam off by 1', undefined],
      [2, 'bind felt', 'lock half in'],
      [8, undefined, undefined],
    ]);
  });

  it('[R5] non-interference engines too: nothing declared of a drive spares it', () => {
    const on = ready({ marks: [], parts: [], tensioner: 'none' });
    turn(on, 8);
    on.call('feel-bind', { drive: 'belt' });
    expect(needed(on)).toHaveLength(1);
  });
});

describe('how long it stands', () => {
  const passed = (more: { tensioner?: string; turns?: number } = {}) => {
    const on = ready(more, (b) => b.declare({ kind: 'part-declared', part: 'timing belt', heldBy: [] }));
    if (more.tensioner) on.call('tensioner-live', { drive: 'belt' });
    turn(on, 4 * (more.turns ?? 2));
    marks(on);
    if (more.tensioner) tension(on);
    expect(needed(on)).toEqual([]);
    return on;
  };

  it('[R6] only while nothing of the drive was opened after it', () => {
    const opened: ((on: Bench) => void)[] = [
      (on) => on.slack('idler/1'),
      (on) => on.off('idler/1'),
      (on) => on.call('remove-part', { part: 'timing belt' }),
    ];
    for (const open of opened) {
      const on = passed();
      on.off('cover/1', m6);
      on.tight('idler/1');
      expect(needed(on)).toEqual([]);
      open(on);
      expect(why(on)).toBe('opened, no check rotation stands');
    }
  });

  it('[R6] nor does one begun before the drive was opened once more, however it ends', () => {
    const on = ready();
    turn(on, 8);
    on.slack('idler/1');
    on.tight('idler/1');
    expect(on.refused('read-mark', { drive: 'belt', mark: 'cam', teethOff: 0 })).toBe('R3 no-try-runs');
    on.forged({ kind: 'locks-slid', drive: 'belt' });
    expect(needed(on)).toHaveLength(1);
  });

  it('[R6] setting tension again is one call and two more turns, no failed try', () => {
    const on = passed({ tensioner: 'set', turns: 4 });
    const n = on.call('reset-tension', { drive: 'belt' });
    expect(on.entriesOf(n)).toHaveLength(1);
    expect(needed(on)).toHaveLength(1);
    turn(on, 8);
    marks(on);
    tension(on);
    expect(needed(on)).toEqual([]);
    expect(state(on)?.tries).toHaveLength(1);
    expect(state(on)?.tries[0]).not.toHaveProperty('failed');
  });

  it('[R6] also after a tension that was not right: until it is set again the check has failed', () => {
    const on = ready({ tensioner: 'set' });
    on.call('tensioner-live', { drive: 'belt' });
    turn(on, 8);
    marks(on);
    tension(on, false);
    expect(why(on)).toBe('last try failed: tension not right');
    on.call('reset-tension', { drive: 'belt' });
    turn(on, 8);
    marks(on);
    tension(on);
    expect(needed(on)).toEqual([]);
    expect(state(on)?.tries).toHaveLength(1);
  });

  it('[R6] it mends no mark that was off', () => {
    const on = ready({ tensioner: 'set' });
    expect(on.refused('reset-tension', { drive: 'belt' })).toBe('R6 no-try-to-go-on-with');
    on.call('tensioner-live', { drive: 'belt' });
    turn(on, 8);
    read(on, 'cam', 1);
    on.call('reset-tension', { drive: 'belt' });
    expect(why(on)).toBe('last try failed: cam off by 1');
  });
});

describe('what hides the marks', () => {
  const hidden = () => {
    const on = ready({}, (b) => {
      b.declare({
        kind: 'behind-declared',
        front: 'area:lower cover',
        behind: 'rotation:belt',
        until: 'closed',
        gate: true,
        from: 'plan',
      });
      b.off('lower cover/1', m6);
      b.count('lower cover', 1);
      b.back('lower cover/1');
      b.countTrays();
    });
    return on;
  };

  it('[R7] is made snug or tight only after it has passed, and nothing overrides it', () => {
    const on = hidden();
    for (const last of [false, true]) {
      const no = on.no('tighten', { hole: 'lower cover/1', last }, { because: 'done already' });
      expect(`${no.rule} ${no.code} ${no.kind} ${no.places}`).toBe('R7 hides-what-is-not-proven gate rotation:belt');
    }
    turn(on, 8);
    marks(on);
    on.tight('lower cover/1');
    expect(on.open('hole-open')).toEqual([]);
  });

  it('[R7] unless a mark is read on it or by it: then it is on for now', () => {
    const on = hidden();
    on.call('remove', { hole: 'lower cover/1', to: 'tray:1' });
    on.back('lower cover/1', { forNow: true });
    on.tight('lower cover/1');
    expect(on.refused('make-final', { hole: 'lower cover/1' })).toBe('R7 hides-what-is-not-proven');
    on.countTrays();
    turn(on, 8);
    marks(on);
    on.call('make-final', { hole: 'lower cover/1' });
    expect(on.open('for-now')).toEqual([]);
  });

  it('[R7] parts and connections that hide them too', () => {
    const on = ready({}, (b) => {
      for (const front of ['part:plate', 'connection:sensor'] as const) {
        b.declare({
          kind: 'behind-declared',
          front,
          behind: 'rotation:belt',
          until: 'closed',
          gate: true,
          from: 'plan',
        });
      }
      b.call('remove-part', { part: 'plate', heldBy: [] });
      b.call('part-connection', { connection: 'sensor' });
    });
    expect(on.refused('fit-part', { part: 'plate' })).toBe('R7 hides-what-is-not-proven');
    expect(on.refused('make-connection', { connection: 'sensor' })).toBe('R7 hides-what-is-not-proven');
    on.call('fit-part', { part: 'plate', forNow: true });
    turn(on, 8);
    marks(on);
    on.call('make-part-final', { part: 'plate' });
    on.call('make-connection', { connection: 'sensor' });
  });

  it('[R7] a drive that was never open hides nothing', () => {
    const on = bench();
    on.declare(declared(), {
      kind: 'behind-declared',
      front: 'area:lower cover',
      behind: 'rotation:belt',
      until: 'closed',
      gate: true,
      from: 'plan',
    });
    on.slack('lower cover/1', m6);
    on.tight('lower cover/1');
    const drive = state(on);
    expect(drive && rotationNeeded(on.ledger(), drive)).toBe(false);
  });
});

describe('what is lost in the works', () => {
  const dropped = (reaches: boolean) => {
    const on = ready({}, (b) => b.off('cover/1', m6));
    const lost = on.own('cover/1');
    on.call('lose-fastener', { fastener: lost, reaches, where: 'belt bay' });
    on.countTrays();
    return { on, lost };
  };

  it('[T9] neither turned, to its marks nor for the check, nor started before the search was made', () => {
    const { on, lost } = dropped(true);
    for (const [verb, said] of [
      ['turn-crank', toTurn],
      ['turn-to-marks', { drive: 'belt' }],
      ['start-engine', {}],
    ] as const)
      expect(on.no(verb, said)).toMatchObject({
        rule: 'T9',
        code: 'works-not-searched',
        kind: 'gate',
        places: [`fastener:${lost}`],
      });
    on.call('search', { lost, how: 'magnet' });
    turn(on, 1);
  });

  it('[T9] nor while a piece of a broken one is lost there', () => {
    const on = ready();
    const n = on.call('break', { hole: 'cover/1', headTo: 'scrap', pieces: ['lost'], spec: m6 });
    expect(on.no('turn-crank', toTurn)).toMatchObject({ code: 'works-not-searched', places: [`piece:p${n}.1`] });
    on.call('search', { lost: `p${n}.1`, how: 'camera' });
    turn(on, 1);
  });

  it('[T9] what is found again, or cannot reach the works, stops nothing', () => {
    const { on, lost } = dropped(true);
    on.call('move-fastener', { fastener: lost, to: 'tray:1' });
    on.countTrays();
    turn(on, 1);
    turn(dropped(false).on, 1);
  });

  it('[X5] the check rotation waits for the search, which is the way of what is lost', () => {
    const { on, lost } = dropped(true);
    const way = (code: string) =>
      openPointsWithNext(on.ledger(), { atMs: 0, zoneMin: 0, run: 1, awakeMs: 0 }).find((p) => p.code === code)?.next;
    expect(way('lost')).toEqual({ verb: 'search', lost, how: 'magnet' });
    expect(way('rotation-needed')).toEqual({ verb: 'search', lost, how: 'magnet' });
  });
});

it('[R2] no tensioner is live while the belt it tensions is off: what was called before would stand for the next', () => {
  const on = bench();
  on.declare(declared({ parts: ['timing belt'] }), { kind: 'part-declared', part: 'timing belt', heldBy: [] });
  on.call('remove-part', { part: 'timing belt' });
  expect(on.no('tensioner-live', { drive: 'belt', how: 'pin pulled' })).toMatchObject({
    rule: 'R2',
    code: 'nothing-to-tension',
    kind: 'gate',
    places: ['part:timing belt'],
  });
  on.call('fit-part', { part: 'timing belt' });
  on.call('tensioner-live', { drive: 'belt', how: 'pin pulled' });
});
