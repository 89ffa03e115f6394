// What is read from two metres, and that it stands in a copy of the screen as plain text too.
import { describe, expect, it } from 'vitest';
import { paintFor } from '../../src/screen/colours.ts';
import { canBeDrawn, figureCells, figureRows } from '../../src/screen/figures.ts';
import { frame } from '../../src/screen/frame.ts';
import { paintedText } from '../../src/screen/rows.tsx';
import { cellsOf } from '../../src/screen/width.ts';
import { sceneOf, textOf } from './scene.ts';

const drawn = (text: string, scale: Parameters<typeof figureRows>[1]) =>
  figureRows(text, scale, figureCells(text, scale), {}).map((row) => row.map((run) => run.text).join(''));

describe('figures and words', () => {
  it('are there when the screen is copied as plain text, and hidden under reversed cells while it is looked at', () => {
    expect(drawn('41', 1)).toEqual([
      '##  ##    ##  ',
      '##  ##  ####  ',
      '######    ##  ',
      '    ##    ##  ',
      '    ##  ######',
    ]);
    const [row] = figureRows('1', 1, 6, {});
    expect(paintedText(row as never, paintFor(false))).toBe('  \u001b[7;8m##\u001b[0m');
  });
  it('draw every letter of its own, in capitals and without accents', () => {
    const alphabet = [...'abcdefghijklmnopqrstuvwxyz'];
    expect(alphabet.every(canBeDrawn)).toBe(true);
    expect(new Set([...alphabet, ...'0123456789'].map((char) => drawn(char, 'narrow').join('\n'))).size).toBe(36);
    expect(drawn('Ü', 1)).toEqual(drawn('u', 1));
    expect([canBeDrawn('cam cover 2'), canBeDrawn('油底'), canBeDrawn('a/b'), canBeDrawn('')]).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });
});

const large = { columns: 120, rows: 40 };
const holds = (text: string, letters: readonly string[]) => letters.every((row) => text.includes(row.trim()));

describe('what comes next', () => {
  it.each(['strip', 'build'] as const)('stands large with its area on %s, where there is room', (screen) => {
    const desk = sceneOf({ screen }).desk;
    const facing = { ...desk.facing, area: 'tensioner and idler', hole: 'tensioner and idler/2' };
    const text = textOf(sceneOf({ screen }, { ...large, desk: { ...desk, facing } }));
    expect(holds(text, drawn('tensioner and idler', 'narrow'))).toBe(true);
    expect(holds(text, drawn('2', 1))).toBe(true);
  });
  it('gives way to an answer that needs the room', () => {
    const text = 'a hole was called that is in front of what is not closed yet, and more of it '.repeat(5);
    const session = { answer: { kind: 'faced', text } as const, savedTo: 999, looking: false };
    const frame = textOf(sceneOf({ screen: 'build' }, { ...large, session }));
    expect(frame.replace(/[\s#]+/g, ' ')).toContain('not closed yet, and more of it a hole was called');
    expect(holds(frame, drawn('cam cover', 'narrow'))).toBe(false);
  });
  it('is no figure on the screens of lists, which keep the rows, nor while something is asked', () => {
    for (const screen of ['leaving', 'findings', 'log'] as const)
      expect(textOf(sceneOf({ screen }, large)), screen).not.toContain('##  ##');
    const asking = {
      title: 'area',
      row: 'area',
      slot: 'area',
      type: 'area',
      optional: false,
      typed: '',
      at: 0,
      choices: [],
    };
    expect(textOf(sceneOf({ screen: 'strip', asking }, large))).not.toContain('##');
  });
  it('stands at a glance as large as it fits, a long name a word a row, one that has no letters here in plain words', () => {
    const { desk } = sceneOf({ screen: 'glance' });
    const at = (area: string, size = large) => {
      const facing = { ...desk.facing, area, hole: `${area}/1` };
      return textOf(sceneOf({ screen: 'glance', before: 'build' }, { ...size, desk: { ...desk, facing } }));
    };
    expect(holds(at('cam cover'), drawn('cam cover', 1))).toBe(true);
    expect(holds(at('crank pulley', { columns: 80, rows: 24 }), drawn('crank pulley', 'narrow'))).toBe(true);
    expect(at('油底')).toContain('NEXT 油底 1');
    for (const size of [large, { columns: 80, rows: 24 }, { columns: 200, rows: 60 }])
      for (const area of ['cam cover', 'right front wheel', 'a very long name of an area of this car'])
        for (const row of at(area, size).split('\n')) expect(cellsOf(row)).toBe(size.columns);
  });
  it('says the words of its sums large, where there is room', () => {
    const text = textOf(sceneOf({ screen: 'glance', before: 'build' }, large));
    for (const word of ['OUT', 'BACK', 'OPEN']) expect(holds(text, drawn(word, 'narrow')), word).toBe(true);
  });
});

describe('at 120 by 40', () => {
  it('no fastener and no area is cut while columns are free', () => {
    for (const screen of ['strip', 'build'] as const) {
      const rows = frame(sceneOf({ screen }, large)).map((row) => row.map((run) => run.text).join(''));
      for (const name of ['right front wheel', 'tensioner and idler']) expect(rows.join('\n')).toContain(` ${name} `);
      const specs = rows.filter((row) => row.includes('bolt hex 8'));
      expect(specs.length).toBeGreaterThan(9);
      for (const row of specs) expect(row).toContain('bolt hex 8 M6x35 shouldered');
    }
  });
  it('the drawing stands in the same rows on strip and build', () => {
    const rowsOf = (screen: 'strip' | 'build') =>
      textOf(sceneOf({ screen }, large))
        .split('\n')
        .flatMap((row, at) => (/◉1\b.*◉2\b/.test(row) || /[⢰⢀][⠒⣀]{9}|[⢸⠘][⠒⣀]{9}/.test(row) ? [at] : []));
    expect(rowsOf('strip')).toEqual(rowsOf('build'));
    expect(rowsOf('strip').length).toBe(3);
  });
});
