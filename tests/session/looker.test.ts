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
it('is said to want another pair of eyes where it is taken by the one who works here, and stands all the same', async () => {
  const at = await atTheBench([], {}, { name: 'Io Marsh' });
  at.session().runLine('job "van"');
  for (const call of ['area cap', 'critical', 'off 1', 'holes 1', 'back 1', 'tight 1', 'tight 1'])
    at.session().runLine(call);
  await at.press('B', 'z');
  expect(at.view().asking?.title).toContain('another pair than worked, where there is one');
  await at.press('1');
  expect(at.state().answer).toMatchObject({
    kind: 'taken',
    otherwise: { words: 'By the one who works here; another pair of eyes, where there is one' },
  });
  await at.press(',', 'z', ...'Ann', 'enter');
  expect(at.state().answer).toMatchObject({ kind: 'taken' });
  expect(at.state().answer).not.toHaveProperty('otherwise');
});
it('is offered whoever signed what stands, and no name that was struck', async () => {
  const at = await atTheBench([]);
  at.session().runLine('job "van"');
  for (const call of ['area cap', 'critical', 'off 1', 'holes 1', 'back 1', 'tight 1', 'tight 1'])
    at.session().runLine(call);
  for (const line of ['looked again cap by N55', 'strike last', 'looked again cap by Ann'])
    expect(at.session().runLine(line)).toMatchObject({ kind: 'taken' });
  await at.press('B', ',', 'z');
  expect(at.view().asking?.choices.map(({ text }) => text)).toEqual(['Ann']);
});
