// Until when and by when, asked by a keypad and by letters: a proposal by its number, or a date of one's own.
import { describe, expect, it } from 'vitest';
import { keymapOf } from '../../src/calls/bindings.ts';
import { keyOf } from '../../src/calls/key-names.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { screens } from '../../src/view/screens.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';

const vehicle = (at: AtTheBench) => stateOf(at.state().ledger, 'vehicle', 'vehicle');
/** Monday, 2031-03-03; no letter is pressed. */
async function byPad() {
  const at = await newJob();
  await at.press('K', '*', '7');
  return at;
}
const numberOf = (call: string) => keyOf(keymapOf({ pad: true }), 'leaving', call).split(' ');

describe('a keypad', () => {
  it('asks which one by the same number on every screen', () => {
    const pad = keymapOf({ pad: true });
    expect(new Set(screens.map((screen) => keyOf(pad, screen, 'which')))).toEqual(new Set(['/ 0 0']));
  });
  it('[T8] says for whom, why and until when a job waits, by three numbers', async () => {
    const at = await byPad();
    await at.press(...numberOf('waiting'), '1', '1', '8');
    expect(vehicle(at)?.waiting).toMatchObject({ who: 'parts', because: 'on order', until: 'Monday 2031-03-17' });
  });
  it('[T8] takes a date of one’s own in figures behind a 0, and none for an Enter', async () => {
    const at = await byPad();
    await at.press(...numberOf('waiting'), '2', '2', ...'014.2.', 'enter');
    expect(vehicle(at)?.waiting).toMatchObject({ who: 'the owner', because: 'to ring back', until: '14.2.' });
    await at.press(...numberOf('waiting'), '2', '2', 'enter');
    expect(vehicle(at)?.waiting?.until).toBeUndefined();
  });
  it('[X4] says by which date a belt is due again, the distance left out', async () => {
    const at = await byPad();
    at.session().runLine('service timing belt');
    await at.press(...numberOf('due'), '1', '5', 'enter');
    expect(vehicle(at)?.due).toMatchObject([{ what: 'timing belt', on: '2036-03-03' }]);
  });
});

it('[T8] takes until when in words as well, by letters', async () => {
  const at = await newJob();
  await at.press(
    'L',
    'w',
    ...lettersOf('Ann'),
    'enter',
    ...lettersOf('parts'),
    'enter',
    ...lettersOf('Friday'),
    'enter',
  );
  expect(vehicle(at)?.waiting).toMatchObject({ who: 'Ann', because: 'parts', until: 'Friday' });
});

it('[X4] asks once of a distance that the clock has passed, and of a day that is past', async () => {
  const at = await newJob();
  for (const line of ['service timing belt', 'odometer 142300']) at.session().runLine(line);
  const due = () => vehicle(at)?.due ?? [];
  await at.press('L', 'i', '1', '6', 'enter', ...lettersOf('120000'), 'enter');
  expect(at.state().answer).toMatchObject({
    kind: 'asked',
    text: '142300 km stand on the clock, and 120000 km are passed',
    instead: 'so far from now is at 262300 km',
    again: 'calls timing belt due so',
  });
  expect(due()).toEqual([]);
  await at.press('i');
  expect(due()).toMatchObject([{ what: 'timing belt', atDistance: 120_000 }]);
  await at.press('escape', '/', ...lettersOf('due timing belt on 2030-05-01 at 180000'), 'enter');
  expect(at.state().answer).toMatchObject({ kind: 'asked', text: '2030-05-01 is past' });
  await at.press('escape');
  // Read from a list it is minded.
  expect(at.session().runLine('due timing belt on 2031-03-03')).toMatchObject({
    text: expect.stringContaining('Mind: 2031-03-03 is today'),
  });
  expect(at.session().runLine('due wiper blades on 2033-03-03 at 180000')).toMatchObject({
    text: expect.not.stringContaining('Mind'),
  });
});

it('[X4] asks once before what was said to fall due is said anew, and keeps its place in the list', async () => {
  const at = await newJob();
  for (const line of ['service timing belt', 'service coolant pump']) at.session().runLine(line);
  const list = () => at.view().asking?.choices.map(({ text }) => text);
  await at.press('L', 'i');
  const before = list();
  await at.press('1');
  expect(at.view().asking?.title).toMatch(/^next due: timing belt: by which date /);
  await at.press('6', 'enter', 'enter');
  await at.press('i');
  expect(list()).toEqual(before);
  await at.press('1', '4', 'enter', 'enter');
  expect(at.state().answer).toMatchObject({
    kind: 'asked',
    text: expect.stringMatching(/^timing belt was said to fall due by /),
  });
  expect(vehicle(at)?.due).toMatchObject([{ what: 'timing belt', on: '2037-03-03' }]);
});

it('[X4] says beside each that may fall due what would be written of it', async () => {
  const at = await newJob();
  const lines = ['odometer 120000 km', 'circuit coolant with coolant', 'drained coolant', 'filled coolant'];
  for (const line of lines) at.session().runLine(line);
  await at.press('L', 'i');
  const plain = at.view().asking?.choices.find(({ text }) => text === 'coolant, plain');
  expect(plain?.beside).toMatch(/^by 2034-03-0\d or at 17\d{4} km$/);
});

describe('a day by letters', () => {
  it('[X4] is typed whole, with no figure of it taken before the rest', async () => {
    for (const day of ['2034-11-27', '27.11.2034']) {
      const at = await newJob();
      at.session().runLine('service timing belt');
      await at.press('L', 'i', '1', ...day.split(''));
      expect(at.view().asking).toMatchObject({ slot: 'on', typed: day });
      await at.press('enter', 'enter');
      expect(vehicle(at)?.due).toMatchObject([{ what: 'timing belt', on: '2034-11-27' }]);
    }
  });
  it('[X4] is chosen by its number and Enter', async () => {
    const at = await newJob();
    at.session().runLine('service timing belt');
    await at.press('L', 'i', '1', '5', 'enter', 'enter');
    expect(vehicle(at)?.due).toMatchObject([{ what: 'timing belt', on: '2036-03-03' }]);
  });
});
