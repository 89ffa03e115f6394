// What is on the glass of a terminal as one SVG: text, one span a run of one look, dark or light as the reader's page.
import { rgbOf } from '../screen/colour-sight.ts';

/** One cell; a colour is a number of the 256, none the terminal's own. */
export type Glyph = {
  text: string;
  ink?: number;
  ground?: number;
  bold?: boolean;
  dim?: boolean;
  inverse?: boolean;
  strike?: boolean;
};

const [wide, high] = [8.4, 18];
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
const hex = (number: number): string =>
  `#${rgbOf(number)
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')}`;
const round = (size: number): string => String(Number(size.toFixed(1)));

/** Few fonts have the dots as wide as their letters, so these have their own place. */
const isDots = (text: string): boolean => /[\u2800-\u28ff]/.test(text);
type Span = { from: number; cells: number; text: string; look: Glyph };
function spansOf(row: readonly Glyph[]): Span[] {
  const spans: Span[] = [];
  const same = (a: Glyph, b: Glyph): boolean =>
    JSON.stringify({ ...a, text: '' }) === JSON.stringify({ ...b, text: '' }) && isDots(a.text) === isDots(b.text);
  row.forEach((glyph, at) => {
    const last = spans.at(-1);
    if (last && same(last.look, glyph)) {
      last.text += glyph.text;
      last.cells += 1;
    } else spans.push({ from: at, cells: 1, text: glyph.text, look: glyph });
  });
  return spans;
}

export function svgOf(rows: readonly (readonly Glyph[])[], alt: string): string {
  const columns = Math.max(...rows.map((row) => row.length));
  const bands: string[] = [];
  const lines = rows.map((row, y) => {
    const spans = spansOf(row).map(({ from, cells, text, look }) => {
      const [ink, ground] = look.inverse ? [look.ground, look.ink] : [look.ink, look.ground];
      if (look.inverse || ground !== undefined) {
        const fill = ground === undefined ? 'class="n"' : `fill="${hex(ground)}"`;
        bands.push(
          `<rect x="${round(from * wide)}" y="${y * high}" width="${round(cells * wide)}" height="${high}" ${fill}/>`,
        );
      }
      const names = [look.bold && 'b', look.dim && 'd', look.strike && 's', look.inverse && ink === undefined && 'i'];
      const kind = names.filter(Boolean).join(' ');
      const fill = ink === undefined ? '' : ` fill="${hex(ink)}"`;
      const said = text.trim();
      if (said === '') return '';
      const at = `x="${round((from + text.indexOf(said)) * wide)}" textLength="${round([...said].length * wide)}"`;
      return `<tspan ${at}${kind && ` class="${kind}"`}${fill}>${escaped(said)}</tspan>`;
    });
    const said = spans.join('');
    return said === '' ? '' : `<text y="${y * high + 13.5}">${said}</text>\n`;
  });
  const [width, height] = [columns * wide, rows.length * high];
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-12 -12 ${round(width + 24)} ${height + 24}" role="img">
<title>${escaped(alt)}</title>
<style>
rect.g{fill:#111}.n{fill:#eee}text{fill:#eee;font:14px ui-monospace,Menlo,Consolas,"DejaVu Sans Mono",monospace;white-space:pre}
.b{font-weight:bold}.d{opacity:.6}.s{text-decoration:line-through}.i{fill:#111}
@media (prefers-color-scheme:light){rect.g{fill:#fff}.n{fill:#222}text{fill:#222}.i{fill:#fff}}
</style>
<rect class="g" x="-12" y="-12" width="${round(width + 24)}" height="${height + 24}" rx="8"/>
${bands.join('\n')}
${lines.join('')}</svg>
`;
}

/** The rows of text of such an SVG, right-hand blanks cut. */
export function textRowsOf(svg: string): string[] {
  const plain = (text: string): string =>
    text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');
  const rows: string[] = [];
  for (const [, y, spans] of svg.matchAll(/<text y="([\d.]+)">(.*)<\/text>/g)) {
    let row = '';
    for (const [, x, text] of (spans as string).matchAll(/<tspan x="([\d.]+)"[^>]*>(.*?)<\/tspan>/g)) {
      row = row.padEnd(Math.round(Number(x) / wide)) + plain(text as string);
    }
    rows[Math.floor(Number(y) / high)] = row;
  }
  return Array.from(rows, (row) => row ?? '');
}
