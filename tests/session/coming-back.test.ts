// Coming back: to an area and its tray, through the list of the check rotation, from what is still to do.
import { describe, expect, it } from 'vitest';
import { pickedAt } from '../../src/calls/listed.ts';
import { areasListed } from '../../src/calls/lists/holes.ts';
import { whereItStands } from '../../src/calls/lists/on-return.ts';
import { demoLines } from '../demo/at-hand.ts';
import { linesOf } from '../jobs/lines.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { atTheBench, lettersOf, newJob } from './at-the-bench.ts';
import { fromNothing, partWay } from './part-way.ts';

describe('an area come back to', () => {
  const twoAreas = ['area cover', 'tray 1', 'use bolt hex 10', 'off 1', 'off 2', 'area pump', 'tray 2', 'off 1'];
  async function benchAfter(...lines: string[]) {
    const at = await newJob();
    for (const line of [...twoAreas, ...lines]) at.session().runLine(line);
    return at;
  }

  it('has the tray in use in which its fasteners lie, and says so', async () => {
    const at = await benchAfter('area cover');
    expect(at.state().answer).toMatchObject({ kind: 'faced', text: 'at cover, tray 1' });
    await at.press('enter');
    expect(at.state().answer).toMatchObject({ text: 'cover 3 off, to tray 1' });
    await at.press('B', '>');
    expect(at.state()).toMatchObject({ facing: { area: 'pump', tray: '2' }, answer: { text: 'at pump, tray 2' } });
  });
  it('leaves the tray as it is where they lie in several or none, or where it is at hand already', async () => {
    const several = await benchAfter('off 2 to tray 3', 'area cover', 'tray 5', 'area pump');
    expect(several.state().answer).toMatchObject({ text: 'at pump' });
    expect(several.state().facing.tray).toBe('5');
    const fresh = await benchAfter('area lid');
    expect(fresh.state().facing).toMatchObject({ area: 'lid', tray: '2' });
    const still = await benchAfter('tray 4', 'area pump');
    expect(still.state().facing.tray).toBe('4');
  });
  it('of a plan keeps the tray that was taken in use', async () => {
    const at = await newJob();
    for (const line of [
      'plan inline-four belt service for timing belt',
      ...twoAreas,
      'tray 3',
      'area arch liner',
      'off 1',
      'tray 5',
      'area cover',
      'area arch liner',
    ])
      at.session().runLine(line);
    expect(at.state().ledger.tallies.areas['arch liner']?.off).toBe(1);
    expect(at.state().facing).toMatchObject({ area: 'arch liner', tray: '1' });
  });
  it('says the tray as well where work goes on there by itself', async () => {
    const at = await benchAfter('holes 2', 'off 2', 'back 1', 'area cover', 'holes 2', 'back 1', 'back 2', 'tray 7');
    await at.press('B', 't', 't', 'l', 'l');
    expect(at.state().facing.area).toBe('pump');
    expect(at.state().facing.tray).toBe('2');
    expect(at.state().answer).toMatchObject({ text: expect.stringMatching(/On to pump, tray 2$/) });
  });
});

describe('a job come back to', () => {
  it('[T8] stands on the screen that was worked on last, struck calls and counts apart', async () => {
    const screenAfter = async (...lines: string[]) => {
      const at = await newJob();
      for (const line of ['area cover', 'off 1', 'off 2', 'holes 2', ...lines]) at.session().runLine(line);
      const { view } = await atTheBench(linesOf(at.state().ledger));
      return view().screen;
    };
    expect(await screenAfter()).toBe('strip');
    expect(await screenAfter('back 1')).toBe('build');
    expect(await screenAfter('back 1', 'back 2', 'pass', 'pass', 'count 1 is 0', 'tools out')).toBe('build');
    expect(await screenAfter('back 1', 'strike last')).toBe('strip');
    expect(await screenAfter('back 1', 'off 1')).toBe('strip');
  });
  it('[T8] goes on in the middle of its area, with the fastener in use that no plan had said', async () => {
    const at = await newJob();
    const plan = 'plan inline-four belt service for timing belt';
    for (const line of [plan, 'area lid', 'bolt hex 12 M8x30', 'off 1', 'area arch liner', 'off 1', 'off 2'])
      at.session().runLine(line);
    const back = await atTheBench(linesOf(at.state().ledger));
    expect(back.state().facing).toMatchObject({ area: 'arch liner', spec: { head: 'hex 12', thread: 'M8' } });
    expect(whereItStands(back.session().desk())).toContain('next to take off: arch liner');
  });
});

describe('a stray', () => {
  it('[K3] is what is picked once it is called, and its row leads to where it likely belongs', async () => {
    const at = await newJob();
    for (const line of ['area cover', 'bolt hex 10 M6x25', 'off 1', 'off 2', 'holes 2']) at.session().runLine(line);
    await at.press('P', 'h', ...lettersOf('hex 10 M6x25'), 'enter');
    expect(at.view().asking?.title).toBe('stray: in which tray it lies');
    // K1: the eye counts before it is told the figure.
    expect(at.view().asking?.choices.map(({ beside }) => beside)).toEqual([undefined]);
    await at.press('enter');
    expect(at.state().answer).toMatchObject({ text: 'stray s5.1 in tray 1: hex 10 M6x25' });
    const row = at.bench.listed().at(at.view().at.box ?? 0);
    expect(row).toMatchObject({ picks: { stray: 's5.1' }, leads: 'hole:cover/1' });
    await at.press('enter');
    expect(at.view().screen).toBe('build');
    expect(at.state().facing).toMatchObject({ area: 'cover', hole: 'cover/1' });
  });
});

describe('the list of the check rotation', () => {
  it('is moved through by the arrow keys, and the call is about the drive that is picked', async () => {
    const at = await newJob();
    for (const line of ['area idler', 'off 1', 'holes 1', 'drive timing over idler', 'drive balance over idler'])
      at.session().runLine(line);
    await at.press('R');
    const picked = () => at.bench.listed().at(at.view().at.rotation ?? 0)?.picks.drive;
    expect(picked()).toBe('timing');
    const { length } = at.bench.listed();
    for (let i = 0; i < length; i++) await at.press('down');
    expect(picked()).toBe('balance');
    await at.press('v');
    expect(at.state().ledger.lines.all.at(-1)?.entries).toMatchObject([{ kind: 'tensioner-live', drive: 'balance' }]);
    for (let i = 0; i < length; i++) await at.press('up');
    expect(picked()).toBe('timing');
  });
});

describe('what is still to do', () => {
  it('is left by Escape to the screen it was opened from, from a place of it too', async () => {
    const at = await atTheBench(demoLines());
    await at.press('escape', 'L', 'T', 'escape');
    expect(at.view().screen).toBe('leaving');
    await at.press('B', 'T');
    const { length } = at.bench.listed();
    const places = Array.from({ length }, (_, i) => i).filter((i) => at.bench.listed().at(i)?.leads !== undefined);
    expect(places.length).toBeGreaterThan(0);
    for (let i = 0; i < (places[0] as number); i++) await at.press('down');
    await at.press('enter');
    expect(at.view().from).toBe('todo');
    await at.press('escape');
    expect(at.view().screen).toBe('todo');
    await at.press('escape');
    expect(at.view().screen).toBe('build');
  });
  it('is opened from under the glance, and left to what lay under it', async () => {
    const at = await atTheBench(demoLines());
    await at.press('escape', 'P', 'G', 'T', 'escape');
    expect(at.view().screen).toBe('box');
    // A look at help on the way is no opening.
    await at.press('T', '?', 'escape');
    expect(at.view().screen).toBe('todo');
    await at.press('escape');
    expect(at.view().screen).toBe('box');
  });
});

describe('a list', () => {
  it('is come back to at the row it was left at, whatever was called meanwhile', async () => {
    const at = await partWay('parted battery earth');
    const picked = () => pickedAt(at.bench.listed(), at.view().at.todo)?.key;
    await at.press('T', 'T', 'down', 'down', 'down');
    const row = picked();
    const { todo } = at.view().at;
    await at.press('enter');
    // A row above it is done, and the area is drawn.
    at.say('parted battery earth');
    await at.press('D', '1', '7', 'enter');
    if (at.view().asking) await at.press('1');
    await at.press('escape');
    expect([at.view().screen, picked()]).toEqual(['todo', row]);
    expect(at.view().at.todo).toBe((todo ?? 0) - 1);
  });
  it('leads from a heading to the service among the others, from what is to be bought to the box, and says where no row leads', async () => {
    const at = await partWay('parted battery earth');
    const rows = () => at.bench.listed();
    const chosen = async (key: string) => {
      await at.press('T', 'T');
      const all = rows().slice(0, rows().length);
      for (let i = all.findIndex((one) => one.key.startsWith(key)); i > 0; i--) await at.press('down');
      await at.press('enter');
    };
    await chosen('0 ');
    expect([at.view().screen, pickedAt(rows(), at.view().at.services)?.picks.service]).toEqual([
      'services',
      'timing belt',
    ]);
    await at.press('escape');
    await chosen('bu');
    expect(at.view().screen).toBe('box');
    await at.press('escape');
    await chosen('mind On');
    expect(at.view().screen).toBe('todo');
    expect(at.bench.store.getState().note).toMatch(/^No place belongs to this row\. /);
  });
});
it('leaves the glance by the key that laid it over a screen', async () => {
  const at = await newJob();
  await at.press('W', 'G');
  expect(at.view().screen).toBe('glance');
  await at.press('G');
  expect(at.view().screen).toBe('services');
});

it('names what waits elsewhere where no other area has a fastener to go back, and leads to no battery before it', async () => {
  const at = await fromNothing();
  at.say(
    'area battery',
    'slack 1',
    'parted earth',
    'holes 1',
    'area belt drive',
    'in tensioner pin',
    'part off belt held by nothing',
  );
  await at.press('S');
  expect(textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() }))).toContain('belt off');
  at.say('area alternator', 'off 1', 'parted field plug', 'holes 1', 'back 1', 'tight 1', 'final 1');
  // Work stays where it is: the battery comes last.
  await at.press('B');
  expect(at.state().facing.area).toBe('alternator');
  expect(textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() }))).toContain('field plug parted');
  expect(areasListed(at.bench.desk(), true).find(({ name }) => name === 'alternator')).toMatchObject({
    mark: 'half',
    text: 'joint parted',
  });
  await at.press('>');
  expect(at.answer()).toBe(
    'no other area has a fastener that goes back now, but belt is off, tensioner pin is in, earth is parted and 1 more',
  );
  at.say('made field plug', 'part back belt', 'out tensioner pin');
  await at.press('>');
  expect(at.state().facing.area).toBe('battery');
  expect(textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() }))).toContain('earth parted');
});
