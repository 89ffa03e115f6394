// Text on its way to a screen: nothing in it steers a terminal. Sequences are those of ECMA-48, 5th edition 1991.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { longestText, plainDeep, plainText } from '../../src/trade/plain-text.ts';

const cases: [string, string][] = [
  ['A9.7 cam cover', 'A9.7 cam cover'],
  ['größer, 青い, é, ½"', 'größer, 青い, é, ½"'],
  ['\u001b[2J\u001b[31mred\u001b[0m', 'red'],
  ['\u001b]0;title\u0007bolt', 'bolt'],
  ['\u001b]8;;http://x\u001b\\link\u001b]8;;\u001b\\', 'link'],
  ['\u001bP1$r0m\u001b\\nut', 'nut'],
  ['\u009b31mred\u009d0;title\u009cx', 'redx'],
  ['\u001bcreset \u001b(0lines', 'reset lines'],
  ['\u001b[?1049h\u001b[1;1H>', '>'],
  ['\u001b\u001b[31m[31mx', '[31mx'],
  ['\u001b]0;never ended', '0;never ended'],
  ['ab\u0000\u0008\u007fc\u0085d', 'abc d'],
  ['one\r\ntwo\nthree\tfour\u2028five', 'one two three four five'],
  ['safe\u202etxt.exe\u2066\u200f\u061c', 'safetxt.exe'],
  ['\ufeffa\u200bb\u2060\u{e0041}', 'ab'],
  ['half \ud83d pair', 'half \ufffd pair'],
];

for (const [text, plain] of cases)
  it(`[D4] ${JSON.stringify(text)} is shown as ${JSON.stringify(plain)}`, () => {
    expect(plainText(text)).toBe(plain);
  });

const nasty = fc.string({
  unit: fc.oneof(
    fc.constantFrom(
      '\u001b',
      '[',
      ']',
      'P',
      '\\',
      '\u0007',
      '\u009b',
      '\u009c',
      '\u009d',
      ';',
      '3',
      'm',
      '\n',
      '\u202e',
    ),
    fc.string({ unit: 'binary', minLength: 1, maxLength: 1 }),
  ),
});

it('[D4] whatever the text, no control character is left, and a second cleaning changes nothing', () => {
  fc.assert(
    fc.property(nasty, (text) => {
      const plain = plainText(text);
      expect(plain).not.toMatch(/[\p{Cc}\p{Cs}\u{202A}-\u{202E}\u{2066}-\u{2069}]/u);
      expect(plainText(plain)).toBe(plain);
    }),
    { numRuns: 3000 },
  );
});

it('[D4] length is bounded in whole characters, and a long run of openers takes no long time', () => {
  expect(plainText('x'.repeat(longestText + 9))).toHaveLength(longestText);
  expect(plainText('🔩🔩🔩', 2)).toBe('🔩🔩');
  expect(plainText('🔩🔩', 2)).toBe('🔩🔩');
  const before = performance.now();
  for (const opener of ['\u001b]', '\u001b[', '\u009d', '\u001b[0', '\u001bP0;'])
    expect(plainText(opener.repeat(100_000))).not.toMatch(/\p{Cc}/u);
  expect(performance.now() - before).toBeLessThan(2000);
});

it('[D4] every text inside a value is cleaned, names of fields too; a clean value is returned as it is', () => {
  const clean = { n: 1, a: ['x', { b: null, c: true }] };
  expect(plainDeep(clean)).toBe(clean);
  expect(plainDeep({ n: 1, '\u001b[2Ja': ['x\u0007', { b: null, c: 'y\nz' }] })).toEqual({
    n: 1,
    a: ['x', { b: null, c: 'y z' }],
  });
});

it('[D4] a value nested beyond all measure is cut off, and exhausts nobody', () => {
  const deep: unknown = JSON.parse(`${'['.repeat(200_000)}"x"${']'.repeat(200_000)}`);
  const plain = JSON.stringify(plainDeep(deep));
  expect(plain).toMatch(/^\[+null\]+$/);
  expect(plain.length).toBeLessThan(300);
});
