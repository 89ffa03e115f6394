// A photograph is noted by its file, the digest of its bytes and its place; the file itself is left where it lies.
import { createHash } from 'node:crypto';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { standardKeymap } from '../../src/calls/bindings.ts';
import { listedOn } from '../../src/calls/lists.ts';
import { stateOf } from '../../src/job/ledger.ts';
import { atTheBench } from './at-the-bench.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'photo-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const opened = async () => {
  const at = await atTheBench([]);
  const { session } = at;
  for (const line of ['job "van"', 'area "cam cover"', 'bolt hex 8', 'off 7']) session().runLine(line);
  return at;
};

it('notes a photo by file, digest and size at the place it is of', async () => {
  const { session, state } = await opened();
  const file = join(folder, 'head 7.jpg');
  await writeFile(file, 'not really a picture');
  const answer = session().runLine(`photo "${file}" at cam cover 7 shows thread torn out`);
  expect(answer).toMatchObject({ kind: 'taken', text: 'photo of cam cover 7: head 7.jpg, thread torn out' });
  // Node's own hash of the same bytes; the command sha256sum gives the same.
  const sha256 = createHash('sha256').update('not really a picture').digest('hex');
  expect(stateOf(state().ledger, 'vehicle', 'vehicle')?.photos).toEqual([
    { n: 3, file, sha256, bytes: 20, at: 'hole:cam cover/7', words: 'thread torn out' },
  ]);
  expect(listedOn('findings', 'strip', session().desk(), standardKeymap).at(-1)).toMatchObject({
    name: 'photo',
    text: 'cam cover 7: head 7.jpg',
    leads: 'hole:cam cover/7',
  });
});

it('takes the area in use where no place is said, and a place that is said after the file', async () => {
  const { session, state } = await opened();
  const file = join(folder, 'a.jpg');
  await writeFile(file, 'a');
  session().runLine(`photo ${file}`);
  session().runLine(`photo ${file} at vehicle`);
  expect(stateOf(state().ledger, 'vehicle', 'vehicle')?.photos.map(({ at }) => at)).toEqual([
    'area:cam cover',
    'vehicle',
  ]);
});

it.each([
  ['nothing.jpg', 'there is no such file'],
  ['empty.jpg', 'the photo is empty'],
  ['', 'this is no file'],
])('writes nothing of a photo that cannot be looked at: "%s"', async (name, why) => {
  const { session, state } = await opened();
  await writeFile(join(folder, 'empty.jpg'), '');
  expect(session().runLine(`photo "${join(folder, name)}"`)).toMatchObject({
    kind: 'refused',
    text: expect.stringContaining(why),
  });
  expect(state().ledger.lines.length).toBe(2);
});
