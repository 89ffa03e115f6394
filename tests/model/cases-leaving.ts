// Hand-made jobs about leaving, striking and restoring.
import {
  area,
  away,
  back,
  box,
  type Case,
  cleared,
  entry,
  found,
  job,
  off,
  putIn,
  released,
  restore,
  snug,
  strike,
  tight,
  toolsOut,
} from './job-said.ts';

const cover = area('cover');
const one = [found('cover/1', 'f3.1'), off('cover/1', 'f3.1')];

export const leavingCases: Case[] = [
  {
    name: '[X1] services are done or dropped, the odometer noted, tools called out after the last work',
    job: job(
      [
        entry('service-ordered', { service: 'belt' }),
        entry('service-ordered', { service: 'brakes' }),
        entry('service-done', { service: 'belt' }),
        toolsOut,
      ],
      entry('part-removed', { part: 'lid' }),
    ),
    open: ['part-off part:lid', 'service-open service:brakes', 'tools vehicle'],
  },
  {
    name: '[X1 X3] released when nothing is open',
    job: job(cover, one, back('cover/1', 'f3.1'), cleared, released),
    open: [],
    released: true,
  },
  {
    name: '[X2] a release that was not allowed where it stands is none, whatever comes later',
    job: job(cover, one, released, back('cover/1', 'f3.1'), cleared),
    open: [],
    released: false,
  },
  {
    name: '[X3] reopened has not left, and a release can not be struck',
    job: job(cover, released, strike(3)),
    open: [],
    released: true,
  },
  {
    name: '[X3] reopened, release is asked anew',
    job: job(cover, released, entry('reopened', { who: 'Ada', because: 'knocks' })),
    open: [],
    released: false,
  },
  {
    name: '[K2] a count of the scrap pile that differs is open until one agrees',
    job: job(
      cover,
      [found('cover/1', 'f3.1'), off('cover/1', 'f3.1', 'scrap')],
      entry('scrap-counted', { count: 2 }),
      [found('cover/2', 'f5.1'), off('cover/2', 'f5.1', 'scrap')],
      toolsOut,
    ),
    open: ['hole-open hole:cover/1', 'hole-open hole:cover/2', 'scrap-differs scrap'],
  },
  {
    name: '[K2] counted again, it agrees; pieces and new ones from the box lie there, a new part does not',
    job: job(
      cover,
      entry('scrap-counted', { count: 1 }),
      [found('cover/1', 'f4.1'), off('cover/1', 'f4.1', 'scrap')],
      entry('fastener-broken', { fastener: 'f4.1', at: 'scrap', pieces: [{ piece: 'p5.1', in: 'scrap' }] }),
      [box('bolt', undefined, 1), entry('box-moved', { name: 'bolt', quantity: 1, to: 'scrap' })],
      [
        entry('box-filled', { name: 'lid', sort: 'part', quantity: 1 }),
        entry('box-moved', { name: 'lid', quantity: 1, to: 'scrap' }),
      ],
      entry('scrap-counted', { count: 3 }),
      toolsOut,
    ),
    open: ['hole-open hole:cover/1'],
  },
  {
    name: '[K2] a count in the parts box that differs is open until one agrees, of one name alone',
    job: job(
      [box('bolt', undefined, 2), box('nut', undefined, 1)],
      entry('box-counted', { name: 'bolt', count: 1 }),
      entry('box-counted', { name: 'nut', count: 3 }),
      entry('box-moved', { name: 'bolt', quantity: 1, to: 'supplier' }),
      entry('box-counted', { name: 'nut', count: 1 }),
    ),
    open: ['box-differs box:bolt', 'box-left box:bolt', 'box-left box:nut'],
  },
  {
    name: '[L12] what was never put in the parts box can not be counted there',
    job: job(entry('box-counted', { name: 'bolt', count: 0 })),
    open: ['misfit line:2'],
  },
  {
    name: '[U1] struck, the job stands as if it had never been',
    job: job(cover, one, strike(3)),
    open: [],
  },
  {
    name: '[U1] restored, it is there again',
    job: job(cover, one, strike(3), restore(3)),
    open: ['hole-open hole:cover/1', 'tools vehicle', 'tray-not-empty tray:1', 'tray-uncounted tray:1'],
  },
  {
    name: '[U1] a striking is not struck itself, it is restored',
    job: job(cover, one, strike(3), strike(4)),
    open: [],
  },
  {
    name: '[U2] a line that leaned on a struck one is a misfit and moves nothing',
    job: job(cover, one, [putIn('cover/1', 'f3.1'), snug('cover/1', 'f3.1')], tight('cover/1', 'f3.1'), strike(4)),
    open: [
      'hole-open hole:cover/1',
      'misfit line:5',
      'tools vehicle',
      'tray-not-empty tray:1',
      'tray-uncounted tray:1',
    ],
  },
  {
    name: '[S7] time away changes nothing where nothing cures',
    job: job(cover, one, away(40), back('cover/1', 'f3.1'), cleared),
    open: [],
  },
];
