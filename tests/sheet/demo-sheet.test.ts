// The sheets of the jobs that ship with the program: valid pages, short enough for a few sheets of paper, and the same
// log that verify calls unaltered.
import { readFileSync } from 'node:fs';
import { HtmlValidate } from 'html-validate';
import { expect, it } from 'vitest';
import { stateOf } from '../../src/job/ledger.ts';
import { readLine } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';
import { digestOnSheet } from '../../src/sheet/digest-on-sheet.ts';
import { sheetPage } from '../../src/sheet/page/page.ts';
import { sheetText } from '../../src/sheet/text.ts';
import { readJournal } from '../../src/store/journal.ts';
import { sealOf } from '../../src/store/seal.ts';

const demo = (name: string) => {
  const bytes = readFileSync(new URL(`../../demo-data/${name}.countback.jsonl`, import.meta.url));
  const { lines } = readJournal(bytes, name, readLine);
  const last = lines.at(-1);
  if (!last) throw new Error(`${name} has no lines`);
  const { digests, alterations } = sealOf(bytes);
  const now = { atMs: last.atMs + 60_000, zoneMin: last.zoneMin, run: last.run + 1, awakeMs: 0 };
  return { ledger: readLog(lines), options: { now, digest: digests.at(-1) as string }, alterations };
};

it.each(['van-thermostat', 'hatchback-day-two'])('%s: valid, unaltered, and its digest read back', async (name) => {
  const { ledger, options, alterations } = demo(name);
  expect(alterations).toEqual([]);
  const vehicle = stateOf(ledger, 'vehicle', 'vehicle')?.label;
  expect(vehicle).toBeTruthy();
  const printed = { digest: options.digest, calls: ledger.lines.length, vehicle };
  for (const copy of ['owner', 'workshop'] as const) {
    const page = sheetPage(ledger, { ...options, copy, benchTime: true });
    const report = await new HtmlValidate({
      root: true,
      extends: ['html-validate:standard', 'html-validate:a11y'],
    }).validateString(page);
    expect(report.results.flatMap((r) => r.messages)).toEqual([]);
    expect(digestOnSheet(page)).toEqual(printed);
    const text = sheetText(ledger, { ...options, copy });
    expect(digestOnSheet(text)).toEqual(printed);
    expect(digestOnSheet(text.replaceAll('\n', '\r\n'))?.digest).toBe(options.digest);
  }
});

it('the finished job says that it is released, and its text is no more than six pages of sixty lines', () => {
  const { ledger, options } = demo('van-thermostat');
  expect(sheetPage(ledger, { ...options, copy: 'owner' })).toContain('<p class="verdict">RELEASED by the workshop on ');
  expect(sheetText(ledger, options).split('\n').length).toBeLessThanOrEqual(6 * 60);
});
