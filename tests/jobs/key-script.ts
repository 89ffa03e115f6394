// Reads a file of keys: a row is a stretch of work; 'text' is typed letter by letter, another word is the name of a key,
// and *n after it presses it n times in all. A row that begins with ~ is what the screen says before it goes on.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

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
  const [, key = word, times = '1'] = /^(.+)\*(\d+)$/.exec(word) ?? [];
  return Array.from({ length: Number(times) }, () => key);
}
