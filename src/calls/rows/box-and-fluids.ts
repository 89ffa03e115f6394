// The parts box and the fluids.
import { type Ledger, stateOf } from '../../job/ledger.ts';
import { askedOnLeaks } from '../asked-on-leaks.ts';
import { askedOnBuyingAll, askedOnDraining } from '../asked-once.ts';
import { usualCircuits } from '../circuit-asked.ts';
import { circuitsInTurn } from '../circuits-in-turn.ts';
import type { Args } from '../form.ts';
import { isLitres } from '../measures.ts';
import { allProposed, boughtAs, proposalNamed } from '../proposals.ts';
import { key, type Row } from '../row.ts';

/** "engine oil 4 litres": a figure behind the circuit, or behind its fluid, is how much, unless a circuit is called so. */
function howMuch(ledger: Ledger, said: Args): Args {
  const slot = said.fluid === undefined ? 'circuit' : 'fluid';
  const words = String(said[slot]);
  const [, name, figure, unit = ''] = /^(.*\S)\s+(\d+(?:[.,]\d+)?)\s*([a-z]*)$/i.exec(words) ?? [];
  if (name === undefined || said.litres !== undefined || (unit !== '' && !isLitres(unit))) return said;
  if (slot === 'circuit' && (stateOf(ledger, 'circuit', words) || !stateOf(ledger, 'circuit', name))) return said;
  // "oil 5W 30" is a fluid, "oil 4 l" is how much of it.
  if (slot === 'fluid' && unit === '') return said;
  return { ...said, [slot]: name, litres: Number(String(figure).replace(',', '.')) };
}

export const boxAndFluidsRows: readonly Row[] = [
  {
    id: 'box',
    words: ['box', 'in the box'],
    form: '<name:bought> [times <quantity:count>] [as <spec>] [for <replaces:part>]',
    spoken: ['in the box goes <name:bought> now'],
    label: 'into the box',
    help: 'New for this job: a fastener by its spec or by a name "as" its spec, a part with what it replaces, else a supply.',
    group: 'parts box',
    keys: [key('i', 'box', { pad: '3', fresh: true })],
    questions: { name: 'what was bought; a fastener: bolt hex 10 M6x20, a part: NAME for PART' },
    verb: 'fill-box',
    means: (_desk, said) => ({
      say: { verb: 'fill-box', ...said, ...(!said.spec && !said.replaces && boughtAs(said.name)) },
    }),
    fills: (desk, { name }) => {
      const { spec, replaces, quantity } = proposalNamed(desk, name) ?? {};
      return { spec, replaces, quantity };
    },
    otherwise: (_entries, _said, desk) => {
      const more = allProposed(desk).length;
      return more > 1 ? { words: `${more} more are proposed, all at once`, by: 'box-all' } : undefined;
    },
  },
  {
    id: 'box-all',
    words: ['all proposed in the box', 'all of it was bought'],
    form: '',
    label: 'all proposed',
    help: 'All that is proposed for the parts box goes into it at once, but for what is only as its neighbours are.',
    group: 'parts box',
    keys: [key('a', 'box', { footer: false })],
    means: (desk) => {
      const bought = allProposed(desk);
      const none = 'nothing more is proposed for the parts box';
      return bought.length > 0
        ? { say: { verb: 'fill-box-together', bought } }
        : { no: { because: none, instead: 'what else was bought is named', by: 'box' } };
    },
    asksOnce: askedOnBuyingAll,
  },
  {
    id: 'used',
    words: ['used', 'used up'],
    form: '<name:box> [times <quantity:count>] [at <at:subject>]',
    spoken: ['used the <name:box> up now'],
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
    spoken: ['the <circuit> ran out now'],
    label: 'drained',
    help: 'A fluid was drained; its circuit wants filling and a leak check.',
    group: 'fluids',
    keys: [key('d', 'sealing', { pad: '4' }), key('l', 'strip')],
    verb: 'drain',
    asksOnce: askedOnDraining,
    offers: (desk, _slot, known) => (known.length === 0 ? usualCircuits : circuitsInTurn(desk, known)),
  },
  {
    id: 'filled',
    words: ['filled', 'filled again'],
    form: '<circuit> [with <fluid:words>] [litres <litres:litres>]',
    spoken: ['topped up <circuit> litres <litres:number>'],
    label: 'filled',
    help: 'A circuit is filled again, with what and how much. Waits for the beads that keep it in.',
    group: 'fluids',
    keys: [key('f', 'sealing', { pad: '5', asks: ['litres'] })],
    verb: 'fill-fluid',
    means: ({ ledger }, said) => ({ say: { verb: 'fill-fluid', ...howMuch(ledger, said) } }),
  },
  {
    id: 'leak-check',
    words: ['leak check', 'holds tight'],
    form: '<circuit> [<how:after running|under pressure>]',
    spoken: ['leak check of <circuit> is done'],
    label: 'leak check',
    help: 'A circuit was looked over after running, or under pressure, and is dry.',
    group: 'fluids',
    keys: [key('k', 'sealing', { pad: '6' })],
    verb: 'check-leaks',
    asksOnce: askedOnLeaks,
  },
  {
    id: 'oil-level',
    words: ['engine oil level', 'oil level', 'oil looked at'],
    form: '',
    spoken: ['oil looked at'],
    label: 'engine oil level',
    help: 'The level of the engine oil was looked at and is right.',
    group: 'fluids',
    keys: [key('o', 'sealing', { pad: '7' })],
    verb: 'see-oil-level',
  },
];
