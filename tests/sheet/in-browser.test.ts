// The page in a browser: on a desk and on a phone, light and dark, printed on A4 and Letter, without a script run and
// with nothing fetched. Skipped where Chromium is missing, but on the build machine.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sheetPage } from '../../src/sheet/page/page.ts';
import { newStory } from './bench-story.ts';
import { type Browser, isThere, missing, papers, startBrowser } from './browser.ts';
import { releasedJob } from './jobs.ts';
import { contrast, pagesOf } from './painted.ts';
import { demoPage, referencePage } from './shipped.ts';

const digest = 'ab'.repeat(32);
if (!isThere) console.warn(`the page of the sheet was not looked at in a browser: ${missing}`);

const released = (): string => {
  const s = releasedJob();
  return sheetPage(s.ledger, { now: s.now, digest });
};
/** Words without a blank wherever a call takes words. */
const longWords = (): string => {
  const long = 'w'.repeat(60);
  const s = newStory()
    .call('open-job', { label: long, registration: 'X'.repeat(20), notes: long })
    .call('order-service', { service: long })
    .call('declare', { entries: [{ kind: 'area-declared', area: long, critical: true, companions: [long] }] })
    .call('make-finding', { at: `area:${long}`, what: long })
    .call('tell-owner', { finding: 'd4.1', said: long })
    .call('close-finding', { finding: 'd4.1', how: 'declined', who: long, because: long })
    .call('remove', { hole: `${long}/1`, to: 'tray:1', spec: { head: long, thread: long } })
    .call('count-holes', { area: long, count: 1 })
    .call('fit', { hole: `${long}/1` })
    .call('tighten', { hole: `${long}/1`, pass: long, tool: long }, { who: long })
    .call('note', { words: long })
    .call('note-due', { what: long, on: '2027-01-01', atDistance: 99000 });
  return sheetPage(s.ledger, { now: s.now, digest, benchTime: true });
};

describe.skipIf(!isThere)('the page in a browser', () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await startBrowser();
  });
  afterAll(() => browser?.close());

  it('is no wider than a phone, a narrow one and a window, whatever it says, and fetches nothing', async () => {
    for (const page of [demoPage('van-thermostat', 'owner'), referencePage('owner'), released(), longWords()]) {
      expect(await browser.show(page)).toEqual([]);
      for (const width of [320, 390, 1280]) expect(await browser.widthIn({ width })).toBe(width);
    }
    // A picture from elsewhere and a box too wide are seen, so that silence says something.
    const foreign = released().replace(/<meta http-equiv[^>]*>/, '');
    expect(await browser.show(foreign.replace('<main>', '<main><img src="file:///nowhere.png" alt="">'))).toEqual([
      'file:///nowhere.png',
    ]);
    await browser.show(released().replace('<main>', '<main><div style="width: 500px">wide</div>'));
    expect(await browser.widthIn({ width: 390 })).toBeGreaterThan(500);
  });

  it('lets nothing in from elsewhere, even where a picture got into it', async () => {
    const page = released().replace('<main>', '<main><img src="file:///nowhere.png" alt="">');
    expect(await browser.show(page)).toEqual([]);
  });

  it('is dark where the reader’s screen is, and read as easily', async () => {
    await browser.show(released());
    const light = await browser.colours({ width: 1280 });
    const dark = await browser.colours({ width: 1280, dark: true });
    expect(contrast(light.ink, light.paper)).toBeGreaterThan(7);
    expect(contrast(dark.ink, dark.paper)).toBeGreaterThan(7);
    expect(contrast(light.paper, dark.paper)).toBeGreaterThan(7);
  });

  it('the finished demo job is at most six pages of paper, as is the reference job', async () => {
    for (const page of [
      demoPage('van-thermostat', 'owner'),
      demoPage('van-thermostat', 'workshop'),
      referencePage('owner'),
    ]) {
      await browser.show(page);
      for (const paper of Object.keys(papers) as (keyof typeof papers)[]) {
        const { pages, width, height } = pagesOf(await browser.print(paper));
        expect(pages).toBeGreaterThan(0);
        expect(pages).toBeLessThanOrEqual(6);
        const mm = (points: number) => (points * 25.4) / 72;
        expect(mm(width)).toBeCloseTo(papers[paper].width, 0);
        expect(mm(height)).toBeCloseTo(papers[paper].height, 0);
      }
    }
    await browser.show(`${'<p style="break-before: page">one</p>'.repeat(9)}`);
    expect(pagesOf(await browser.print('A4')).pages).toBe(9);
  });
});
