// The clock during a cure: lid shut, program closed, clock put forward and back, zone and summer time changed. What a bead
// has earned is never more than the true time that passed.
import { ok } from 'node:assert/strict';
import { chanceFrom } from '../agreement/chance.ts';
import { earned, historyOf } from '../job/clock-history.ts';
import { type Row, type Size, trialsOf } from './row.ts';

export async function clocksDuringACure({ long, seed }: Size): Promise<Row> {
  const trials = trialsOf('sleep, clock steps, zones and summer time during a cure');
  for (let at = seed; at < seed + (long ? 100_000 : 500); at++) {
    await trials.one(`clock put wrong, seed ${at}`, () => {
      const history = historyOf(chanceFrom(at), false);
      const hours = earned(history);
      ok(hours <= history.trueHours + 1e-9, `${hours} h earned in ${history.trueHours} h`);
    });
    await trials.one(`clock never wrong, seed ${at}`, () => {
      const history = historyOf(chanceFrom(at ^ 0x5eed), true);
      const hours = earned(history);
      ok(Math.abs(hours - history.toldHours) <= 1 / 60, `${hours} h earned, ${history.toldHours} h told`);
    });
  }
  return trials;
}
