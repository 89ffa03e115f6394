// Services on the bench, by keys: several chosen and ordered at once, what they take off side by side, the place a plan
// means asked for (P2), one dropped (P3), and what is still to do.

import { describe, expect, it } from 'vitest';
import { offerOf } from '../../src/calls/desk.ts';
import { type Listed, pickedAt } from '../../src/calls/listed.ts';
import { boxProposals } from '../../src/calls/proposals.ts';
import { every, stateOf } from '../../src/job/ledger.ts';
import { type Asking, offered } from '../../src/view/view.ts';
import { shipped, shippedNames } from '../plan/shipped/shipped.ts';
import { type AtTheBench, atTheBench, lettersOf } from './at-the-bench.ts';

const plans = shippedNames.map((file) => offerOf({ plan: shipped(file), file }));
async function newJob(habits: object = {}): Promise<AtTheBench> {
  const at = await atTheBench(undefined, { plans }, habits);
  await at.press('n', 'x', 'enter');
  return at;
}
const listed = (at: AtTheBench): Listed[] => {
  const all = at.bench.listed();
  return all.slice(0, all.length);
};
const rowOf = (at: AtTheBench, service: string): Listed =>
  listed(at).find((one) => one.picks.service === service) as Listed;
/** To the row of a service, by the arrow keys. */
async function pointAt(at: AtTheBench, service: string): Promise<void> {
  const to = listed(at).findIndex((one) => one.picks.service === service);
  const from = at.view().at[at.view().screen] ?? 0;
  for (let i = from; i !== to; i += Math.sign(to - from)) await at.press(to > from ? 'down' : 'up');
}
async function choose(at: AtTheBench, ...services: string[]): Promise<void> {
  for (const service of services) {
    await pointAt(at, service);
    await at.press('space');
  }
}
const ordered = (at: AtTheBench): string[] =>
  [...every(at.state().ledger, 'service')].filter((s) => s.state === 'ordered').map((s) => s.service);
const answer = (at: AtTheBench): string => {
  const said = at.state().answer;
  return said && 'text' in said ? said.text : '';
};

describe('choosing services', () => {
  it('keeps both letters of a word that is begun where none has them, and names the plan whose services are asked for', async () => {
    const at = await newJob();
    await at.press('O', ...lettersOf('front brakes'), 'enter');
    expect(at.view().asking?.title).toBe(
      'service from a plan: which service of front brakes (W chooses several at once)',
    );
    await at.press(...lettersOf('xy'));
    expect(at.view().asking).toMatchObject({ typed: 'xy', why: 'none of these has "xy"' });
    await at.press('backspace', 'backspace', ...lettersOf('front'));
    expect(at.view().asking?.typed).toBe('front');
  });
  it('[X1] asks no reason where there is nothing to be dropped, and minds what is still off where one is called done', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'sump reseal');
    await at.press('enter', 'S', '>', 'enter', 'W');
    await pointAt(at, 'front struts');
    await at.press('d');
    expect(at.view().asking).toBeUndefined();
    expect(answer(at)).toBe('front struts is not an open service of this job');
    await pointAt(at, 'sump reseal');
    await at.press('f');
    expect(at.state().answer).toMatchObject({
      kind: 'asked',
      text: expect.stringMatching(
        /^of sump reseal there waits: not renewed: oil filter; never taken off: undertray, .* and \d more; 1 hole open and 1 more$/,
      ),
    });
    await at.press('f');
    expect(answer(at)).toContain('still off: 1 of undertray');
  });
  it('finds a plan by its name, by a service of it, and by words of its vehicle', async () => {
    const at = await newJob();
    const found = () => (at.view().asking ? offered(at.view().asking as Asking).map(({ value }) => value) : []);
    for (const words of ['belt service', 'timing', 'keyed crank nose']) {
      await at.press('O', ...lettersOf(words));
      expect(found(), words).toContain('inline-four belt service');
      expect(found().length, words).toBeLessThan(plans.length);
      await at.press('escape');
    }
  });
  it('orders several of one plan at once, with one key each and one for all, as one line', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'timing belt', 'coolant pump', 'cam cover gasket');
    expect(answer(at)).toBe('cam cover gasket chosen: together 45 fasteners, 2 slackened, 13 parts, 7 connections');
    expect(at.state().ledger.lines.length).toBe(1);
    await at.press('enter');
    expect(ordered(at)).toEqual(['timing belt', 'coolant pump', 'cam cover gasket']);
    expect(at.state().ledger.lines.length).toBe(2);
    expect(at.state().ledger.tallies.all.holes).toBe(47);
    expect(answer(at)).toBe('timing belt, coolant pump, cam cover gasket ordered: areas 9, holes 47');
    // Ordered they stand at the head of the list: the pointer went with the one it stood at.
    expect(pickedAt(at.bench.listed(), at.view().at.services)).toMatchObject({
      text: 'cam cover gasket',
      name: 'ordered',
    });
    // Pressed once more by habit it orders nothing, whatever is pointed at now.
    await at.press('enter');
    expect(at.state().ledger.lines.length).toBe(2);
    await at.press('backspace');
    expect(ordered(at)).toEqual([]);
  });

  it('orders services of several plans at once: what they share is there once', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'timing belt', 'front pads');
    await at.press('enter');
    expect(ordered(at)).toEqual(['timing belt', 'front pads']);
    expect(stateOf(at.state().ledger, 'area', 'right front wheel')?.holes).toHaveLength(5);
    for (const service of ['timing belt', 'front pads'])
      expect(stateOf(at.state().ledger, 'service', service)?.brings).toContain('area:right front wheel');
  });

  it('asks whether two of different plans are the same work, and keeps the plan of one chosen in its row', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'cam cover gasket', 'cam cover reseal');
    const asked = 'cam cover gasket of inline-four belt service opens the same: is it the same work?';
    expect(answer(at)).toMatch(new RegExp(`^cam cover reseal chosen: together 26 .*; ${asked.replace('?', '\\?')}$`));
    expect(rowOf(at, 'cam cover gasket').brief).toEqual({
      text: 'cam cover gasket   inline-four belt service',
      end: '1 part more',
    });
    await choose(at, 'cam cover reseal', 'timing belt');
    expect(answer(at)).not.toContain('the same work');
  });

  it('orders the one pointed at when none is chosen, and leaves out again what was chosen', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'timing belt', 'timing belt');
    expect(answer(at)).toBe('timing belt not chosen');
    await pointAt(at, 'sump reseal');
    await at.press('enter');
    expect(ordered(at)).toEqual(['sump reseal']);
  });

  it('refuses plans that contradict one another as soon as both are chosen, naming both places', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'cylinder head', 'crankcase ventilation');
    expect(answer(at)).toMatch(
      /^intake manifold: two say different order: inline-four-crankcase-ventilation\.json: areas\[2\] and inline-four-cylinder-head\.json: areas\[9\]$/,
    );
    expect(rowOf(at, 'crankcase ventilation').mark).toBe('found');
  });

  it('refuses a plan that says of a hole nobody called what this job does not', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'cylinder head');
    await at.press('enter');
    await choose(at, 'crankcase ventilation');
    await at.press('enter');
    expect(answer(at)).toMatch(/^intake manifold 6 wants bolt hex 12 .* on this job and bolt .* by the plan$/);
    expect(ordered(at)).toEqual(['cylinder head']);
  });

  it('goes by the keypad alone', async () => {
    const at = await newJob({ keypad: true });
    await at.press('*', '9');
    expect(at.view().screen).toBe('services');
    await at.press(...Array.from({ length: 6 }, () => '+'), '0', '+', '0', 'enter');
    expect(ordered(at)).toEqual(['timing belt', 'coolant pump']);
  });
});

describe('side by side', () => {
  it('says of each what it takes off, what it shares and how little more it is, for the job as it stands', async () => {
    const at = await newJob();
    await at.press('W');
    expect(rowOf(at, 'coolant pump').end).toBe('35 fasteners');
    await choose(at, 'timing belt');
    expect(rowOf(at, 'coolant pump')).toMatchObject({ mark: 'found', end: '35 fasteners, 6 more' });
    expect(rowOf(at, 'coolant pump').more).toMatch(/Shares .*right front wheel/);
    await at.press('enter');
    expect(rowOf(at, 'timing belt').end).toBe('29 fasteners, 29 to come');
    at.session().runLine('area "right front wheel"');
    for (let i = 0; i < 5; i++) at.session().runLine('off');
    expect(rowOf(at, 'timing belt').end).toBe('29 fasteners, 24 to come');
    expect(rowOf(at, 'front pads').end).toBe('14 fasteners, 9 more');
    const nearby = listed(at).filter((one) => one.name === 'nearby');
    expect(nearby.map((one) => `${one.text}: ${one.end}`)).toEqual([
      'auxiliary belt: nothing more',
      'auxiliary belt and tensioner: 3 fasteners more',
      'coolant pump: 6 fasteners more',
      'front pads: 9 fasteners more',
      'cam cover gasket: 10 fasteners more',
    ]);
    expect(nearby[2]?.more).toMatch(/^While you are there: coolant pump, 6 fasteners, 1 part, 1 connection more\./);
  });

  it('says what came off that no service needs, until one that needs it is chosen', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'cam cover gasket', 'timing belt');
    await at.press('enter');
    for (const line of [
      'area "crank pulley"',
      'off 1',
      'drop service',
      'service dropped "timing belt" because no belt',
    ])
      at.session().runLine(line);
    const needless = () =>
      listed(at)
        .filter((one) => one.name === 'needless')
        .map((one) => one.text);
    expect(needless()).toEqual(['crank pulley: off 1; pulley away']);
    await choose(at, 'coolant pump');
    expect(needless()).toEqual([]);
  });
});

describe('[P2] a place that the plan calls otherwise', () => {
  const withCover = async () => {
    const at = await newJob();
    for (const line of ['area "valve cover"', 'bolt hex 8 M6x35', 'off', 'off', 'off']) at.session().runLine(line);
    await at.press('W');
    await pointAt(at, 'cam cover gasket');
    return at;
  };

  it('[P2] is asked for before the service is ordered, and answered with one key', async () => {
    const at = await withCover();
    await at.press('enter');
    expect(at.view().asking?.title).toBe('Your "valve cover" = its "cam cover"?');
    expect(ordered(at)).toEqual([]);
    await at.press('1');
    expect(at.view().asking).toBe(undefined);
    expect(ordered(at)).toEqual(['cam cover gasket']);
    expect(stateOf(at.state().ledger, 'area', 'valve cover')?.holes).toHaveLength(10);
    expect(stateOf(at.state().ledger, 'area', 'cam cover')).toBe(undefined);
    // Once: neither the next service of this plan nor one of another asks again.
    await choose(at, 'timing belt', 'cylinder head');
    await at.press('enter');
    expect(at.view().asking).toBe(undefined);
    expect(ordered(at)).toHaveLength(3);
    expect(stateOf(at.state().ledger, 'area', 'cam cover')).toBe(undefined);
  });

  it('[P2] may be none of its places; Escape orders nothing', async () => {
    const at = await withCover();
    await at.press('enter', 'escape');
    expect(ordered(at)).toEqual([]);
    await at.press('enter', '2');
    expect(ordered(at)).toEqual(['cam cover gasket']);
    expect(stateOf(at.state().ledger, 'area', 'cam cover')?.holes).toHaveLength(10);
    expect(stateOf(at.state().ledger, 'area', 'valve cover')?.holes).toHaveLength(3);
  });

  it('[P2] is asked for by the key that takes one service from a plan as well', async () => {
    const at = await withCover();
    await at.press('S', 'O', ...'inline-four belt', 'enter', ...'cam', 'enter');
    expect(at.view().asking?.title).toBe('Your "valve cover" = its "cam cover"?');
    await at.press('1');
    expect(stateOf(at.state().ledger, 'area', 'valve cover')?.declared?.inPlans).toBe('cam cover');
  });

  it('[P2] is asked of a typed line as well, which is answered in words', async () => {
    const at = await withCover();
    const line = 'plan "inline-four belt service" for cam cover gasket';
    expect(at.session().runLine(line)).toMatchObject({
      kind: 'refused',
      text: 'Your "valve cover" = its "cam cover"?',
      instead: 'say first: same place "valve cover" is cam cover (or is valve cover, if it is another place)',
    });
    at.session().runLine('same place "valve cover" is valve cover');
    expect(at.session().runLine(line).kind).toBe('taken');
    expect(stateOf(at.state().ledger, 'area', 'valve cover')?.holes).toHaveLength(3);
  });

  it('[P2] may be said beforehand in words', async () => {
    const at = await withCover();
    at.session().runLine('same place "valve cover" is cam cover');
    await at.press('enter');
    expect(at.view().asking).toBe(undefined);
    expect(stateOf(at.state().ledger, 'area', 'valve cover')?.holes).toHaveLength(10);
    expect(at.session().runLine('same place "gearbox" is cam cover').kind).toBe('refused');
  });
});

describe('[P3] a service dropped', () => {
  const areas = async (at: AtTheBench): Promise<string[]> => {
    await at.press('S', 'a');
    const choices = at.view().asking?.choices.map((one) => one.text) ?? [];
    await at.press('escape');
    return choices;
  };

  it('[P3] is no longer in the lists, but for what was touched and what another brings', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'coolant pump', 'cam cover gasket');
    await at.press('enter');
    at.session().runLine('slack arch liner 3');
    await at.press('W');
    await pointAt(at, 'coolant pump');
    await at.press('d', ...'no parts', 'enter');
    expect(rowOf(at, 'coolant pump').mark).toBe('found');
    expect(await areas(at)).toEqual(['arch liner', 'mount bracket', 'upper belt cover', 'cam cover']);
    await at.press('R');
    expect(listed(at)).toEqual([]);
    await at.press('C');
    expect(listed(at).map((one) => one.picks.face ?? one.picks.circuit)).not.toContain('pump face');
    expect(boxProposals(at.session().desk()).map((one) => one.name)).toEqual(['new gasket', 'joint sealant']);
    await at.press('W');
    await choose(at, 'coolant pump');
    await at.press('enter');
    expect(await areas(at)).toHaveLength(9);
  });
});

describe('still to do', () => {
  it('leads from what is to take off to the screen where it comes off', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'front pads');
    await at.press('enter', 'B', 'T');
    const to = listed(at).findIndex((one) => one.name.trim() === 'take off' && one.leads?.startsWith('area:'));
    await at.press(...Array.from({ length: to }, () => 'down'));
    const leads = listed(at)[to]?.leads;
    await at.press('enter');
    expect([at.view().screen, at.view().from]).toEqual(['strip', 'todo']);
    expect(`area:${at.session().desk().facing.area}`).toBe(leads);
  });

  it('lists by service what is to take off, to judge and to fit, what is to buy, and tools', async () => {
    const at = await newJob();
    await at.press('W');
    await choose(at, 'timing belt', 'front pads');
    await at.press('enter', 'T');
    const heads = () =>
      listed(at)
        .filter((one) => one.name === 'service')
        .map((one) => [one.text, one.end]);
    expect(heads()).toEqual([
      ['timing belt', '11 to take off'],
      ['front pads', '7 to take off'],
    ]);
    const named = (name: string) => listed(at).filter((one) => one.name.trim() === name);
    expect(named('buy').map((one) => one.text)).toEqual(expect.arrayContaining(['timing belt, new']));
    expect(named('tool').map((one) => one.end)).not.toEqual([]);
    expect(named('mind').length).toBeGreaterThan(10);
    for (const line of [
      'area "right front wheel"',
      'off 1',
      'finding at right front wheel 2 thread damaged',
      'box a belt for timing belt',
      'box a bolt as bolt hex 19 M14x1.5x65 stretch',
    ])
      at.session().runLine(line);
    expect(heads()[0]).toEqual(['timing belt', '11 to take off, 1 to judge, 1 to fit']);
    expect(named('fit').map((one) => one.text)).toEqual(['right front wheel: 1 off']);
    expect(named('bought').map((one) => one.text)).toEqual([
      'timing belt, new',
      expect.stringMatching(/^crank bolt, new/),
    ]);
    // Enter leads to the place.
    const to = listed(at).findIndex((one) => one.name.trim() === 'judge');
    await at.press(...Array.from({ length: to }, () => 'down'), 'enter');
    expect(at.view().screen).toBe('findings');
  });
  it('[X5] Enter on the last screen leads to a service that waits, and says of what is called there how', async () => {
    const at = await newJob();
    for (const line of ['service brakes', 'area cap', 'off 1']) at.session().runLine(line);
    const chosen = async (text: RegExp) => {
      await at.press('L');
      const rows = at.bench.listed();
      const to = rows.slice(0, rows.length).findIndex((row) => text.test(`${row.name} ${row.text}`));
      expect(to).toBeGreaterThanOrEqual(0);
      await at.press(...Array.from({ length: 40 }, () => 'up'), ...Array.from({ length: to }, () => 'down'), 'enter');
    };
    await chosen(/neither done nor dropped/);
    expect(at.view().screen).toBe('services');
    await chosen(/tools/);
    expect(at.view()).toMatchObject({ screen: 'leaving' });
    expect(at.bench.store.getState().note).toMatch(/^That is called here: Space the call shown\./);
  });
});

describe('[O1] order learned from what was done', () => {
  const edges = (at: AtTheBench) =>
    (stateOf(at.state().ledger, 'behind', '')?.edges ?? []).map(
      ({ front, behind, from }) => `${from}: ${front} > ${behind}`,
    );

  it('[O1] is said with one key: the area in use sits behind what came off before it', async () => {
    const at = await newJob();
    for (const line of ['area "upper cover"', 'off', 'off', 'area "lower cover"', 'off']) at.session().runLine(line);
    await at.press('<');
    expect(at.view().asking).toBe(undefined);
    expect(edges(at)).toEqual(['said: area:upper cover > area:lower cover']);
    // Said already, it is asked for.
    await at.press('<');
    expect(at.view().asking?.title).toContain('what is in front');
  });

  it('[O1] proposed on the list of what is still to do, and as the next area on the way back, refusing nothing', async () => {
    const at = await newJob();
    for (const line of ['area inner', 'area outer', 'off', 'holes 1', 'area inner', 'off', 'holes 1', 'back'])
      at.session().runLine(line);
    await at.press('T');
    const proposed = () => listed(at).filter((one) => one.name === 'order');
    expect(proposed().map((one) => one.text)).toEqual(['inner behind outer?']);
    const to = listed(at).findIndex((one) => one.name === 'order');
    await at.press(...Array.from({ length: to }, () => 'down'), '<');
    expect(edges(at)).toEqual(['said: area:outer > area:inner']);
    expect(proposed()).toEqual([]);
    await at.press('backspace', 'S', 'backspace', 'B');
    expect(edges(at)).toEqual([]);
  });

  it('[O1] the next area on the way back is the one that was opened last', async () => {
    const at = await newJob();
    const off = (area: string) => [`area ${area}`, 'off', 'holes 1'];
    for (const line of ['area inner', 'holes 1', ...off('outer'), ...off('brace'), ...off('inner'), 'area brace'])
      at.session().runLine(line);
    await at.press('B', '>');
    expect(at.session().desk().facing.area).toBe('inner');
  });
});

it('[T1] has the car chocked before it is raised', async () => {
  const at = await newJob();
  await at.press('W');
  await choose(at, 'front pads');
  await at.press('enter', 'S', '>', 'i');
  expect(answer(at)).toMatch(/^wheel chock in/);
  await at.press('i');
  expect(answer(at)).toMatch(/ stand in/);
});

it('[X1] asks once before a service is called done of which nothing was touched', async () => {
  const at = await newJob();
  await at.press('W');
  await choose(at, 'front pads');
  await at.press('enter', 'L', 'f');
  expect(at.state().answer).toMatchObject({
    kind: 'asked',
    text: 'of front pads there waits: not renewed: right pads, left pads; never taken off: right front wheel, right wear sensor plug, right caliper and 3 more',
  });
});
