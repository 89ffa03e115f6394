// Hand-made jobs about fasteners condemned, lost, broken, left out and called wrongly, each with what must be open at its end by the rule book.
import {
  area,
  back,
  box,
  type Case,
  cleared,
  count,
  entry,
  found,
  hole,
  job,
  m6,
  off,
  slack,
  tight,
  toolsOut,
} from './job-said.ts';

const cover = area('cover');
const lost = entry('fastener-lost', { fastener: 'f3.1', from: 'tray:1', reaches: true, where: 'belt bay' });
const one = [found('cover/1', 'f3.1'), off('cover/1', 'f3.1')];

export const lossCases: Case[] = [
  {
    name: '[L8] a condemned one may lie in a tray as a pattern, and not at release',
    job: job(
      cover,
      one,
      entry('fastener-condemned', { fastener: 'f3.1', at: 'tray:1', because: 'stretched' }),
      box('new'),
      back('cover/1', 'f6.1', { from: 'box:new' }),
      [toolsOut, count(1)],
    ),
    open: ['condemned-about fastener:f3.1', 'tray-not-empty tray:1'],
  },
  {
    name: '[L8] condemned in its hole, the hole is open',
    job: job(
      cover,
      one,
      back('cover/1', 'f3.1'),
      entry('fastener-condemned', { fastener: 'f3.1', at: 'hole:cover/1', because: 'rusted' }),
      cleared,
    ),
    open: ['hole-open hole:cover/1'],
  },
  {
    name: '[L9] lost holds the job until ruled out by name',
    job: job(cover, one, lost, box('new'), back('cover/1', 'f6.1', { from: 'box:new' }), cleared),
    open: ['lost fastener:f3.1'],
  },
  {
    name: '[L9] ruled out is no longer open',
    job: job(
      cover,
      one,
      lost,
      box('new'),
      back('cover/1', 'f6.1', { from: 'box:new' }),
      entry('search-made', { lost: 'f3.1', how: 'magnet' }),
      entry('loss-ruled-out', { lost: 'f3.1', who: 'Ada', because: 'swept' }),
      cleared,
    ),
    open: [],
  },
  {
    name: '[L10] a piece in a hole keeps it open, a lost piece is lost',
    job: job(
      cover,
      [
        ...one,
        entry('fastener-broken', {
          fastener: 'f3.1',
          at: 'tray:1',
          pieces: [
            { piece: 'p3.1', in: 'hole:cover/1' },
            { piece: 'p3.2', in: 'lost' },
          ],
        }),
      ],
      box('new'),
      back('cover/1', 'f5.1', { from: 'box:new' }),
      [toolsOut, count(1)],
    ),
    open: ['broken-about fastener:f3.1', 'hole-open hole:cover/1', 'lost piece:p3.2', 'tray-not-empty tray:1'],
  },
  {
    name: '[L11] empty on arrival is open',
    job: job(cover, entry('hole-found-empty', { hole: 'cover/1' })),
    open: ['hole-open hole:cover/1'],
  },
  {
    name: '[L11] left empty by a named statement is closed',
    job: job(cover, entry('hole-found-empty', { hole: 'cover/1' }), [
      entry('hole-left-empty', { hole: 'cover/1', who: 'Ada', because: 'never had one' }),
    ]),
    open: [],
  },
  {
    name: '[L12] what came from the box and was not there is a misfit, and the hole is full all the same',
    job: job(cover, entry('hole-found-empty', { hole: 'cover/1' }), back('cover/1', 'f4.1', { from: 'box:new' }), [
      toolsOut,
    ]),
    open: ['misfit line:4'],
  },
  {
    name: '[O5 X1] a critical hole wants a second look after its last change',
    job: job(
      area('mount', { critical: true }),
      [found('mount/1', 'f3.1'), slack('mount/1', 'f3.1')],
      entry('looked-again', { hole: 'mount/1' }),
      tight('mount/1', 'f3.1'),
      toolsOut,
    ),
    open: ['second-look hole:mount/1'],
  },
  {
    name: '[X1] for now and working are open points of their own',
    job: job(
      cover,
      [...one, found('cover/2', 'f3.2'), off('cover/2', 'f3.2')],
      [...back('cover/1', 'f3.1', { forNow: true }), ...back('cover/2', 'f3.2', { working: true })],
      cleared,
    ),
    open: ['for-now hole:cover/1', 'hole-open hole:cover/1', 'hole-open hole:cover/2', 'working-in hole:cover/2'],
  },
  {
    name: '[X1] made final where it is',
    job: job(
      cover,
      one,
      [
        ...back('cover/1', 'f3.1', { forNow: true }),
        entry('fastener-made-final', { hole: 'cover/1', fastener: 'f3.1' }),
      ],
      cleared,
    ),
    open: [],
  },
  {
    name: '[U3] called 7, was 8: all that was called goes over and is opened, 7 is as found again',
    job: job(
      area('cover', { companions: ['dowel'] }),
      hole('cover/7'),
      hole('cover/8'),
      [found('cover/7', 'f5.1'), off('cover/7', 'f5.1')],
      [...back('cover/7', 'f5.1'), entry('companions-seen', { area: 'cover' })],
      entry('holes-exchanged', { one: 'cover/7', other: 'cover/8', because: 'miscounted' }),
      cleared,
    ),
    open: ['companions area:cover', 'holes-not-counted hole:cover/7'],
  },
  {
    name: '[K4] a planned hole that nobody called is open once a neighbour came off',
    job: job(
      [cover, hole('cover/1'), hole('cover/2')],
      [found('cover/1', 'f4.1'), off('cover/1', 'f4.1')],
      [...back('cover/1', 'f4.1'), ...cleared],
    ),
    open: ['holes-not-counted hole:cover/2'],
  },
  {
    name: '[K4] and not while nothing came off',
    job: job(
      [cover, hole('cover/1'), hole('cover/2')],
      [found('cover/1', 'f4.1'), slack('cover/1', 'f4.1')],
      [tight('cover/1', 'f4.1'), toolsOut],
    ),
    open: [],
  },
  {
    name: '[U3] a corrected spec counts against the wants',
    job: job(
      cover,
      hole('cover/1', { wants: m6 }),
      [found('cover/1', 'f4.1'), off('cover/1', 'f4.1')],
      back('cover/1', 'f4.1'),
      entry('spec-corrected', {
        fastener: 'f4.1',
        at: 'hole:cover/1',
        spec: { ...m6, lengthMm: 45 },
        because: 'misread',
      }),
      cleared,
    ),
    open: ['hole-open hole:cover/1'],
  },
];
