// Hand-made jobs about holes and fasteners, each with what must be open at its end by the rule book.
import {
  area,
  back,
  box,
  type Case,
  cleared,
  entry,
  found,
  job,
  m6,
  off,
  putIn,
  slack,
  snug,
  stretch,
  tight,
  toolsOut,
} from './job-said.ts';

const cover = area('cover');
const one = [found('cover/1', 'f3.1'), off('cover/1', 'f3.1')];

export const fastenerCases: Case[] = [
  {
    name: '[L1] a hole that holds one takes no second, and nothing moves',
    job: job(cover, one, [found('cover/2', 'f4.1')], putIn('cover/2', 'f3.1')),
    open: [
      'hole-open hole:cover/1',
      'misfit line:5',
      'tools vehicle',
      'tray-not-empty tray:1',
      'tray-uncounted tray:1',
    ],
  },
  {
    name: '[L1] nor is a second one found in a hole that holds one',
    job: job(cover, found('cover/1', 'f3.1'), found('cover/1', 'f4.1')),
    open: ['misfit line:4'],
  },
  {
    name: '[L3] as found needs nothing, even when its fastener is known',
    job: job(cover, found('cover/1', 'f3.1')),
    open: [],
  },
  {
    name: '[L3] off, back and tight is closed',
    job: job(cover, one, back('cover/1', 'f3.1'), cleared),
    open: [],
  },
  {
    name: '[L3] snug is not closed',
    job: job(cover, one, [putIn('cover/1', 'f3.1'), snug('cover/1', 'f3.1')], cleared),
    open: ['hole-open hole:cover/1'],
  },
  {
    name: '[L3] snug does not lower what is tight',
    job: job(cover, one, [...back('cover/1', 'f3.1'), snug('cover/1', 'f3.1')], cleared),
    open: [],
  },
  {
    name: '[L4] slack is open until tight again',
    job: job(cover, [found('cover/1', 'f3.1'), slack('cover/1', 'f3.1')], toolsOut),
    open: ['hole-open hole:cover/1'],
  },
  {
    name: '[L4] slack and tight again is closed',
    job: job(cover, [found('cover/1', 'f3.1'), slack('cover/1', 'f3.1')], tight('cover/1', 'f3.1'), toolsOut),
    open: [],
  },
  {
    name: '[L5] what contradicts the wants leaves the hole open',
    job: job(
      cover,
      one,
      back('cover/1', 'f3.1'),
      entry('wants-stated', { hole: 'cover/1', spec: { ...m6, lengthMm: 30 }, because: 'manual' }),
      cleared,
    ),
    open: ['hole-open hole:cover/1'],
  },
  {
    name: '[L5] a substitute is accepted where it is',
    job: job(
      cover,
      one,
      box('long', { ...m6, lengthMm: 30 }),
      [...back('cover/1', 'f5.1', { from: 'box:long', spec: { ...m6, lengthMm: 30 }, substitute: 'none left' })],
      [entry('fastener-moved', { fastener: 'f3.1', from: 'tray:1', to: 'scrap' })],
      cleared,
    ),
    open: [],
  },
  {
    name: '[L5] a field unknown on one side contradicts nothing',
    job: job(
      cover,
      [found('cover/1', 'f3.1', { kind: 'bolt' }), off('cover/1', 'f3.1')],
      back('cover/1', 'f3.1', { spec: { kind: 'bolt' } }),
      [entry('wants-stated', { hole: 'cover/1', spec: m6, because: 'manual' }), ...cleared],
    ),
    open: [],
  },
  {
    name: '[L6] equals trade holes',
    job: job(
      cover,
      [found('cover/1', 'f3.1'), off('cover/1', 'f3.1'), found('cover/2', 'f3.2'), off('cover/2', 'f3.2')],
      [...back('cover/1', 'f3.2'), ...back('cover/2', 'f3.1')],
      cleared,
    ),
    open: [],
  },
  {
    name: '[L7] a stretch bolt back where it was is spent',
    job: job(
      cover,
      [found('cover/1', 'f3.1', stretch), off('cover/1', 'f3.1')],
      back('cover/1', 'f3.1', { spec: stretch }),
      cleared,
    ),
    open: ['hole-open hole:cover/1'],
  },
  {
    name: '[L7] one slack in its hole and tight again is spent',
    job: job(cover, [found('cover/1', 'f3.1', stretch), slack('cover/1', 'f3.1')], tight('cover/1', 'f3.1'), toolsOut),
    open: ['hole-open hole:cover/1'],
  },
  {
    name: '[L7] a new one taken out before it was ever tight is not spent',
    job: job(
      cover,
      entry('hole-found-empty', { hole: 'cover/1' }),
      box('stretch', stretch),
      [putIn('cover/1', 'f5.1', { from: 'box:stretch', spec: stretch }), snug('cover/1', 'f5.1')],
      off('cover/1', 'f5.1'),
      back('cover/1', 'f5.1', { spec: stretch }),
      cleared,
    ),
    open: [],
  },
  {
    name: '[L7] measured within the limit it serves once more',
    job: job(
      cover,
      [found('cover/1', 'f3.1', stretch), off('cover/1', 'f3.1')],
      entry('fastener-measured', { fastener: 'f3.1', at: 'tray:1' }),
      back('cover/1', 'f3.1', { spec: stretch }),
      cleared,
    ),
    open: [],
  },
  {
    name: '[L7] measured within the limit it serves once more, not twice',
    job: job(
      cover,
      [found('cover/1', 'f3.1', stretch), off('cover/1', 'f3.1')],
      entry('fastener-measured', { fastener: 'f3.1', at: 'tray:1' }),
      back('cover/1', 'f3.1', { spec: stretch }),
      off('cover/1', 'f3.1'),
      back('cover/1', 'f3.1', { spec: stretch }),
      cleared,
    ),
    open: ['hole-open hole:cover/1'],
  },
];
