// What is wrong, and how it is closed; thread repairs.
import { waysOfAsking } from '../../job/entries/works.ts';
import { every, type Ledger, stateOf } from '../../job/ledger.ts';
import { measuredSteps } from '../../job/repair.ts';
import type { Said } from '../../job/said.ts';
import { areaOf, named, subjectText } from '../../job/subjects.ts';
import { type Suspected, suspectedAt, suspectedIn, suspectedOn } from '../../job/suspicions.ts';
import type { Facing } from '../../view/facing.ts';
import { askedOnPutRight } from '../asked-once.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { cap } from '../key-caps.ts';
import { onwards } from '../next-area.ts';
import {
  askedMillimetres,
  askedOnDrill,
  askedOnDrilledWrong,
  askedStep,
  figureStanding,
  nextStep,
  notYetCut,
  wholeNow,
} from '../repair-asked.ts';
import { key, type Once, type Row } from '../row.ts';

/** The hole pointed at, else the suspected one called last, of the area in use before another. */
export function suspectedNext({ ledger, facing }: Desk): string | undefined {
  if (facing.hole && suspectedAt(ledger, facing.hole)) return facing.hole;
  const calledAt = (hole: string) => stateOf(ledger, 'hole', hole)?.called.levels[0]?.n ?? 0;
  const last = (all: readonly Suspected[]) => all.map(({ hole }) => hole).sort((a, b) => calledAt(b) - calledAt(a))[0];
  return suspectedHere(ledger, facing.area)[0] ? last(suspectedHere(ledger, facing.area)) : last(suspectedOn(ledger));
}
export const suspectedHere = (ledger: Ledger, area: string | undefined): readonly Suspected[] =>
  area === undefined ? [] : suspectedIn(ledger, area);

/** What a finding or a photograph is of, where it is not said. */
const here = ({ facing: { hole, area } }: Desk) => ({ at: hole ? `hole:${hole}` : area ? `area:${area}` : 'vehicle' });
/** What was found at a hole that is tight was the last of it: with that said work goes on as after any other call. */
function onwardsWhereTight(desk: Desk, { finding }: Said): Partial<Facing> {
  const hole = named('hole', stateOf(desk.ledger, 'finding', String(finding))?.at ?? '');
  const isTight = hole !== undefined && stateOf(desk.ledger, 'hole', hole)?.called.occupant?.level === 'tight';
  return isTight && areaOf(hole) === desk.facing.area ? onwards(true)(desk) : {};
}
/** "finding 2 thread worn": the number of a hole in front of the words is most likely its place, and would be lost in them. */
function askedOnNumber({ ledger }: Desk, { at, what }: Said): Once | undefined {
  const area = named('area', String(at));
  const [, number, words] = /^(\d+) (\D.*)$/.exec(String(what)) ?? [];
  if (area === undefined || number === undefined || !stateOf(ledger, 'hole', `${area}/${number}`)) return undefined;
  return {
    because: `"${what}" stands at ${area} as a whole; of hole ${number} it is "finding at ${number} ${words}"`,
    instead: 'say which',
    again: 'calls it so',
  };
}
const placeOf = (desk: Desk, { at }: Args): string => subjectText((at as string | undefined) ?? here(desk).at);
export const findingsRows: readonly Row[] = [
  {
    id: 'finding',
    words: ['finding', 'something wrong'],
    form: '[<when:on arrival|during the work>] [at <at:subject>] <what:words>',
    spoken: ['something wrong at hole <at:hole> <what:words>'],
    spokenFor: {
      what: [
        'thread stripped in the head',
        'thread stripped',
        'head rounded',
        'bolt bent',
        'gasket torn',
        'hose cracked',
        'connector broken',
      ],
    },
    label: 'finding',
    help: 'Something is wrong: whether it was so on arrival, where, and what. Right after a call it is of the hole that was called, while they are pulled up of the next one; a comma before the key makes it the area.',
    group: 'findings',
    keys: [key('f', ['strip', 'build'], { asks: ['when'] }), key('f', 'findings', { pad: '7', asks: ['when'] })],
    questions: {
      when: (args, desk) => `at ${placeOf(desk, args)}, was it so (${cap.take} alone: during the work)`,
      what: (args, desk) => `at ${placeOf(desk, args)}, in words`,
    },
    verb: 'make-finding',
    asksOnce: askedOnNumber,
    fills: here,
  },
  {
    id: 'wrong-indeed',
    words: ['wrong indeed', 'suspected rightly'],
    form: '[<hole>] [because <what:why>]',
    spoken: ['suspected rightly number <hole>'],
    label: 'wrong indeed',
    help: 'What the program suspects of a fastener is right: a finding, and its hole wants another.',
    none: 'nothing of it is suspected',
    group: 'findings',
    keys: [key('u', 'strip', { footer: false }), key('u', 'findings', { pad: '8' })],
    verb: 'confirm-suspicion',
    fills: (desk) => ({ hole: suspectedNext(desk) }),
  },
  {
    id: 'meant-so',
    words: ['meant so', 'belongs there'],
    form: '[<hole>] [because <because:why>]',
    spoken: ['belongs there number <hole>'],
    label: 'meant so',
    help: 'What the program suspects of a fastener was looked at, and is as it is meant to be.',
    none: 'nothing of it is suspected',
    group: 'findings',
    keys: [key('z', 'strip', { footer: false }), key('z', 'findings', { pad: '9' })],
    verb: 'dismiss-suspicion',
    fills: (desk) => ({ hole: suspectedNext(desk) }),
  },
  {
    id: 'put-right',
    words: ['put right', 'mended'],
    form: '<finding>',
    spoken: ['mended the <finding> for good'],
    label: 'put right',
    help: 'A finding is closed: cleaned, replaced or repaired.',
    group: 'findings',
    keys: [key('p', 'findings', { pad: '0' }), key('g', 'build')],
    verb: 'close-finding',
    fixed: { how: 'put right' },
    asksOnce: (desk, said) => askedOnPutRight(desk, said) ?? askedOnDrilledWrong(desk, said),
    after: onwardsWhereTight,
  },
  {
    id: 'accepted',
    words: ['accepted', 'stays as it is'],
    form: '<finding> by <who> because <because:why>',
    label: 'accepted',
    help: 'A finding stays as it is: who says so, and why. On a critical area the owner is told first.',
    group: 'findings',
    keys: [key('a', 'findings', { pad: '4' })],
    verb: 'close-finding',
    fixed: { how: 'accepted' },
  },
  {
    id: 'declined',
    words: ['declined', 'owner declines'],
    form: '<finding> by <who> because <because:why>',
    label: 'declined',
    help: 'The owner does not want it put right: when asked, what was said.',
    group: 'findings',
    keys: [key('d', 'findings', { pad: '5' })],
    verb: 'close-finding',
    fixed: { how: 'declined' },
  },
  {
    id: 'told',
    words: ['owner told', 'owner knows'],
    form: `<finding> [<how:${waysOfAsking.join('|')}>] [said <said:words>]`,
    label: 'owner told',
    help: 'The owner was told of a finding: how, and what was said.',
    group: 'findings',
    keys: [key('t', 'findings', { pad: '6' })],
    verb: 'tell-owner',
    // Put right already, he pays for it all the same.
    offers: ({ ledger }, slot, known) =>
      slot === 'finding'
        ? [
            ...known,
            ...[...every(ledger, 'finding')].flatMap((f) => (f.closed?.how === 'put right' && !f.told ? f.id : [])),
          ]
        : known,
  },
  {
    id: 'photo',
    words: ['photo', 'picture'],
    form: '<file:path> [at <at:subject>] [shows <words>]',
    label: 'photo',
    help: 'A photograph of a place, by its file: its digest is written down, and the sheet names both.',
    group: 'findings',
    keys: [key('x', 'findings')],
    questions: { file: 'its file' },
    fills: here,
    means: (_desk, said) => ({ say: { verb: 'note-photo', ...said }, photo: said.file as string }),
  },
  {
    id: 'chased',
    words: ['chased', 'thread chased'],
    form: '[<hole>]',
    spoken: ['thread chased number <hole>'],
    label: 'thread chased',
    help: 'A thread was cleaned with a tap; it is no repair. Refused over open works that are not masked.',
    group: 'findings',
    keys: [],
    verb: 'chase-thread',
    fills: (desk) => ({ hole: desk.facing.hole }),
  },
  {
    id: 'repair',
    words: ['repair', 'thread repair'],
    form: '<hole> <step:depth|drilled|tapped|cleaned|insert|tried> [<millimetres:mm>] [with <words>] [<late:all the same>]',
    spoken: [
      'insert work at number <hole> <step:depth|drilled|tapped|cleaned|insert|tried> [<millimetres:mm>] [with <words>]',
    ],
    spokenFor: { words: ['by hand', 'the bolt'] },
    label: 'thread repair',
    help: 'One step of a thread repair: depth, drilled, tapped, cleaned, insert, tried by hand. The depth comes first; drilled is how wide the drill is, and what can be no drill is asked about.',
    group: 'findings',
    keys: [
      key('r', 'findings', {
        pad: '1',
        asks: (_desk, { step }) => (measuredSteps.has(step as string) ? ['millimetres'] : []),
      }),
    ],
    questions: { step: askedStep, millimetres: askedMillimetres },
    nothing: notYetCut,
    stands: figureStanding,
    besides: askedOnDrill,
    verb: 'repair-thread',
    fills: (desk, { hole }) => ({ step: nextStep(desk.ledger, hole) }),
    otherwise: (entries, _said, { ledger }) => wholeNow(entries, ledger),
  },
];
