// Reads a file of keys: a row is a stretch of work; 'text' is typed letter by letter, another word is the name of a key,
// and *n after it presses it n times in all. A row that begins with ~ is what the screen says before it goes on.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { callIds, keymapOf, padKeys } from '../../src/calls/bindings.ts';
import { numberAmongCalls } from '../../src/calls/key-names.ts';
import { screenChoices } from '../../src/session/asking.ts';
import { type ScreenId, screens } from '../../src/view/screens.ts';

export type Stretch = { at: number; text: string; keys: string[]; until?: string };

export function keyScript(name: string): Stretch[] {
  const text = readFileSync(fileURLToPath(new URL(name, import.meta.url)), 'utf8');
  return text.split('\n').flatMap((line, i) => {
    if (line.trim() === '' || line.startsWith('#')) return [];
    if (line.startsWith('~')) return [{ at: i + 1, text: line, keys: [], until: line.slice(1).trim() }];
    return [{ at: i + 1, text: line, keys: [...line.matchAll(/'([^']*)'|(\S+)/g)].flatMap(keysOf) }];
  });
}
function keysOf(match: RegExpMatchArray): string[] {
  const [, typed, word = ''] = match;
  if (typed !== undefined) return [...typed].map((char) => (char === ' ' ? 'space' : char));
  if (word.startsWith('@')) return [word];
  const [, key = word, times = '1'] = /^(.+)\*(\d+)$/.exec(word) ?? [];
  return Array.from({ length: Number(times) }, () => key);
}

const pad = keymapOf({ pad: true });
const digits = (at: number): string[] => [
  ...Array.from({ length: Math.floor(at / 9) }, () => '+'),
  String((at % 9) + 1),
];

/** Every @call as the keys of a keypad that make it: its own key, else its number among all calls of the screen. */
export function byKeypad(script: readonly Stretch[]): Stretch[] {
  let screen: ScreenId = 'shelf';
  const keysOfCall = (call: string): string[] => {
    if (call.startsWith('to-') && isScreen(call.slice(3))) {
      screen = call.slice(3) as ScreenId;
      return ['*', ...digits(screenChoices(pad).findIndex((one) => one.value === call))];
    }
    const all = pad.keysOn(screen);
    const own = all.find(({ row, binding }) => row.id === call && (padKeys as readonly string[]).includes(binding.key));
    const at = callIds(all).indexOf(call);
    if (!own && at < 0) throw new Error(`${call} is no call of ${screen}`);
    if (call === 'new-job') screen = 'strip';
    return own ? [own.binding.key] : ['/', ...numberAmongCalls(call, at)];
  };
  return script.map((stretch) => ({
    ...stretch,
    keys: stretch.keys.flatMap((key) => (/^@[a-z]/.test(key) ? keysOfCall(key.slice(1)) : [key])),
  }));
}
const isScreen = (name: string): boolean => (screens as readonly string[]).includes(name);

/** How many keys of a script are typed letters and figures, and how many are pressed for what they mean. */
export function keysCounted(script: readonly Stretch[]): { typed: number; pressed: number } {
  const typed = script
    .flatMap(({ text }) => [...text.matchAll(/'([^']*)'/g)].map(([, inside = '']) => inside.length))
    .reduce((a, b) => a + b, 0);
  return { typed, pressed: script.reduce((sum, { keys }) => sum + keys.length, 0) - typed };
}
