// The screen of settings: each is changed with Enter, at once on the bench and in the file, before any job as well; what
// is typed without its unit is read in the units of the workshop; the name is offered where a call is signed.
import { setImmediate } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { standardKeymap } from '../../src/calls/bindings.ts';
import { readTrays } from '../../src/session/changing.ts';
import { type Habits, standardHabits } from '../../src/session/habits.ts';
import { createKeeping } from '../../src/session/keeping.ts';
import { atTheBench, lettersOf, newJob } from './at-the-bench.ts';

const settingsKey = standardKeymap.keysOn('shelf').find(({ row }) => row.id === 'to-settings')?.binding.key as string;

async function onSettings(habits: Partial<Habits> = {}) {
  const at = await atTheBench(undefined, {}, habits);
  await at.press(settingsKey);
  const listed = () => at.bench.listed();
  /** Moves to the row of a setting. */
  const to = async (name: string) => {
    await at.press(...Array.from({ length: 20 }, () => 'up'));
    const rows = listed();
    const i = rows.slice(0, rows.length).findIndex((one) => one.name === name);
    await at.press(...Array.from({ length: i }, () => 'down'));
  };
  const row = (name: string) => {
    const rows = listed();
    return rows.slice(0, rows.length).find((one) => one.name === name);
  };
  const habitsNow = () => at.bench.store.getState().habits;
  return { ...at, to, row, habitsNow };
}
const inJob = (habits: Partial<Habits> = {}) => newJob(undefined, {}, habits);

describe('the screen of settings', () => {
  it('is there before any job is open, and leads back to the shelf', async () => {
    const at = await onSettings();
    expect(at.view().screen).toBe('settings');
    await at.press('escape');
    expect(at.view().screen).toBe('shelf');
  });
  it('leads back to where it was opened from, through help as well', async () => {
    const at = await inJob();
    await at.press('F', settingsKey, '?');
    expect(at.view().screen).toBe('help');
    await at.press('?', 'escape');
    expect(at.view().screen).toBe('findings');
    await at.press('F', settingsKey, 'escape');
    expect(at.view().screen).toBe('findings');
  });
  it('is never what a job is gone back to from the shelf', async () => {
    const at = await inJob();
    await at.press(settingsKey, 'H', 'enter');
    await setImmediate();
    expect(at.view().screen).toBe('strip');
  });
  it.each([
    ['distance', 'mi'],
    ['temperature', '°F'],
    ['torque', 'lbf·ft'],
    ['colours', 'off'],
    ['sounds', 'off'],
    ['keypad', 'on'],
  ])('changes %s with Enter, and back with the next, and keeps both', async (name, other) => {
    const at = await onSettings();
    await at.to(name);
    const before = at.row(name)?.text;
    await at.press('enter');
    expect(at.row(name)?.text).toBe(other);
    const changed = at.habitsNow();
    await at.press('enter');
    await setImmediate();
    expect(at.row(name)?.text).toBe(before);
    expect(at.kept).toEqual([changed, at.habitsNow()]);
  });
  it('asks for the name with the one there is, and an empty one is none', async () => {
    const at = await onSettings({ name: 'Io' });
    await at.to('name');
    await at.press('enter', 'right', 'n', 'enter');
    expect(at.habitsNow().name).toBe('Ion');
    await at.press('enter', 'backspace', 'backspace', 'backspace', 'enter');
    expect(at.habitsNow().name).toBeUndefined();
    expect(at.row('name')?.text).toBe('none');
  });
  it('takes the trays as a list, for the job in hand at once', async () => {
    const at = await inJob({ trays: ['1'] });
    await at.press(settingsKey, 'down', 'enter', ...lettersOf('1-3, left'), 'enter');
    expect(at.bench.desk().trays).toEqual(['1', '2', '3', 'left']);
    expect(at.session().desk().trays).toEqual(['1', '2', '3', 'left']);
  });
  it('goes on with the trays there are after a Backspace, and empties any line at once', async () => {
    const at = await onSettings({ trays: ['1', '2'] });
    await at.to('trays');
    await at.press('enter', 'backspace', '3', 'enter', 'enter');
    expect(at.habitsNow().trays).toEqual(['1', '3']);
    await at.press('left', ...lettersOf(', 4'), 'ctrl+u', '5', 'enter');
    expect(at.habitsNow().trays).toEqual(['5']);
  });
  it('keeps the question while the trays are none', async () => {
    const at = await onSettings({ trays: ['1'] });
    await at.to('trays');
    await at.press('enter', 'left', ...lettersOf(', 1'), 'enter');
    expect(at.view().asking?.why).toBe('"1" is there twice');
    expect(at.habitsNow().trays).toEqual(['1']);
  });
});

it.each([
  ['1-6', ['1', '2', '3', '4', '5', '6']],
  ['left, right ,  3', ['left', 'right', '3']],
  ['1 2 3', ['1', '2', '3']],
  ['1 - 2  7, red bag', ['1', '2', '7', 'red bag']],
  ['1-', /"1-" is half of a range/],
  ['', /one tray/],
  ['6-1', /one tray/],
  ['1-41', /40 trays/],
  ['a/b', /a name has/],
])('trays %j', (text, expected) => {
  const read = readTrays(text);
  if (expected instanceof RegExp) expect(read).toMatchObject({ why: expect.stringMatching(expected) });
  else expect(read).toEqual(expected);
});

it('a file that refuses says one line, the bench keeps what was set, and writes never overlap', async () => {
  let habits: Habits = standardHabits;
  const told: string[] = [];
  let writing = 0;
  const keeping = createKeeping({
    get: () => habits,
    set(now) {
      if (now.habits) habits = now.habits;
      if (now.word !== undefined) told.push(now.word);
    },
    async toFile() {
      writing += 1;
      expect(writing).toBe(1);
      await setImmediate();
      writing -= 1;
      return 'the disk is full: settings.json; make room';
    },
  });
  keeping.keep({ sounds: false });
  keeping.keep({ colours: false });
  await setImmediate();
  await setImmediate();
  await setImmediate();
  expect(told).toHaveLength(2);
  expect(told[0]).toMatch(/holds until the program is left: the disk is full/);
  expect(habits).toMatchObject({ sounds: false, colours: false });
});

describe('units', () => {
  const inches = { distance: 'mi', temperature: 'F', torque: 'lbf ft' } as const;
  const entryOf = (at: Awaited<ReturnType<typeof inJob>>) => at.state().ledger.lines.all.at(-1)?.entries[0];
  const answer = (at: Awaited<ReturnType<typeof inJob>>) => (at.state().answer as { text: string }).text;

  it.each([
    ['bench 68 40', { celsius: 20, humidityPct: 40 }],
    ['bench 68 degrees 40 percent', { celsius: 20, humidityPct: 40 }],
    ['bench 20 C 40', { celsius: 20, humidityPct: 40 }],
    ['bench 20C', { celsius: 20 }],
    ['odometer 90000', { distance: 90000, unit: 'mi' }],
    ['odometer 90000 km', { distance: 90000, unit: 'km' }],
  ])('%s is read in those of the workshop where none is said', async (line, expected) => {
    const at = await inJob({ units: inches });
    at.session().runLine(line);
    expect(entryOf(at)).toMatchObject(expected);
  });
  it.each([
    ['bench 20 40', { celsius: 20, humidityPct: 40 }],
    ['bench 68F', { celsius: 20 }],
    ['odometer 90000', { distance: 90000, unit: 'km' }],
  ])('%s is metric where nothing is set', async (line, expected) => {
    const at = await inJob();
    at.session().runLine(line);
    expect(entryOf(at)).toMatchObject(expected);
  });
  it('are those of an answer and of the question', async () => {
    const at = await inJob({ units: inches });
    at.session().runLine('bench 70');
    expect(entryOf(at)).toMatchObject({ celsius: 21.11 });
    expect(answer(at)).toBe('bench 70 °F');
    await at.press('C', 'b');
    expect(at.view().asking?.title).toBe('bench conditions: how many °F, as 64');
  });
  it.each([
    ['by torque 30', { newtonMetres: 40.67 }, 'by torque: 30 lbf·ft'],
    ['by torque 40 Nm', { newtonMetres: 40 }, 'by torque: 29.5 lbf·ft'],
    [
      'by torque-angle 30 +90',
      { stages: [{ newtonMetres: 40.67 }, { degrees: 90 }] },
      'by torque-angle: 30 lbf·ft, +90°',
    ],
    [
      'by torque-angle 40 Nm +90',
      { stages: [{ newtonMetres: 40 }, { degrees: 90 }] },
      'by torque-angle: 29.5 lbf·ft, +90°',
    ],
  ])('%s is a method of newton metres, and its answer says the figure in the unit', async (line, expected, said) => {
    const at = await inJob({ units: inches });
    at.session().runLine('area head');
    at.session().runLine(line);
    expect(entryOf(at)).toMatchObject({ kind: 'area-declared', method: expected });
    expect(answer(at)).toBe(`head: ${said}`);
  });
  it('an adapter is said by its lengths', async () => {
    const at = await inJob();
    at.session().runLine('area head');
    at.session().runLine('adapter 1 50 on 400 at 45');
    expect(answer(at)).toBe('head 1: adapter 50 mm on 400 mm, at 45°');
  });
  it('what the wrench showed is kept in newton metres', async () => {
    const at = await inJob({ units: inches });
    for (const line of ['area lid', 'holes 1', 'off 1 as bolt hex 10', 'back 1', 'tight 1', 'tight 1 read 30'])
      expect({ line, kind: at.session().runLine(line).kind }).not.toMatchObject({ kind: 'refused' });
    // 30 lbf ft: NIST SP 811, B.8, 1 lbf ft = 1.355818 N m.
    expect(entryOf(at)).toMatchObject({ kind: 'fastener-tightened', readNewtonMetres: 40.67 });
  });
  it('a distance that is due waits for the odometer whose unit it goes by', async () => {
    const at = await inJob({ units: inches });
    expect(at.session().runLine('due coolant at 120000')).toMatchObject({ kind: 'refused', by: 'odometer' });
    at.session().runLine('odometer 90000');
    expect(at.session().runLine('due coolant at 120000')).toMatchObject({ kind: 'taken' });
  });
});

describe('the name', () => {
  it('is offered where a call is signed, and another may be typed', async () => {
    const at = await inJob({ name: 'Io Marsh' });
    await at.press('L', 'u');
    expect(at.view().asking).toMatchObject({ slot: 'who', typed: '', choices: [{ value: 'Io Marsh' }] });
    await at.press(...lettersOf('Ada'), 'enter');
    await at.press(...lettersOf('towed'), 'enter', '2');
    await setImmediate();
    expect(at.state().ledger.lines.all.at(-1)?.entries[0]).toMatchObject({ kind: 'left-unreleased', who: 'Ada' });
  });
  it('is taken with Enter', async () => {
    const at = await inJob({ name: 'Io Marsh' });
    await at.press('L', 'u', 'enter', ...lettersOf('towed'), 'enter', '2');
    await setImmediate();
    expect(at.state().ledger.lines.all.at(-1)?.entries[0]).toMatchObject({ kind: 'left-unreleased', who: 'Io Marsh' });
  });
  it('alone is taken with Enter: who signed last is chosen by the number or an arrow, also when a letter was erased', async () => {
    const at = await inJob({});
    at.session().runLine('no road test by Ann because "no plates"');
    await at.press('L', 'u', 'enter');
    const asked = { slot: 'who', at: -1, why: 'type who signs, or choose by the number' };
    expect(at.view().asking).toMatchObject(asked);
    await at.press('x', 'backspace', 'enter');
    expect(at.view().asking).toMatchObject(asked);
    await at.press('down', 'enter', ...lettersOf('towed'), 'enter', '2');
    await setImmediate();
    expect(at.state().ledger.lines.all.at(-1)?.entries[0]).toMatchObject({ kind: 'left-unreleased', who: 'Ann' });
  });
  it('is typed where nobody signed yet', async () => {
    const at = await inJob({});
    await at.press('L', 'u', 'enter');
    expect(at.view().asking).toMatchObject({ slot: 'who', why: 'type who signs' });
  });
  it('is offered for nobody else: whom a job waits for', async () => {
    const at = await inJob({ name: 'Io Marsh' });
    await at.press('L', 'w');
    expect(at.view().asking).toMatchObject({ slot: 'who' });
    expect(at.view().asking?.choices.map(({ text }) => text)).not.toContain('Io Marsh');
  });
});
