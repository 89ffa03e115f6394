// What is asked before a call is made: one slot after the other, chosen from a list or typed, and at last whether it is
// meant where that is asked twice. Pure: the question, and what an answer to it comes to, from the desk as it stands.

import { type Bound, callIds, type Keymap, screenIds } from '../calls/bindings.ts';
import { choicesFor } from '../calls/choices.ts';
import { areHolesKnown, type Desk } from '../calls/desk.ts';
import type { Args, Slot } from '../calls/form.ts';
import { isChoice } from '../calls/form.ts';
import { keyName } from '../calls/key-caps.ts';
import { numberAmongCalls } from '../calls/key-names.ts';
import { lackingIn } from '../calls/lacking.ts';
import { type Pressing, pressing, unanswered, whyNot } from '../calls/pressing.ts';
import type { Besides, No, Row } from '../calls/row.ts';
import { meantBy } from '../calls/row.ts';
import { showSlot } from '../calls/slots.ts';
import { rowById } from '../calls/table.ts';
import { usuallySaidBy, usualReasons } from '../calls/usual-reasons.ts';
import { blocked } from '../job/decide.ts';
import { stateOf } from '../job/ledger.ts';
import { numberOf } from '../job/subjects.ts';
import type { ScreenId } from '../view/screens.ts';
import { type Asking, type Choice, firstInTurn } from '../view/view.ts';
import { besidesType, callType, mayNameNew } from './answering.ts';
import { choiceOf } from './choice-asked.ts';
import { titleOf } from './title-asked.ts';

/** What is asked next for a call; undefined when nothing is. */
export function questionOf(pressing: Pressing, desk: Desk): Asking | undefined {
  const [slot] = unanswered(pressing, desk);
  const { row } = pressing.bound;
  if (slot) return askingFor(row, slot, pressing.args, desk);
  const besides = row.besides?.(desk, pressing.args);
  if (besides) return besidesAsking(row, besides);
  return row.twice && !pressing.args.sure ? sureAsking(row, pressing.args) : undefined;
}
export const besidesAsking = (row: Row, { key, title, choices }: Besides): Asking => ({
  ...plainAsking(title, key),
  row: row.id,
  type: besidesType,
  optional: false,
  choices,
});

/** A question with nothing to choose from: a name, a line. */
export const plainAsking = (title: string, slot: string): Asking => ({
  title,
  row: '',
  slot,
  type: 'words',
  optional: true,
  choices: [],
  typed: '',
  at: 0,
});

/** One of these alone; the first is what an Enter answers. */
export const oneOf = (title: string, choices: readonly Choice[]): Asking => ({
  ...plainAsking(title, 'one of these'),
  type: choices.map(({ value }) => value).join('|'),
  optional: false,
  choices,
});
/** The careful answer first. */
export const yesOrNo = (title: string, yes: string, no: string): Asking => ({
  ...oneOf(title, [
    { value: 'no', text: no },
    { value: 'yes', text: yes },
  ]),
  slot: 'yes or no',
});
/** A call or a screen, chosen by its number. */
export const aCall = (title: string, choices: readonly Choice[]): Asking => ({
  ...plainAsking(title, 'call'),
  type: callType,
  optional: false,
  choices,
});
/** Every call of a screen by its number, which it keeps, with its key where there are more than a keypad has; those refused just now come last, with why. */
export function callChoices(keymap: Keymap, screen: ScreenId, desk: Desk, picks: Args): Choice[] {
  const all = keymap.keysOn(screen);
  const choices = callIds(all).flatMap((id, at): Choice[] => {
    const bound = all.find(({ row }) => row.id === id);
    const stop = bound && stopOf(bound, desk, picks);
    const refused = stop && { blocked: stop.because, way: stop.instead };
    const text = `${numberAmongCalls(id, at)}  ${bound?.row.label}`;
    const beside = bound && !keymap.pad ? { beside: keyName(bound.binding.key) } : {};
    return bound ? [{ value: id, text, ...beside, ...refused }] : [];
  });
  const first = choices.filter((one) => one.value === 'which');
  const others = choices.filter((one) => one.value !== 'which');
  return [...first, ...others.filter((one) => !one.blocked), ...others.filter((one) => one.blocked)];
}
/** Why a call would not be made: refused already, or with nothing there is that it could be about. */
function stopOf(bound: Bound, desk: Desk, picks: Args): Pick<No, 'because' | 'instead'> | undefined {
  const refused = whyNot(bound, desk, picks);
  if (refused) return refused;
  const begun = pressing(bound, picks);
  const asking = bound.row.nothing && questionOf(begun, desk);
  return asking ? notAsked(begun, asking, desk) : undefined;
}
export const screenChoices = (keymap: Keymap): Choice[] =>
  screenIds(keymap).map((id) => ({ value: id, text: rowById.get(id)?.label ?? id }));

const wheres: ReadonlySet<string> = new Set(['hole', 'area', 'drive']);
/** Why nothing is asked: nothing there is could be the answer, or what is asked for would be refused whatever the answer. */
export function notAsked(pressing: Pressing, asking: Asking, desk: Desk): No | undefined {
  const { row } = pressing.bound;
  const { args } = pressing;
  const lacking = lackingIn(row, desk, { ...row.fills?.(desk, args), ...args });
  const asksWhere = unanswered(pressing, desk).some(({ slot }) => wheres.has(slot));
  if (lacking && !asksWhere) return lacking;
  if (row.nothing && asking.choices.every((c) => c.way)) {
    const none = typeof row.nothing === 'function' ? row.nothing(desk, pressing.args) : row.nothing;
    if (none) return none;
  }
  return row.twice ? (whyNot(pressing.bound, desk, pressing.args) ?? undefined) : withoutFooting(pressing, desk);
}

/** What is known of the call already has no footing: no answer to what is still to be asked would give it one. */
function withoutFooting({ bound: { row }, args }: Pressing, desk: Desk): No | undefined {
  if (row.means || Object.keys(args).length === 0) return undefined;
  const meant = meantBy(row, desk, args);
  const stop = 'say' in meant ? blocked(desk.ledger, meant.say, desk.now) : null;
  return stop?.kind === 'footing' ? { because: stop.because, instead: stop.instead } : undefined;
}

function askingFor(row: Row, { slot, type, optional }: Slot, args: Args, desk: Desk): Asking {
  const reasons = type === 'why' ? usualReasons(row.id) : [];
  const isStatement = type === 'who' && !row.signed && !row.offers;
  const known = [...reasons, ...(isStatement ? usuallySaidBy(row.id) : []), ...choicesFor(desk, type, args)];
  const all = (row.offers?.(desk, slot, known, args) ?? known).map(
    (value): Choice => choiceOf(row, slot, type, value, args, desk),
  );
  // Where something new may be named, what can't be meant is no choice.
  const judged = mayNameNew.has(row.id) && !keepsPlaces(row, type, all) ? all.filter((c) => !c.never) : all;
  // Fixed choices keep their numbers, blocked or not; of names, those that can be taken come first.
  const stand = isChoice(type) || row.inItsOrder === true;
  const inTurn = stand ? judged : [...judged.filter((c) => !c.blocked), ...judged.filter((c) => c.blocked)];
  const places = keepsPlaces(row, type, all) ? row.places?.(desk, known) : undefined;
  const choices = places
    ? inTurn.toSorted((one, other) => places.indexOf(one.value) - places.indexOf(other.value))
    : inTurn;
  const usual = showSlot(desk, type, row.fills?.(desk, args)[slot]);
  const at = choices.findIndex((c) => c.value === usual);
  const turn = places && turnOf(inTurn);
  const stands = row.stands?.(desk, slot, args);
  const isNeeded = row.neededWhereAsked?.includes(slot) === true;
  const isLeftOut = optional && usual === undefined && !isNeeded;
  // No reason stands there by an Enter pressed by habit, nor a name where nobody said who works here.
  const unpointed =
    isLeftOut ||
    isNeeded ||
    reasons.length > 0 ||
    isStatement ||
    (row.signed === true && type === 'who' && desk.name === undefined);
  return {
    title: titleOf(row, slot, type, args, desk),
    row: row.id,
    slot,
    type,
    optional: isLeftOut,
    choices,
    typed: stands ?? '',
    ...(stands !== undefined && { standing: true as const }),
    at: unpointed ? -1 : at >= 0 ? at : firstInTurn(choices, turn),
    ...(turn && { turn }),
    ...(unpointed && { unpointed }),
    // What was called of the wrong hole has its number already.
    ...(type === 'hole' && row.id !== 'was' && { most: mostHoles(desk) }),
    ...(choices.length > 0 && choices.every((c) => c.way) && { why: `none can be taken now: ${choices[0]?.way}` }),
  };
}
const placed: ReadonlySet<string> = new Set(['connection', 'temporary']);
/** Where a new one may be named, what is done stands only among what is not: with nothing left of it, a name is asked for. */
const keepsPlaces = (row: Row, type: string, all: readonly Choice[]): boolean =>
  row.places !== undefined && placed.has(type) && (!mayNameNew.has(row.id) || all.some((c) => !c.blocked));
/** What is done has no turn before what is not. */
const turnOf = (inTurn: readonly Choice[]): string[] =>
  [...inTurn.filter((c) => !c.never), ...inTurn.filter((c) => c.never)].map((c) => c.value);
/** How many holes an area has at the most: as planned, drawn or counted, else any number of two figures. */
function mostHoles({ ledger, facing: { area } }: Desk): number {
  const a = area === undefined ? undefined : stateOf(ledger, 'area', area);
  if (!a || (a.counted === undefined && !areHolesKnown(ledger, a.area))) return 99;
  return Math.max(a.counted?.count ?? 0, ...a.holes.map((hole) => Number.parseInt(numberOf(hole), 10) || 0));
}
/** Asked a second time before it is made (X3), whoever signs it. */
export const sureAsking = (row: Row, { who }: Args): Asking => ({
  ...plainAsking(`${row.twice ?? row.label}${typeof who === 'string' ? ` Signed by ${who}.` : ''}`, 'sure'),
  row: row.id,
  type: 'yes|not yet',
  optional: false,
  choices: [
    { value: 'not yet', text: 'not yet' },
    { value: 'yes', text: row.label },
  ],
});
