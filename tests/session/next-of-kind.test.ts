// One key for the next of its kind and for the next area: what is taken unasked, what is asked, and how to say otherwise.
import { beforeEach, describe, expect, it } from 'vitest';
import { leftToSlacken } from '../../src/calls/desk.ts';
import { pickedAt } from '../../src/calls/listed.ts';
import { areaDrawn } from '../../src/calls/lists/map.ts';
import { boxProposals } from '../../src/calls/proposals.ts';
import { upNext } from '../../src/calls/up-next.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { suspectedOn } from '../../src/job/suspicions.ts';
import { type AtTheBench, atTheBench } from './at-the-bench.ts';

const plan = 'inline-four belt service';
const trays = ['1', '2', '3'];
let at: AtTheBench;
const answer = () => {
  const said = at.state().answer;
  return said && 'text' in said ? said.text : '';
};
const say = (...lines: string[]) => {
  for (const line of lines) {
    const said = at.session().runLine(line);
    if (said.kind === 'refused') throw new Error(`${line}: ${said.text}`);
  }
};
const pickedOf = () => pickedAt(at.bench.listed(), at.view().at[at.view().screen]);
const type = (words: string) => [...words].map((c) => (c === ' ' ? 'space' : c));
const shown = () => {
  const { keymap, view } = at.bench.store.getState();
  return upNext(at.bench.desk(), keymap.keysOn(view.screen)).map(({ bound, name }) => `${bound.row.label}: ${name}`);
};

describe('on a job from a plan', () => {
  beforeEach(async () => {
    at = await atTheBench(undefined, { trays });
    await at.press('n', 'x', 'enter', 'S');
    for (const service of ['timing belt', 'coolant pump', 'cam cover gasket']) say(`plan ${plan} for ${service}`);
  });

  it('parts, puts in and takes off what the plan has next, and shows it before', async () => {
    expect(shown()).toContain('parted: battery earth');
    await at.press('c');
    expect(answer()).toBe('battery earth parted');
    expect(shown()).toContain('put in: right stand');
    await at.press('i');
    expect(answer()).toMatch(/^right stand in/);
  });

  it('takes nothing of another area unasked', async () => {
    say('parted battery earth', 'area right front wheel');
    await at.press('c');
    expect(at.view().asking?.title).toBe('parted: connection');
  });

  it('proposes no mask before anything of its area is off, and no hose elsewhere of a circuit that is full', async () => {
    say('parted battery earth', 'connection heater hose of coolant', 'area cam cover');
    const proposed = (call: string) => shown().filter((one) => one.startsWith(call));
    expect(proposed('put in')).not.toContain('put in: mask');
    for (const plug of ['coil rail plug', 'cam sensor plug', 'front breather', 'rear breather']) say(`parted ${plug}`);
    expect(proposed('parted')).toEqual([]);
    say('off 1');
    expect(proposed('put in')).toEqual(['put in: mask']);
    // What came off lies open wherever work has gone on to.
    say('area arch liner');
    expect(proposed('put in')).toEqual(['put in: mask']);
    say('area cam cover', 'all masked');
    expect(proposed('put in')).toEqual([]);
    say('all unmasked', 'drained coolant');
    expect(proposed('parted')).toEqual(['parted: heater hose']);
  });

  it('asks which one after a comma', async () => {
    await at.press(',', 'c');
    expect(at.view().asking?.title).toBe('parted: connection');
    await at.press('2');
    expect(answer()).not.toBe('battery earth parted');
    await at.press('c');
    expect(answer()).toBe('battery earth parted');
  });

  it('takes out and joins again what came last, and passes none over', async () => {
    say('in right stand', 'in jack with block', 'parted battery earth', 'parted bottom hose');
    await at.press('B', 'o');
    expect(answer()).toMatch(/^jack with block out/);
    await at.press('j');
    expect(answer()).toMatch(/^bottom hose made/);
    // It would go on last: asked once, since a key that finds nothing else would join it.
    say('area right front wheel', 'off 1');
    await at.press('j', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'asked', text: 'battery earth goes on last; still 1 off' });
    say('back 1', 'area coolant pump');
    await at.press('j', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'asked', text: 'battery earth goes on last; still 1 loose' });
    // The nut of its own clamp is drawn up once it is on.
    say('area right front wheel', 'tight 1', 'area battery', 'off 1', 'area coolant pump');
    await at.press('j');
    expect(answer()).toMatch(/^battery earth made/);
  });

  it('lifts off no part that something still stands in front of', async () => {
    say('area right front wheel', ...[1, 2, 3, 4, 5].map((n) => `off ${n}`));
    expect(shown().filter((one) => one.startsWith('part off'))).toEqual([]);
    say('area arch liner', ...[1, 2, 3, 4, 5, 6, 7].map((n) => `off ${n}`));
    expect(shown()).toContain('part off: auxiliary belt');
    say('part off auxiliary belt');
    expect(shown().filter((one) => one.startsWith('part off'))).toEqual([]);
  });

  it('[O2] asks first for what the area in use holds, and last for what lies behind what is closed', async () => {
    say('area right front wheel');
    await at.press('p');
    const { choices = [], at: row } = at.view().asking ?? {};
    expect(row).toBe(0);
    expect(choices[0]).toMatchObject({
      value: 'right wheel',
      blocked: 'right wheel is still held by right front wheel 1',
    });
    expect(choices.slice(-3).map(({ value, beside }) => [value, beside])).toEqual([
      ['timing belt', 'behind lower belt cover'],
      ['auxiliary belt', 'behind arch liner'],
      ['gasket', 'behind cam cover'],
    ]);
    const before = at.state().ledger.lines.length;
    await at.press('enter');
    expect(answer()).toBe('right wheel is still held by right front wheel 1');
    at.pace.stepMs = 1;
    await at.press('escape', 'p', ...type('timing belt'), 'enter');
    expect(at.state().answer).toMatchObject({
      kind: 'asked',
      text: 'timing belt is behind lower belt cover, not opened yet',
      again: 'calls timing belt off all the same',
    });
    expect(at.state().ledger.lines.length).toBe(before);
    // The same key again, without the part being chosen once more, too quick or not.
    await at.press('p');
    expect(at.state().answer).toMatchObject({ kind: 'asked', tooQuick: true });
    at.pace.stepMs = 60_000;
    await at.press('p');
    expect(answer()).toContain('timing belt off');
  });

  it('[U3] asks of the holes that were called alone which one it was not', async () => {
    say('area arch liner', 'off 1', 'off 4');
    await at.press('e');
    expect(at.view().asking?.choices.map(({ text }) => text)).toEqual(['1', '4']);
    await at.press('4');
    expect(at.view().asking?.choices).toHaveLength(7);
  });

  it('[O2] takes no part behind a closed cover as the only one, and a typed line takes it at once', async () => {
    say('area lower belt cover');
    await at.press('p');
    expect(at.view().asking?.choices[0]?.value).toBe('lower cover');
    await at.press('escape');
    say('part off timing belt');
  });

  it('[O2] keeps to the part that stands in front, when the one behind it is slack already', async () => {
    say('area lower belt cover', ...[1, 2, 3, 4, 5, 6].map((n) => `off ${n}`), 'in cam clamp', 'in crank pin');
    say('area tensioner and idler', 'slack 1');
    expect(shown()).toContain('part off: timing belt');
    await at.press('p');
    expect(answer()).toMatch(/^timing belt off/);
    await at.press('p');
    expect(answer()).toMatch(/^tensioner off/);
  });

  it('[O2] says of a loose part that it comes off by itself with its last bolt, and then that it has', async () => {
    say('area right front wheel', ...[1, 2, 3, 4, 5].map((n) => `slack ${n}`));
    expect(shown()).toContain('part off: right wheel, else by itself with its last');
    say('in right stand', ...[1, 2, 3, 4].map((n) => `off ${n}`));
    expect(shown()).toContain('part off: right wheel, else by itself with its last');
    await at.press('enter', 'p');
    expect(at.view().asking?.title).toBe('part off: which other part (right wheel came off with its last)');
    await at.press('escape');
    say('area mount bracket', 'in jack with block', 'off 1', 'off 2', 'off 3', 'slack 4', 'slack 5');
    // What is only slackened comes off by no bolt of its own.
    expect(shown()).toContain('part off: bracket');
    await at.press(',', 'p');
    expect(at.view().asking?.title).toBe('part off: which part');
  });

  it('[K1] tells no figure of a tray that is to be counted', async () => {
    say('area right front wheel', 'off 1');
    await at.press('t');
    say('off 3');
    await at.press('L', ',', 'c');
    const beside = () => at.view().asking?.choices.map((one) => `${one.text} ${one.beside ?? '-'}`);
    expect(beside()).toEqual(['1 to be counted', '2 to be counted', '3 -']);
    await at.press('escape');
    say('count 1 is 1');
    await at.press(',', 'c');
    expect(beside()).toEqual(['1 counted 1', '2 to be counted', '3 -']);
  });
  it('takes the next tray in which nothing lies', async () => {
    say('area right front wheel', 'off 1');
    await at.press('t');
    expect(at.state().facing.tray).toBe('2');
    say('off 3');
    await at.press('t');
    expect(at.state().facing.tray).toBe('3');
    await at.press('t');
    expect(at.view().asking?.title).toBe('tray');
    expect(at.view().asking?.choices.map(({ text, beside }) => `${text} ${beside}`)).toEqual([
      '1 1 in it',
      '2 1 in it',
      '3 empty',
    ]);
    // Past the last one it goes round to the first.
    await at.press('escape', 'backspace');
    say('off 4');
    await at.press('t');
    expect(at.state().facing.tray).toBe('2');
  });

  it('takes one more tray into use where something lies in every other, and says so', async () => {
    say('area right front wheel', 'off 1', 'tray 2', 'off 2', 'tray 3', 'off 3');
    await at.press('t');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().facing.tray).toBe('4');
    expect(answer()).toBe('tray 4, one more: something lies in every other');
    say('off 4');
    await at.press('t');
    expect(at.state().facing.tray).toBe('5');
    await at.press('t');
    expect(at.view().asking?.title).toBe('tray');
  });

  it('[K1] counts the only tray left though nothing should lie in it, and makes none of a figure', async () => {
    say('area right front wheel', 'off 1', 'tray 2', 'off 2', 'back 2', 'count 1 is 1');
    await at.press('P', 'c');
    expect(at.view().asking?.title).toBe('count a tray 2: how many');
    await at.press('0', 'enter', ',', 'c', '0', 'enter');
    expect(at.view().asking).toMatchObject({ slot: 'tray', why: 'choose one by its number; Enter again takes 1' });
    await at.press('escape');
    expect(at.state().ledger.lines.all.at(-1)?.entries).toMatchObject([{ kind: 'tray-counted', tray: '2', count: 0 }]);
  });
  it('counts the trays one after the other, each by its name', async () => {
    say('area right front wheel', 'off 1', 'tray 2', 'off 3', 'off 5');
    await at.press('L', 'c');
    expect(at.view().asking?.title).toBe('count a tray 1: how many');
    await at.press('1', 'enter', 'c');
    expect(at.view().asking?.title).toBe('count a tray 2: how many');
  });

  it('goes on behind the tray that was pointed at, and round again', async () => {
    say('area right front wheel', 'off 1', 'tray 2', 'off 2', 'tray 3', 'off 3');
    await at.press('P');
    for (const _ of at.bench.listed().slice(0, 9)) if (pickedOf()?.picks.tray !== '2') await at.press('down');
    await at.press('c');
    expect(at.view().asking?.title).toBe('count a tray 2: how many');
    await at.press('1', 'enter', 'c');
    expect(at.view().asking?.title).toBe('count a tray 3: how many');
    await at.press('1', 'enter', 'c');
    expect(at.view().asking?.title).toBe('count a tray 1: how many');
  });

  it('goes on to the next area with the last fastener of one, and back when that is struck', async () => {
    say('in right stand', 'area right front wheel', ...[1, 3, 5, 2].map((n) => `off ${n}`));
    await at.press('enter');
    expect(answer()).toBe('right front wheel 4 off, to tray 1; right wheel off. On to arch liner, still into tray 1');
    expect(at.state().facing.area).toBe('arch liner');
    await at.press('backspace');
    expect(at.state().facing.area).toBe('right front wheel');
  });

  it('holds back the Enter too many at the end of an area, and takes one that is meant for the next', async () => {
    say('in right stand', 'area right front wheel', ...[1, 3, 5, 2].map((n) => `off ${n}`));
    at.pace.stepMs = 20;
    await at.press('enter', 'enter', 'enter');
    const taken = 'right front wheel 4 off, to tray 1; right wheel off. On to arch liner, still into tray 1';
    const again = { again: 'is for arch liner 1', tooQuick: true };
    expect(at.state().answer).toMatchObject({ kind: 'asked', text: taken, ...again });
    const { length } = at.state().ledger.lines;
    // Nothing was called, so nothing is struck.
    await at.press('backspace');
    expect(at.state().ledger.lines.length).toBe(length);
    await at.press('backspace', 'enter', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'asked', text: taken });
    at.pace.stepMs = 200;
    await at.press('enter');
    expect(answer()).toMatch(/^arch liner 1 off/);
  });
  it('calls nothing of the next area while the hand goes on as fast, however long it does', async () => {
    say('in right stand', 'area right front wheel', ...[1, 3, 5, 2].map((n) => `off ${n}`));
    at.pace.stepMs = 20;
    await at.press('enter');
    const { length } = at.state().ledger.lines;
    await at.press(...Array.from({ length: 30 }, () => 'enter'));
    expect(at.state().ledger.lines.length).toBe(length);
  });
  it('takes at once what is pointed at in the area it went on to', async () => {
    say('in right stand', 'area right front wheel', ...[1, 3, 5, 2].map((n) => `off ${n}`));
    at.pace.stepMs = 20;
    await at.press('enter', '#', '2', 'enter', 'enter');
    expect(answer()).toMatch(/^arch liner 2 off/);
  });

  it('passes over no area that work went on to by itself when the key for the next one comes behind', async () => {
    say('in right stand', 'area right front wheel', ...[1, 3, 5, 2].map((n) => `off ${n}`));
    at.pace.stepMs = 20;
    await at.press('enter', '>', '>');
    expect(at.state().facing.area).toBe('arch liner');
    expect(at.state().answer).toMatchObject({
      kind: 'asked',
      text: 'at arch liner already: work went on there by itself',
      instead: 'nothing of it is called since',
      again: 'goes past it, to mount bracket',
      tooQuick: true,
    });
    at.pace.stepMs = 60_000;
    await at.press('>');
    expect(at.state().facing.area).toBe('mount bracket');
  });
  it('passes over it neither where a tray was taken in use there meanwhile', async () => {
    say('in right stand', 'area right front wheel', ...[1, 3, 5, 2].map((n) => `off ${n}`));
    await at.press('enter', 't', '>');
    expect(at.state().answer).toMatchObject({ kind: 'asked', again: 'goes past it, to mount bracket' });
    expect(at.state().facing).toMatchObject({ area: 'arch liner', tray: '2' });
  });
  it('is held at none by the same key on the other screen, where another area comes next', async () => {
    say('in right stand', 'area right front wheel', ...[1, 3, 5, 2].map((n) => `off ${n}`));
    await at.press('enter', 'B', '>');
    expect(at.state().facing.area).toBe('right front wheel');
  });
  it('goes past the area that work went on to by itself once something of it is called', async () => {
    say('in right stand', 'area right front wheel', ...[1, 3, 5, 2].map((n) => `off ${n}`));
    await at.press('enter', 'enter', '>');
    expect(at.state().facing.area).toBe('mount bracket');
  });

  it('passes over an area that fasteners still keep closed', async () => {
    say('area arch liner', ...[1, 2, 3, 4, 5, 6].map((n) => `off ${n}`), 'area arch liner');
    await at.press('enter');
    // The belt lies loose behind it, and comes off before work goes on.
    expect(at.state().facing.area).toBe('arch liner');
    expect(shown()).toContain('part off: auxiliary belt');
    await at.press('>');
    // The pulley sits behind liner and belt, the mount bracket behind nothing.
    expect(at.state().facing.area).toBe('right front wheel');
    say(...[1, 2, 3, 4, 5].map((n) => `off right front wheel ${n}`));
    await at.press('>');
    expect(at.state().facing.area).toBe('mount bracket');
    // Behind the bracket sits the upper cover; the pulley is free but for a belt that comes away.
    await at.press('>');
    expect(at.state().facing.area).toBe('crank pulley');
  });

  it('says which are only slackened when nothing more comes off, and stays there until they are', async () => {
    say('area right front wheel', ...[1, 2, 3, 4, 5].map((n) => `off ${n}`), 'area mount bracket');
    await at.press('enter', 'enter', 'enter');
    expect(at.state().facing.area).toBe('mount bracket');
    expect(leftToSlacken(at.state().ledger, 'mount bracket')).toEqual(['mount bracket/4', 'mount bracket/5']);
    await at.press('s', 's');
    expect(leftToSlacken(at.state().ledger, 'mount bracket')).toEqual([]);
  });

  it('refuses with which are only slack, or only to be slackened, and the call for them', async () => {
    say('area right front wheel');
    await at.press('s', 's', 's', 's', 's', 's');
    const only = 'none of it is as found; 4, 2, 5, 3, 1 are only slack';
    expect(at.state().answer).toMatchObject({ text: only, instead: 'take them off', by: 'off' });
    say('area mount bracket', 'off 1', 'off 2', 'off 3', 'area mount bracket');
    await at.press('enter');
    const left = 'nothing more of it comes off; 4, 5 are only to be slackened';
    expect(at.state().answer).toMatchObject({ text: left, instead: 'slack them', by: 'slack' });
    say('slack 4', 'slack 5', 'area mount bracket');
    await at.press('enter');
    const next = { instead: 'bracket comes off now', by: 'part-off' };
    expect(at.state().answer).toMatchObject({ text: 'every hole known of it has been called', ...next });
  });

  it('[L4] takes off without asking what was slackened first where the plan has it come off', async () => {
    say('area tensioner and idler', 'slack 1', 'off 2', 'area tensioner and idler');
    await at.press('enter');
    expect(at.state().answer).toMatchObject({
      kind: 'taken',
      text: expect.stringContaining('tensioner and idler 1 off'),
    });
  });

  it('takes no pass pressed once more for "done already": that is said in words', async () => {
    say('area mount bracket', 'slack 4', 'slack 5', 'in right stand', 'tight 4', 'tight 5', 'area mount bracket');
    at.pace.stepMs = 5000;
    await at.press('B', '.', '.', '.');
    expect(at.state().answer).toMatchObject({ kind: 'refused', refusal: { kind: 'order' } });
    expect(at.state().answer).not.toHaveProperty('againSays');
    say('done already');
    expect(at.state().answer?.kind).toBe('taken');
  });

  it('[T4] puts nothing new into the box unasked, and takes what is chosen as it stands there', async () => {
    const { length } = at.state().ledger.lines;
    await at.press('P', 'i');
    expect(at.state().ledger.lines.length).toBe(length);
    const offered = at.view().asking?.choices.map((one) => one.text) ?? [];
    await at.press(String(offered.findIndex((one) => one.startsWith('new one for crank pulley 1  bolt hex 19 ')) + 1));
    expect(stateOf(at.state().ledger, 'box', 'new one for crank pulley 1')?.spec?.head).toBe('hex 19');
  });
  it('[L5] says at a hole that nothing new in the parts box fits it, and takes no part for it', async () => {
    say('box "new tensioner" for tensioner', 'area crank pulley', 'off 1');
    await at.press('B', 'n');
    expect(at.view().asking).toMatchObject({
      title: expect.stringMatching(
        /^no new fastener is in the parts box for crank pulley 1, which wants bolt hex 19 M14x1.5x65 one-use\. /,
      ),
      typed: 'box "new for crank pulley 1" as bolt hex 19 M14x1.5x65 one-use',
    });
    await at.press('escape');
    expect(at.bench.store.getState().note).toBe('Left: "new one" was not called.');
    say('box "cover bolt" as bolt hex 10 M6x20');
    await at.press('n');
    expect(at.view().asking?.title).toMatch(/^none of the new fasteners in the parts box fits crank pulley 1/);
    await at.press('escape');
    // Said in words it never means the old one either.
    expect(at.session().runLine('new 1').kind).toBe('refused');
    say('box "crank bolt" as bolt hex 19 M14x1.5x65');
    await at.press('n');
    expect(answer()).toContain('crank pulley 1 new one in');
  });
  it('makes the connection of no area last, when nothing is off any more', async () => {
    say('parted battery earth', 'area right front wheel', 'off 1');
    await at.press('B');
    expect(shown().filter((one) => one.startsWith('made again'))).toEqual([]);
  });

  it('renews the part of the area in use, not the last one off', async () => {
    for (const name of ['pump', 'gasket']) say(`box new ${name} for ${name}`);
    say('area coolant pump', ...[1, 2, 3, 4, 5, 6].map((n) => `off ${n}`), 'part off gasket', 'area coolant pump');
    await at.press('B', 'r');
    expect(answer()).toMatch(/^pump renewed/);
  });

  it('passes over an area with more than one step open behind it, and goes to one whose gate is one thing to be done', async () => {
    say('area right front wheel', ...[1, 2, 3, 4, 5].map((n) => `off ${n}`), 'area arch liner', 'off 1');
    say('area cam cover', ...[3, 8, 2, 7, 4, 9, 1, 6, 5, 10].map((n) => `off ${n}`), 'part off gasket');
    say('area mount bracket');
    await at.press('B', '>');
    // The new gasket is not bought yet.
    expect(at.state().facing.area).toBe('arch liner');
    say('box new gasket for gasket', 'area mount bracket');
    // S1: its face wants a bead before it.
    await at.press('>');
    expect(at.state().facing.area).toBe('arch liner');
    // S2: as long as it has not skinned.
    at.pace.stepMs = 1000;
    say('clean cam cover face', 'bead cam cover face', 'area mount bracket');
    await at.press('>');
    expect(at.state().facing.area).toBe('cam cover');
    // T1: a wheel last.
    await at.press('>');
    expect(at.state().facing.area).toBe('arch liner');
  });

  it('goes back from the last area, as far as each can be done now', async () => {
    say('area right front wheel', ...[1, 2, 3, 4, 5].map((n) => `off ${n}`));
    say('area arch liner', ...[1, 2, 3, 4, 5, 6, 7].map((n) => `off ${n}`));
    say('area right front wheel');
    await at.press('B', '>');
    expect(at.state().facing.area).toBe('arch liner');
    await at.press(...Array(7).fill('enter'));
    expect(at.state().facing.area).toBe('arch liner');
    await at.press('.');
    expect(answer()).toMatch(/On to right front wheel$/);
  });
});

describe('on a job half way', () => {
  it('stays in an area that waits for more, though something behind it stands open', async () => {
    at = await atTheBench(undefined, { trays });
    await at.press('n', 'x', 'enter', 'S');
    for (const service of ['timing belt', 'cam cover gasket']) say(`plan ${plan} for ${service}`);
    say('area right front wheel', ...[1, 3].map((n) => `off ${n}`));
    say('area cam cover', ...[3, 8, 2, 7, 4, 9, 1, 6, 5, 10].map((n) => `off ${n}`), 'part off gasket');
    await at.press('B', 'enter');
    expect(at.state().facing.area).toBe('cam cover');
  });
});

describe('on a free job', () => {
  beforeEach(async () => {
    at = await atTheBench(undefined, { trays });
    await at.press('n', 'x', 'enter', 'S');
  });

  it('asks for what nobody has named, and goes to no other area by itself', async () => {
    say('area one', 'off 1', 'area two', 'off 1', 'area one');
    await at.press('c');
    expect(at.view().asking).toBeDefined();
    await at.press('escape', 'enter');
    expect(at.state().facing.area).toBe('one');
  });

  it('goes on to build the next area where the holes were counted', async () => {
    say('area one', 'off 1', 'holes 1', 'area two', 'off 1', 'holes 1');
    await at.press('B', 'enter', 't', 't');
    expect(answer()).toMatch(/On to one$/);
  });

  it('[L5] offers new fasteners alone where it is not known which a hole wants', async () => {
    say('box belt for belt', 'box "one bolt" as bolt hex 10 M6x20', 'box "two bolt" as bolt hex 13 M8x30');
    say('area one', 'off 1', 'holes 1');
    await at.press('B', 'n');
    expect(at.view().asking?.choices.map((one) => one.text)).toEqual(['one bolt', 'two bolt']);
    await at.press('2');
    expect(answer()).toContain('one 1 new one in');
  });
  it('takes the first number that is free for the next hole', async () => {
    say('area one', 'off 4', 'area one');
    await at.press('enter', 'enter', 'enter', 'enter');
    const holes = [1, 2, 3, 4, 5].map((n) => stateOf(at.state().ledger, 'hole', `one/${n}`)?.called.touchedAt ?? 0);
    expect(holes.every((n) => n > 0)).toBe(true);
  });

  it('leaves in its hole what was slackened among others that came straight off', async () => {
    say('area one', 'off 1', 'off 2', 'area one');
    await at.press('s', 'enter');
    const level = (n: number) => stateOf(at.state().ledger, 'hole', `one/${n}`)?.called.occupant?.level;
    expect([level(3), level(4)]).toEqual(['slack', undefined]);
  });

  it('waits for Enter where a figure may be the beginning of a new number', async () => {
    say('area one', ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((n) => `off ${n}`), 'area one');
    await at.press('e', '9', '1', '0', 'enter');
    expect(answer()).toMatch(/^one 9 was really one 10/);
  });

  it('[U3] says what either hole has after two that were called are exchanged', async () => {
    say('area one', 'use bolt M6x25', 'off 3', 'use bolt M6x40', 'off 4', 'area one');
    await at.press('e', '3', '4');
    expect(answer()).toBe('one 3 was really one 4. Exchanged: now 3 bolt M6x40, 4 bolt M6x25');
    say('was 4 really 5');
    expect(answer()).toBe('one 4 was really one 5');
  });

  it('passes over a hole that was empty when Enter brings back, and finds it for a new one', async () => {
    say('area one', 'off 1', 'missing 2', 'off 3', 'holes 3', 'box spare as bolt hex 10', 'area one');
    await at.press('B', 'enter', 'enter');
    expect(answer()).toMatch(/^one 3 back/);
    await at.press('n');
    expect(answer()).toMatch(/^one 2 /);
  });

  it('proposes no further hole once the area was drawn or its holes were counted', async () => {
    say('area one', 'off 1', 'off 2', 'holes 2', 'area one');
    await at.press('enter');
    expect(at.state().answer?.kind).toBe('refused');
  });

  it('forgets head and thread with a clip, which has none', async () => {
    say('use screw hex 10 M6x16');
    await at.press('k');
    expect(at.state().facing.spec).toEqual({ kind: 'clip' });
  });

  it('offers the fastener before the one in use first', async () => {
    say('area one', 'use bolt hex 10 M6x25', 'off 1', 'use bolt hex 12 M8x40', 'off 2');
    await at.press('x', '1');
    expect(at.state().facing.spec).toMatchObject({ head: 'hex 10', lengthMm: 25 });
  });
});

describe('answers that say more', () => {
  beforeEach(async () => {
    at = await atTheBench(undefined, { trays });
    await at.press('n', 'x', 'enter');
  });

  it('reads an answer on as a typed line', async () => {
    await at.press('P', 'i', ...type('cover bolt as bolt hex 10 M6x20'), 'enter');
    expect(stateOf(at.state().ledger, 'box', 'cover bolt')).toMatchObject({ sort: 'fastener', bought: 1 });
  });

  it('[T4] books a text that reads as a spec as that fastener, and goes by it', async () => {
    await at.press('P', 'i', ...type('8.8 bolt hex 10 M6x25'), 'enter');
    expect(at.state().answer).toMatchObject({ text: 'in the box: bolt hex 10 M6x25 8.8, a fastener' });
    const bought = stateOf(at.state().ledger, 'box', 'bolt hex 10 M6x25 8.8');
    expect(bought).toMatchObject({ sort: 'fastener', spec: { kind: 'bolt', head: 'hex 10', class: '8.8' } });
    at.session().runLine('in the box bolt 5/16-18 times 2');
    expect(stateOf(at.state().ledger, 'box', 'bolt 5-16-18')).toMatchObject({ left: 2, spec: { thread: '5/16-18' } });
    // A kind or a coating alone is what many a supply is called.
    for (const name of ['black paint', 'clip', 'zinc']) at.session().runLine(`box ${name}`);
    for (const name of ['black paint', 'clip', 'zinc'])
      expect(stateOf(at.state().ledger, 'box', name)?.sort).toBe('supply');
    at.session().runLine('box bolt hex 10 for pump');
    expect(stateOf(at.state().ledger, 'box', 'bolt hex 10')).toMatchObject({ sort: 'part', replaces: 'pump' });
  });
  it('[L11] proposes for a hole found empty what its neighbours are, and names the whole way into the box', async () => {
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line));
    say('area cover', 'use bolt hex 10 M6x25 8.8', 'off 1', 'off 2', 'off 3', 'missing 4', 'holes 4');
    await at.press('B', 'K', '2');
    expect(at.state().answer).toMatchObject({
      text: '1 is next, and has its own; no new fastener is in the parts box for cover 4; beside it are bolt hex 10 M6x25 8.8',
      instead: 'put one in the box first, with what it is, as "box bolt hex 10 M6x25 8.8"',
      by: 'box',
    });
    await at.press('K', 'n');
    expect(at.view().asking?.typed).toBe('box "new for cover 4" as bolt hex 10 M6x25 8.8');
    await at.press('escape', 'P', 'i');
    expect(at.view().asking?.choices[0]?.text).toBe(
      'new one for cover 4  bolt hex 10 M6x25 8.8, as its neighbours are',
    );
    await at.press('enter', 'B', 'n', 'n');
    expect(at.state().answer).toMatchObject({ text: expect.stringContaining('cover 4 new one in') });
  });
  it('[F2] marks on the cardboard what is of another length than most of its kind there, and suspects nothing', async () => {
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line));
    const marked = () => {
      const drawn = areaDrawn(at.bench.desk(), undefined, false);
      return drawn?.holes.flatMap(({ number, otherLength }) => (otherLength ? number : []));
    };
    say('area cover', 'use bolt hex 10 M6x25', 'off 1', 'use bolt hex 10 M6x45', 'off 2');
    // One beside one is a row of nothing.
    expect(marked()).toEqual([]);
    say('use bolt hex 10 M6x25', 'off 3', 'use stud M6x80', 'off 4');
    expect(marked()).toEqual(['2']);
    expect(suspectedOn(at.state().ledger)).toEqual([]);
    await at.press('B');
    expect(marked()).toEqual(['2']);
  });
  it('[T4] proposes as many of a sort as are missing, and the rest once some are in the box', async () => {
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line));
    say(
      'area cover',
      'use bolt hex 10 M6x25',
      'off 1',
      'off 2',
      'missing 3',
      'missing 4',
      'missing 5',
      'missing 6',
      'holes 6',
    );
    const proposed = () => boxProposals(at.bench.desk()).map(({ name, quantity = 1 }) => `${name}: ${quantity}`);
    expect(proposed()).toEqual(['new ones for cover 3 and 3 more: 4']);
    await at.press('P', 'i');
    expect(at.view().asking?.choices[0]?.text).toMatch(/bolt hex 10 M6x25, as its neighbours are, 4 of them$/);
    await at.press('escape');
    say('box bolt hex 10 M6x25 times 3', 'new 3');
    expect(proposed()).toEqual(['new one for cover 4: 1']);
    say('box bolt hex 10 M6x25');
    expect(proposed()).toEqual([]);
  });
  it('[T3] judges the old part of the row, and asks which where the row has none', async () => {
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line));
    say('area cover', 'bolt hex 10 M6x25', 'off 1', 'part off lid');
    const { length } = at.state().ledger.lines;
    await at.press('P');
    const rows = at.bench.listed().slice(0, 9);
    const to = async (name: string) => {
      await at.press(
        'page-up',
        ...rows
          .slice(
            0,
            rows.findIndex((one) => one.name === name),
          )
          .map(() => 'down'),
      );
    };
    await to('tray');
    await at.press('j');
    expect(at.view().asking).toMatchObject({ slot: 'part', choices: [{ value: 'lid' }] });
    await at.press('escape');
    await to('part');
    await at.press('j');
    expect(at.view().asking?.title).toContain('lid, the old one, is');
    expect(at.state().ledger.lines.length).toBe(length);
  });
  it('proposes nothing where the neighbours are of several minds', () => {
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line));
    say('area cover', 'off 1', 'use bolt hex 10 M6x25', 'off 2', 'use bolt hex 10 M8x25', 'off 3', 'missing 4');
    expect(boxProposals(at.bench.desk())).toEqual([]);
  });

  it('[K4] names the areas still to be counted where no other has a fastener left to come off', async () => {
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line));
    say('area battery', 'off 1', 'area air hose', 'off 1', 'holes 1', 'area starter', 'off 1');
    const refused = { kind: 'refused', text: 'no other area has a fastener left to come off' };
    const further = { instead: 'see what else is to come off', by: 'to-todo' };
    await at.press('>');
    expect(at.state().answer).toMatchObject({
      ...refused,
      instead: 'count the holes of battery, starter by eye, each with its area in use',
      by: 'holes',
      or: further,
    });
    say('holes 1', 'area battery', 'holes 1');
    await at.press('>');
    expect(at.state().answer).toMatchObject({ ...refused, ...further });
    expect(at.state().answer).not.toHaveProperty('or');
  });

  it('takes several calls in one typed line, and stops at the first that is refused', async () => {
    await at.press('/', ...type('area cover; off 1; note "a; b"; back 9; off 2'), 'enter');
    expect(at.state().answer?.kind).toBe('refused');
    const calls = at.state().ledger.lines;
    expect(calls.all.slice(0, calls.length).map((line) => line.call)).toEqual(['open', 'off', 'note']);
    expect(calls.all[2]?.entries).toEqual([{ kind: 'note-made', words: 'a; b' }]);
  });
});
