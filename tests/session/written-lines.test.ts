// What a session writes can be read again: a line that could not would close the whole job on its next opening.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { readLine } from '../../src/job/line.ts';
import { machineClock } from '../../src/session/clock.ts';
import { createSession } from '../../src/session/session.ts';
import { createJob, openJob } from '../../src/store/open-job.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'written-lines-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

it('refuses what could not be read again, and writes nothing of it', async () => {
  const path = join(folder, 'van.countback.jsonl');
  await createJob(path, 'van');
  const open = () => openJob({ path, readLine });
  // Facing comes from several places; here it is what no area can be called.
  const session = createSession({ job: await open(), clock: machineClock(), facing: { area: 'front/left' } });
  expect(session.runLine('job "van"')).toMatchObject({
    kind: 'refused',
    text: expect.stringContaining('cannot be written down (facing.area'),
  });
  session.face({ area: 'front left' });
  expect(session.runLine('job "van"')).toMatchObject({ kind: 'taken', n: 1 });
  await session.close();
  const again = await open();
  expect(again.lines().map((line) => line.entries[0].kind)).toEqual(['job-opened']);
  await again.close();
});
