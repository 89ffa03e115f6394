// What comes off: off, slack, empty, damaged, the wrong one.
import { freedIn } from '../../job/freed.ts';
import { stateOf } from '../../job/ledger.ts';
import type { Spec } from '../../job/spec.ts';
import { inTray, numberOf } from '../../job/subjects.ts';
import { askedOnComingOff, askedOnLoadedSpring } from '../asked-once.ts';
import { type Desk, leftToSlacken, nextComing, nextOff, nextSlack, slackToComeOff } from '../desk.ts';
import type { Args } from '../form.ts';
import { cap } from '../key-caps.ts';
import { onwards } from '../next-area.ts';
import { askedOnSlackening, askedOnTakingOff } from '../number-beyond.ts';
import { damagedMeant, foundDamaged, offBefore, wrongMeant, wrongSince } from '../off-before.ts';
import { key, type No, type Row } from '../row.ts';
import { usedAgain } from '../spec-in-use.ts';
import { knownIn } from '../taken-next.ts';
import { callThemParted } from '../where-parts-are.ts';

/** The fastener in use says what comes off, unless the plan knows the hole or it was said. */
function coming(desk: Desk, hole: string | undefined): Args {
  const inUse = knownIn(desk.ledger, hole) ? undefined : desk.facing.spec;
  return { hole, to: inTray(desk.facing.tray), spec: inUse };
}

const mostNamed = 6;
const numbers = (holes: readonly string[]): string =>
  holes.length > mostNamed ? `all ${holes.length} left` : holes.map(numberOf).join(', ');
const allCalled = 'every hole known of it has been called';
/** Which are meant where none comes off any more: those only to be slackened may be as found. */
function noneOff({ ledger, facing }: Desk): string | No {
  const left = facing.area === undefined ? [] : leftToSlacken(ledger, facing.area);
  if (left.length === 0) return allCalled;
  const [are, them] = left.length === 1 ? ['is', 'it'] : ['are', 'them'];
  const because = `nothing more of it comes off; ${numbers(left)} ${are} only to be slackened`;
  return { because, instead: `slack ${them}`, by: 'slack' };
}
/** Nothing more of it: what its bolts held comes next. */
function noneComesOff(desk: Desk): string | No {
  const none = noneOff(desk);
  const loose = desk.facing.area === undefined ? [] : freedIn(desk.ledger, desk.facing.area);
  return none === allCalled && loose.length > 0
    ? { because: none, instead: `${loose.join(', ')} comes off now`, by: 'part-off' }
    : none;
}
/** None is as found; what is slack may be to come off. */
function noneSlack({ ledger, facing }: Desk): string | No {
  const slack = facing.area === undefined ? [] : slackToComeOff(ledger, facing.area);
  if (slack.length === 0) return allCalled;
  const [are, them] = slack.length === 1 ? ['is', 'it'] : ['are', 'them'];
  const because = `none of it is as found; ${numbers(slack)} ${are} only slack`;
  // What is to be slackened may be one more than was counted: no plan knows it better than the eye.
  const isPlanned = stateOf(ledger, 'area', facing.area ?? '')?.declared?.planned === true;
  const more = isPlanned ? {} : { or: { instead: 'or count the holes anew, where there are more', by: 'holes' } };
  return { because, instead: `take ${them} off`, by: 'off', ...more };
}

/** One that is off already proved damaged since: its hole says which. */
const noneDamaged = (desk: Desk): string | No => {
  const none = noneOff(desk);
  return none === allCalled
    ? { because: none, instead: 'where one proved damaged since, point at its hole first', by: 'point' }
    : none;
};
const noTray = ({ to: _, ...rest }: Args): Args => rest;
export const stripRows: readonly Row[] = [
  {
    id: 'off',
    words: ['off', 'take away'],
    form: '[<hole>] [to <to:place>] [as <spec>] [<late:all the same>]',
    spoken: ['take away number <hole> [to <to:place>]', 'take away next one'],
    label: 'off',
    help: 'A fastener came off; it lies in the tray in use. What is known under its number comes with it; a stud that comes out after its nut is said, and called at that number.',
    none: noneComesOff,
    group: 'strip',
    keys: [key('enter', 'strip', { pad: 'enter' }), key('space', 'strip', { footer: false })],
    verb: 'remove',
    besides: askedOnTakingOff,
    asksOnce: askedOnComingOff,
    fills: (desk, args) => coming(desk, (args.hole as string | undefined) ?? nextComing(desk)),
    otherwise: callThemParted,
    after: (desk, said) => ({ ...usedAgain(desk, said), ...onwards(false)(desk) }),
  },
  {
    id: 'slack',
    words: ['slack', 'only slackened'],
    form: '[<hole>] [as <spec>] [<late:all the same>]',
    spoken: ['only slackened number <hole>', 'only slackened next one'],
    label: 'slack',
    help: 'A fastener was loosened and stays in its hole.',
    none: noneSlack,
    group: 'strip',
    keys: [key('s', 'strip', { pad: '0' })],
    verb: 'slacken',
    besides: askedOnSlackening,
    asksOnce: askedOnLoadedSpring,
    fills: (desk, args) => noTray(coming(desk, (args.hole as string | undefined) ?? nextSlack(desk))),
    after: onwards(false),
  },
  {
    id: 'missing',
    words: ['hole empty', 'missing'],
    form: '[<hole>] [<late:all the same>]',
    spoken: ['hole empty number <hole>'],
    label: 'empty',
    help: 'The hole was empty on arrival: a finding, and the hole is open.',
    none: noneOff,
    group: 'strip',
    keys: [key('m', 'strip', { pad: '1' })],
    verb: 'find-empty',
    besides: askedOnTakingOff,
    fills: (desk) => ({ hole: nextOff(desk) }),
    after: onwards(false),
  },
  {
    id: 'damaged',
    words: ['damaged', 'came damaged'],
    form: '[<hole>] [<when:on arrival|during the work>] [to <to:place>] [as <spec>] [because <what:why>] [<late:all the same>]',
    spoken: ['came damaged number <hole>'],
    label: 'damaged',
    help: 'It came off damaged: condemned, and a finding, as found on arrival; a comma before the key asks whether it was the work. Said of a hole whose fastener is off already, that one is condemned in its tray.',
    none: noneDamaged,
    group: 'strip',
    keys: [
      key('d', 'strip', {
        pad: '2',
        asks: (desk, { hole }, which) => (which && offBefore(desk, hole) === undefined ? ['when'] : []),
      }),
    ],
    questions: { when: `was it so (${cap.take} alone: as it came)` },
    verb: 'remove',
    besides: askedOnTakingOff,
    asksOnce: askedOnComingOff,
    means: damagedMeant,
    fills: (desk, args) => coming(desk, (args.hole as string | undefined) ?? nextComing(desk)),
    otherwise: foundDamaged,
    after: (desk, { verb }) => (verb === 'condemn' ? {} : onwards(false)(desk)),
  },
  {
    id: 'wrong-one',
    words: ['wrong one', 'odd one'],
    form: '[<hole>] [as <spec>] [to <to:place>] [because <what:why>] [<late:all the same>]',
    spoken: ['odd one number <hole> as <spec>'],
    label: 'wrong one',
    help: 'What came off does not belong in this hole: a finding. Say what it is. Said of a hole whose fastener is off already, that one is corrected to it.',
    none: noneOff,
    group: 'strip',
    keys: [key('w', 'strip', { pad: '3', asks: ['spec'] })],
    verb: 'remove',
    besides: askedOnTakingOff,
    asksOnce: askedOnComingOff,
    fixed: { wrong: 'odd' },
    means: wrongMeant,
    fills: (desk, args) => {
      // What it is said to be tells what of the hole is meant, not the fastener in use.
      const spec = (args.spec as Spec | undefined) ?? desk.facing.spec;
      const hole = (args.hole as string | undefined) ?? nextComing({ ...desk, facing: { ...desk.facing, spec } });
      const sits = hole !== undefined && stateOf(desk.ledger, 'hole', hole)?.called.occupant !== undefined;
      return { ...coming(desk, hole), spec: sits ? undefined : desk.facing.spec };
    },
    otherwise: wrongSince,
    after: (desk, { verb }) => (verb === 'correct-spec' ? {} : onwards(false)(desk)),
  },
  {
    id: 'found',
    words: ['found', 'seen in'],
    form: '[<hole>] [as <spec>] [<late:all the same>]',
    label: 'found',
    help: 'Say what sits in a hole without touching it.',
    none: noneOff,
    group: 'strip',
    keys: [],
    verb: 'find-fastener',
    besides: askedOnTakingOff,
    fills: (desk, args) => noTray(coming(desk, (args.hole as string | undefined) ?? nextOff(desk))),
  },
];
