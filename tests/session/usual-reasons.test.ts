// Reasons that are offered by number, so that no letters are wanted for them.
import { describe, expect, it } from 'vitest';
import { slotsOf } from '../../src/calls/form.ts';
import { formOf } from '../../src/calls/table.ts';
import { callsWithReasons, usualReasons } from '../../src/calls/usual-reasons.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';

async function released(habits = {}): Promise<AtTheBench> {
  const at = await newJob(undefined, {}, { name: 'Io Marsh', ...habits });
  for (const line of ['tools out', 'odometer 12', 'release by Io Marsh']) at.session().runLine(line);
  return at;
}
const lastEntry = (at: AtTheBench) => {
  const { lines } = at.state().ledger;
  return lines.all[lines.length - 1]?.entries[0];
};

describe('why a signed call is made', () => {
  it('is one of a few numbers, and none of them by an Enter pressed by habit', async () => {
    const at = await released();
    const { length } = at.state().ledger.lines;
    await at.press('L', 'v', 'enter', 'enter');
    expect(at.state().ledger.lines.length).toBe(length);
    expect(at.view().asking).toMatchObject({ slot: 'because', at: -1 });
    await at.press('2');
    expect(lastEntry(at)).toEqual({ kind: 'reopened', who: 'Io Marsh', because: 'it came back' });
  });
  it('is typed where none of them is it', async () => {
    const at = await released();
    await at.press('L', 'v', 'enter', ...lettersOf('was too dear'), 'enter');
    expect(lastEntry(at)).toMatchObject({ because: 'was too dear' });
  });
  it.each(callsWithReasons)('%s asks for a reason, and each is said once', (call) => {
    expect(slotsOf(formOf.get(call) ?? []).map(({ type }) => type)).toContain('why');
    expect(new Set(usualReasons(call)).size).toBe(usualReasons(call).length);
    expect(usualReasons(call).length).toBeLessThanOrEqual(9);
  });
});

it('names the key of the page on a keypad where there is more than one', async () => {
  const at = await released({ keypad: true });
  const foot = () =>
    textOf(
      sceneOf(at.view(), { desk: at.bench.desk(), session: at.state(), keymap: at.bench.store.getState().keymap }),
    );
  await at.press('L', 'v', 'enter');
  expect(foot()).toContain('rubs out');
  expect(foot()).not.toContain('page');
  await at.press('-', 'S', '9');
  expect(at.view().asking?.choices.length).toBeGreaterThan(9);
  expect(foot()).toContain('+ page');
});

it('offers who says a thing without a letter, and nobody by an Enter pressed by habit', async () => {
  const at = await released();
  for (const line of ['reopen by Io Marsh because so', 'area cover', 'off 1', 'finding dirty'])
    at.session().runLine(line);
  const { length } = at.state().ledger.lines;
  await at.press('F', 'd', 'enter');
  expect(at.state().ledger.lines.length).toBe(length);
  expect(at.view().asking?.choices.map(({ text }) => text)).toEqual(['the owner', 'Io Marsh']);
  await at.press('1', '3');
  expect(lastEntry(at)).toMatchObject({
    kind: 'finding-closed',
    how: 'declined',
    who: 'the owner',
    because: 'the car is to be sold',
  });
});
