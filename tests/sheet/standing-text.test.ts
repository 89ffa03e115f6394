// Open points in words: one a line, each with its place, why, and the next call as the table of calls would say it.
import { expect, it } from 'vitest';
import { openPoints } from '../../src/job/open-points.ts';
import type { Said } from '../../src/job/said.ts';
import { toldOnce } from '../../src/job/told-once.ts';
import { openPointLine, standingText } from '../../src/sheet/standing-text.ts';
import type { Story } from './bench-story.ts';
import { builtJob, releasedJob, strippedJob } from './jobs.ts';

const wordsOf = ({ verb, ...about }: Said) => `${verb} ${Object.values(about).join(' ')}`.trim();
const standing = (s: Story) => standingText(s.ledger, { now: s.now, wordsOf }).trimEnd().split('\n');

it('X5: each open point is one line with its place, why, and the next call in words', () => {
  const s = builtJob();
  const [head, ...lines] = standing(s);
  const points = toldOnce(s.ledger, openPoints(s.ledger, s.now));
  expect(head).toBe(`NOT RELEASED, ${points.length} open points`);
  expect(lines).toHaveLength(points.length);
  expect(lines).toContain('- mount 1: off -> fit mount/1');
  // The second look it wants as well is told once it is closed.
  expect(lines.filter((line) => line.startsWith('- mount 1:'))).toHaveLength(1);
  expect(lines).toContain('- connection bottom hose: parted -> make-connection bottom hose');
  expect(lines.find((line) => line.includes('is curing'))).toMatch(
    /^- face pump face: grey sealant is curing, ready \w+day \d\d:\d\d/,
  );
  // What the road test waits for comes before waiving it.
  expect(lines.find((line) => line.includes('no road test'))).not.toContain('waive');
});

it('S7: says what the clock is called right for, where it is not said already', () => {
  const next = { verb: 'confirm-clock' };
  const line = (code: 'road-test' | 'bead-curing') =>
    openPointLine({ code, at: 'vehicle', because: 'x', next }, wordsOf);
  expect(line('road-test')).toBe('the car: x -> confirm-clock, for what cures before it');
  expect(line('bead-curing')).toBe('the car: x -> confirm-clock');
  // What is of the whole car is to it what comes first.
  const oil = openPointLine(
    { code: 'road-test', at: 'vehicle', because: 'x', next: { verb: 'see-oil-level' } },
    wordsOf,
  );
  expect(oil).toBe('the car: x; first -> see-oil-level');
});

it('says so where no call is free', () => {
  expect(openPointLine({ code: 'books', at: 'vehicle', because: 'the two books differ' }, wordsOf)).toBe(
    'the car: the two books differ -> no call is free towards it yet',
  );
});

it('says of each sort of place what it is', () => {
  const placed = (at: string) => openPointLine({ code: 'lost', at, because: 'x' }, wordsOf).split(':')[0];
  expect(['hole:cam cover/7 nut', 'tray:2', 'finding:d3.1', 'box:new pump', 'line:5', 'vehicle'].map(placed)).toEqual([
    'cam cover 7 nut',
    'tray 2',
    'finding d3.1',
    'parts box, new pump',
    'line 5',
    'the car',
  ]);
});

it('tells a released, a falsely released and a left job apart', () => {
  expect(standing(releasedJob())).toEqual(['RELEASED by Ola on Wednesday 2026-11-25 07:28, line 89']);
  const forged = standing(builtJob().forged({ kind: 'released', who: 'Mallory' }));
  expect(forged[0]).toMatch(/^NOT RELEASED, \d+ open points$/);
  expect(forged[1]).toMatch(/^A RELEASE THAT WAS NONE: said by Mallory/);
  const left = standing(strippedJob().call('leave-unreleased', { who: 'Ola', because: 'towed' }));
  expect(left[0]).toMatch(/^LEFT UNRELEASED: NOT FIT TO DRIVE, \d+ open points$/);
});
