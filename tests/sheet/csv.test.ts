// The job sheet as a table: it reads back by RFC 4180, and no cell is one that a spreadsheet would run.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { cell, csvHeads, sheetCsv } from '../../src/sheet/csv.ts';
import { newStory } from './bench-story.ts';
import { builtJob, releasedJob } from './jobs.ts';
import { readCsv } from './read-csv.ts';

const released = releasedJob();
const digest = 'cd'.repeat(32);

it('every row has a cell for every head, ends in CR LF, and tells its line of the log', () => {
  for (const job of [released, builtJob(), newStory()]) {
    const text = sheetCsv(job.ledger, { now: job.now, digest });
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const [heads, ...rows] = readCsv(text);
    expect(heads).toEqual([...csvHeads]);
    expect(rows.filter((row) => row.length !== csvHeads.length)).toEqual([]);
    expect(rows).toContainEqual(['log', 'digest', digest, '', '', '', '', '']);
    expect(rows).toContainEqual(['log', 'lines', String(job.ledger.lines.length), '', '', '', '', '']);
  }
});

it('[O3 F4] tells findings, passes and what was fitted instead', () => {
  const rows = readCsv(sheetCsv(released.ledger, { now: released.now }));
  expect(rows).toContainEqual([
    'hole',
    'pump 3',
    'final, last, out of order',
    'torque: 10 Nm; tool: torque wrench',
    '',
    '2026-11-24 04:49',
    'Kim',
    '50',
  ]);
  expect(rows).toContainEqual([
    'finding',
    'area mount (critical)',
    'declined',
    'rubber cracked',
    'not this year',
    '2026-11-23 08:31',
    'owner',
    '32',
  ]);
  expect(rows).toContainEqual([
    'hole',
    'mount 2',
    'substitute',
    'wanted: bolt hex 14 M10x1.25x60 10.9',
    'right class not in stock',
    '',
    '',
    '',
  ]);
});

it("[O5] the owner's table has no reasons for overridden order", () => {
  const s = builtJob().call('fit', { hole: 'mount/1' });
  s.call('tighten', { hole: 'crank pulley/1', pass: 'final', method: { by: 'hand' } }, { because: 'done already' });
  const owner = sheetCsv(s.ledger, { now: s.now, copy: 'owner' });
  expect(owner).not.toContain('done already');
});

// Source of the characters: OWASP, "CSV Injection".
const formulas = [
  '=1+1',
  '+1+1',
  '-1+1',
  '@SUM(A1)',
  '\t=1',
  '\r=1',
  ' =1',
  '"=1"',
  "'=1",
  '=cmd|" /C calc"!A0',
  '＝1',
  '|x',
  '%0A-1',
];
it.each(formulas)('a cell of %j is text to a spreadsheet', (formula) => {
  const [[read = '']] = readCsv(`${cell(formula)}\r\n`) as [[string]];
  expect(read).toBe(`'${formula}`);
  const s = newStory().call('open-job', { label: 'car', notes: formula }).call('note', { words: formula });
  for (const row of readCsv(sheetCsv(s.ledger, { now: s.now }))) {
    for (const one of row) expect(one).not.toMatch(/^[\s"]*[=+@\t\r＝＋－＠|%]|^-(?!\d+(?:\.\d+)?$)/);
  }
});
it('a figure below nothing stays a figure', () =>
  expect([cell('-5'), cell('-0.5'), cell('-5a')]).toEqual(['-5', '-0.5', "'-5a"]));

it('whatever the cells say, they are read back as they were, but for the sign that makes a formula text', () => {
  const text = fc.string({ unit: fc.constantFrom(',', '"', ';', '\n', '\r', ' ', '=', 'a', '漢', '-', '1', "'") });
  fc.assert(
    fc.property(fc.array(text, { minLength: 2, maxLength: 6 }), (cells) => {
      const [read] = readCsv(`${cells.map(cell).join(',')}\r\n`);
      expect(read?.map((one, i) => (one === cells[i] ? one : one.slice(1)))).toEqual(cells);
    }),
  );
});
