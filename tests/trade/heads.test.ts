// Heads, near misses and comparison: properties, refusals and the lines that are said.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefused } from '../../src/trade/answer.ts';
import { headTables } from '../../src/trade/head-tables.ts';
import {
  headCarries,
  headsForThread,
  isJudgedByHead,
  nominalSize,
  readHead,
  threadsForHead,
} from '../../src/trade/heads.ts';
import { deceivingBolts, nearMiss } from '../../src/trade/near-miss.ts';
import { socketsThatNearlyFit } from '../../src/trade/sockets.ts';
import { compareDesignations, threadDifference } from '../../src/trade/thread-compared.ts';
import { everyThread, pitchDiameterMm } from '../../src/trade/threads.ts';
import { sure, thread } from '../published/trade.ts';

const said = (answer: unknown): string => (isRefused(answer) ? answer.refused : `taken: ${JSON.stringify(answer)}`);

describe('a head', () => {
  it('and its thread are found from each other, in every table', () => {
    for (const { shape, sizes, name } of headTables) {
      for (const [nominal, size] of Object.entries(sizes.value)) {
        const written = `${shape} ${size}`;
        expect(threadsForHead(sure(readHead(written))).some((one) => one.nominal === nominal && one.by === name)).toBe(
          true,
        );
        const coarse = everyThread.find(({ name: of }) => of === nominal || of.startsWith(`${nominal}-`))
          ?.name as string;
        expect(sure(headsForThread(coarse)).some((one) => one.by === name)).toBe(true);
        expect(['carries', 'met']).toContain(sure(headCarries(written, coarse)).verdict);
      }
    }
  });

  it('is the larger the larger its thread, in every table', () => {
    for (const { name, sizes } of headTables) {
      const inOrder = everyThread.flatMap((one) => sizes.value[nominalSize(one)] ?? []);
      if (!name.includes('as met')) expect(inOrder, name).toEqual(inOrder.toSorted((a, b) => a - b));
    }
  });

  it('carries every pitch of its thread', () => {
    expect(sure(headCarries('hex 17', 'M12x1.25')).verdict).toBe('carries');
    expect(sure(headCarries('hex 17', 'M12')).verdict).toBe('carries');
  });

  it.each([
    ['hex 12', 'M10', 'other-thread', 'hex 12 goes on M8 (JIS small hex); not on M10'],
    ['hex 25', 'M8', 'no-thread', 'no standard known puts hex 25 on any thread'],
    ['hex 1/2', 'M8', 'other-thread', 'hex 1/2 goes on 5/16 (inch hex); not on M8'],
    ['hex 13', '5/16-18', 'nearly', 'a socket of 13 mm nearly fits the inch hex head of 5/16 (0.3 mm apart)'],
    ['star 40', 'M10', 'met', 'star 40 is met on M6, M7, M8; on M10?'],
    ['star T27', 'M6', 'met', 'star T27 on M6 is in no standard, but often met'],
    ['outer-star 12', 'M8', 'not-judged', ''],
    ['triple-square 10', 'M10', 'not-judged', ''],
    ['hex 13', 'M8', 'carries', ''],
  ])('%s on %s: %s', (head, on, verdict, because) => {
    expect(sure(headCarries(head, on))).toMatchObject({ verdict, because });
  });

  it.each([
    ['hex', /wants a size/],
    ['hex 0', /no size/],
    ['hex 500', /no size/],
    ['hex 1/0', /no size/],
    ['round 8', /is no head/],
    ['', /is no head/],
  ])('%j is refused', (head, line) => expect(said(headCarries(head, 'M8'))).toMatch(line));

  it('says nothing of kinds that follow no table', () => {
    expect(['bolt', 'nut', 'screw', undefined].map(isJudgedByHead)).toEqual([true, true, true, true]);
    expect(['plug', 'union', 'bleeder', 'sensor', 'stud', 'clip'].some(isJudgedByHead)).toBe(false);
  });

  it('says nothing against any fastener of an honest engine', () => {
    for (const [head, on] of [
      ['hex 19', 'M12x1.5'],
      ['hex 10', 'M6'],
      ['hex 14', 'M10x1.25'],
      ['hex 17', 'M10x1.25'],
      ['hex 17', 'M12x1.25'],
      ['hex 19', 'M14x1.5'],
      ['hex 12', 'M8'],
      ['hex 8', 'M6'],
      ['hexkey 6', 'M8'],
      ['star 30', 'M6'],
    ] as const)
      expect(sure(headCarries(head, on)).verdict).toBe('carries');
  });
});

describe('sockets that nearly fit', () => {
  it('name each other', () => {
    expect(socketsThatNearlyFit(13)[0]).toMatchObject({ socket: '1/2 in' });
    expect(socketsThatNearlyFit(12.7)[0]).toMatchObject({ socket: '13 mm' });
    expect(socketsThatNearlyFit(13)[0]?.looseByMm).toBeLessThan(0);
    expect(socketsThatNearlyFit(12.7)[0]?.looseByMm).toBeGreaterThan(0);
    expect(socketsThatNearlyFit(10)).toEqual([]);
  });
});

describe('a bolt in a hole of another thread', () => {
  const pairs = fc.record({ bolt: fc.constantFrom(...everyThread), hole: fc.constantFrom(...everyThread) });
  it('starts in one direction only, unless the pitch diameters are equal', () => {
    fc.assert(
      fc.property(pairs, ({ bolt, hole }) => {
        const [there, back] = [nearMiss(bolt, hole), nearMiss(hole, bolt)];
        if (there?.starts && back?.starts) expect(pitchDiameterMm(bolt)).toBe(pitchDiameterMm(hole));
        if (there?.starts) expect(pitchDiameterMm(bolt)).toBeLessThanOrEqual(pitchDiameterMm(hole));
        if (there) expect(there.text).toMatch(/^\S+ in \S+ \S/);
      }),
    );
  });
  it('is no near miss of its own thread, nor of one it falls through or is far too large for', () => {
    expect(nearMiss(thread('M8'), thread('M8x1.25'))).toBeUndefined();
    expect(nearMiss(thread('M8'), thread('M10'))).toBeUndefined();
    expect(nearMiss(thread('M10'), thread('M8'))).toBeUndefined();
  });
  it.each([
    ['5/16-18', 'M8', 'binds at once', /first turn \(0.6 free\)/],
    ['M6', '1/4-28', 'binds soon', /2.6 turns and binds/],
    ['3/8-16', 'M10', 'feels right, then strips', /3.5 turns, feels right and strips/],
    ['M10x1.25', 'M10', 'does not start', /forced, it crosses the thread/],
    ['M10', 'M10x1.25', 'binds at once', /0.4 free/],
    ['M8x1', 'M9x1', 'goes in loose', /loose/],
  ])('%s in %s: %s', (bolt, hole, feel, text) => {
    const miss = nearMiss(thread(bolt), thread(hole));
    expect(miss?.feel).toBe(feel);
    expect(miss?.text).toMatch(text);
  });
  it('comes with the most deceiving first', () => {
    const deceiving = deceivingBolts(thread('M12'));
    expect(deceiving.map(({ bolt }) => bolt)).toContain('7/16-14');
    const free = deceiving.map(({ freeTurns }) => freeTurns);
    expect(free).toEqual(free.toSorted((a, b) => b - a));
  });
});

describe('two designations', () => {
  it.each([
    ['M8x1.25x30', 'M8x30', 'none', []],
    [
      'M10x50',
      'M10x1.25x50',
      'pitch',
      [
        'M10, not M10x1.25: same diameter, other pitch (1.5 and 1.25 mm)',
        'M10 in M10x1.25 binds within the first turn (0.4 free)',
      ],
    ],
    [
      '5/16-18 x 1',
      'M8x25',
      'system',
      ['5/16-18 is an inch thread among metric ones, not M8', '5/16-18 in M8 binds within the first turn (0.6 free)'],
    ],
    [
      'M8x25',
      '5/16-18 x 1',
      'system',
      [
        'M8 is a metric thread among inch ones, not 5/16-18',
        'M8 in 5/16-18 does not start by hand; forced, it crosses the thread',
      ],
    ],
    ['M8', 'M10', 'diameter', ['M8, not M10: another diameter']],
    ['M10x1.25x50 8.8', 'M10x1.25x60 10.9', 'none', ['class 8.8, not 10.9', '10 mm shorter']],
    ['M10x50', 'M10', 'none', []],
    ['M10x51.5', 'M10x50', 'none', ['1.5 mm longer']],
    ['1/4-20 x 1', '1/4-20 x 25 mm', 'none', []],
  ])('%s beside %s: %s', (called, other, difference, lines) => {
    const compared = sure(compareDesignations(called, other));
    expect(compared.thread).toBe(difference);
    expect(compared.lines).toEqual(lines);
  });
  it('are refused where one of them cannot be read', () => {
    expect(said(compareDesignations('M8x30x1.25', 'M8'))).toMatch(/pitch before length/);
    expect(said(compareDesignations('M8', 'gauge 4'))).toMatch(/is no thread/);
  });
  it('differ both ways alike', () => {
    fc.assert(
      fc.property(fc.constantFrom(...everyThread), fc.constantFrom(...everyThread), (one, other) => {
        expect(threadDifference(one, other)).toBe(threadDifference(other, one));
      }),
    );
  });
});
