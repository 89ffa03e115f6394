// Heads, sockets and threads that nearly match.
import { headCarries, headsForThread, readHead, threadsForHead } from '../../src/trade/heads.ts';
import { type NearMiss, nearMiss } from '../../src/trade/near-miss.ts';
import { socketsThatNearlyFit } from '../../src/trade/sockets.ts';
import { from } from './published.ts';
import { sure, thread, toPlaces } from './trade.ts';

const topic = 'heads';
const seen = (source: string) => from(topic, source, 'seen');

/** The heads one standard puts on these threads. */
const headsBy = (by: string, threads: string) =>
  threads.split(' ').map((name) => sure(headsForThread(name)).find((one) => one.by === by)?.head ?? 'none');
const heads = (shape: string, sizes: string) => sizes.split(' ').map((size) => `${shape} ${size}`);
const carriedBy = (head: string) => [...new Set(threadsForHead(sure(readHead(head))).map(({ nominal }) => nominal))];
const verdict = (head: string, name: string) => sure(headCarries(head, name)).verdict;

const row = 'M5 M6 M8 M10 M12 M14 M16';
const apart = (acrossFlatsMm: number) =>
  socketsThatNearlyFit(acrossFlatsMm).map(({ socket, looseByMm }) => [socket, toPlaces(Math.abs(looseByMm), 2)]);
const turns = (bolt: string, hole: string) => toPlaces((nearMiss(thread(bolt), thread(hole)) as NearMiss).freeTurns, 1);

export const headChecks = [
  ...seen('ISO 272:1982, ISO 4014 and ISO 4017')(headsForThread, 'width across flats', 'exact', [
    [`hexagon of ${row}`, headsBy('ISO hex', row), heads('hex', '8 10 13 16 18 21 24')],
    ['hexagon of M3 M4 M20 M24', headsBy('ISO hex', 'M3 M4 M20 M24'), heads('hex', '5.5 7 30 36')],
  ]),
  ...seen('DIN 931 and DIN 933, editions before 1987; JIS B 1180')(headsForThread, 'width across flats', 'exact', [
    [`hexagon of ${row}`, headsBy('old DIN hex, JIS ordinary hex', row), heads('hex', '8 10 13 17 19 22 24')],
  ]),
  ...seen('Mechanical Engineer’s Data Handbook, 8.2.4')(
    headsForThread,
    'p. 299, column f, width across flats',
    'exact',
    [
      [
        'hexagon of M5 M6 M8 M10 M12 M16 M20 M24',
        headsBy('old DIN hex, JIS ordinary hex', 'M5 M6 M8 M10 M12 M16 M20 M24'),
        heads('hex', '8 10 13 17 19 24 30 36'),
      ],
    ],
  ),
  ...seen('JIS B 1180, annex, small hexagon')(headsForThread, 'width across flats', 'exact', [
    [
      'small hexagon of M8 M10 M12 M14 M16',
      headsBy('JIS small hex', 'M8 M10 M12 M14 M16'),
      heads('hex', '12 14 17 19 22'),
    ],
  ]),
  ...seen('ISO 15071 and JIS B 1189, main body')(headsForThread, 'small series flange, width across flats', 'exact', [
    [`small flange of ${row}`, headsBy('small flange', row), heads('hex', '7 8 10 13 15 18 21')],
  ]),
  ...seen('EN 1665:1998')(headsForThread, 'heavy series flange, width across flats', 'exact', [
    [`heavy flange of ${row}`, headsBy('heavy flange', row), heads('hex', '8 10 13 16 18 21 24')],
  ]),
  ...seen('ISO 4762:2004')(headsForThread, 'table 1, key', 'exact', [
    [`hexagon key of ${row}`, headsBy('socket head', row), heads('hexkey', '4 5 6 8 10 12 14')],
    ['hexagon key of M3 M4 M20 M24', headsBy('socket head', 'M3 M4 M20 M24'), heads('hexkey', '2.5 3 17 19')],
  ]),
  ...seen('ISO 7380-1 and ISO 10642, as reprinted')(headsForThread, 'key', 'exact', [
    [
      'key of M3 M4 M5 M6 M8 M10 M12',
      headsBy('button and countersunk head', 'M3 M4 M5 M6 M8 M10 M12'),
      heads('hexkey', '2 2.5 3 4 5 6 8'),
    ],
  ]),
  ...seen('ISO 14579, open data sets')(headsForThread, 'hexalobular socket number', 'exact', [
    [
      'star of M5 M6 M8 M10 M12 M14',
      headsBy('star in a socket head', 'M5 M6 M8 M10 M12 M14'),
      heads('star', '25 30 45 50 55 60'),
    ],
  ]),
  ...seen('ASME B18.2.1-2012')(threadsForHead, 'hex cap screws, width across flats, in', 'exact', [
    ...(
      [
        ['7/16', '1/4'],
        ['1/2', '5/16'],
        ['9/16', '3/8'],
        ['5/8', '7/16'],
        ['3/4', '1/2'],
        ['13/16', '9/16'],
        ['15/16', '5/8'],
        ['1 1/8', '3/4'],
      ] as const
    ).map(([flats, size]): [string, unknown, unknown] => [
      `thread under ${flats} in`,
      carriedBy(`hex ${flats}`).filter((one) => one.includes('/')),
      [size],
    ]),
  ]),
  ...seen('DIN 6923, poor scan')(headCarries, 'flange nut M10', 'exact', [
    ['hex 15 on M10', verdict('hex 15', 'M10'), 'met'],
  ]),
  ...seen('torque tables of a manual for a vehicle built to JIS')(headCarries, 'bolts by head and thread', 'exact', [
    ['hex 10 on M6', verdict('hex 10', 'M6'), 'carries'],
    ['hex 12 on M8', verdict('hex 12', 'M8'), 'carries'],
    ['hex 14 on M10x1.25', verdict('hex 14', 'M10x1.25'), 'carries'],
    ['hex 17 on M12x1.25', verdict('hex 17', 'M12x1.25'), 'carries'],
    ['hex 19 on M14x1.5', verdict('hex 19', 'M14x1.5'), 'carries'],
  ]),
  ...from(topic, 'the seven hexagon tables above, read backwards', 'derived')(
    threadsForHead,
    'threads under one head',
    'exact',
    [
      ['hex 10', carriedBy('hex 10'), ['M6', 'M8']],
      ['hex 12', carriedBy('hex 12'), ['M8']],
      ['hex 13', carriedBy('hex 13'), ['M8', 'M10']],
      ['hex 14', carriedBy('hex 14'), ['M10']],
      ['hex 17', carriedBy('hex 17'), ['M10', 'M12']],
    ],
  ),
  ...from(topic, 'the exact inch, NIST SP 811, 2008 edition', 'derived')(
    socketsThatNearlyFit,
    'metric and inch sockets, mm apart',
    'exact',
    [
      ['8 mm', apart(8), [['5/16 in', 0.06]]],
      ['11 mm', apart(11), [['7/16 in', 0.11]]],
      ['13 mm', apart(13), [['1/2 in', 0.3]]],
      ['14 mm', apart(14), [['9/16 in', 0.29]]],
      ['16 mm', apart(16), [['5/8 in', 0.13]]],
      ['19 mm', apart(19), [['3/4 in', 0.05]]],
    ],
  ),
  ...from(topic, 'ISO 261 and ASME B1.1, profile of 60°', 'derived')(
    nearMiss,
    'difference of pitch diameters × tan 30° / difference of pitches',
    'exact',
    [
      ['5/16-18 in M8, free turns', turns('5/16-18', 'M8'), 0.6],
      ['M6 in 1/4-20, free turns', turns('M6', '1/4-20'), 0.4],
      ['M6 in 1/4-28, free turns', turns('M6', '1/4-28'), 2.6],
      ['3/8-16 in M10, free turns', turns('3/8-16', 'M10'), 3.5],
      ['3/8-24 in M10x1, free turns', turns('3/8-24', 'M10x1'), 5.1],
      ['7/16-14 in M12, free turns', turns('7/16-14', 'M12'), 8.3],
      ['No.10-32 in M5, free turns', turns('#10-32', 'M5'), 15.7],
      ['M12x1.25 in 1/2-20, free turns', turns('M12x1.25', '1/2-20'), 19.8],
    ],
  ),
];
