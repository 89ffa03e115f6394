// The owner's say with when and how it was asked, and old parts with their verdict, the marking on them and their age.
import { describe, expect, it } from 'vitest';
import { sheetCsv } from '../../src/sheet/csv.ts';
import { markingText } from '../../src/sheet/old-part.ts';
import { sheetPage } from '../../src/sheet/page/page.ts';
import { sheetText } from '../../src/sheet/text.ts';
import { newStory, type Story, unwrapped } from './bench-story.ts';

const belt = (said: object): Story =>
  newStory()
    .call('open-job', { label: 'car' })
    .call('order-service', {
      service: 'belt',
      declares: [{ kind: 'part-declared', part: 'timing belt', heldBy: [], renew: true }],
    })
    .call('fill-box', { name: 'new belt', replaces: 'timing belt' })
    .call('remove-part', { part: 'timing belt' })
    .call('judge-part', { part: 'timing belt', ...said })
    .call('replace-part', { part: 'timing belt' });
const page: typeof sheetPage = (...of) => sheetPage(...of).replace(/<wbr>|<\/?span[^>]*>/g, '');
const forms = { text: sheetText, page, table: sheetCsv };

it('[T3] the owner reads no empty column of old parts, and of no part twice what it is called', () => {
  const s = newStory()
    .call('open-job', { label: 'car' })
    .call('declare', { entries: [{ kind: 'part-declared', part: 'timing belt', heldBy: [], renew: true }] })
    .call('fill-box', { name: 'new timing belt', replaces: 'timing belt' })
    .call('remove-part', { part: 'timing belt' })
    .call('judge-part', { part: 'timing belt', verdict: 'worn' })
    .call('replace-part', { part: 'timing belt' });
  expect(page(s.ledger, { now: s.now, copy: 'workshop' })).toContain('what became of the old ones');
  const owners = page(s.ledger, { now: s.now, copy: 'owner' });
  expect(owners).not.toContain('new timing belt');
  expect(unwrapped(sheetText(s.ledger, { now: s.now }))).toContain('new: timing belt, 2026-');
});

describe.each(Object.entries(forms))('on the %s', (_, form) => {
  it('[T3] an old part has its verdict, why, and its age by the marking typed', () => {
    const s = belt({ verdict: 'cracked', because: 'at the teeth', marking: '2319' });
    const told = unwrapped(form(s.ledger, { now: s.now, intervals: { 'timing belt': { months: 60 } } }));
    // Four figures as on tyres, week and year, or year and week as ISO 8601 counts: both are said.
    expect(told).toMatch(
      /the old one: cracked \(at the teeth\), marked 2319: made 2019-06-0\d to 2023-05-1\d, 3 years 6 months to 7 years 5 months old; perhaps past its 60 months \(as entered\)/,
    );
  });

  it('[U2] the workshop reads what was called against the car and struck again, the owner does not', () => {
    const s = newStory()
      .call('open-job', { label: 'car' })
      .call('make-finding', { at: 'area:mount', what: 'cracked' })
      .call('make-finding', { at: 'area:mount', what: 'rusty' })
      .call('strike', { lines: [2] });
    const told = (copy: 'owner' | 'workshop') => unwrapped(form(s.ledger, { now: s.now, copy }));
    expect(told('workshop')).toMatch(/mount: cracked/);
    expect(told('owner')).not.toMatch(/cracked/);
  });

  it('[T4] of a service called done the owner reads what was not renewed, and that nothing of it was touched', () => {
    const ordered = () =>
      newStory()
        .call('open-job', { label: 'car' })
        .call('order-service', {
          service: 'belt',
          declares: [{ kind: 'part-declared', part: 'timing belt', heldBy: [], renew: true }],
          brings: ['part:timing belt'],
        });
    const told = (s: Story) => unwrapped(form(s.call('service-done', { service: 'belt' }).ledger, { now: s.now }));
    const notRenewed = /not renewed: timing belt/;
    const nothing = /nothing of it was taken off/;
    const untouched = told(ordered());
    expect(untouched).toMatch(notRenewed);
    expect(untouched).toMatch(nothing);
    const oldOnAgain = ordered().call('remove-part', { part: 'timing belt' }).call('fit-part', { part: 'timing belt' });
    const old = told(oldOnAgain);
    expect(old).toMatch(notRenewed);
    expect(old).not.toMatch(nothing);
    const done = told(
      ordered()
        .call('fill-box', { name: 'new belt', replaces: 'timing belt' })
        .call('remove-part', { part: 'timing belt' })
        .call('replace-part', { part: 'timing belt' }),
    );
    expect(done).not.toMatch(notRenewed);
  });

  it('[F3] the owner was asked when and how, and said what', () => {
    const s = newStory().call('open-job', { label: 'car' }).call('make-finding', { at: 'area:mount', what: 'cracked' });
    s.call('tell-owner', { finding: 'd2.1', said: 'wait', how: 'by telephone' }, { who: 'Ola' });
    s.call('tell-owner', { finding: 'd2.1', said: 'go on', how: 'in person' }, { who: 'Kim' });
    const told = unwrapped(form(s.ledger, { now: s.now }));
    expect(told).toMatch(/by telephone/);
    expect(told).toMatch(/2026-11-23 08:02/);
    expect(told).toContain('and said: wait');
    // Told twice, both are kept, in their order.
    expect(told.indexOf('and said: go on')).toBeGreaterThan(told.indexOf('and said: wait'));
    expect(told).toMatch(/in person/);
    expect(told).toMatch(/2026-11-23 08:03/);
    expect(told).toContain('Ola');
  });
});

it('a part off and judged has the same, and one without a marking says nothing of its age', () => {
  const s = newStory()
    .call('open-job', { label: 'car' })
    .call('declare', { entries: [{ kind: 'part-declared', part: 'hose', heldBy: [] }] })
    .call('remove-part', { part: 'hose' })
    .call('judge-part', { part: 'hose', verdict: 'aged', marking: '2024-11-23' });
  expect(unwrapped(sheetText(s.ledger, { now: s.now }))).toContain(
    'OFF: hose; the old one: aged, marked 2024-11-23: made 2024-11-23, 2 years old',
  );
  const plain = belt({ verdict: 'worn' });
  expect(sheetText(plain.ledger, { now: plain.now })).not.toContain('marked');
});

describe('the marking of an old part', () => {
  const on = '2026-11-25';
  // Common practice, no source: an interval counts from the day of making where nothing better is known.
  it.each([
    ['2024-11-25', 24, 'past its 24 months'],
    ['2024-11-26', 24, 'within its 24 months'],
    ['2019', 84, 'perhaps past its 84 months'],
  ])('%s against %i months: %s', (marking, months, said) => {
    expect(markingText('filter', marking, on, { filter: { months } })).toContain(said);
  });
  it('is told as typed where it is no date, or no interval is known', () => {
    expect(markingText('hose', 'KX-7', on, {})).toBe('marked KX-7');
    expect(markingText('hose', '2026-11-20', on, {})).toBe('marked 2026-11-20: made 2026-11-20, less than a month old');
    expect(markingText('timing belt', '2020', on, {})).not.toContain('its');
  });
});
