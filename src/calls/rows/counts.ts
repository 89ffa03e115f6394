// Counts by eye, what is seen before an area closes, and strays.
import { countDiffers, uncounted } from '../../job/counts.ts';
import { stateOf } from '../../job/ledger.ts';
import type { Spec } from '../../job/spec.ts';
import type { TrayState } from '../../job/states.ts';
import { askedOnDirection } from '../asked-once.ts';
import type { Desk } from '../desk.ts';
import { onwards } from '../next-area.ts';
import { countThere } from '../other-side.ts';
import { key, type Row } from '../row.ts';

const inArea = (desk: Desk) => ({ area: desk.facing.area });
const traysSaid = (trays: readonly { tray: string }[]): string => `tray ${trays.map(({ tray }) => tray).join(', ')}`;
/** K2: what one key calls empty is neither a tray in which something should lie, nor one that was counted and differs. */
const isCountedAlone = (t: TrayState): boolean => t.contents.length > 0 || countDiffers(t);
function whyAlone(trays: readonly TrayState[]): string[] {
  const [differ, full] = [trays.filter(countDiffers), trays.filter((t) => t.contents.length > 0 && !countDiffers(t))];
  return [
    ...(full.length > 0 ? [`something should still lie in ${traysSaid(full)}`] : []),
    ...(differ.length > 0 ? [`the count of ${traysSaid(differ)} does not agree`] : []),
  ];
}
export const countsRows: readonly Row[] = [
  {
    id: 'holes',
    words: ['holes', 'holes counted'],
    form: '<count> [in <area>]',
    spoken: ['holes counted <count>'],
    label: 'count holes',
    help: 'The holes of this area counted by eye, before its first fastener goes back.',
    group: 'counts',
    keys: [key('h', ['strip', 'build']), key('h', 'leaving')],
    verb: 'count-holes',
    fills: inArea,
    // K4: the eye counts here too; what was counted there is only what it is expected to find.
    questions: {
      count: ({ area }, desk) => {
        const there = countThere(desk, String(area ?? desk.facing.area));
        return there ? `how many by eye (${there.from} has ${there.count})` : 'how many';
      },
    },
    stands: (desk, slot, { area }) =>
      slot === 'count' ? countThere(desk, String(area ?? desk.facing.area))?.count.toString() : undefined,
  },
  {
    id: 'count',
    words: ['count', 'count tray'],
    form: '<tray> is <count>',
    spoken: ['in tray <tray> i count <count>'],
    label: 'count a tray',
    help: 'What the eye counts in a tray; the ledger says its figure afterwards.',
    group: 'counts',
    keys: [
      key('c', 'box', { pad: '1', asks: ['tray', 'count'] }),
      key('c', 'leaving', { pad: '6', asks: ['tray', 'count'] }),
    ],
    // K2: one that differs is to be counted again, and is not taken for the next tray.
    questions: {
      count: ({ tray }, { ledger }) => {
        const t = stateOf(ledger, 'tray', String(tray));
        return t && countDiffers(t) ? `how many, counted again: ${t.counted?.count} were said` : 'how many';
      },
    },
    means: (_desk, { tray, count }) => ({ say: { verb: 'count-trays', counts: [{ tray, count }] } }),
  },
  {
    id: 'empty',
    words: ['all others empty', 'all trays empty'],
    form: '',
    spoken: ['all trays empty'],
    label: 'all others empty',
    help: 'Every tray without a standing count was looked at and is empty, but for those in which something should lie: they are counted one by one.',
    group: 'counts',
    keys: [key('e', 'box', { pad: '0' }), key('e', 'leaving', { pad: '8' })],
    means: (desk) => {
      const waiting = uncounted(desk.ledger);
      const counts = waiting.filter((t) => !isCountedAlone(t)).map((t) => ({ tray: t.tray, count: 0 }));
      if (waiting.length === 0) return { no: { because: 'every tray has a count that stands', instead: 'go on' } };
      const because = whyAlone(waiting).join('; ');
      if (counts.length === 0) return { no: { because, instead: 'count each by itself', by: 'count' } };
      return { say: { verb: 'count-trays', counts } };
    },
    otherwise: (_entries, _said, { ledger }) => {
      const left = uncounted(ledger).filter(isCountedAlone);
      return left.length === 0 ? undefined : { words: `Not counted: ${whyAlone(left).join('; ')}`, by: 'count' };
    },
  },
  {
    id: 'count-scrap',
    words: ['scrap pile', 'count scrap pile'],
    form: '[is] <count>',
    spoken: ['on the scrap i count <count>'],
    label: 'count scrap pile',
    help: 'What the eye counts on the scrap pile; nobody asks for it, and a count that differs stays open until one agrees.',
    group: 'counts',
    keys: [key('k', 'box'), key('k', 'leaving', { footer: false })],
    verb: 'count-scrap',
  },
  {
    id: 'count-box',
    words: ['count box', 'box holds'],
    form: '<name:box> is <count>',
    spoken: ['in the box i count <count> of <name:box>'],
    label: 'count in the box',
    help: 'What the eye counts of one thing in the parts box; a count that differs stays open until one agrees.',
    group: 'counts',
    keys: [key('b', 'box', { footer: false })],
    verb: 'count-box',
  },
  {
    id: 'companions',
    words: ['companions', 'companions seen'],
    form: '[<area>]',
    spoken: ['companions seen'],
    label: 'companions seen',
    help: 'Dowels, sleeves, keys, O-rings of this area are where they belong.',
    group: 'counts',
    keys: [key('k', 'build')],
    verb: 'companions-seen',
    fills: inArea,
    after: onwards(true),
  },
  {
    id: 'dry',
    words: ['holes dry', 'blind holes dry'],
    form: '[<area>]',
    spoken: ['blind holes dry'],
    label: 'blind holes dry',
    help: 'The blind holes of this area are dry.',
    group: 'counts',
    keys: [key('u', 'build', { footer: false })],
    verb: 'blind-holes-dry',
    fills: inArea,
    after: onwards(true),
  },
  {
    id: 'direction',
    words: ['direction right', 'routing right'],
    form: '[<area>]',
    spoken: ['routing right here'],
    label: 'direction right',
    help: 'Running direction or routing is as it was marked.',
    group: 'counts',
    keys: [key('%', 'build', { footer: false })],
    verb: 'direction-right',
    asksOnce: askedOnDirection,
    fills: inArea,
    after: onwards(true),
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
      const short = { spec: spec as Spec, tray: where };
      return { say: { verb: 'lose-fastener', short, reaches: false, where: `tray ${where}` } };
    },
  },
  {
    id: 'stray',
    words: ['stray', 'unknown bolt'],
    form: '<spec> [in <tray>]',
    spoken: ['unknown bolt <spec>'],
    label: 'stray',
    help: 'A fastener in the hand whose hole nobody knows.',
    group: 'counts',
    keys: [key('h', 'box', { pad: '9', fresh: true, asks: ['tray'] })],
    questions: { tray: 'in which tray it lies' },
    offers: ({ facing }, slot, known) => (slot === 'tray' ? [...new Set([...known, facing.tray])] : known),
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
];
