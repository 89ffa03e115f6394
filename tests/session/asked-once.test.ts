// Keys that may be a slip: asked once with nothing written, meant by the same key again. And keys that mean nothing here.
import { describe, expect, it } from 'vitest';
import { choicesFor } from '../../src/calls/choices.ts';
import { pickedAt } from '../../src/calls/listed.ts';
import type { Row } from '../../src/calls/row.ts';
import { rowById } from '../../src/calls/table.ts';
import { pileOf } from '../../src/job/counts.ts';
import { every, stateOf } from '../../src/job/ledger.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';
import { partWay } from './part-way.ts';

const lines = (at: AtTheBench) => at.state().ledger.lines.length;
const asked = (at: AtTheBench) => {
  const { answer } = at.state();
  return answer?.kind === 'asked' ? `${answer.text}; ${answer.instead}; ${answer.by}; ${answer.again}` : answer?.kind;
};
const levelIn = (at: AtTheBench, hole: string) => stateOf(at.state().ledger, 'hole', hole)?.called.occupant?.level;
/** Eight drawn, 5 slack and 7 empty on arrival. */
async function cover() {
  const at = await newJob();
  await at.press('a', ...lettersOf('cam cover'), 'enter', '0');
  for (const line of ['drawn as ring of 8', 'off 1', 'off 2', 'off 3', 'off 4', 'slack 5', 'off 6', 'missing 7'])
    at.session().runLine(line);
  return at;
}

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
it('[O5] lets a question go with its screen: the same key is another call there', async () => {
  const at = await cover();
  await at.press('enter', 'enter');
  expect(asked(at)).toContain('takes 5 off');
  await at.press('B');
  expect(at.state().answer).toBeUndefined();
  await at.press('S', 'enter');
  expect(asked(at)).toContain('takes 5 off');
  expect(levelIn(at, 'cam cover/5')).toBe('slack');
  // An order that stands in the way is called done already where it was refused, and nowhere else.
  for (const line of ['area plate', 'off 1', 'part cap held by 2']) at.session().runLine(line);
  await at.press('p', '1');
  expect(at.state().answer).toMatchObject({ kind: 'refused', againSays: expect.any(String) });
  await at.press('B', 'S');
  expect(at.state().answer).toMatchObject({ kind: 'refused' });
  expect(at.state().answer).not.toHaveProperty('againSays');
  await at.press('p', '1');
  expect(stateOf(at.state().ledger, 'part', 'cap')?.off).toBe(false);
});
it('[X1] takes no figure for the name of whoever signs', async () => {
  const at = await newJob();
  for (const line of ['area cover', 'off 1']) at.session().runLine(line);
  expect(at.session().runLine('no road test by 9000 because snow')).toMatchObject({
    kind: 'refused',
    text: expect.stringContaining('"9000" is no name of anybody'),
  });
});
it('[K4] draws as many as were counted without asking for them again', async () => {
  const at = await newJob();
  for (const line of ['area pump', 'off 1', 'off 2', 'holes 6']) at.session().runLine(line);
  await at.press('D', '1');
  expect(at.view().asking).toMatchObject({ typed: '6', standing: true });
  await at.press('enter');
  expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'pump drawn, 6 holes' });
});
it('[K2] says at the second count of a tray what was said at the first', async () => {
  const at = await newJob();
  for (const line of ['area pump', 'off 1 to tray 2', 'count 2 is 4']) at.session().runLine(line);
  await at.press('P', 'c', '1');
  expect(at.view().asking?.title).toBe('count a tray 2: how many, counted again: 4 were said');
});
it('asks once for a whole area that work went on to by itself, however late the key comes', async () => {
  const at = await newJob();
  for (const line of [
    'area pump',
    'holes 1',
    'off 1',
    'area cover',
    'holes 1',
    'off 1',
    'back 1',
    'area pump',
    'back 1',
  ])
    at.session().runLine(line);
  await at.press('B', '.', '.');
  expect(at.state().facing.area).toBe('cover');
  const before = lines(at);
  await at.press('.');
  expect(asked(at)).toMatch(/On to cover; this key once more called nothing; .*; is for cover$/);
  expect(lines(at)).toBe(before);
  await at.press('.');
  expect(levelIn(at, 'cover/1')).toBe('snug');
  await at.press('.');
  expect(levelIn(at, 'cover/1')).toBe('tight');
});
it('[L5] keeps no length and no class for a nut after a bolt was in use', async () => {
  const at = await newJob();
  await at.press('a', ...lettersOf('bracket'), 'enter');
  at.session().runLine('use bolt hex 10 M6x25 8.8');
  await at.press('n');
  expect(at.state().facing.spec).toEqual({ kind: 'nut', head: 'hex 10', thread: 'M6' });
  await at.press('b');
  expect(at.state().facing.spec).toEqual({ kind: 'bolt', head: 'hex 10', thread: 'M6' });
});
it('[L5] keeps the kind where another head is said, and nothing else', async () => {
  const at = await newJob();
  at.session().runLine('area bracket');
  at.session().runLine('use bolt hex 13 M8x25 8.8');
  at.session().runLine('use hex 15');
  expect(at.state().facing.spec).toEqual({ kind: 'bolt', head: 'hex 15' });
  at.session().runLine('use nut hex 17');
  expect(at.state().facing.spec).toEqual({ kind: 'nut', head: 'hex 17' });
  expect(at.session().runLine('use hose clamp')).toMatchObject({ text: 'now clamp' });
  expect(at.session().runLine('use gadget')).toMatchObject({
    text: expect.stringMatching(/^"gadget" is no word of a fastener, which is a bolt, nut, screw, stud, clamp, /),
  });
});
it('[K1 K2] counts no tray empty in which something should lie, and names it', async () => {
  const at = await newJob();
  for (const line of ['area cover', 'holes 2', 'off 1 to tray 1', 'off 2 to tray 2', 'back 1'])
    at.session().runLine(line);
  await at.press('P', 'e');
  expect(at.state().ledger.lines.all.at(-1)?.entries).toEqual([{ kind: 'tray-counted', tray: '1', count: 0 }]);
  expect(at.state().answer).toMatchObject({
    otherwise: { words: expect.stringMatching(/lie in tray 2$/), by: 'count' },
  });
  await at.press('e');
  expect(at.state().answer).toMatchObject({
    kind: 'refused',
    text: 'something should still lie in tray 2',
    by: 'count',
  });
});

it('[K1 K2] counts no tray empty that was counted and did not agree', async () => {
  const at = await newJob();
  for (const line of [
    'area cover',
    'holes 2',
    'off 1 to tray 1',
    'off 2 to tray 2',
    'back 1',
    'back 2',
    'count 2 is 1',
  ])
    at.session().runLine(line);
  await at.press('P', 'e');
  expect(at.state().ledger.lines.all.at(-1)?.entries).toEqual([{ kind: 'tray-counted', tray: '1', count: 0 }]);
  expect(at.state().answer).toMatchObject({ otherwise: { words: 'Not counted: the count of tray 2 does not agree' } });
  await at.press('e');
  expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'the count of tray 2 does not agree' });
});

describe('what was slackened on purpose', () => {
  it('[L4] comes off by the second Enter once all others are called', async () => {
    const at = await cover();
    await at.press('enter');
    expect(at.state().answer?.kind).toBe('taken');
    await at.press('enter');
    expect(asked(at)).toBe('all 8 of cam cover are called, 5 only slackened; another area is next; area; takes 5 off');
    expect(levelIn(at, 'cam cover/5')).toBe('slack');
    await at.press('enter');
    expect(levelIn(at, 'cam cover/5')).toBeUndefined();
  });
  it('[U1] is put away by the key that strikes, which strikes the call before it only when pressed again', async () => {
    const at = await cover();
    await at.press('enter');
    const before = lines(at);
    at.pace.stepMs = 20;
    await at.press('enter', 'enter', 'backspace');
    expect(at.state().answer).toMatchObject({ kind: 'faced', text: expect.stringMatching(/^nothing was called yet/) });
    expect(lines(at)).toBe(before);
    at.pace.stepMs = 60_000;
    await at.press('enter');
    expect(asked(at)).toContain('takes 5 off');
    await at.press('backspace', 'backspace');
    expect(at.state().answer).toMatchObject({ text: expect.stringMatching(/^struck: line 10 /) });
    // In words the last call is meant.
    await at.press('enter', 'enter');
    expect(asked(at)).toContain('takes 5 off');
    expect(at.session().runLine('strike last')).toMatchObject({ kind: 'taken' });
  });
  it('[L4] comes off at once where it is pointed at', async () => {
    const at = await cover();
    await at.press('enter', '#', '5', 'enter', 'enter');
    expect(levelIn(at, 'cam cover/5')).toBeUndefined();
  });
});

describe('a whole pass', () => {
  it('[O3] with a hole of the area empty is asked once a pass, and never with none', async () => {
    const at = await cover();
    for (const line of ['slack 8', 'holes 8', 'back 1', 'back 2', 'back 3', 'back 4']) at.session().runLine(line);
    await at.press('B', '.');
    expect(asked(at)).toBe('cam cover: 6, 7 are still empty; in by hand first; back; calls snug done without them');
    at.session().runLine('back 6');
    await at.press('.');
    expect(asked(at)).toBe('cam cover: 7 is still empty; in by hand first; new; calls snug done without it');
    await at.press('.');
    expect(at.state().answer?.kind).toBe('taken');
    await at.press('.');
    expect(asked(at)).toContain('calls final done without it');
    for (const line of ['box new bolt as bolt hex 10 M6x25', 'new 7', 'tight 7']) at.session().runLine(line);
    await at.press('.');
    expect(at.state().answer?.kind).toBe('taken');
    expect(levelIn(at, 'cam cover/6')).toBe('tight');
  });
});

describe('a new one for a hole with none in the box', () => {
  it('[L11] opens the line that puts it there, with more to be typed behind, and then takes it', async () => {
    const at = await cover();
    at.session().runLine('holes 8');
    await at.press('B', '#', '7', 'n');
    expect(at.view().asking).toMatchObject({
      typed: 'box "new for cam cover 7" as bolt hex 10',
      title: expect.stringMatching(/^no new fastener is in the parts box for cam cover 7\. /),
    });
    await at.press(...lettersOf(' M6x25'), 'enter', 'n');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringContaining('cam cover 7 new one in') });
  });
  it('[L11] is refused where the keypad has no line to finish it in', async () => {
    const at = await cover();
    await at.press('B', '#', '7', 'K', '2');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().answer).toMatchObject({ kind: 'refused', by: 'box' });
  });
});

describe('a part that came back with its first bolt', () => {
  it('[O2] is back already when it is called, and the answer names the key that takes both back', async () => {
    const at = await cover();
    await at.press('enter', 'p', ...lettersOf('cover'), 'enter');
    expect(at.state().answer).toMatchObject({
      kind: 'taken',
      text: expect.stringContaining('still slack in it: cam cover 5'),
    });
    await at.press('B', 'h', '8', 'enter', 'enter');
    expect(at.state().answer).toMatchObject({ otherwise: { words: 'To take both back', by: 'strike-last' } });
    await at.press('enter', 'b');
    expect(at.state().answer).toEqual({
      kind: 'faced',
      text: 'cover is back already: it came back with 1; nothing more is to be called for it',
    });
  });
});

describe('a key that sets nothing', () => {
  it('says of a figure that no head has it which do, and writes nothing', async () => {
    const at = await newJob();
    await at.press('a', '+', '0', '5');
    expect(at.bench.store.getState().note).toMatch(/^5 sets no head: 8 hex 8, 0 hex 10, .* 9 hex 19\. .*: x\.$/);
    expect(at.state().facing.spec).toMatchObject({ head: 'hex 10' });
    await at.press('B', '5');
    expect(at.bench.store.getState().note).toBe('"5" is no key of Build: ? lists those that are.');
  });
  it('says of a letter that it means nothing on this screen, and of a key that prints nothing says nothing', async () => {
    const at = await newJob();
    await at.press('P', '%');
    expect(at.bench.store.getState().note).toBe('"%" is no key of Box: ? lists those that are.');
    await at.press('f4');
    expect(at.bench.store.getState().note).toBeUndefined();
  });
  it('names the count as well where none is as found and one is slack: there may be one more than was counted', async () => {
    const at = await newJob();
    for (const line of ['area cover', 'off 1', 'off 2', 'slack 3', 'holes 3']) at.session().runLine(line);
    await at.press('s');
    expect(at.state().answer).toMatchObject({ instead: 'take it off', by: 'off', or: { by: 'holes' } });
  });
  it('says that nothing is there for the scrap pile, and else takes the row pointed at', async () => {
    const at = await newJob();
    await at.press('P', 's');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'no fastener lies in a tray, old or good' });
    for (const line of ['area cover', 'off 1', 'off 2', 'damaged 3']) at.session().runLine(line);
    const rows = () => at.bench.listed().slice(0, at.bench.listed().length);
    const to = rows().findIndex(({ end }) => end === 'condemned');
    const fastener = String(rows()[to]?.picks.fastener);
    await at.press(...Array<string>(to).fill('down'), 's');
    expect(stateOf(at.state().ledger, 'fastener', fastener)?.place).toBe('scrap');
  });
  it('names the keys that take an area in use where none is', async () => {
    const at = await partWay('parted battery earth');
    at.session().face({ area: undefined });
    await at.press('enter');
    const begin = {
      instead: 'begin with right front wheel',
      by: 'next-area',
      or: { instead: 'with another', by: 'area' },
    };
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'no area is in use', ...begin });
    const fresh = await newJob();
    await fresh.press('enter');
    expect(fresh.state().answer).toMatchObject({ text: 'no area is in use', instead: 'name one', by: 'area' });
  });
});

describe('what was found at a hole', () => {
  const found = (at: AtTheBench) =>
    at.bench
      .listed()
      .slice(0, 30)
      .filter(({ end }) => end?.startsWith('put right'))
      .map(({ key, text }) => [key, text]);
  /** A new one is in where nothing was. */
  async function filled() {
    const at = await newJob();
    for (const line of ['area one', 'off 1', 'hole empty 2', 'holes 2', 'back 1', 'box spare as bolt hex 10', 'new 2'])
      at.session().runLine(line);
    return at;
  }
  it('[X5] is one row with the hole where one call closes both, and two where the hole wants another first', async () => {
    const at = await filled();
    await at.press('L');
    expect(
      at.bench
        .listed()
        .slice(0, 30)
        .map(({ key }) => key),
    ).toEqual(expect.arrayContaining(['hole-open hole:one/2', 'finding-open finding:d3.1']));
    at.session().runLine('final 2');
    expect(found(at)).toEqual([['finding-open finding:d3.1', 'd3.1: one 2: empty']]);
  });
  it('[F3] is offered with the call that makes the new one tight, and not once it is put right', async () => {
    const at = await filled();
    await at.press('B', '.');
    expect(at.state().answer).not.toHaveProperty('otherwise');
    await at.press('.');
    expect(at.state().answer).toMatchObject({
      otherwise: { words: expect.stringContaining('at 2 is open'), by: 'put-right' },
    });
    await at.press('g');
    expect(found(at)).toEqual([]);
    at.session().runLine('slack 2');
    await at.press('l');
    expect(at.state().answer).toMatchObject({ kind: 'taken' });
    expect(at.state().answer).not.toHaveProperty('otherwise');
  });
});

describe('an area taken by mistake', () => {
  it('[U1] is left again by the key that strikes, which strikes nothing before it is pressed again', async () => {
    const at = await cover();
    const before = lines(at);
    const faced = at.state().facing;
    expect(faced.area).toBe('cam cover');
    await at.press('a', ...lettersOf('upper'), 'enter');
    expect(at.state().facing).not.toEqual(faced);
    await at.press('backspace');
    expect(at.state().facing).toEqual(faced);
    expect(at.state().answer).toEqual({
      kind: 'faced',
      text: 'back at cam cover; nothing is struck, the same key again strikes the last call',
    });
    expect(lines(at)).toBe(before);
    await at.press('backspace');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringMatching(/^struck: /) });
    // A tray chosen for it goes back with it.
    await at.press('a', ...lettersOf('upper'), 'enter', 't', '2', 'enter');
    expect(at.state().facing.tray).not.toBe(faced.tray);
    const called = lines(at);
    await at.press('backspace');
    expect(at.state().facing).toEqual(faced);
    expect(lines(at)).toBe(called);
    // Something was called there: it is that which is struck.
    await at.press('a', ...lettersOf('sump'), 'enter', 'enter', 'backspace');
    expect(at.state().answer).toMatchObject({ text: expect.stringMatching(/^struck: .*sump 1 off/) });
    await at.press('a', '1', 'enter');
    at.session().runLine('strike last');
    expect(at.state().answer?.kind).toBe('taken');
  });
});

describe('a figure asked for behind a number', () => {
  it('[F5] is typed whole, however soon, and the question says of what hole and step it is', async () => {
    const at = await newJob();
    for (const line of ['area cover', 'off 1', 'off 2', 'off 3', 'holes 3']) at.session().runLine(line);
    at.pace.stepMs = 100;
    await at.press('F', 'r', '3');
    expect(at.view().asking?.title).toBe('thread repair: 3: how deep the material is there, mm');
    await at.press('1', '4', 'enter');
    expect(at.state().answer).toMatchObject({ text: expect.stringMatching(/^cover 3 depth 14 mm/) });
  });
});

describe('a fastener called by its number', () => {
  it('is named in the answer, moved or lost', async () => {
    const at = await newJob();
    for (const line of ['area liner', 'bolt hex 10 M6x16', 'off 1', 'off 2']) at.session().runLine(line);
    expect(at.session().runLine('scrap f2.1')).toMatchObject({
      text: 'f2.1 to scrap pile (bolt hex 10 M6x16 of liner 1)',
    });
    expect(at.session().runLine('lost f3.1')).toMatchObject({ text: 'lost (bolt hex 10 M6x16 of liner 2)' });
  });
});

describe('a circuit', () => {
  it('is asked about before it is drained once more with nothing filled since', async () => {
    const at = await newJob();
    for (const line of ['circuit coolant with water', 'drained coolant', 'circuit engine oil with oil'])
      at.session().runLine(line);
    await at.press('C', 'd');
    expect(asked(at)).toMatch(/^coolant was drained in line 3, and not filled since; another circuit is chosen; /);
  });
});

describe('a circuit looked over for leaks', () => {
  it('is asked about where the engine was started a moment ago, and not once it ran for a while', async () => {
    const at = await newJob();
    at.pace.stepMs = 1000;
    for (const line of [
      'circuit coolant with water',
      'drained coolant',
      'filled coolant',
      'oil level',
      'tools out',
      'first start',
    ])
      expect(at.session().runLine(line)).toMatchObject({ kind: 'taken' });
    await at.press('C', 'k');
    expect(asked(at)).toMatch(
      /^the engine was called started \d+ s ago: cold, it hides a leak; let it get warm, .*dry/,
    );
    at.pace.stepMs = 5 * 60_000;
    await at.press('k');
    expect(at.state().answer?.kind).toBe('taken');
  });
  it('is called dry by the same key all the same, and the next circuit then without asking', async () => {
    const at = await newJob();
    const circuits = ['circuit coolant with water', 'circuit washer with water'];
    const more = ['drained coolant', 'drained washer', 'filled coolant', 'filled washer', 'oil level', 'tools out'];
    for (const line of [...circuits, ...more, 'first start']) at.session().runLine(line);
    const before = lines(at);
    at.pace.stepMs = 1000;
    await at.press('C', 'k');
    expect(lines(at)).toBe(before);
    await at.press('k', 'k');
    expect(lines(at)).toBe(before + 2);
  });
  it('is not asked about under pressure', async () => {
    const at = await newJob();
    at.pace.stepMs = 1000;
    for (const line of ['circuit coolant with water', 'drained coolant', 'filled coolant', 'oil level', 'tools out'])
      at.session().runLine(line);
    at.session().runLine('first start');
    expect(at.session().runLine('leak check coolant under pressure', 'key')).toMatchObject({ kind: 'taken' });
  });
});

describe('the road test', () => {
  it('is asked about while a circuit was not looked over for leaks', async () => {
    const at = await newJob();
    for (const line of [
      'circuit coolant with water',
      'drained coolant',
      'filled coolant',
      'oil level',
      'tools out',
      'first start',
    ])
      expect(at.session().runLine(line)).toMatchObject({ kind: 'taken' });
    await at.press('L', 'r');
    expect(asked(at)).toMatch(/^coolant not looked over for leaks since; look it over first; leak-check; /);
    expect(at.session().runLine('leak check coolant')).toMatchObject({ kind: 'taken' });
    await at.press('r');
    expect(at.state().answer?.kind).toBe('taken');
  });
});

describe('the car that moves', () => {
  it('is asked about while something is under it or the tools are not out', async () => {
    const at = await newJob();
    at.session().runLine('area rear');
    for (const line of ['in wheel chock as chock', 'off 1', 'holes 1', 'back 1', 'tight 1', 'tight 1'])
      expect(at.session().runLine(line)).toMatchObject({ kind: 'taken' });
    await at.press('L', 'm', '1');
    expect(asked(at)).toMatch(/^wheel chock is in; take it away first; taken-out; /);
    at.session().runLine('out wheel chock');
    await at.press('m', '1');
    expect(asked(at)).toMatch(/^tools not called out since the last work; count them first; tools; /);
    at.session().runLine('tools out');
    await at.press('m', '1');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringMatching(/^car moved/) });
  });
});

describe('a wheel whose nuts are only snug', () => {
  it('[T7] is named before the car moves, with the tools and after them', async () => {
    const at = await newJob();
    at.session().runLine('area left wheel');
    for (const line of ['role wheel', 'off 1', 'off 2', 'holes 2', 'back 1', 'back 2', 'tight 1', 'tight 2'])
      expect(at.session().runLine(line)).toMatchObject({ kind: 'taken' });
    await at.press('L', 'm', '2');
    expect(asked(at)).toMatch(
      /^tools not called out since the last work; only snug: left wheel 1, 2; count them first; tools; /,
    );
    at.session().runLine('tools out');
    await at.press('m', '2');
    expect(asked(at)).toBe(
      'only snug: left wheel 1, 2; drawn to their figure on the ground first; tight; calls it all the same',
    );
    await at.press('m');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringMatching(/^car moved/) });
  });
});

describe('what went in for the work', () => {
  it('is named where none of it may come out yet', async () => {
    const at = await newJob();
    for (const line of ['area left wheel', 'role wheel', 'in stand as stand', 'off 1']) at.session().runLine(line);
    await at.press('o');
    expect(at.state().answer).toMatchObject({
      kind: 'refused',
      text: 'stand in, and each holds or carries something yet',
    });
  });
});

describe('a direction', () => {
  it('is asked about while a part of its area is off', async () => {
    const at = await newJob();
    for (const line of ['area rear', 'off 1', 'holes 1', 'part off disc held by 1', 'direction marked'])
      at.session().runLine(line);
    await at.press('B', '%');
    expect(asked(at)).toMatch(/^disc is off: what goes which way is seen once it is on; put it on first; part-back; /);
    for (const line of ['part back disc', 'back 1']) at.session().runLine(line);
    await at.press('%');
    expect(at.state().answer?.kind).toBe('taken');
  });
});

describe('a finding at an empty hole', () => {
  const made = async () => {
    const at = await newJob();
    for (const line of ['area cover', 'off 1', 'finding at cover 1 thread stripped']) at.session().runLine(line);
    return at;
  };
  it('[F3] is asked about before it is put right with nothing called done there', async () => {
    const at = await made();
    await at.press('F', 'p');
    expect(asked(at)).toMatch(
      /^nothing was called done at cover 1 since it was found: thread stripped; .*; repair; calls it put right all the same$/,
    );
    await at.press('p');
    expect(at.state().answer?.kind).toBe('taken');
  });
  it('[F5] is put right at once after its thread was chased', async () => {
    const at = await made();
    expect(at.session().runLine('chased 1').kind).toBe('taken');
    await at.press('F', 'p');
    expect(at.state().answer?.kind).toBe('taken');
  });
});

describe('the circuits that could be drained', () => {
  const inOrder = (at: AtTheBench) => at.view().asking?.choices.map(({ value }) => value);
  it('begin with the one whose joint was just parted, then that of the area in use, and end with what is dry', async () => {
    const at = await newJob();
    for (const line of [
      'circuit engine oil with oil',
      'circuit coolant with water',
      'circuit fuel with fuel',
      'connection bottom hose in pump of coolant',
      'connection heater hose in bulkhead of coolant',
      'connection fuel line in rail of fuel',
      'area cover',
      'off 1',
    ])
      at.session().runLine(line);
    await at.press('l');
    expect(inOrder(at)).toEqual(['coolant', 'fuel', 'engine oil']);
    await at.press('escape');
    for (const line of ['parted fuel line', 'parted bottom hose', 'area cover']) at.session().runLine(line);
    await at.press('C');
    expect(pickedAt(at.bench.listed(), at.view().at.sealing)?.text).toBe('coolant');
    await at.press('S');
    await at.press('l');
    expect(inOrder(at)).toEqual(['coolant', 'fuel', 'engine oil']);
    await at.press('1', 'l');
    expect(inOrder(at)).toEqual(['fuel', 'engine oil', 'coolant']);
    await at.press('escape');
    at.session().runLine('area bulkhead');
    await at.press('l');
    expect(inOrder(at)).toEqual(['fuel', 'engine oil', 'coolant']);
  });
  it('are taken unasked where the joint that was parted belongs to no area', async () => {
    const at = await newJob();
    for (const line of [
      'circuit engine oil with oil',
      'circuit coolant with water',
      'connection top hose of coolant',
      'area cover',
      'off 1',
      'parted top hose',
    ])
      at.session().runLine(line);
    await at.press('l');
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'coolant drained' });
  });
});

describe('a fastener that proves damaged after it came off', () => {
  const clips = async () => {
    const at = await newJob();
    for (const line of ['area liner', 'clip', 'off 1', 'off 2', 'holes 2']) at.session().runLine(line);
    return at;
  };
  it('[L8] is condemned in its tray by the key for one that comes off so, at its hole', async () => {
    const at = await clips();
    await at.press('d');
    expect(at.state().answer).toMatchObject({
      kind: 'refused',
      instead: 'where one proved damaged since, point at its hole first',
      by: 'point',
    });
    await at.press('#', '2', 'enter', 'd');
    expect(at.state().answer).toMatchObject({
      text: 'f3.1 condemned: damaged after it came off (clip of liner 2)',
      otherwise: { by: 'scrap' },
    });
    expect(stateOf(at.state().ledger, 'fastener', 'f3.1')).toMatchObject({ condemned: expect.any(String) });
    expect(at.session().runLine('damaged 2')).toMatchObject({ kind: 'refused', by: 'scrap' });
    // One that is on the scrap pile is damaged no more.
    await at.press('P', 's');
    expect(at.session().runLine('damaged 2')).toMatchObject({ kind: 'refused', text: 'liner 2 holds nothing' });
  });
  it('[L8] is condemned on the box screen too, which asks why of what', async () => {
    const at = await clips();
    await at.press('P', 'down', 'd');
    expect(at.view().asking?.title).toBe('condemned: clip of liner 1: why');
    await at.press(...lettersOf('tab broken'), 'enter');
    expect(at.state().answer).toMatchObject({ text: 'f2.1 condemned: tab broken (clip of liner 1)' });
  });
});

describe('what goes together on the box screen', () => {
  const nuts = async () => {
    const at = await newJob();
    for (const line of [
      'area mount',
      'nut hex 13 M8 one-use',
      'off 1',
      'off 2 to tray 2',
      'bolt hex 10 M6x20',
      'off 3',
      'off 4',
      'condemned 4 because bent',
      'missing 5',
    ])
      at.session().runLine(line);
    return at;
  };
  it('[T4] is all that is proposed, named and asked once, but for what is only as its neighbours are', async () => {
    const at = await nuts();
    await at.press('P', 'a');
    expect(asked(at)).toBe(
      '2 proposed: new ones for mount 1 and 1 more, new one for mount 4; each by itself; box; puts all of it in the box',
    );
    expect([...every(at.state().ledger, 'box')]).toEqual([]);
    await at.press('a');
    expect([...every(at.state().ledger, 'box')].map(({ sort, left }) => `${left} ${sort}`)).toEqual([
      '2 fastener',
      '1 fastener',
    ]);
    await at.press('a');
    expect(at.state().answer).toMatchObject({ kind: 'refused', by: 'box' });
  });
  it('[T4] names no key over the list of another call, whose Enter takes a row of it', async () => {
    const at = await nuts();
    await at.press('P', 'a');
    const shown = () => textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() })).replace(/\s+/g, ' ');
    expect(shown()).toContain('a again puts all of it in the box');
    await at.press('i');
    expect(shown()).toContain('2 proposed: new ones for mount 1 and 1 more, new one for mount 4. ');
    expect(shown()).not.toContain('again puts all');
  });
  it('[L7 L8] is all of a kind that does not serve again, from every tray, and nothing that may', async () => {
    const at = await nuts();
    await at.press('P', 's');
    expect(at.state().answer).toMatchObject({ otherwise: { words: '1 more of its kind does not serve again' } });
    await at.press('backspace', 'x');
    expect(at.state().answer).toMatchObject({ text: '2 to scrap pile (nut hex 13 M8 one-use)' });
    const { contents } = pileOf(at.state().ledger);
    expect(contents).toHaveLength(2);
    expect(at.session().runLine('scrap all like 3')).toMatchObject({ kind: 'refused', by: 'scrap' });
    await at.press('x');
    expect(at.state().answer).toMatchObject({ text: expect.stringContaining('bolt hex 10 M6x20 of mount 4') });
    // One call is struck as one.
    await at.press('backspace', 'backspace');
    expect(pileOf(at.state().ledger).contents).toEqual([]);
  });
  it('[L8] offers one of each kind that does not serve again, and none that was only the wrong one in its hole', async () => {
    const at = await newJob();
    const { offers, nothing } = rowById.get('scrap-alike') as Row;
    const offered = () => offers?.(at.bench.desk(), 'fastener', choicesFor(at.bench.desk(), 'fastener'), {});
    for (const line of ['area caliper', 'bolt hex 13', 'off 1', 'wrong one 2 as bolt hex 13 M8x30'])
      at.session().runLine(line);
    expect(offered()).toEqual([]);
    const none = typeof nothing === 'function' ? nothing(at.bench.desk(), {}) : nothing;
    expect(none).toMatchObject({ instead: 'scrap it by itself', or: { instead: 'hand it to the owner' } });
    expect(at.session().runLine('scrap all like 2')).toMatchObject({
      text: 'bolt hex 13 M8x30 of caliper 2 was the wrong one there, and no old one',
      by: 'scrap',
      or: { by: 'lay' },
    });
    for (const line of ['bolt hex 13', 'damaged 3', 'damaged 4']) at.session().runLine(line);
    expect(offered()).toHaveLength(1);
  });
});

describe('a service called done', () => {
  it('[X1] is asked once while it wants the engine run or the road, and names what waits', async () => {
    for (const [before, waits] of [
      ['start', /^of timing belt there waits: the engine has not run since; /],
      ['road tested', /^of timing belt there waits: .*no road test/],
    ] as const) {
      const at = await partWay(before);
      const { length } = at.state().ledger.lines;
      await at.press('L', 'f');
      expect(asked(at)).toMatch(waits);
      expect(lines(at)).toBe(length);
      await at.press('f');
      expect(at.answer()).toMatch(/^timing belt done/);
    }
    const ready = await partWay('service done timing belt');
    await ready.press('L', 'f');
    expect(ready.answer()).toMatch(/^timing belt done/);
  });
  it('[X1] may be the only one, of no plan: then all that is open is its own', async () => {
    const at = await newJob();
    for (const line of ['service oil leak', 'area cover', 'off 1']) at.session().runLine(line);
    await at.press('L', 'f');
    expect(asked(at)).toContain('of oil leak there waits: 1 hole open');
    at.session().runLine('service brakes');
    await at.press('f');
    expect(at.state().answer?.kind).not.toBe('asked');
  });
});

describe('what is asked', () => {
  it('says so of a figure that no row stands for, and takes none', async () => {
    const at = await newJob();
    for (const line of ['circuit coolant with water', 'circuit engine oil with oil']) at.session().runLine(line);
    await at.press('S', 'l', '7');
    expect(at.view().asking).toMatchObject({ title: 'drained: circuit', why: 'no row 7 stands here' });
  });

  it('is left by the key of a pad while only what it began with stands there', async () => {
    const at = await newJob(undefined, {}, { keypad: true });
    at.session().runLine('area cover');
    await at.press('*', '7', '0');
    expect(at.view().asking?.typed).toMatch(/^tools out|^odometer|^count/);
    await at.press('-');
    expect(at.view().asking).toBeUndefined();
    await at.press('0', '5', '-');
    expect(at.view().asking?.typed).toMatch(/5-$/);
  });

  it('is nothing where no hole waits for what the key puts in', async () => {
    const at = await newJob();
    for (const line of ['area one', 'off 1', 'holes 1', 'back 1', 'box spare as bolt hex 10'])
      at.session().runLine(line);
    await at.press('B', 'n');
    expect(at.view().asking).toBeUndefined();
    expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'no hole of it waits for its fastener' });
    // What is in waits for its pass.
    await at.press('enter');
    expect(at.state().answer).toMatchObject({ instead: 'snug is next, all of it', by: 'pass' });
    for (const line of ['pass complete', 'pass complete']) at.session().runLine(line);
    await at.press('enter');
    expect(at.state().answer).toMatchObject({ or: { instead: 'or see what keeps the car here', by: 'to-leaving' } });
    await at.press('.');
    expect(at.state().answer).toMatchObject({ text: 'every one of one is tight already', by: 'to-leaving' });
    await at.press('enter');
    for (const line of ['area two', 'off 1', 'area one']) at.session().runLine(line);
    await at.press('enter');
    expect(at.state().answer).toMatchObject({ or: { instead: 'or go on with two', by: 'next-area' } });
  });
  it('names the holes by how they stand, a cover by its rows, a struck line as a line', async () => {
    const at = await newJob();
    await at.press('a', '+', '0', 'enter', 's', 'm', 'e');
    expect(at.view().asking?.choices.map(({ text, beside }) => [text, beside])).toEqual([
      ['1', 'off'],
      ['2', 'slack'],
      ['3', 'empty'],
    ]);
    await at.press('escape', 'D', '1');
    expect(at.view().asking?.title).toBe('draw the area: how many holes');
    await at.press('escape', 'D', '2');
    expect(at.view().asking?.title).toBe('draw the area: how many holes in a row');
    await at.press('escape', 'backspace');
    expect(at.state().answer).toMatchObject({
      text: expect.stringMatching(/^struck: line 4 \(area 1 3 empty on arrival/),
    });
  });
  it('goes back to the question before by the key that erases, where nothing is typed, and from the first nowhere', async () => {
    const at = await newJob();
    const title = () => at.view().asking?.title;
    await at.press('a', '+', 'D', '2');
    expect(at.view().asking).toMatchObject({ title: 'draw the area: how many holes in a row', after: true });
    await at.press('4', 'backspace', 'backspace');
    expect(title()).toBe('draw the area: shape');
    await at.press('backspace');
    expect(title()).toBe('draw the area: shape');
    await at.press('1', '6', 'enter');
    expect(at.state().answer).toMatchObject({ text: 'area 1 drawn, 6 holes' });
  });
  it('offers the heads by their size, and names what is in use', async () => {
    const at = await newJob();
    await at.press('a', '+', 'b', '0', 'x');
    expect(at.view().asking?.title).toContain('in use: bolt hex 10');
    const heads = at.view().asking?.choices.flatMap(({ text }) => (text.startsWith('bolt ') ? [text] : []));
    expect(heads).toEqual([8, 10, 12, 13, 14, 16, 17, 19].map((size) => `bolt hex ${size}`));
  });
});

describe('half a known name', () => {
  it('is asked once whether it is a new one; Tab takes the known one, Enter again the new one', async () => {
    const at = await cover();
    await at.press('a', 'c', 'a', 'm', 'enter');
    expect(at.view().asking?.why).toBe('"cam" would be a new one; Tab takes cam cover, Enter again the new one');
    await at.press('tab');
    expect(at.state().facing.area).toBe('cam cover');
    await at.press('a', 'c', 'a', 'm', 'enter', 'enter');
    expect(at.state().facing.area).toBe('cam');
    // Typed on, it is asked anew.
    await at.press('a', 'c', 'a', 'enter', 'm', 'space', 'c', 'enter');
    expect(at.view().asking?.why).toContain('"cam c" would be a new one');
  });
  it('is taken at once where nothing known begins so', async () => {
    const at = await cover();
    await at.press('a', ...lettersOf('sump'), 'enter');
    expect(at.state().facing.area).toBe('sump');
  });
});

describe('a reading far from the figure of its bolt', () => {
  it('[O4] tightens nothing by its line until it is said with "all the same", and is asked about by nothing near it', async () => {
    const at = await newJob();
    await at.press('a', ...lettersOf('bracket'), 'enter', '0');
    for (const line of ['off 1', 'off 2', 'holes 2', 'by torque 110', 'back 1', 'back 2', 'pass'])
      expect(at.session().runLine(line).kind).not.toBe('refused');
    expect(at.session().runLine('tight 1 read 105')).toMatchObject({ kind: 'taken' });
    expect(at.session().runLine('tight 2 read 11')).toMatchObject({
      kind: 'refused',
      text: 'bracket 2: 11 N·m read where 110 N·m are wanted; is that what the wrench showed?',
      instead: 'tighten it to its figure and say what is read then; or say it with "all the same" at its end',
    });
    expect(levelIn(at, 'bracket/2')).toBe('snug');
    expect(at.session().runLine('tight 2 read 11 all the same')).toMatchObject({ kind: 'taken' });
    expect(levelIn(at, 'bracket/2')).toBe('tight');
  });
});
