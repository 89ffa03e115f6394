// A list from which a call takes one of what there is stands in one order while work goes on in an area: a figure remembered
// from the list before means the same. What is next is pointed at.
import { expect, it } from 'vitest';
import { offered } from '../../src/view/view.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';

const leads = ['solenoid plug', 'sensor plug', 'starter cable', 'lamp plug'];
async function withLeads(...more: readonly string[]): Promise<AtTheBench> {
  const at = await newJob();
  at.pace.stepMs = 60_000;
  for (const line of ['area starter', 'off 1', 'off 2', ...leads.map((name) => `parted ${name}`), ...more]) {
    const answer = at.session().runLine(line);
    if (answer.kind === 'refused') throw new Error(`${line}: ${answer.text}`);
  }
  return at;
}
const listed = (at: AtTheBench) => at.view().asking?.choices.map(({ value }) => value);
const pointed = (at: AtTheBench) => {
  const { asking } = at.view();
  return asking && offered(asking)[asking.at]?.value;
};

it('keeps a joint that was made in its place, marked, and points at the next', async () => {
  const at = await withLeads();
  await at.press('escape', 'B', ',', 'j');
  const order = listed(at);
  expect(order).toEqual(leads);
  await at.press('1', ',', 'j');
  expect([listed(at), pointed(at)]).toEqual([order, 'sensor plug']);
  expect(at.view().asking?.choices[0]).toMatchObject({ blocked: 'solenoid plug is not parted' });
  // The figure off the first list.
  await at.press('3');
  expect(at.state().answer).toMatchObject({ kind: 'taken', text: expect.stringContaining('starter cable made') });
  await at.press(',', 'j', 'enter');
  expect(at.state().answer).toMatchObject({ text: expect.stringContaining('sensor plug made') });
});
it('points at the next of those that what is typed leaves, though one that is made stands before it', async () => {
  const at = await withLeads('made solenoid plug', 'made sensor plug');
  await at.press('escape', 'B', ',', 'j', ...lettersOf('plug'));
  expect(pointed(at)).toBe('lamp plug');
  await at.press('backspace', 'backspace', 'backspace', 'backspace');
  expect(pointed(at)).toBe('starter cable');
});
it('keeps what came out again among what went in', async () => {
  const at = await withLeads('in front jack as jack', 'in left rag as rag', 'in right rag as rag');
  await at.press('escape', 'S', ',', 'o');
  const order = listed(at);
  await at.press('1', ',', 'o');
  expect([listed(at), at.view().asking?.choices[0]?.blocked]).toEqual([order, `${order?.[0]} is not in`]);
});
it('keeps what is parted, or in, among what is to be named, and asks for a name alone once nothing else is left', async () => {
  const at = await withLeads('made solenoid plug', 'made starter cable');
  await at.press('escape', 'S', ',', 'c');
  expect([listed(at), pointed(at)]).toEqual([leads, 'solenoid plug']);
  await at.press('1', ',', 'c');
  expect([listed(at), pointed(at)]).toEqual([leads, 'starter cable']);
  await at.press('3', ',', 'c');
  expect(listed(at)).toEqual([]);
  await at.press('escape');
  for (const line of ['in jack as jack', 'in rag as rag', 'out jack', 'out rag', 'in jack']) at.session().runLine(line);
  await at.press(',', 'i');
  expect([listed(at), pointed(at)]).toEqual([['jack', 'rag'], 'rag']);
});
it('turns from the last page to the first on the keypad, which has no way back', async () => {
  const many = Array.from({ length: 11 }, (_, i) => `plug ${String.fromCharCode(97 + i)}`);
  const at = await withLeads(...many.map((name) => `parted ${name}`));
  for (const name of [...leads, ...many.slice(0, 6)]) at.session().runLine(`made ${name}`);
  await at.press('escape', 'B', ',', 'j');
  expect(pointed(at)).toBe('plug g');
  const shown = () => textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() }));
  expect(shown()).toContain('9 before: PgUp');
  await at.press('escape', 'K', '/', '0', '0', '5');
  expect(pointed(at)).toBe('plug g');
  await at.press('+');
  expect(pointed(at)).toBe('solenoid plug');
});
it('reads what keeps the car from its top where all that stood at the row picked is gone', async () => {
  const at = await withLeads('holes 2');
  await at.press('escape', 'L', 'end');
  const { leaving = 0 } = at.view().at;
  expect(leaving).toBe(at.bench.listed().length - 1);
  await at.press('home');
  expect(at.view().at.leaving).toBe(0);
  await at.press('down', 'B');
  for (const line of [...leads.map((name) => `made ${name}`), 'back 1', 'back 2', 'pass complete', 'pass complete'])
    at.session().runLine(line);
  await at.press('L');
  expect(at.view().at.leaving).toBe(0);
});
