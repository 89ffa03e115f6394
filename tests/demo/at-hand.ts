// The shipped demo job, read as the program reads it, for tests that want a job in the middle of its work.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Ledger, lastLine } from '../../src/job/ledger.ts';
import { type Line, readLine, type Stamp } from '../../src/job/line.ts';
import { readLog } from '../../src/job/log.ts';

const demo = fileURLToPath(new URL('../../demo-data/hatchback-day-two.countback.jsonl', import.meta.url));

export function demoLines(path: string = demo): Line[] {
  return readFileSync(path, 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((text) => {
      const { link: _, ...value } = JSON.parse(text) as { link: string };
      const read = readLine(value);
      if (!read.ok) throw new Error(read.what);
      return read.line;
    });
}
/** The job on its second day, and the moment of its last line. */
export function demoLedger(): { ledger: Ledger; now: Stamp } {
  const ledger = readLog(demoLines());
  return { ledger, now: lastLine(ledger) as Line };
}
