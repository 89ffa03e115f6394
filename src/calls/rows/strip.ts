// What comes off: off, slack, missing, damaged, the wrong one.
import { stateOf } from '../../job/ledger.ts';
import { inTray } from '../../job/subjects.ts';
import { type Desk, nextOff, nextSlack } from '../desk.ts';
import type { Args } from '../form.ts';
import { onwards } from '../next-area.ts';
import { key, type Row } from '../row.ts';

/** The fastener in use says what comes off, unless the plan knows the hole or it was said. */
function coming(desk: Desk, hole: string | undefined): Args {
  const known = hole === undefined ? undefined : stateOf(desk.ledger, 'hole', hole);
  const inUse = known?.called.occupant || known?.declared?.wants ? undefined : desk.facing.spec;
  return { hole, to: inTray(desk.facing.tray), spec: inUse };
}

const noTray = ({ to: _, ...rest }: Args): Args => rest;
export const stripRows: readonly Row[] = [
  {
    id: 'off',
    words: ['off', 'take away'],
    form: '[<hole>] [to <to:place>] [as <spec>]',
    spoken: ['take away number <hole> [to <to:place>]', 'take away next one'],
    label: 'off',
    help: 'A fastener came off; it lies in the tray in use. Levels under its number come with it.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('enter', 'strip', { pad: 'enter' }), key('space', 'strip', { footer: false })],
    verb: 'remove',
    fills: (desk, args) => coming(desk, (args.hole as string | undefined) ?? nextOff(desk)),
    after: onwards(false),
  },
  {
    id: 'slack',
    words: ['slack', 'only slackened'],
    form: '[<hole>] [as <spec>]',
    spoken: ['only slackened number <hole>', 'only slackened next one'],
    label: 'slack',
    help: 'A fastener was loosened and stays in its hole.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('s', 'strip', { pad: '0' })],
    verb: 'slacken',
    fills: (desk, args) => noTray(coming(desk, (args.hole as string | undefined) ?? nextSlack(desk))),
    after: onwards(false),
  },
  {
    id: 'missing',
    words: ['missing', 'hole empty'],
    form: '[<hole>]',
    spoken: ['hole empty number <hole>'],
    label: 'missing',
    help: 'The hole was empty on arrival: a finding, and the hole is open.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('m', 'strip', { pad: '1' })],
    verb: 'find-empty',
    fills: (desk) => ({ hole: nextOff(desk) }),
    after: onwards(false),
  },
  {
    id: 'damaged',
    words: ['damaged', 'came damaged'],
    form: '[<hole>] [to <to:place>] [as <spec>] [because <what:why>]',
    spoken: ['came damaged number <hole>'],
    label: 'damaged',
    help: 'It came off damaged: condemned, and a finding.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('d', 'strip', { pad: '2' })],
    verb: 'remove',
    fixed: { wrong: 'damaged' },
    fills: (desk, args) => coming(desk, (args.hole as string | undefined) ?? nextOff(desk)),
    after: onwards(false),
  },
  {
    id: 'wrong-one',
    words: ['wrong one', 'odd one'],
    form: '[<hole>] [as <spec>] [to <to:place>] [because <what:why>]',
    spoken: ['odd one number <hole> as <spec>'],
    label: 'wrong one',
    help: 'What came off does not belong in this hole: a finding. Say what it is.',
    none: 'every hole known of it has been called',
    group: 'strip',
    keys: [key('w', 'strip', { pad: '3', asks: ['spec'] })],
    verb: 'remove',
    fixed: { wrong: 'odd' },
    fills: (desk, args) => ({
      ...coming(desk, (args.hole as string | undefined) ?? nextOff(desk)),
      spec: desk.facing.spec,
    }),
    after: onwards(false),
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
];
