// Where work goes on by itself, what keeps it where it is, and what a whole pass leaves out: the reference job part way.
import { describe, expect, it } from 'vitest';
import { pickedAt } from '../../src/calls/listed.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { linesOf, playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { atTheBench, lettersOf, newJob } from './at-the-bench.ts';
import { type PartWay, partWay } from './part-way.ts';

const area = (at: PartWay) => at.state().facing.area;
const entriesOf = (at: PartWay) => {
  const { lines } = at.state().ledger;
  return lines.all[lines.length - 1]?.entries ?? [];
};
const holesOf = (at: PartWay) => entriesOf(at).flatMap((e) => (e.kind === 'fastener-tightened' ? [e.hole] : []));

const joints = [
  'coil rail plug',
  'cam sensor plug',
  'front breather',
  'rear breather',
  'bottom hose',
  'harness clip',
].map((name) => `made ${name}`);

describe('a call that takes the next of its kind', () => {
  it('[T3] names the call that says otherwise, where it judged the old one without being asked', async () => {
    const at = await partWay('renewed auxiliary belt');
    await at.press('B', 'r');
    const besides = () => at.view().asking?.choices.map(({ value, beside }) => `${value}: ${beside}`);
    expect(besides()).toContain('auxiliary belt: old one worn');
    at.say('judge auxiliary belt cracked');
    await at.press('escape', 'r');
    expect(besides()).toContain('auxiliary belt: old one cracked');
    at.say('strike last');
    await at.press('escape', 'r', 'enter');
    expect(at.state().answer).toMatchObject({ otherwise: { words: 'If it is not worn', by: 'judge' } });
  });
  it('renews nothing of another area unasked, though it is the only one left', async () => {
    const at = await partWay('renewed auxiliary belt');
    at.say('area coolant pump');
    const before = at.state().ledger.lines.length;
    await at.press('B', 'r');
    expect(at.state().ledger.lines.length).toBe(before);
    expect(at.view().asking?.title).toBe('renewed: part');
  });
  it('joins the battery unasked only when nothing is off any more, though it is the only joint left', async () => {
    const at = await partWay('off 1', 2);
    const before = at.state().ledger.lines.length;
    await at.press('B', 'j');
    expect(at.state().ledger.lines.length).toBe(before);
    expect(at.view().asking?.title).toContain('made');
  });
  it('asks nothing where nothing could be the answer, and says the way', async () => {
    const at = await partWay('box new auxiliary belt for auxiliary belt');
    at.say('area right front wheel', 'off 1');
    await at.press('B');
    for (const [key, text, instead] of [
      ['r', 'no part that is off has its new one in the parts box', 'put it in the box first'],
      ['b', 'no part is off that could go back', 'a new one goes on by another call'],
      ['j', 'nothing is parted that could be joined now', 'see what is open'],
      ['o', 'nothing that went in for the work is in', 'go on'],
    ] as const) {
      await at.press(key);
      expect(at.view().asking).toBeUndefined();
      expect(at.state().answer).toMatchObject({ kind: 'refused', text, instead });
    }
  });
  it('[O1] says of a new one that is there what is in its way, and not that there is none', async () => {
    const at = await partWay('renewed timing belt');
    at.say('slack tensioner and idler 2');
    await at.press('B', 'r');
    expect(at.view().asking?.title).toBe('renewed: part');
    expect(at.view().asking?.choices.find((one) => one.value === 'timing belt')?.way).toContain('tensioner and idler');
  });
  it('offers nothing that cannot be meant where something new may be named', async () => {
    const at = await partWay('part off timing belt');
    at.say('part off timing belt', 'area cam cover');
    await at.press(',', 'p');
    const offered = at.view().asking?.choices.map((one) => one.value) ?? [];
    expect(offered).toContain('gasket');
    expect(offered).not.toContain('timing belt');
  });
});

describe('what goes in for the work', () => {
  it('is offered where it goes in, and not before its time', async () => {
    const at = await partWay('in right stand');
    await at.press('S');
    expect(at.shown()).toContain('put in: right stand');
    at.say('in right stand', 'area arch liner');
    expect(at.shown().filter((one) => one.startsWith('put in'))).toEqual([]);
    at.say('area mount bracket');
    expect(at.shown()).toContain('put in: jack with block');
    at.say('area lower belt cover');
    expect(at.shown().filter((one) => one.startsWith('put in'))).toEqual([]);
  });
  it('[T1] comes out by itself neither while the car hangs on it nor while its bracket is open', async () => {
    const at = await partWay('in flywheel lock');
    await at.press('S');
    expect(at.shown().filter((one) => one.startsWith('taken out'))).toEqual([]);
    const before = at.state().ledger.lines.length;
    await at.press('B', 'o');
    expect(at.view().asking?.title).toContain('taken out');
    expect(at.state().ledger.lines.length).toBe(before);
  });
  it('is shown with all that is in besides, before it is taken out', async () => {
    const at = await partWay('out cam clamp');
    await at.press('B');
    expect(at.shown()).toContain(
      'taken out: crank pin; in besides: right stand, jack with block, flywheel lock, cam clamp',
    );
  });
  it('[R2] is no proposal while a lock holds what nothing else does, and the one wanted once more comes out last', async () => {
    const taken = (at: PartWay) => at.shown().filter((one) => one.startsWith('taken out'));
    const off = await partWay('part off timing belt');
    expect(taken(off)).toEqual([]);
    const slack = await partWay('tight 1', 2);
    expect(taken(slack)).toEqual([]);
    const at = await partWay('out cam clamp');
    at.say('out flywheel lock', 'in flywheel lock as lock at area crank pulley');
    await at.press('B', 'o', 'o', 'o');
    const out = at
      .state()
      .ledger.lines.all.slice(-3)
      .flatMap(({ entries }) => entries);
    expect(out.map((e) => 'temporary' in e && e.temporary)).toEqual(['crank pin', 'cam clamp', 'flywheel lock']);
  });
  it('[R2] holds the bolt that it is declared for, and is no lock of the drive', async () => {
    const at = await partWay('off 1', 5);
    at.say('area crank pulley', 'off 1');
    expect(at.answer()).not.toContain('no holding tool');
    at.say('part off timing belt');
    expect(at.answer()).toContain('not in: cam clamp, crank pin;');
  });
});

it('[S1] goes on to what can go on as it is, before what wants a bead first', async () => {
  const at = await newJob();
  for (const line of [
    'area pump; holes 1; off 1',
    'area cover; holes 1; off 1; face rim pressed by 1 with a bead',
    'area bracket; holes 1; off 1',
  ])
    for (const call of line.split('; ')) at.session().runLine(call);
  at.session().runLine('back 1');
  await at.press('B', '.', '.');
  expect(area(at as PartWay)).toBe('pump');
});
describe('a whole pass', () => {
  it('[O1] leaves out what waits for the belt, says so, and marks nothing out of order', async () => {
    const at = await partWay('renewed timing belt');
    at.say('area tensioner and idler', 'slack 2', 'tight 2');
    await at.press('B', '.');
    expect(holesOf(at)).toEqual(['tensioner and idler/2']);
    expect(at.answer()).toContain('Mind: 1 left out: final after timing belt');
    expect(entriesOf(at)[0]).not.toHaveProperty('outOfOrder');
    await at.press('.');
    expect(at.answer()).toContain('final after timing belt');
    expect(at.state().answer?.kind).toBe('refused');
  });
  it('[O3] calls one in turn that is next but for what is finished later', async () => {
    const at = await partWay('renewed timing belt');
    at.say('area tensioner and idler', 'slack 2', 'tight 2', 'tight 2');
    expect(entriesOf(at)[0]).not.toHaveProperty('outOfOrder');
  });
  it('[O1] leaves out what waits for the weight on the wheels, and says so', async () => {
    const at = await partWay('tight 1', 6);
    expect(area(at)).toBe('mount bracket');
    await at.press('B', '.', '.');
    expect(holesOf(at)).toEqual(['mount bracket/1', 'mount bracket/2', 'mount bracket/3']);
    expect(at.answer()).toContain('4, 5 left out: final with the weight on, and right stand is in');
  });
});

describe('what is still open', () => {
  it('[X5] begins with what can be done now; what wants another thing first comes behind it', async () => {
    const at = await partWay('clean cam cover face');
    await at.press('L');
    const rows = at.bench.listed();
    const texts = rows.slice(0, rows.length).map(({ text }) => text);
    const rowOf = (text: string) => texts.findIndex((one) => one.startsWith(text));
    expect(texts[rowOf('coil rail plug')]).toBe('coil rail plug: parted; first');
    expect(rowOf('tensioner and idler 1: off')).toBeGreaterThan(0);
    expect(rowOf('coil rail plug')).toBeGreaterThan(rowOf('tensioner and idler 1: off'));
    expect(rowOf('cam cover face: ')).toBeLessThan(rowOf('tensioner and idler 1: off'));
  });
});

describe('going on by itself', () => {
  it('stays in an area whose connections wait, and goes on with the last of them', async () => {
    const at = await partWay('used tube of sealant at face cam cover face');
    await at.press('B', '.');
    expect(at.answer()).not.toContain('On to');
    await at.press('j', 'j', 'j');
    expect(area(at)).toBe('cam cover');
    await at.press('j');
    expect(at.answer()).toBe('coil rail plug made. On to coolant pump');
  });
  it('[O1] prefers an area that can be built on now to one that a belt goes on behind first', async () => {
    const script = upTo(scriptLines('reference-planned.calls'), 'area upper belt cover', 2);
    // Taken off after the upper cover, the liner would be the next one back.
    const liner = script.splice(
      script.findIndex(({ text }) => text === 'area arch liner'),
      8,
    );
    const [tray] = script.filter(({ text }) => text === 'tray 1');
    const later = script.findIndex(({ text }) => text === 'to marks');
    script.splice(later, 0, ...(tray ? [tray] : []), ...liner);
    const at = await atTheBench(linesOf(playLines(script.slice(0, -1)).ledger));
    for (const line of [...joints.slice(0, 5), 'area crank pulley']) at.session().runLine(line);
    await at.press('escape', 'B', 't');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringMatching(/On to upper belt cover$/) });
  });
  it('is told what it leaves behind when it is sent on by hand', async () => {
    const at = await partWay('area coolant pump', 2);
    await at.press('B', 'j', 'j', '>');
    expect(at.answer()).toBe('at coolant pump. Left at cam cover: coil rail plug parted, cam sensor plug parted');
  });
  it('[X1] stays for the second look, and goes on with it', async () => {
    const at = await partWay('tight mount bracket 5', 2);
    at.say(...joints, 'area mount bracket');
    await at.press('B', 't');
    expect(area(at)).toBe('mount bracket');
    await at.press('z', ...'Io Marsh', 'enter');
    expect(at.answer()).toMatch(/On to right front wheel$/);
    expect(entriesOf(at)[0]).toMatchObject({ kind: 'looked-again', who: 'Io Marsh' });
    // A name is asked for once a day.
    at.say('area mount bracket', 'slack 5', 'tight 5', 'tight 5');
    await at.press('z');
    expect(entriesOf(at)[0]).toMatchObject({ kind: 'looked-again', who: 'Io Marsh' });
  });
  it('[T1] leaves to the wheel neither while the engine is on a jack nor while others are open', async () => {
    const at = await partWay('out jack with block');
    at.say(...joints, 'renewed auxiliary belt', 'area arch liner', ...[1, 2, 3, 4, 5, 6, 7].map((n) => `back ${n}`));
    await at.press('B', '.');
    expect(at.answer()).toMatch(/On to mount bracket$/);
    await at.press('t', 't');
    expect(at.answer()).not.toContain('On to');
    at.say('out jack with block', 'area arch liner', 'slack 1');
    await at.press('t');
    expect(at.answer()).toMatch(/On to right front wheel$/);
  });
  it('is asked of the battery only at last, and says what is open before', async () => {
    const at = await partWay('area coolant pump', 2);
    at.say('made battery earth');
    expect(at.answer()).toMatch(
      /^battery earth made\. Mind: battery earth goes on last; still \d+ off, \d+ loose, parted: [^.]*$/,
    );
    expect(stateOf(at.state().ledger, 'connection', 'battery earth')?.parted).toBe(false);
  });
});

describe('the check rotation', () => {
  it('[R4] asks how many more turns, and says how many are to go', async () => {
    const at = await partWay('mark on crank mark');
    at.say('tension reset');
    await at.press('R', 'enter');
    expect(at.answer()).toBe('1 quarter turned: 0.25 of 2 turns made');
    await at.press('n');
    expect(at.view().asking?.title).toBe('turns: how many more (1.75 to go)');
  });
  it('says where nothing is in to turn the crank by', async () => {
    const at = await partWay('working crank pulley 1');
    await at.press('R');
    const words = () =>
      at.bench
        .listed()
        .slice(0, 9)
        .map((one) => one.text);
    expect(words()).toContain('nothing is in crank pulley 1 to turn it by');
    at.say('working crank pulley 1');
    expect(words()).not.toContain('nothing is in crank pulley 1 to turn it by');
  });
});

describe('what is bought as a supply', () => {
  it('[T4] is used with the filling and with the bead that bear its name', async () => {
    const at = await partWay('bead cam cover face with joint sealant');
    at.say('box joint sealant', 'box coolant mix', 'bead cam cover face with joint sealant');
    expect(entriesOf(at).map((e) => e.kind)).toEqual(['bead-laid', 'box-used']);
    const later = await partWay('filled coolant litres 6.5');
    later.say('box coolant mix', 'filled coolant litres 6.5');
    expect(entriesOf(later)).toMatchObject([{ kind: 'fluid-filled' }, { kind: 'box-used', name: 'coolant mix' }]);
    later.say('filled coolant litres 0.5');
    expect(entriesOf(later).map((e) => e.kind)).toEqual(['fluid-filled']);
  });
  it('[S3] a label is said from the one known, by a key, its times in hours or minutes', async () => {
    const at = await partWay('bead cam cover face with joint sealant');
    await at.press('C', 'l');
    const typed = at.view().asking?.typed ?? '';
    expect(typed).toMatch(/^label joint sealant moisture skin 10 run 6 full 24 at 23 50 lowest 5$/);
    await at.press('ctrl+u', ...lettersOf(typed.replace('run 6', 'fill 3 min run 45min')), 'enter');
    expect(at.view().asking).toBeUndefined();
    expect(entriesOf(at)).toMatchObject([
      { kind: 'product-declared', label: { fillHours: 0.05, runHours: 0.75, fullHours: 24, skinMinutes: 10 } },
    ]);
  });
  it('[T5] is asked for in litres, and taken with their name or without', async () => {
    const at = await partWay('filled coolant litres 6.5');
    await at.press('C', 'f');
    expect(at.view().asking?.title).toBe('filled coolant: how many litres, as 6.5');
    await at.press(...lettersOf('6 qt'), 'enter');
    expect(at.view().asking?.why).toBe('"6 qt" is not in litres, as "6.5 l"');
    await at.press('backspace', 'backspace', 'backspace', ...lettersOf(',5 l'), 'enter');
    expect(entriesOf(at)).toMatchObject([{ kind: 'fluid-filled', litres: 6.5 }]);
    at.say('filled coolant litres 0.5 litres');
    expect(entriesOf(at)).toMatchObject([{ litres: 0.5 }]);
  });
  it.each([
    ['filled coolant 6.5', { circuit: 'coolant', litres: 6.5 }],
    ['filled coolant 6,5 l', { circuit: 'coolant', litres: 6.5 }],
    ['filled coolant with glycol mix 6 litres', { circuit: 'coolant', fluid: 'glycol mix', litres: 6 }],
    // Nobody speaks of a circuit "brake DOT": the figure is of its name.
    ['filled brake DOT 4', { circuit: 'brake DOT 4' }],
    ['filled coolant with mix 50', { circuit: 'coolant', fluid: 'mix 50' }],
  ])('[T5] a figure behind what is filled is how much: %s', async (line, filled) => {
    const at = await partWay('filled coolant litres 6.5');
    at.say(line);
    const [entry] = entriesOf(at);
    expect(entry).toMatchObject(filled);
    expect(entry && 'litres' in entry).toBe('litres' in filled);
  });
});

describe('an old part', () => {
  it('[T3] is named where its verdict is asked for, whatever row is picked', async () => {
    const at = await partWay('bead cam cover face with joint sealant');
    await at.press('P', 'page-down', 'down');
    const picked = pickedAt(at.bench.listed(), at.view().at.box)?.text;
    await at.press('j');
    expect(at.view().asking).toMatchObject({
      slot: 'verdict',
      title: `judge old part: ${picked}, the old one, is`,
    });
    // To be renewed: those that are only off stand behind it.
    expect(picked).toBe('tensioner');
  });
});

describe('the calls of a screen', () => {
  it('stand with their keys where one is chosen, but on a keypad', async () => {
    const at = await partWay('clean cam cover face');
    await at.press('P', 'M');
    const besides = () => Object.fromEntries(at.view().asking?.choices.map((c) => [c.value, c.beside]) ?? []);
    expect(besides()).toMatchObject({ 'box-all': 'a', judge: 'j' });
    await at.press('escape', 'K', '/');
    expect(at.view().asking?.title).toBe('which call');
    expect(Object.values(besides()).filter(Boolean)).toEqual([]);
  });
});

describe('a list', () => {
  it('keeps picked what was picked, though a call puts rows before it', async () => {
    const at = await partWay('clean cam cover face');
    await at.press('P', 'page-down', 'page-down');
    const picked = () => pickedAt(at.bench.listed(), at.view().at.box)?.key;
    const before = picked();
    const { length } = at.bench.listed();
    expect(before).toBeDefined();
    await at.press('i', ...'rag'.split(''), 'enter');
    expect(at.bench.listed().length).toBe(length + 1);
    expect(picked()).toBe(before);
  });
});

it('goes back by Escape through the lists opened one from the other, a question left on the way', async () => {
  const at = await newJob();
  for (const line of ['area cover', 'off 1']) at.session().runLine(line);
  await at.press('B', 'P', 'i', 'escape', 'L', 'F');
  const back: string[] = [];
  for (let i = 0; i < 3; i++) {
    await at.press('escape');
    back.push(at.view().screen);
  }
  expect(back).toEqual(['leaving', 'box', 'build']);
});

describe('the way back through an area', () => {
  it('goes on from the one put in, and comes last to those passed over', async () => {
    const at = await newJob();
    for (const line of ['area starter', 'off 1', 'off 2', 'off 3', 'off 4', 'holes 4']) at.session().runLine(line);
    await at.press('B', '#', '2', 'enter');
    const backs = () => at.state().ledger.lines;
    for (const _ of [1, 2, 3, 4]) await at.press('enter');
    const { all, length } = backs();
    const holes = all
      .slice(0, length)
      .flatMap(({ entries }) => entries.flatMap((e) => (e.kind === 'fastener-fitted' ? [e.hole] : [])));
    expect(holes).toEqual(['starter/2', 'starter/3', 'starter/4', 'starter/1']);
  });
});

describe('a refusal', () => {
  it('is gone once another key asks something: beneath its question it would be read as an answer to that', async () => {
    const at = await newJob();
    for (const line of ['area starter', 'off 1', 'holes 1']) at.session().runLine(line);
    await at.press('L', 'x');
    expect(at.state().answer?.kind).toBe('refused');
    await at.press('o');
    expect(at.view().asking).toBeDefined();
    expect(at.state().answer).toBeUndefined();
  });
});

describe('what was parted in a job without a plan', () => {
  it('is pointed at first in the area it was parted in, and keeps its place in the list', async () => {
    const at = await newJob();
    const lines = ['area heater', 'parted heater hose', 'area starter', 'off 1', 'parted starter cable', 'parted plug'];
    for (const line of lines) at.session().runLine(line);
    await at.press('B', 'j');
    const { choices = [], at: pointed = -1 } = at.view().asking ?? {};
    expect(choices.map((c) => c.value)).toEqual(['heater hose', 'starter cable', 'plug']);
    expect(choices[pointed]?.value).toBe('starter cable');
  });
});
