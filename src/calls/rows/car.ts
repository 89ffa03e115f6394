// The car as a whole: start, move, road test, release, waiting.
import { every, stateOf } from '../../job/ledger.ts';
import { isMakersAlone } from '../../trade/intervals.ts';
import { metric } from '../../trade/units-shown.ts';
import { askedOnDriving, askedOnMoving } from '../asked-on-driving.ts';
import { daysOn, figuresHow, yearsOn } from '../days-on.ts';
import type { Desk } from '../desk.ts';
import { comesRound } from '../due-unsaid.ts';
import type { Args } from '../form.ts';
import { askedOnDueAnew, askedOnPastDue, dueMisread, dueNext, dueWords } from '../next-due.ts';
import { key, type Row } from '../row.ts';

/** Where no interval is known for it, or the maker's alone will do, date and distance are asked for. */
const asksWhenDue = (desk: Desk, { what }: Args): readonly string[] =>
  typeof what === 'string' && 'why' in dueNext(desk, what) ? ['on', 'atDistance'] : [];

/** What was done here comes first, then each service of the job; what is said of one moves none. */
const fallsDue = (desk: Desk): readonly string[] => [
  ...new Set([...comesRound(desk), ...[...every(desk.ledger, 'service')].map(({ service }) => service)]),
];

/** For whom and why a job mostly waits; anything else is typed. Common practice, no source. */
const waitingFor: Readonly<Record<string, readonly string[]>> = {
  who: ['parts', 'the owner', 'another workshop', 'other hands', 'the sealant'],
  because: ['on order', 'to ring back', 'work sent out', 'no hands free', 'cures'],
};

export const carRows: readonly Row[] = [
  {
    id: 'tools',
    words: ['tools out', 'tools are out'],
    form: '',
    spoken: ['all the tools are out'],
    label: 'tools out',
    help: 'Every tool is out of the engine bay and counted.',
    group: 'the car',
    keys: [key('t', 'leaving', { pad: '1' })],
    verb: 'tools-out',
  },
  {
    id: 'start',
    words: ['start', 'first start'],
    form: '',
    spoken: ['engine starts now'],
    secondWord: true,
    label: 'first start',
    help: 'The engine is started. Refused until beads, rotation, fluids, oil, connections, locks, tools and trays allow it.',
    group: 'the car',
    keys: [key('s', 'leaving', { pad: '2' })],
    verb: 'start-engine',
  },
  {
    id: 'lowered',
    words: ['lowered', 'car comes down'],
    form: '',
    spoken: ['car comes down'],
    label: 'car down',
    help: 'The car stands on its wheels. Refused until the nuts are snug and the stands are out.',
    group: 'the car',
    keys: [key('d', 'leaving', { pad: '3' })],
    verb: 'lower-car',
  },
  {
    id: 'moved',
    words: ['moved', 'car moves'],
    form: '[<how:own power|by hand>]',
    spoken: ['car moves <how:own power|by hand>'],
    label: 'car moves',
    help: 'The car is moved. Refused until pedal, wheels and steering allow it.',
    group: 'the car',
    keys: [key('m', 'leaving', { asks: ['how'] })],
    verb: 'move-car',
    asksOnce: askedOnMoving,
  },
  {
    id: 'pedal',
    words: ['pedal firm', 'brake pedal firm'],
    form: '',
    spoken: ['the brake pedal is good'],
    label: 'pedal firm',
    help: 'The brake pedal was pressed until firm.',
    group: 'the car',
    keys: [key('p', 'leaving')],
    verb: 'pedal-firm',
  },
  {
    id: 'road',
    words: ['road tested', 'road test'],
    form: '',
    spoken: ['the road test is over'],
    label: 'road test',
    help: 'The car was driven and is right.',
    group: 'the car',
    keys: [key('r', 'leaving', { pad: '4' })],
    verb: 'road-test',
    asksOnce: askedOnDriving,
  },
  {
    id: 'no-road',
    words: ['no road test', 'road test waived'],
    form: 'by <who> because <because:why>',
    label: 'no road test',
    help: 'Why there was no road test, and who says so.',
    group: 'the car',
    keys: [key('n', 'leaving')],
    verb: 'waive-road-test',
    signed: true,
  },
  {
    id: 'registration',
    words: ['registration'],
    form: '<registration:words>',
    label: 'registration',
    help: 'The registration of the vehicle, where it was left out or wrong when the job was opened.',
    group: 'the car',
    keys: [key('l', 'leaving', { footer: false })],
    verb: 'note-registration',
    stands: ({ ledger }) => stateOf(ledger, 'vehicle', 'vehicle')?.registration,
  },
  {
    id: 'odometer',
    words: ['odometer', 'distance run'],
    form: '<distance:distance> [<unit:km|mi>]',
    spoken: ['the distance run is <distance:figures>'],
    label: 'odometer',
    help: 'The distance on the clock.',
    group: 'the car',
    keys: [key('o', 'leaving', { pad: '7' })],
    verb: 'note-odometer',
    fills: ({ units = metric }) => ({ unit: units.distance }),
  },
  {
    id: 'due',
    words: ['due', 'next due'],
    form: '<what:words> [on <on:date>] [at <atDistance:number>]',
    label: 'next due',
    help: 'A re-check or the next service: by date, by distance, whichever comes first. With neither said, by the usual interval or the one of your settings; a timing belt by the maker\u2019s alone.',
    group: 'the car',
    keys: [key('i', 'leaving', { footer: false, asks: asksWhenDue })],
    questions: {
      what: 'what falls due',
      on: ({ what }) => `${what}: by which date (${figuresHow}; leave out: none)`,
      atDistance: ({ what }) => `${what}: at which distance on the clock (leave out: none)`,
    },
    offers: (desk, slot, known) => (slot === 'what' ? fallsDue(desk) : slot === 'on' ? yearsOn(desk) : known),
    unasked: (desk, { what, on, atDistance }) => {
      const words = typeof what === 'string' && on === undefined && !atDistance ? dueWords(desk, what) : undefined;
      return words === undefined ? undefined : { words, by: 'line' };
    },
    verb: 'note-due',
    asksOnce: (desk, said) => askedOnPastDue(desk, said) ?? askedOnDueAnew(desk, said),
    means: (desk, args) => {
      const { what, on, atDistance } = args as { what: string; on?: string; atDistance?: number };
      const misread = dueMisread(what);
      if (misread !== undefined)
        return { no: { because: misread, instead: 'say it as "on 2031-02-01" or "at 180000"' } };
      const noOdometer = stateOf(desk.ledger, 'vehicle', 'vehicle')?.odometer === undefined;
      // Where no odometer is noted the job counts in km.
      if (atDistance !== undefined && noOdometer && desk.units?.distance === 'mi')
        return {
          no: {
            because: 'the odometer is not noted, which the distance goes by',
            instead: 'note it first',
            by: 'odometer',
          },
        };
      if (on !== undefined || atDistance !== undefined) return { say: { verb: 'note-due', ...args } };
      const due = dueNext(desk, what);
      if (!('why' in due)) return { say: { verb: 'note-due', what, ...due } };
      return isMakersAlone(what)
        ? { no: { because: due.why, instead: 'say "on DATE at DISTANCE"' } }
        : { say: { verb: 'note-due', what } };
    },
  },
  {
    id: 'release',
    words: ['release', 'car may leave'],
    form: 'by <who>',
    spoken: ['car may leave by <who>'],
    secondWord: true,
    label: 'release',
    help: 'The car leaves. Refused while anything is open; nothing overrides it.',
    group: 'the car',
    twice: 'The car leaves: release it?',
    notMade: 'Not released. Nothing was written.',
    keys: [key('x', 'leaving', { pad: '9' })],
    verb: 'release',
    signed: true,
  },
  {
    id: 'reopen',
    words: ['reopen', 'open again'],
    form: 'by <who> because <because:why>',
    label: 'reopen',
    help: 'A released job is taken up again.',
    group: 'the car',
    keys: [key('v', 'leaving')],
    verb: 'reopen',
    signed: true,
  },
  {
    id: 'leaves',
    words: ['leaves unreleased', 'towed away'],
    form: 'by <who> because <because:why>',
    label: 'leaves unreleased',
    help: 'The car leaves with its list open: towed, not fit to drive. It releases nothing.',
    group: 'the car',
    twice: 'Not fit to drive, the list is handed over: leave it so?',
    notMade: 'Not left. Nothing was written.',
    keys: [key('u', 'leaving')],
    verb: 'leave-unreleased',
    signed: true,
  },
  {
    id: 'waiting',
    words: ['waiting', 'job waits'],
    form: 'for <who> because <because:why> [until <until:day>]',
    label: 'job waits',
    help: 'The job waits: for whom, why, until when.',
    group: 'the car',
    keys: [key('w', 'leaving', { asks: ['until'] })],
    questions: {
      who: 'for whom or for what',
      because: 'why',
      until: `until when (${figuresHow}; leave out: not known)`,
    },
    offers: (desk, slot, known) => waitingFor[slot] ?? (slot === 'until' ? daysOn(desk) : known),
    verb: 'wait',
  },
  {
    id: 'resumed',
    words: ['resumed', 'go on again'],
    form: '',
    spoken: ['go on again'],
    label: 'goes on',
    help: 'The job goes on.',
    group: 'the car',
    keys: [key('g', 'leaving')],
    verb: 'resume',
  },
];
