// One reading of "closed" for the list of areas, what stands below the cardboard and the refusals; what is off and what
// was empty on arrival told apart, and how far in a fastener is.
import { expect, it } from 'vitest';
import { areasListed, holeRows } from '../../src/calls/lists/holes.ts';
import { outParts } from '../../src/calls/tally-words.ts';
import { restOf } from '../../src/job/area-rest.ts';
import { tallyOf } from '../../src/job/ledger.ts';
import { shapeOf } from '../../src/screen/colours.ts';
import { newJob } from './at-the-bench.ts';
import { type PartWay, partWay } from './part-way.ts';

const listed = (at: Pick<PartWay, 'bench'>, area: string) => {
  const row = areasListed(at.bench.desk(), true).find((one) => one.name === area);
  return [row?.mark, row?.text];
};
const rest = (at: PartWay, area: string) => restOf(at.state().ledger, area).map(({ words, by }) => [words, by]);

it('tells an area closed only when its connections are made', async () => {
  const at = await partWay('area tensioner and idler', 2);
  expect(listed(at, 'cam cover')).toEqual(['half', 'joint parted']);
  expect(rest(at, 'cam cover')).toEqual([
    ['coil rail plug parted', 'made'],
    ['cam sensor plug parted', 'made'],
    ['front breather parted', 'made'],
    ['rear breather parted', 'made'],
  ]);
  at.say('made coil rail plug', 'made cam sensor plug', 'made front breather', 'made rear breather');
  expect(listed(at, 'cam cover')).toEqual(['done', 'closed']);
});
it('[O6] nor while its companions are not called', async () => {
  const at = await partWay('area tensioner and idler', 2);
  at.say('made bottom hose', 'area coolant pump', 'slack 1', 'tight 1', 'tight 1');
  expect(listed(at, 'coolant pump')).toEqual(['half', 'not called']);
  expect(rest(at, 'coolant pump')).toEqual([['companions not called (dowel one, dowel two, O-ring)', 'companions']]);
  at.say('companions');
  expect(at.answer()).toContain('companions of coolant pump seen: dowel one, dowel two, O-ring');
});
it('names what was found at a hole that is tight', async () => {
  const at = await partWay('put right lower belt cover 4');
  at.say('area lower belt cover', 'back 5', 'back 6', 'pass', 'pass');
  expect(rest(at, 'lower belt cover')).toContainEqual(['4 tight, and what was found at it is open', 'put-right']);
});
it('[L4 L11] counts what is off, slack and was empty each by itself, as the trays do', async () => {
  const at = await newJob();
  await at.press('a', '+', 'b', '0', 'enter', 'enter', 'm', 's');
  const t = tallyOf(at.state().ledger, 'area 1');
  expect(t).toMatchObject({ off: 3, empty: 1, slack: 1 });
  expect(outParts(t)).toEqual(['2 off', '1 slack', '1 empty']);
  expect(listed(at, 'area 1')).toEqual(['open', '2 off']);
});
it('[O3] shows slack, in by hand, snug, tight, off and empty each by a shape of its own', async () => {
  const at = await newJob();
  await at.press('a', '+', 'b', '0', 'enter', 'enter', 'enter', 'enter', 'm', 's');
  for (const line of ['holes 6', 'back 1', 'back 2', 'tight 2', 'back 3', 'tight 3', 'tight 3'])
    at.session().runLine(line);
  const rows = holeRows(at.bench.desk(), 'tightening');
  const marks = rows.slice(0, rows.length).map((one) => one.mark);
  expect(marks).toEqual(['on', 'snug', 'done', 'open', 'empty', 'slack']);
  expect(new Set(marks.map(shapeOf)).size).toBe(6);
});
it('[L6 L11] says of a hole that was empty why nothing goes back into it, and counts it as empty', async () => {
  const at = await newJob();
  await at.press('a', '+', 'b', '0', 'enter', 'm');
  for (const line of ['holes 2', 'back 1', 'tight 1']) at.session().runLine(line);
  await at.press('B', 'enter');
  expect(at.state().answer).toMatchObject({
    text: 'it was empty on arrival, and nothing in the trays is known to fit',
    instead: 'call a new one from the parts box, or a substitute',
  });
  expect(at.session().runLine('tight 1')).toMatchObject({
    text: expect.stringMatching(/Mind: 1 of area 1 is still empty$/),
  });
});
it('goes on to the next area where the last of one is a finding put right', async () => {
  const at = await partWay('put right lower belt cover 4');
  at.say('area lower belt cover', 'back 5', 'back 6', 'pass', 'pass');
  await at.press('B', 'g');
  expect(at.answer()).toMatch(/^finding d\d+\.1 put right\. On to cam cover/);
});
it('[O1] lists first what goes back in the area in use, then what is due, and minds a part that is set on over what is open', async () => {
  const at = await partWay('back 1', 4);
  at.say('area crank pulley');
  await at.press('B', ',', 'b');
  const texts = at.view().asking?.choices.map(({ text }) => text) ?? [];
  expect(texts.slice(0, 6)).toEqual(['pulley', 'lower cover', 'upper cover', 'bracket', 'liner', 'right wheel']);
  await at.press('6');
  expect(at.answer()).toMatch(/^right wheel back\. Mind: behind it .+ is open: /);
});
