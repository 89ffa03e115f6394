// Cure: what air makes of a label's time, and forecasts through changing air; properties and refusals.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefused } from '../../src/trade/answer.ts';
import {
  type AirNoted,
  type CureLabel,
  cureDepthMm,
  cureFactorIn,
  cureForecast,
  readAir,
} from '../../src/trade/cure.ts';
import { sure } from '../published/trade.ts';

const said = (answer: unknown): string => (isRefused(answer) ? answer.refused : `taken: ${JSON.stringify(answer)}`);
const label: CureLabel = { kind: 'moisture', labelCelsius: 23, labelHumidityPct: 50, fullHours: 24, lowestCelsius: 4 };
const hour = 3_600_000;
const asOnLabel = { celsius: 23, humidityPct: 50 };
const from = (air: AirNoted['air'], atMs = 0): AirNoted => ({ atMs, air });

describe('the air of the bench', () => {
  it.each<[string, Partial<CureLabel>, AirNoted['air'], RegExp]>([
    ['colder and drier', {}, { celsius: 10, humidityPct: 40 }, /^10 °C, 40 %: 2.9 times as long$/],
    ['as on the label', {}, asOnLabel, /^23 °C, 50 %: as on the label$/],
    ['warmer and wetter', {}, { celsius: 35, humidityPct: 90 }, /as on the label/],
    ['of unknown humidity', {}, { celsius: 23 }, /humidity unknown, taken as 40 %: 1.3 times as long/],
    ['below the lowest', {}, { celsius: 3, humidityPct: 50 }, /below 4 °C nothing cures/],
    [
      'by the label’s figure',
      { atCelsius: [{ celsius: 5, fullHours: 72 }] },
      { celsius: 8, humidityPct: 50 },
      /3.0 times as long, by the label's own figure for 5 °C/,
    ],
    ['anaerobic without a figure', { kind: 'anaerobic' }, { celsius: 8, humidityPct: 20 }, /gives no other time/],
    ['of what does not set', { kind: 'non-setting' }, { celsius: 8 }, /has no cure/],
  ])('%s', (_what, change, air, because) => {
    expect(sure(cureFactorIn({ ...label, ...change }, air)).because).toMatch(because);
  });

  const air = fc.record({ celsius: fc.integer({ min: -39, max: 59 }), humidityPct: fc.integer({ min: 1, max: 100 }) });
  it('never shortens, and colder or drier never shortens more', () => {
    fc.assert(
      fc.property(air, fc.integer({ min: 0, max: 10 }), fc.integer({ min: 0, max: 20 }), (one, colder, drier) => {
        const worse = {
          celsius: Math.max(-39, one.celsius - colder),
          humidityPct: Math.max(1, one.humidityPct - drier),
        };
        const [here, there] = [sure(cureFactorIn(label, one)).factor, sure(cureFactorIn(label, worse)).factor];
        expect(here).toBeGreaterThanOrEqual(1);
        expect(there).toBeGreaterThanOrEqual(here - 1e-12);
      }),
    );
  });

  it('that the line says is never shorter than what is reckoned with', () => {
    fc.assert(
      fc.property(air, (one) => {
        const { factor, because } = sure(cureFactorIn(label, one));
        const told = Number(/: ([\d.]+) times/.exec(because)?.[1] ?? Number.NaN);
        if (Number.isNaN(told)) return;
        expect(told).toBeGreaterThanOrEqual(factor - 0.0101);
        expect(told - factor).toBeLessThan(0.11);
      }),
    );
  });
});

describe('ready at', () => {
  it('counts each air from when it was noted to the next', () => {
    const notes = [from(asOnLabel), from({ celsius: 10, humidityPct: 50 }, 12 * hour)];
    const { factor } = sure(cureFactorIn(label, { celsius: 10, humidityPct: 50 }));
    const forecast = sure(cureForecast(label, 24, 0, notes, 13 * hour));
    expect(forecast.earnedHours).toBeCloseTo(12 + 1 / factor, 9);
    expect(forecast.readyAtMs).toBeCloseTo((12 + 12 * factor) * hour, 0);
  });
  it('is an hour off while an hour is left', () => {
    expect(sure(cureForecast(label, 24, 0, [from(asOnLabel)], 23 * hour))).toMatchObject({
      leftHours: 1,
      readyAtMs: 24 * hour,
    });
  });
  it('is open while nothing cures, and now once it is earned', () => {
    const cold = sure(cureForecast(label, 24, 0, [from({ celsius: 2, humidityPct: 50 })], 50 * hour));
    expect(cold).toMatchObject({ earnedHours: 0, leftHours: 24 });
    expect(cold.readyAtMs).toBeUndefined();
    expect(sure(cureForecast(label, 24, 0, [from(asOnLabel)], 30 * hour))).toMatchObject({
      leftHours: 0,
      readyAtMs: 30 * hour,
    });
  });

  const history = fc
    .array(
      fc.record({
        after: fc.integer({ min: 0, max: 20 }),
        air: fc.record({ celsius: fc.integer({ min: 0, max: 40 }), humidityPct: fc.integer({ min: 10, max: 95 }) }),
      }),
      {
        minLength: 1,
        maxLength: 8,
      },
    )
    .map((steps) => {
      let atMs = 0;
      return steps.map(({ after, air }, at): AirNoted => {
        atMs += at === 0 ? 0 : after * hour;
        return { atMs, air };
      });
    });

  it('never earns more than the hours that went by, and noting the same air again changes nothing', () => {
    fc.assert(
      fc.property(history, fc.integer({ min: 0, max: 40 }), fc.nat({ max: 7 }), (notes, more, which) => {
        const last = notes.at(-1) as AirNoted;
        const now = last.atMs + more * hour;
        const forecast = sure(cureForecast(label, 48, 0, notes, now));
        expect(forecast.earnedHours).toBeLessThanOrEqual(now / hour + 1e-9);
        const at = which % notes.length;
        const until = notes[at + 1]?.atMs ?? now;
        const again = notes.toSpliced(at + 1, 0, {
          ...(notes[at] as AirNoted),
          atMs: ((notes[at] as AirNoted).atMs + until) / 2,
        });
        expect(sure(cureForecast(label, 48, 0, again, now)).earnedHours).toBeCloseTo(forecast.earnedHours, 9);
      }),
      { numRuns: 2000 },
    );
  });
  it('is kept: waiting until then, in the same air, leaves nothing', () => {
    fc.assert(
      fc.property(history, (notes) => {
        const now = (notes.at(-1) as AirNoted).atMs;
        const { readyAtMs } = sure(cureForecast(label, 48, 0, notes, now));
        if (readyAtMs === undefined) return;
        expect(sure(cureForecast(label, 48, 0, notes, readyAtMs)).leftHours).toBeCloseTo(0, 6);
        if (readyAtMs > now + hour)
          expect(sure(cureForecast(label, 48, 0, notes, readyAtMs - hour)).leftHours).toBeGreaterThan(0);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('air as typed', () => {
  it.each([
    ['10 °C, 40 %', { celsius: 10, humidityPct: 40 }],
    ['50F 40%', { celsius: 10, humidityPct: 40 }],
    ['10', { celsius: 10 }],
    ['73.4 F; 45,5 % RH', { celsius: 23, humidityPct: 45.5 }],
  ])('%s', (text, air) => {
    const read = sure(readAir(text));
    expect(read.celsius).toBeCloseTo(air.celsius, 9);
    expect(read.humidityPct).toBe('humidityPct' in air ? air.humidityPct : undefined);
  });
});

describe('nonsense', () => {
  it.each([
    [() => readAir('warm'), /no temperature/],
    [() => readAir('10 C 400%'), /a humidity of 400 %/],
    [() => readAir('99'), /a bench of 99 °C/],
    [() => cureFactorIn(label, { celsius: Number.NaN }), /a bench of \?/],
    [() => cureFactorIn(label, { celsius: 20, humidityPct: 0 }), /a humidity of 0 %/],
    [() => cureFactorIn({ ...label, labelCelsius: 200 }, asOnLabel), /a label at 200 °C/],
    [() => cureFactorIn({ ...label, fullHours: -1 }, asOnLabel), /a label time of -1 h/],
    [
      () => cureFactorIn({ ...label, atCelsius: [{ celsius: 5, fullHours: 1e6 }] }, asOnLabel),
      /a label time of 1000000 h/,
    ],
    [() => cureForecast(label, 24, 0, [], 0), /no air was noted/],
    [() => cureForecast(label, 24, 0, [from(asOnLabel, 5)], 10), /no air was noted when the cure began/],
    [() => cureForecast(label, 24, 10, [from(asOnLabel)], 5), /begins later than now/],
    [() => cureForecast(label, 24, 5, [from(asOnLabel, 5), from(asOnLabel, 1)], 9), /out of order/],
    [() => cureForecast(label, -1, 0, [from(asOnLabel)], 5), /a time of -1 h/],
    [() => cureForecast(label, 24, 0, [from({ celsius: 400 })], 5), /a bench of 400/],
    [() => cureDepthMm({ depthMm: 3, hours: 0 }, 5), /after no time/],
    [() => cureDepthMm({ depthMm: -3, hours: 5 }, 5), /a depth of -3 mm/],
  ])('is refused: %s', (ask, line) => expect(said(ask())).toMatch(line));
});
