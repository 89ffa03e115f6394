// What goes in for the work, and what it is: as its name says, else asked, and then it has to be said.
import { expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { lettersOf, newJob } from './at-the-bench.ts';

it.each([
  ['caliper hook', 'strap'],
  ['left axle stand', 'stand'],
  ['paper towel', 'rag'],
  ['wood under the sump', 'block'],
])('[T1] takes %s for what its name says', async (name, sort) => {
  const at = await newJob();
  at.session().runLine('area caliper');
  await at.press('i', ...lettersOf(name), 'enter');
  expect(stateOf(at.state().ledger, 'temporary', name)?.sort).toBe(sort);
});
it('[T1] asks what it is where its name does not say it, and offers no way of leaving that out', async () => {
  const at = await newJob();
  at.session().runLine('area caliper');
  await at.press('i', ...lettersOf('clever thing'), 'enter');
  expect(at.view().asking).toMatchObject({ title: 'put in: what it is', optional: false, at: -1 });
  expect(textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() }))).not.toContain('leave it out');
  await at.press('enter');
  expect(at.view().asking).toMatchObject({ title: 'put in: what it is', why: expect.any(String) });
  expect(stateOf(at.state().ledger, 'temporary', 'clever thing')).toBeUndefined();
  await at.press(...lettersOf('strap'), 'enter');
  expect(stateOf(at.state().ledger, 'temporary', 'clever thing')).toMatchObject({ in: true, sort: 'strap' });
});
it('leads back to an area of no holes where it went in, until that is struck', async () => {
  const at = await newJob();
  for (const line of ['area auxiliary belt', 'in tensioner pin', 'area battery', 'off 1']) at.session().runLine(line);
  await at.press('a');
  expect(at.view().asking?.choices.map(({ value }) => value)).toEqual(['battery', 'auxiliary belt']);
  await at.press('escape');
  at.session().runLine('strike 2');
  await at.press('a');
  expect(at.view().asking?.choices.map(({ value }) => value)).toEqual(['battery']);
});
