// The colours of the page: enough contrast in the light, in the dark and on paper, where nothing but black is counted on.
import { describe, expect, it } from 'vitest';
import { pageFoot, style } from '../../src/sheet/page/style.ts';
import { contrast } from './painted.ts';

const [light = '', dark = '', paper = ''] = [
  ...style.text.matchAll(/:root \{ color-scheme[^}]*\}|:root \{ --ink[^}]*\}/g),
].map(([block]) => block);
const colour = (block: string, name: string): string => new RegExp(`--${name}: (#[0-9a-f]+);`).exec(block)?.[1] ?? '';

it('contrast is reckoned as WCAG reckons it', () => {
  // Black on white is 21, the same on the same 1; #767676 on white is the best known of 4.54.
  expect(contrast('#000', '#ffffff')).toBeCloseTo(21, 5);
  expect(contrast('rgb(18, 52, 86)', '#123456')).toBe(1);
  expect(contrast('#767676', '#fff')).toBeCloseTo(4.54, 2);
});

describe.each([
  ['light', light],
  ['dark', dark],
  ['on paper', paper],
])('%s', (_, block) => {
  it.each(['ink', 'faint', 'mark', 'warn'])('%s can be read on the ground and on a wash', (name) => {
    for (const ground of ['paper', 'wash'])
      expect(contrast(colour(block, name), colour(block, ground))).toBeGreaterThanOrEqual(name === 'ink' ? 7 : 4.5);
  });
});

it('on paper what stands out is black, and nothing is told by a painted ground', () => {
  expect(['ink', 'mark', 'warn'].map((name) => colour(paper, name))).toEqual(['#000', '#000', '#000']);
  expect(style.text.match(/background/g)).toHaveLength(1);
});

it('the foot of a page takes figures of a digest and nothing else', () => {
  expect(pageFoot('0123456789abcdef0000').text).toContain('content: "log 0123456789abcdef"');
  expect(pageFoot('"; } body { display: none').text).not.toContain('display');
  expect(pageFoot(undefined).text).toContain('counter(pages)');
});
