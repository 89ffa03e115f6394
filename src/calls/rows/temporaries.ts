// What goes in for the work only and must come away: pins, locks, masks, jacks, stands.
import { temporaryKinds } from '../../job/entries/declared.ts';
import { every, stateOf } from '../../job/ledger.ts';
import { askedOnLocking, askedOnTakingOut } from '../asked-once.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { asKnown, everInFirst } from '../kept-places.ts';
import { key, type No, type Row } from '../row.ts';

const sorts = temporaryKinds.join('|');
/** Other names of the same. Common practice, no source. */
const otherNames: Readonly<Record<string, string>> = {
  ...{ hook: 'strap', hanger: 'strap', wire: 'strap', tie: 'strap', cord: 'strap', sling: 'strap' },
  ...{ bung: 'plug', stopper: 'plug', cloth: 'rag', towel: 'rag', tape: 'mask', foil: 'mask', film: 'mask' },
  ...{ timber: 'block', wood: 'block', wedge: 'chock', trestle: 'stand' },
};
/** What it is, as it was declared or as its name says: "crank pin", "jack with block", "caliper hook". */
function sortOf(desk: Desk, temporary: string | undefined): string | undefined {
  if (temporary === undefined) return undefined;
  const known = stateOf(desk.ledger, 'temporary', temporary)?.sort;
  const words = temporary.toLowerCase().split(/\s+/);
  const named = words.find((word) => (temporaryKinds as readonly string[]).includes(word));
  return known ?? named ?? words.flatMap((word) => (Object.hasOwn(otherNames, word) ? otherNames[word] : []))[0];
}

const askSort = (_desk: Desk, { sort }: Args): string[] => (sort ? [] : ['sort']);

/** What is in and waits for its place to be closed is no "nothing". */
function noneToTakeOut({ ledger }: Desk): No {
  const still = [...every(ledger, 'temporary')].filter((t) => t.in).map((t) => t.temporary);
  return still.length === 0
    ? { because: 'nothing that went in for the work is in', instead: 'go on' }
    : {
        because: `${still.join(', ')} in, and each holds or carries something yet`,
        instead: 'close that first, or say in a line that it came out all the same',
        by: 'line',
      };
}

export const temporariesRows: readonly Row[] = [
  {
    id: 'put-in',
    words: ['in', 'put in'],
    form: `<temporary> [as <sort:${sorts}>] [at <at:subject>]`,
    spoken: ['put the <temporary> in place now'],
    label: 'put in',
    help: 'A pin, lock, plug, rag, mask, strap, jack, block, stand, chock or spring compressor went in for the work.',
    group: 'temporaries',
    keys: [key('i', 'strip', { pad: '6', asks: askSort }), key('i', 'build', { asks: askSort })],
    questions: { temporary: 'what goes in', sort: 'what it is' },
    places: asKnown,
    neededWhereAsked: ['sort'],
    verb: 'put-in',
    asksOnce: askedOnLocking,
    fills: (desk, { temporary }) => ({ sort: sortOf(desk, temporary as string | undefined) }),
  },
  {
    id: 'taken-out',
    words: ['out', 'taken out'],
    form: '<temporary>',
    spoken: ['took the <temporary> out again'],
    label: 'taken out',
    help: 'What went in for the work came away again.',
    nothing: noneToTakeOut,
    group: 'temporaries',
    keys: [key('o', 'build', { pad: '6' }), key('o', ['strip', 'rotation'])],
    places: everInFirst,
    verb: 'take-out',
    asksOnce: askedOnTakingOut,
  },
  {
    id: 'masked',
    words: ['all masked', 'everything masked'],
    form: '',
    spoken: ['everything is masked over now'],
    label: 'all masked',
    help: 'Every area that stands open is masked against chips.',
    group: 'temporaries',
    keys: [key('m', 'findings', { pad: '2' })],
    verb: 'mask-all',
  },
  {
    id: 'unmasked',
    words: ['all unmasked', 'masks away'],
    form: '',
    spoken: ['masks away now'],
    label: 'all unmasked',
    help: 'All masks are away and the chips are out.',
    group: 'temporaries',
    keys: [key('n', 'findings', { pad: '3' })],
    verb: 'unmask-all',
  },
];
