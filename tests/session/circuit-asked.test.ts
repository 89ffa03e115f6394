// A hose or pipe that no plan knows is parted: of which circuit it is, so that its fluid and a leak check are asked for.
import { expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';

async function parting(area: string, name: string, ...before: string[]): Promise<AtTheBench> {
  const at = await newJob();
  await at.press('escape');
  for (const line of [`area ${area}`, 'off 1', 'off 2', ...before]) at.session().runLine(line);
  await at.press('c', ...lettersOf(name), 'enter');
  return at;
}
const connection = (at: AtTheBench, name: string) => stateOf(at.state().ledger, 'connection', name);
const open = (at: AtTheBench) => {
  const { ledger } = at.state();
  return openPoints(ledger, at.bench.desk().now).map((p) => p.code);
};

it('[T5] asks it in the area of a brake, and then for the leak check', async () => {
  const at = await parting('brake hose', 'hose');
  expect(at.view().asking?.choices[0]).toMatchObject({ value: 'brakes' });
  await at.press('1');
  expect(connection(at, 'hose')).toMatchObject({ parted: true, declared: { area: 'brake hose', circuit: 'brakes' } });
  expect(stateOf(at.state().ledger, 'circuit', 'brakes')).toMatchObject({ fluid: 'brake fluid' });
  expect(open(at)).toContain('circuit-unchecked');
});
it('offers what a car has where a fluid is drained before any circuit was named', async () => {
  const at = await newJob();
  await at.press('l');
  const offered = () => at.view().asking?.choices.map(({ value }) => value);
  expect(offered()).toEqual(expect.arrayContaining(['coolant', 'engine oil', 'fuel']));
  await at.press('2');
  expect(stateOf(at.state().ledger, 'circuit', 'coolant')?.drainedAt).toBe(2);
  // Of those that are known then.
  at.session().runLine('circuit oil with engine oil');
  await at.press('l');
  expect(at.state().answer).toMatchObject({ text: expect.stringMatching(/^oil drained/) });
});
it('offers a circuit that was said before the usual ones, and asks no second time of what is known', async () => {
  const at = await parting('radiator', 'top hose', 'circuit cooling with coolant');
  expect(
    at
      .view()
      .asking?.choices.slice(0, 2)
      .map(({ value }) => value),
  ).toEqual(['cooling', 'coolant']);
  await at.press('1');
  expect(connection(at, 'top hose')?.declared?.circuit).toBe('cooling');
  for (const line of ['made top hose']) at.session().runLine(line);
  await at.press('c', ...lettersOf('top hose'), 'enter');
  expect(at.view().asking).toBeUndefined();
  expect(connection(at, 'top hose')).toMatchObject({ parted: true });
});
it.each([
  ['radiator', 'hose', 'coolant'],
  ['tank', 'fuel hose', 'fuel'],
  ['inlet', 'hose', 'none'],
])('begins at %s with what its names say it carries, else with none: %s', async (area, name, first) => {
  const at = await parting(area, name);
  expect(at.view().asking?.choices[0]?.value).toBe(first);
});
it('says nothing of a circuit where it is of none, or carries nothing', async () => {
  const at = await parting('inlet', 'vacuum hose');
  await at.press('enter');
  expect(connection(at, 'vacuum hose')).toMatchObject({ parted: true });
  expect(connection(at, 'vacuum hose')?.declared).toBeUndefined();
  const plug = await parting('brake', 'wear sensor plug');
  expect(plug.view().asking).toBeUndefined();
  expect(connection(plug, 'wear sensor plug')).toMatchObject({ parted: true });
});
it('[T2] does not hold another joint for one of the whole car, since this one has an area', async () => {
  const at = await parting('brake hose', 'hose');
  await at.press('1');
  for (const line of ['parted lamp', 'made hose']) at.session().runLine(line);
  await at.press('B', 'j');
  expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'lamp made' });
});
it('[T5] minds as a circuit is declared that nothing hangs on it yet', async () => {
  const at = await newJob();
  const said = () => JSON.stringify(at.session().runLine('circuit brakes with brake fluid'));
  expect(said()).toContain('Mind: nothing is asked of it until it is drained, or a connection or face of it opened');
  at.session().runLine('area brake hose');
  at.session().runLine('connection hose in brake hose of brakes');
  expect(said()).not.toContain('Mind');
});
