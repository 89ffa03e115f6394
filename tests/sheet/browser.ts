// Headless Chromium for the tests of the page, driven over a pipe: one start, a page at a time, no script in the page
// run. It paints, prints and measures; what is right is for the tests to say.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable, Writable } from 'node:stream';
import { pathToFileURL } from 'node:url';

const chromium = process.env.COUNTBACK_CHROMIUM ?? '/usr/bin/chromium';
export const isThere = existsSync(chromium);
export const missing = `no ${chromium} here (apt-get install chromium)`;

/** In millimetres. */
export const papers = { A4: { width: 210, height: 297 }, Letter: { width: 215.9, height: 279.4 } } as const;
export type Paper = keyof typeof papers;
export type Look = { width: number; dark?: boolean; whole?: boolean };

export type Browser = {
  /** Shows this page, and answers with what it asked of the network or the disk, but for what its own policy held back. */
  show(page: string): Promise<string[]>;
  /** The width that the page takes in a window of this many CSS pixels. */
  widthIn(look: Look): Promise<number>;
  /** A PNG: the whole page, however long. */
  picture(look: Look): Promise<Buffer>;
  /** The colours behind and of the text of the body, as painted. */
  colours(look: Look): Promise<{ ink: string; paper: string }>;
  print(paper: Paper): Promise<Buffer>;
  close(): Promise<void>;
};

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--hide-scrollbars',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--remote-debugging-pipe',
];

type Answer = { id?: number; method?: string; params?: unknown; result?: unknown; error?: { message: string } };

export async function startBrowser(): Promise<Browser> {
  const folder = mkdtempSync(join(tmpdir(), 'countback-browser-'));
  const child = spawn(chromium, [...flags, `--user-data-dir=${folder}`, 'about:blank'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'],
  });
  const { say, on } = pipeTo(child);
  const { targetInfos } = await say<{ targetInfos: { type: string; targetId: string }[] }>('Target.getTargets');
  const targetId = targetInfos.find((t) => t.type === 'page')?.targetId;
  const { sessionId } = await say<{ sessionId: string }>('Target.attachToTarget', { targetId, flatten: true });
  const page = <T>(method: string, params: object = {}) => say<T>(method, params, sessionId);
  await page('Page.enable');
  await page('Network.enable');
  await page('DOM.enable');
  await page('CSS.enable');
  await page('Emulation.setScriptExecutionDisabled', { value: true });

  let shown = 0;
  const asked = new Map<string, string>();
  on('Network.requestWillBeSent', (params) => {
    const { requestId, request } = params as { requestId: string; request: { url: string } };
    asked.set(requestId, request.url);
  });
  on('Network.loadingFailed', (params) => {
    const { requestId, blockedReason } = params as { requestId: string; blockedReason?: string };
    if (blockedReason === 'csp') asked.delete(requestId);
  });
  const opened = async ({ width, dark }: Look, height = 800): Promise<void> => {
    const features = [{ name: 'prefers-color-scheme', value: dark ? 'dark' : 'light' }];
    await page('Emulation.setEmulatedMedia', { media: 'screen', features });
    const mobile = width < 600;
    await page('Emulation.setDeviceMetricsOverride', { width, height, deviceScaleFactor: 1, mobile });
  };
  const sizeOf = async () =>
    (await page<{ cssContentSize: { width: number; height: number } }>('Page.getLayoutMetrics')).cssContentSize;

  return {
    async show(html) {
      const file = join(folder, `page-${++shown}.html`);
      writeFileSync(file, html);
      const { href } = pathToFileURL(file);
      asked.clear();
      const loaded = new Promise<void>((done) => on('Page.loadEventFired', () => done()));
      await page('Page.navigate', { url: href });
      await loaded;
      return [...asked.values()].filter((url) => url !== href);
    },
    async widthIn(look) {
      await opened(look);
      return (await sizeOf()).width;
    },
    async picture(look) {
      await opened(look);
      const { width, height } = await sizeOf();
      const clip = { x: 0, y: 0, width, height, scale: 1 };
      const shot = await page<{ data: string }>('Page.captureScreenshot', { captureBeyondViewport: true, clip });
      return Buffer.from(shot.data, 'base64');
    },
    async colours(look) {
      await opened(look);
      const { root } = await page<{ root: { nodeId: number } }>('DOM.getDocument');
      const { nodeId } = await page<{ nodeId: number }>('DOM.querySelector', { nodeId: root.nodeId, selector: 'body' });
      const { computedStyle } = await page<{ computedStyle: { name: string; value: string }[] }>(
        'CSS.getComputedStyleForNode',
        { nodeId },
      );
      const painted = (name: string) => computedStyle.find((one) => one.name === name)?.value ?? '';
      return { ink: painted('color'), paper: painted('background-color') };
    },
    async print(paper) {
      const { width, height } = papers[paper];
      // Whoever reads in the dark prints black on white all the same.
      await page('Emulation.setEmulatedMedia', {
        media: '',
        features: [{ name: 'prefers-color-scheme', value: 'dark' }],
      });
      const mm = 25.4;
      const { data } = await page<{ data: string }>('Page.printToPDF', {
        paperWidth: width / mm,
        paperHeight: height / mm,
        preferCSSPageSize: true,
      });
      return Buffer.from(data, 'base64');
    },
    async close() {
      const ended = new Promise((done) => child.once('exit', done));
      await say('Browser.close').catch(() => undefined);
      await ended;
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** Messages as JSON, each ended by a null byte. */
function pipeTo(child: ChildProcess) {
  const [, , , toIt, fromIt] = child.stdio as unknown as [null, null, null, Writable, Readable];
  const waiting = new Map<number, { done: (value: never) => void; failed: (why: Error) => void }>();
  const listeners = new Map<string, (params: unknown) => void>();
  let last = 0;
  let rest = '';
  fromIt.setEncoding('utf8').on('data', (text: string) => {
    const messages = `${rest}${text}`.split('\0');
    rest = messages.pop() ?? '';
    for (const message of messages) {
      const { id, method, params, result, error } = JSON.parse(message) as Answer;
      if (method !== undefined) listeners.get(method)?.(params);
      const one = id === undefined ? undefined : waiting.get(id);
      if (id === undefined || !one) continue;
      waiting.delete(id);
      if (error) one.failed(new Error(error.message));
      else one.done(result as never);
    }
  });
  const allFailed = (why: string) => {
    for (const one of waiting.values()) one.failed(new Error(why));
    waiting.clear();
  };
  child.once('error', (error) => allFailed(error.message));
  child.once('exit', (code) => allFailed(`the browser ended with ${code}`));
  // Broken off while it ends: `exit` has told it.
  toIt.on('error', () => undefined);
  return {
    say: <T>(method: string, params: object = {}, sessionId?: string): Promise<T> =>
      new Promise<T>((done, failed) => {
        const id = ++last;
        waiting.set(id, { done, failed });
        toIt.write(`${JSON.stringify({ id, method, params, ...(sessionId && { sessionId }) })}\0`);
      }),
    on: (method: string, heard: (params: unknown) => void) => listeners.set(method, heard),
  };
}
