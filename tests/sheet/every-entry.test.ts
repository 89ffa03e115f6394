// Hostile text in every field of every kind of entry stays text: on the page, in a table, on a terminal.
import { HtmlValidate } from 'html-validate';
import { expect, it } from 'vitest';
import { entryKinds } from '../../src/job/entry.ts';
import { sheetCsv } from '../../src/sheet/csv.ts';
import { sheetPage } from '../../src/sheet/page/page.ts';
import { standingText } from '../../src/sheet/standing-text.ts';
import { sheetText } from '../../src/sheet/text.ts';
import { everyEntry } from './every-entry.ts';
import { readCsv } from './read-csv.ts';

const steering = /(?!\n)[\p{Cc}\p{Cs}\u{202A}-\u{202E}\u{2066}-\u{2069}]/u;
const ofThePage = new Set(
  `!doctype html head meta title style body header main section div p span strong small em br wbr a h1 h2 h3 ul li dl dt dd
  table caption thead tbody tr th td figure figcaption svg path circle rect g text code`.split(/\s+/),
);
const tagsOf = (page: string) => [...page.matchAll(/<\/?([^\s>/]+)/g)].map(([, name]) => (name ?? '').toLowerCase());
const forms = (evil: string) => {
  const { story, ...counts } = everyEntry(evil);
  const options = { now: story.now, digest: evil, copy: 'workshop', benchTime: true } as const;
  return {
    ...counts,
    text: sheetText(story.ledger, options),
    page: sheetPage(story.ledger, options),
    table: sheetCsv(story.ledger, options),
    standing: standingText(story.ledger, { now: story.now, wordsOf: () => evil }),
  };
};

it('every kind of entry is there, and hostile text in nearly every field that takes text', () => {
  const { entries, textFields, hostileFields } = everyEntry('<b>"x\'&');
  expect(new Set(entries.map((e) => e.kind))).toEqual(new Set(entryKinds));
  // The others are ids and digests, which take nothing else.
  expect(hostileFields).toBeGreaterThan(100);
  expect(hostileFields / textFields).toBeGreaterThan(0.75);
});

it.each(['<img src=x onerror=alert(1)>', '"><script>alert(1)</script>', "</style></title><b onclick='x'>", '<!--<b>'])(
  'on the page %j is words',
  async (evil) => {
    const { page } = forms(evil);
    expect(tagsOf(page).filter((name) => !ofThePage.has(name))).toEqual([]);
    // What stands in quotes is a value, and no quote of the job's gets out of it.
    expect(page.replace(/"[^"]*"/g, '""')).not.toMatch(/<[^>]*\son\w+=/);
    expect(page.split('&lt;').length).toBeGreaterThan(60);
    const report = await new HtmlValidate({ root: true, extends: ['html-validate:standard'] }).validateString(page);
    expect(report.results.flatMap((r) => r.messages.map((m) => `${m.ruleId}: ${m.message}`))).toEqual([]);
  },
);

it.each(['=1+1', '+cmd|x', '-2+3', '@SUM(1)', '\t=1', '"=1"&"', "'=2", '\uff1d1+1'])(
  'in a table %j is words',
  (evil) => {
    const rows = readCsv(forms(evil).table);
    expect(rows.every((row) => row.length === 8)).toBe(true);
    const running = rows
      .flat()
      .filter((cell) => /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/.test(cell) && !/^-?\d+(\.\d+)?$/.test(cell));
    expect(running).toEqual([]);
    expect(rows.flat().filter((cell) => cell.startsWith("'")).length).toBeGreaterThan(10);
  },
);

it.each([
  '\u001b[2J\u001b[31mred',
  '\u001b]0;title\u0007',
  '\u009b31m\u202eturned',
  'a\r\nb\u0000c',
  'half \ud83d pair',
])('on a terminal %j steers nothing', (evil) => {
  const { text, page, table, standing } = forms(evil);
  for (const one of [text, page, table.replaceAll('\r\n', '\n'), standing]) expect(one).not.toMatch(steering);
});
