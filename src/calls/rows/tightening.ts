// What is in is brought up, pass by pass, stays, and is looked at again.
import { restOf } from '../../job/area-rest.ts';
import type { Entry } from '../../job/entry.ts';
import { waitingFinalsText } from '../../job/finished-later.ts';
import { stateOf, tallyOf } from '../../job/ledger.ts';
import { levelsToTighten } from '../../job/levels.ts';
import { broughtUpAt, passesOf } from '../../job/passes.ts';
import type { Said } from '../../job/said.ts';
import { areaOf, withinArea } from '../../job/subjects.ts';
import { askedOnPass } from '../asked-once.ts';
import { type Desk, findingsOn, nextTight } from '../desk.ts';
import { lookerToday, wasAskedToday } from '../looker.ts';
import { onwards } from '../next-area.ts';
import { askedOnReading } from '../reading-far.ts';
import { key, type No, type Otherwise, type Row } from '../row.ts';

/** The pass that a hole comes to next: "snug"; its last one makes it tight. */
export function passNow({ ledger }: Desk, hole: string | undefined): string | undefined {
  if (hole === undefined || levelsToTighten(ledger, hole).length === 0) return undefined;
  const { pass } = broughtUpAt(ledger, hole);
  return pass === passesOf(ledger, areaOf(hole)).at(-1) ? 'tight' : pass;
}

/** What waits with its final is nobody's turn now. */
function noneTight({ ledger, facing }: Desk): string | No {
  const waiting = facing.area === undefined ? [] : waitingFinalsText(ledger, facing.area);
  if (waiting.length === 0) return 'nothing of it waits to be tightened';
  return { because: waiting.join('; '), instead: 'that first, or say which hole', by: 'tight' };
}

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

export const tighteningRows: readonly Row[] = [
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
    // "pass final" would be an area of that name: which pass it is follows from what was called.
    means: ({ ledger, facing }, { area, tool }) =>
      stateOf(ledger, 'area', String(area)) === undefined && passesOf(ledger, facing.area ?? '').includes(String(area))
        ? {
            no: {
              because: `"${area}" is a pass, and no area`,
              instead: 'the pass that is due is called by "pass complete" alone',
            },
          }
        : { say: { verb: 'complete-pass', area, ...(tool !== undefined && { tool }) } },
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
