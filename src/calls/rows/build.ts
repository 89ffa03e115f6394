// What goes back: back, new, for now, in only to turn and out again.
import type { Entry } from '../../job/entry.ts';
import { mayNotServe } from '../../job/guards.ts';
import { stateOf } from '../../job/ledger.ts';
import { inTray } from '../../job/subjects.ts';
import { type Desk, nextBack, nextTight, workingHoles } from '../desk.ts';
import { askedOnNewElsewhere, boxFor, newFor, newHole, noneNew } from '../new-ones.ts';
import { onwards } from '../next-area.ts';
import { key, type No, type Otherwise, type Row } from '../row.ts';
import { passNow } from './tightening.ts';

/** Where what was in only to turn goes: what may never serve again is on the scrap pile. */
function outOf({ ledger, facing }: Desk, hole: string | undefined): string | undefined {
  const id = hole === undefined ? undefined : stateOf(ledger, 'hole', hole)?.called.occupant?.fastener;
  const f = id === undefined ? undefined : stateOf(ledger, 'fastener', id);
  return f && (mayNotServe(f, false) ? 'scrap' : inTray(facing.tray));
}

/** What is in waits for its pass; where nothing does, the area has nothing left for this key. */
function noneBack(desk: Desk): string | No {
  const pass = passNow(desk, nextTight(desk));
  const because = 'no hole of it waits for its fastener';
  return pass === undefined ? because : { because, instead: `${pass} is next, all of it`, by: 'pass' };
}

/** Its part came back in the same line, which is struck as one. */
const withItsPart = (entries: readonly Entry[]): Otherwise | undefined => {
  return entries.some((e) => e.kind === 'part-fitted' || e.kind === 'part-replaced') &&
    entries.some((e) => e.kind === 'fastener-fitted')
    ? { words: 'To take both back', by: 'strike-last' }
    : undefined;
};

export const buildRows: readonly Row[] = [
  {
    id: 'back',
    words: ['back', 'bring back'],
    form: '[<hole>] [with <fastener>]',
    spoken: ['bring back number <hole>', 'bring back next one'],
    label: 'back',
    help: 'Its own fastener, or an equal one, is in again by a few turns.',
    none: noneBack,
    group: 'build',
    keys: [key('enter', 'build', { pad: 'enter' }), key('space', 'build', { footer: false })],
    verb: 'fit',
    fills: (desk) => ({ hole: nextBack(desk) }),
    otherwise: withItsPart,
  },
  {
    id: 'new',
    words: ['new', 'new from box'],
    form: '[<hole>] [from <box>]',
    spoken: ['new from box number <hole> using <box>'],
    label: 'new one',
    help: 'A new fastener from the parts box is in by a few turns.',
    none: 'no hole of it waits for its fastener',
    group: 'build',
    keys: [key('n', 'build', { pad: '2', asks: (_desk, { box }) => (box ? [] : ['box']) })],
    nothing: (desk, args) => noneNew(desk, newHole(desk, args)),
    offers(desk, slot, known, args) {
      if (slot !== 'box') return known;
      const { fit, others } = newFor(desk, newHole(desk, args));
      return [...fit, ...others].map((b) => b.name);
    },
    verb: 'fit',
    asksOnce: askedOnNewElsewhere,
    fills: (desk, args) => {
      const hole = newHole(desk, args);
      return { hole, box: hole === undefined ? undefined : boxFor(desk, hole) };
    },
    // Said without what it is taken from, it is never the old one.
    means: (desk, args) =>
      args.box === undefined
        ? {
            no: noneNew(desk, args.hole as string | undefined) ?? {
              because: 'several may be meant',
              instead: 'say which',
            },
          }
        : { say: { verb: 'fit', ...args } },
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
    spoken: ['on for now number <hole>'],
    label: 'for now',
    help: 'In, but not to stay: a trial fit, a wheel on to move the car.',
    none: 'no hole of it waits for its fastener',
    group: 'build',
    keys: [key(';', 'build')],
    verb: 'fit',
    fixed: { forNow: true },
    fills: (desk) => ({ hole: nextBack(desk) }),
  },
  {
    id: 'working',
    words: ['working', 'working bolt'],
    form: '[<hole>] [with <fastener>]',
    spoken: ['working bolt number <hole>'],
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
    id: 'working-out',
    words: ['working out', 'working bolt out'],
    form: '[<hole>] [to <to:place>]',
    label: 'working bolt out',
    help: 'What was in only to turn, draw or hold is out again; on the scrap pile, where it may serve no more, else in the tray in use.',
    none: 'no working fastener is in it',
    group: 'build',
    keys: [key('x', 'build', { footer: false })],
    verb: 'remove',
    fills: (desk, args) => {
      const hole = (args.hole as string | undefined) ?? workingHoles(desk)[0];
      return { hole, to: outOf(desk, hole) };
    },
    after: onwards(true),
  },
];
