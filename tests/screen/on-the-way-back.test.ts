// What stands below the cardboard on the way back besides the next fastener: what a plan has to be minded there, and the
// note that a caliper's pistons were pushed back.
import { expect, it } from 'vitest';
import { helpRows } from '../../src/calls/lists/help.ts';
import { mindedBack } from '../../src/calls/minded-back.ts';
import { plansAtHand } from '../../src/commands/plans.ts';
import { type AtTheBench, lettersOf, newJob } from '../session/at-the-bench.ts';
import { sceneOf, textOf } from './scene.ts';

async function begun(...lines: readonly string[]): Promise<AtTheBench> {
  const at = await newJob(undefined, { plans: plansAtHand(new URL('../../', import.meta.url)).offers });
  for (const line of lines) {
    const answer = at.session().runLine(line);
    if (answer.kind === 'refused') throw new Error(`${line}: ${answer.text}`);
  }
  return at;
}
const brakes = (...lines: readonly string[]) => begun('plan front brakes for front pads', ...lines);
const caliperOff = ['area right caliper', 'off 1', 'off 2'];
const shown = (at: AtTheBench, size: { columns: number; rows: number } = { columns: 80, rows: 24 }) =>
  textOf(sceneOf({ screen: 'build' }, { desk: at.bench.desk(), ...size }));

it('minds of an area on the way back what its plan says of going on, in one row, and leads to the whole of it', async () => {
  const at = await brakes(...caliperOff);
  const rows = (size?: { columns: number; rows: number }) =>
    shown(at, size)
      .split('\n')
      .filter((row) => row.includes('mind:'));
  expect(rows()).toHaveLength(1);
  expect(rows()[0]).toContain('mind: Push the piston back square');
  expect(rows()[0]).toMatch(/1 more: T\s*$/);
  expect(rows({ columns: 109, rows: 30 })[0]).toContain('mind: Push the piston back square and slowly. 1 more: T');
  // What is only about its coming off is over.
  expect(mindedBack(at.bench.desk()).map(({ brief }) => brief)).toEqual([
    'Push the piston back square and slowly',
    'Pads with a wear sensor or an arrow have a side and a direction',
  ]);
  await at.press('B', 'T');
  const row = at.bench.listed().at(at.view().at.todo ?? 0);
  expect(row).toMatchObject({ name: 'mind', more: expect.stringMatching(/^right caliper: Push the piston/) });
});
it('minds nothing of an area that is as found', async () => {
  const at = await brakes('area right caliper');
  expect(mindedBack(at.bench.desk())).toEqual([]);
});
it('offers the note that the pistons were pushed back where a caliper is off, and once noted no more', async () => {
  const at = await brakes(...caliperOff);
  expect(shown(at)).toContain('& pistons pushed back');
  await at.press('B', '&');
  expect(at.state().answer).toMatchObject({ kind: 'taken', text: 'pistons pushed back at right caliper' });
  expect(shown(at)).not.toContain('& pistons pushed back');
  const { length } = at.state().ledger.lines;
  await at.press('&');
  expect(at.state().ledger.lines.length).toBe(length);
  // Of an area without a plan its name says what it is; typed, it is the same.
  const free = await begun(...caliperOff);
  await free.press('/', ...lettersOf('pistons pushed back'), 'enter');
  expect(free.state().answer).toMatchObject({ kind: 'taken', text: 'pistons pushed back at right caliper' });
});
it('says of it why it is not at hand where no caliper is off', async () => {
  const at = await begun('area cover', 'off 1');
  await at.press('B', '&');
  expect(at.state().answer).toMatchObject({ kind: 'refused', text: 'no caliper of a brake is off at cover' });
  const help = helpRows(at.bench.desk(), 'build', at.bench.store.getState().keymap);
  expect(help.find(({ key }) => key === 'pistons')).toMatchObject({ name: '&', mark: 'half' });
});
