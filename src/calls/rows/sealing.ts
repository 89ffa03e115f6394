// Sealing faces, beads, the conditions and the clock they cure by.
import { noSealant } from '../../job/beads.ts';
import { every, stateOf } from '../../job/ledger.ts';
import { askedOnCleaning, askedOnLaying } from '../closed-over.ts';
import type { Desk } from '../desk.ts';
import { key, type Row } from '../row.ts';

const lastProduct = (desk: Desk): string | undefined =>
  [...every(desk.ledger, 'product')].at(-1)?.label.product ?? desk.products?.[0]?.product;

const noFace = { because: 'no sealing face is known yet', instead: 'say which there is', by: 'face' };

export const sealingRows: readonly Row[] = [
  {
    id: 'bench',
    words: ['bench', 'it is'],
    form: '<celsius:temperature> [degrees] [<humidityPct:number>] [percent]',
    spoken: ['bench is at <celsius:count> degrees [<humidityPct:count> percent]'],
    label: 'bench conditions',
    help: 'Temperature and humidity at the bench, from now until said again. Unknown humidity counts as 40 %.',
    group: 'sealing',
    keys: [key('b', 'sealing', { pad: '3', asks: ['humidityPct'] })],
    questions: { humidityPct: 'humidity of the air in %, as 45 (left out: unknown)' },
    verb: 'note-conditions',
  },
  {
    id: 'clean',
    words: ['clean', 'face clean'],
    form: '<face> [<late:all the same>]',
    spoken: ['all of the <face> is clean'],
    label: 'face clean',
    help: 'A sealing face is clean, dry and free of oil.',
    group: 'sealing',
    keys: [key('c', 'sealing', { pad: '1' })],
    nothing: noFace,
    verb: 'clean-face',
    besides: askedOnCleaning,
    means: (_desk, { face }) => ({ say: { verb: 'clean-face', face } }),
  },
  {
    id: 'bead',
    words: ['bead', 'sealant laid'],
    form: '<face> [with <product>] [<late:all the same>]',
    spoken: ['sealant laid on <face> with <product>'],
    label: 'bead laid',
    help: 'A bead, or dabs in one go, of a product of the list on a face called clean.',
    group: 'sealing',
    keys: [key('s', 'sealing', { pad: '2' })],
    nothing: noFace,
    besides: askedOnLaying,
    means: (desk, { face, product }) => {
      const name = (product as string | undefined) ?? lastProduct(desk);
      const declared = name !== undefined && stateOf(desk.ledger, 'product', name) !== undefined;
      const label = declared ? undefined : desk.products?.find((one) => one.product === name);
      return { say: { verb: 'lay-bead', face, ...(label ? { label } : { product: name }) } };
    },
  },
  {
    id: 'no-bead',
    words: ['no bead', 'goes on dry'],
    form: '<face>',
    label: 'no bead',
    help: 'A clean face that wants a bead goes on without: dry, or with a gasket that is moulded or comes coated. Printed.',
    group: 'sealing',
    keys: [key('n', 'sealing', { pad: '9' })],
    means: ({ ledger }, { face }) =>
      stateOf(ledger, 'face', face as string)?.declared?.bead
        ? { say: { verb: 'lay-bead', face, label: noSealant } }
        : { no: { because: `${face} wants no bead as it is`, instead: 'nothing is to be called for it', done: true } },
  },
  {
    id: 'clock-right',
    words: ['clock right', 'the time is right'],
    form: '',
    spoken: ['the time is right'],
    label: 'clock is right',
    help: 'The time shown is right: time away counts towards what cures.',
    group: 'sealing',
    keys: [key('y', 'sealing', { pad: '8' })],
    verb: 'confirm-clock',
  },
];
