// What is joined again on a job without a plan: the only one is taken, of several one that stands in the list.
import { expect, it } from 'vitest';
import { type AtTheBench, newJob } from './at-the-bench.ts';

async function parted(...names: string[]): Promise<AtTheBench> {
  const at = await newJob();
  for (const line of ['area front wheel', 'off 1', 'area brake', 'off 1', ...names.map((name) => `parted ${name}`)])
    at.session().runLine(line);
  await at.press('escape', 'B', 'j');
  return at;
}
const answer = (at: AtTheBench) => JSON.stringify(at.state().answer);

it('[T2] joins the only one unasked, though something is off elsewhere', async () => {
  const at = await parted('hose');
  expect(at.view().asking).toBeUndefined();
  expect(answer(at)).toContain('hose made');
});
it('[T2] asks of the battery, which goes on last', async () => {
  const at = await parted('battery earth');
  expect(at.view().asking?.title).toBe('made again: connection');
});
it('takes no key pressed by habit for a name where one of several is asked for', async () => {
  const at = await parted('hose', 'plug');
  await at.press('.');
  expect(at.view().asking).toMatchObject({ typed: '', why: expect.stringContaining('none of these has "."') });
  await at.press('2');
  expect(at.view().asking).toBeUndefined();
});
