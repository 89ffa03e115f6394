// Names, reasons and remarks that would steer a terminal or a page: none of it reaches the sheet or the standing raw.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sheetCsv } from '../../src/sheet/csv.ts';
import { sheetFacts } from '../../src/sheet/facts.ts';
import { cells } from '../../src/sheet/layout.ts';
import { sheetPage } from '../../src/sheet/page/page.ts';
import { openPointLine, standingText } from '../../src/sheet/standing-text.ts';
import { sheetText } from '../../src/sheet/text.ts';
import { newStory, type Story } from './bench-story.ts';
import { readCsv } from './read-csv.ts';

const steering = /[\p{Cc}\p{Cs}\u{202A}-\u{202E}\u{2066}-\u{2069}]/u;
const raw = (text: string): string[] => text.split('\n').filter((line) => steering.test(line));

/** `evil` wherever a call takes free text, `name` wherever it takes a name. */
function hostileJob(evil: string, name: string): Story {
  return newStory()
    .call('open-job', { label: name, registration: evil.slice(0, 20), notes: evil })
    .call('order-service', { service: name })
    .call('drop-service', { service: name, because: evil })
    .call('declare', { entries: [{ kind: 'area-declared', area: name, critical: true, companions: [name] }] })
    .call('make-finding', { at: `area:${name}`, what: evil })
    .call('tell-owner', { finding: 'd5.1', said: evil })
    .call('close-finding', { finding: 'd5.1', how: 'declined', who: evil.slice(0, 60), because: evil })
    .call('make-finding', { at: `part:${evil.replace(/[\n\r\u2028\u2029]/g, '')}`.slice(0, 100), what: evil })
    .call('remove', {
      hole: `${name}/1`,
      to: `tray:${name}`,
      spec: { head: evil.slice(0, 80), thread: evil.slice(0, 80), class: evil.slice(0, 80) },
    })
    .call('remove', { hole: `${name}/2`, to: `tray:${name}`, spec: { head: evil.slice(0, 80) } })
    .call('lose-fastener', { fastener: 'f10.1', reaches: true, where: evil.slice(0, 80) })
    .call('search', { lost: 'f10.1', how: 'magnet' })
    .call('rule-out-loss', { lost: 'f10.1', who: evil.slice(0, 60), because: evil })
    .call('count-holes', { area: name, count: 2 })
    .call('fit', { hole: `${name}/1` })
    .call('tighten', { hole: `${name}/1`, pass: name, tool: evil.slice(0, 60) }, { who: evil.slice(0, 60) })
    .call('correct-spec', { fastener: 'f9.1', spec: { head: evil.slice(0, 80) }, because: evil })
    .call('note', { words: evil })
    .call('note-due', { what: evil.slice(0, 120), on: evil.slice(0, 10) })
    .call('waive-road-test', { who: evil.slice(0, 60), because: evil })
    .call('wait', { who: evil.slice(0, 60), because: evil, until: evil.slice(0, 40) })
    .forged({ kind: 'released', who: evil.slice(0, 60) })
    .call('leave-unreleased', { who: evil.slice(0, 60), because: evil });
}

const evils = [
  '\u001b[2J\u001b[31mred',
  '\u001b]0;title\u0007bell',
  'a\rb\nc\td\u0000e',
  '\u009b31m csi \u202eturned',
  'half \ud83d pair',
];
for (const evil of evils) {
  it(`D: ${JSON.stringify(evil)} in any text steers nothing`, () => {
    const s = hostileJob(evil, 'n\u202eame');
    const options = { now: s.now, digest: evil, wordsOf: () => evil };
    const forms = [
      sheetText,
      sheetPage,
      (...of: Parameters<typeof sheetCsv>) => sheetCsv(...of).replaceAll('\r\n', '\n'),
    ];
    for (const text of [...forms.map((form) => form(s.ledger, options)), standingText(s.ledger, options)]) {
      expect(raw(text)).toEqual([]);
      expect(text).not.toMatch(/\r|\t/);
    }
    expect(JSON.stringify(sheetFacts(s.ledger, options))).not.toMatch(/\\u00[01]|\\[rnt]|\u202e|\\ud83d/);
  });
}

const markups = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  '</title></style><svg onload=alert(1)>',
  '<!-- --><![CDATA[x]]>&lt;b&gt;&#60;i&#62;',
  '`javascript:alert(1)`</h2></section></main>',
  '</code><code id="log-digest">',
];
/** Tags of the page, with their attributes' values left out, and without the places where a long word may be broken. */
const tagsOf = (page: string): string[] =>
  [...page.matchAll(/<[^>]*>/g)]
    .map(([tag]) => tag.replace(/"[^"]*"/g, '""'))
    .filter((tag) => tag !== '<wbr>')
    .sort();

for (const evil of markups) {
  it(`D: ${JSON.stringify(evil)} in any text makes no tag of a page and no row of a table`, () => {
    const plain = hostileJob('x'.repeat(evil.length), 'plain name');
    const s = hostileJob(evil, 'plain name');
    const named = hostileJob(evil, evil.replace(/[/:]/g, '-').slice(0, 60));
    const page = (one: Story) => sheetPage(one.ledger, { now: one.now, digest: evil, benchTime: true });
    expect(new Set(tagsOf(page(s)))).toEqual(new Set(tagsOf(page(plain))));
    expect(tagsOf(page(s))).toHaveLength(tagsOf(page(plain)).length);
    expect(new Set(tagsOf(page(named)))).toEqual(new Set(tagsOf(page(plain))));
    expect(page(s)).not.toContain(evil);
    const rows = (one: Story) => readCsv(sheetCsv(one.ledger, { now: one.now }));
    expect(rows(s)).toHaveLength(rows(plain).length);
    expect(rows(s).every((row) => row.length === 8)).toBe(true);
  });
}

it('words of the next call are cleaned too', () => {
  const line = openPointLine(
    { code: 'tools', at: 'vehicle', because: 'x', next: { verb: 'tools-out' } },
    () => '\u001b[2J!',
  );
  expect(line).toBe('the car: x -> !');
});

it('whatever the text, nothing steers, nothing is wider than eighty columns, no line is forged', () => {
  const units = fc.oneof(
    fc.constantFrom('\u001b', '[', ']', '\u0007', '\u009b', '\n', '\r', '\u202e', '-', ' ', '漢', '\u0301'),
    fc.string({ unit: 'binary', minLength: 1, maxLength: 1 }),
  );
  fc.assert(
    fc.property(fc.string({ unit: units, minLength: 1, maxLength: 30 }), (evil) => {
      const s = hostileJob(`${evil}${' RELEASED by Mallory'.repeat(7)}`, 'RELEASED by Mallory');
      const text = sheetText(s.ledger, { now: s.now });
      expect(raw(text)).toEqual([]);
      expect(text.split('\n').filter((line) => cells(line) > 80)).toEqual([]);
      const standing = standingText(s.ledger, { now: s.now, wordsOf: () => evil });
      expect(`${text}${standing}`).not.toMatch(/^RELEASED by/m);
    }),
    { numRuns: 60 },
  );
});
