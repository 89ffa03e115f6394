// Which fastener goes into which hole, where it is not the hole's own: said before the key is pressed, and in the answer.
import { describe, expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { type AtTheBench, newJob } from './at-the-bench.ts';

/** Three alike and one that was longer than it should be, all off. */
async function wrongInFour(...more: readonly string[]): Promise<AtTheBench> {
  const at = await newJob();
  for (const line of [
    'area cover',
    'use bolt hex 8 M6x35',
    'off 1',
    'off 2',
    'off 3',
    'use bolt hex 8 M6x40',
    'wrong-one 4',
    'wants 4 bolt hex 8 M6x35 because "as the others"',
    'holes 4',
    ...more,
  ])
    at.session().runLine(line);
  await at.press('B');
  return at;
}
const shown = (at: AtTheBench): string =>
  textOf(sceneOf({ screen: 'build' }, { desk: at.bench.desk() }))
    .split('\n')
    .map((row) => row.split('│')[1]?.trim() ?? '')
    .join(' ')
    .replace(/ +/g, ' ');
const words = (at: AtTheBench): string => {
  const { answer } = at.state();
  return answer && 'text' in answer ? answer.text : '';
};
const isIn = (at: AtTheBench, n: number): boolean =>
  stateOf(at.state().ledger, 'hole', `cover/${n}`)?.called.occupant !== undefined;

describe('Enter', () => {
  it('[L6] says which one it takes into a hole whose own may not go back, and in the answer which it was', async () => {
    const at = await wrongInFour();
    await at.press('#', '4');
    expect(shown(at)).toContain(
      '> 4: Enter takes the bolt hex 8 M6x35 that came out of 1. 4 off bolt hex 8 M6x40, a finding on it is open',
    );
    await at.press('enter');
    expect(words(at)).toBe('cover 4 back. In 4 is the bolt hex 8 M6x35 that came out of 1');
    await at.press('enter');
    expect(words(at)).toBe('cover 2 back');
  });
  it('[L6] leaves a hole to the last whose own may not go back', async () => {
    const at = await wrongInFour('area lid', 'use bolt hex 8 M6x35', 'off 1', 'holes 1', 'area cover');
    await at.press('enter', 'enter', 'enter');
    expect([1, 2, 3, 4].map((n) => isIn(at, n))).toEqual([true, true, true, false]);
    expect(shown(at)).toContain('> 4: Enter takes the bolt hex 8 M6x35 that came out of lid 1.');
  });
});

describe('a new one', () => {
  it('is asked about once where it is not for the hole that is next', async () => {
    const at = await wrongInFour('box spare as bolt hex 8 M6x35');
    await at.press('n');
    expect(at.state().answer).toMatchObject({
      kind: 'asked',
      text: '1 is next, and has its own in tray 1',
      by: 'back',
      again: 'puts spare into 4',
    });
    await at.press('n');
    expect(words(at)).toBe('cover 4 new one in');
  });
  it('is asked about with why, where it does not fit the hole that is next', async () => {
    const at = await newJob();
    for (const line of ['area cover', 'use bolt hex 8 M6x20', 'off 1', 'use bolt hex 8 M8x40', 'damaged 2', 'holes 2'])
      at.session().runLine(line);
    at.session().runLine('box spare as bolt hex 8 M8x40');
    await at.press('B', 'n');
    expect(words(at)).toBe('nothing new in the parts box fits 1, which is next');
    await at.press('#', '1', 'n');
    expect(at.view().asking?.title).toContain(
      'fits cover 1, which wants bolt hex 8 M6x20; spare there would go into 2',
    );
  });
  it('goes into the hole that is next where it fits that one alone', async () => {
    const at = await wrongInFour('box spare as bolt hex 10 M8x20', 'area cover');
    at.session().runLine('wants 1 bolt hex 10 M8x20 because "as bought"');
    await at.press('n');
    expect(words(at)).toBe('cover 1 new one in');
  });
  it('goes, bought for a hole pointed at, into that hole', async () => {
    const at = await wrongInFour();
    await at.press('#', '2', 'n', 'enter', 'n');
    expect(words(at)).toBe('cover 2 new one in');
  });
});
