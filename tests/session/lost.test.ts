// What was dropped and not recovered (L9): which one the list begins with, what is asked beside it, how it is found again.
import { describe, expect, it } from 'vitest';
import { holeRows } from '../../src/calls/lists/holes.ts';
import { leavingRows } from '../../src/calls/lists/leaving.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { named } from '../../src/job/subjects.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { newJob } from './at-the-bench.ts';
import { type PartWay, partWay } from './part-way.ts';

const lossOf = (at: PartWay, hole: string) => {
  const { ledger } = at.state();
  const own = stateOf(ledger, 'hole', hole)?.called.own ?? '';
  return stateOf(ledger, 'fastener', own)?.loss;
};
const ways = (at: PartWay, says: RegExp): string[] =>
  leavingRows(at.bench.desk())
    .slice(0, 200)
    .filter(({ text }) => says.test(text))
    .map(({ end }) => end ?? '');
/** Four of the coolant pump off, the belt too; work is there. */
const atThePump = () => partWay('off 5', 5);

describe('dropped by its key', () => {
  it('begins with the one that came off last, and an Enter behind its number calls nothing', async () => {
    const at = await newJob();
    await at.press('a', '+', 'b', '0', 'enter', 'enter', 'enter', 'y');
    expect(at.view().asking?.choices.map(({ text }) => text.match(/of .*?,/)?.[0])).toEqual([
      'of area 1 3,',
      'of area 1 2,',
      'of area 1 1,',
    ]);
    const before = at.state().ledger.lines.length;
    await at.press('2', 'enter');
    expect(at.state().ledger.lines.length).toBe(before + 1);
    expect(at.bench.store.getState().word).toContain('this Enter called nothing');
    expect(at.state().answer).toMatchObject({ text: 'lost (bolt hex 10 of area 1 2)' });
    await at.press('enter');
    expect(at.state().ledger.tallies.all.off).toBe(4);
  });
  it('[L9] asks at open works whether it can reach them, where an Enter behind the number answers nothing', async () => {
    const at = await atThePump();
    await at.press('y', '1', 'enter');
    expect(at.view().asking?.title).toBe('lost: can it reach belt, gears, valves, cylinders or sump?');
    await at.press('enter');
    expect(at.answer()).toBe('lost, can reach the works (bolt hex 10 M6x25 of coolant pump 4)');
    await at.press('y', '1', '2', 'enter');
    expect(lossOf(at, 'coolant pump/3')).toMatchObject({ reaches: false });
    expect(at.bench.store.getState().word).toContain('this Enter called nothing');
  });
  it('[L9] asks nothing at a wheel, and nothing of what is typed', async () => {
    const wheel = await partWay('area arch liner');
    await wheel.press('y', '1');
    expect(wheel.answer()).toMatch(/^lost \(nut .* of right front wheel 5\)$/);
    const typed = await atThePump();
    typed.say('lost coolant pump 2');
    expect(lossOf(typed, 'coolant pump/2')).toMatchObject({ reaches: false });
  });
});

describe('on the list of what is open', () => {
  it('[X5 L9] is found again where it lay, whichever tray is in use, and no equal goes in for it', async () => {
    const at = await atThePump();
    at.say('lost coolant pump 2', 'tray 9');
    const id = stateOf(at.state().ledger, 'hole', 'coolant pump/2')?.called.own;
    expect(ways(at, /^f\d.* lost$/)).toEqual([`found again ${id} in tray 4`]);
    expect(ways(at, /^coolant pump 2: off/)).toEqual([`found again ${id} in tray 4`]);
    expect(ways(at, /^coolant pump 3: off/)).toEqual(['back coolant pump 3']);
    await at.press('P', 'f');
    expect(at.answer()).toBe(`${id} found again, to tray 4 (bolt hex 10 M6x25 of coolant pump 2)`);
  });
  it('[X5 L9] is searched for first where it can reach the works', async () => {
    const at = await atThePump();
    at.say('lost coolant pump 2 reaches the works');
    expect(ways(at, /^coolant pump 2: off/)).toEqual([expect.stringMatching(/^searched f\S+ by magnet$/)]);
  });
});

describe('the hole of what is lost', () => {
  it('[L9] is told from what only is off, and an equal in its place is said to be one', async () => {
    const at = await newJob();
    for (const line of ['area cover', 'bolt hex 10 M6x25', 'off 1', 'off 2', 'off 3', 'holes 3', 'lost f3.1'])
      at.session().runLine(line);
    const row = () => holeRows(at.bench.desk(), 'tightening').at(1);
    const own = named('hole', stateOf(at.state().ledger, 'fastener', 'f3.1')?.origin ?? '');
    expect(own).toBe('cover/2');
    expect(row()).toMatchObject({ text: 'lost     bolt hex 10 M6x25', end: '' });
    const shown = () =>
      textOf(sceneOf({ screen: 'build' }, { desk: at.bench.desk(), session: at.state() })).replace(/\s+│?\s*/g, ' ');
    expect(shown()).toContain('◉2* lost');
    await at.press('B', '#', '2');
    expect(shown()).toContain('Enter takes the bolt hex 10 M6x25 that came out of 1; its own is lost');
    at.session().runLine('back 2');
    expect(at.state().answer).toMatchObject({
      text: expect.stringContaining('In 2 is the bolt hex 10 M6x25 that came out of 1; its own is lost'),
    });
    // Found again it is off, as the others are.
    for (const line of ['strike last', 'found again f3.1 in tray 1']) at.session().runLine(line);
    expect(row()?.text).toMatch(/^off /);
  });
  it('[L9] asks of a line that is typed at open works what its key asks', async () => {
    const at = await atThePump();
    const { own = '' } = stateOf(at.state().ledger, 'hole', 'coolant pump/1')?.called ?? {};
    await at.type(`lost ${own}`);
    expect(at.view().asking?.title).toBe('lost: can it reach belt, gears, valves, cylinders or sump?');
    await at.press('2');
    expect(lossOf(at, 'coolant pump/1')?.reaches).toBe(false);
  });
});
