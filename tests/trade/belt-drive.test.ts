// Belt drive: properties and refusals.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefused } from '../../src/trade/answer.ts';
import { degreesOff, degreesPerTooth, turnsUntilMarksMeet } from '../../src/trade/belt-drive.ts';
import { sure } from '../published/trade.ts';

const said = (answer: unknown): string => (isRefused(answer) ? answer.refused : `taken: ${JSON.stringify(answer)}`);
const drive = fc.record({ z: fc.integer({ min: 10, max: 40 }), Z: fc.integer({ min: 62, max: 300 }) });

describe('the marks of a belt', () => {
  it('meet after an even number of turns, and of crank and belt alone never later', () => {
    fc.assert(
      fc.property(drive, ({ z, Z }) => {
        const { crankTurns, beltToCrankTurns } = sure(turnsUntilMarksMeet(z, Z));
        expect(crankTurns % 2).toBe(0);
        expect((crankTurns * z) % Z).toBe(0);
        expect([1, 2]).toContain(crankTurns / beltToCrankTurns);
        // The first time, not only some time.
        for (let turns = 2; turns < crankTurns; turns += 2) expect((turns * z) % Z).not.toBe(0);
      }),
    );
  });
  it('are told in one line', () => {
    expect(sure(turnsUntilMarksMeet(20, 107)).text).toBe(
      'the marks printed on the belt meet again after 214 turns of the crank: they are for fitting it, not for checking',
    );
  });
});

describe('teeth off', () => {
  it('are as many degrees as teeth, half of them at the cam, and come back after a turn', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 30 }), fc.integer({ min: -10, max: 10 }), (z, off) => {
        const { crankDegrees, camDegrees } = sure(degreesOff(off, z));
        expect(crankDegrees).toBeCloseTo((360 / z) * off, 9);
        expect(camDegrees).toBeCloseTo(crankDegrees / 2, 12);
        expect(sure(degreesOff(z, z)).crankDegrees).toBeCloseTo(360, 9);
      }),
    );
  });
  it.each([
    [1, 20, '1 tooth off: 18° at the crank, 9° at the cam'],
    [-2, 24, '2 teeth off: 30° at the crank, 15° at the cam'],
    [1, 22, '1 tooth off: 16.4° at the crank, 8.2° at the cam'],
    [0, 22, '0 teeth off: 0° at the crank, 0° at the cam'],
  ])('%d on %d is told as %s', (off, z, text) => expect(sure(degreesOff(off, z)).text).toBe(text));
});

describe('nonsense', () => {
  it.each([
    [() => degreesPerTooth(0), /a crank sprocket of 0 teeth/],
    [() => degreesPerTooth(20.5), /20.5 is no count of teeth/],
    [() => degreesPerTooth(24, 40), /has 48/],
    [() => degreesOff(0.5, 20), /0.5 is no count of teeth/],
    [() => degreesOff(99, 20), /off by 99 teeth/],
    [() => turnsUntilMarksMeet(20, 1000), /a belt of 1000 teeth/],
    [() => turnsUntilMarksMeet(50, 70), /does not go round sprockets of 50 and 100/],
    [() => turnsUntilMarksMeet(Number.NaN, 107), /a crank sprocket of \? teeth/],
  ])('is refused: %s', (ask, line) => expect(said(ask())).toMatch(line));
});
