// Histories of a clock drawn by chance: put back and forward, lid shut, program closed, zone and summer time changed, the
// time shown called right now and then. What is earned is held against the true time of the history, which no clock shows.
// Its limit: where the clock is changed *and* the air is, a change of the clock cannot be told from a lid shut, so those
// two are not mixed here.
import { cureFactor } from '../../src/job/beads.ts';
import { earnedSince } from '../../src/job/clock.ts';
import type { Product } from '../../src/job/entries/declared.ts';
import type { Line, Stamp } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';
import type { Chance } from '../agreement/chance.ts';

const hour = 3_600_000;
const label: Product = { product: 'grey', kind: 'moisture', fullHours: 24, labelCelsius: 23, labelHumidityPct: 50 };
type Air = { celsius: number; humidityPct: number };
const rateIn = (air: Air): number => 1 / cureFactor(label, air).factor;

export type History = {
  lines: Line[];
  now: Stamp;
  /** Label hours by the true time, with all of it told; and without what was never called right. */
  trueHours: number;
  toldHours: number;
};

/** @param honest the clock is never wrong; else the air stays as it is */
export function historyOf(chance: Chance, honest: boolean): History {
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

export const earned = ({ lines, now }: History): number =>
  earnedSince(readLog(lines), 1, now, (air) => 1 / cureFactor(label, air).factor).hours;
