// What holds of every job, whatever is called or written: found by chance, shrunk to a short story when it fails.
// RUNS and SEED in the environment ask for more, or for others.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bookDifferences } from '../../src/job/books.ts';
import { decide, verbs } from '../../src/job/decide.ts';
import { type Drawers, everyKey } from '../../src/job/drawers.ts';
import type { Entry } from '../../src/job/entry.ts';
import { emptyLedger, type Ledger, stateOf } from '../../src/job/ledger.ts';
import { type Line, readLine } from '../../src/job/line.ts';
import { appendLine, readLog } from '../../src/job/log.ts';
import { openPointsWithNext } from '../../src/job/next-call.ts';
import { openPoints } from '../../src/job/open-points.ts';
import { losesFooting } from '../../src/job/striking.ts';
import { whatHangs } from '../../src/job/what-hangs.ts';
import { anyEntry, anyMoves, played, saidOf } from './arbitrary.ts';
import { frozenLedger } from './bench.ts';

const often = (times: number): fc.Parameters<unknown> => ({
  numRuns: Number(process.env.RUNS ?? times),
  seed: Number(process.env.SEED ?? 20_260_302),
});

/** Any lines at all, some of them striking or restoring others, the clock going any way. */
const anyLines: fc.Arbitrary<Line[]> = fc
  .array(
    fc.record({
      entries: fc.array(anyEntry, { minLength: 1, maxLength: 3 }),
      more: fc.nat(1),
      struck: fc.option(fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 3 }), { freq: 4 }),
      restored: fc.option(fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 3 }), { freq: 6 }),
      minutes: fc.integer({ min: -90, max: 600 }),
      run: fc.nat(2),
    }),
    { maxLength: 60, size: 'max' },
  )
  .map((all) => {
    let atMs = Date.UTC(2026, 2, 2, 8);
    return all.map(({ entries, struck, restored, minutes, run }, i): Line => {
      atMs += minutes * 60_000;
      const strikes: Entry[] = [
        ...(struck ? [{ kind: 'calls-struck' as const, lines: struck }] : []),
        ...(restored ? [{ kind: 'calls-restored' as const, lines: restored }] : []),
      ];
      const said = (strikes.length > 0 ? strikes : entries) as [Entry, ...Entry[]];
      return {
        n: i + 1,
        atMs,
        zoneMin: 60,
        run: 1 + run,
        awakeMs: Math.max(0, minutes) * 60_000,
        call: 'any',
        by: 'line',
        facing: {},
        entries: said,
      };
    });
  });

const inOrder = (value: Record<string, unknown>) =>
  Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
const flat = (drawers: Drawers<unknown>) => inOrder(Object.fromEntries(everyKey(drawers)));
/** All that a ledger holds, however it came to it. */
const held = ({ lines, struck, chains, states, names, misfits, tallies, verdicts, exchanges }: Ledger) => ({
  lines: lines.length,
  struck: flat(struck),
  chains: Object.entries(flat(chains)).map(([key, row]) => {
    const { all, length } = row as { all: number[]; length: number };
    return [key, all.slice(0, length)];
  }),
  states: Object.fromEntries(
    Object.entries(states).map(([sort, drawers]) => [sort, flat(drawers as Drawers<unknown>)]),
  ),
  names: Object.fromEntries(Object.entries(names).map(([sort, row]) => [sort, row.all.slice(0, row.length)])),
  misfits: flat(misfits),
  tallies,
  verdicts,
  exchanges,
});
const lastOf = (lines: readonly Line[]) => lines.at(-1) ?? { atMs: 0, zoneMin: 0, run: 1, awakeMs: 0 };
const appended = (lines: readonly Line[]): Ledger =>
  lines.reduce((ledger: Ledger, line) => frozenLedger(appendLine(ledger, line)), emptyLedger);

describe('any lines at all', () => {
  it('[X1] never throw: what does not fit is a misfit, and every question is answered', () => {
    fc.assert(
      fc.property(anyLines, (lines) => {
        for (const line of lines) expect(readLine(JSON.parse(JSON.stringify(line)))).toMatchObject({ ok: true });
        const ledger = appended(lines);
        const now = lastOf(lines);
        openPointsWithNext(ledger, now);
        whatHangs(ledger, now);
        bookDifferences(ledger);
      }),
      often(120),
    );
  });

  it('[U1] appended one by one, with strikes and restores anywhere, stand as read all at once', () => {
    fc.assert(
      fc.property(anyLines, (lines) => {
        expect(held(appended(lines))).toEqual(held(readLog(lines)));
      }),
      often(150),
    );
  });

  // A release is never struck, and what was exchanged couples two holes for good.
  const stays = new Set(['released', 'reopened', 'holes-exchanged', 'calls-struck', 'calls-restored']);
  it('[U1] one struck leaves what would stand without it', () => {
    fc.assert(
      fc.property(anyLines, fc.nat(59), (all, at) => {
        const lines = all
          .filter((line) => !line.entries.some((e) => stays.has(e.kind)))
          .map((line, i) => ({ ...line, n: i + 1 }));
        const line = lines[at % Math.max(1, lines.length)];
        if (!line) return;
        const strike = { ...lastOf(lines), ...line, n: lines.length + 1 };
        const by: Line = { ...strike, entries: [{ kind: 'calls-struck', lines: [line.n] }] };
        const silent: Line = { ...line, entries: [{ kind: 'calls-struck', lines: [999] }] };
        const { states, misfits } = held(readLog([...lines, by]));
        const without = held(readLog([...lines.with(line.n - 1, silent), by]));
        expect({ states, misfits }).toEqual({ states: without.states, misfits: without.misfits });
      }),
      often(100),
    );
  });

  it('[X2] only a release that was allowed releases', () => {
    fc.assert(
      fc.property(anyLines, (lines) => {
        let ledger = emptyLedger;
        for (const line of lines) {
          const before = ledger;
          ledger = appendLine(ledger, line);
          const was = stateOf(before, 'vehicle', 'vehicle')?.releasedAt ?? 0;
          const is = stateOf(ledger, 'vehicle', 'vehicle')?.releasedAt ?? 0;
          if (is > was) expect(openPoints(before, line)).toEqual([]);
        }
      }),
      often(60),
    );
  });
});

describe('any calls that are taken', () => {
  // The bench itself asks after every call that the two books agree and nothing is a misfit.
  it('[L12] leave two books that agree after every line, and no misfit', () => {
    fc.assert(
      fc.property(anyMoves, (calls) => {
        const on = played(calls);
        expect(on.lines().length).toBeGreaterThan(1);
        expect(held(on.ledger())).toEqual(held(readLog(on.lines())));
      }),
      often(30),
    );
  });

  it('[X5] every next call that is offered is not refused', () => {
    fc.assert(
      fc.property(anyMoves, (calls) => {
        const on = played(calls);
        for (const { next } of openPointsWithNext(on.ledger(), on.now())) {
          if (next) expect('refused' in decide(on.ledger(), next, on.now())).toBe(false);
        }
      }),
      often(20),
    );
  });

  it('[X5] and each open point has one, but what only waits for a cure', () => {
    fc.assert(
      fc.property(anyMoves, (calls) => {
        const on = played(calls);
        const points = openPointsWithNext(on.ledger(), on.now());
        const cures = points.some((p) => /is curing, ready (\w+day|\d{4}-)/.test(p.because));
        const waits = (code: string) => cures && (code === 'bead-curing' || code === 'road-test');
        const without = points.filter((p) => !p.next && !waits(p.code));
        expect(without.map((p) => `${p.code} ${p.at} ${p.because}`)).toEqual([]);
      }),
      often(20),
    );
  });

  it('[U2] what a strike is said to open is what it opens, and a strike that is taken makes no misfit', () => {
    fc.assert(
      fc.property(anyMoves, fc.nat(80), (calls, at) => {
        const on = played(calls);
        const lines = [1 + (at % on.lines().length)];
        const stamped = () => on.open().filter((p) => !p.startsWith('books') && !p.startsWith('misfit'));
        const before = stamped();
        const named = losesFooting(on.ledger(), lines, 'calls-struck', on.now()).map((p) => `${p.code} ${p.at}`);
        if (typeof on.tried('strike', { lines }) !== 'number') return;
        const opened = stamped().filter((p) => !before.includes(p));
        // Half a minute passed between: what cures may have been cured meanwhile, nothing else.
        expect(opened.filter((p) => !named.includes(p) && !p.startsWith('bead'))).toEqual([]);
      }),
      often(20),
    );
  });

  it('[O5] what answers "done already" is order, by O1, O2 or O3, and nothing else', () => {
    const order = [...verbs.values()].flatMap((v) => v.guards).filter((g) => g.kind === 'order');
    for (const guard of order) expect(['O1', 'O2', 'O3']).toContain(guard.rule);
    fc.assert(
      fc.property(anyMoves, (calls) => {
        const on = played([]);
        for (const move of calls) {
          const next = saidOf(on, move);
          if (!next) continue;
          const { verb, ...said } = next;
          const plain = decide(on.ledger(), { verb, ...said }, on.now());
          const answer = on.tried(verb, said, { because: 'done already' });
          if (typeof answer !== 'number') expect(answer.kind).not.toBe('order');
          const line = typeof answer === 'number' ? on.lines()[answer - 1] : undefined;
          if (line && 'refused' in plain) expect(plain.refused.kind).toBe('order');
          for (const one of line?.overrides ?? []) expect(['O1', 'O2', 'O3']).toContain(one.rule);
        }
      }),
      often(20),
    );
  });
});
