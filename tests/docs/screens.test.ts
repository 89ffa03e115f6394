// The pictures in the README show the program as it is: their rows are those of a frame made here, without a terminal.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { svgOf, textRowsOf } from './screen-svg.ts';
import { paintedRows, pictures } from './screens-shown.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const readme = readFileSync(`${root}README.md`, 'utf8');

describe.each(pictures)('the picture of $name', (picture) => {
  const { name, alt } = picture;
  const path = `demo-data/screens/${name}.svg`;
  it('is as the program paints it', () => {
    expect(existsSync(`${root}${path}`), `${path} is missing: run npm run screens`).toBe(true);
    const shown = textRowsOf(readFileSync(`${root}${path}`, 'utf8'));
    expect(shown.join('\n').trimEnd(), `${path} is behind the program: run npm run screens`).toBe(
      paintedRows(picture).join('\n').trimEnd(),
    );
  });
  it('stands in the README, with words for whoever does not see it', () => {
    expect(readme).toContain(`![${alt}](${path})`);
    expect(readFileSync(`${root}${path}`, 'utf8')).toContain(`<title>${alt}</title>`);
  });
});

it('no picture is left over', () => {
  const files = readdirSync(`${root}demo-data/screens`).toSorted();
  expect(files).toEqual(pictures.map(({ name }) => `${name}.svg`).toSorted());
});

it('a picture says what was on the glass, whatever was on it', () => {
  const row = [...'a <b> & "c"'].map((text, at) => ({ text, ...(at > 4 && { ink: 28, bold: true, inverse: true }) }));
  expect(textRowsOf(svgOf([[{ text: ' ' }], row], 'x'))).toEqual(['', 'a <b> & "c"']);
});
