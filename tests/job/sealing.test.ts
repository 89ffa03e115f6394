// S: beads, when they are void, what they have earned and what they let pass.
import { describe, expect, it } from 'vitest';
import { timeToConfirm } from '../../src/calls/lists/on-return.ts';
import { type BeadStanding, beadsOn, cureFactor, labelHours, noSealant } from '../../src/job/beads.ts';
import type { Product } from '../../src/job/entries/declared.ts';
import { stateOf } from '../../src/job/ledger.ts';
import type { Stamp } from '../../src/job/line.ts';
import { saturationPascals } from '../../src/trade/vapour.ts';
import { firstFacing } from '../../src/view/facing.ts';
import { type Bench, bench, m6 } from './bench.ts';

const grey: Product = {
  product: 'grey',
  kind: 'moisture',
  skinMinutes: 15,
  fillHours: 2,
  runHours: 6,
  fullHours: 24,
  labelCelsius: 23,
  labelHumidityPct: 50,
  lowestCelsius: 5,
};
const atLabel = { celsius: 23, humidityPct: 50 };

type Sealing = { label?: Product; holes?: number; face?: object; conditions?: Record<string, unknown> | null };

/** A sump whose holes are off and whose face is clean, conditions as on the label. */
function cleaned({ holes = 2, face = {}, conditions = atLabel }: Sealing = {}): Bench {
  const on = bench();
  const all = Array.from({ length: holes }, (_, i) => `sump/${i + 1}`);
  on.declare({ kind: 'face-declared', face: 'sump', area: 'sump', pressedBy: all, keepsIn: [], ...face });
  if (conditions) on.call('note-conditions', conditions);
  for (const hole of all) on.off(hole, m6);
  on.count('sump', holes);
  on.call('clean-face', { face: 'sump' });
  return on;
}
/** Laid and put together at once, every hole snug; its line is the last hole's. */
function sealed({ label = grey, holes = 2, ...more }: Sealing = {}): Bench {
  const on = cleaned({ holes, ...more });
  on.call('lay-bead', { face: 'sump', label });
  close(on, holes);
  return on;
}
function close(on: Bench, holes = 2): void {
  for (let i = 1; i <= holes; i++) on.back(`sump/${i}`);
  for (let i = 1; i <= holes; i++) on.snug(`sump/${i}`);
}
const beads = (on: Bench): BeadStanding[] => {
  const face = stateOf(on.ledger(), 'face', 'sump');
  return face ? beadsOn(on.ledger(), face, on.now()) : [];
};
const bead = (on: Bench): BeadStanding => beads(on).at(-1) as BeadStanding;
const hours = (n: number): number => n * 60;

it('[S1] a face on which a bead lies does not go on without sealant before it was taken off', () => {
  const on = cleaned();
  on.call('lay-bead', { face: 'sump', label: grey });
  expect(on.refused('lay-bead', { face: 'sump', label: noSealant })).toBe('S1 bead-lies-on-it');
  on.call('clean-face', { face: 'sump' });
  on.call('lay-bead', { face: 'sump', label: noSealant });
});

describe('a bead', () => {
  it('[S1] is a product from the workshop list', () => {
    const on = cleaned();
    expect(on.refused('lay-bead', { face: 'sump', product: 'grey' })).toBe('S1 product-not-on-the-list');
    on.declare({ kind: 'product-declared', label: grey });
    const n = on.call('lay-bead', { face: 'sump', product: 'grey' });
    expect(on.entriesOf(n)).toEqual([{ kind: 'bead-laid', face: 'sump', label: grey }]);
    expect(on.refused('lay-bead', { face: 'lid', product: 'grey' })).toBe('S1 no-such-face');
  });

  it('[S1] is laid on a face called clean after it was last opened', () => {
    const on = bench();
    on.declare(
      { kind: 'face-declared', face: 'sump', area: 'sump', pressedBy: ['sump/1'], keepsIn: [], part: 'pan' },
      { kind: 'part-declared', part: 'pan', heldBy: [] },
    );
    const lay = { face: 'sump', label: grey };
    expect(on.refused('lay-bead', lay)).toBe('S1 face-not-clean');
    on.call('clean-face', { face: 'sump' });
    on.off('sump/1', m6);
    expect(on.refused('lay-bead', lay)).toBe('S1 face-not-clean');
    on.call('clean-face', { face: 'sump' });
    on.call('remove-part', { part: 'pan' });
    expect(on.refused('lay-bead', lay, { because: 'sure' })).toBe('S1 face-not-clean');
    on.call('clean-face', { face: 'sump' });
    on.call('lay-bead', lay);
    expect(bead(on).void).toBeUndefined();
  });

  it('[S1] laid all the same on one that was not clean, it does not stand', () => {
    const on = bench();
    on.declare({ kind: 'face-declared', face: 'sump', area: 'sump', pressedBy: ['sump/1'], keepsIn: [] });
    on.off('sump/1', m6);
    on.forged({ kind: 'bead-laid', face: 'sump', label: grey });
    expect(bead(on).void).toBe('laid on a face that was not clean');
    expect(on.openAt('face:sump')).toEqual(['bead-missing']);
    const again = cleaned();
    again.back('sump/1');
    again.off('sump/1');
    again.forged({ kind: 'bead-laid', face: 'sump', label: grey });
    expect(bead(again).void).toBe('laid on a face that was not clean');
  });

  it('[S1] one dropped by a new cleaning is missing until one laid since stands', () => {
    const on = sealed();
    on.wait(hours(24));
    expect(on.openAt('face:sump')).toEqual([]);
    on.call('clean-face', { face: 'sump' });
    expect(on.openAt('face:sump')).toEqual(['bead-missing']);
    on.call('lay-bead', { face: 'sump', label: grey });
    expect(on.openAt('face:sump')).toEqual(['bead-curing']);
  });

  it('[S1] without conditions it is taken and earns nothing until told; what was before does not count', () => {
    const on = sealed({ conditions: null });
    on.wait(hours(30));
    expect(bead(on)).toMatchObject({ earnedHours: 0, readyAtMs: { full: undefined } });
    on.call('note-conditions', atLabel);
    on.wait(hours(3));
    expect(bead(on).earnedHours).toBeCloseTo(3, 6);
  });

  it('[S1] humidity unknown counts as 40 %', () => {
    const [unknown, forty, label] = [{ celsius: 23 }, { celsius: 23, humidityPct: 40 }, atLabel].map((conditions) => {
      const on = sealed({ conditions });
      on.wait(hours(5));
      return bead(on).earnedHours;
    }) as [number, number, number];
    expect(unknown).toBe(forty);
    expect(unknown).toBeCloseTo(label * 0.8, 6);
  });

  it('[S1] dabs of one product laid in one go are one bead; a face may have several, of several kinds', () => {
    const on = cleaned();
    on.call('lay-bead', { face: 'sump', label: grey });
    expect(beads(on)).toHaveLength(1);
    on.call('lay-bead', { face: 'sump', label: { ...grey, product: 'green', kind: 'anaerobic' } });
    expect(beads(on).map((b) => b.label.product)).toEqual(['grey', 'green']);
  });

  it('[S1] a face that wants two is missing the second', () => {
    const on = cleaned({ face: { bead: 2 } });
    expect(on.because('bead-missing', 'face:sump')).toBe('0 of 2 beads laid');
    on.call('lay-bead', { face: 'sump', label: grey });
    expect(on.because('bead-missing', 'face:sump')).toBe('1 of 2 beads laid');
    on.call('lay-bead', { face: 'sump', label: { ...grey, product: 'green' } });
    expect(on.open('bead-missing')).toEqual([]);
  });

  it('[S1] a face that wants one is missing it once it was opened, and not before', () => {
    const on = bench();
    on.declare({ kind: 'face-declared', face: 'sump', area: 'sump', pressedBy: ['sump/1'], keepsIn: [], bead: true });
    expect(on.openAt('face:sump')).toEqual([]);
    on.slack('sump/1', m6);
    expect(on.openAt('face:sump')).toEqual(['bead-missing']);
  });
});

describe('skin time', () => {
  it('[S2] a face whose holes are not all snug within it: the bead is void, clean and lay again', () => {
    const on = cleaned();
    on.call('lay-bead', { face: 'sump', label: grey });
    on.back('sump/1');
    on.back('sump/2');
    on.snug('sump/1');
    expect(bead(on).skinMinutesLeft).toBeCloseTo(13.5, 6);
    on.wait(13);
    expect(bead(on).void).toBeUndefined();
    on.wait(1);
    on.snug('sump/2');
    expect(bead(on).void).toBe('skinned before it was together');
    expect(on.openAt('face:sump')).toEqual(['bead-missing']);
    on.call('clean-face', { face: 'sump' });
    on.call('lay-bead', { face: 'sump', label: grey });
    expect(on.openAt('face:sump')).toEqual(['bead-curing']);
  });

  it('[S2] "by hand" is not snug, and once all are snug it has no skin time to keep', () => {
    const on = cleaned();
    on.call('lay-bead', { face: 'sump', label: grey });
    close(on);
    on.wait(hours(2));
    expect(bead(on).void).toBeUndefined();
    const late = cleaned();
    late.call('lay-bead', { face: 'sump', label: grey });
    late.back('sump/1');
    late.back('sump/2');
    late.snug('sump/1');
    late.wait(15);
    expect(bead(late).void).toBe('skinned before it was together');
  });

  it('[S2] it is measured pessimistically: the longest of wall and running clock, also while the program is closed', () => {
    const laid = () => {
      const on = cleaned();
      on.call('lay-bead', { face: 'sump', label: grey });
      return on;
    };
    const back = laid();
    back.clockMoved(-10);
    back.wait(16);
    close(back);
    expect(bead(back).void).toBe('skinned before it was together');
    const forward = laid();
    forward.clockMoved(1);
    close(forward);
    expect(bead(forward).void).toBe('skinned before it was together');
    const closed = laid();
    closed.away(0.5);
    close(closed);
    expect(bead(closed).void).toBe('skinned before it was together');
    const quick = laid();
    quick.away(0.05);
    close(quick);
    expect(bead(quick).void).toBeUndefined();
  });

  it('[S2] is for moisture-curing alone', () => {
    for (const kind of ['anaerobic', 'non-setting', 'dry'] as const) {
      const on = cleaned();
      on.call('lay-bead', { face: 'sump', label: { ...grey, kind } });
      on.wait(hours(5));
      close(on);
      expect(bead(on).void).toBeUndefined();
    }
  });
});

describe('where cure counts from', () => {
  it('[S3] the last hole snug', () => {
    const on = cleaned({ holes: 3 });
    on.call('lay-bead', { face: 'sump', label: { ...grey, skinMinutes: 600 } });
    close(on, 2);
    on.back('sump/3');
    on.wait(hours(4));
    expect(bead(on)).toMatchObject({ togetherAt: 0, earnedHours: 0 });
    const last = on.snug('sump/3');
    on.wait(hours(1));
    expect(bead(on).togetherAt).toBe(last);
    expect(bead(on).earnedHours).toBeCloseTo(1, 6);
  });

  it('[S3] a hole as found or left empty is no hole to wait for', () => {
    const on = bench();
    on.declare({
      kind: 'face-declared',
      face: 'sump',
      area: 'sump',
      pressedBy: ['sump/1', 'sump/2', 'sump/3'],
      keepsIn: [],
    });
    on.call('find-fastener', { hole: 'sump/2', spec: m6 });
    on.call('find-empty', { hole: 'sump/3' });
    on.call('leave-empty', { hole: 'sump/3', who: 'Ann', because: 'boss is gone' });
    on.off('sump/1', m6);
    on.count('sump', 3);
    on.call('clean-face', { face: 'sump' });
    on.call('lay-bead', { face: 'sump', label: grey });
    on.back('sump/1');
    const n = on.snug('sump/1');
    expect(bead(on).togetherAt).toBe(n);
  });

  it('[S3] a later final pass or retorque without slackening does not restart it', () => {
    const on = sealed();
    const { togetherAt } = bead(on);
    on.wait(hours(5));
    for (const hole of ['sump/1', 'sump/2']) on.tight(hole);
    for (const hole of ['sump/1', 'sump/2']) on.tight(hole);
    expect(bead(on).togetherAt).toBe(togetherAt);
    expect(bead(on).earnedHours).toBeGreaterThan(5);
  });

  it('[S3] one hole slackened alone begins it anew once it is snug again, and nothing is reached before', () => {
    const on = sealed();
    on.wait(hours(30));
    expect(bead(on).reached.full).toBe(true);
    on.slack('sump/1');
    expect(bead(on)).toMatchObject({
      togetherAt: 0,
      earnedHours: 0,
      reached: { fill: false, run: false, full: false },
    });
    expect(bead(on).void).toBeUndefined();
    expect(on.because('bead-curing', 'face:sump')).toBe('the face is not together');
    const n = on.snug('sump/1');
    on.wait(hours(2));
    expect(bead(on).togetherAt).toBe(n);
    expect(bead(on).earnedHours).toBeCloseTo(2, 6);
  });
});

describe('what an hour at the bench is worth', () => {
  const earnedIn = (conditions: Record<string, unknown>, label: Product = grey): number => {
    const on = sealed({ conditions, label });
    on.wait(hours(10));
    return bead(on).earnedHours / 10;
  };
  const figures = [
    { celsius: 5, fullHours: 72 },
    { celsius: 15, fullHours: 36 },
  ];

  it('[S4] the label figure for the temperature comes first: that one, or the nearest colder', () => {
    const label = { ...grey, atCelsius: figures };
    expect(earnedIn({ celsius: 15, humidityPct: 50 }, label)).toBeCloseTo(24 / 36, 6);
    expect(earnedIn({ celsius: 19, humidityPct: 50 }, label)).toBeCloseTo(24 / 36, 6);
    expect(earnedIn({ celsius: 14, humidityPct: 50 }, label)).toBeCloseTo(24 / 72, 6);
    expect(earnedIn({ celsius: 5, humidityPct: 50 }, label)).toBeCloseTo(24 / 72, 6);
  });

  // Pa over water: 872.6 at 5 °C, 2810.9 at 23 °C, IAPWS-IF97 as printed in the ASHRAE Handbook of Fundamentals 2017,
  // chapter 1, table 3 (5 °C) and in steam tables (23 °C).
  it.each([
    [{ celsius: 5, humidityPct: 50 }, 872.6 / 2810.9],
    [{ celsius: 5, humidityPct: 80 }, 872.6 / 2810.9],
    [{ celsius: 23, humidityPct: 25 }, 0.5],
    [{ celsius: 30, humidityPct: 25 }, 0.5],
    [{ celsius: 5, humidityPct: 25 }, (872.6 / 2810.9) * 0.5],
  ])(
    '[S4] else colder or drier air lengthens the time by the ratio of vapour pressures: %j',
    (conditions, expected) => {
      expect(earnedIn(conditions) / expected).toBeCloseTo(1, 2);
    },
  );

  it('[S4] the vapour pressures are those of the steam tables within 0.1 %', () => {
    for (const [celsius, pascal] of [
      [0, 611.2],
      [5, 872.6],
      [10, 1228.2],
      [23, 2810.9],
      [25, 3169.7],
      [40, 7384.4],
    ] as const) {
      expect(Math.abs(saturationPascals(celsius) / pascal - 1)).toBeLessThan(0.001);
    }
  });

  it('[S4] warmer or wetter never shortens it, nor does a label figure quicker than the label', () => {
    for (const conditions of [
      { celsius: 35, humidityPct: 90 },
      { celsius: 23, humidityPct: 90 },
      { celsius: 35, humidityPct: 50 },
    ])
      expect(earnedIn(conditions)).toBeCloseTo(1, 9);
    const quick = { ...grey, atCelsius: [{ celsius: 20, fullHours: 12 }] };
    expect(earnedIn({ celsius: 20, humidityPct: 30 }, quick)).toBeCloseTo(1, 9);
  });

  it.each([
    [{ celsius: 10, humidityPct: 40 }, '10 °C, 40 %: 2.9 times as long'],
    [{ celsius: 10 }, '10 °C, humidity unknown, taken as 40 %: 2.9 times as long'],
    [{ celsius: 25, humidityPct: 60 }, '25 °C, 60 %: as on the label'],
    [{ celsius: 2, humidityPct: 60 }, '2 °C, 60 %: below 5 °C nothing cures'],
    [undefined, 'bench conditions not told'],
  ])('[S4] says why it takes as long as it does: %j', (air, because) => {
    const label = {
      product: 'grey',
      kind: 'moisture',
      labelCelsius: 23,
      labelHumidityPct: 50,
      lowestCelsius: 5,
    } as const;
    expect(cureFactor(label, air).because).toBe(because);
  });

  it('[S4] each noted condition counts from when it began to the next', () => {
    const on = sealed();
    on.wait(hours(2));
    on.call('note-conditions', { celsius: 23, humidityPct: 25 });
    on.wait(hours(4));
    on.call('note-conditions', atLabel);
    on.wait(hours(1));
    expect(bead(on).earnedHours).toBeCloseTo(2 + 2 + 1, 1);
  });

  it('[S4] below the lowest temperature nothing is earned', () => {
    expect(earnedIn({ celsius: 4.9, humidityPct: 90 })).toBe(0);
    expect(earnedIn({ celsius: 4.9, humidityPct: 90 }, { ...grey, atCelsius: figures })).toBe(0);
    const on = sealed({ conditions: { celsius: 4, humidityPct: 50 } });
    expect(bead(on)).toMatchObject({ factor: Number.POSITIVE_INFINITY, readyAtMs: { full: undefined } });
  });

  it('[S4] in words: a day and an hour by the clock of the bench, never a minute early, or what is wanting first', () => {
    const words = (on: Bench) => on.because('bead-curing', 'face:sump');
    const on = sealed();
    const { atMs } = on.lines()[bead(on).togetherAt - 1] as Stamp;
    // Snug half a minute past 9:06 of a Monday by a clock an hour ahead of UTC.
    expect(new Date(atMs).toISOString()).toBe('2026-03-02T08:06:30.000Z');
    expect(words(on)).toBe('grey is curing, ready Tuesday 09:07, may be run Monday 15:07');
    const slow = sealed({ label: { ...grey, fullHours: 200 } });
    expect(words(slow)).toBe('grey is curing, ready 2026-03-10 17:07, may be run Monday 15:07');
    expect(words(sealed({ conditions: null }))).toBe(
      'grey is curing, ready once bench conditions it cures under are told',
    );
    on.slack('sump/1');
    expect(words(on)).toBe('the face is not together');
  });

  it('[X5] what only time closes has no next call; the bench and the clock are asked for where they are wanting', () => {
    const next = (on: Bench) => on.next('bead-curing', 'face:sump');
    const on = sealed();
    for (const hole of ['sump/1', 'sump/2']) on.tight(hole);
    expect(next(on)).toBeUndefined();
    on.declare({ kind: 'area-declared', area: 'sump', role: 'engine' });
    expect(on.next('road-test', 'vehicle')).toBeUndefined();
    on.away(2);
    expect(next(on)).toEqual({ verb: 'confirm-clock' });
    const because = () => on.because('bead-curing', 'face:sump');
    // S7: nothing is earned before the clock is called right, and no time is told that slides on from look to look.
    const still = because();
    expect(still).toBe(
      'grey is curing, nothing is earned until the clock is called right, then ready Tuesday 09:07, may be run Monday 15:07',
    );
    on.wait(30);
    expect(because()).toBe(still);
    // From the first call on time counts as it runs, and the time away does once the clock is called right.
    on.declare({ kind: 'area-declared', area: 'pump' });
    expect(because()).toMatch(
      /is curing, ready Tuesday 11:\d\d, .*; 2 h 31 min away count only once the clock is called right$/,
    );
    const counted = because();
    on.wait(30);
    expect(because()).toBe(counted);
    expect(next(sealed({ conditions: null }))).toEqual({ verb: 'note-conditions', celsius: 23 });
    on.slack('sump/1');
    expect(next(on)).toEqual({ verb: 'tighten', hole: 'sump/1' });
  });

  it('[S4] the bead says when it will be ready at the conditions in force', () => {
    const on = sealed({ conditions: { celsius: 23, humidityPct: 25 } });
    const from = on.now().atMs;
    const left = ((bead(on).readyAtMs.full as number) - from) / 3_600_000;
    expect(left).toBeCloseTo(48, 1);
    on.wait(hours(10));
    expect(((bead(on).readyAtMs.full as number) - on.now().atMs) / 3_600_000).toBeCloseTo(left - 10, 6);
  });
});

describe('three label times', () => {
  const filling = (keepsIn: string[]) => {
    const on = sealed({ face: { keepsIn } });
    for (const circuit of ['oil', 'coolant']) on.call('drain', { circuit });
    return on;
  };
  const readyToStart = (on: Bench) => {
    on.call('see-oil-level');
    on.countTrays();
    on.call('tools-out');
  };

  it('[S5] filling a circuit this face keeps in waits for the first; another does not', () => {
    const on = filling(['oil']);
    on.call('fill-fluid', { circuit: 'coolant' });
    const no = on.no('fill-fluid', { circuit: 'oil' });
    expect(`${no.rule} ${no.code} ${no.kind} ${no.places}`).toBe('S5 not-cured-to-fill gate face:sump');
    on.wait(hours(2));
    on.call('fill-fluid', { circuit: 'oil' });
  });

  it('[S5] where it names none, every filling waits', () => {
    const on = filling([]);
    for (const circuit of ['oil', 'coolant']) {
      expect(on.refused('fill-fluid', { circuit })).toBe('S5 not-cured-to-fill');
    }
  });

  it('[S5] first start waits for the second, release for the third', () => {
    const on = sealed();
    for (const hole of ['sump/1', 'sump/2']) on.tight(hole);
    readyToStart(on);
    on.wait(hours(5.5));
    const no = on.no('start-engine');
    expect(`${no.rule} ${no.code} ${no.places}`).toBe('S5 bead-not-ready face:sump');
    on.wait(hours(0.5));
    on.call('start-engine');
    expect(on.open()).toEqual(['bead-curing face:sump']);
    expect(on.refused('release', { who: 'Ann' })).toBe('X1 open-points');
    on.wait(hours(18));
    on.call('release', { who: 'Ann' });
  });

  it('[S5] a void bead lets neither be filled nor be started', () => {
    const on = cleaned();
    on.call('lay-bead', { face: 'sump', label: { ...grey, fillHours: 0, runHours: 0 } });
    on.wait(20);
    close(on);
    expect(on.refused('fill-fluid', { circuit: 'oil' })).toBe('S5 not-cured-to-fill');
    readyToStart(on);
    expect(on.no('start-engine')).toMatchObject({ code: 'bead-not-ready', instead: 'clean and lay again' });
  });

  it.each([
    ['fillHours', { fillHours: 3 }],
    ['runHours', { runHours: 3 }],
    ['fullHours', { fullHours: 3 }],
  ])('[S5] only %s given: it serves for all', (_, given) => {
    const { fillHours: _f, runHours: _r, fullHours: _u, ...bare } = grey;
    expect(labelHours({ ...bare, ...given })).toEqual({ fill: 3, run: 3, full: 3 });
  });

  it('[S5] of two given each serves for itself, and the nearer one for the third', () => {
    const { fillHours: _f, runHours: _r, fullHours: _u, ...bare } = grey;
    expect(labelHours({ ...bare, runHours: 3, fullHours: 9 })).toEqual({ fill: 3, run: 3, full: 9 });
    expect(labelHours({ ...bare, fillHours: 2, fullHours: 9 })).toEqual({ fill: 2, run: 9, full: 9 });
    expect(labelHours({ ...bare, fillHours: 2, runHours: 3 })).toEqual({ fill: 2, run: 3, full: 3 });
  });

  it('[S5] turning by hand is allowed, and what is allowed meanwhile is said', () => {
    const on = sealed({ face: { keepsIn: ['oil'] } });
    const drive = {
      drive: 'belt',
      areas: ['idler'],
      parts: [],
      marks: ['cam'],
      turns: 2,
      tensioner: 'none',
      crankKeyed: true,
    };
    on.declare({ kind: 'drive-declared', ...drive });
    on.slack('idler/1', m6);
    on.tight('idler/1');
    on.countTrays();
    on.call('turn-crank', { drive: 'belt', quarters: 8 });
    const no = on.no('fill-fluid', { circuit: 'oil' });
    expect(no.instead).toBe('wait for the first label time; turning by hand is allowed');
    expect(no.because).toMatch(/^the bead on sump still cures: ready Monday \d\d:\d\d$/);
    expect(bead(on).reached).toEqual({ fill: false, run: false, full: false });
    on.wait(hours(2));
    expect(bead(on).reached).toEqual({ fill: true, run: false, full: false });
    on.wait(hours(4));
    expect(bead(on).reached).toEqual({ fill: true, run: true, full: false });
  });
});

describe('opened again', () => {
  it('[S6] taking off the face part voids its beads, and the face is dirty again', () => {
    const on = bench();
    on.declare(
      { kind: 'face-declared', face: 'sump', area: 'sump', pressedBy: ['sump/1', 'sump/2'], keepsIn: [], part: 'pan' },
      { kind: 'part-declared', part: 'pan', heldBy: ['sump/1', 'sump/2'] },
    );
    for (const hole of ['sump/1', 'sump/2']) on.off(hole, m6);
    on.count('sump', 2);
    on.call('clean-face', { face: 'sump' });
    on.call('lay-bead', { face: 'sump', label: grey });
    on.back('sump/1');
    expect(bead(on).void).toBeUndefined();
    on.slack('sump/1');
    on.call('remove-part', { part: 'pan' });
    expect(bead(on).void).toBe('its part came off');
    expect(on.refused('lay-bead', { face: 'sump', label: grey })).toBe('S1 face-not-clean');
  });

  it.each([
    ['slack', 'slacken'],
    ['off', 'remove'],
  ])('[S6] two of its holes %s at once after it was together void its beads; one alone does not', (_, verb) => {
    const on = sealed({ holes: 3 });
    const said = (hole: string) => ({ hole, ...(verb === 'remove' && { to: 'tray:1' }) });
    on.call(verb, said('sump/1'));
    expect(bead(on).void).toBeUndefined();
    if (verb === 'remove') on.back('sump/1');
    on.snug('sump/1');
    on.call(verb, said('sump/2'));
    expect(bead(on).void).toBeUndefined();
    on.call(verb, said('sump/1'));
    expect(bead(on).void).toBe('opened again');
    expect(on.openAt('face:sump')).toEqual(['bead-missing']);
    expect(on.refused('lay-bead', { face: 'sump', label: grey })).toBe('S1 face-not-clean');
    for (const hole of ['sump/1', 'sump/2']) {
      if (verb === 'remove') on.back(hole);
      on.snug(hole);
    }
    expect(bead(on).void).toBe('opened again');
  });

  it('[S6] one slack and one off are two; two on by a few turns are not', () => {
    const on = sealed({ holes: 3 });
    on.slack('sump/1');
    on.off('sump/2');
    expect(bead(on).void).toBe('opened again');
    const turns = cleaned({ holes: 3 });
    turns.call('lay-bead', { face: 'sump', label: grey });
    for (const hole of ['sump/1', 'sump/2', 'sump/3']) turns.back(hole);
    turns.off('sump/1');
    turns.off('sump/2');
    expect(bead(turns).void).toBeUndefined();
  });
});

describe('time earned', () => {
  it('[S7] while the program runs it is the lesser of wall and monotonic clock', () => {
    const forward = sealed();
    forward.wait(hours(1));
    forward.clockMoved(5);
    expect(bead(forward).earnedHours).toBeCloseTo(1, 6);
    expect(bead(forward).awayHours).toBeCloseTo(5, 6);
    const back = sealed();
    back.wait(hours(3));
    back.clockMoved(-2);
    expect(bead(back).earnedHours).toBeCloseTo(1, 6);
  });

  it('[S7] time away is earned once the time shown is called right', () => {
    const on = sealed();
    on.away(10);
    expect(bead(on).earnedHours).toBeLessThan(0.01);
    on.wait(hours(1));
    on.call('confirm-clock');
    expect(bead(on).earnedHours).toBeCloseTo(11, 1);
    on.away(5);
    expect(bead(on).earnedHours).toBeCloseTo(11, 1);
    expect(bead(on).awayHours).toBeCloseTo(5, 1);
  });

  it('[S7] the clock changed while it ran is time away too, and a lid shut', () => {
    const on = sealed();
    on.clockMoved(4);
    on.call('confirm-clock');
    expect(bead(on).earnedHours).toBeCloseTo(4, 1);
  });

  it('[S7] a step back earns nothing, and what went forward before it is taken back', () => {
    const on = sealed();
    on.clockMoved(-6);
    on.call('confirm-clock');
    expect(bead(on).earnedHours).toBeGreaterThanOrEqual(0);
    expect(bead(on).earnedHours).toBeLessThan(0.02);
    const there = sealed();
    there.clockMoved(6);
    there.call('note', { words: 'clock was wrong' });
    there.clockMoved(-6);
    there.call('confirm-clock');
    expect(bead(there).earnedHours).toBeLessThan(0.03);
  });

  it('[S7] every line is a witness of the clock, struck or not', () => {
    const story = (between: boolean) => {
      const on = sealed();
      on.wait(hours(2));
      const n = between ? on.call('note', { words: 'radio on' }) : 0;
      on.clockMoved(-2);
      on.wait(hours(1));
      if (between) on.call('strike', { lines: [n] });
      return bead(on).earnedHours;
    };
    expect(story(false)).toBeCloseTo(1, 1);
    expect(story(true)).toBeCloseTo(2, 1);
  });

  it('[S7] it is asked on return, once, and only while something cures', () => {
    const on = sealed();
    const asked = () => timeToConfirm({ ledger: on.ledger(), now: on.now(), facing: firstFacing, plans: () => [] });
    on.wait(hours(1));
    expect(asked()).toBeUndefined();
    on.away(3);
    expect(asked()).toMatch(/^Monday \d\d:\d\d$/);
    on.call('confirm-clock');
    expect(asked()).toBeUndefined();
    // Opened anew within seconds it is asked as well: until a call is made there, every minute is time away.
    on.away(1 / 3600);
    expect(asked()).toMatch(/^Monday/);
    on.call('confirm-clock');
    expect(asked()).toBeUndefined();
    on.away(40);
    expect(asked()).toMatch(/^Wednesday/);
    on.call('confirm-clock');
    on.away(5);
    expect(asked()).toBeUndefined();
  });

  it('[S7] a struck confirmation confirms nothing', () => {
    const on = sealed();
    on.away(10);
    const n = on.call('confirm-clock');
    expect(bead(on).earnedHours).toBeCloseTo(10, 1);
    on.call('strike', { lines: [n] });
    expect(bead(on).earnedHours).toBeLessThan(0.1);
  });
});

describe('kinds', () => {
  it('[S8] moisture-curing takes the vapour ratio, anaerobic the label time alone', () => {
    const dryAndCold = { celsius: 10, humidityPct: 20 };
    const worth = (label: Product) => {
      const on = sealed({ label, conditions: dryAndCold });
      on.wait(hours(10));
      return bead(on).earnedHours;
    };
    expect(worth(grey)).toBeLessThan(2);
    expect(worth({ ...grey, kind: 'anaerobic' })).toBeCloseTo(10, 6);
    const figure = { ...grey, kind: 'anaerobic' as const, atCelsius: [{ celsius: 10, fullHours: 48 }] };
    expect(worth(figure)).toBeCloseTo(5, 6);
    expect(worth({ ...grey, kind: 'anaerobic', lowestCelsius: 15 })).toBe(0);
  });

  it.each(['non-setting', 'dry'] as const)('[S8] %s has no cure', (kind) => {
    const on = sealed({ label: { ...grey, kind }, conditions: null });
    expect(bead(on).reached).toEqual({ fill: true, run: true, full: true });
    expect(on.openAt('face:sump')).toEqual([]);
    on.slack('sump/1');
    on.slack('sump/2');
    expect(on.openAt('face:sump')).toEqual(['bead-missing']);
  });
});
