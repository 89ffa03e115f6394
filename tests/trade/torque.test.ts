// Torque: judging, adapters and stages; properties, and what is refused in which words.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { torqueAtFastenerFromSetting, torqueSettingFromAdapter } from '../../src/trade/adapter.ts';
import { isRefused } from '../../src/trade/answer.ts';
import { preloadFromTorque, torqueForPreload, usualTorque } from '../../src/trade/preload.ts';
import { nominalStrength, proofStressMPa } from '../../src/trade/property-class.ts';
import { torqueCoefficient } from '../../src/trade/torque-coefficient.ts';
import { judgeTorque, type StatedTorque } from '../../src/trade/torque-judged.ts';
import { isAccepted, readStages, soundStages, stagesInTurn, stagesText } from '../../src/trade/torque-stages.ts';
import { newtonMetresOf, readDistance, readTemperature, readTorque, torqueIn } from '../../src/trade/units.ts';
import { sure, thread } from '../published/trade.ts';

const said = (answer: unknown): string => (isRefused(answer) ? answer.refused : `taken: ${JSON.stringify(answer)}`);

describe('units as typed', () => {
  it.each([
    ['25 Nm', 25],
    ['25', 25],
    ['2,5 daNm', 25],
    ['18.5 lb-ft', 25.0826],
    ['100 in lbs', 11.2985],
    ['1 kgf.m', 9.80665],
    ['250kgf cm', 24.5166],
    ['10 foot-pounds', 13.5582],
  ])('%s is a torque', (text, newtonMetres) => expect(sure(readTorque(text))).toBeCloseTo(newtonMetres, 3));
  it.each([
    ['10', 10],
    ['50F', 10],
    ['-4 °F', -20],
    ['23 degrees C', 23],
    ['73.4 Fahrenheit', 23],
  ])('%s is a temperature', (text, celsius) => expect(sure(readTemperature(text))).toBeCloseTo(celsius, 9));
  it.each([
    ['60,000 miles', { distance: 60_000, unit: 'mi' }],
    ['90 000 km', { distance: 90_000, unit: 'km' }],
    ['1,234,567km', { distance: 1_234_567, unit: 'km' }],
    ['12.5 mi', { distance: 12.5, unit: 'mi' }],
  ])('%s is a distance', (text, read) => expect(readDistance(text)).toEqual(read));
  it.each([
    [() => readTorque('tight'), /no torque/],
    [() => readTorque('25 furlongs'), /no unit of torque/],
    [() => readTorque('25 constructor'), /no unit of torque/],
    [() => readTorque('-5 Nm'), /-5 N·m: 0 to 2000/],
    [() => readTorque('1e9 Nm'), /no unit/],
    [() => newtonMetresOf(Number.NaN, 'Nm'), /a torque of \?/],
    [() => newtonMetresOf(3000, 'lbf ft'), /4067 N·m: 0 to 2000/],
    [() => readTemperature('300 K'), /no unit of temperature/],
    [() => readTemperature('-200'), /-60 to 400/],
    [() => readDistance('60000'), /no unit of distance/],
    [() => readDistance('far'), /no distance/],
  ])('nonsense is refused: %s', (ask, line) => expect(said(ask())).toMatch(line));
  it('there and back is where it was', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        fc.constantFrom('lbf·ft', 'lbf·in', 'kgf·m', 'daN·m'),
        (value, unit) => {
          const there = newtonMetresOf(value, unit);
          if (!isRefused(there)) expect(sure(torqueIn(there, unit))).toBeCloseTo(value, 9);
        },
      ),
    );
  });
});

describe('strength', () => {
  it.each([
    [() => nominalStrength('7.7'), /is no property class: 4.6, 4.8, 5.6, 5.8, 6.8, 8.8, 9.8, 10.9, 12.9/],
    [() => proofStressMPa('10.9', thread('1/2-13')), /no grade of inch bolts: 2, 5, 8/],
    [() => proofStressMPa('5', thread('M8')), /no property class/],
    [() => proofStressMPa('9.8', thread('M18')), /up to M16/],
    [() => proofStressMPa('toString', thread('M8')), /no property class/],
    [() => torqueForPreload(thread('M8'), 20_000, 0), /coefficient of 0/],
    [() => torqueForPreload(thread('M8'), -1, 0.2), /a load of -1 N/],
    [
      () => torqueCoefficient(thread('M8'), { acrossFlatsMm: 13, holeMm: 13 }, { thread: 0.12, bearing: 0.12 }),
      /no bearing face/,
    ],
    [
      () => torqueCoefficient(thread('M8'), { acrossFlatsMm: 13, holeMm: 9 }, { thread: 5, bearing: 0.12 }),
      /friction in the thread of 5/,
    ],
  ])('nonsense is refused: %s', (ask, line) => expect(said(ask())).toMatch(line));
  it('torque for a load makes that load', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1000, max: 90_000 }),
        fc.double({ min: 0.1, max: 0.4, noNaN: true }),
        (newtons, coefficient) => {
          const newtonMetres = sure(torqueForPreload(thread('M10'), newtons, coefficient));
          const load = sure(preloadFromTorque(thread('M10'), newtonMetres, coefficient));
          expect(load.newtons).toBeCloseTo(newtons, 4);
          expect(load.fromNewtons).toBeLessThan(newtons);
          expect(load.toNewtons).toBeGreaterThan(newtons);
        },
      ),
    );
  });
});

describe('a stated torque', () => {
  const m8: StatedTorque = { thread: thread('M8'), newtonMetres: 25, class: '8.8' };
  it.each<[string, Partial<StatedTorque>, string, RegExp]>([
    ['that fits', {}, 'fits', /^25 N·m on M8 8.8 is 52 to 96 % of its proof load \(21.2 kN\)$/],
    ['past proof load', { newtonMetres: 80 }, 'passes-proof-load', /it would stretch for good/],
    ['far below', { newtonMetres: 3 }, 'far-below', /far below/],
    [
      'low, into aluminium',
      { newtonMetres: 3, into: 'aluminium' },
      'fits',
      /in aluminium the thread there is the limit/,
    ],
    ['past proof load, into aluminium', { newtonMetres: 80, into: 'aluminium' }, 'passes-proof-load', /stretch/],
    ['of an angle method', { newtonMetres: 80, by: 'torque-angle' }, 'not-judged', /passes proof load by design/],
    ['to the shoulder', { by: 'shoulder' }, 'no-figure-belongs', /carries no figure/],
    ['to the sleeve', { by: 'sleeve' }, 'no-figure-belongs', /carries no figure/],
    ['of unknown class', { class: undefined }, 'not-judged', /no class known of M8/],
  ])('%s', (_what, change, verdict, because) => {
    const judged = sure(judgeTorque({ ...m8, ...change }));
    expect(judged.verdict).toBe(verdict);
    expect(judged.because).toMatch(because);
  });
  it('in the wrong unit is recognised', () => {
    expect(sure(judgeTorque({ ...m8, thread: thread('M6'), newtonMetres: 95 })).perhaps).toBe(
      '95 lbf·in would be 10.73 N·m',
    );
    expect(sure(judgeTorque({ ...m8, thread: thread('M10'), newtonMetres: 5 })).perhaps).toBe(
      '5 kgf·m would be 49.03 N·m',
    );
    expect(sure(judgeTorque(m8)).perhaps).toBeUndefined();
  });
  it('is refused where it is absurd or the class is none', () => {
    expect(said(judgeTorque({ ...m8, newtonMetres: -1 }))).toMatch(/a torque of -1 N·m/);
    expect(said(judgeTorque({ ...m8, newtonMetres: Number.POSITIVE_INFINITY }))).toMatch(/a torque of \?/);
    expect(said(judgeTorque({ ...m8, class: '9.9' }))).toMatch(/no property class/);
  });
  it('that is the usual one always fits, and its double never does', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('M5', 'M6', 'M8', 'M10x1.25', 'M12', 'M14x1.5', 'M16'),
        fc.constantFrom('4.6', '5.8', '8.8', '10.9', '12.9'),
        (name, grade) => {
          const usual = sure(usualTorque(thread(name), grade));
          const judge = (newtonMetres: number) =>
            sure(judgeTorque({ thread: thread(name), class: grade, newtonMetres })).verdict;
          expect(judge(usual)).toBe('fits');
          expect(judge(usual * 2)).toBe('passes-proof-load');
          expect(judge(usual / 4)).toBe('far-below');
        },
      ),
    );
  });
});

describe('an adapter', () => {
  it('straight out lowers the setting, folded back raises it, square to it leaves it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 200 }),
        fc.integer({ min: 150, max: 800 }),
        fc.integer({ min: 10, max: 100 }),
        fc.integer({ min: 0, max: 180 }),
        (wanted, wrenchLengthMm, adapterLengthMm, angleDegrees) => {
          const adapter = { wrenchLengthMm, adapterLengthMm, angleDegrees };
          const setting = sure(torqueSettingFromAdapter(wanted, adapter));
          if (angleDegrees < 90) expect(setting).toBeLessThan(wanted);
          if (angleDegrees > 90) expect(setting).toBeGreaterThan(wanted);
          if (angleDegrees === 90) expect(setting).toBeCloseTo(wanted, 9);
          expect(sure(torqueAtFastenerFromSetting(setting, adapter))).toBeCloseTo(wanted, 9);
        },
      ),
    );
  });
  it('straight out is what is meant where no angle is said', () => {
    expect(torqueSettingFromAdapter(40, { wrenchLengthMm: 400, adapterLengthMm: 50 })).toBeCloseTo((40 * 400) / 450, 9);
  });
  it.each([
    [() => torqueSettingFromAdapter(40, { wrenchLengthMm: 0, adapterLengthMm: 50 }), /a wrench of 0 mm/],
    [() => torqueSettingFromAdapter(40, { wrenchLengthMm: 400, adapterLengthMm: -50 }), /an adapter of -50 mm/],
    [
      () => torqueSettingFromAdapter(40, { wrenchLengthMm: 400, adapterLengthMm: 50, angleDegrees: 270 }),
      /an angle of 270 °/,
    ],
    [
      () => torqueSettingFromAdapter(40, { wrenchLengthMm: 400, adapterLengthMm: 390, angleDegrees: 180 }),
      /the hand is over the fastener/,
    ],
    [() => torqueSettingFromAdapter(0, { wrenchLengthMm: 400, adapterLengthMm: 50 }), /a torque of 0 N·m/],
    [() => torqueAtFastenerFromSetting(Number.NaN, { wrenchLengthMm: 400, adapterLengthMm: 50 }), /a setting of \?/],
  ])('of impossible geometry is refused: %s', (ask, line) => expect(said(ask())).toMatch(line));
});

describe('stages', () => {
  it.each([
    ['+90', /before any torque starts from nowhere/],
    ['-360 40', /before any torque starts from nowhere/],
    ['40 30', /turns nothing/],
    ['40 -360', /nothing follows the loosening/],
    ['40 -360 +90', /starts from nowhere/],
    ['40 accept 60 +90', /is the last of several/],
    ['accept 60', /is the last of several/],
    ['40 +90 accept 110-60', /runs backwards/],
    ['40 +900', /a stage of 900 °/],
    ['40 1 turn', /\+1 turn tightens/],
    ['40 foo', /"foo" is no stage/],
    ['40 accept', /after "accept"/],
    ['', /1 to 8 stages/],
    ['1 2 3 4 5 6 7 8 9', /1 to 8 stages/],
  ])('%j is refused', (text, line) => expect(said(readStages(text))).toMatch(line));

  it('two angles stay two', () => {
    expect(readStages('40 +90 +90')).toEqual([{ newtonMetres: 40 }, { degrees: 90 }, { degrees: 90 }]);
  });
  it('are read without the space that a keypad lacks', () => {
    expect(readStages('40+90+90')).toEqual(readStages('40 +90 +90'));
    expect(readStages('40+1 turn')).toEqual(readStages('40 +1 turn'));
  });
  it('that are printed are read again as they were', () => {
    const stage = fc.oneof(
      fc.integer({ min: 10, max: 200 }).map((newtonMetres) => ({ newtonMetres })),
      fc.integer({ min: 5, max: 180 }).map((degrees) => ({ degrees })),
      fc.integer({ min: 90, max: 360 }).map((loosenDegrees) => ({ loosenDegrees })),
    );
    fc.assert(
      fc.property(fc.array(stage, { minLength: 1, maxLength: 7 }), (stages) => {
        const sound = soundStages(stages);
        if (isRefused(sound)) return;
        expect(readStages(stagesText(sound).replace(/loosen (\d+)/g, '-$1'))).toEqual(stages);
      }),
    );
  });
  it('accept what lies between, and want nothing where nothing was said', () => {
    const stages = sure(readStages('30 +90 accept 60-110'));
    expect([59, 60, 110, 111].map((read) => isAccepted(stages, read))).toEqual([false, true, true, false]);
    expect(isAccepted(sure(readStages('30 +90 accept 60')), 500)).toBe(true);
    expect(isAccepted(sure(readStages('30 +90')), 60)).toBeNull();
  });
  it('are done one on every bolt before the next', () => {
    const turn = stagesInTurn(sure(readStages('20 +90')), [3, 2, 4]);
    expect(turn.map(({ hole }) => hole)).toEqual([3, 2, 4, 3, 2, 4]);
    expect(turn.slice(0, 3).every(({ stage }) => 'newtonMetres' in stage)).toBe(true);
  });
});
