// What a key is asked once is asked of a line that was typed as well, in the same words; lines that are read have nobody to
// answer, and are told what was minded.
import { expect, it } from 'vitest';
import { leavingRows } from '../../src/calls/lists/leaving.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { sceneOf, textOf } from '../screen/scene.ts';
import { type AtTheBench, lettersOf, newJob } from './at-the-bench.ts';

/** Two off; the thread of the second is stripped. */
async function stripped(): Promise<AtTheBench> {
  const at = await newJob();
  for (const line of ['area cover', 'bolt hex 10 M6x25', 'off 1', 'off 2', 'holes 2', 'finding at 2 thread stripped'])
    at.session().runLine(line);
  return at;
}
const typed = (at: AtTheBench, line: string) => at.press('/', ...lettersOf(line), 'enter');
const answer = (at: AtTheBench) => at.state().answer;
const closed = (at: AtTheBench) => stateOf(at.state().ledger, 'finding', 'd5.1')?.closed?.how;
const lines = (at: AtTheBench) => at.state().ledger.lines.length;
const shown = (at: AtTheBench) =>
  textOf(sceneOf(at.view(), { desk: at.bench.desk(), session: at.state() })).replace(/\s+/g, ' ');

it('[F3] asks a typed line what its key is asked, keeps what is left of it, and takes it by Enter again', async () => {
  const byKey = await stripped();
  await byKey.press('F', 'p');
  const asked = answer(byKey);
  expect(asked).toMatchObject({ kind: 'asked' });

  const at = await stripped();
  at.pace.stepMs = 5;
  await typed(at, 'tools out; put right d5.1; odometer 12');
  expect(answer(at)).toEqual(asked);
  expect(at.view().asking).toMatchObject({
    typed: 'put right d5.1; odometer 12',
    why: 'asked once: Enter again means it',
  });
  expect(shown(at)).toContain('Enter again calls it put right all the same');
  expect(closed(at)).toBeUndefined();
  await at.press('enter');
  expect(answer(at)).toMatchObject({ kind: 'asked', tooQuick: true });
  at.pace.stepMs = 60_000;
  await at.press('enter');
  expect(closed(at)).toBe('put right');
  expect(stateOf(at.state().ledger, 'vehicle', 'vehicle')?.odometer?.distance).toBe(12);
  expect(at.view().asking).toBeUndefined();
});
it('says no key of what was asked before over a line that was opened since', async () => {
  const at = await stripped();
  await at.press('F', 'p');
  expect(shown(at)).toContain('p again calls it put right all the same');
  await at.press('/');
  expect(shown(at)).toContain('nothing was called done at cover 2 since it was found: thread stripped.');
  expect(shown(at)).not.toContain('again calls it');
});
it('is asked by its key where the line was left', async () => {
  const at = await stripped();
  await typed(at, 'put right d5.1');
  await at.press('escape');
  expect(closed(at)).toBeUndefined();
  expect(shown(at)).not.toContain('Enter again');
  await at.press('F', 'p', 'p');
  expect(closed(at)).toBe('put right');
});
it('[F3] asks of a call that a list proposes', async () => {
  const at = await stripped();
  await at.press('L');
  const rows = leavingRows(at.bench.desk());
  const row = rows.slice(0, rows.length).findIndex(({ key }) => key.includes('finding'));
  await at.press(...Array.from({ length: row }, () => 'down'), 'space');
  expect(at.view().asking?.typed).toBe('repair cover 2 depth ');
});
it('[X3] asks before the car leaves, whoever signs it', async () => {
  const at = await newJob();
  for (const line of ['tools out', 'odometer 12']) at.session().runLine(line);
  const before = lines(at);
  await typed(at, 'release by Io Marsh');
  expect(at.view().asking?.title).toBe('The car leaves: release it? Signed by Io Marsh.');
  await at.press('escape');
  expect(lines(at)).toBe(before);
  await typed(at, 'release by Io Marsh');
  await at.press('2');
  expect(lines(at)).toBe(before + 1);
  expect(stateOf(at.state().ledger, 'vehicle', 'vehicle')?.releasedAt).toBe(before + 1);
});
it('minds it where lines are read and nobody is there', async () => {
  const at = await stripped();
  expect(at.session().runLine('put right d5.1')).toMatchObject({
    kind: 'taken',
    text: expect.stringContaining('Mind: nothing was called done at cover 2 since it was found: thread stripped'),
  });
});
