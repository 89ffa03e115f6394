// What stands on the terminal once the program is left.
import { expect, it } from 'vitest';
import { asLeft } from '../../src/commands/as-left.ts';
import { startedAs } from '../../src/commands/started-as.ts';
import type { Stamp } from '../../src/job/line.ts';
import { fault } from '../../src/store/fault.ts';
import { playLines, scriptLines, upTo } from '../jobs/lines.ts';
import { demoDesk } from '../screen/scene.ts';
import { newStory } from '../sheet/bench-story.ts';

const places = { jobs: '/data/jobs' };
/** However wide the terminal is. */
const onOneRow = (...of: Parameters<typeof asLeft>) => asLeft(...of).replace(/\s+/g, ' ');
const red = { path: '/data/jobs/red-estate.countback.jsonl', mode: 'write' } as const;

it('[T8] says where it is saved, what is off and hangs, and how to come back', () => {
  expect(onOneRow(demoDesk(), red, places)).toMatch(
    /^.+: saved in \/data\/jobs\/red-estate\.countback\.jsonl; \d+ off, \d+ slack, .*\d+ holes open; lower carrier face: the bead is void: .*\. Back to it: countback open red-estate$/,
  );
});
it('[T8] says what cures and till when, and for whom the job waits', () => {
  const { ledger } = playLines(upTo(scriptLines('reference-planned.calls'), 'start'));
  const last = ledger.lines.all.at(-1) as Stamp;
  expect(onOneRow({ ...demoDesk(), ledger, now: last }, red, places)).toMatch(
    /; joint sealant on cam cover face is curing, to (fill|run|leave): ready [A-Z][a-z]+day \d\d:\d\d, .* left[;.]/,
  );
  const waits = newStory()
    .call('open-job', { label: 'estate' })
    .call('wait', { who: 'parts', because: 'on order', until: 'Friday 2031-03-07' });
  expect(onOneRow({ ...demoDesk(), ledger: waits.ledger }, red, places)).toContain(
    '; waiting for parts: on order, until Friday 2031-03-07. Back',
  );
});
it('names a job that lies elsewhere by its file', () => {
  const said = onOneRow(demoDesk(), { ...red, path: '/mnt/a stick/red.countback.jsonl' }, places);
  expect(said).toMatch(/Back to it: countback open "\/mnt\/a stick\/red\.countback\.jsonl"$/);
});
it('[D4] says that one was only looked at, and names no way that would write to it', () => {
  const looked = { ...red, mode: 'look' } as const;
  expect(onOneRow(demoDesk(), looked, places)).toContain(': only looked at; ');
  expect(onOneRow(demoDesk(), looked, places)).not.toContain('countback open');
  const path = '/data/jobs/copies/red-estate.2031-03-03.countback.jsonl';
  const copy = { ...looked, path, whyLook: fault('copy', 'a copy', path, 'bring it back') };
  expect(onOneRow(demoDesk(), copy, places)).toMatch(new RegExp(`To look again: countback open ${path}$`));
});
it('breaks no word and no command at the end of a row', () => {
  for (const columns of [60, 80, 120]) {
    const rows = asLeft(demoDesk(), red, places, columns).split('\n');
    expect(rows.every((row) => row.length <= columns)).toBe(true);
    expect(rows.some((row) => row.endsWith('countback open red-estate'))).toBe(true);
  }
});
it('names the way back as the program is called in the shell it was started from', () => {
  const npm = { npm_package_name: 'countback' };
  expect(startedAs({})).toBe('countback');
  expect(startedAs({ npm_package_name: 'elsewhere', npm_lifecycle_event: 'start' })).toBe('countback');
  expect(startedAs({ ...npm, npm_command: 'exec', npm_lifecycle_event: 'npx' })).toBe('npx countback');
  const program = startedAs({ ...npm, npm_command: 'start', npm_lifecycle_event: 'start' });
  expect(onOneRow(demoDesk(), red, places, 80, program)).toMatch(/Back to it: npm start -- open red-estate$/);
});
