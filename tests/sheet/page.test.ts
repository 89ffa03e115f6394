// The job sheet as a page: valid, readable without a script, complete, and the same in what it tells as the text.
import { type ConfigData, HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { sheetFacts } from '../../src/sheet/facts.ts';
import { pageOf, sheetPage } from '../../src/sheet/page/page.ts';
import { newStory, type Story } from './bench-story.ts';
import { builtJob, releasedJob, strippedJob } from './jobs.ts';

const digest = 'ab'.repeat(32);
const rules: ConfigData = { root: true, extends: ['html-validate:standard', 'html-validate:a11y'] };
const faultsIn = async (page: string): Promise<string[]> => {
  const report = await new HtmlValidate(rules).validateString(page);
  return report.results.flatMap((r) => r.messages.map((m) => `${m.line}:${m.column} ${m.ruleId}: ${m.message}`));
};
const page = (s: Story, more: { copy?: 'owner'; benchTime?: boolean } = {}) =>
  sheetPage(s.ledger, { now: s.now, digest, ...more });
/** What a reader sees, tags left out. */
const readable = (text: string): string =>
  text
    .slice(text.indexOf('<body>'))
    .replace(/<title>.*?<\/title>|<wbr>/g, '')
    .replace(/<br>|<small>|<\/(?:td|th|li|dd|dt|p|h\d|div|svg|text)>/g, ' ')
    .replace(/<[^>]*>/g, '')
    .replaceAll('&#39;', "'")
    .replaceAll('&quot;', '"')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ');

const released = releasedJob();
const jobs: [string, () => Story][] = [
  ['released', () => released],
  ['half built', builtJob],
  ['stripped', strippedJob],
  ['of nothing', newStory],
];

describe.each(jobs)('the page of a job %s', (_, job) => {
  it('is valid, for both copies', async () => {
    expect(await faultsIn(page(job(), { copy: 'owner' }))).toEqual([]);
    expect(await faultsIn(page(job(), { benchTime: true }))).toEqual([]);
  });

  it('needs nothing from elsewhere and runs nothing', () => {
    const text = page(job());
    expect(text).not.toMatch(/<(?:script|link|img|iframe|object|embed|base|form)\b|\bon\w+=|url\(|@import|https?:/i);
    expect(text).toContain(`content="default-src 'none'; style-src 'unsafe-inline'"`);
  });

  it('names every heading once, and its sections by them', () => {
    const text = page(job());
    const ids = [...text.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, by] of text.matchAll(/aria-labelledby="([^"]+)"/g)) expect(ids).toContain(by);
    expect(text.match(/<h1>/g)).toHaveLength(1);
  });
});

it('the validator finds what is wrong, so that its silence says something', async () => {
  expect(await faultsIn(page(released).replace('</ul>', ''))).not.toEqual([]);
  expect(await faultsIn(page(released).replace(' lang="en"', ''))).not.toEqual([]);
  expect(await faultsIn(page(released).replace('id="services"', 'id="findings"'))).not.toEqual([]);
});

it('tells whose car it is, how it stands, and the digest where verify reads it', () => {
  const text = readable(page(released, { copy: 'owner' }));
  expect(text).toContain("Job sheet, owner's copy bench car XX 12 Odometer 84210 km");
  expect(text).toContain('RELEASED by Ola on Wednesday 2026-11-25 07:28, line 89');
  expect(page(released)).toContain(`<code id="log-digest">${digest}</code>`);
});

it('[F4 X4] declined and accepted findings are plain to see, a declined safety point with a caution', () => {
  const text = readable(page(released, { copy: 'owner' }));
  expect(text).toMatch(
    /Declined by the owner area mount: rubber cracked critical found on arrival, 2026-11-23 08:04 the owner was told 2026-11-23 08:30, and said: not this year; declined by owner 2026-11-23 08:31: not this year ?CAUTION: /,
  );
  expect(text).toMatch(/Accepted as it is part pump: paint gone found on arrival, .* accepted by Ola .*: looks only/);
  expect(text.match(/CAUTION: /g)).toHaveLength(1);
  expect(text).toContain('mount bolt, right class 2026-12-01 85000 km coolant 2030-11-01 -');
});

it('[O3] keeps method, value, pass, tool and time of each hole, and what is not as it was', () => {
  const text = readable(page(released));
  expect(text).toContain(
    'hole fastener snug 2026-11-24 final torque: 10 Nm, torque wrench, by Kim, 2026-11-24 1 bolt hex 10 M6x25 04:46 04:50',
  );
  expect(text).toContain('3 bolt flange 10 M6x25 new (flanged bolt) new pattern: another head');
  expect(text).toContain('4 left empty by Ola: no boss behind it');
  expect(text).toContain('SUBSTITUTE where bolt hex 14 M10x1.25x60 10.9 is wanted: right class not in stock');
  expect(text).toContain('second look by Bo, 2026-11-25 1 bolt hex 14 M10x1.25x60 10.9 05:10 05:12 07:22');
});

it('tells repairs, sealant with its conditions, every try, fluids, parts and old parts', () => {
  const text = readable(page(released));
  expect(text).toContain(
    'pump 2 depth in the boss 16 mm; drilled 6.3 mm; tapped (M6 for insert); cleaned; insert 12 mm',
  );
  expect(text).toMatch(
    /pump face grey sealant \(moisture\), laid .* at the bench 23 deg C, 55 % humidity together .* fully cured \(24 h/,
  );
  expect(text).toMatch(/try 1, .* cam off by 1 tooth backwards; FAILED.* try 2, .* tension by pointer right; passed/);
  expect(text).toMatch(/coolant: drained .*; filled .*, 5\.2 l coolant mix; leak-checked after running/);
  expect(text).toMatch(/fitted old part pump 2026-11-24 04:40 the old one: leaking \(at the shaft\)/);
});

it('[O5] gives the reasons of overridden order, and the time at the bench, to the workshop alone and only when asked', () => {
  const s = strippedJob().call('fit', { hole: 'mount/1' });
  s.call('tighten', { hole: 'mount/1' }, { because: 'done already' });
  const [workshop, owner] = [readable(page(s)), readable(page(s, { copy: 'owner' }))];
  expect(workshop).toMatch(/order overridden, with the reason .* mount 1.* \(critical\) O1 done already/);
  expect(owner).not.toContain('done already');
  expect(owner).toContain('critical, and done out of order: mount 1');
  expect(workshop).not.toContain('Time at the bench');
  expect(readable(page(s, { copy: 'owner', benchTime: true }))).not.toContain('Time at the bench');
  const { length } = s.ledger.lines;
  expect(readable(page(s, { benchTime: true }))).toContain(`2026-11-23 ${length - 1} min ${length}`);
});

it('a break of more than half an hour, or a clock put forward, is no time at the bench', () => {
  const s = newStory().call('open-job', { label: 'car' }).later(31).call('note', { words: 'a' }).later(28);
  s.call('note', { words: 'b' });
  // 32 minutes of break are left out, 29 count; each call takes one.
  expect(readable(sheetPage(s.ledger, { now: s.now, benchTime: true }))).toContain('2026-11-23 29 min 3');
});

describe('the maps', () => {
  const placed = () => {
    const s = newStory().call('open-job', { label: 'car' });
    s.call('declare', {
      entries: [
        {
          kind: 'area-declared',
          area: 'cover',
          outline: [
            [0, 0],
            [40, 0],
            [40, 20],
            [0, 20],
          ],
        },
        { kind: 'hole-declared', hole: 'cover/1', at: [5, 5] },
        { kind: 'hole-declared', hole: 'cover/2', at: [35, 5] },
        { kind: 'hole-declared', hole: 'cover/3', at: [20, 15] },
      ],
    });
    return s.call('remove', { hole: 'cover/1', to: 'tray:1', spec: { head: 'hex 10', thread: 'M6' } });
  };

  it('draw each hole where the plan has it, open, closed and as found by shape and word', () => {
    const text = page(placed()).replace(/^.*<figure/s, '');
    expect(text).toContain('aria-label="cover: 3 holes: 1 OPEN; 2 as found"');
    expect(text).toContain('d="M 0 0 L 300 0 L 300 150 L 0 150 Z"');
    expect(text.match(/<rect class="hole open"/g)).toHaveLength(1);
    expect(text.match(/<circle class="hole"/g)).toHaveLength(2);
    expect(text).toMatch(/<text x="37\.5" y="37\.5"[^>]*>1<\/text>/);
    expect(text).toMatch(/<text x="262\.5" y="37\.5"[^>]*>2<\/text>/);
    expect(text).toMatch(/<text x="150" y="112\.5"[^>]*>3<\/text>/);
    expect(text).not.toContain('places not measured');
  });

  it('lie inside their drawing, every one of them', () => {
    for (const text of [page(placed()), page(released)]) {
      const drawings = [...text.matchAll(/<svg viewBox="(\S+) (\S+) (\S+) (\S+)"[^>]*>(.*?)<\/svg>/gs)];
      expect(drawings.length).toBeGreaterThan(0);
      for (const [, left, top, width, height, body] of drawings) {
        for (const [, x, y] of (body as string).matchAll(/<text x="(\S+)" y="(\S+)"/g)) {
          expect(Number(x)).toBeGreaterThan(Number(left));
          expect(Number(x)).toBeLessThan(Number(left) + Number(width));
          expect(Number(y)).toBeGreaterThan(Number(top));
          expect(Number(y)).toBeLessThan(Number(top) + Number(height));
        }
      }
    }
  });
});

it('the page tells every section that the facts have', () => {
  const facts = sheetFacts(released.ledger, { now: released.now });
  const text = readable(pageOf(facts, 'workshop'));
  for (const f of facts.findings) expect(text).toContain(f.what);
  for (const a of facts.areas) expect(text).toContain(`${a.area}${a.critical ? ' critical' : ''} ${a.closed} of`);
  for (const one of [...facts.again.connections, ...facts.again.temporaries]) expect(text).toContain(one);
  for (const l of facts.leavings) expect(text).toContain(`by ${l.by}`);
});
