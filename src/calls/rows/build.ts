// What goes back: back, new, for now, tight, looked at again.
import { restOf } from '../../job/area-rest.ts';
import type { Entry } from '../../job/entry.ts';
import { waitingFinalsText } from '../../job/finished-later.ts';
import { mayNotServe } from '../../job/guards.ts';
import { stateOf, tallyOf } from '../../job/ledger.ts';
import { levelsToTighten } from '../../job/levels.ts';
import { nextPass, passesOf } from '../../job/passes.ts';
import type { Said } from '../../job/said.ts';
import { areaOf, inTray, withinArea } from '../../job/subjects.ts';
import { askedOnPass } from '../asked-once.ts';
import { type Desk, findingsOn, nextBack, nextTight, workingHoles } from '../desk.ts';
import { lookerToday, wasAskedToday } from '../looker.ts';
import { askedOnNewElsewhere, boxFor, newFor, newHole, noneNew } from '../new-ones.ts';
import { onwards } from '../next-area.ts';
import { askedOnReading } from '../reading-far.ts';
import { key, type No, type Otherwise, type Row } from '../row.ts';

/** Where what was in only to turn goes: what may never serve again is on the scrap pile. */
function outOf({ ledger, facing }: Desk, hole: string | undefined): string | undefined {
  const id = hole === undefined ? undefined : stateOf(ledger, 'hole', hole)?.called.occupant?.fastener;
  const f = id === undefined ? undefined : stateOf(ledger, 'fastener', id);
  return f && (mayNotServe(f, false) ? 'scrap' : inTray(facing.tray));
}

/** The pass that a hole comes to next: "snug"; its last one makes it tight. */
function passNow({ ledger }: Desk, hole: string | undefined): string | undefined {
  const level = hole === undefined ? undefined : levelsToTighten(ledger, hole)[0];
  if (hole === undefined || level === undefined) return undefined;
  const pass = nextPass(ledger, level);
  return pass === passesOf(ledger, areaOf(hole)).at(-1) ? 'tight' : pass;
}

/** What waits with its final is nobody's turn now. */
function noneTight({ ledger, facing }: Desk): string | No {
  const waiting = facing.area === undefined ? [] : waitingFinalsText(ledger, facing.area);
  if (waiting.length === 0) return 'nothing of it waits to be tightened';
  return { because: waiting.join('; '), instead: 'that first, or say which hole', by: 'tight' };
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

/** F3: tight, a hole stays open by what was found at it, and its area keeps the car, until somebody says that it is put right. */
function stillFound(entries: readonly Entry[], _said: Said, { ledger }: Desk): Otherwise | undefined {
  const tight = entries.flatMap((e) => (e.kind === 'fastener-tightened' && e.last ? [e.hole] : []));
  const holes = tight.filter((hole) => findingsOn(ledger, `hole:${hole}`).length > 0).map(withinArea);
  const closed = [...new Set(tight.map(areaOf))].filter((area) => tallyOf(ledger, area).open === 0);
  const areas = closed.filter((area) => restOf(ledger, area).some(({ what }) => what === 'finding'));
  const found = [...holes, ...areas];
  return found.length > 0
    ? { words: `What was found at ${found.join(', ')} is open yet; put right`, by: 'put-right' }
    : undefined;
}

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
  {
    id: 'tight',
    labelNow: (desk) => passNow(desk, nextTight(desk)),
    words: ['tight', 'pull up'],
    form: '[<hole>] [pass <pass:words>] [with <tool:words>] [read <read:torque>] [<late:all the same>]',
    spoken: ['pull up number <hole>', 'pull up next one'],
    label: 'tight',
    help: 'The next pass of this hole is done: snug first, then its final by its method. "read 80" where the method wants the torque read at its end; one far from its figure is asked about.',
    none: noneTight,
    group: 'build',
    keys: [key('t', 'build', { pad: '0' })],
    verb: 'tighten',
    besides: askedOnReading,
    means: (_desk, { read, late: _, ...said }) => ({
      say: { verb: 'tighten', ...said, ...(read !== undefined && { readNewtonMetres: read }) },
    }),
    fills: (desk) => ({ hole: nextTight(desk) }),
    otherwise: stillFound,
    after: onwards(true),
  },
  {
    id: 'final',
    words: ['final', 'straight to final'],
    form: '[<hole>] [with <tool:words>]',
    spoken: ['straight to the end number <hole>'],
    label: 'straight to final',
    help: 'Tight by its method in one go, with no pass before it.',
    none: noneTight,
    group: 'build',
    keys: [key('l', 'build', { pad: '3' })],
    verb: 'tighten',
    fills: (desk, args) => {
      const hole = (args.hole as string | undefined) ?? nextTight(desk);
      return { hole, pass: hole === undefined ? undefined : passesOf(desk.ledger, areaOf(hole)).at(-1) };
    },
    otherwise: stillFound,
    after: onwards(true),
  },
  {
    id: 'pass',
    words: ['pass complete', 'whole pass done'],
    form: '[<area>] [with <tool:words>]',
    spoken: ['this pass is now complete'],
    label: 'pass complete',
    labelNow(desk) {
      const pass = passNow(desk, nextTight({ ...desk, facing: { ...desk.facing, hole: undefined } }));
      return pass && `all ${pass}`;
    },
    help: 'The running pass of this area is done on every hole that was due.',
    group: 'build',
    // Not the letter with which a part comes off.
    keys: [key('.', 'build', { pad: '1' })],
    verb: 'complete-pass',
    asksOnce: askedOnPass,
    answeredInWords: true,
    fills: (desk) => ({ area: desk.facing.area }),
    otherwise: stillFound,
    after: onwards(true),
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
    spoken: ['look over the <area> once more', 'look once more number <hole>'],
    label: 'second look',
    help: 'A critical fastener was looked at again; without a hole, all of the area in use.',
    group: 'build',
    keys: [
      key('z', 'build', { pad: '9', asks: (desk, _filled, which) => (which || !wasAskedToday(desk) ? ['who'] : []) }),
    ],
    signed: true,
    questions: { who: 'whose eyes, asked once a day; another pair than worked, where there is one' },
    means: (desk, { hole, area, who = lookerToday(desk) }) => {
      if (hole) return { say: { verb: 'look-again', holes: [hole], ...(who ? { who } : {}) } };
      const name = (area as string | undefined) ?? desk.facing.area;
      const holes = (name ? stateOf(desk.ledger, 'area', name)?.holes : undefined) ?? [];
      const touched = holes.filter((h) => (stateOf(desk.ledger, 'hole', h)?.called.touchedAt ?? 0) > 0);
      if (touched.length === 0) return { no: { because: 'nothing of it was touched', instead: 'say which area' } };
      return { say: { verb: 'look-again', holes: touched, ...(who ? { who } : {}) } };
    },
    otherwise: (_entries, { who }, { name }) =>
      who !== undefined && who === name
        ? { words: 'By the one who works here; another pair of eyes, where there is one', by: ['which', 'looked'] }
        : undefined,
    after: onwards(true),
  },
];
