// The list of what is open: each thing once, and a way that is of another place is said to come first.
import { expect, it } from 'vitest';
import { leavingRows } from '../../src/calls/lists/leaving.ts';
import { newJob } from '../session/at-the-bench.ts';

async function listedAfter(...lines: readonly string[]): Promise<string[]> {
  const at = await newJob();
  for (const line of lines) {
    const answer = at.session().runLine(line);
    if (answer.kind === 'refused') throw new Error(`${line}: ${answer.text}`);
  }
  return leavingRows(at.bench.desk())
    .slice(0, 50)
    .map(({ text, end }) => `${text} > ${end}`);
}

it('[X5] tells a hole with a working fastener in it once', async () => {
  const rows = await listedAfter('area pulley', 'off 1', 'holes 1', 'working 1');
  expect(rows.filter((row) => row.startsWith('pulley 1:'))).toEqual([
    'pulley 1: a working fastener is in it > off pulley 1 to scrap',
  ]);
});
it('[X5] says of a finding that what its way is about comes first, where that is of another place', async () => {
  const rows = await listedAfter(
    'area cover',
    'bolt hex 8 M6x35',
    'off 1',
    'wrong one 2 as bolt hex 8 M6x40',
    'holes 2',
    'face cover face pressed by 1-2 under cover with a bead',
  );
  expect(rows.find((row) => row.startsWith('d'))).toMatch(
    /^d\S+: cover 2: wrong fastener in it; first > clean cover face/,
  );
});
