// Keys of a terminal by their names, one at a time however they arrive; text pasted at once stays together.
import { emitKeypressEvents, type Key } from 'node:readline';
import type { ReadStream } from 'node:tty';

const names: Record<string, string> = { return: 'enter', pageup: 'page-up', pagedown: 'page-down', linefeed: 'enter' };
const named = new Set(['up', 'down', 'left', 'right', 'escape', 'backspace', 'delete', 'tab', 'space', 'home', 'end']);

/** The name of a key, or undefined for one that means nothing here: an unknown sequence, an Alt key. */
export function keyName(text: string | undefined, key: Key): string | undefined {
  if (key.meta && key.name !== 'escape') return undefined;
  const name = key.name ?? '';
  if (key.ctrl) return name === 'c' || name === 'z' ? `ctrl+${name}` : undefined;
  if (names[name]) return names[name];
  if (named.has(name)) return name;
  const sequence = text ?? key.sequence ?? '';
  return [...sequence].length === 1 && sequence >= ' ' && sequence !== '\u007f' ? sequence : undefined;
}

export type Told = { key(name: string): void; paste(text: string): void };

/** Reads keys from a terminal in raw mode until the returned function is called. Ctrl+Z goes to `stop`. */
export function keysOf(stdin: ReadStream, stop: () => void): (told: Told) => () => void {
  return (told) => {
    let pasted: string | undefined;
    const onKey = (text: string | undefined, key: Key) => {
      if (key.name === 'paste-start') pasted = '';
      else if (key.name === 'paste-end') {
        told.paste((pasted ?? '').replace(/[\r\n\t]+/g, ' '));
        pasted = undefined;
      } else if (pasted !== undefined) pasted += key.sequence ?? '';
      else {
        const name = keyName(text, key);
        if (name === 'ctrl+z') stop();
        else if (name !== undefined) told.key(name);
      }
    };
    emitKeypressEvents(stdin, { escapeCodeTimeout: 40 } as never);
    stdin.on('keypress', onKey);
    stdin.resume();
    return () => {
      stdin.off('keypress', onKey);
      stdin.pause();
    };
  };
}
