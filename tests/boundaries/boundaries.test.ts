// The rooms of src/ keep to their table, and the table's judge is shown to see each way of breaking it.
import { readdirSync, readFileSync } from 'node:fs';
import { relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { judge } from './judging.ts';
import { readSource } from './reading.ts';
import { launcher, madeLocally, rooms, topLevel } from './rooms.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

function sourcesBelow(folder: string): string[] {
  return readdirSync(`${root}${folder}`, { recursive: true, withFileTypes: true })
    .filter((at) => at.isFile() && /\.(tsx?|jsx?|mts|cts|mjs|cjs)$/.test(at.name))
    .map((at) => relative(`${root}${folder}`, resolve(at.parentPath, at.name)).replaceAll('\\', '/'))
    .sort();
}

describe('the sources', () => {
  const sources = sourcesBelow('src').filter((path) => path !== launcher);

  it('are there to be judged', () => {
    expect(sources).toContain('main.tsx');
    expect(sources.length).toBeGreaterThan(5);
  });

  it.each(sources)('src/%s keeps to its room', (path) => {
    expect(judge(path, readFileSync(`${root}src/${path}`, 'utf8'))).toEqual([]);
  });
});

it('names the keys of a question in one place: no other string has the word on a cap', () => {
  const caps = /\b(?:Enter|Tab|Bksp|Backspace|Escape|Esc)\b/;
  const rowsOf = (path: string) => readFileSync(`${root}src/${path}`, 'utf8').split('\n');
  const named = (path: string) => rowsOf(path).filter((row) => caps.test(row) && !/^\s*(?:\/\/|\/?\*)/.test(row));
  const rooms = ['calls', 'session', 'screen', 'view', 'commands', 'voice'];
  const sources = rooms.flatMap((room) => sourcesBelow(`src/${room}`).map((path) => `${room}/${path}`));
  expect(named('calls/key-caps.ts').length).toBeGreaterThan(3);
  const others = sources.filter((path) => path !== 'calls/key-caps.ts');
  expect(others.flatMap((path) => named(path).map((row) => `src/${path}: ${row.trim()}`))).toEqual([]);
});

describe('the launcher', () => {
  it('has no static import, so that an old Node can read it and be told what to do', () => {
    const { imports } = readSource(readFileSync(`${root}src/${launcher}`, 'utf8'), launcher);
    const text = readFileSync(`${root}src/${launcher}`, 'utf8').split('\n');
    expect(imports.length).toBeGreaterThan(0);
    for (const { line } of imports) expect(text[line - 1]).toContain('await import(');
  });
});

describe('the second model', () => {
  it('shares no code with src/: only the tests that compare the two import both', () => {
    const model = sourcesBelow('tests').filter((path) => path.startsWith('model/') && !/\.test\.tsx?$/.test(path));
    const shared = model.flatMap((path) =>
      readSource(readFileSync(`${root}tests/${path}`, 'utf8'), path)
        .imports.filter(({ from }) => /(^|\/)src\//.test(from))
        .map(({ from, line }) => `tests/${path}:${line} imports ${from}`),
    );
    expect(shared).toEqual([]);
  });
});

describe('the top level of the repository', () => {
  it('holds what is agreed and nothing else', () => {
    const found = readdirSync(root).filter((name) => !name.startsWith('.') && !madeLocally.includes(name));
    expect(found.filter((name) => !topLevel.includes(name))).toEqual([]);
  });
});

describe('the table of rooms', () => {
  it('names only rooms it has, and lets no two rooms import each other', () => {
    const names = rooms.map((room) => room.name);
    for (const room of rooms) {
      const others = [...room.ours, ...(room.oursForTypes ?? [])];
      expect(names).toEqual(expect.arrayContaining(others));
      for (const other of others) {
        expect(rooms.find(({ name }) => name === other)?.ours, `${room.name} and ${other}`).not.toContain(room.name);
      }
    }
  });
});

describe('the judge', () => {
  const broken: [why: string, path: string, text: string, says: RegExp][] = [
    ['a room above', 'job/a.ts', `import { x } from '../store/x.ts';`, /of ours, job may import trade/],
    ['a re-export from above', 'job/a.ts', `export { x } from '../calls/x.ts';`, /job may import trade/],
    ['a type from above', 'trade/a.ts', `import type { X } from '../job/x.ts';`, /trade may import nothing/],
    ['an import() type', 'trade/a.ts', `export type X = import('../job/x.ts').X;`, /trade may import nothing/],
    ['a dynamic import', 'job/a.ts', `export const x = () => import('../screen/x.tsx');`, /job may import trade/],
    ['an import made at run time', 'job/a.ts', `export const x = (y: string) => import(y);`, /made at run time/],
    ['more than types', 'view/a.ts', `import { x } from '../job/x.ts';`, /only types from job/],
    ['ink outside screen', 'session/a.ts', `import { render } from 'ink';`, /only screen draws/],
    ['react in main', 'main.tsx', `import { useState } from 'react';`, /only screen draws/],
    ['JSX outside screen', 'main.tsx', `export const X = () => <a />;`, /contains JSX/],
    ['all of zustand', 'session/a.ts', `import { create } from 'zustand';`, /zustand\/vanilla/],
    ["Node's modules", 'job/a.ts', `import { randomUUID } from 'node:crypto';`, /imports node:crypto/],
    ['a file outside src', 'calls/a.ts', `import x from '../../package.json';`, /outside src/],
    ['main itself', 'screen/a.ts', `import { x } from '../main.tsx';`, /nothing imports what starts/],
    ['no room', 'misc/a.ts', 'export const x = 1;', /is in no room/],
    ['the clock', 'job/a.ts', 'export const x = () => Date.now();', /uses Date: job is pure/],
    ['a date', 'view/a.ts', 'export const x = () => new Date();', /uses Date/],
    ['a clock given another name', 'job/a.ts', 'export const x = (now = Date.now) => now();', /uses Date/],
    ['the other clock', 'trade/a.ts', 'export const x = () => performance.now();', /uses performance/],
    ['a timer', 'calls/a.ts', 'export const x = () => setTimeout(() => 1, 2);', /uses setTimeout/],
    ['chance', 'plan/a.ts', 'export const x = () => Math.random();', /uses Math.random/],
    ['chance in brackets', 'plan/a.ts', `export const x = () => Math['random']();`, /uses Math.random/],
    [
      'chance taken apart',
      'plan/a.ts',
      'const { random } = Math; export const x = () => random();',
      /Math taken apart/,
    ],
    ['the process', 'job/a.ts', 'export const x = () => process.env.HOME;', /uses process/],
    ['the process as a shorthand', 'job/a.ts', 'export const x = () => ({ process });', /uses process/],
    ['the world by its own name', 'job/a.ts', `export const x = () => globalThis['Date'];`, /uses globalThis/],
    ['the language', 'view/a.ts', `export const x = (a: string) => a.localeCompare('b');`, /uses localeCompare/],
    ['a cast clock', 'job/a.ts', 'export const x = () => (Date as unknown as () => number)();', /uses Date/],
    ['a deed', 'store/a.ts', 'start(); function start() {}', /does something on import/],
    ['a deed under a condition', 'store/a.ts', 'if (1) { f(); } function f() {}', /does something on import/],
    ['a top-level await', 'store/a.ts', 'export const x = await Promise.resolve(1);', /does something on import/],
    ['all of zod', 'job/a.ts', `import { z } from 'zod';`, /forty languages/],
    ['a memory', 'trade/a.ts', 'let last = 0; export const x = () => (last += 1);', /remembers nothing/],
  ];

  it.each(broken)('sees %s', (_, path, text, says) => {
    expect(judge(path, text).join('\n')).toMatch(says);
  });

  const kept: [what: string, path: string, text: string][] = [
    ['a room below', 'calls/a.ts', `import { x } from '../job/x.ts'; export const y = x;`],
    ['its own room', 'job/gates/a.ts', `import { x } from '../x.ts'; export const y = x;`],
    ['types where types are allowed', 'view/a.ts', `import { type X } from '../job/x.ts'; export type Y = X;`],
    ['a comment, a string, a key', 'job/a.ts', `// Date.now()\nexport const x = { process: 'Date', performance: 1 };`],
    ['a member of that name', 'job/a.ts', 'export const x = (a: { process: number }) => a.process;'],
    ['a type of that name', 'job/a.ts', 'export type X = { at: Date; p: typeof process };'],
    ['a definition by a call', 'job/a.ts', `import * as z from 'zod'; export const x = z.strictObject({});`],
    [
      'a subpath of a package',
      'screen/a.tsx',
      `import { useShallow } from 'zustand/react/shallow'; export const x = useShallow;`,
    ],
    ['JSX in screen', 'screen/a.tsx', 'export const X = () => <a />;'],
    ['the clock where it is allowed', 'session/a.ts', 'export const now = () => Date.now();'],
    ['a deed in main', 'main.tsx', 'process.exitCode = 0;'],
  ];

  it.each(kept)('leaves alone %s', (_, path, text) => {
    expect(judge(path, text)).toEqual([]);
  });
});
