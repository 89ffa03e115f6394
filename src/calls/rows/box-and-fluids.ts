// The parts box and the fluids.
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { proposalNamed } from '../proposals.ts';
import { key, type Row } from '../row.ts';

const askWhatFor = (_desk: Desk, { spec, replaces }: Args): string[] => (spec || replaces ? [] : ['spec', 'replaces']);

export const boxAndFluidsRows: readonly Row[] = [
  {
    id: 'box',
    words: ['box', 'in the box'],
    form: '<name:bought> [times <quantity:count>] [as <spec>] [for <replaces:part>]',
    label: 'into the box',
    help: 'New for this job: a fastener with its spec, a part with what it replaces, else a supply.',
    group: 'parts box',
    keys: [key('i', 'box', { pad: '3', fresh: true, asks: askWhatFor })],
    questions: {
      name: 'what was bought',
      spec: 'a fastener: which; else leave out',
      replaces: 'a part: for which; else leave out',
    },
    verb: 'fill-box',
    fills: (desk, { name }) => {
      const { spec, replaces } = proposalNamed(desk, name) ?? {};
      return { spec, replaces };
    },
  },
  {
    id: 'used',
    words: ['used', 'used up'],
    form: '<name:box> [times <quantity:count>] [at <at:subject>]',
    label: 'used up',
    help: 'Taken from the parts box and used.',
    group: 'parts box',
    keys: [key('u', 'box', { pad: '2' })],
    verb: 'use-from-box',
  },
  {
    id: 'returned',
    words: ['returned', 'back to supplier'],
    form: '<name:box> [times <quantity:count>] [because <because:why>]',
    label: 'returned',
    help: 'What is left of it goes back to the supplier.',
    group: 'parts box',
    keys: [key('r', 'box', { pad: '5' })],
    verb: 'move-box',
    fixed: { to: 'supplier' },
  },
  {
    id: 'handed-over',
    words: ['handed over', 'given to owner'],
    form: '<name:box> [times <quantity:count>] [because <because:why>]',
    label: 'handed over',
    help: 'What is left of it goes to the owner.',
    group: 'parts box',
    keys: [key('o', 'box', { pad: '6' })],
    verb: 'move-box',
    fixed: { to: 'owner' },
  },
  {
    id: 'box-scrapped',
    words: ['box scrapped', 'new one spoilt'],
    form: '<name:box> [times <quantity:count>] [because <because:why>]',
    label: 'spoilt',
    help: 'A new one was spoilt and goes on the scrap pile.',
    group: 'parts box',
    keys: [],
    verb: 'move-box',
    fixed: { to: 'scrap' },
  },
  {
    id: 'drained',
    words: ['drained', 'ran out'],
    form: '<circuit>',
    label: 'drained',
    help: 'A fluid was drained; its circuit wants filling and a leak check.',
    group: 'fluids',
    keys: [key('d', 'sealing', { pad: '4' }), key('l', 'strip')],
    verb: 'drain',
  },
  {
    id: 'filled',
    words: ['filled', 'filled again'],
    form: '<circuit> [with <fluid:words>] [litres <litres:number>]',
    label: 'filled',
    help: 'A circuit is filled again, with what and how much. Waits for the beads that keep it in.',
    group: 'fluids',
    keys: [key('f', 'sealing', { pad: '5', asks: ['litres'] })],
    verb: 'fill-fluid',
  },
  {
    id: 'leak-check',
    words: ['leak check', 'holds tight'],
    form: '<circuit> [<how:after running|under pressure>]',
    label: 'leak check',
    help: 'A circuit was looked over after running, or under pressure, and is dry.',
    group: 'fluids',
    keys: [key('k', 'sealing', { pad: '6' })],
    verb: 'check-leaks',
  },
  {
    id: 'oil-level',
    words: ['oil level', 'oil looked at'],
    form: '',
    label: 'oil level',
    help: 'The oil level was looked at and is right.',
    group: 'fluids',
    keys: [key('o', 'sealing', { pad: '7' })],
    verb: 'see-oil-level',
  },
];
