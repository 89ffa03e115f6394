// sheet: its three forms, where it writes them, and that it never writes over a file unasked.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { readCsv } from '../sheet/read-csv.ts';
import { type Bench, benchWithJob, steersNothing } from './run.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await benchWithJob();
});
afterAll(() => bench.remove());
const there = (name: string) => join(bench.folder, name);

it('prints the text unless another form is asked for, and never two', async () => {
  const text = await bench.run(['sheet', 'hatchback']);
  expect(text).toMatchObject({ exit: 0, complaint: '' });
  expect(text.out).toMatch(/^JOB SHEET/);
  expect((await bench.run(['sheet', 'hatchback', '--text'])).out).toMatch(/^JOB SHEET/);
  const page = await bench.run(['sheet', 'hatchback', '--html']);
  expect(page.out).toMatch(/^<!DOCTYPE html>\n<html lang="en">.*<\/html>\n$/s);
  expect(page.out).toMatch(steersNothing);
  expect(await bench.run(['sheet', 'hatchback', '--html', '--csv'])).toMatchObject({ exit: 64, out: '' });
});

it('a table keeps its CR LF on standard output, and is the same in a file', async () => {
  const { out } = await bench.run(['sheet', 'hatchback', '--csv']);
  expect((await bench.run(['sheet', 'hatchback', '--csv', '-o', there('sheet.csv')])).exit).toBe(0);
  const rows = readCsv(readFileSync(there('sheet.csv'), 'utf8'));
  const printed = (all: string[][]) => all.filter((row) => row[1] !== 'printed');
  expect(printed(readCsv(out))).toEqual(printed(rows));
  expect(rows[0]?.[0]).toBe('section');
});

it("[O5] is the owner's copy unless the workshop's is asked for", async () => {
  for (const form of ['--text', '--html']) {
    expect((await bench.run(['sheet', 'hatchback', form])).out).toMatch(/owner(?:'|&#39;)s copy/);
    const workshop = await bench.run(['sheet', 'hatchback', form, '--workshop', '--bench-time']);
    expect(workshop.out).toMatch(/workshop(?:'|&#39;)s copy/);
    expect(workshop.out).toMatch(/time at the bench/i);
  }
});

it.each(['--text', '--html', '--csv'])('never writes over a file without --force (%s)', async (form) => {
  const file = there(`kept${form}`);
  writeFileSync(file, 'mine');
  const refused = await bench.run(['sheet', 'hatchback', form, '-o', file]);
  expect(refused).toMatchObject({ exit: 2, out: '' });
  expect(refused.complaint).toContain('this is there already; choose another name, or add --force');
  expect(readFileSync(file, 'utf8')).toBe('mine');
  expect(await bench.run(['sheet', 'hatchback', form, '-o', file, '--force'])).toMatchObject({
    exit: 0,
    out: expect.stringMatching(
      /kept--(text|html|csv): the owner's copy, (as text|one page|a table), after call \d+\n$/,
    ),
  });
  expect(readFileSync(file, 'utf8')).not.toContain('mine');
});

it('makes no folder, and writes into none', async () => {
  expect(await bench.run(['sheet', 'hatchback', '--html', '-o', there('nowhere/sheet.html')])).toMatchObject({
    exit: 2,
  });
  mkdirSync(there('folder'));
  expect(await bench.run(['sheet', 'hatchback', '--html', '-o', there('folder'), '--force'])).toMatchObject({
    exit: 2,
  });
});

it.each(['--text', '--html', '--csv'])('[X3] verify reads the digest of a sheet in any form (%s)', async (form) => {
  const file = there(`sealed${form}`);
  expect((await bench.run(['sheet', 'hatchback', form, '-o', file])).exit).toBe(0);
  const agrees = await bench.run(['verify', 'hatchback', '--sheet', file]);
  expect(agrees).toMatchObject({ exit: 0, complaint: '' });
  expect(agrees.out).toContain('printed from this log after call 2, its last.');
  const digest = /digest ([0-9a-f]{64})/.exec(agrees.out)?.[1] as string;
  const other = readFileSync(file, 'utf8').replace(
    digest,
    digest.replace(/^./, (first) => (first === '0' ? '1' : '0')),
  );
  writeFileSync(file, other);
  expect(await bench.run(['verify', 'hatchback', '--sheet', file])).toMatchObject({ exit: 1 });
  // The sheet counts the calls, so that a log cut off at a line end is told as such.
  writeFileSync(
    bench.fileOf('shorter'),
    `${readFileSync(bench.fileOf('hatchback'), 'utf8').split('\n').slice(0, 2).join('\n')}\n`,
  );
  expect((await bench.run(['verify', 'shorter', '--sheet', file])).out).toContain(
    'the sheet counts 2 calls and 1 hold here',
  );
});
