// Keys of one's own, pedals, keypad, held keys and bells.
import { describe, expect, it } from 'vitest';
import { keymapOf, padKeys } from '../../src/calls/bindings.ts';
import { keyOf, waySaid } from '../../src/calls/key-names.ts';
import { keypadPicture } from '../../src/calls/keypad-picture.ts';
import { every } from '../../src/job/ledger.ts';
import { keymapFor, standardHabits, wrongKeys } from '../../src/session/habits.ts';
import { heldKey } from '../../src/session/held-key.ts';
import { bells, bellsFor } from '../../src/session/sounds.ts';
import { type ScreenId, screens } from '../../src/view/screens.ts';
import { demoLines } from '../demo/at-hand.ts';
import { atTheBench } from './at-the-bench.ts';

const words = (text: string) => [...text].map((char) => (char === ' ' ? 'space' : char));
async function newJob(habits = {}) {
  const at = await atTheBench(undefined, {}, habits);
  await at.press(...(at.bench.store.getState().keymap.pad ? ['1'] : ['n']), ...words('estate'), 'enter');
  await new Promise(setImmediate);
  return at;
}

describe('a keypad', () => {
  it.each(screens)('gives each of its keys one meaning on %s', (screen) => {
    const map = keymapOf({ pad: true });
    for (const key of padKeys) {
      const own = map.keysOn(screen).filter(({ binding }) => binding.key === key && binding.on !== 'any');
      expect(own.length, `${key}: ${own.map(({ row }) => row.id).join(', ')}`).toBeLessThan(2);
    }
  });
  it('reaches every call of a screen by its own key or by its number', async () => {
    const at = await newJob({ keypad: true });
    await at.press('/');
    const offered = at.view().asking?.choices.map((choice) => choice.value) ?? [];
    const all = keymapOf({ pad: true }).keysOn('strip');
    expect(new Set(offered)).toEqual(
      new Set(
        all
          .map(({ row }) => row.id)
          .filter((id) => !id.startsWith('to-') || id === 'to-marks')
          .filter((id) => !['up', 'down', 'page-up', 'page-down', 'choose', 'more', 'screens', 'leave'].includes(id)),
      ),
    );
    await at.press('-');
    expect(at.view().asking).toBeUndefined();
  });
  it('keeps the number of a call while it can be made and while it cannot; those that cannot come last, with why', async () => {
    const at = await newJob({ keypad: true });
    const listed = async () => {
      await at.press('/');
      const choices = at.view().asking?.choices ?? [];
      await at.press('-');
      return choices;
    };
    await at.press('*', '2');
    const before = await listed();
    expect(before.findIndex((one) => one.blocked)).toBe(before.filter((one) => !one.blocked).length);
    const forNow = (all: typeof before) => all.find((one) => one.value === 'for-now');
    expect(forNow(before)).toMatchObject({ blocked: expect.stringContaining('no area is in use') });
    at.session().runLine('area sump');
    at.session().runLine('off 1');
    at.session().runLine('holes 1');
    const after = await listed();
    expect(forNow(after)?.blocked).toBeUndefined();
    expect(forNow(after)?.text).toBe(forNow(before)?.text);
    // Of nothing that is parted none could be the answer: no question would be asked.
    expect(after.find((one) => one.value === 'made')).toMatchObject({
      blocked: 'nothing is parted that could be joined now',
    });
    const [, first = '', second = ''] = /^(\d)(\d)/.exec(forNow(after)?.text ?? '') ?? [];
    await at.press('/', first);
    expect(at.view().asking?.slot).toBe('call');
    await at.press(second);
    expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringContaining('for now') });
    // What the screen names as its key is what was pressed.
    expect(keyOf(keymapOf({ pad: true }), 'build', 'for-now')).toBe(`/ ${first} ${second}`);
    expect(waySaid(keymapOf({ pad: true }), 'strip', 'judge')).toBe('* 6 4');
  });
  it('goes to every screen with two keys', async () => {
    const at = await newJob({ keypad: true });
    const seen: ScreenId[] = [];
    for (const digit of '123456789') {
      await at.press('*', digit);
      seen.push(at.view().screen);
    }
    expect(seen).toEqual(['strip', 'build', 'findings', 'rotation', 'sealing', 'box', 'leaving', 'log', 'services']);
  });
  it('is switched on and off on the bench, and kept', async () => {
    const at = await newJob();
    await at.press('K', '8', '0', 'enter');
    expect(at.state().ledger.tallies.all.off).toBe(1);
    expect(at.kept.at(-1)).toMatchObject({ keypad: true });
    await at.press('K');
    expect(at.kept.at(-1)).toMatchObject({ keypad: false });
  });
  it('says another fastener by its number, in a job without a plan', async () => {
    const at = await newJob({ keypad: true });
    await at.press('8', '0', '9', '4', 'enter', '9', '9', 'enter');
    const heads = at
      .state()
      .ledger.lines.all.flatMap((line) =>
        line.entries.flatMap((e) => (e.kind === 'fastener-found' ? `${e.spec.kind} ${e.spec.head}` : [])),
      );
    expect(heads).toEqual(['bolt hex 13', 'nut hex 8']);
  });
  it('turns the page of the areas and gives a new one its name by two keys, so that none is out of reach', async () => {
    const at = await newJob({ keypad: true });
    for (const one of 'abcdefghijk') for (const line of [`area cover ${one}`, 'off 1']) at.session().runLine(line);
    await at.press('8', '+', '2');
    expect(at.state().facing.area).toBe('cover k');
    await at.press('8', '0');
    expect(at.state().facing.area).toBe('area 1');
    await at.press('enter', '4', '0');
    expect([...every(at.state().ledger, 'part')].map((p) => p.part)).toEqual(['part 1']);
    await at.press('5', '0');
    expect([...every(at.state().ledger, 'connection')].map((c) => c.connection)).toEqual(['connection 1']);
  });
  it('leaves a line that was begun and rubbed out by the key that leaves any', async () => {
    const at = await newJob({ keypad: true });
    at.session().runLine('area cover');
    await at.press('9', 'M', '*', '-');
    expect(at.view().asking).toBeUndefined();
  });
  it('keeps the number of each head in the list of fasteners, whichever is in use', async () => {
    const at = await newJob({ keypad: true });
    await at.press('8', '0');
    for (const head of ['4', '2', '5', '4']) {
      await at.press('9');
      expect(
        at
          .view()
          .asking?.choices.slice(0, 5)
          .map((one) => one.text),
      ).toEqual([8, 10, 12, 13, 14].map((size) => `bolt hex ${size}`));
      await at.press(head);
    }
    expect(at.state().facing.spec).toEqual({ kind: 'bolt', head: 'hex 13' });
    await at.press('9');
    expect(at.view().asking?.choices[3]).toMatchObject({ text: 'bolt hex 13', beside: 'in use' });
  });
  it('says a thread and a length, a head of the commonest, and one that was in use, by a few keys', async () => {
    const at = await newJob({ keypad: true });
    await at.press('8', '0', '9', '1');
    expect(at.state().facing.spec).toEqual({ kind: 'bolt', head: 'hex 8' });
    await at.press('9', ...'06.25', 'enter');
    expect(at.state().facing.spec).toEqual({ kind: 'bolt', head: 'hex 8', thread: 'M6', lengthMm: 25 });
    await at.press('9', ...'06.40', 'enter', '9', '1');
    expect(at.state().facing.spec).toMatchObject({ thread: 'M6', lengthMm: 25 });
  });
  it('[K4] is asked for the count of the holes where a refusal wants it, since no key of the pad is left for it', async () => {
    const at = await newJob({ keypad: true });
    await at.press('8', '0', '9', '1', 'enter', 'enter', '*', '2', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'refused', refusal: { rule: 'K4' } });
    expect(at.view().asking?.title).toContain('count holes');
    await at.press('2', 'enter', 'enter');
    expect(at.state().ledger.tallies.all.off).toBe(1);
  });
  it('[K4] asks nothing by itself where there are letters', async () => {
    const at = await newJob();
    await at.press('a', '+', 'enter', 'B', 'enter');
    expect(at.state().answer).toMatchObject({ kind: 'refused', refusal: { rule: 'K4' } });
    expect(at.view().asking).toBeUndefined();
  });
  it('[X3] offers who signed something on this job, the last one first, so that a release needs no letters', async () => {
    const at = await newJob({ keypad: true, name: 'Io Marsh' });
    at.session().runLine('no road test by Ann because "no plates"');
    at.session().runLine('waiting for Bo because "parts on order"');
    // Nothing is open any more: a release is asked for.
    for (const line of ['resumed', 'odometer 118400']) at.session().runLine(line);
    await at.press('*', '7', '9');
    expect(at.view().asking?.choices.map((one) => one.text)).toEqual(['Io Marsh', 'Ann']);
    expect(at.view().asking?.at).toBe(0);
  });
  it('[X3] signs with no name by Enter alone where nobody said who works here, and says who signs', async () => {
    const at = await newJob();
    for (const line of ['no road test by Ann because "no plates"', 'odometer 118400']) at.session().runLine(line);
    await at.press('L', 'x', 'enter');
    expect(at.view().asking).toMatchObject({ slot: 'who', choices: [{ text: 'Ann' }], why: expect.any(String) });
    await at.press('1');
    expect(at.view().asking?.title).toBe('The car leaves: release it? Signed by Ann.');
  });
  it('writes down that a call came from the pad', async () => {
    const at = await newJob({ keypad: true });
    await at.press('8', '0', 'enter');
    expect(at.state().ledger.lines.all.at(-1)).toMatchObject({ call: 'off', by: 'pad' });
  });
  it('has a picture that names the call of each key', () => {
    const picture = keypadPicture('strip');
    expect(picture).toMatch(/\| 1 +\| 2 +\| 3 +\| Enter +\|\n\| empty +\| damaged +\| wrong one +\| off +\|/);
  });
});

describe('keys of one\u2019s own', () => {
  const own = (...keys: { call: string; key: string; on?: ScreenId }[]) => ({ ...standardHabits, keys });
  it('take the place of the table\u2019s', async () => {
    const at = await newJob(own({ call: 'off', key: 'j' }));
    await at.press('a', '+', 'j', 'j');
    expect(at.state().ledger.tallies.all.off).toBe(2);
  });
  it('are refused where there is no such call, no such key, no such screen, or another call has it', () => {
    const wrong = wrongKeys(
      own(
        { call: 'fly', key: 'j' },
        { call: 'off', key: 'nonsense' },
        { call: 'off', key: 's', on: 'strip' },
        { call: 'off', key: 'j', on: 'roof' as ScreenId },
        { call: 'slack', key: 'escape' },
        { call: 'note', key: 'j' },
      ),
    );
    expect(wrong.map(({ at }) => at)).toEqual([0, 1, 2, 3, 4, 5].map((i) => `keys[${i}]`));
    expect(wrong[2]?.what).toBe('"s" is the key of "slack" on strip already');
  });
  it('that are wrong leave the table as it is', () => {
    const map = keymapFor(own({ call: 'off', key: 's', on: 'strip' }));
    expect(map.boundTo('s', 'strip')?.row.id).toBe('slack');
    expect(map.boundTo('enter', 'strip')?.row.id).toBe('off');
  });
  it('may clash with each other as little', () => {
    expect(wrongKeys(own({ call: 'off', key: 'j' }, { call: 'slack', key: 'j' }))).toMatchObject([{ at: 'keys[1]' }]);
  });
});

describe('pedals', () => {
  it('one makes the last call again, the other strikes it', async () => {
    const at = await newJob({ pedals: { again: 'f9', strike: 'f10' } });
    await at.press('a', '+', 'enter', 'f9', 'f9', 'f10');
    expect(at.state().ledger.tallies.all.off).toBe(2);
  });
  it('are learnt by pressing them, and kept', async () => {
    const at = await newJob();
    await at.press('/', ...words('set the pedal'), 'enter', 'f9', 'f9');
    expect(at.bench.store.getState().word).toContain('the same key');
    await at.press('f10');
    expect(at.kept.at(-1)?.pedals).toEqual({ again: 'f9', strike: 'f10' });
    await at.press('/', ...words('set the pedal'), 'enter', 'escape');
    await new Promise(setImmediate);
    expect(at.kept.at(-1)?.pedals).toMatchObject({ again: undefined });
  });
});

describe('a key that is held down', () => {
  const pressed = (apartMs: number, times: number) => {
    const held = heldKey();
    return Array.from({ length: times }, (_, i) => held.press('enter', i * apartMs));
  };
  it('is known by its pace and stopped', () => {
    expect(pressed(33, 30).filter((one) => one === 'fine').length).toBeLessThan(6);
  });
  it('is no finger that is quick, and no burst that arrives at once', () => {
    expect(pressed(120, 40)).not.toContain('held');
    expect(pressed(1, 60)).not.toContain('held');
  });
  it('is believed again once it was let go, and at once where another key came between', () => {
    const held = heldKey();
    for (let i = 0; i < 20; i++) held.press('enter', i * 33);
    expect(held.press('enter', 20 * 33)).toBe('held');
    expect(held.press('enter', 20 * 33 + 500)).toBe('fine');
    for (let i = 0; i < 20; i++) held.press('enter', 5000 + i * 33);
    held.press('s', 5700);
    expect(held.press('enter', 5733)).toBe('fine');
  });
  it('writes no more than a few calls', async () => {
    const at = await newJob();
    await at.press('a', '+');
    at.pace.stepMs = 4;
    await at.press(...Array.from({ length: 40 }, () => 'enter'));
    expect(at.state().ledger.tallies.all.off).toBeLessThan(8);
    expect(at.bench.store.getState().word).toMatch(
      /held down or stuck.* What it called before stands; "backspace" strikes the last call\.$/,
    );
  });
});

describe('bells', () => {
  const rung = (at: Awaited<ReturnType<typeof newJob>>) => bellsFor(at.state().answer, at.state());
  it('tell taken, refused, the last of an area and a count that differs apart', async () => {
    const at = await newJob();
    await at.press('a', '+', 'D', '3', '2', 'enter', 'enter');
    expect(rung(at)).toBe(bells.taken);
    await at.press('enter');
    expect(rung(at)).toBe(bells.lastOfArea);
    await at.press('B', 'enter');
    expect(rung(at)).toBe(bells.refused);
    await at.press('P', 'c', '9', 'enter');
    expect(rung(at)).toBe(bells.countDiffers);
  });
  it('are off and on with one key, and kept', async () => {
    const at = await newJob();
    await at.press('Q');
    expect(at.kept.at(-1)).toMatchObject({ sounds: false });
  });
  it('are silent where nothing was answered', async () => {
    const at = await atTheBench(demoLines());
    expect(bellsFor(undefined, at.state())).toBe(0);
  });
});
