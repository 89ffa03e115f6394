// Which threads there are: the metric ones of ISO 261 and the unified inch ones, in the sizes met on vehicles. No pipe
// threads, no trapezoids, no wood.
import { cited } from './cited.ts';

/** Pitches in mm by nominal diameter in mm: the coarse one first, null where ISO 261 has none. */
export const metricPitches = cited<Readonly<Record<string, readonly [coarse: number | null, ...fine: number[]]>>>(
  {
    3: [0.5, 0.35],
    3.5: [0.6, 0.35],
    4: [0.7, 0.5],
    4.5: [0.75, 0.5],
    5: [0.8, 0.5],
    6: [1, 0.75],
    7: [1, 0.75],
    8: [1.25, 1, 0.75],
    9: [1.25, 1, 0.75],
    10: [1.5, 1.25, 1, 0.75],
    11: [1.5, 1, 0.75],
    12: [1.75, 1.5, 1.25, 1],
    14: [2, 1.5, 1.25, 1],
    15: [null, 1.5, 1],
    16: [2, 1.5, 1],
    17: [null, 1.5, 1],
    18: [2.5, 2, 1.5, 1],
    20: [2.5, 2, 1.5, 1],
    22: [2.5, 2, 1.5, 1],
    24: [3, 2, 1.5, 1],
  },
  'mm',
  'ISO 261:1998, table 2; M3.5, M4.5, M7, M9, M11, M15 and M17, and pitches of 0.75 and 1 above M8, from memory',
);

/** Diameter in inches and threads to the inch, coarse (UNC) and fine (UNF), by the size as written. */
export const unifiedThreads = cited<Readonly<Record<string, { inches: number; unc: number; unf: number }>>>(
  {
    '#6': { inches: 0.138, unc: 32, unf: 40 },
    '#8': { inches: 0.164, unc: 32, unf: 36 },
    '#10': { inches: 0.19, unc: 24, unf: 32 },
    '#12': { inches: 0.216, unc: 24, unf: 28 },
    '1/4': { inches: 0.25, unc: 20, unf: 28 },
    '5/16': { inches: 0.3125, unc: 18, unf: 24 },
    '3/8': { inches: 0.375, unc: 16, unf: 24 },
    '7/16': { inches: 0.4375, unc: 14, unf: 20 },
    '1/2': { inches: 0.5, unc: 13, unf: 20 },
    '9/16': { inches: 0.5625, unc: 12, unf: 18 },
    '5/8': { inches: 0.625, unc: 11, unf: 18 },
    '3/4': { inches: 0.75, unc: 10, unf: 16 },
  },
  'in, threads/in',
  'ASME B1.1-2003, table 1',
);
