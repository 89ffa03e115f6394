// Every screen to whoever sees fewer colours: nothing is told by colour alone, words keep 4.5 to 1 and shapes 3 to 1
// (WCAG 2.2, success criteria 1.4.3 and 1.4.11) on a black and on a white terminal. Dim rows are as a terminal dims
// its own letters; no number of ours says how far, so no number is held to them.
import { describe, expect, it } from 'vitest';
import { type Look, lookOf, paintFor, palette, shapeOf } from '../../src/screen/colours.ts';
import { frame, type Scene } from '../../src/screen/frame.ts';
import { screens } from '../../src/view/screens.ts';
import { contrast, type Rgb, rgbOf, seenAs, sights } from './colour-sight.ts';
import { demoDesk, sceneOf } from './scene.ts';

const grounds: readonly Rgb[] = [
  [0, 0, 0],
  [255, 255, 255],
];
const inks = Object.entries(palette as Record<string, { ink: number; ground?: number }>);
const refused = { answer: { kind: 'refused', text: 'the jack is in', instead: 'take it out' }, savedTo: 1 };
const notSaved = { savedTo: 1, notSaved: { message: 'the disk is full' } };
const scenes: readonly Scene[] = [
  ...screens.flatMap((screen) =>
    [80, 120].map((columns) => sceneOf({ screen, before: 'build' }, { columns, rows: columns === 80 ? 24 : 40 })),
  ),
  ...[refused, notSaved].map((session) => sceneOf({ screen: 'build' }, { session } as never)),
  sceneOf({ screen: 'strip' }, { desk: demoDesk({ area: 'coolant pump' }) }),
];
const runs = scenes.flatMap((scene) => frame(scene).flat());

describe('the simulation', () => {
  it.each(Object.entries(sights))('%s leaves white white and black black', (sight) => {
    for (const ground of grounds) expect(seenAs(ground, sight)).toEqual(ground);
  });
  it('knows the contrast of black and white, and that pure red and green fall together', () => {
    expect(contrast([0, 0, 0], [255, 255, 255])).toBeCloseTo(21, 10);
    const [r, g] = seenAs([255, 0, 0], 'deuteranopia');
    expect(Math.abs(r - g)).toBeLessThan(25);
  });
  it('would have refused red letters on black, and green ones on white', () => {
    expect(contrast(seenAs([205, 0, 0], 'protanopia'), [0, 0, 0])).toBeLessThan(3);
    expect(contrast([0, 205, 0], [255, 255, 255])).toBeLessThan(3);
  });
});

describe.each(Object.keys(sights))('%s', (sight) => {
  it.each(inks)('%s stands out from what is behind it', (_, { ink, ground }) => {
    const seen = seenAs(rgbOf(ink), sight);
    if (ground !== undefined) expect(contrast(seen, seenAs(rgbOf(ground), sight))).toBeGreaterThanOrEqual(4.5);
    else for (const behind of grounds) expect(contrast(seen, behind)).toBeGreaterThanOrEqual(3);
  });
});

describe('on every screen', () => {
  const hasGround = ({ color }: Look): boolean => color !== undefined && 'ground' in palette[color];

  it('words have the colours of the terminal, or their own ground', () => {
    const words = runs.filter(({ text, look }) => look?.color && !hasGround(look) && /\p{L}{2}/u.test(text));
    expect(words).toEqual([]);
  });
  it('no two marks have one shape, and a shape has the colour of its mark', () => {
    const marks = [
      'open',
      'half',
      'slack',
      'on',
      'snug',
      'empty',
      'gated',
      'done',
      'found',
      'struck',
      'plain',
    ] as const;
    expect(new Set(marks.map(shapeOf)).size).toBe(marks.length);
    const wanted = new Map<string, string | undefined>(marks.map((mark) => [shapeOf(mark), lookOf(mark).color]));
    for (const { text, look } of runs) {
      const shape = text.trim();
      if (shape !== '' && look?.color && wanted.has(shape)) expect(look.color).toBe(wanted.get(shape));
    }
  });
  it('what is in colour is a shape, a figure or a word that nothing without that colour has', () => {
    const glyphsIn = (color: string | undefined) =>
      new Set(runs.filter(({ look }) => look?.color === color).flatMap(({ text }) => text.match(/[◉✓]/gu) ?? []));
    expect([...glyphsIn('magenta')]).toEqual(['◉']);
    expect([...glyphsIn('green')]).toEqual(['✓']);
    const said = (color: string) =>
      runs.filter(({ look, text }) => look?.color === color && text.trim() !== '').map(({ text }) => text);
    expect(said('warning').every((text) => text.startsWith(' NO '))).toBe(true);
    expect(said('alarm').every((text) => text.includes('NOT SAVED'))).toBe(true);
    expect([said('warning').length, said('alarm').length].every((many) => many > 0)).toBe(true);
  });
  it('without colours the same cells stand there, and what stood out is still bold, dim or reversed', () => {
    const plain = paintFor(false);
    for (const { look } of runs.filter(({ look }) => look?.color && look.color !== 'green')) {
      expect(plain(look as Look)).toMatchObject({ bold: true });
    }
  });
});
