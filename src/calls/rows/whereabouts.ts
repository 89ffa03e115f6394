// Where fasteners lie and what they are worth: scrapped, lost, broken, condemned.
import { every, type Ledger, stateOf } from '../../job/ledger.ts';
import { specText } from '../../job/spec.ts';
import { inHole, inTray, named } from '../../job/subjects.ts';
import { fastenerWords } from '../call-words.ts';
import { askedOnLosing, laidAgainIn, lastOffFirst } from '../dropped.ts';
import { oldOnes, oldOnesLike, oneOfEachKind } from '../old-ones.ts';
import { key, type No, type Row } from '../row.ts';

const doNot = (many: number): string => (many === 1 ? 'does not' : 'do not');
const noneInTrays = {
  because: 'no fastener lies in a tray, old or good',
  instead: 'see what else keeps the car here',
  by: 'to-leaving',
};
const byItself = { instead: 'scrap it by itself', by: 'scrap', or: { instead: 'hand it to the owner', by: 'lay' } };
const noOldOne: No = {
  because: 'none lies in a tray that is condemned, broken, or of one use and loosened',
  ...byItself,
};
const liesAny = (ledger: Ledger): boolean =>
  [...every(ledger, 'fastener')].some(({ place }) => named('tray', place) !== undefined);
/** One that was found wrong serves in another hole; of the others nothing is known against them. */
function noneOfItsKind(ledger: Ledger, id: string): No {
  const isWrong = [...every(ledger, 'finding')].some((f) => f.fastener === id);
  const why = isWrong ? 'was the wrong one there, and no old one' : 'may serve again';
  return { because: `${fastenerWords(ledger, id) ?? 'it'} ${why}`, ...byItself };
}
export const whereaboutsRows: readonly Row[] = [
  {
    id: 'scrap',
    words: ['scrap', 'to the scrap'],
    form: '<fastener>',
    spoken: ['scrap the one <fastener>'],
    label: 'scrap',
    help: 'A fastener that does not go back is laid on the scrap pile: the one of the row pointed at, else the next that does not serve again.',
    nothing: noneInTrays,
    group: 'where it lies',
    keys: [key('s', 'box', { pad: '7' })],
    verb: 'move-fastener',
    fixed: { to: 'scrap' },
    otherwise: (_entries, { fastener }, { ledger }) => {
      const spec = specText(stateOf(ledger, 'fastener', String(fastener))?.spec ?? {});
      const more = oldOnes(ledger).filter((f) => specText(f.spec) === spec).length;
      return more > 0 ? { words: `${more} more of its kind ${doNot(more)} serve again`, by: 'scrap-alike' } : undefined;
    },
  },
  {
    id: 'scrap-alike',
    words: ['scrap all like', 'all of its kind to the scrap'],
    form: '<fastener>',
    label: 'scrap all of a kind',
    help: 'All of its kind that do not serve again, condemned, broken or of one use, are laid on the scrap pile from every tray.',
    group: 'where it lies',
    keys: [key('x', 'box', { footer: false })],
    offers: ({ ledger }, _slot, known) => oneOfEachKind(ledger).filter((id) => known.includes(id)),
    nothing: ({ ledger }) => (liesAny(ledger) ? noOldOne : noneInTrays),
    means: ({ ledger }, { fastener }) => {
      const fasteners = oldOnesLike(ledger, String(fastener)).map(({ id }) => id);
      return fasteners.length > 0
        ? { say: { verb: 'scrap-together', fasteners } }
        : { no: noneOfItsKind(ledger, String(fastener)) };
    },
  },
  {
    id: 'lay',
    words: ['lay', 'move it'],
    form: '<fastener:lying> to <to:place> [because <because:why>]',
    label: 'lay elsewhere',
    help: 'A fastener lies in another tray, or was handed to the owner or the supplier; a stray lies in another tray than was called.',
    group: 'where it lies',
    keys: [],
    verb: 'move-fastener',
    means: (_desk, { fastener, to, because }) => ({
      say: String(fastener).startsWith('s')
        ? { verb: 'move-stray', stray: fastener, to }
        : { verb: 'move-fastener', fastener, to, ...(because !== undefined && { because }) },
    }),
  },
  {
    id: 'lost',
    words: ['lost', 'dropped'],
    form: '<fastener> [<reaches:reaches the works>] [at <where:words>]',
    spoken: ['dropped the one <fastener>'],
    label: 'lost',
    help: 'Dropped and not recovered. Say "reaches the works" where it can reach belt, gears, valves, cylinders or sump.',
    group: 'where it lies',
    keys: [key('y', 'strip')],
    offers: (desk, slot, known) => (slot === 'fastener' ? lastOffFirst(desk, known) : known),
    besides: askedOnLosing,
    means: (_desk, { fastener, reaches, reachable, where }) => ({
      say: {
        verb: 'lose-fastener',
        fastener,
        reaches: reaches !== undefined || reachable === 'yes',
        where: where ?? '',
      },
    }),
  },
  {
    id: 'found-again',
    words: ['found again', 'turned up'],
    form: '<lost> [in <to:place>]',
    label: 'found again',
    help: 'What was lost is in its tray again, the one it lay in; a broken piece goes to the scrap pile.',
    group: 'where it lies',
    keys: [key('f', 'box', { pad: '8', footer: false })],
    means: (desk, { lost, to }) => {
      const id = lost as string;
      return id.startsWith('p')
        ? { say: { verb: 'move-piece', piece: id, to: to ?? 'scrap' } }
        : { say: { verb: 'move-fastener', fastener: id, to: to ?? inTray(laidAgainIn(desk, id)) } };
    },
  },
  {
    id: 'searched',
    words: ['searched', 'search made'],
    form: '<lost> by <how:magnet|camera|cover off|sump off>',
    label: 'searched',
    help: 'The search for what was lost was made, and how.',
    group: 'where it lies',
    keys: [key('g', 'box', { footer: false })],
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
    keys: [key('d', 'box', { footer: false })],
    questions: {
      because: ({ fastener }, { ledger }) => `${fastenerWords(ledger, String(fastener)) ?? 'it'}: why`,
    },
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
];
