// A paste whose end is lost: Escape leads out of it, and the keys after it are keys again.
import { EventEmitter } from 'node:events';
import type { ReadStream } from 'node:tty';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { keysOf } from '../../src/commands/keys.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

function keyboard() {
  const heard: string[] = [];
  const stdin = Object.assign(new EventEmitter(), { resume: () => undefined, pause: () => undefined });
  const told = { key: (name: string) => heard.push(name), paste: () => heard.push('a paste') };
  keysOf(stdin as unknown as ReadStream, () => undefined)(told);
  return { heard, send: (text: string) => stdin.emit('data', Buffer.from(text)) };
}

it('Escape ends a paste that never ends, however fast the keys come after it', () => {
  const { heard, send } = keyboard();
  send('\u001b[200~half a paste');
  vi.advanceTimersByTime(300);
  send('\u001b');
  vi.advanceTimersByTime(60);
  send('q');
  expect(heard).toEqual(['a paste', 'q']);
});

it('a paste that is parted at the Escape of its end is one paste all the same', () => {
  const { heard, send } = keyboard();
  send('\u001b[200~half');
  send('\u001b');
  vi.advanceTimersByTime(20);
  send('[201~q');
  expect(heard).toEqual(['a paste', 'q']);
});
