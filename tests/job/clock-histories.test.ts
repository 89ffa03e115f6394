// S7 over 20,000 histories of a clock (clock-history.ts), each held against the true time, which no clock shows.
import { expect, it } from 'vitest';
import { chanceFrom } from '../agreement/chance.ts';
import { earned, historyOf } from './clock-history.ts';

const histories = 20_000;

it('[S7] no history of a clock that is right when it is called so ever earns more than the true time', () => {
  let some = 0;
  for (let seed = 1; seed <= histories; seed++) {
    const history = historyOf(chanceFrom(seed), false);
    const hours = earned(history);
    if (hours > history.trueHours + 1e-9) expect(`seed ${seed}: ${hours}`).toBe(`at most ${history.trueHours}`);
    if (hours > 0) some++;
  }
  expect(some).toBeGreaterThan(histories / 2);
});

it('[S7] of a clock that is never wrong it earns to the minute what was awake or called right, in changing air', () => {
  let away = 0;
  for (let seed = 1; seed <= histories; seed++) {
    const history = historyOf(chanceFrom(seed ^ 0x5eed), true);
    const hours = earned(history);
    if (Math.abs(hours - history.toldHours) > 1 / 60) expect(`seed ${seed}: ${hours}`).toBe(`${history.toldHours}`);
    if (history.toldHours < history.trueHours) away++;
  }
  expect(away).toBeGreaterThan(histories / 10);
});
