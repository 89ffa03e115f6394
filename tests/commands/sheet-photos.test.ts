// Photographs on the sheet: by file and digest, with the small ones on the page, and told plainly when a file is gone or
// has become another.
import { createHash } from 'node:crypto';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { embeddedAtMost } from '../../src/sheet/photo-facts.ts';
import { type Bench, benchWithJob } from './run.ts';

// One white dot.
const dot = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR4nGP4////fwAJ+wP9KobjigAAAABJRU5ErkJggg==',
  'base64',
);
/** As large as a sheet takes, and a text would not be. */
const fitting = Buffer.concat([dot, Buffer.alloc(embeddedAtMost.bytes - dot.length, 7)]);
const large = Buffer.concat([dot, Buffer.alloc(embeddedAtMost.bytes)]);
let bench: Bench;
const at = (name: string) => join(bench.folder, name);
const digestOf = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

beforeAll(async () => {
  bench = await benchWithJob();
  writeFileSync(at('dot.png'), dot);
  writeFileSync(at('fitting.png'), fitting);
  writeFileSync(at('large.png'), large);
  writeFileSync(at('words.png'), 'no picture <script>');
  const input = `photo ${at('dot.png')} shows crack <b>there</b>\nphoto ${at('fitting.png')}\nphoto ${at('large.png')}\nphoto ${at('words.png')}\n`;
  expect(await bench.run(['take', 'hatchback'], { input })).toMatchObject({ exit: 0 });
});
afterAll(() => bench.remove());

it('the page holds the small picture itself, and names every one by file and digest', async () => {
  const { out, exit, complaint } = await bench.run(['sheet', 'hatchback', '--html']);
  expect({ exit, complaint }).toEqual({ exit: 0, complaint: '' });
  expect(out.match(/<img /g)).toHaveLength(2);
  expect(out).toContain(`<img src="data:image/png;base64,${dot.toString('base64')}" alt="`);
  expect(out).toContain(`<img src="data:image/png;base64,${fitting.toString('base64')}" alt="`);
  expect(out).toContain(`style-src 'unsafe-inline'; img-src data:"`);
  expect(out).not.toMatch(/<b>|<script/);
  const plain = out.replace(/<wbr>/g, '');
  for (const bytes of [dot, large, Buffer.from('no picture <script>')]) expect(plain).toContain(digestOf(bytes));
  const report = await new HtmlValidate({
    root: true,
    extends: ['html-validate:standard', 'html-validate:a11y'],
  }).validateString(out);
  expect(report.results.flatMap((r) => r.messages)).toEqual([]);
});

it.each(['--text', '--csv'])('%s names them, and holds no picture', async (form) => {
  const { out } = await bench.run(['sheet', 'hatchback', form]);
  const plain = out.replace(/\s+/g, '');
  expect(plain).toContain(digestOf(dot));
  expect(plain).toContain('thefileisasitwas');
  expect(out).not.toContain('base64');
});

it('a file that is gone or has become another is told, and is not on the page', async () => {
  rmSync(at('large.png'));
  rmSync(at('fitting.png'));
  writeFileSync(at('dot.png'), Buffer.concat([dot, Buffer.from('x')]));
  const { out, exit, complaint } = await bench.run(['sheet', 'hatchback', '--html']);
  expect(exit).toBe(0);
  expect(out).not.toContain('<img');
  expect(out).not.toContain('img-src');
  expect(out).toContain('THE FILE IS NOT THERE ANY MORE');
  expect(out).toContain('THE FILE IS ANOTHER NOW');
  expect(complaint).toMatch(/the photograph of line \d+ is changed\n.*the photograph of line \d+ is not there\n/);
});

it.each(['--text', '--html', '--csv'])(
  "says on the owner's copy no folder of the workshop's laptop (%s)",
  async (form) => {
    const owners = await bench.run(['sheet', 'hatchback', form]);
    expect(owners.out).toContain('dot.png');
    const whole = (out: string) => out.replace(/\s+|<wbr>/g, '');
    expect(whole(owners.out)).not.toContain(bench.folder);
    const workshops = await bench.run(['sheet', 'hatchback', form, '--workshop']);
    expect(whole(workshops.out)).toContain(at('dot.png'));
  },
);
