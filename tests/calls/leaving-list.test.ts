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
it('[X5] says that one is bought for a hole first where another thing waits for it', async () => {
  const rows = await listedAfter('area caliper', 'bolt hex 13 M8x25', 'off 1', 'holes 1', 'damaged 1');
  expect(rows.filter((row) => row.includes('> box')).map((row) => row.split(' > ')[0])).toEqual([
    'caliper 1: off',
    'brake pedal not called firm; first',
    'no road test, no reason why not; first',
  ]);
});
it('[F5] leads from a stripped thread to its repair, and to put right once it was chased or is whole', async () => {
  const found = ['area cover', 'bolt hex 10 M6x25', 'off 1', 'off 2', 'holes 2', 'finding at 2 thread stripped'];
  const rows = async (...more: string[]) => (await listedAfter(...found, ...more)).filter((row) => /cover 2/.test(row));
  expect((await rows())[0]).toMatch(/> repair cover 2 depth …$/);
  expect((await rows('repair 2 depth 22'))[0]).toMatch(/> repair cover 2 drilled …$/);
  expect((await rows('chased 2')).join()).toContain('> put right d5.1');
  // What is said of the head is of the bolt.
  const head = await listedAfter(...found.slice(0, -1), 'finding at 2 head stripped');
  expect(head.join()).toContain('> put right d5.1');
});
