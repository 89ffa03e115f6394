// S7 over 20,000 histories of a clock: put back and forward, lid shut, program closed, zone and summer time changed, the
// time shown called right now and then. What is earned is held against the true time of the history, which no clock shows.
// Its limit: where the clock is changed *and* the air is, a change of the clock cannot be told from a lid shut, so those
// two are not mixed here.
import { expect, it } from 'vitest';
import { cureFactor } from '../../src/job/beads.ts';
import { earnedSince } from '../../src/job/clock.ts';
import type { Product } from '../../src/job/entries/declared.ts';
import { emptyLedger } from '../../src/job/ledger.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { type Chance, chanceFrom } from '../agreement/chance.ts';

const histories = 20_000;
const hour = 3_600_000;
const label: Product = { product: 'grey', kind: 'moisture', fullHours: 24, labelCelsius: 23, labelHumidityPct: 50 };
type Air = { celsius: number; humidityPct: number };
const rateIn = (air: Air): number => 1 / cureFactor(label, air).factor;

type History = {
  lines: Line[];
  now: Stamp;
  /** Label hours by the true time, with all of it told; and without what was never called right. */
  trueHours: number;
  toldHours: number;
};

/** @param honest the clock is never wrong; else the air stays as it is */
function historyOf(chance: Chance, honest: boolean): History {
  const lines: Line[] = [];
  let [trueMs, offMs, awakeMs, run, zoneMin] = [Date.UTC(2026, 2, 28, 20), 0, 0, 1, 60];
  let air: Air = { celsius: chance.whole(2, 26), humidityPct: chance.whole(20, 70) };
  let [trueHours, toldHours, untold, unseen] = [0, 0, 0, 0];
  const stamp = (): Stamp => ({ atMs: trueMs + offMs, zoneMin, run, awakeMs });
  // Awake hours are told between two lines of one run; on either side of a closing they are time away like the rest.
  let closed = false;
  const seen = () => {
    if (closed) untold += unseen;
    else toldHours += unseen;
    [unseen, closed] = [0, false];
  };
  const say = (...entries: Line['entries']) => {
    lines.push({ n: lines.length + 1, ...stamp(), call: 'x', by: 'line', facing: {}, entries });
    seen();
  };
  const pass = (ms: number, awake: boolean) => {
    trueMs += ms;
    const hours = (ms / hour) * rateIn(air);
    trueHours += hours;
    if (awake) {
      awakeMs += ms;
      unseen += hours;
    } else untold += hours;
  };
  say({ kind: 'conditions-noted', ...air });
  for (let events = chance.whole(3, 16); events > 0; events--) {
    const roll = chance.roll();
    if (roll < 0.35) pass(chance.whole(1, 600) * 60_000, true);
    else if (roll < 0.5) pass(chance.whole(1, 900) * 60_000, false);
    else if (roll < 0.65) {
      pass(chance.whole(1, 3000) * 60_000, false);
      closed = true;
      run++;
      awakeMs = 0;
    } else if (roll < 0.75) zoneMin += chance.of([-60, 60, 120]);
    else if (roll < 0.85 && honest) {
      air = { celsius: chance.whole(2, 26), humidityPct: chance.whole(20, 70) };
      say({ kind: 'conditions-noted', ...air });
      continue;
    } else if (roll < 0.9 && !honest) offMs = chance.maybe(0.5) ? 0 : chance.whole(-3000, 3000) * 60_000;
    else if (offMs === 0) {
      say({ kind: 'clock-confirmed' });
      toldHours += untold;
      untold = 0;
      continue;
    }
    if (chance.maybe(0.7)) say({ kind: 'note-made', words: 'seen' });
  }
  seen();
  return { lines, now: stamp(), trueHours, toldHours };
}

const earned = ({ lines, now }: History): number =>
  earnedSince(
    { ...emptyLedger, lines: { all: lines, length: lines.length } },
    1,
    now,
    (air) => 1 / cureFactor(label, air).factor,
  ).hours;

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
