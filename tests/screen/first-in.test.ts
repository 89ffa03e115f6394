// What goes in before an area is opened stands over its next fastener until it is in, and its cautions stand in whole.
import { expect, it } from 'vitest';
import { plansAtHand } from '../../src/commands/plans.ts';
import { every, stateOf } from '../../src/job/ledger.ts';
import { plainAsking } from '../../src/session/asking.ts';
import { newJob } from '../session/at-the-bench.ts';
import { type PartWay, partWay } from '../session/part-way.ts';
import { newStory } from '../sheet/bench-story.ts';
import { demoDesk, sceneOf, textOf } from './scene.ts';

/** What stands below the cardboard, as one reads on from row to row. */
const shown = (at: PartWay, screen: 'strip' | 'build' = 'strip'): string =>
  textOf(sceneOf({ screen }, { desk: at.bench.desk() }))
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
  expect(shown(at)).toContain('! first i: cam clamp, crank pin ! then s: 1 slack, then p: timing belt');
  const first = '! first i: cam clamp, crank pin ! then p: timing belt';
  await at.press('enter');
  expect(at.answer()).toContain(
    'not in: cam clamp, crank pin; to go in before tensioner and idler is opened, at the marks',
  );
  expect(shown(at)).toContain(first);
  await at.press('i', 'i', 'p');
  expect(shown(at)).not.toContain('!');
});
it('[R2] says before what locks a shaft that the drive is brought to its marks, as its key asks', async () => {
  const at = await partWay('to marks');
  at.say('area crank pulley');
  expect(shown(at)).toContain('! first R k: timing drive to its marks, then i: flywheel lock');
  at.say('to marks', 'area crank pulley');
  expect(shown(at)).toContain('! first i: flywheel lock');
});
it('cuts no caution off in the middle', async () => {
  const at = await partWay('in flywheel lock');
  at.say('area crank pulley');
  expect(shown(at)).toContain('the engine at its marks, and comes out before anything is turned. 1 more to mind: T');
});
it('[S1] asks for the bead over every bolt that goes back onto its face, and with all of them in, until one is laid', async () => {
  const at = await partWay('bead cam cover face with joint sealant');
  at.say('area cam cover');
  const wanted = '! first C: bead on cam cover face';
  expect(shown(at, 'build')).toContain(wanted);
  const off = (stateOf(at.state().ledger, 'area', 'cam cover')?.holes ?? []).filter(
    (hole) => !stateOf(at.state().ledger, 'hole', hole)?.called.occupant,
  );
  expect(off.length).toBeGreaterThan(5);
  for (const hole of off) at.say(`back ${hole.split('/')[1]}`);
  expect(shown(at, 'build')).toContain(wanted);
  at.say('pass');
  expect(shown(at, 'build')).toContain(wanted);
  for (const _ of [...off, 'pass']) at.say('strike last');
  at.say('bead cam cover face with joint sealant');
  expect(shown(at, 'build')).not.toContain(wanted);
});
it('says at a glance too what stands first, in a row under the next one, and nothing where nothing does', async () => {
  const glance = (at: PartWay, before: 'strip' | 'build') =>
    textOf(sceneOf({ screen: 'glance', before }, { desk: at.bench.desk() })).replace(/ +/g, ' ');
  const at = await partWay('bead cam cover face with joint sealant');
  at.say('area cam cover');
  expect(glance(at, 'build')).toMatch(/NEXT cam cover \d+ *\n ! first C: bead on cam cover face/);
  at.say('bead cam cover face with joint sealant');
  expect(glance(at, 'build')).toContain('NEXT cam cover');
  expect(glance(at, 'build')).not.toContain('bead');
  const strip = await partWay('in jack with block');
  strip.say('area mount bracket');
  expect(glance(strip, 'strip')).toMatch(/NEXT mount bracket 1 *\n ! first i: jack with block/);
  const text = textOf(sceneOf({ screen: 'glance', before: 'build' }, { desk: demoDesk() }));
  expect(text).toMatch(/! first C: bead on cam cover face; first: gasket \(off\)/);
});
it('[S1] asks for a face that wants no bead to be called clean, over the bolts and before the part', async () => {
  const at = await partWay('renewed pump');
  at.say('area coolant pump');
  expect(stateOf(at.state().ledger, 'face', 'pump face')?.declared?.bead).toBeUndefined();
  const wanted = '! first C: pump face clean';
  expect(shown(at, 'build')).toContain(wanted);
  await at.press('C', 'c', 'B');
  expect(shown(at, 'build')).not.toContain(wanted);
});
it('[K4] asks for the holes to be counted over the first that goes back in an area of no plan', async () => {
  const at = await newJob();
  for (const line of ['area lid', 'off 1', 'off 2']) at.session().runLine(line);
  const wanted = '! first h: its holes counted by eye > 1 off';
  expect(shown(at as PartWay, 'build')).toContain(wanted);
  at.session().runLine('holes 2');
  expect(shown(at as PartWay, 'build')).toContain('> 1 off');
  expect(shown(at as PartWay, 'build')).not.toContain('! first');
});
it('[O4] asks for what holds a bolt over the bolt that is in, and says where its figure comes from', async () => {
  const at = await partWay('tight 1', 3);
  at.say('area crank pulley');
  expect(shown(at, 'build')).toContain(
    "! first i: flywheel lock > 1 on bolt hex 19 M14x1.5x65 one-use tighten: torque, then angle, no figures known: they are in the maker's manual",
  );
  at.say('in flywheel lock');
  expect(shown(at, 'build')).not.toContain('! first');
});
it('[O4] asks for what holds a bolt while it is still off, once it may go back, and one key puts it in again', async () => {
  const at = await partWay('new 1 from new crank bolt');
  at.say('area crank pulley');
  await at.press('B');
  expect(shown(at, 'build')).toContain('! first i: flywheel lock > 1 off');
  await at.press('i');
  expect(at.answer()).toMatch(/^flywheel lock in/);
  expect(shown(at, 'build')).not.toContain('! first');
  const turning = await partWay('out flywheel lock');
  turning.say('out flywheel lock', 'area crank pulley');
  expect(shown(turning, 'build')).toContain('> 1 off');
  expect(shown(turning, 'build')).not.toContain('flywheel lock');
});
it('[R2] names the key that calls the tensioner live, from the belt on again till it is', async () => {
  const at = await partWay('renewed timing belt');
  at.say('area tensioner and idler');
  expect(shown(at, 'build')).not.toContain('v tensioner live');
  at.say('renewed timing belt');
  expect(shown(at, 'build')).toContain('v tensioner live');
  await at.press('B', 'v');
  expect(at.answer()).toContain('tensioner');
  expect(shown(at, 'build')).not.toContain('v tensioner live');
});
it('[O2] names the working bolt and the key that takes it out, and takes no part over it', async () => {
  const at = await partWay('turned 1');
  at.say('area crank pulley');
  await at.press('B');
  at.session().runLine('part back pulley');
  expect(at.answer()).toBe('a working fastener is in crank pulley 1, where pulley goes on');
  expect(shown(at, 'build')).toContain('It waits: a working fastener is in 1: x; pulley off: b');
  await at.press('x');
  expect(at.answer()).toContain('crank pulley 1 off, to scrap');
  await at.press('x');
  expect(at.answer()).toContain('no working fastener is in it');
});
it('tells on the cardboard which are only slackened and stay in their holes', async () => {
  const at = await partWay('in jack with block');
  at.say('area mount bracket');
  expect(shown(at)).toMatch(/4 to slacken .*5 to slacken/);
});
it('stays where a part is loose and still on, says its key, and goes on with it', async () => {
  const at = await partWay('in jack with block');
  at.say('in jack with block', 'area mount bracket', 'off 1', 'off 2', 'off 3', 'slack 4');
  expect(shown(at)).toMatch(/⠉5/);
  await at.press('s');
  expect(at.state().facing.area).toBe('mount bracket');
  expect(shown(at)).toContain('> bracket: loose, and still on. p takes it off');
  expect(shown(at)).toContain('mount bracket: 3 off, 2 slack, of 5');
  await at.press('p');
  expect(at.state().facing.area).not.toBe('mount bracket');
});
it('says on the way off, with all of it on again, that it is back, and asks for nothing to go in first', async () => {
  const at = await partWay('filled coolant litres 6.5');
  at.say('area mount bracket');
  expect(at.state().ledger.tallies.all).toMatchObject({ off: 0, slack: 0 });
  at.say(...[...every(at.state().ledger, 'connection')].flatMap((c) => (c.parted ? [`made ${c.connection}`] : [])));
  at.say('area mount bracket');
  expect(shown(at)).toContain('All that came off is back. L lists what else keeps the car here.');
  expect(shown(at)).not.toContain('! first');
});
it('counts at a glance what keeps the car, where no fastener is next', async () => {
  const at = await partWay('filled coolant litres 6.5');
  const { ledger } = at.bench.desk();
  expect(ledger.tallies.all.off).toBe(0);
  const desk = { ...at.bench.desk(), facing: { ...at.bench.desk().facing, area: 'cam cover', hole: undefined } };
  const text = textOf(sceneOf({ screen: 'glance', before: 'build' }, { desk }));
  expect(text).toMatch(/no fastener of it is next; \d+ points keep the car here: L/);
});
it('says of a list of nine or more that a number may want its Enter', () => {
  const asking = (known: number, most?: number) => ({
    ...plainAsking('which', 'hole'),
    ...(most !== undefined && { most }),
    choices: Array.from({ length: known }, (_, i) => ({ value: `${i + 1}`, text: `${i + 1}` })),
  });
  const foot = (known: number, most?: number) => textOf(sceneOf({ screen: 'strip', asking: asking(known, most) }));
  expect(foot(8)).toContain('its number is taken at once');
  expect(foot(2, 8)).toContain('its number is taken at once');
  // Where nobody counted them, "1" may begin a twelfth.
  expect(foot(2, 99)).toContain('its number is taken; Enter where it could go on');
  expect(foot(9)).toContain('its number is taken; Enter where it could go on');
});
it('cuts neither a fastener beside the cardboard nor an order proposed over it', async () => {
  const at = await partWay('in jack with block');
  at.say('area mount bracket');
  const desk = at.bench.desk();
  expect(textOf(sceneOf({ screen: 'strip' }, { desk, columns: 120, rows: 40 }))).not.toMatch(/hex[^│]*M\d[^ │]*…/);
  at.say('area coolant pump');
  const title = textOf(sceneOf({ screen: 'strip' }, { desk: at.bench.desk() })).match(/coolant pump: 0 off.*/)?.[0];
  expect(title?.trimEnd()).toMatch(/^coolant pump: 0 off of 6(, order proposed: [a-z ]+)?$/);
});
it('[O6] asks for companions and blind holes before the first goes in, and minds them with it', async () => {
  const at = await newJob();
  for (const line of [
    'area pump',
    'has companions dowel, O-ring',
    'blind holes',
    'off 1',
    'off 2',
    'holes 2',
    'part off pump held by 1-2',
  ])
    at.session().runLine(line);
  const answer = () => {
    const said = at.state().answer;
    return said && 'text' in said ? said.text : '';
  };
  const minds =
    '. Mind: dowel, O-ring not called seen: looked for before the faces meet. Mind: blind holes of pump not called dry: looked into before anything goes in';
  expect(shown(at as PartWay, 'build')).toContain('! first k: dowel, O-ring seen ! first u: blind holes dry > 1 off');
  await at.press('B', 'b');
  expect(answer()).toBe(`pump back${minds}`);
  await at.press('enter');
  expect(answer()).toBe(`pump 1 back${minds}`);
  await at.press('enter');
  expect(answer()).toBe('pump 2 back');
  await at.press('backspace', 'backspace', 'k', 'u');
  expect(shown(at as PartWay, 'build')).not.toContain('! first');
  await at.press('enter');
  expect(answer()).toBe('pump 1 back');
});
it('names the key that is next on the way back: for all that are in by hand, and for a new one where none of its own is left', async () => {
  const at = await newJob();
  const said = (...lines: string[]) => {
    for (const line of lines) expect(at.session().runLine(line)).toMatchObject({ kind: 'taken' });
  };
  const shownNow = () =>
    textOf(sceneOf({ screen: 'build' }, { desk: at.bench.desk(), columns: 200 })).replace(/\s*│\s*|\s+/g, ' ');
  at.session().runLine('area foot');
  said(
    'off 1 as bolt hex 18 M12x1.5',
    'off 1 nut as nut hex 18 M12x1.5 one-use',
    'off 2 as bolt hex 18 M12x1.5',
    'holes 2',
  );
  said('back 1', 'back 2');
  expect(shownNow()).toContain('n a new one for 1 nut');
  said('box "new nut" as nut hex 18 M12x1.5 one-use', 'new 1 nut from "new nut"');
  expect(shownNow()).toContain('. "." all snug, t this one');
  said('pass');
  expect(shownNow()).toContain('. "." all tight, t this one');
});
it('keeps what closes an opening, or carries a part, over the next fastener until it is in, wherever work goes on', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  const holes = ['caliper/1', 'caliper/2', 'manifold/1', 'bracket/1'].map((hole) => ({ kind: 'hole-declared', hole }));
  story.call('declare', {
    entries: [
      ...['caliper', 'manifold', 'bracket'].map((area) => ({
        kind: 'area-declared',
        area,
        planned: true,
        keepClean: true,
      })),
      ...holes,
      { kind: 'part-declared', part: 'manifold', heldBy: ['manifold/1'] },
      { kind: 'temporary-declared', temporary: 'hook', sort: 'strap', at: 'area:caliper' },
      { kind: 'temporary-declared', temporary: 'mask over the ports', sort: 'mask', at: 'area:manifold' },
    ],
  });
  const at = (area: string) => {
    const desk = { ...demoDesk({ area }), ledger: story.ledger };
    return shown({ bench: { desk: () => desk } } as PartWay);
  };
  expect(at('bracket')).not.toContain('!');
  // One of its two bolts is slack, the other tight: it hangs on nothing yet.
  story.call('slacken', { hole: 'caliper/1' });
  expect(at('bracket')).not.toContain('!');
  story.call('slacken', { hole: 'caliper/2' });
  expect(at('bracket')).toContain('! now i: hook, caliper is open > 1');
  story.call('remove', { hole: 'caliper/1', to: 'tray:1' });
  expect(at('caliper')).toContain('! first i: hook > 2');
  story.call('remove', { hole: 'caliper/2', to: 'tray:1' });
  expect(at('bracket')).toContain('! now i: hook, caliper is open > 1');
  story.call('put-in', { temporary: 'hook', sort: 'strap', at: 'area:caliper' });
  expect(at('bracket')).not.toContain('!');
  story.call('remove', { hole: 'manifold/1', to: 'tray:1' });
  expect(at('bracket')).toContain('! now i: mask over the ports, manifold is open > 1');
  const lines = story.ledger.lines.length;
  story.call('put-in', { temporary: 'rag cover', sort: 'mask', at: 'area:manifold' });
  expect(at('bracket')).not.toContain('!');
  story.call('strike', { lines: [lines + 1] });
  expect(at('bracket')).toContain('! now i: mask over the ports');
  story.call('mask-all', {});
  expect(at('bracket')).not.toContain('!');
});
it('cuts what other keys would take before the cardboard: each row of its holes keeps a row of its own', async () => {
  const at = await newJob(undefined, { plans: plansAtHand(new URL('../../', import.meta.url)).offers });
  const holes = (area: string, many: number) => Array.from({ length: many }, (_, i) => `off ${area} ${i + 1}`);
  const rags = [1, 2, 3, 4].map((n) => `in rag in well ${n}`);
  const opened = [...holes('engine cover', 4), ...holes('ignition coils', 4), ...rags, ...holes('cam cover', 10)];
  for (const line of ['plan cam cover reseal for cam cover reseal', ...opened, 'in mask', 'area cam cover'])
    expect(at.session().runLine(line).kind).not.toBe('refused');
  const rows = textOf(sceneOf({ screen: 'build' }, { desk: at.bench.desk() })).split('\n');
  expect(rows.filter((row) => row.includes('! first'))).toHaveLength(3);
  const drawn = rows.map((row) => row.split('│')[1] ?? '').filter((row) => row.includes('◉'));
  expect(drawn.map((row) => row.match(/\d+/g)?.map(Number))).toEqual([
    [1, 2, 4, 5],
    [3, 8],
    [6, 7, 9, 10],
  ]);
});
it('calls no belt loose that is only free in front', async () => {
  const at = await partWay('in cam clamp');
  at.say('area lower belt cover');
  expect(shown(at)).toContain('> timing belt: free in front, and still on; its tension off first. p takes it off');
});
it('[R7] names the key of the rotation that gates the area in use', async () => {
  const at = await partWay('mark on crank mark');
  at.say('area lower belt cover');
  expect(shown(at, 'build')).toContain('first R: timing drive (check rotation not passed)');
});
