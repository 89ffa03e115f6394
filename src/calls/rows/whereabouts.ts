// Calls on where fasteners lie and what they are worth: scrapped, lost, broken, strays; and putting a call right.
import { stateOf } from '../../job/ledger.ts';
import type { Said } from '../../job/said.ts';
import type { Spec } from '../../job/spec.ts';
import { areaOf, holeIn, inHole, inTray, withinArea } from '../../job/subjects.ts';
import { lastHoleCalled } from '../lists/log.ts';
import { key, type Row } from '../row.ts';
import { inTrayLike } from '../slots.ts';

const measuredSteps: ReadonlySet<string> = new Set(['depth', 'drilled', 'insert']);
const repairSteps = ['depth', 'drilled', 'tapped', 'cleaned', 'insert', 'tried'] as const;

export const whereaboutsRows: readonly Row[] = [
  {
    id: 'scrap',
    words: ['scrap', 'to the scrap'],
    form: '<fastener>',
    label: 'scrap',
    help: 'A fastener that does not go back is laid on the scrap pile.',
    group: 'where it lies',
    keys: [key('s', 'box')],
    verb: 'move-fastener',
    fixed: { to: 'scrap' },
  },
  {
    id: 'lay',
    words: ['lay', 'move it'],
    form: '<fastener> to <to:place> [because <because:why>]',
    label: 'lay elsewhere',
    help: 'A fastener lies in another tray, or was handed to the owner or the supplier.',
    group: 'where it lies',
    keys: [],
    verb: 'move-fastener',
  },
  {
    id: 'lost',
    words: ['lost', 'dropped'],
    form: '<fastener> [<reaches:reaches the works>] [at <where:words>]',
    label: 'lost',
    help: 'Dropped and not recovered. Say "reaches the works" where it can reach belt, gears, valves, cylinders or sump.',
    group: 'where it lies',
    keys: [key('y', 'strip')],
    means: (_desk, { fastener, reaches, where }) => ({
      say: { verb: 'lose-fastener', fastener, reaches: reaches !== undefined, where: where ?? '' },
    }),
  },
  {
    id: 'short',
    words: ['short', 'one short'],
    form: '<spec> [in <tray>]',
    label: 'short',
    help: 'The count came short of this: one of its equals in the tray is called lost.',
    group: 'counts',
    keys: [],
    means: (desk, { spec, tray }) => {
      const where = (tray as string | undefined) ?? desk.facing.tray;
      const fastener = inTrayLike(desk.ledger, where, spec as Spec);
      return fastener
        ? { say: { verb: 'lose-fastener', fastener, reaches: false, where: `tray ${where}` } }
        : { no: { because: `the ledger has nothing like that in tray ${where}`, instead: 'say another spec or tray' } };
    },
  },
  {
    id: 'found-again',
    words: ['found again', 'turned up'],
    form: '<lost> [in <to:place>]',
    label: 'found again',
    help: 'What was lost is in a tray again; a broken piece goes to the scrap pile.',
    group: 'where it lies',
    keys: [],
    means: (desk, { lost, to }) => {
      const id = lost as string;
      return id.startsWith('p')
        ? { say: { verb: 'move-piece', piece: id, to: to ?? 'scrap' } }
        : { say: { verb: 'move-fastener', fastener: id, to: to ?? inTray(desk.facing.tray) } };
    },
  },
  {
    id: 'searched',
    words: ['searched', 'search made'],
    form: '<lost> by <how:magnet|camera|cover off|sump off>',
    label: 'searched',
    help: 'The search for what was lost was made, and how.',
    group: 'where it lies',
    keys: [],
    verb: 'search',
  },
  {
    id: 'ruled-out',
    words: ['ruled out', 'not in the vehicle'],
    form: '<lost> by <who> because <because:why>',
    label: 'ruled out',
    help: 'A named person states that what was lost is not in the vehicle, and why.',
    group: 'where it lies',
    keys: [],
    verb: 'rule-out-loss',
  },
  {
    id: 'condemned',
    words: ['condemned', 'never goes back'],
    form: '<fastener> because <because:why>',
    label: 'condemned',
    help: 'A fastener that never goes back; it may lie in its tray as a pattern until release.',
    group: 'where it lies',
    keys: [],
    verb: 'condemn',
  },
  {
    id: 'broken',
    words: ['broken', 'broke off'],
    form: '[<hole>] head <headTo:place> pieces <pieces:list>',
    label: 'broken',
    help: 'It broke: where its head is (a place, or stays), and each further piece: hole, found or lost.',
    group: 'where it lies',
    keys: [],
    means: (desk, args) => {
      const hole = (args.hole as string | undefined) ?? desk.facing.hole;
      if (hole === undefined) return { no: { because: 'no hole is pointed at', instead: 'say which hole' } };
      const headTo = args.headTo === 'stays' ? inHole(hole) : args.headTo;
      return { say: { verb: 'break', hole, headTo, pieces: args.pieces } };
    },
  },
  {
    id: 'piece-out',
    words: ['piece out', 'drew the piece'],
    form: '<piece> [to <to:place>]',
    label: 'piece out',
    help: 'A broken piece is out of its hole, or found.',
    group: 'where it lies',
    keys: [],
    verb: 'move-piece',
    fills: () => ({ to: 'scrap' }),
  },
  {
    id: 'piece-lost',
    words: ['piece lost'],
    form: '<piece> [<reaches:reaches the works>] [at <where:words>]',
    label: 'piece lost',
    help: 'A broken piece was dropped and not recovered.',
    group: 'where it lies',
    keys: [],
    means: (_desk, { piece, reaches, where }) => ({
      say: { verb: 'lose-piece', piece, reaches: reaches !== undefined, where: where ?? '' },
    }),
  },
  {
    id: 'measured',
    words: ['measured', 'measured good'],
    form: '<fastener> <measuredMm:mm> limit <limitMm:mm> [as <what:words>]',
    label: 'measured',
    help: 'A one-use fastener measured within the maker\u2019s limit may serve once more.',
    group: 'where it lies',
    keys: [],
    verb: 'measure-fastener',
    fills: () => ({ what: 'length' }),
  },
  {
    id: 'leave-empty',
    words: ['leave empty', 'stays empty'],
    form: '<hole> by <who> because <because:why>',
    label: 'stays empty',
    help: 'A named person states that a hole stays empty, and why; never in a critical area.',
    group: 'where it lies',
    keys: [],
    verb: 'leave-empty',
  },
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
    verb: 'exchange-holes',
    fills: (desk) => ({ one: desk.facing.hole ?? lastHoleCalled(desk), because: 'called at the wrong hole' }),
  },
  {
    id: 'stray',
    words: ['stray', 'unknown bolt'],
    form: '<spec> [in <tray>]',
    label: 'stray',
    help: 'A fastener in the hand whose hole nobody knows.',
    group: 'counts',
    keys: [key('h', 'box')],
    verb: 'find-stray',
    fills: (desk) => ({ tray: desk.facing.tray }),
  },
  {
    id: 'give',
    words: ['give', 'belongs to'],
    form: '<stray> to <hole>',
    label: 'give to hole',
    help: 'A stray belongs to this hole, and is in it by a few turns.',
    group: 'counts',
    keys: [],
    verb: 'give-stray',
  },
  {
    id: 'scrap-stray',
    words: ['scrap stray'],
    form: '<stray>',
    label: 'scrap stray',
    help: 'A stray is laid on the scrap pile.',
    group: 'counts',
    keys: [],
    verb: 'scrap-stray',
  },
  {
    id: 'disown',
    words: ['not of this car', 'foreign bolt'],
    form: '<stray> by <who> because <because:why>',
    label: 'not of this car',
    help: 'A named person states that a stray is no part of this vehicle, and why.',
    group: 'counts',
    keys: [],
    verb: 'disown-stray',
  },
  {
    id: 'chased',
    words: ['chased', 'thread chased'],
    form: '[<hole>]',
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
    form: '<hole> <step:depth|drilled|tapped|cleaned|insert|tried> [<millimetres:mm>] [with <words>]',
    label: 'thread repair',
    help: 'One step of a thread repair: depth, drilled, tapped, cleaned, insert, tried by hand. The depth comes first.',
    group: 'findings',
    keys: [
      key('r', 'findings', { asks: (_desk, { step }) => (measuredSteps.has(step as string) ? ['millimetres'] : []) }),
    ],
    verb: 'repair-thread',
    fills: (desk, { hole }) => {
      const done = new Set(
        (hole ? stateOf(desk.ledger, 'hole', hole as string)?.called.repair : [])?.map((r) => r.step),
      );
      return { step: repairSteps.find((step) => !done.has(step)) };
    },
  },
];

/** For the answer: which hole a said speaks of, in the words of its area. */
export const holeOfSaid = (said: Said): string | undefined => {
  const hole = (said.hole ?? said.one) as string | undefined;
  return hole ? holeIn(areaOf(hole), withinArea(hole)) : undefined;
};
