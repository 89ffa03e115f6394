// `npm run screens`: plays keys on the built program in a real terminal and keeps what is then on the glass as SVG in
// demo-data/screens, for the README. screens.test.ts says when they are behind the program.
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { closeAll, start } from '../terminal/bench-side.ts';
import { svgOf } from './screen-svg.ts';
import { heldRows, pictures } from './screens-shown.ts';

const folder = fileURLToPath(new URL('../../demo-data/screens/', import.meta.url));
mkdirSync(folder, { recursive: true });

try {
  for (const picture of pictures) {
    const { name, columns, rows, keys = '', alt } = picture;
    const bench = start(['demo'], { cols: columns, rows });
    await bench.waitFor('Any key goes on');
    bench.press(' ');
    await bench.waitFor((frame) => !frame.join('\n').includes('Any key goes on'));
    for (const key of keys) bench.press(key);
    const painted = heldRows(picture).join('\n');
    await bench.waitFor((frame) => frame.map((row) => row.trimEnd()).join('\n') === painted);
    const svg = svgOf(bench.glyphs(), alt);
    writeFileSync(`${folder}${name}.svg`, svg);
    process.stdout.write(`${name}.svg, ${(svg.length / 1000).toFixed(1)} kB\n`);
    await bench.close();
  }
} finally {
  await closeAll();
}
