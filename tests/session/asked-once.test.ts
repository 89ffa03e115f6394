// Keys that may be a slip: asked once with nothing written, meant by the same key again. And keys that mean nothing here.
import { describe, expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { asked, cover, levelIn, lines } from './asked.ts';
import { lettersOf, newJob } from './at-the-bench.ts';
import { partWay } from './part-way.ts';

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
