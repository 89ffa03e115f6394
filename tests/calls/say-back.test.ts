import { describe, expect, it } from 'vitest';
import type { Desk } from '../../src/calls/desk.ts';
import { meantByLine, wordsOf } from '../../src/calls/line-reader.ts';
import { decide } from '../../src/job/decide.ts';
import type { Ledger } from '../../src/job/ledger.ts';
import type { Stamp } from '../../src/job/line.ts';
import { appendLine } from '../../src/job/log.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import type { Said } from '../../src/job/said.ts';
import { demoLedger } from '../demo/at-hand.ts';

const deskAt = (ledger: Ledger, now: Stamp): Desk => ({
  ledger,
  facing: { tray: '1', spec: {} },
  now,
  plans: () => [],
});

describe('a call said back in words', () => {
  it('[X5] reads back to the very same call, for every next call from the demo to the end of what can be closed', () => {
    let { ledger, now } = demoLedger();
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
