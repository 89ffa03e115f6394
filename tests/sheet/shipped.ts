// The sheets that are looked at: of the demo jobs, and of the reference job played from its script.
import { fileURLToPath } from 'node:url';
import { readLog } from '../../src/job/log.ts';
import { sheetPage } from '../../src/sheet/page/page.ts';
import { demoLines } from '../demo/at-hand.ts';
import { playLines, scriptLines } from '../jobs/lines.ts';

const digest = 'ab'.repeat(32);
export type WhoseCopy = 'owner' | 'workshop';

export function demoPage(name: string, copy: WhoseCopy): string {
  const lines = demoLines(fileURLToPath(new URL(`../../demo-data/${name}.countback.jsonl`, import.meta.url)));
  const last = lines.at(-1);
  if (!last) throw new Error(`${name} has no lines`);
  return sheetPage(readLog(lines), { now: { ...last, atMs: last.atMs + 60_000 }, digest, copy, benchTime: true });
}
export function referencePage(copy: WhoseCopy): string {
  const { ledger, now } = playLines(scriptLines('reference-planned.calls'));
  return sheetPage(ledger, { now, digest, copy, benchTime: true });
}
