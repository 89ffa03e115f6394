// What earlier jobs left of a vehicle stands in a block of its own when a job opens on it.
import { expect, it } from 'vitest';
import { rowById } from '../../src/calls/table.ts';
import { greetingOf } from '../../src/session/opening.ts';
import { createSession } from '../../src/session/session.ts';
import { atTheBench } from './at-the-bench.ts';

it('greets with it where the job is new, and says only in short beside the answer that it is known', async () => {
  const before = ['here before, 1 job', 'left as it was: cover 2: thread rough (declined)'];
  const at = await atTheBench([]);
  const session = createSession({ job: at.session().job, clock: at.session().now, reminders: () => before });
  const answer = session.run(rowById.get('open') as never, { label: 'van' }, 'key');
  expect(answer).toMatchObject({ text: expect.stringContaining('here before') });
  expect(answer).not.toMatchObject({ text: expect.stringContaining('thread rough') });
  expect(greetingOf(session, undefined)).toMatchObject({ greeting: before, greetingHead: 'This vehicle is known:' });
});

it('greets with nothing on a vehicle nobody knows', async () => {
  const at = await atTheBench([]);
  at.session().runLine('job "van"');
  expect(greetingOf(at.session(), undefined).greeting).toBeUndefined();
});
