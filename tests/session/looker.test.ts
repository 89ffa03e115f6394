// Whose eyes a second look is: asked once a day, left out or not.
import { expect, it } from 'vitest';
import { atTheBench } from './at-the-bench.ts';

it.each([
  ['with a name', ['A', 'd', 'a']],
  ['left out', []],
])('is asked with the first second look of a day, and not with the next (%s)', async (_how, name) => {
  const at = await atTheBench([]);
  at.session().runLine('job "van"');
  for (const area of ['cap', 'lid'])
    for (const call of [`area ${area}`, 'critical', 'off 1', 'holes 1', 'back 1', 'tight 1', 'tight 1'])
      at.session().runLine(call);
  await at.press('B', 'z');
  expect(at.view().asking).toMatchObject({ type: 'who' });
  await at.press(...name, 'enter');
  expect(at.view().asking).toBeUndefined();
  const lines = at.state().ledger.lines.length;
  at.session().runLine('area cap');
  await at.press('z');
  expect(at.view().asking).toBeUndefined();
  expect(at.state().ledger.lines.length).toBe(lines + 1);
});
