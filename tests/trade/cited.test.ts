// No figure of the trade without unit and source: the form can't be made without them, and no number of src/trade stands
// outside it.
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { type Cited, cited } from '../../src/trade/cited.ts';
import { bareNumbersIn } from './bare-numbers.ts';

const room = fileURLToPath(new URL('../../src/trade/', import.meta.url));

describe('a cited figure', () => {
  it('is not made without unit and source', () => {
    expect(() => cited(25.4, '', 'NIST')).toThrow(/without unit/);
    expect(() => cited(25.4, 'mm', ' ')).toThrow(/without source/);
    // @ts-expect-error the source is missing
    expect(() => cited(25.4, 'mm')).toThrow();
    // @ts-expect-error made by hand, not by the form
    const byHand: Cited<number> = { value: 25.4, unit: 'mm', source: 'NIST' };
    expect(byHand.value).toBe(25.4);
  });

  it('cannot be changed, nor can what is in a table', () => {
    const table = cited({ M8: [1.25, 1] }, 'mm', 'ISO 261');
    // @ts-expect-error read only
    expect(() => table.value.M8.push(3)).toThrow(TypeError);
    expect(() => Object.assign(table, { unit: 'in' }).unit.length).toThrow(TypeError);
    expect(table.value).toEqual({ M8: [1.25, 1] });
  });
});

describe('the numbers of src/trade', () => {
  const modules = readdirSync(room, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));

  it.each(modules)('%s: each stands in the cited form, 0, 1 and 2 apart', (name) => {
    const bare = bareNumbersIn(readFileSync(`${room}${name}`, 'utf8'));
    expect(bare.map(({ figure, line }) => `src/trade/${name}:${line} ${figure}`)).toEqual([]);
  });

  it.each([
    ['const pitch = 1.25;', ['1.25']],
    ['const pitches = { M8: [1.25, 1] };', ['1.25']],
    ['export const f = (d: number) => d - 0.6495 * 2;', ['0.6495']],
    ['const head = { M8: "13" };', ['13']],
    ['const sizes = ["5/16", "3/8"];', ['5/16', '3/8']],
    ['const f = (a = 7) => a;', ['7']],
    ['const m = new Map([[3, 4]]);', ['3', '4']],
    ['const x = other(25.4, "mm", "NIST");', ['25.4']],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: this is the text of a source
    ['const t = `${3 * 4}`;', ['3', '4']],
    ['const n = 5 as number;', ['5']],
    ['const at = list[3] + 3;', ['3']],
    ['if (a === 3) b();', ['3']],
  ])('finds what is bare in %s', (text, figures) => {
    expect(bareNumbersIn(text).map(({ figure }) => figure)).toEqual(figures);
  });

  it.each([
    "const pitch = cited(1.25, 'mm', 'ISO 261');",
    "const t = cited({ M8: [1.25, 1] }, 'mm', 'ISO 261').value;",
    'const half = (x: number) => x / 2 + 1 - -1;',
    'const third = parts[3];',
    'const text = value.toFixed(3).padStart(8);',
    'type Row = [4, 5];',
    "const is = text === '8';",
    'const words = ["M8", "ISO 4014", ""];',
    'const pattern = /^\\d{1,4}$/;',
  ])('lets be %s', (text) => expect(bareNumbersIn(text)).toEqual([]));
});
