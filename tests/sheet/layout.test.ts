// Eighty columns: wrapping, hanging indents, words too long, and characters two cells wide (Unicode Annex #11).
import { expect, it } from 'vitest';
import { cells, labelled, section, wrapped } from '../../src/sheet/layout.ts';

it('wraps between words and begins further lines below the text', () => {
  expect(wrapped('- ', 'one two three four', 11)).toEqual(['- one two', '  three', '  four']);
});

it('cuts a word longer than the line', () => {
  expect(wrapped('- ', 'abcdefghij', 6)).toEqual(['- abcd', '  efgh', '  ij']);
  expect(wrapped('- ', 'ab cdefghij', 6)).toEqual(['- ab', '  cdef', '  ghij']);
});

it('counts two cells for a wide character and none for a combining one', () => {
  expect(cells('漢字')).toBe(4);
  expect(cells('e\u0301')).toBe(1);
  expect(wrapped('', '漢字漢字', 5)).toEqual(['漢字', '漢字']);
});

it('keeps a label beside an empty text, and leaves out a section of nothing', () => {
  expect(labelled('Vehicle', '')).toEqual(['Vehicle']);
  expect(section('PARTS', [])).toEqual([]);
  expect(section('PARTS', ['x'])[1]).toHaveLength(80);
});
