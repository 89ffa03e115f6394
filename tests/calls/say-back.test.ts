import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Desk } from '../../src/calls/desk.ts';
import { meantByLine, wordsOf } from '../../src/calls/line-reader.ts';
import { decide } from '../../src/job/decide.ts';
import { type Ledger, lastLine } from '../../src/job/ledger.ts';
import { type Line, readLine, type Stamp } from '../../src/job/line.ts';
import { appendLine, readLog } from '../../src/job/log.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import type { Said } from '../../src/job/said.ts';

const demo = fileURLToPath(new URL('../../demo-data/hatchback-day-two.countback.jsonl', import.meta.url));

function demoLedger(): Ledger {
  const lines = readFileSync(demo, 'utf8').trim().split('\n').slice(1);
  return readLog(
    lines.map((text) => {
      const { link: _, ...value } = JSON.parse(text) as { link: string };
      const read = readLine(value);
      if (!read.ok) throw new Error(read.what);
      return read.line;
    }),
  );
}
const deskAt = (ledger: Ledger, now: Stamp): Desk => ({ ledger, facing: { tray: '1', spec: {} }, now, plans: [] });

describe('a call said back in words', () => {
  it('[X5] reads back to the very same call, for every next call from the demo to the end of what can be closed', () => {
    let ledger = demoLedger();
    let now: Stamp = lastLine(ledger) as Line;
    let said = 0;
    const seen = new Set<string>();
    for (let call = 0; call < 400; call++) {
      now = { ...now, atMs: now.atMs + 60_000, awakeMs: now.awakeMs + 60_000 };
      const desk = deskAt(ledger, now);
      const points = openPointsWithNext(ledger, now);
      for (const { next } of call % 8 === 0 ? points : points.slice(0, 1)) {
        if (!next) continue;
        const words = wordsOf(desk, next);
        const back = meantByLine(desk, words);
        expect('meant' in back && 'say' in back.meant ? back.meant.say : back, words).toEqual(next);
        seen.add(next.verb);
        said++;
      }
      const next = points.find((p) => p.next)?.next;
      if (!next) break;
      ledger = taken(ledger, next, now);
    }
    expect(said).toBeGreaterThan(1000);
    expect(seen.size).toBeGreaterThan(12);
  });
});

function taken(ledger: Ledger, said: Said, now: Stamp): Ledger {
  const answer = decide(ledger, said, now);
  if ('refused' in answer) throw new Error(`${JSON.stringify(said)} was refused: ${answer.refused.because}`);
  return appendLine(ledger, {
    ...now,
    n: ledger.lines.length + 1,
    call: said.verb,
    by: 'line',
    facing: {},
    entries: answer.entries,
  });
}
