// One line's value, checked in two ways: as the schemas stand early in a job, by code made from them later.
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

describe.each([1, 299, 300, 20_000])('[V1 D4] line %i', (n) => {
  it('is read', () => {
    expect(readLine(line(n))).toEqual({ ok: true, line: line(n) });
  });
  it.each([
    ['a field nobody knows', { warp: 1 }],
    ['a field nobody knows in an entry', { entries: [{ kind: 'note-made', words: 'dry', warp: 1 }] }],
    ['an entry nobody knows', { entries: [{ kind: 'warped' }] }],
  ])('is newer with %s', (_, more) => {
    expect(readLine(line(n, more))).toMatchObject({ ok: false, newer: true });
  });
  it.each([
    ['a field of another kind', { atMs: 'noon' }],
    ['no entry', { entries: [] }],
    ['an entry without its words', { entries: [{ kind: 'note-made' }] }],
    ['a caller nobody knows', { by: 'radio' }],
  ])('is no line with %s', (_, more) => {
    expect(readLine(line(n, more))).toMatchObject({ ok: false, newer: false, what: expect.any(String) });
  });
});
