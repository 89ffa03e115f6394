// Where work goes on by itself, and the key for the next area, on a car that is worked on at two corners: what lies at the
// same corner goes before what lies across the car, and no area that has something left is out of reach.
import { describe, expect, it } from 'vitest';
import type { Desk } from '../../src/calls/desk.ts';
import { facedPast, nextArea, onwards } from '../../src/calls/next-area.ts';
import type { Entry } from '../../src/job/entry.ts';
import { newStory, type Story } from '../sheet/bench-story.ts';

/** The brakes of both sides were ordered before their links. */
const brakes = ['wheel', 'caliper', 'disc'];
const all = (...areas: string[]) => ['right', 'left'].flatMap((side) => areas.map((area) => `${side} ${area}`));
const areas = [...all(...brakes), ...all('link')];
const bolt = { kind: 'bolt', head: 'hex 15', thread: 'M12x1.5' } as const;
const behind = (front: string, ...those: string[]): Entry[] =>
  those.map((one) => ({ kind: 'behind-declared', front, behind: one, until: 'closed', from: 'plan' }));
const corner = (side: string): Entry[] => [
  { kind: 'part-declared', part: `${side} pads`, heldBy: [], renew: true },
  { kind: 'part-declared', part: `${side} shims`, heldBy: [] },
  ...behind(`area:${side} wheel`, `area:${side} caliper`, `area:${side} link`),
  ...behind(`area:${side} caliper`, `part:${side} pads`, `area:${side} disc`),
  ...behind(`part:${side} pads`, `part:${side} shims`),
];
const ordered = (): Story =>
  newStory()
    .call('open-job', { label: 'estate' })
    .call('declare', {
      entries: [
        ...areas.flatMap((area): Entry[] => [
          { kind: 'area-declared', area, planned: true, ...(area.endsWith('wheel') && { role: 'wheel' }) },
          { kind: 'hole-declared', hole: `${area}/1`, wants: bolt },
        ]),
        ...corner('right'),
        ...corner('left'),
      ],
    });
const off = (story: Story, ...some: string[]): Story =>
  some.reduce((to, area) => to.call('remove', { hole: `${area}/1`, to: 'tray:1' }), story);
const deskAt = ({ ledger, now }: Story, area?: string): Desk => ({
  ledger,
  facing: { tray: '1', spec: {}, ...(area !== undefined && { area }) },
  now,
  plans: () => [],
});
/** Area after area, as the key for the next one reaches them. */
function reached(desk: Desk, building: boolean, times: number): string[] {
  const way: string[] = [];
  let { facing } = desk;
  for (let i = 0; i < times; i++) {
    const next = nextArea({ ...desk, facing }, building);
    if (next === undefined) break;
    facing = { ...facing, ...facedPast({ ...desk, facing }, next) };
    way.push(next);
  }
  return way;
}

describe('taking apart', () => {
  it('goes through every area of a corner before it goes on across the car', () => {
    const story = ordered();
    const way = ['right wheel'];
    for (let at: string | undefined = 'right wheel'; at !== undefined; ) {
      off(story, at);
      at = onwards(false)(deskAt(story, at)).area;
      if (at !== undefined) way.push(at);
    }
    expect(way).toEqual(['right', 'left'].flatMap((side) => [...brakes, 'link'].map((area) => `${side} ${area}`)));
  });
  it('stays for what lies loose behind an area where a service is about it, one part behind the other', () => {
    const story = ordered().call('order-service', {
      service: 'pads',
      brings: all('pads', 'shims').map((p) => `part:${p}`),
    });
    off(story, 'right wheel', 'right link', 'right caliper');
    const next = () => onwards(false)(deskAt(story, 'right caliper')).area;
    expect(next()).toBe(undefined);
    story.call('remove-part', { part: 'right pads' });
    expect(next()).toBe(undefined);
    story.call('remove-part', { part: 'right shims' });
    expect(next()).toBe('right disc');
  });
  it('reaches every area that has something left by its key', () => {
    const story = off(ordered(), 'right wheel');
    const way = reached(deskAt(story, 'right wheel'), false, 7);
    expect(way.toSorted()).toEqual(areas.filter((area) => area !== 'right wheel').toSorted());
    expect(way.slice(0, 2)).toEqual(['right caliper', 'right link']);
  });
});

describe('the way back', () => {
  const apart = () => off(ordered(), ...areas);
  const closed = (story: Story, ...some: string[]): Story => {
    const calls = ['fit', 'tighten', 'tighten'];
    for (const area of some) for (const verb of calls) story.call(verb, { hole: `${area}/1` });
    return story;
  };
  it('goes on to what parts alone still keep waiting at the same corner, not to what is free across the car', () => {
    const story = closed(apart(), 'right link', 'left link', 'left disc');
    expect(onwards(true)(deskAt(story, 'left disc')).area).toBe('left caliper');
    for (const part of ['left pads', 'left shims']) story.call('remove-part', { part });
    // None of the new ones is there yet.
    expect(onwards(true)(deskAt(story, 'left disc')).area).toBe('right disc');
    story.call('fill-box', { name: 'new pads', replaces: 'left pads', quantity: 1 });
    expect(onwards(true)(deskAt(story, 'left disc')).area).toBe('left caliper');
  });
  it('[T1] closes a corner with its wheel before it goes on across the car', () => {
    const story = closed(apart(), 'left link', 'left disc', 'left caliper');
    expect(onwards(true)(deskAt(story, 'left caliper')).area).toBe('left wheel');
    expect(onwards(true)(deskAt(closed(story, 'left wheel'), 'left wheel')).area).toBe('right link');
  });
  it('reaches every area that has something left by its key, and each of them again', () => {
    const story = closed(apart(), 'left link', 'right link');
    const left = areas.filter((area) => !area.endsWith('link'));
    for (const from of left) {
      const way = reached(deskAt(story, from), true, 5);
      expect([from, ...way].toSorted()).toEqual(left.toSorted());
      expect(reached(deskAt(story, from), true, 11).slice(5).toSorted()).toEqual(left.toSorted());
    }
  });
});

it('[F3] stays where only put right is left of a finding, and goes on once that is called', () => {
  const story = off(ordered(), 'right link')
    .call('remove', { hole: 'right caliper/1', to: 'tray:2', wrong: 'odd' })
    .call('fill-box', { name: 'new one', spec: bolt })
    .call('fit', { hole: 'right caliper/1', box: 'new one' });
  for (const pass of ['snug', 'final']) story.call('tighten', { hole: 'right caliper/1', pass });
  const next = () => onwards(true)(deskAt(story, 'right caliper')).area;
  expect(next()).toBeUndefined();
  story.call('close-finding', { finding: 'd4.1', how: 'put right' });
  expect(next()).toBe('right link');
});

it('leads to what was slackened before in an area whose holes nobody counted, after those with more to come off', () => {
  const story = newStory().call('open-job', { label: 'estate' });
  story.call('slacken', { hole: 'hub/1', spec: { kind: 'nut', head: 'hex 30' } });
  story.call('remove', { hole: 'wheel/1', to: 'tray:1', spec: { kind: 'bolt', head: 'hex 17' } });
  story.call('count-holes', { area: 'wheel', count: 1 });
  expect(nextArea(deskAt(story, 'wheel'), false)).toBe('hub');
  story.call('count-holes', { area: 'hub', count: 1 });
  expect(nextArea(deskAt(story, 'wheel'), false)).toBeUndefined();
});
