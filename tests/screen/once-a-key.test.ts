// When the screen is painted anew, with a clock that is turned by hand.
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { onceAKey, quickDiskMs } from '../../src/screen/once-a-key.ts';

let saving: boolean;
let painted: string[];
const start = () => {
  const once = onceAKey(() => saving);
  once.listen(() => painted.push(saving ? 'not yet saved' : 'saved'));
  return once;
};
const microtasks = () => Promise.resolve();

beforeEach(() => {
  vi.useFakeTimers();
  saving = false;
  painted = [];
});
afterEach(() => {
  vi.useRealTimers();
});

it('paints once for all that one key changed', async () => {
  const once = start();
  once.changed();
  once.changed();
  expect(painted).toEqual([]);
  await microtasks();
  expect(painted).toEqual(['saved']);
});

it('paints a call and "saved" in one frame where the disk is quick', async () => {
  const once = start();
  saving = true;
  once.changed();
  await microtasks();
  vi.advanceTimersByTime(quickDiskMs - 1);
  expect(painted).toEqual([]);
  saving = false;
  once.changed();
  await microtasks();
  expect(painted).toEqual(['saved']);
  vi.advanceTimersByTime(1000);
  expect(painted).toEqual(['saved']);
});

it('never waits for a slow disk', async () => {
  const once = start();
  saving = true;
  once.changed();
  await microtasks();
  vi.advanceTimersByTime(quickDiskMs);
  expect(painted).toEqual(['not yet saved']);
  saving = false;
  once.changed();
  await microtasks();
  expect(painted).toEqual(['not yet saved', 'saved']);
});

it('does not let a hand that goes on pressing put the painting off', async () => {
  const once = start();
  saving = true;
  for (let ms = 0; ms < quickDiskMs; ms += 1) {
    once.changed();
    await microtasks();
    vi.advanceTimersByTime(1);
  }
  expect(painted).toEqual(['not yet saved']);
});

it('tells nobody who has gone', async () => {
  const once = onceAKey(() => false);
  const gone = once.listen(() => painted.push('seen'));
  gone();
  once.changed();
  await microtasks();
  expect(painted).toEqual([]);
});
