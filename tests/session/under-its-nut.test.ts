// A stud that came out after its nut, in one hole; and a part named like another area than the one in use.
import { describe, expect, it } from 'vitest';
import { leavingRows } from '../../src/calls/lists/leaving.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';

const cameOff = (at: AtTheBench, hole: string) => {
  const own = stateOf(at.state().ledger, 'hole', hole)?.called.own;
  return own === undefined ? undefined : stateOf(at.state().ledger, 'fastener', own)?.spec;
};
/** Two nuts off a flange. */
async function flange() {
  const at = await newJob();
  await at.press('a', ...lettersOf('flange'), 'enter', 'n', '3', 'enter', 'enter');
  return at;
}

describe('a crush washer below its plug', () => {
  it('[L7] is put in new by one key, before its plug or after it', async () => {
    const at = await newJob();
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line).kind);
    say('area sump', 'use plug hex 17 M14x1.5x22', 'off 1', 'use washer M14 one-use', 'off 1 washer', 'holes 1');
    say('box new washer times 2 as washer M14 one-use');
    await at.press('B', 'n');
    expect(at.state().answer).toMatchObject({ text: expect.stringContaining('sump 1 washer new one in') });
    await at.press('backspace', 'enter', 'n');
    expect(at.state().answer).toMatchObject({ text: expect.stringContaining('sump 1 washer new one in') });
  });
});

describe('a stud that came out after its nut', () => {
  it('[L1] is called at the hole pointed at, and both of its number go back by one call', async () => {
    const at = await flange();
    await at.press('x', ...lettersOf('stud M8x30'), 'enter', '#', '1', 'enter', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringContaining('flange 1 stud off') });
    expect(cameOff(at, 'flange/1')).toMatchObject({ kind: 'nut' });
    expect(cameOff(at, 'flange/1 stud')).toMatchObject({ kind: 'stud', thread: 'M8' });
    // A hole of two is two fasteners, one below the other.
    await at.press('#', '1', 'enter');
    const shown = textOf(sceneOf({ screen: 'strip' }, { desk: at.bench.desk() }));
    expect(shown).toContain('flange: 3 off of 3');
    expect(shown.replace(/\s*│\s*/g, ' ')).toContain('At this hole: 1 off, 1 stud off');
    at.session().runLine('holes 2');
    await at.press('B', 'enter');
    expect(at.state().answer).toMatchObject({ text: 'flange 1 back; flange 1 stud back' });
  });
  it('[L1] is in before its nut where a new one is needed, and is led to by its key and by what is open', async () => {
    const at = await flange();
    await at.press('x', ...lettersOf('stud M8x30'), 'enter', '#', '1', 'enter', 'd');
    at.session().runLine('holes 2');
    await at.press('B', '#', '1', 'enter', 'enter');
    expect(at.state().answer).toMatchObject({
      kind: 'refused',
      text: 'flange 1 stud is out',
      instead: 'a new one goes in before its nut',
      by: 'new',
    });
    const open = leavingRows(at.bench.desk()).slice(0, 9);
    expect(open.find(({ text }) => text.startsWith('flange 1:'))?.end).toMatch(/^box "new for flange 1 stud"/);
    await at.press('n', 'enter', 'n');
    expect(at.state().answer).toMatchObject({ text: 'flange 1 stud new one in' });
    await at.press('enter');
    expect(at.state().answer).toMatchObject({ text: 'flange 1 back' });
  });
  it('[L1 L12] is the one that a new one is bought for where its nut is spoilt too, and has a figure of its own', async () => {
    const at = await flange();
    await at.press('#', '1', 'enter', 'd', 'x', ...lettersOf('stud M8x30'), 'enter', '#', '1', 'enter', 'd');
    at.session().runLine('holes 2');
    await at.press('B', '#', '1', 'enter', 'n');
    expect(at.view().asking?.typed).toMatch(/^box "new for flange 1 stud" as stud M8x30/);
    await at.press('enter', 'n');
    expect(at.state().answer).toMatchObject({ text: 'flange 1 stud new one in' });
    await at.press('#', '1', 'enter', 'n');
    expect(at.view().asking?.typed).toMatch(/^box "new for flange 1" as nut/);
    await at.press('escape', '#', ...lettersOf('1 stud'), 'enter', 'N');
    expect(at.view().asking?.title).toMatch(/^torque figure: flange 1 stud, in /);
  });
  it('[L1] goes in under no nut that is in, which comes off first', async () => {
    const at = await flange();
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line)).at(-1);
    expect(say('stud M8x30', 'off 1 stud', 'holes 2', 'back 1', 'off 1 stud', 'back 1 stud')).toMatchObject({
      kind: 'refused',
      text: 'flange 1 is in, and no stud under it',
    });
    const open = leavingRows(at.bench.desk()).slice(0, 9);
    expect(open.find(({ text }) => text.startsWith('flange 1 stud:'))?.end).toBe('off flange 1');
    expect(say('off 1', 'back 1')).toMatchObject({ text: 'flange 1 back; flange 1 stud back' });
  });
  it('[O3] that is snug by itself is not snugged again with its nut', async () => {
    const at = await flange();
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line)).at(-1);
    say('stud M8x30', 'off 1 stud', 'holes 2', 'back 1 stud', 'tight 1 stud', 'back 1');
    expect(say('tight 1')).toMatchObject({ text: 'flange 1 snug' });
    expect(say('tight 1')).toMatchObject({ text: expect.stringMatching(/^flange 1 tight; flange 1 stud tight/) });
  });
  it('[L1] is never guessed at another nut, nor once it was called', async () => {
    const at = await flange();
    await at.press('#', '1', 'enter', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'refused', refusal: { code: 'hole-is-empty' }, by: 'use' });
    await at.press(
      'x',
      ...lettersOf('stud M8x30'),
      'enter',
      'enter',
      '#',
      '1',
      'enter',
      'enter',
      '#',
      '1',
      'enter',
      'enter',
    );
    expect(at.state().answer).toMatchObject({ kind: 'refused', instead: 'call the hole that does' });
    expect(stateOf(at.state().ledger, 'area', 'flange')?.holes).toEqual(['flange/1', 'flange/2', 'flange/1 stud']);
  });
});

describe('a part named like another area', () => {
  const atTheIntake = async () => {
    const at = await newJob();
    for (const line of ['area sump', 'off 1', 'off 2', 'area intake', 'off 1', 'off 2']) at.session().runLine(line);
    await at.press('p', ...lettersOf('sump'), 'enter');
    return at;
  };
  const part = (at: AtTheBench, name: string) => stateOf(at.state().ledger, 'part', name);

  it('[O2] is asked once, and held by the holes of its own area where that is meant', async () => {
    const at = await atTheIntake();
    expect(at.view().asking?.title).toBe('sump is an area of its own, and intake is in use: which part comes off?');
    await at.press('1');
    expect(part(at, 'sump')).toMatchObject({ off: true, declared: { heldBy: ['sump/1', 'sump/2'] } });
    expect(at.state().facing.area).toBe('intake');
  });
  it('[O2] is held by the area in use where that is said', async () => {
    const at = await atTheIntake();
    await at.press('2');
    expect(part(at, 'sump')?.declared?.heldBy).toEqual(['intake/1', 'intake/2']);
  });
  it('[O2] is asked of a typed line too, unless it says what holds it', async () => {
    const at = await atTheIntake();
    await at.press('escape');
    expect(at.session().runLine('part off sump')).toMatchObject({ kind: 'refused' });
    expect(at.session().runLine('part off sump held by 1')).toMatchObject({ kind: 'taken' });
    expect(part(at, 'sump')?.declared?.heldBy).toEqual(['intake/1']);
  });
});

describe('another fastener in use than the one known in the hole that comes next', () => {
  it('[L2] is said not to be what Enter calls, with the ways to call it', async () => {
    const at = await newJob();
    const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line).kind);
    say('area wheel', 'use nut hex 19 M12x1.5', 'slack 1', 'slack 2', 'slack 3');
    await at.press('#', '3', 'enter', 'x', ...lettersOf('nut hex 19 M12x1.25'), 'enter');
    expect(at.state().answer).toMatchObject({
      text: 'now nut hex 19 M12x1.25. Mind: 3 is known as nut hex 19 M12x1.5, and off calls that; this one there is "wrong one", or typed: off 3 as …',
    });
    await at.press('w', ...lettersOf('nut hex 19 M12x1.25'), 'enter');
    expect(cameOff(at, 'wheel/3')).toMatchObject({ thread: 'M12x1.25' });
    // What agrees with it as far as it is said, and what sits where nothing is known, is no other.
    await at.press('x', ...lettersOf('nut hex 19'), 'enter');
    expect(at.state().answer).toMatchObject({ text: 'now nut hex 19' });
    say('area bracket');
    await at.press('8');
    expect(at.state().answer).toMatchObject({ text: 'now nut hex 8' });
  });
});

it('[L2] is in use again as it comes off where another was said elsewhere since it was slackened', async () => {
  const at = await newJob();
  const say = (...lines: string[]) => lines.map((line) => at.session().runLine(line).kind);
  say(
    'area wheel',
    'use bolt hex 17 M12x1.5',
    'slack 1',
    'slack 2',
    'area hub',
    'use nut hex 30',
    'slack 1',
    'area wheel',
  );
  await at.press('enter');
  expect(at.state().answer).toMatchObject({ text: expect.stringContaining('wheel 1 off') });
  expect(at.state().facing.spec).toMatchObject({ kind: 'bolt', head: 'hex 17' });
  // What is said for the area itself stays said.
  say('use bolt hex 13', 'off 3');
  await at.press('enter');
  expect(at.state().facing.spec).toEqual({ kind: 'bolt', head: 'hex 13' });
});
