// A part that is renewed, or goes back as it was, on a job without a plan: the line that puts its new one in the box, and
// what was found at it or at its area.
import { expect, it } from 'vitest';
import { areasListed } from '../../src/calls/lists/holes.ts';
import { restOf } from '../../src/job/area-rest.ts';
import { type AtTheBench, newJob } from './at-the-bench.ts';

async function hoseOff(): Promise<AtTheBench> {
  const at = await newJob();
  await at.press('escape');
  const lines = ['area brake hose', 'use bolt hex 13', 'off 1', 'off 2', 'holes 2', 'part off hose held by 1-2'];
  for (const line of [...lines, 'finding sheath cracked']) at.session().runLine(line);
  await at.press('B');
  return at;
}
const answer = (at: AtTheBench) => JSON.stringify(at.state().answer);

it('[T4] opens the line that puts a new part in the box, and then takes it', async () => {
  const at = await hoseOff();
  await at.press('r');
  expect(at.view().asking).toMatchObject({ typed: 'box "new hose" for hose' });
  expect(at.view().asking?.title).toContain('no new hose is in the parts box. Bought, or at hand?');
  await at.press('enter', 'r');
  expect(answer(at)).toContain('hose renewed; old hose: worn');
  expect(answer(at)).not.toContain('sheath cracked');
});
it('[T4] begins no line where it is not known which part is meant', async () => {
  const at = await hoseOff();
  for (const line of ['area cover', 'off 1', 'part off cover held by 1', 'area sump', 'off 1'])
    at.session().runLine(line);
  await at.press('r');
  expect(at.view().asking).toBeUndefined();
  expect(answer(at)).toContain('no part that is off has its new one in the parts box');
});
it('[F3] minds that a part goes back with what was found and not put right', async () => {
  const at = await hoseOff();
  await at.press('b');
  expect(answer(at)).toContain('found, and not put right yet: sheath cracked');
  for (const line of ['strike last', 'put right d6.1']) at.session().runLine(line);
  await at.press('b');
  expect(answer(at)).not.toContain('sheath cracked');
});
it('[F4] names with the last of an area what was found there and is open', async () => {
  const at = await hoseOff();
  at.session().runLine('area cover');
  at.session().runLine('off 1');
  at.session().runLine('area brake hose');
  await at.press('enter', 'enter', '.', '.');
  expect(at.state().answer).toMatchObject({
    otherwise: { words: 'What was found at brake hose is open yet; put right', by: 'put-right' },
  });
  expect(restOf(at.state().ledger, 'brake hose').map(({ words }) => words)).toEqual(['found and open, sheath cracked']);
  expect(areasListed(at.bench.desk(), true)[0]).toMatchObject({ mark: 'half', text: 'finding' });
});
