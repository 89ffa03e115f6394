// O4: the maker's figure for the area in use, by a key and on the keypad, as a typed line says it.
import { describe, expect, it } from 'vitest';
import { waySaid } from '../../src/calls/key-names.ts';
import { stateOf } from '../../src/job/ledger.ts';
import type { Line } from '../../src/job/line.ts';
import { methodFor } from '../../src/job/passes.ts';
import type { Hole } from '../../src/job/subjects.ts';
import { metric } from '../../src/trade/units-shown.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { type AtTheBench, newJob } from './at-the-bench.ts';

async function coverOff(more: readonly string[], units = metric): Promise<AtTheBench> {
  const at = await newJob(undefined, {}, { units });
  for (const line of ['area cover', 'bolt hex 10', 'off 1', 'off 2', 'holes 2', ...more]) {
    const answer = at.session().runLine(line);
    if (answer.kind === 'refused') throw new Error(`${line}: ${answer.text}`);
  }
  await at.press('B');
  return at;
}
const shown = (at: AtTheBench) =>
  textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state(), keymap: at.bench.store.getState().keymap }))
    .replace(/\s*│\s*/g, ' ')
    .replace(/ +/g, ' ');
const method = (at: AtTheBench) => stateOf(at.state().ledger, 'area', 'cover')?.declared?.method;
const lastEntries = ({ state }: AtTheBench): Line['entries'] | undefined => {
  const { all, length } = state().ledger.lines;
  return all[length - 1]?.entries;
};

it('[O4] says by its key what a line says, and is named where no figure is known', async () => {
  const at = await coverOff(['by torque']);
  expect(shown(at)).toContain("no figure known: it is in the maker's manual; N says it");
  await at.press('N');
  expect(at.view().asking?.title).toBe("torque figure: cover, in N·m, as 40 or 40 +90 +90; the maker's manual");
  await at.press('enter');
  expect([at.view().asking?.slot, method(at)]).toEqual(['value', { by: 'torque' }]);
  await at.press('4', '0', 'enter');
  expect(method(at)).toEqual({ by: 'torque', newtonMetres: 40 });
  const byKey = lastEntries(at);
  at.session().runLine('by torque 40');
  expect(lastEntries(at)).toEqual(byKey);
  expect(shown(at)).not.toContain('N says it');
});
it.each([
  [[], { by: 'torque', newtonMetres: 40 }],
  [['by torque-angle with oil'], { by: 'torque-angle', newtonMetres: 40, with: 'oil' }],
  [['by castle'], { by: 'castle', newtonMetres: 40 }],
])('[O4] keeps how the area is tighten: %j', async (said, kept) => {
  const at = await coverOff(said);
  await at.press('N', '4', '0', 'enter');
  expect(method(at)).toEqual(kept);
});
it('[O4] is asked of what is pulled up already, and not of a clamp that is still out', async () => {
  const at = await newJob();
  for (const line of [
    'area cover',
    'off 1 as clamp',
    'off 2 as bolt hex 10 M6',
    'off 3 as bolt hex 10 M6',
    'holes 3',
    'back 2',
    'back 3',
  ])
    expect(at.session().runLine(line)).not.toMatchObject({ kind: 'refused' });
  await at.press('B', 'N');
  expect(at.view().asking?.title).toMatch(/^torque figure: cover 1, /);
  await at.press('escape');
  for (const line of ['tight 2', 'tight 3']) at.session().runLine(line);
  await at.press('N');
  expect(at.view().asking?.title).toMatch(/^torque figure: cover 2, 3, /);
});
it('[O4] reads a bare figure in the unit of the workshop, and names it', async () => {
  const at = await coverOff(['by torque'], { ...metric, torque: 'lbf ft' });
  await at.press('N');
  expect(at.view().asking?.title).toContain('cover, in lbf·ft');
  await at.press('2', '5', 'enter');
  expect(method(at)).toEqual({ by: 'torque', newtonMetres: 33.9 });
});
it('[O4] is chosen by its number on the keypad, which has no space between the stages', async () => {
  const at = await coverOff(['by torque']);
  await at.press('K');
  const way = waySaid(at.bench.store.getState().keymap, 'build', 'figure');
  expect(shown(at)).toContain(`; ${way} says it`);
  await at.press(...way.split(' '), ...'40+90+90', 'enter');
  expect(method(at)).toEqual({ by: 'torque', stages: [{ newtonMetres: 40 }, { degrees: 90 }, { degrees: 90 }] });
});
it('[O4] asks nothing where a figure has no place', async () => {
  const at = await coverOff(['by shoulder']);
  await at.press('N');
  expect(at.view().asking).toBeUndefined();
  expect(at.state().answer).toMatchObject({
    kind: 'refused',
    text: '"shoulder" carries no figure: the thread goes before torque does',
  });
});
it('[O4] says the figure of the next one and its like where they have a method of their own, and of no other', async () => {
  const at = await coverOff(['by torque at 1', 'by torque at 2']);
  expect(shown(at)).toContain('no figure known');
  expect(shown(at)).toContain('N says it');
  await at.press('N');
  expect(at.view().asking?.title).toMatch(/^torque figure: cover 1, 2, in /);
  await at.press('8', 'enter');
  const of = (hole: string) => methodFor(at.state().ledger, `cover/${hole}` as Hole);
  expect([of('1'), of('2'), method(at)]).toEqual([
    { by: 'torque', newtonMetres: 8 },
    { by: 'torque', newtonMetres: 8 },
    undefined,
  ]);
  expect(shown(at)).not.toContain('N says it');
  for (const line of ['by torque 40', 'by shoulder at 2', 'back 1', 'back 2', 'tight 2']) at.session().runLine(line);
  await at.press('N', '9', 'enter');
  expect([of('1'), of('2'), method(at)]).toEqual([
    { by: 'torque', newtonMetres: 9 },
    { by: 'shoulder' },
    { by: 'torque', newtonMetres: 40 },
  ]);
});
describe('an area with two threads', () => {
  async function tensioner() {
    const at = await newJob();
    const lines = ['area tensioner', 'bolt hex 12 M8x1.25x40', 'off 1', 'bolt hex 14 M10x1.25x45', 'off 2', 'off 3'];
    for (const line of [...lines, 'holes 3', 'by torque']) at.session().runLine(line);
    await at.press('B');
    return at;
  }
  const of = (at: AtTheBench, hole: string) => methodFor(at.state().ledger, `tensioner/${hole}` as Hole)?.newtonMetres;

  it('[O4] is asked for the figure of the next one and its like, and keeps that of the others', async () => {
    const at = await tensioner();
    await at.press('N');
    expect(at.view().asking?.title).toMatch(/^torque figure: tensioner 1, in /);
    await at.press('2', '5', 'enter');
    expect([of(at, '1'), of(at, '2')]).toEqual([25, undefined]);
    await at.press('enter', 'N');
    expect(at.view().asking?.title).toMatch(/^torque figure: tensioner 2, 3, in /);
    await at.press('4', '5', 'enter');
    expect([of(at, '1'), of(at, '2'), of(at, '3')]).toEqual([25, 45, 45]);
  });
  it('[O4] is said of the hole pointed at and its like, which stays pointed at, and corrected of it alone', async () => {
    const at = await tensioner();
    await at.press('#', '3', 'N');
    expect(at.view().asking?.title).toMatch(/^torque figure: tensioner 2, 3, in /);
    await at.press('5', '5', 'enter');
    expect([of(at, '1'), of(at, '2'), of(at, '3')]).toEqual([undefined, 55, 55]);
    expect(at.bench.desk().facing.hole).toBe('tensioner/3');
    await at.press('N');
    expect(at.view().asking?.title).toMatch(/^torque figure: tensioner 3, in /);
    await at.press('6', '0', 'enter');
    expect([of(at, '1'), of(at, '2'), of(at, '3')]).toEqual([undefined, 55, 60]);
    await at.press('enter');
    expect(lastEntries(at)).toMatchObject([{ kind: 'fastener-fitted', hole: 'tensioner/3' }]);
    expect(at.bench.desk().facing.hole).toBeUndefined();
  });
  it('[O4] minds one figure said of both in a line, and of what is tight by another', async () => {
    const at = await tensioner();
    const said = (line: string) => {
      const answer = at.session().runLine(line);
      return answer.kind === 'taken' ? answer.text : answer.kind;
    };
    expect(said('by torque 30')).toContain('one figure for M8x1.25 and M10x1.25: of one hole it is said by its number');
    for (const line of ['back 1', 'back 2', 'back 3', 'tight 1', 'tight 1']) at.session().runLine(line);
    expect(said('by torque at 1 30')).not.toContain('tight by what was said before');
    expect(said('by torque at 1 25')).toContain('tensioner 1 is tight by what was said before; pull it up once more');
  });
});

it.each([
  ['kind', 'nut hex 13 M8', 'bolt hex 13 M8x45'],
  ['class', 'bolt hex 13 M8x45 8.8', 'bolt hex 13 M8x45 10.9'],
])('[O4] tells apart by %s what has one thread', async (_, first, second) => {
  const at = await newJob();
  for (const line of ['area alternator', first, 'off 1', second, 'off 2', 'holes 2', 'by torque'])
    at.session().runLine(line);
  await at.press('B', 'N');
  expect(at.view().asking?.title).toMatch(/^torque figure: alternator 1, in /);
  await at.press('1', '5', 'enter', 'enter', 'N');
  expect(at.view().asking?.title).toMatch(/^torque figure: alternator 2, in /);
  await at.press('2', '5', 'enter');
  const of = (hole: string) => methodFor(at.state().ledger, `alternator/${hole}` as Hole)?.newtonMetres;
  expect([of('1'), of('2')]).toEqual([15, 25]);
});
it('[O4] names its key before a final of which nobody said how it is done, but for what is pulled up by feel', async () => {
  const at = await newJob();
  for (const line of ['area pipe', 'bolt hex 10', 'off 1', 'clamp', 'off 2', 'holes 2', 'back 1', 'back 2'])
    at.session().runLine(line);
  await at.press('B');
  expect(shown(at)).not.toContain('no torque figure was said');
  await at.press('t', 't');
  expect(shown(at)).toContain('no torque figure was said; N says it');
  await at.press('t');
  expect(shown(at)).toMatch(/> 2 snug clamp(?!.*no torque figure)/s);
});
it('[O4] shows the figure of the one pulled up while another is next, where it is another', async () => {
  const at = await newJob();
  const lines = ['area starter', 'nut hex 13 M8', 'off 1', 'bolt hex 16 M10x45', 'off 2', 'off 3', 'holes 3', 'back 2'];
  for (const line of [...lines, 'back 3', 'by torque at 1 10']) at.session().runLine(line);
  await at.press('B');
  expect(shown(at)).toContain('t snug: 2, no figure was said');
  for (const hole of [2, 3]) at.session().runLine(`by torque at ${hole} 48`);
  await at.press('t', 't');
  expect(shown(at)).toMatch(/> 1 off nut .*tighten: 10 N·m .*t tight: 2, 48 N·m/s);
  at.session().runLine('by torque at 1 48');
  expect(shown(at)).not.toContain('t tight: ');
});
it('[O4] minds a figure said of what is tight already with none, until that is pulled up to it', async () => {
  const at = await newJob();
  const lines = ['area starter', 'bolt hex 16 M10x45', 'off 1', 'off 2', 'holes 2', 'back 1', 'back 2'];
  for (const line of [...lines, 'tight 1', 'tight 2', 'tight 1', 'tight 2']) at.session().runLine(line);
  const mind = (one: string) => `starter ${one} tight with no figure said; pull `;
  expect(at.session().runLine('by torque 48')).toMatchObject({ text: expect.stringContaining(mind('1, 2 are')) });
  at.session().runLine('tight 1');
  expect(at.session().runLine('by torque 48')).toMatchObject({ text: expect.stringContaining(mind('2 is')) });
  // The key of the pass takes those that are left, once.
  await at.press('B', '.');
  expect(lastEntries(at)).toMatchObject([
    { kind: 'fastener-tightened', hole: 'starter/2', last: true, method: { by: 'torque', newtonMetres: 48 } },
  ]);
  await at.press('.');
  expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'every one of starter is tight already' });
  expect(shown(at)).toContain('Nothing of it waits');
  // Turned by an angle it is not pulled once more.
  expect(at.session().runLine('by torque-angle 40 +90')).toMatchObject({
    text: expect.stringContaining('slacken them and bring them up anew: '),
  });
  expect(shown(at)).toContain('Nothing of it waits');
});
it('[O4] minds with a final of which nothing was said that its like has a figure, and with a clamp does not', async () => {
  const at = await newJob();
  const lines = [
    'area starter',
    'bolt hex 16 M10x45',
    'off 1',
    'off 2',
    'clamp',
    'off 3',
    'holes 3',
    'by torque at 1 48',
  ];
  for (const line of [...lines, 'back 1', 'back 2', 'back 3', 'tight 2', 'tight 3']) at.session().runLine(line);
  const said = (line: string) => at.session().runLine(line);
  expect(said('tight 2')).toMatchObject({ text: expect.stringContaining('no figure is known for starter 2: ') });
  expect(said('tight 3')).toMatchObject({ text: expect.not.stringContaining('no figure') });
});
it('[O4] names in an area with two threads those of a pass that have no figure, and asks for theirs late', async () => {
  const at = await newJob();
  const lines = ['area mount', 'bolt hex 14 M10x1.25x60', 'off 1', 'nut hex 17 M12x1.25', 'off 2', 'off 3', 'holes 3'];
  for (const line of [...lines, 'by torque', 'by torque at 1 55', 'back 1', 'back 2', 'back 3', 'pass complete'])
    at.session().runLine(line);
  expect(at.session().runLine('pass complete')).toMatchObject({
    text: expect.stringContaining('no figure is known for mount 2, 3: '),
  });
  at.session().runLine('area mount');
  await at.press('B', 'N');
  expect(at.view().asking?.title).toMatch(/^torque figure: mount 2, 3, in /);
});
