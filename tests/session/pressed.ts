// A key script on a bench of its own, without a screen.
import { plansAtHand } from '../../src/commands/plans.ts';
import type { Line } from '../../src/job/line.ts';
import type { Stretch } from '../jobs/key-script.ts';
import { atTheBench } from './at-the-bench.ts';

/** Presses a script on a bench of its own; what is waited for comes an hour later. */
export async function pressed(script: readonly Stretch[], keypad: boolean): Promise<readonly Line[]> {
  const { offers } = plansAtHand(new URL('../../', import.meta.url));
  const at = await atTheBench(undefined, { trays: ['1', '2', '3', '4', '5', '6'], plans: offers }, { keypad });
  at.pace.stepMs = 200;
  for (const { keys, until, text } of script) {
    if (until) at.pace.stepMs = 3_600_000;
    for (const key of keys) {
      await at.press(key);
      // A job on the shelf is opened in a moment of its own.
      await new Promise(setImmediate);
      const answer = at.bench.store.getState().session?.store.getState().answer;
      if (answer?.kind === 'refused') throw new Error(`"${text}": "${key}" was refused: ${answer.text}`);
    }
    at.pace.stepMs = 200;
  }
  const { lines } = at.state().ledger;
  return lines.all.slice(0, lines.length);
}
