// One line's value, checked in two ways: as the schemas stand at first, by code made from them when many were read.
import { describe, expect, it } from 'vitest';
import { readLine } from '../../src/job/line.ts';

const line = (n: number, more: object = {}) => ({
  n,
  atMs: 0,
  zoneMin: 0,
  run: 1,
  awakeMs: 0,
  call: 'note',
  by: 'line',
  facing: {},
  entries: [{ kind: 'note-made', words: 'dry' }],
  ...more,
});

describe.each([
  ['as the schemas stand', true],
  ['by code made from them', false],
])('[V1 D4] a line, %s,', (_, jitless) => {
  const read = (value: unknown) => readLine(value, jitless);

  it('is read', () => {
    expect(read(line(7))).toEqual({ ok: true, line: line(7) });
  });
  it.each([
    ['a field nobody knows', { warp: 1 }],
    ['a field nobody knows in an entry', { entries: [{ kind: 'note-made', words: 'dry', warp: 1 }] }],
    ['an entry nobody knows', { entries: [{ kind: 'warped' }] }],
  ])('is newer with %s', (_, more) => {
    expect(read(line(7, more))).toMatchObject({ ok: false, newer: true });
  });
  it.each([
    ['a field of another kind', { atMs: 'noon' }],
    ['no entry', { entries: [] }],
    ['an entry without its words', { entries: [{ kind: 'note-made' }] }],
    ['a caller nobody knows', { by: 'radio' }],
  ])('is no line with %s', (_, more) => {
    expect(read(line(7, more))).toMatchObject({ ok: false, newer: false, what: expect.any(String) });
  });
});
