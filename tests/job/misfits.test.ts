// What no call would write: entries that do not fit what is there, in a forged file or by a bug. They change nothing for
// the thing they do not fit, and stand in the way of the car.
import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/job/entry.ts';
import { type Bench, bench, m6, m8 } from './bench.ts';

const off = (on: Bench): string => {
  on.off('cover/1', m6);
  return on.own('cover/1');
};

const stories: [string, (on: Bench) => Entry][] = [
  [
    'taken from a hole it is not in',
    (on) => ({ kind: 'fastener-removed', hole: 'cover/2', fastener: off(on), to: 'tray:1' }),
  ],
  [
    'put into a hole that holds one',
    (on) => {
      const fastener = off(on);
      on.slack('cover/2', m6);
      return { kind: 'fastener-fitted', hole: 'cover/2', fastener, from: 'tray:1', spec: m6 };
    },
  ],
  [
    'put in from where it is not',
    (on) => ({ kind: 'fastener-fitted', hole: 'cover/1', fastener: off(on), from: 'tray:2', spec: m6 }),
  ],
  [
    'tightened where it is not',
    (on) => ({ kind: 'fastener-tightened', hole: 'cover/1', fastener: off(on), pass: 'final', last: true }),
  ],
  [
    'moved out of a hole',
    (on) => {
      on.slack('cover/1', m6);
      return { kind: 'fastener-moved', fastener: on.in('cover/1'), from: 'hole:cover/1', to: 'tray:1' };
    },
  ],
  ['moved into a hole', (on) => ({ kind: 'fastener-moved', fastener: off(on), from: 'tray:1', to: 'hole:cover/1' })],
  ['a part back that is not off', () => ({ kind: 'part-fitted', part: 'hose' })],
  ['a connection made that is not parted', () => ({ kind: 'connection-made', connection: 'plug' })],
  ['a temporary out that is not in', () => ({ kind: 'temporary-taken-out', temporary: 'rag' })],
  [
    'more from the box than is there',
    (on) => {
      on.call('fill-box', { name: 'bolt', spec: m6 });
      return { kind: 'box-moved', name: 'bolt', quantity: 2, to: 'owner' };
    },
  ],
  [
    'a finding closed that is none',
    () => ({ kind: 'finding-closed', finding: 'd9.1', at: 'vehicle', how: 'put right' }),
  ],
  [
    'found in a hole that was called',
    (on) => {
      off(on);
      return { kind: 'fastener-found', hole: 'cover/1', fastener: 'f99.1', spec: m8 };
    },
  ],
  [
    'left empty while it holds one',
    (on) => {
      on.slack('cover/1', m6);
      return { kind: 'hole-left-empty', hole: 'cover/1', who: 'Ann', because: 'so' };
    },
  ],
  ['a count read in a rotation nobody began', () => ({ kind: 'mark-read', drive: 'belt', mark: 'cam', teethOff: 0 })],
  ['opened a second time', () => ({ kind: 'job-opened', vehicle: { label: 'other' } })],
];

describe('what does not fit', () => {
  it.each(stories)('[X1] is an open point with its line, and holds the car: %s', (_, story) => {
    const on = bench();
    const entry = story(on);
    const n = on.forged(entry);
    expect(on.misfits()).toContain(n);
    expect(on.openAt(`line:${n}`)).toEqual(['misfit']);
    expect(on.refused('release', { who: 'Ann' })).toBe('X1 open-points');
  });

  it('[L1] the hole keeps what it holds, the fastener its whereabouts', () => {
    const on = bench();
    on.slack('cover/1', m6);
    const fastener = on.in('cover/1');
    on.forged({ kind: 'fastener-moved', fastener, from: 'hole:cover/1', to: 'owner' });
    expect(on.whereIs(fastener)).toBe('hole:cover/1');
    expect(on.in('cover/1')).toBe(fastener);
  });

  it('[L9] lost from its hole, it is out of the hole and everywhere gone', () => {
    const on = bench();
    on.slack('cover/1', m6);
    const fastener = on.in('cover/1');
    on.forged({ kind: 'fastener-lost', fastener, from: 'hole:cover/1', reaches: true, where: 'under the bench' });
    expect(on.misfits()).toEqual([]);
    expect(on.level('cover/1')).toBe('empty');
    expect(on.because('hole-open', 'hole:cover/1')).toBe('off');
    expect(on.open('lost')).toEqual([`lost fastener:${fastener}`]);
    expect(on.open('books')).toEqual([]);
  });
});
