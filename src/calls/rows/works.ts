// Calls on parts, connections, temporaries, the parts box, fluids and findings.
import { temporaryKinds } from '../../job/entries/declared.ts';
import { partVerdicts } from '../../job/entries/works.ts';
import { every, stateOf } from '../../job/ledger.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { key, type Row } from '../row.ts';

const sorts = temporaryKinds.join('|');
const verdicts = partVerdicts.join('|');
const here = (desk: Desk): string[] => {
  const { area } = desk.facing;
  const state = area === undefined ? undefined : stateOf(desk.ledger, 'area', area);
  return (state?.holes ?? []).filter((h) => !h.slice(h.indexOf('/')).includes(' '));
};

const sortUnlessKnown = (desk: Desk, { temporary }: Args): string[] =>
  temporary !== undefined && stateOf(desk.ledger, 'temporary', temporary as string)?.sort ? [] : ['sort'];

export const workRows: readonly Row[] = [
  {
    id: 'part-off',
    words: ['part off', 'lift off'],
    form: '<part> [held by <heldBy:holes>] [<sits:held by nothing>]',
    label: 'part off',
    help: 'A part came off. One nobody has named before is held by the holes of the area in use, unless said.',
    group: 'parts',
    keys: [key('p', 'strip')],
    means: (desk, { part, heldBy, sits }) => {
      const known = stateOf(desk.ledger, 'part', part as string)?.declared;
      const held = known ? {} : { heldBy: sits ? [] : (heldBy ?? here(desk)) };
      return { say: { verb: 'remove-part', part, ...held } };
    },
  },
  {
    id: 'part-back',
    words: ['part back', 'set on'],
    form: '<part>',
    label: 'part back',
    help: 'A part is in its place again.',
    group: 'parts',
    keys: [key('b', 'build')],
    verb: 'fit-part',
  },
  {
    id: 'part-for-now',
    words: ['part for now', 'trial fit'],
    form: '<part>',
    label: 'part for now',
    help: 'A part is in its place, but not to stay.',
    group: 'parts',
    keys: [],
    verb: 'fit-part',
    fixed: { forNow: true },
  },
  {
    id: 'part-stays',
    words: ['part stays', 'part now to stay'],
    form: '<part>',
    label: 'part stays',
    help: 'A part that was on for now stays.',
    group: 'parts',
    keys: [],
    verb: 'make-part-final',
  },
  {
    id: 'renewed',
    words: ['renewed', 'new part on'],
    form: `<part> [from <from:box>] [old <verdict:${verdicts}>]`,
    label: 'renewed',
    help: 'A new part from the parts box takes its place; the old one is worn and on the scrap pile unless said.',
    group: 'parts',
    keys: [key('r', 'build')],
    verb: 'replace-part',
  },
  {
    id: 'judge',
    words: ['judge', 'old part is'],
    form: `<part> <verdict:${verdicts}> [because <because:why>]`,
    label: 'judge old part',
    help: 'What the old part is, and where it goes.',
    group: 'parts',
    keys: [key('j', 'box')],
    verb: 'judge-part',
  },
  {
    id: 'parted',
    words: ['parted', 'pulled apart'],
    form: '<connection>',
    label: 'parted',
    help: 'A plug, hose, union, duct or harness clip was parted.',
    group: 'parts',
    keys: [key('c', 'strip')],
    verb: 'part-connection',
  },
  {
    id: 'made',
    words: ['made', 'joined again'],
    form: '<connection>',
    label: 'made again',
    help: 'A connection is made again.',
    group: 'parts',
    keys: [key('c', 'build')],
    verb: 'make-connection',
  },
  {
    id: 'put-in',
    words: ['in', 'put in'],
    form: `<temporary> [as <sort:${sorts}>] [at <at:subject>]`,
    label: 'put in',
    help: 'A pin, lock, plug, rag, mask, strap, jack, block or stand went in for the work.',
    group: 'temporaries',
    keys: [key('i', ['strip', 'build'], { asks: sortUnlessKnown })],
    verb: 'put-in',
  },
  {
    id: 'taken-out',
    words: ['out', 'taken out'],
    form: '<temporary>',
    label: 'taken out',
    help: 'What went in for the work came away again.',
    group: 'temporaries',
    keys: [key('o', ['strip', 'build'])],
    verb: 'take-out',
  },
  {
    id: 'masked',
    words: ['all masked', 'everything masked'],
    form: '',
    label: 'all masked',
    help: 'Every area that stands open is masked against chips.',
    group: 'temporaries',
    keys: [key('m', 'findings')],
    verb: 'mask-all',
  },
  {
    id: 'unmasked',
    words: ['all unmasked', 'masks away'],
    form: '',
    label: 'all unmasked',
    help: 'All masks are away and the chips are out.',
    group: 'temporaries',
    keys: [key('n', 'findings')],
    verb: 'unmask-all',
  },
  {
    id: 'box',
    words: ['box', 'in the box'],
    form: '<name:box> [times <quantity:count>] [as <spec>] [for <replaces:part>]',
    label: 'into the box',
    help: 'New for this job: a fastener with its spec, a part with what it replaces, else a supply.',
    group: 'parts box',
    keys: [key('i', 'box', { fresh: true, asks: (_desk, { spec }) => (spec ? [] : ['spec', 'replaces']) })],
    questions: {
      name: 'what was bought',
      spec: 'a fastener: which; else leave out',
      replaces: 'a part: for which; else leave out',
    },
    verb: 'fill-box',
  },
  {
    id: 'used',
    words: ['used', 'used up'],
    form: '<name:box> [times <quantity:count>] [at <at:subject>]',
    label: 'used up',
    help: 'Taken from the parts box and used.',
    group: 'parts box',
    keys: [key('u', 'box')],
    verb: 'use-from-box',
  },
  {
    id: 'returned',
    words: ['returned', 'back to supplier'],
    form: '<name:box> [times <quantity:count>] [because <because:why>]',
    label: 'returned',
    help: 'What is left of it goes back to the supplier.',
    group: 'parts box',
    keys: [key('r', 'box')],
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
    keys: [key('o', 'box')],
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
    keys: [key('d', 'sealing')],
    verb: 'drain',
  },
  {
    id: 'filled',
    words: ['filled', 'filled again'],
    form: '<circuit> [with <fluid:words>] [litres <litres:number>]',
    label: 'filled',
    help: 'A circuit is filled again, with what and how much. Waits for the beads that keep it in.',
    group: 'fluids',
    keys: [key('f', 'sealing', { asks: ['litres'] })],
    verb: 'fill-fluid',
  },
  {
    id: 'leak-check',
    words: ['leak check', 'holds tight'],
    form: '<circuit> [<how:after running|under pressure>]',
    label: 'leak check',
    help: 'A circuit was looked over after running, or under pressure, and is dry.',
    group: 'fluids',
    keys: [key('k', 'sealing')],
    verb: 'check-leaks',
  },
  {
    id: 'oil-level',
    words: ['oil level', 'oil looked at'],
    form: '',
    label: 'oil level',
    help: 'The oil level was looked at and is right.',
    group: 'fluids',
    keys: [key('o', 'sealing')],
    verb: 'see-oil-level',
  },
  {
    id: 'finding',
    words: ['finding', 'something wrong'],
    form: '[<when:on arrival>] [at <at:subject>] <what:words>',
    label: 'finding',
    help: 'Something is wrong: where, and what. "on arrival" when it was so before the work.',
    group: 'findings',
    keys: [key('f', ['strip', 'findings'])],
    verb: 'make-finding',
    fills: (desk) => {
      const { hole, area } = desk.facing;
      return { at: hole ? `hole:${hole}` : area ? `area:${area}` : 'vehicle' };
    },
  },
  {
    id: 'put-right',
    words: ['put right', 'mended'],
    form: '<finding>',
    label: 'put right',
    help: 'A finding is closed: cleaned, replaced or repaired.',
    group: 'findings',
    keys: [key('p', 'findings')],
    verb: 'close-finding',
    fixed: { how: 'put right' },
  },
  {
    id: 'accepted',
    words: ['accepted', 'stays as it is'],
    form: '<finding> by <who> because <because:why>',
    label: 'accepted',
    help: 'A finding stays as it is: who says so, and why. On a critical area the owner is told first.',
    group: 'findings',
    keys: [key('a', 'findings')],
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
    keys: [key('d', 'findings')],
    verb: 'close-finding',
    fixed: { how: 'declined' },
  },
  {
    id: 'told',
    words: ['owner told', 'owner knows'],
    form: '<finding> [said <said:words>]',
    label: 'owner told',
    help: 'The owner was told of a finding, and what was said.',
    group: 'findings',
    keys: [key('t', 'findings')],
    verb: 'tell-owner',
  },
];

/** Parts of the area in use, for short answers. */
export const partsHere = (desk: Desk): string[] =>
  [...every(desk.ledger, 'part')]
    .filter((p) => p.declared?.heldBy.some((h) => here(desk).includes(h)))
    .map((p) => p.part);
