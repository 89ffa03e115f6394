// Parts and connections.
import { partVerdicts } from '../../job/entries/works.ts';
import { every, lastLine, lineAt, stateOf, tallyOf } from '../../job/ledger.ts';
import { openBehind } from '../../job/order.ts';
import { areasThroughParts } from '../../job/parts-behind.ts';
import { subjectText, withinArea } from '../../job/subjects.ts';
import { askedOnJoining } from '../asked-once.ts';
import { askedOnCircuit, partedMeant } from '../circuit-asked.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { asKnown, everPartedFirst } from '../kept-places.ts';
import { newOnesFirst, noneRenewed } from '../new-parts.ts';
import { onwards } from '../next-area.ts';
import { key, type No, type Row } from '../row.ts';
import { saidToClose } from '../said-to-close.ts';
import {
  areaNamedLike,
  areasOfPart,
  askedOnPartOff,
  askedOnReaching,
  callThemParted,
  inTurnToComeOff,
  inTurnToGoBack,
  itsOwnArea,
} from '../where-parts-are.ts';

const verdicts = partVerdicts.join('|');
const here = (desk: Desk, area = desk.facing.area): string[] => {
  const state = area === undefined ? undefined : stateOf(desk.ledger, 'area', area);
  return (state?.holes ?? []).filter((h) => !h.slice(h.indexOf('/')).includes(' '));
};

/** What held the area in use came back last, with a fastener of it or by itself. */
function backAlready({ ledger, facing: { area } }: Desk): No | undefined {
  const all = ((area === undefined ? undefined : stateOf(ledger, 'area', area))?.parts ?? []).flatMap(
    (name) => stateOf(ledger, 'part', name) ?? [],
  );
  const back = all
    .filter((p) => p.removedAt > 0 && p.fittedAt > p.removedAt)
    .toSorted((a, b) => b.fittedAt - a.fittedAt);
  const [last] = back;
  if (!last || all.some((p) => p.off)) return undefined;
  const entries = lineAt(ledger, last.fittedAt)?.entries ?? [];
  const [hole] = entries.flatMap((e) => (e.kind === 'fastener-fitted' ? [e.hole] : []));
  const how = hole === undefined ? '' : `: it came back with ${withinArea(hole)}`;
  return { because: `${last.part} is back already${how}`, instead: 'nothing more is to be called for it', done: true };
}

/** What of the area in use is parted, and what is to be closed behind it first. */
function waitsParted(desk: Desk): No | undefined {
  const { ledger, facing } = desk;
  const { area } = facing;
  for (const { connection, declared, parted } of every(ledger, 'connection')) {
    if (!parted || area === undefined || declared?.area !== area) continue;
    const [gate] = openBehind(ledger, [`connection:${connection}`]);
    if (!gate) continue;
    const because = `${connection}: behind it ${subjectText(gate.subject)} is open: ${gate.because}`;
    const closing = { instead: `close ${subjectText(gate.subject)} first`, by: 'to-leaving' };
    return { because, ...(saidToClose(desk, gate.subject) ?? closing) };
  }
  return undefined;
}

/** What is parted, that of the area in use first; what goes on last is proposed last, though the others wait. */
function inTurnToBeJoined(desk: Desk, slot: string, known: readonly string[]): readonly string[] {
  if (slot !== 'connection') return known;
  const parted = known.filter((name) => {
    const c = stateOf(desk.ledger, 'connection', name);
    return c?.parted || c?.forNow;
  });
  const here = parted.filter((name) => isPartedHere(desk, name));
  const others = parted.filter((name) => !here.includes(name));
  return [...here, ...others, ...known.filter((name) => !parted.includes(name))];
}
/** Of the area in use; one that no plan knows is where it was called parted. */
function isPartedHere({ ledger, facing: { area } }: Desk, connection: string): boolean {
  const c = stateOf(ledger, 'connection', connection);
  return (
    area !== undefined && c !== undefined && (c.declared?.area ?? lineAt(ledger, c.partedAt)?.facing.area) === area
  );
}
/** Which one is off; what came off with its last fastener just now need not be called. */
function askPart(_args: Args, { ledger }: Desk): string {
  const entries = lastLine(ledger)?.entries ?? [];
  const byItself = entries.some((e) => e.kind === 'fastener-removed');
  const off = entries.flatMap((e) => (byItself && e.kind === 'part-removed' ? [e.part] : []));
  return off.length > 0 ? `which other part (${off.join(', ')} came off with its last)` : 'which part';
}

export const partsRows: readonly Row[] = [
  {
    id: 'part-off',
    words: ['part off', 'lift off'],
    form: '<part> [held by <heldBy:holes>] [<sits:held by nothing>] [<late:all the same>]',
    spoken: ['part <part> comes away now'],
    label: 'part off',
    help: 'A part came off. One nobody has named before is held by the holes of the area in use, unless said.',
    group: 'parts',
    keys: [key('p', 'strip', { pad: '4' })],
    besides: askedOnPartOff,
    asksOnce: askedOnReaching,
    offers: (desk, slot, known) => (slot === 'part' ? inTurnToComeOff(desk, known) : known),
    inItsOrder: true,
    questions: { part: askPart },
    means: (desk, { part, heldBy, sits, late }) => {
      const known = stateOf(desk.ledger, 'part', part as string)?.declared;
      const area = late === itsOwnArea ? areaNamedLike(desk.ledger, part as string) : desk.facing.area;
      const held = known ? {} : { heldBy: sits ? [] : (heldBy ?? here(desk, area)) };
      return { say: { verb: 'remove-part', part, ...held } };
    },
    otherwise: callThemParted,
    // With what its bolts did not free by themselves the area is done; with anything else work stays.
    after: (desk, { part }) =>
      [areasOfPart, areasThroughParts].some((of) => of(desk.ledger, part as string).includes(desk.facing.area ?? ''))
        ? onwards(false)(desk)
        : {},
  },
  {
    id: 'part-back',
    words: ['part back', 'set on'],
    form: '<part>',
    spoken: ['this <part> is going back on'],
    label: 'part back',
    help: 'A part is in its place again.',
    nothing: (desk) =>
      backAlready(desk) ?? {
        because: 'no part is off that could go back',
        instead: 'a new one goes on by another call',
        by: 'renewed',
      },
    group: 'parts',
    keys: [key('b', 'build', { pad: '7' })],
    offers: (desk, slot, known) => (slot === 'part' ? inTurnToGoBack(desk, known) : known),
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
    spoken: ['a new <part> is fitted here'],
    label: 'renewed',
    nothing: noneRenewed,
    help: 'A new part from the parts box takes its place; the old one is worn and on the scrap pile unless said.',
    group: 'parts',
    keys: [key('r', 'build', { pad: '4' })],
    // T3: judged before, it stays as it was judged.
    unasked: ({ ledger }, { part, verdict }) =>
      verdict === undefined
        ? { words: `old one ${stateOf(ledger, 'part', String(part))?.judged?.verdict ?? 'worn'}`, by: 'judge' }
        : undefined,
    otherwise: (entries, { verdict }) =>
      verdict === undefined && entries.some((e) => e.kind === 'part-judged')
        ? { words: 'If it is not worn', by: 'judge' }
        : undefined,
    offers: (desk, slot, known) => (slot === 'part' ? newOnesFirst(desk, known) : known),
    verb: 'replace-part',
  },
  {
    id: 'judge',
    words: ['judge', 'old part is'],
    form: `<part> <verdict:${verdicts}> [marked <marking:words>] [because <because:why>]`,
    label: 'judge old part',
    // Which one it is may have been taken from the row, or as the only one there is.
    questions: { verdict: ({ part }) => `${part}, the old one, is` },
    help: 'What the old part is, and where it goes; the date code or marking on it as it stands there.',
    group: 'parts',
    keys: [key('j', 'box', { pad: '4' })],
    verb: 'judge-part',
  },
  {
    id: 'parted',
    words: ['parted', 'pulled apart'],
    form: '<connection>',
    spoken: ['pulled the <connection> apart now'],
    label: 'parted',
    help: 'A plug, hose, union, duct or harness clip was parted. Of a hose or pipe no plan knows it is asked once of which circuit it is.',
    group: 'parts',
    keys: [key('c', 'strip', { pad: '5' })],
    places: asKnown,
    verb: 'part-connection',
    besides: askedOnCircuit,
    means: partedMeant,
    after: (desk) =>
      desk.facing.area !== undefined && tallyOf(desk.ledger, desk.facing.area).off > 0 ? onwards(false)(desk) : {},
  },
  {
    id: 'made',
    words: ['made', 'joined again'],
    form: '<connection>',
    spoken: ['joined the <connection> together again'],
    label: 'made again',
    help: 'A connection is made again.',
    nothing: (desk) =>
      waitsParted(desk) ?? {
        because: 'nothing is parted that could be joined now',
        instead: 'see what is open',
        by: 'to-leaving',
      },
    group: 'parts',
    offers: inTurnToBeJoined,
    inItsOrder: true,
    places: everPartedFirst,
    // Not the letter that parts them: pressed by habit on the other screen it would say what is not so.
    keys: [key('j', 'build', { pad: '5' })],
    verb: 'make-connection',
    asksOnce: askedOnJoining,
    after: onwards(true),
  },
];
