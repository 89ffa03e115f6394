// Holds one source file to the table of rooms and says, in a sentence each, what breaks it and why that matters.
import { posix } from 'node:path';
import { readSource } from './reading.ts';
import { launcher, type Room, rooms } from './rooms.ts';

const roomNamed = (name: string): Room | undefined => rooms.find((room) => room.name === name);

/** The room a path below src/ lies in: its first folder, or main.tsx itself. */
const roomOf = (path: string): string => path.split('/')[0] ?? path;

const isNodes = (from: string): boolean => from.startsWith('node:');

function allowsPackage(room: Room, from: string): boolean {
  if (isNodes(from)) return room.packages.includes('node');
  return room.packages.some((allowed) => from === allowed || from.startsWith(`${allowed}/`));
}

const listed = (names: readonly string[]): string => (names.length === 0 ? 'nothing' : names.join(', '));

function judgeImport(room: Room, path: string, from: string, typesOnly: boolean): string | null {
  if (!from.startsWith('.')) {
    if (allowsPackage(room, from)) return null;
    const only =
      from === 'ink' || from.startsWith('react') ? '; only screen draws, so that the rest runs without it' : '';
    return `imports ${from}: the packages ${room.name} may import are ${listed(room.packages)}${only}`;
  }
  const target = posix.normalize(posix.join(posix.dirname(path), from));
  if (target.startsWith('..')) return `imports ${from}, outside src/: the program stands on its own sources alone`;
  const other = roomOf(target);
  if (other === room.name) return null;
  if (other === 'main.tsx' || other === launcher) return `imports ${from}: nothing imports what starts the program`;
  if (room.ours.includes(other)) return null;
  if (room.oursForTypes?.includes(other)) {
    return typesOnly ? null : `imports ${from} for more than its types: ${room.name} may take only types from ${other}`;
  }
  return `imports ${from}: of ours, ${room.name} may import ${listed([...room.ours, ...(room.oursForTypes ?? [])])}`;
}

/** Every way in which the file at `path` (below src/) breaks the table; empty when it keeps it. */
export function judge(path: string, text: string): string[] {
  const room = roomNamed(roomOf(path));
  if (room === undefined) {
    return [`src/${path} is in no room: add the room to tests/boundaries/rooms.ts or move the file into one`];
  }
  const source = readSource(text, path);
  const broken: string[] = [];
  const say = (line: number, why: string): void => void broken.push(`src/${path}:${line} ${why}`);

  for (const { from, line, typesOnly } of source.imports) {
    const why = judgeImport(room, path, from, typesOnly);
    if (why !== null) say(line, why);
  }
  if (/^import \{[^}]*\bz\b[^}]*\} from 'zod'/m.test(text)) {
    say(
      1,
      "imports { z }: write import * as z from 'zod', or all that zod knows in forty languages is read at every start",
    );
  }
  if (room.pure) {
    for (const { what, line } of source.reaches) {
      say(line, `uses ${what}: ${room.name} is pure, so time, chance, ids and the machine's manners come in as values`);
    }
    for (const { what, line } of source.changeable) {
      say(line, `declares ${what} at the top level: ${room.name} is pure and remembers nothing between calls`);
    }
  }
  if (room.draws !== true) {
    for (const { line } of source.draws) say(line, 'contains JSX: only screen draws');
  }
  if (room.name !== 'main.tsx') {
    for (const { what, line } of source.deeds) {
      say(line, `does something on import (${what}): a module defines, and only main.tsx starts anything`);
    }
  }
  return broken;
}
