// Threads and designations: what is read, what is refused and how, and what holds of every thread there is.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefused } from '../../src/trade/answer.ts';
import { printFastener, readDesignation, readFastener } from '../../src/trade/designation.ts';
import {
  everyThread,
  minorDiameterMm,
  pitchDiameterMm,
  rootDiameterMm,
  stressAreaMm2,
  threadNamed,
} from '../../src/trade/threads.ts';

const why = (answer: unknown): string => (isRefused(answer) ? answer.refused : `taken: ${JSON.stringify(answer)}`);

describe('every thread', () => {
  it('is found by its own name, and no two share one', () => {
    expect(everyThread.length).toBeGreaterThan(60);
    expect(new Set(everyThread.map(({ name }) => name)).size).toBe(everyThread.length);
    for (const thread of everyThread) expect(threadNamed(thread.name)).toEqual(thread);
  });

  it('has root < nut bore < pitch < nominal diameter, and a stress area between those of root and nominal', () => {
    for (const thread of everyThread) {
      const diameters = [rootDiameterMm(thread), minorDiameterMm(thread), pitchDiameterMm(thread), thread.majorMm];
      expect(diameters).toEqual(diameters.toSorted((a, b) => a - b));
      expect(diameters[0]).toBeGreaterThan(0);
      expect(stressAreaMm2(thread)).toBeLessThan(Math.PI * (thread.majorMm / 2) ** 2);
      expect(stressAreaMm2(thread)).toBeGreaterThan(Math.PI * (rootDiameterMm(thread) / 2) ** 2 * 0.99);
    }
  });

  it('of one diameter is the stronger the finer', () => {
    for (const [, same] of Map.groupBy(everyThread, ({ system, majorMm }) => `${system} ${majorMm}`)) {
      const areas = same.map(stressAreaMm2);
      expect(areas).toEqual(areas.toSorted((a, b) => a - b));
    }
  });
});

describe('a designation', () => {
  it.each([
    ['M8x1.25x30 8.8', 'M8x30 8.8'],
    ['M8', 'M8'],
    ['M6×25', 'M6x25'],
    ['m10 x 1,25 x 60 - 10.9', 'M10x1.25x60 10.9'],
    ['M8-1.25x30', 'M8x30'],
    ['M8x1x20 A2-70', 'M8x1x20 A2-70'],
    ['M12x1.25 cl.8', 'M12x1.25 8'],
    ['5/16-18 x 1', '5/16-18 x 1'],
    ['5/16-18 UNC x 1 1/2 grade 5', '5/16-18 x 1 1/2 5'],
    ['No.10-32 UNF x 3/4', '#10-32 x 3/4'],
    ['3/8 UNF x 1-1/4"', '3/8-24 x 1 1/4'],
    ['1/4-20x25 mm', '1/4-20 x 25 mm'],
  ])('%s is read and printed as %s', (text, printed) => {
    const read = readFastener(text);
    expect(isRefused(read) ? read.refused : printFastener(read)).toBe(printed);
  });

  it.each([
    ['M8x30x1.25', /pitch before length, M8x1.25x30/],
    ['M8x12x30', /no thread has a pitch of 12 mm/],
    ['M8x1.25x30x5', /is no designation/],
    ['M9x1.3', /pitches of M9 are 1.25, 1, 0.75/],
    ['M13', /no M13 among/],
    ['M15x30', /no coarse pitch: say M15x1.5/],
    ['M6x2000', /a length of 2000 mm: 2 to 1000 mm/],
    ['M10 10', /is no designation/],
    ['5/16', /5\/16-18 \(coarse\) or 5\/16-24 \(fine\)/],
    ['5/16-19 x 1', /there is no 5\/16-19/],
    ['3/8-24 UNC', /is not UNC/],
    ['1/4-20 x 1/0', /a length of \?/],
    ['1/4-20 x one', /no length in inches/],
    ['8x30', /is no thread/],
    ['', /is no thread/],
    ['toString', /is no thread/],
  ])('%j is refused in one line', (text, line) => {
    const said = why(readFastener(text));
    expect(said).toMatch(line);
    expect(said).not.toMatch(/\n|undefined|NaN/);
  });

  it('printed is read again as it was, for every thread, length and class', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...everyThread),
        fc.option(fc.integer({ min: 3, max: 200 }), { nil: undefined }),
        fc.constantFrom(undefined, '8.8', '10.9', 'A2-70'),
        (thread, length, grade) => {
          const lengthMm = length && (thread.system === 'metric' ? length : (length * 25_400) / 32 / 1000);
          const rounded = lengthMm && Math.round(lengthMm * 1e6) / 1e6;
          const whole = {
            thread,
            ...(rounded !== undefined && { lengthMm: rounded }),
            ...(grade !== undefined && { class: grade }),
          };
          expect(readFastener(printFastener(whole))).toEqual(whole);
        },
      ),
    );
  });

  it('of any text is read or refused, and never throws', () => {
    const scraps = fc.array(
      fc.constantFrom('M', '8', 'x', '1.25', ' ', '-', '5/16', '#10', '8.8', '30', 'mm', 'UNC', '"', '×', '0'),
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          scraps.map((parts) => parts.join('')),
        ),
        (text) => {
          const read = readFastener(text);
          if (isRefused(read)) expect(read.refused.length).toBeGreaterThan(10);
          else expect(everyThread).toContain(read.thread);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('in one word of a call is read as before, whatever the sizes', () => {
    expect(readDesignation('M8x1.25x30')).toEqual({ thread: 'M8x1.25', lengthMm: 30 });
    expect(readDesignation('M10X1,25')).toEqual({ thread: 'M10x1.25' });
    expect(readDesignation('M6*25')).toEqual({ thread: 'M6', lengthMm: 25 });
    expect(readDesignation('5/16-18x1')).toEqual({ thread: '5/16-18', lengthMm: 25.4 });
    expect(readDesignation('5/16-18x1.5')).toEqual({ thread: '5/16-18', lengthMm: 38.1 });
    for (const text of ['5/16-18x25', '5/16-18x25mm'])
      expect(readDesignation(text)).toEqual({ thread: '5/16-18', lengthMm: 25 });
    expect(readDesignation('5/16-18x10mm')).toEqual({ thread: '5/16-18', lengthMm: 10 });
    expect(readDesignation('M8x7x30')).toBeNull();
    expect(readDesignation('M0')).toBeNull();
    expect(readDesignation('tray')).toBeNull();
  });
});
