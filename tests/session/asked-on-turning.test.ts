// What the keys of a check rotation ask once, and those that lock or carry what it turns.
import { describe, expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { asked, lines } from './asked.ts';
import { lettersOf } from './at-the-bench.ts';
import { partWay } from './part-way.ts';

describe('a quarter turn', () => {
  it('[R1] is asked once while nothing of the drive is opened, and begins no try before', async () => {
    const at = await partWay('parted battery earth');
    const before = lines(at);
    await at.press('R', 'enter');
    expect(asked(at)).toMatch(/^nothing of .* was taken off or slackened yet.*; to-strip; begins a check rotation$/);
    await at.press('n', '2', 'enter');
    expect(asked(at)).toContain('was taken off or slackened yet');
    expect(lines(at)).toBe(before);
    at.pace.stepMs = 20;
    await at.press('enter', 'enter');
    expect(lines(at)).toBe(before);
    expect(at.state().answer).toMatchObject({ kind: 'asked', tooQuick: true });
    at.pace.stepMs = 60_000;
    await at.press('enter');
    expect(lines(at)).toBe(before + 1);
    await at.press('enter');
    expect(lines(at)).toBe(before + 2);
  });
  it('[R6] is asked once while a check that passed stands, and cancels it only by the same key again', async () => {
    const at = await partWay('off crank pulley 1 to scrap');
    const tries = () => stateOf(at.state().ledger, 'drive', 'timing drive')?.tries ?? [];
    expect(tries().map(({ passedAt }) => passedAt > 0)).toEqual([true]);
    const before = lines(at);
    await at.press('R', 'enter');
    expect(asked(at)).toBe(
      'the check rotation of timing drive has passed and stands; what is still open; to-leaving; begins another: the one that passed stands no more',
    );
    await at.press('-');
    expect(asked(at)).toContain('has passed and stands');
    expect(lines(at)).toBe(before);
    await at.press('-');
    expect(tries().map(({ passedAt }) => passedAt > 0)).toEqual([true, false]);
    // The try that goes on is turned without a word.
    await at.press('enter');
    expect(lines(at)).toBe(before + 2);
  });
  it('[R3 R4] is taken no sooner than a hand turns, and past the turns that are asked for only when it is meant', async () => {
    const at = await partWay('turned 1');
    const quarters = () => stateOf(at.state().ledger, 'drive', 'timing drive')?.tries.at(-1)?.quarters;
    await at.press('R');
    at.pace.stepMs = 20;
    await at.press(...Array.from({ length: 20 }, () => 'enter'));
    expect(quarters()).toBe(1);
    expect(at.bench.store.getState().word).toMatch(
      /^Too quick for a hand: this "quarter turn" was not called|held down/,
    );
    at.pace.stepMs = 60_000;
    await at.press(...Array.from({ length: 7 }, () => 'enter'));
    expect(quarters()).toBe(8);
    const before = lines(at);
    await at.press('enter');
    expect(asked(at)).toBe('2 of 2 turns are made; the marks are read now; mark-on; turns on');
    await at.press('n', '2', 'enter');
    expect(asked(at)).toContain('2 of 2 turns are made');
    expect(lines(at)).toBe(before);
    await at.press('m', 'm', 'm', 'enter');
    expect(asked(at)).toContain('the tension is read now');
    await at.press('enter', 'enter');
    expect(quarters()).toBe(10);
  });
  it('[R5] is asked once after a mark that was off, as long as nothing was touched since', async () => {
    const at = await partWay('mark on crank mark');
    at.session().runLine('mark off crank mark by 1');
    const before = lines(at);
    await at.press('R', 'm');
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'no check rotation is running' });
    await at.press('enter');
    expect(asked(at)).toMatch(
      /^crank mark was off by 1, and nothing of timing drive was touched since: .*; to-strip; turns for/,
    );
    expect(lines(at)).toBe(before);
    await at.press('enter', 'enter');
    expect(lines(at)).toBe(before + 2);
  });
  it('is not meant by a second one after something else was said', async () => {
    const at = await partWay('parted battery earth');
    const before = lines(at);
    await at.press('R', 'enter', 'escape', 'enter');
    expect(asked(at)).toContain('was taken off or slackened yet');
    expect(lines(at)).toBe(before);
  });
});

describe('what holds the shafts', () => {
  it('[R2] is asked once before it comes out while its belt is off, named with what is off, and is not the first thing to do', async () => {
    const at = await partWay('renewed timing belt');
    const before = lines(at);
    await at.press('B', ',', 'o', ...lettersOf('crank pin'), 'enter');
    expect(asked(at)).toMatch(/^crank pin holds the shafts, and timing belt is off; .* calls crank pin out$/);
    expect(lines(at)).toBe(before);
    await at.press('L');
    const rows = at.bench.listed();
    const row = rows.slice(0, rows.length).find((one) => one.key === 'temporary-in temporary:crank pin');
    expect(row?.text).toMatch(/; first$/);
    expect(row?.end).not.toContain('crank pin');
    at.say('out crank pin');
    expect(at.answer()).toContain('timing belt is off: nothing holds its shafts now');
  });
});

describe('what locks a drive', () => {
  it('[R2] is asked once before it goes in where the engine was not called turned to its marks', async () => {
    const at = await partWay('to marks');
    const { length } = at.state().ledger.lines;
    for (const [line, name] of [
      ['area crank pulley', 'flywheel lock'],
      ['area tensioner and idler', 'cam clamp'],
    ] as const) {
      at.say(line);
      await at.press('i');
      expect(asked(at)).toBe(
        `timing drive was not called turned to its marks, and ${name} locks it where it stands; bring it there first, and call that; to-marks; calls ${name} in`,
      );
      expect(lines(at)).toBe(length);
    }
    at.say('to marks', 'area tensioner and idler');
    await at.press('i');
    expect(at.answer()).toBe('cam clamp in');
    expect(lines(at)).toBe(length + 2);
  });
  it('[R2] is not asked of once its drive is open nor after a check that passed', async () => {
    const open = await partWay('renewed timing belt');
    open.say('out cam clamp', 'area coolant pump');
    await open.press('B', ',', 'i', ...lettersOf('cam clamp'), 'enter');
    expect(open.answer()).toContain('cam clamp in');
    const passed = await partWay('off crank pulley 1 to scrap');
    passed.say('area crank pulley');
    await passed.press('B', ',', 'i', ...lettersOf('flywheel lock'), 'enter');
    expect(passed.answer()).toContain('flywheel lock in');
  });
});

describe('what carries', () => {
  it('[O3] is asked once before it comes out while its place is open, and waits for that in what is open', async () => {
    const at = await partWay('renewed timing belt');
    const before = lines(at);
    await at.press('B', ',', 'o', ...lettersOf('jack with block'), 'enter');
    expect(asked(at)).toMatch(/^mount bracket is open: what jack with block carries hangs on nothing else; .* out$/);
    expect(at.state().answer).toMatchObject({ instead: 'it stays in until that is snug' });
    expect(lines(at)).toBe(before);
    await at.press('L');
    const rows = at.bench.listed();
    const row = rows.slice(0, rows.length).find((one) => one.key === 'temporary-in temporary:jack with block');
    expect(row?.text).toMatch(/; first$/);
    expect(row?.end).toContain('mount bracket');
  });
});
