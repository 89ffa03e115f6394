// The call that a refusal names: every refusal and every call of the table there is, and each way out is one that is said.
import { expect, it } from 'vitest';
import { rowById } from '../../src/calls/table.ts';
import { wayOut, waysNamed } from '../../src/calls/ways-out.ts';
import { closedJob, verbs } from '../../src/job/decide.ts';
import { partWay } from '../session/part-way.ts';

it('names refusals and calls that there are', () => {
  const codes = new Set([closedJob, ...[...verbs.values()].flatMap(({ guards }) => guards)].map(({ code }) => code));
  expect([...waysNamed.keys()].filter((code) => !codes.has(code))).toEqual([]);
  const calls = [...new Set([...waysNamed.values()].flat())];
  expect(calls.filter((call) => !rowById.has(call))).toEqual([]);
});

it('[O2] goes by the words where one refusal has several ways out, and names none where none is said', () => {
  expect(wayOut({ code: 'part-not-back', instead: 'put the new belt on' })).toBe('renewed');
  expect(wayOut({ code: 'part-not-back', instead: 'put bracket back' })).toBe('part-back');
  expect(wayOut({ code: 'trays-not-counted', instead: 'count again' })).toBe('count');
  expect(wayOut({ code: 'open-behind', instead: 'close cover 1 first' })).toBeUndefined();
});

it('[T6] is told with the refusal of a key', async () => {
  const at = await partWay('area crank pulley');
  at.session().runLine('area crank pulley');
  await at.press('L', 's');
  expect(at.state().answer).toMatchObject({ kind: 'refused' });
  const { refusal, by } = at.state().answer as { refusal: { code: string; instead: string }; by?: string };
  expect(by).toBe(wayOut(refusal));
  expect(by).toBeDefined();
});
