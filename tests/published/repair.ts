// Thread repair. The formula of the bore was remembered; the bores it gives are held to three tables that were read.
import {
  insertBoreMm,
  insertDrillingDepthMm,
  insertLengthDiameters,
  judgeInsertDrill,
  leastEngagementMm,
  tapDrillMm,
} from '../../src/trade/thread-repair.ts';
import { from } from './published.ts';
import { sure, thread } from './trade.ts';

const topic = 'thread repair';
const seen = (source: string) => from(topic, source, 'seen');
const verdict = (name: string, drillMm: number) => sure(judgeInsertDrill(thread(name), drillMm)).verdict;

export const repair = [
  ...from(topic, 'ISO 965-1:2013, tolerance 5H over ASME B18.29.2M-2005', 'derived')(
    insertBoreMm,
    'bore before the insert goes in, mm',
    { by: 0.0006 },
    (
      [
        ['M6', 6.217, 6.407],
        ['M8', 8.271, 8.483],
        ['M10', 10.325, 10.561],
        ['M10x1.25', 10.271, 10.483],
        ['M12x1.25', 12.271, 12.483],
      ] as const
    ).flatMap(([name, least, most]): [string, unknown, unknown][] => [
      [`${name}, least`, sure(insertBoreMm(thread(name))).fromMm, least],
      [`${name}, most`, sure(insertBoreMm(thread(name))).toMm, most],
    ]),
  ),
  ...seen('a tap maker’s catalogue of 2022: insert threads, expected minor diameter')(
    judgeInsertDrill,
    'table of thread-forming taps for inserts',
    'exact',
    (
      [
        ['M3', 3.18],
        ['M4', 4.24],
        ['M5', 5.27],
        ['M6', 6.33],
        ['M8', 8.4],
        ['M10', 10.47],
        ['M10x1.25', 10.4],
        ['M12', 12.54],
      ] as const
    ).map(([name, bore]) => [`${bore} mm for an insert of ${name}`, verdict(name, bore), 'fits']),
  ),
  ...seen('DIN 8140, as told in a guide to the standard')(
    judgeInsertDrill,
    'drill for the insert’s tap',
    'exact',
    (
      [
        ['M4', 4.2],
        ['M5', 5.3],
        ['M6', 6.3],
        ['M8', 8.4],
        ['M10', 10.5],
      ] as const
    ).map(([name, drill]) => [`${drill} mm for an insert of ${name}`, verdict(name, drill), 'fits']),
  ),
  ...seen('Thread Cutting by Dies and Taps, trainees’ handbook')(
    tapDrillMm,
    'appendix 1, drill diameter, mm',
    { by: 0.051 },
    (
      [
        ['M6', 5],
        ['M6x0.75', 5.2],
        ['M8', 6.75],
        ['M8x1', 7],
        ['M10', 8.5],
        ['M10x1.25', 8.8],
        ['M10x1', 9],
        ['M12', 10.25],
        ['M12x1.5', 10.5],
        ['M12x1.25', 10.8],
        ['M14', 12],
        ['M16', 14],
      ] as const
    ).map(([name, drill]) => [name, tapDrillMm(thread(name)), drill]),
  ),
  ...seen('Mechanical Engineer’s Data Handbook, 8.2.4')(
    tapDrillMm,
    'p. 299, tapping drill, coarse thread, mm',
    { by: 0.051 },
    (
      [
        ['M5', 4.2],
        ['M6', 5],
        ['M8', 6.8],
        ['M10', 8.5],
        ['M12', 10.2],
        ['M16', 14],
      ] as const
    ).map(([name, drill]) => [name, tapDrillMm(thread(name)), drill]),
  ),
  ...seen('Mechanical Engineer’s Data Handbook, 8.2.4')(
    judgeInsertDrill,
    'p. 299, tapping drills: none of them is for an insert',
    'exact',
    (
      [
        ['M6', 5],
        ['M8', 6.8],
        ['M10', 8.5],
        ['M12', 10.2],
      ] as const
    ).map(([name, drill]) => [`${drill} mm for an insert of ${name}`, verdict(name, drill), 'plain-tap-drill']),
  ),
  ...seen('ASME B18.29.2M-2005')(insertDrillingDepthMm, 'note to the table of hole data, mm', { by: 1e-9 }, [
    ['M8, insert 12, plug tap (printed worked value)', insertDrillingDepthMm(thread('M8'), 12), 23.5],
    ['M8, insert 12, bottoming tap: 12 + 4 pitches', insertDrillingDepthMm(thread('M8'), 12, 'bottoming'), 17],
    ['M10, insert 15, plug tap, no point above 8 mm: 15 + 6 pitches', insertDrillingDepthMm(thread('M10'), 15), 24],
    ['M6, insert 9, plug tap: 9 + 3 + 6 pitches', insertDrillingDepthMm(thread('M6'), 9), 18],
  ]),
  ...seen('Machinery’s Handbook, 31st edition')(
    insertLengthDiameters,
    'p. 1757, insert length by shear strength of the parent',
    'exact',
    [
      ['150 N/mm², 8.8', insertLengthDiameters(150, '8.8'), 2],
      ['150 N/mm², 10.9', insertLengthDiameters(150, '10.9'), 2.5],
      ['200 N/mm², 8.8', insertLengthDiameters(200, '8.8'), 2],
      ['300 N/mm², 8.8', insertLengthDiameters(300, '8.8'), 1.5],
    ],
  ),
  ...seen('an engine maker’s manual, screwed joints')(leastEngagementMm, 'least engagement, mm', 'exact', [
    ['M8 in aluminium', leastEngagementMm(thread('M8'), 'aluminium'), 16],
    ['M10 in aluminium', leastEngagementMm(thread('M10x1.25'), 'aluminium'), 20],
    ['M8 in steel', leastEngagementMm(thread('M8'), 'steel'), 10],
    ['M12 in iron', leastEngagementMm(thread('M12'), 'iron'), 15],
  ]),
];
