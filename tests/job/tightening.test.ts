// O4 in words: how the next one is brought up, what to set on the wrench, and what torque can hardly be right.
import { describe, expect, it } from 'vitest';
import { newlyDoubted, tighteningWords } from '../../src/job/tightening.ts';
import { type Bench, bench, m8 } from './bench.ts';

const strong = { ...m8, class: '8.8' } as const;
/** An area of one bolt, off and back, with what is said of it. */
function withMethod(method: object, more: object = {}, spec: object = strong): Bench {
  const on = bench();
  on.declare({ kind: 'area-declared', area: 'head', method }, { kind: 'hole-declared', hole: 'head/1', ...more });
  on.off('head/1', spec);
  on.count('head', 1);
  on.back('head/1');
  return on;
}
const words = (on: Bench): string[] => tighteningWords(on.ledger(), 'head/1');

describe('how a fastener is brought up', () => {
  it.each([
    [{ by: 'torque', newtonMetres: 25 }, '25 N·m'],
    [{ by: 'torque', newtonMetres: 20, with: 'oil' }, '20 N·m, with oil'],
    [{ by: 'torque' }, "torque, no figure known: it is in the maker's manual"],
    [
      { by: 'torque-angle', stages: [{ newtonMetres: 20 }, { newtonMetres: 40 }, { degrees: 60 }, { degrees: 80 }] },
      '20 N·m, 40 N·m, +60°, +80°',
    ],
    [
      {
        by: 'torque-angle',
        stages: [{ newtonMetres: 40 }, { degrees: 90 }, { loosenDegrees: 360 }, { newtonMetres: 40 }, { degrees: 90 }],
      },
      '40 N·m, +90°, loosen 360°, 40 N·m, +90°',
    ],
    [
      {
        by: 'torque-angle',
        stages: [{ newtonMetres: 30 }, { degrees: 90 }, { acceptFromNewtonMetres: 60, acceptToNewtonMetres: 110 }],
      },
      '30 N·m, +90°, accept 60 to 110 N·m',
    ],
    [{ by: 'shoulder' }, 'to the shoulder, then stop: no figure'],
    [{ by: 'sleeve' }, 'to the sleeve, then stop: no figure'],
    [{ by: 'castle', newtonMetres: 20 }, '20 N·m, castle nut, new pin'],
  ])('[O4] is said in words: %j', (method, said) => expect(words(withMethod(method))).toEqual([said]));

  it('[O4] of several is one stage on all before the next', () => {
    const on = withMethod({ by: 'torque-angle', stages: [{ newtonMetres: 40 }, { degrees: 90 }] });
    on.declare({ kind: 'hole-declared', hole: 'head/2' });
    expect(words(on)).toEqual(['40 N·m, +90°; one stage on all before the next']);
  });

  // 40 N·m, 400 mm and 50 mm: straight out 35.556, at 45° 36.752, square 40, folded back 45.714 (lever arms).
  it.each([
    [undefined, 'set the wrench to 35.6 N·m: adapter 50 mm straight out'],
    [45, 'set the wrench to 36.8 N·m: adapter 50 mm at 45°'],
    [90, 'set the wrench to 40 N·m: adapter 50 mm at 90°'],
    [180, 'set the wrench to 45.7 N·m: adapter 50 mm at 180°'],
  ])('[O4] by an adapter at %s is set otherwise on the wrench', (angleDegrees, set) => {
    const adapter = { wrenchLengthMm: 400, adapterLengthMm: 50, ...(angleDegrees !== undefined && { angleDegrees }) };
    expect(words(withMethod({ by: 'torque', newtonMetres: 40 }, { adapter }, m8))).toEqual(['40 N·m', set]);
    const stages = [{ newtonMetres: 40 }, { degrees: 90 }];
    expect(words(withMethod({ by: 'torque-angle', stages }, { adapter }))).toEqual(['40 N·m, +90°', set]);
    expect(words(withMethod({ by: 'shoulder' }, { adapter }))).toHaveLength(1);
  });

  it.each([
    ['a figure beyond the shoulder', { by: 'shoulder', newtonMetres: 10 }],
    ['stages by hand', { by: 'hand', stages: [{ newtonMetres: 5 }] }],
    ['an angle from nowhere', { by: 'torque-angle', stages: [{ degrees: 90 }, { degrees: 90 }] }],
    ['a torque below the one before', { by: 'torque', stages: [{ newtonMetres: 40 }, { newtonMetres: 20 }] }],
    ['nothing after a loosening', { by: 'torque-angle', stages: [{ newtonMetres: 40 }, { loosenDegrees: 90 }] }],
    [
      'an acceptance before the last',
      { by: 'torque-angle', stages: [{ newtonMetres: 40 }, { acceptFromNewtonMetres: 60 }, { degrees: 90 }] },
    ],
  ])('[O4] is refused where it makes no sense: %s', (_, method) => {
    const on = bench();
    const entries = [{ kind: 'area-declared', area: 'head', method }];
    expect(on.refused('declare', { entries })).toBe('O4 method-makes-no-sense');
    expect(on.refused('order-service', { service: 'head', declares: entries })).toBe('O4 method-makes-no-sense');
  });
});

describe('a torque to be accepted at the end', () => {
  const stages = [{ newtonMetres: 30 }, { degrees: 90 }, { acceptFromNewtonMetres: 60, acceptToNewtonMetres: 110 }];
  const accepting = () => withMethod({ by: 'torque-angle', stages });

  it('[O4] outside its limits is no tight one; within, it is written with the call', () => {
    const on = accepting();
    for (const readNewtonMetres of [50, 120]) {
      expect(on.refused('tighten', { hole: 'head/1', last: true, readNewtonMetres })).toBe('O4 torque-not-accepted');
    }
    const n = on.tight('head/1', { readNewtonMetres: 80 });
    expect(on.entriesOf(n)).toMatchObject([{ kind: 'fastener-tightened', last: true, readNewtonMetres: 80 }]);
    expect(on.hole('head/1')?.passes).toMatchObject([{ readNewtonMetres: 80 }]);
  });
  it('[O4] not said is minded, and asked of no pass before the last and of no other method', () => {
    const minded = (on: Bench, last: boolean) => on.decided('tighten', { hole: 'head/1', last }).warnings;
    expect(minded(accepting(), true)).toEqual(['the torque at the end was not said: accept 60 to 110 N·m']);
    expect(minded(accepting(), false)).toBeUndefined();
    expect(minded(withMethod({ by: 'torque', newtonMetres: 25 }), true)).toBeUndefined();
  });
});

describe('a torque that was read', () => {
  const minded = (method: object, readNewtonMetres: number) =>
    withMethod(method).decided('tighten', { hole: 'head/1', last: true, readNewtonMetres }).warnings;
  it('[O4] is minded where it lies far from what the method ends in, and not where an angle follows', () => {
    expect(minded({ by: 'torque', newtonMetres: 25 }, 4)).toEqual(['4 N·m read where 25 N·m are wanted']);
    expect(minded({ by: 'torque', stages: [{ newtonMetres: 20 }, { newtonMetres: 40 }] }, 59)).toEqual([
      '59 N·m read where 40 N·m are wanted',
    ]);
    expect(minded({ by: 'torque', newtonMetres: 25 }, 26)).toBeUndefined();
    expect(minded({ by: 'torque-angle', stages: [{ newtonMetres: 30 }, { degrees: 90 }] }, 95)).toBeUndefined();
  });
});

describe('a torque that can hardly be right', () => {
  const doubts = (method: object, spec: object = strong): string[] => words(withMethod(method, {}, spec)).slice(1);

  // M8 8.8 bears 21 228 N at proof (ISO 898-1), by K 0.20 (Shigley) 33.9 N·m.
  it('[O4] is one that passes proof load, or is far below it, with the load in a range', () => {
    expect(doubts({ by: 'torque', newtonMetres: 60 }).join()).toMatch(
      /^60 N·m on M8 8.8 is \d+ to \d+ % of its proof load .*stretch for good/,
    );
    expect(doubts({ by: 'torque', newtonMetres: 2.5 }).join()).toMatch(/far below; 2.5 kgf·m would be 24.52 N·m$/);
    expect(doubts({ by: 'torque', newtonMetres: 25 })).toEqual([]);
  });
  // M8 12.9 bears 35 502 N at proof (ISO 898-1): 100 N·m is 62 500 N by K 0.20, and past it by the highest K as well.
  it('[O4] of a class nobody knows is one that no class bears', () => {
    expect(doubts({ by: 'torque', newtonMetres: 100 }, m8).join()).toMatch(
      /^no class known, and even of 12.9: 100 N·m on M8 12.9 is \d+ to \d+ % of its proof load/,
    );
    expect(doubts({ by: 'torque-angle', stages: [{ newtonMetres: 100 }, { degrees: 90 }] }, m8)).toEqual([]);
  });
  it.each([
    ['an angle method', { by: 'torque-angle', stages: [{ newtonMetres: 60 }, { degrees: 90 }] }, strong],
    ['a torque that is turned on', { by: 'torque', stages: [{ newtonMetres: 60 }, { degrees: 90 }] }, strong],
    ['the shoulder', { by: 'shoulder' }, strong],
    ['a class nobody knows', { by: 'torque', newtonMetres: 60 }, m8],
    ['a thread nobody knows', { by: 'torque', newtonMetres: 60 }, { kind: 'bolt', class: '8.8' }],
    ['a low torque into aluminium', { by: 'torque', newtonMetres: 6, into: 'aluminium' }, strong],
  ])('[O4] is not looked for with %s', (_, method, spec) => expect(doubts(method, spec)).toEqual([]));

  it('[O4] speaks once: when it is stated, when the fastener comes to be known, or when it is called', () => {
    const on = bench();
    const newly = (call: () => unknown): string[] => {
      const before = on.ledger();
      call();
      return newlyDoubted(before, on.ledger(), on.lines().at(-1)?.entries ?? []);
    };
    on.off('head/1', strong);
    const high = { kind: 'area-declared', area: 'head', method: { by: 'torque', newtonMetres: 60 } };
    expect(newly(() => on.declare(high))).toEqual([expect.stringMatching(/^head 1: 60 N·m on M8 8.8/)]);
    expect(newly(() => on.declare(high))).toEqual([]);
    expect(newly(() => on.off('head/2', { ...m8, thread: 'M6', class: '8.8' }))).toEqual([
      expect.stringMatching(/^head 2: 60 N·m on M6 8.8/),
    ]);
    on.count('head', 2);
    on.back('head/1');
    expect(newly(() => on.tight('head/1', { method: { by: 'torque', newtonMetres: 70 } }))).toEqual([
      expect.stringMatching(/^head 1: 70 N·m on M8 8.8/),
    ]);
  });
});
