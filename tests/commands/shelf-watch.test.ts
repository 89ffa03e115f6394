// A folder of jobs that another window changes while the shelf stands there.
import { expect, it } from 'vitest';
import { changedSince } from '../../src/commands/shelf-watch.ts';

it('tells of a change once, and of none at the first look', async () => {
  let folder = 'one';
  const isChanged = changedSince(async () => folder);
  const seen = [await isChanged(), await isChanged()];
  folder = 'one, two';
  seen.push(await isChanged(), await isChanged());
  expect(seen).toEqual([false, false, true, false]);
});
