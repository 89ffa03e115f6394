// The line that stands on the terminal once the program is left.
import { expect, it } from 'vitest';
import { asLeft } from '../../src/commands/as-left.ts';
import type { Stamp } from '../../src/job/line.ts';
import { fault } from '../../src/store/fault.ts';
import { playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { demoDesk } from '../screen/scene.ts';
import { newStory } from '../sheet/bench-story.ts';

const places = { jobs: '/data/jobs' };
const red = { path: '/data/jobs/red-estate.countback.jsonl', mode: 'write' } as const;

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
it('names a job that lies elsewhere by its file', () => {
  const said = asLeft(demoDesk(), { ...red, path: '/mnt/a stick/red.countback.jsonl' }, places);
  expect(said).toMatch(/Back to it: countback open "\/mnt\/a stick\/red\.countback\.jsonl"$/);
});
it('[D4] says that one was only looked at, and names no way that would write to it', () => {
  const looked = { ...red, mode: 'look' } as const;
  expect(asLeft(demoDesk(), looked, places)).toContain(': only looked at; ');
  expect(asLeft(demoDesk(), looked, places)).not.toContain('countback open');
  const path = '/data/jobs/copies/red-estate.2031-03-03.countback.jsonl';
  const copy = { ...looked, path, whyLook: fault('copy', 'a copy', path, 'bring it back') };
  expect(asLeft(demoDesk(), copy, places)).toMatch(new RegExp(`To look again: countback open ${path}$`));
});
