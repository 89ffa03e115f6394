// The log on the bench: striking and restoring by a key on a line, and on the line of the strike itself.
import { expect, it } from 'vitest';
import { isStruck } from '../../src/job/ledger.ts';
import { atTheBench } from './at-the-bench.ts';

it('[U1] restores what a strike struck, on the line of that strike as on the struck one', async () => {
  const at = await atTheBench();
  await at.press('n', 'x', 'enter', 'S', 'a', 'c', 'o', 'v', 'e', 'r', 'enter', 'enter', 'enter', 'backspace');
  const n = at.state().ledger.lines.length - 1;
  expect(isStruck(at.state().ledger, n)).toBe(true);
  await at.press('J', 'r');
  expect(at.state().answer).toMatchObject({ kind: 'taken' });
  expect(isStruck(at.state().ledger, n)).toBe(false);
});
