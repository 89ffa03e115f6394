// Writes the sheets of the demo jobs and of the reference job as pictures and PDF into a folder, for a look at them.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { startBrowser } from './browser.ts';
import { demoPage, referencePage } from './shipped.ts';

const looks = {
  desk: { width: 1280 },
  'desk-dark': { width: 1280, dark: true },
  phone: { width: 390 },
  'phone-dark': { width: 390, dark: true },
} as const;

async function draw(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const browser = await startBrowser();
  try {
    for (const copy of ['owner', 'workshop'] as const) {
      const pages = {
        'van-thermostat': demoPage('van-thermostat', copy),
        'hatchback-day-two': demoPage('hatchback-day-two', copy),
        reference: referencePage(copy),
      };
      for (const [name, page] of Object.entries(pages)) {
        const path = join(folder, `${name}-${copy}`);
        writeFileSync(`${path}.html`, page);
        await browser.show(page);
        for (const [how, look] of Object.entries(looks))
          writeFileSync(`${path}-${how}.png`, await browser.picture(look));
        for (const paper of ['A4', 'Letter'] as const)
          writeFileSync(`${path}-${paper}.pdf`, await browser.print(paper));
      }
    }
  } finally {
    await browser.close();
  }
}

const [folder] = process.argv.slice(2);
if (folder === undefined) console.error('name the folder that the pictures go into');
else void draw(folder);
