// Which head a standard puts on which thread: width across flats in mm, or the number of a star. Wheel nuts, plugs,
// unions, bleeders, sensors and crank bolts follow no such table.
import { type Cited, cited } from './cited.ts';

/** Size by nominal thread: "M8", "5/16". */
type Sizes = Readonly<Record<string, number>>;
export type HeadTable = {
  /** As said in a line: "ISO hex", "small flange". */
  name: string;
  shape: 'hex' | 'hexkey' | 'star';
  sizes: Cited<Sizes>;
  /** In no standard's table, but often met: asked about, never called wrong. */
  met?: true;
};

export const headTables: readonly HeadTable[] = Object.freeze<HeadTable[]>([
  {
    name: 'ISO hex',
    shape: 'hex',
    sizes: cited<Sizes>(
      { M3: 5.5, M4: 7, M5: 8, M6: 10, M8: 13, M10: 16, M12: 18, M14: 21, M16: 24, M18: 27, M20: 30, M22: 34, M24: 36 },
      'mm',
      'ISO 272:1982, as in ISO 4014 and ISO 4017; M18 and M22 from memory',
    ),
  },
  {
    name: 'old DIN hex, JIS ordinary hex',
    shape: 'hex',
    sizes: cited<Sizes>(
      { M5: 8, M6: 10, M7: 11, M8: 13, M10: 17, M12: 19, M14: 22, M16: 24, M20: 30, M24: 36 },
      'mm',
      'DIN 931 and DIN 933 before 1987, JIS B 1180; M7 from memory',
    ),
  },
  {
    name: 'JIS small hex',
    shape: 'hex',
    sizes: cited<Sizes>({ M8: 12, M10: 14, M12: 17, M14: 19, M16: 22 }, 'mm', 'JIS B 1180, annex, small hexagon'),
  },
  {
    name: 'small flange',
    shape: 'hex',
    sizes: cited<Sizes>(
      { M5: 7, M6: 8, M8: 10, M10: 13, M12: 15, M14: 18, M16: 21 },
      'mm',
      'ISO 15071 = JIS B 1189, main body',
    ),
  },
  {
    name: 'heavy flange',
    shape: 'hex',
    sizes: cited<Sizes>({ M5: 8, M6: 10, M8: 13, M10: 16, M12: 18, M14: 21, M16: 24 }, 'mm', 'EN 1665:1998'),
  },
  {
    name: 'flange nut',
    shape: 'hex',
    sizes: cited<Sizes>({ M10: 15 }, 'mm', 'DIN 6923, read from a poor scan'),
    met: true,
  },
  {
    name: 'inch hex',
    shape: 'hex',
    // 7/16, 1/2, 9/16, 5/8, 3/4, 13/16, 15/16 and 1 1/8 in, each times 25.4.
    sizes: cited<Sizes>(
      {
        '1/4': 11.1125,
        '5/16': 12.7,
        '3/8': 14.2875,
        '7/16': 15.875,
        '1/2': 19.05,
        '9/16': 20.6375,
        '5/8': 23.8125,
        '3/4': 28.575,
      },
      'mm',
      'ASME B18.2.1-2012, table 2, hex cap screws',
    ),
  },
  {
    name: 'socket head',
    shape: 'hexkey',
    sizes: cited<Sizes>(
      { M3: 2.5, M4: 3, M5: 4, M6: 5, M8: 6, M10: 8, M12: 10, M14: 12, M16: 14, M20: 17, M24: 19 },
      'mm',
      'ISO 4762:2004, table 1',
    ),
  },
  {
    name: 'button and countersunk head',
    shape: 'hexkey',
    sizes: cited<Sizes>({ M3: 2, M4: 2.5, M5: 3, M6: 4, M8: 5, M10: 6, M12: 8 }, 'mm', 'ISO 7380-1 and ISO 10642'),
  },
  {
    name: 'star in a socket head',
    shape: 'star',
    sizes: cited<Sizes>(
      { M3: 10, M4: 20, M5: 25, M6: 30, M8: 45, M10: 50, M12: 55, M14: 60 },
      'T number',
      'ISO 14579:2011, table 1, from open data sets',
    ),
  },
  {
    name: 'star 27 and 40 as met on vehicles',
    shape: 'star',
    sizes: cited<Sizes>({ M5: 27, M6: 27, M8: 40 }, 'T number', 'common practice, no source'),
    met: true,
  },
  {
    name: 'star 40 as met on vehicles',
    shape: 'star',
    sizes: cited<Sizes>({ M6: 40, M7: 40 }, 'T number', 'common practice, no source'),
    met: true,
  },
]);

/** Shapes known, and judged by their neighbours alone: no table says which thread stands below. */
export const shapesWithoutTable: readonly string[] = ['outer-star', 'twelve-point', 'triple-square', 'cross', 'slot'];

/** Kinds of fastener that follow no head table whatever their shape. */
export const kindsWithoutTable: readonly string[] = [
  'stud',
  'clamp',
  'clip',
  'pin',
  'plug',
  'washer',
  'union',
  'bleeder',
  'sensor',
  'cap',
];

/** How far a socket may be from a head and still be taken for it. */
export const nearlyFits = cited(0.35, 'mm', 'common practice, no source: 13 mm on 1/2 in (0.30) is the usual case');
