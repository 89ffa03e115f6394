// The line that stands on the terminal once the program is left.
import { expect, it } from 'vitest';
import { asLeft } from '../../src/commands/as-left.ts';
import type { Stamp } from '../../src/job/line.ts';
import { playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { demoDesk } from '../screen/scene.ts';
import { newStory } from '../sheet/bench-story.ts';

const places = { jobs: '/data/jobs' };
const red = { path: '/data/jobs/red-estate.countback.jsonl', looking: false };

it('[T8] says where it is saved, what is off and hangs, and how to come back', () => {
  expect(asLeft(demoDesk(), red, places)).toMatch(
    /^.+: saved in \/data\/jobs\/red-estate\.countback\.jsonl; \d+ off, \d+ slack, .*\d+ holes open; lower carrier face: the bead is void: .*\. Back to it: countback open red-estate$/,
  );
});
it('[T8] says what cures and till when, and for whom the job waits', () => {
  const { ledger } = playLines(upTo(scriptLines('reference-planned.calls'), 'start'));
  const last = ledger.lines.all.at(-1) as Stamp;
  expect(asLeft({ ...demoDesk(), ledger, now: last }, red, places)).toMatch(
    /; joint sealant on cam cover face is curing, to (fill|run|leave): ready [A-Z][a-z]+day \d\d:\d\d, .* left[;.]/,
  );
  const waits = newStory()
    .call('open-job', { label: 'estate' })
    .call('wait', { who: 'parts', because: 'on order', until: 'Friday 2031-03-07' });
  expect(asLeft({ ...demoDesk(), ledger: waits.ledger }, red, places)).toContain(
    '; waiting for parts: on order, until Friday 2031-03-07. Back',
  );
});
it('names a job that lies elsewhere by its file, and says that one was only looked at', () => {
  const said = asLeft(demoDesk(), { path: '/mnt/a stick/red.countback.jsonl', looking: true }, places);
  expect(said).toContain(': only looked at; ');
  expect(said).toMatch(/Back to it: countback open "\/mnt\/a stick\/red\.countback\.jsonl"$/);
});
