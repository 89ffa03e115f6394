// Putting a call right: another spec, another hole, struck, restored, done already.
import { isTouched } from '../../job/closed.ts';
import { isStruck, lineAt, stateOf } from '../../job/ledger.ts';
import type { Line } from '../../job/line.ts';
import { leaningOn, unstrikable } from '../../job/striking.ts';
import { withinArea } from '../../job/subjects.ts';
import type { Facing } from '../../view/facing.ts';
import { type Desk, nextComing } from '../desk.ts';
import { lastHoleCalled } from '../lists/log.ts';
import { key, type Row } from '../row.ts';

const wasCalled = ({ ledger, facing: { area = '' } }: Desk, name: string): boolean =>
  (stateOf(ledger, 'area', area)?.holes ?? []).some((hole) => {
    const h = withinArea(hole) === name ? stateOf(ledger, 'hole', hole) : undefined;
    return h !== undefined && isTouched(h);
  });

/** What came off wrong or damaged is struck to be said otherwise: its hole is pointed at, where another would be next. */
function saidAnew(desk: Desk, { call, entries }: Line): Partial<Facing> {
  const off = ['damaged', 'wrong-one'].includes(call) && entries.find((e) => e.kind === 'fastener-removed');
  return off && off.hole !== nextComing(desk) ? { hole: off.hole } : {};
}

export const puttingRightRows: readonly Row[] = [
  {
    id: 'wants',
    words: ['wants', 'hole wants'],
    form: '[<hole>] <spec> because <because:why>',
    label: 'hole wants',
    help: 'What a hole wants from now on, whatever came out of it.',
    group: 'putting right',
    keys: [],
    verb: 'state-wants',
    fills: (desk) => ({ hole: desk.facing.hole }),
  },
  {
    id: 'correct-spec',
    words: ['correct', 'really is'],
    form: '<fastener> is <spec> because <because:why>',
    label: 'correct spec',
    help: 'A fastener is not what it was called; proofs over it are void.',
    group: 'putting right',
    keys: [],
    verb: 'correct-spec',
  },
  {
    id: 'was',
    words: ['was', 'really was'],
    form: '[<one:hole>] really <other:hole> [because <because:why>]',
    label: 'was another hole',
    help: 'What was called of one hole was of the other; proofs over both are void.',
    group: 'putting right',
    keys: [key('e', ['strip', 'build', 'log'], { asks: (desk) => (desk.facing.hole ? ['other'] : ['one', 'other']) })],
    questions: { one: 'it was called of hole', other: 'it really was hole' },
    // What was called of none is as found: only of one that was called was it another.
    offers: (desk, slot, known) => (slot === 'one' ? known.filter((name) => wasCalled(desk, name)) : known),
    verb: 'exchange-holes',
    fills: (desk) => ({ one: desk.facing.hole ?? lastHoleCalled(desk), because: 'called at the wrong hole' }),
  },
  {
    id: 'strike',
    words: ['strike', 'strike out'],
    form: '<lines>',
    spoken: ['strike out line <lines>'],
    secondWord: true,
    label: 'strike',
    help: 'Strike lines of the log: the job stands as if they had never been. Lines that lean on them are named.',
    group: 'putting right',
    keys: [key('x', 'log', { pad: '1' })],
    verb: 'strike',
  },
  {
    id: 'strike-with',
    words: ['strike with', 'strike together'],
    form: '<lines>',
    label: 'strike with what leans on it',
    help: 'Strike lines together with all that would have no footing without them, as one call.',
    group: 'putting right',
    keys: [key('w', 'log', { pad: '2' })],
    means: (desk, { lines }) => {
      const together = [...(lines as number[]), ...leaningOn(desk.ledger, lines as number[], 'calls-struck')];
      return { say: { verb: 'strike', lines: together.sort((a, b) => a - b) } };
    },
  },
  {
    id: 'strike-last',
    words: ['strike last', 'take that back'],
    form: '',
    spoken: ['strike that call'],
    label: 'strike last',
    help: 'Strike the last call.',
    group: 'putting right',
    keys: [
      key('backspace', ['strip', 'build', 'findings', 'rotation', 'sealing', 'box', 'leaving', 'services', 'todo'], {
        pad: '.',
      }),
    ],
    means: (desk) => {
      for (let n = desk.ledger.lines.length; n > 0; n--) {
        if (!isStruck(desk.ledger, n) && !unstrikable(desk.ledger, n)) return { say: { verb: 'strike', lines: [n] } };
      }
      return { no: { because: 'nothing was called that can be struck', instead: 'go on' } };
    },
    // Work had gone on to the next area with it, perhaps.
    after(desk, { lines }) {
      const struck = lineAt(desk.ledger, (lines as number[])[0] as number);
      const area =
        struck?.entries.some(({ kind }) => /^(fastener|hole|part|connection)-/.test(kind)) && struck.facing.area;
      return struck && area ? { area, ...saidAnew(desk, struck) } : {};
    },
  },
  {
    id: 'restore',
    words: ['restore', 'unstrike'],
    form: '<lines>',
    label: 'restore',
    help: 'Restore struck lines, checked like striking.',
    group: 'putting right',
    keys: [key('r', 'log', { pad: '3' })],
    verb: 'restore',
  },
  {
    id: 'done-already',
    words: ['done already', 'it is done already'],
    form: '[because <because:why>]',
    spoken: ['it is done already'],
    secondWord: true,
    label: 'done already',
    help: 'Answers a refusal for order: it has happened. Taken, marked, and printed. The same key again says the same.',
    group: 'putting right',
    keys: [],
    means: (_desk, { because }) => ({ again: { because: (because as string | undefined) ?? 'done already' } }),
  },
];
