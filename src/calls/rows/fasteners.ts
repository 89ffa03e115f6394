// Calls on holes and fasteners: what is in use, off, slack, back, tight.
import { stateOf } from '../../job/ledger.ts';
import { passesOf } from '../../job/passes.ts';
import type { Spec } from '../../job/spec.ts';
import { areaOf, inTray, subjectText } from '../../job/subjects.ts';
import { type Desk, nextBack, nextOff, nextSlack, nextTight } from '../desk.ts';
import type { Args } from '../form.ts';
import { key, type Row } from '../row.ts';
import { specWords } from '../spec-words.ts';

/** The fastener in use says what comes off, unless the plan knows the hole or it was said. */
function coming(desk: Desk, hole: string | undefined): Args {
  const known = hole === undefined ? undefined : stateOf(desk.ledger, 'hole', hole);
  const inUse = known?.called.occupant || known?.declared?.wants ? undefined : desk.facing.spec;
  return { hole, to: inTray(desk.facing.tray), spec: inUse };
}
const noTray = ({ to: _, ...rest }: Args): Args => rest;
const kindWords = [
  'bolt',
  'nut',
  'screw',
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
const sizeKeys: [string, string][] = [
  ['8', 'hex 8'],
  ['0', 'hex 10'],
  ['2', 'hex 12'],
  ['3', 'hex 13'],
  ['4', 'hex 14'],
  ['6', 'hex 16'],
  ['7', 'hex 17'],
  ['9', 'hex 19'],
];
const kindKeys: [string, string][] = [
  ['b', 'bolt'],
  ['n', 'nut'],
  ['v', 'screw'],
  ['k', 'clip'],
];

export const fastenerRows: readonly Row[] = [
  {
    id: 'area',
    words: ['area', 'at'],
    form: '<area>',
    label: 'area',
    help: 'Take an area in use, or name a new one; holes are numbered within it.',
    group: 'in use',
    keys: [key('a', ['strip', 'build'])],
    means: (_desk, { area }) => ({ face: { area: area as string, hole: undefined }, answer: `at ${area}` }),
  },
  {
    id: 'tray',
    words: ['tray', 'into'],
    form: '<tray>',
    label: 'tray',
    help: 'Take a tray in use: what comes off goes there.',
    group: 'in use',
    keys: [key('t', 'strip')],
    means: (_desk, { tray }) => ({ face: { tray: tray as string }, answer: `tray ${tray}` }),
  },
  {
    id: 'use',
    words: ['use', ...kindWords],
    keepsWord: true,
    form: '<spec>',
    label: 'fastener',
    help: 'Say the fastener in use: kind, head, thread x length, class. It stays until another is said.',
    group: 'in use',
    keys: [
      key('x', 'strip'),
      ...kindKeys.map(([k, kind], i) =>
        key(k, 'strip', {
          args: { spec: { kind } },
          footer: i === 0 && kindKeys.map(([one, of]) => `${one} ${of}`).join(' '),
        }),
      ),
    ],
    means: (desk, { spec, merge }) => {
      const next = (merge ? { ...desk.facing.spec, ...(spec as Spec) } : (spec as Spec)) as Spec;
      return { face: { spec: next }, answer: `now ${specWords(next)}` };
    },
  },
  {
    id: 'head',
    words: ['head', 'socket size'],
    form: '<spec>',
    label: 'head size',
    help: 'Change the head of the fastener in use; thread and length are forgotten with it.',
    group: 'in use',
    keys: sizeKeys.map(([k, head], i) => key(k, 'strip', { args: { spec: { head } }, footer: i === 0 && '0-9 head' })),
    means: (desk, { spec }) => {
      const kind = desk.facing.spec.kind ?? 'bolt';
      const next = { kind, ...(spec as Spec) } as Spec;
      return { face: { spec: next }, answer: `now ${specWords(next)}` };
    },
  },
  {
    id: 'point',
    words: ['hole', 'point at'],
    form: '<hole>',
    label: 'this hole',
    help: 'Point at a hole: the next call speaks of it.',
    group: 'in use',
    keys: [],
    means: (_desk, { hole }) => ({
      face: { area: areaOf(hole as string), hole: hole as string },
      answer: subjectText(`hole:${hole}`),
    }),
  },
  {
    id: 'off',
    words: ['off', 'take away'],
    form: '[<hole>] [to <to:place>] [as <spec>]',
    label: 'off',
    help: 'A fastener came off; it lies in the tray in use. Levels under its number come with it.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('enter', 'strip'), key('space', 'strip', { footer: false })],
    verb: 'remove',
    fills: (desk, args) => coming(desk, (args.hole as string | undefined) ?? nextOff(desk)),
  },
  {
    id: 'slack',
    words: ['slack', 'only slackened'],
    form: '[<hole>] [as <spec>]',
    label: 'slack',
    help: 'A fastener was loosened and stays in its hole.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('s', 'strip')],
    verb: 'slacken',
    fills: (desk, args) => noTray(coming(desk, (args.hole as string | undefined) ?? nextSlack(desk))),
  },
  {
    id: 'missing',
    words: ['missing', 'hole empty'],
    form: '[<hole>]',
    label: 'missing',
    help: 'The hole was empty on arrival: a finding, and the hole is open.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('m', 'strip')],
    verb: 'find-empty',
    fills: (desk) => ({ hole: nextOff(desk) }),
  },
  {
    id: 'damaged',
    words: ['damaged', 'came damaged'],
    form: '[<hole>] [to <to:place>] [as <spec>] [because <what:why>]',
    label: 'damaged',
    help: 'It came off damaged: condemned, and a finding.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('d', 'strip')],
    verb: 'remove',
    fixed: { wrong: 'damaged' },
    fills: (desk, args) => coming(desk, (args.hole as string | undefined) ?? nextOff(desk)),
  },
  {
    id: 'wrong-one',
    words: ['wrong one', 'odd one'],
    form: '[<hole>] [as <spec>] [to <to:place>] [because <what:why>]',
    label: 'wrong one',
    help: 'What came off does not belong in this hole: a finding. Say what it is.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('w', 'strip', { asks: ['spec'] })],
    verb: 'remove',
    fixed: { wrong: 'odd' },
    fills: (desk, args) => ({
      ...coming(desk, (args.hole as string | undefined) ?? nextOff(desk)),
      spec: desk.facing.spec,
    }),
  },
  {
    id: 'found',
    words: ['found', 'seen in'],
    form: '[<hole>] [as <spec>]',
    label: 'found',
    help: 'Say what sits in a hole without touching it.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [],
    verb: 'find-fastener',
    fills: (desk, args) => noTray(coming(desk, (args.hole as string | undefined) ?? nextOff(desk))),
  },
  {
    id: 'back',
    words: ['back', 'bring back'],
    form: '[<hole>] [with <fastener>]',
    label: 'back',
    help: 'Its own fastener, or an equal one, is in again by a few turns.',
    none: 'no hole of it waits for its fastener',
    group: 'build',
    keys: [key('enter', 'build'), key('space', 'build', { footer: false })],
    verb: 'fit',
    fills: (desk) => ({ hole: nextBack(desk) }),
  },
  {
    id: 'new',
    words: ['new', 'new from box'],
    form: '[<hole>] [from <box>]',
    label: 'new one',
    help: 'A new fastener from the parts box is in by a few turns.',
    none: 'no hole of it waits for its fastener',
    group: 'build',
    keys: [key('n', 'build')],
    verb: 'fit',
    fills: (desk, args) => {
      const hole = (args.hole as string | undefined) ?? nextBack(desk);
      return { hole, box: hole === undefined ? undefined : boxFor(desk, hole) };
    },
  },
  {
    id: 'substitute',
    words: ['substitute', 'put another kind'],
    form: '[<hole>] [from <box>] [with <fastener>] because <substitute:why>',
    label: 'substitute',
    help: 'Another fastener than the hole wants, with a reason: a finding.',
    none: 'no hole of it waits for its fastener',
    group: 'build',
    keys: [key('y', 'build', { asks: ['fastener'] })],
    verb: 'fit',
    fills: (desk) => ({ hole: nextBack(desk) }),
  },
  {
    id: 'for-now',
    words: ['for now', 'on for now'],
    form: '[<hole>] [with <fastener>]',
    label: 'for now',
    help: 'In, but not to stay: a trial fit, a wheel on to move the car.',
    none: 'no hole of it waits for its fastener',
    group: 'build',
    keys: [key('f', 'build')],
    verb: 'fit',
    fixed: { forNow: true },
    fills: (desk) => ({ hole: nextBack(desk) }),
  },
  {
    id: 'working',
    words: ['working', 'working bolt'],
    form: '[<hole>] [with <fastener>]',
    label: 'working bolt',
    help: 'An old fastener in only to turn, draw or hold; it comes out again.',
    none: 'no hole of it waits for its fastener',
    group: 'build',
    keys: [key('w', 'build')],
    verb: 'fit',
    fixed: { working: true },
    fills: (desk) => ({ hole: nextBack(desk) }),
  },
  {
    id: 'tight',
    words: ['tight', 'pull up'],
    form: '[<hole>] [pass <pass:words>] [with <tool:words>]',
    label: 'tight',
    help: 'The next pass of this hole is done: snug first, then its final by its method.',
    none: 'nothing of it waits to be tightened',
    group: 'build',
    keys: [key('t', 'build')],
    verb: 'tighten',
    fills: (desk) => ({ hole: nextTight(desk) }),
  },
  {
    id: 'final',
    words: ['final', 'straight to final'],
    form: '[<hole>] [with <tool:words>]',
    label: 'straight to final',
    help: 'Tight by its method in one go, with no pass before it.',
    none: 'nothing of it waits to be tightened',
    group: 'build',
    keys: [key('l', 'build')],
    verb: 'tighten',
    fills: (desk, args) => {
      const hole = (args.hole as string | undefined) ?? nextTight(desk);
      return { hole, pass: hole === undefined ? undefined : passesOf(desk.ledger, areaOf(hole)).at(-1) };
    },
  },
  {
    id: 'pass',
    words: ['pass complete', 'whole pass done'],
    form: '[<area>] [with <tool:words>]',
    label: 'pass complete',
    help: 'The running pass of this area is done on every hole that was due.',
    group: 'build',
    keys: [key('p', 'build')],
    verb: 'complete-pass',
    fills: (desk) => ({ area: desk.facing.area }),
  },
  {
    id: 'make-final',
    words: ['make final', 'now to stay'],
    form: '<hole>',
    label: 'now to stay',
    help: 'What was on for now stays.',
    group: 'build',
    keys: [],
    verb: 'make-final',
  },
  {
    id: 'looked',
    words: ['looked again', 'second look'],
    form: '[at <hole>] [<area>] [by <who>]',
    label: 'second look',
    help: 'A critical fastener was looked at again; without a hole, all of the area in use.',
    group: 'build',
    keys: [key('z', 'build')],
    means: (desk, { hole, area, who }) => {
      if (hole) return { say: { verb: 'look-again', holes: [hole], ...(who ? { who } : {}) } };
      const name = (area as string | undefined) ?? desk.facing.area;
      const holes = (name ? stateOf(desk.ledger, 'area', name)?.holes : undefined) ?? [];
      const touched = holes.filter((h) => (stateOf(desk.ledger, 'hole', h)?.called.touchedAt ?? 0) > 0);
      if (touched.length === 0) return { no: { because: 'nothing of it was touched', instead: 'say which area' } };
      return { say: { verb: 'look-again', holes: touched, ...(who ? { who } : {}) } };
    },
  },
];

/** The one new fastener that fits the hole by thread and length, else the only one there is. */
function boxFor(desk: Desk, hole: string): string | undefined {
  const h = stateOf(desk.ledger, 'hole', hole);
  const wants = h?.called.stated ?? h?.declared?.wants ?? h?.called.firstSpec ?? {};
  const { all, length } = desk.ledger.names.box;
  const boxes = all.slice(0, length).flatMap((name) => stateOf(desk.ledger, 'box', name) ?? []);
  const left = boxes.filter((b) => b.sort === 'fastener' && b.left > 0);
  const fits = left.filter((b) => b.spec?.thread === wants.thread && b.spec?.lengthMm === wants.lengthMm);
  return (fits[0] ?? (left.length === 1 ? left[0] : undefined))?.name;
}
