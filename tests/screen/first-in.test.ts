// What goes in before an area is opened stands over its next fastener until it is in, and its cautions stand in whole.
import { expect, it } from 'vitest';
import { type PartWay, partWay } from '../session/part-way.ts';
import { sceneOf, textOf } from './scene.ts';

/** What stands below the cardboard, as one reads on from row to row. */
const shown = (at: PartWay): string =>
  textOf(sceneOf({ screen: 'strip' }, { desk: at.bench.desk() }))
    .split('\n')
    .map((row) => row.split('│')[1]?.trim() ?? '')
    .join(' ')
    .replace(/ +/g, ' ');

it('asks for the jack over the first bolt of the bracket, and over the second, until it is in', async () => {
  const at = await partWay('in jack with block');
  at.say('area mount bracket');
  expect(shown(at)).toContain('! first i: jack with block > 1 as found');
  await at.press('enter');
  expect(at.answer()).toContain('Mind: not in: jack with block; to go in before mount bracket is opened');
  expect(shown(at)).toContain('! first i: jack with block > 2 as found');
  expect(shown(at)).toContain('1 to mind: T');
  await at.press('i');
  expect(shown(at)).not.toContain('! first');
});
it('asks for what locks the shafts, then for the belt, over the bolts of what tensions it', async () => {
  const at = await partWay('in cam clamp');
  at.say('area tensioner and idler');
  const first = '! first i: cam clamp, crank pin ! then p: timing belt';
  expect(shown(at)).toContain(first);
  await at.press('enter');
  expect(at.answer()).toContain(
    'not in: cam clamp, crank pin; to go in before tensioner and idler is opened, at the marks',
  );
  expect(shown(at)).toContain(first);
  await at.press('i', 'i', 'p');
  expect(shown(at)).not.toContain('!');
});
it('cuts no caution off in the middle', async () => {
  const at = await partWay('in flywheel lock');
  at.say('area crank pulley');
  expect(shown(at)).toContain('the engine at its marks, and comes out before anything is turned. 1 more to mind: T');
});
