// What an answer to a question comes to: which choice is meant, what is read out of what is typed, and the call with one
// more slot filled. Pure.
import { withoutNought } from '../calls/days-on.ts';
import type { Desk } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import { matchForm, tokens } from '../calls/form.ts';
import type { Pressing } from '../calls/pressing.ts';
import { readSlot } from '../calls/slots.ts';
import { formOf } from '../calls/table.ts';
import { type Asking, areNumbered, type Choice, isOfADay, offered } from '../view/view.ts';

/** Calls that may name something new; what is known is no answer for them. */
export const mayNameNew: ReadonlySet<string> = new Set([
  'put-in',
  'part-off',
  'parted',
  'holds',
  'connection',
  'face',
  'circuit',
  'service',
  'finding',
]);

export const besidesType = 'this|that';

/** Types that are one of what there is; another name is no answer. */
const closedTypes = new Set([
  'finding',
  'stray',
  'lost',
  'piece',
  'fastener',
  'box',
  'face',
  'drive',
  'plan',
  'planned',
]);

/** What comes off or goes in is named as it does; of what goes back or comes out, only what did is an answer. */
const namedBefore = new Set(['connection', 'part', 'temporary']);

/** Only what stands in the list is an answer; a count by eye makes no tray. */
export const isOfTheseOnly = ({ row, type, choices }: Asking): boolean =>
  choices.length > 0 &&
  (type.includes('|') ||
    closedTypes.has(type) ||
    (row === 'count' && type === 'tray') ||
    (namedBefore.has(type) && !mayNameNew.has(row)));

/** Every call has a number of as many figures: none of them begins another's. */
const isListOfCalls = ({ type }: Asking): boolean => type === callType;
export const callType = 'call|screen';
const numberOf = ({ text }: Choice): string | undefined => /^\d+/.exec(text)?.[0];

/** What Enter answers: what stands typed, unless it picks one of the choices; with nothing typed, the one pointed at. */
export function answerOf(asking: Asking): string {
  const choices = offered(asking);
  const typed = asking.typed.trim();
  const exact = choices.find((c) => c.text.toLowerCase() === typed.toLowerCase() || c.value === typed);
  if (exact) return exact.value;
  // One figure is no day.
  if (isOfADay(asking) && /^[1-9]$/.test(typed)) return choices[Number(typed) - 1]?.value ?? typed;
  if (typed !== '' && !(isOfTheseOnly(asking) && choices.length > 0)) return typed;
  return choices[asking.at]?.value ?? typed;
}

/** Known ones that begin as what is typed for a new one: half a name typed and Enter would begin another place. */
export function begunBy(asking: Asking): readonly string[] {
  const typed = asking.typed.trim().toLowerCase();
  if (typed === '' || (asking.type !== 'area' && !mayNameNew.has(asking.row)) || areNumbered(asking.choices)) return [];
  const known = asking.choices.map(({ text }) => text.toLowerCase());
  return known.includes(typed)
    ? []
    : asking.choices.flatMap(({ text, value }) => (text.toLowerCase().startsWith(typed) ? [value] : []));
}

/** The choice that is meant already by what is typed, since no other begins so; then no Enter is needed. */
export function meantAlready(asking: Asking): string | undefined {
  const { typed } = asking;
  if (isListOfCalls(asking)) return asking.choices.find((one) => numberOf(one) === typed)?.value;
  if (!areNumbered(asking.choices) || !/^\d+$/.test(typed)) return undefined;
  const [only, second] = asking.choices.filter((c) => c.text.startsWith(typed));
  // With nine trays, or twelve holes counted, "1" may be the beginning of another.
  const fresh = Math.max(0, ...asking.choices.map((c) => Number.parseInt(c.text, 10) || 0)) + 1;
  const couldBeNew =
    asking.most === undefined
      ? String(fresh).length > typed.length && String(fresh).startsWith(typed)
      : Number(typed) * 10 <= asking.most;
  return only?.text === typed && !second && !couldBeNew ? only.value : undefined;
}

/** The call with one more slot filled, or why the answer can't be read. */
export function pressingAfter(
  pressing: Pressing,
  asking: Asking,
  text: string,
  desk: Desk,
): Pressing | { why: string } | 'given up' {
  const { slot } = asking;
  if (slot === 'sure') return text === 'yes' ? { ...pressing, args: { ...pressing.args, sure: true } } : 'given up';
  if (asking.type === besidesType) {
    if (text === pressing.bound.row.besides?.(desk, pressing.args)?.givesUp) return 'given up';
    if (!asking.choices.some((one) => one.value === text)) return { why: 'one of these, by its number' };
    return { ...pressing, args: { ...pressing.args, [slot]: text } };
  }
  if (asking.optional && text.trim() === '') return { ...pressing, leftOut: new Set([...pressing.leftOut, slot]) };
  if (asking.type === 'who' && pressing.bound.row.signed && text.trim() === '')
    return { why: `type who signs${asking.choices.length > 0 ? ', or choose by the number' : ''}` };
  // What was chosen is meant as it stands there, words of the form among it or not.
  const more = asking.choices.some((one) => one.value === text) ? undefined : saidWithIt(pressing, slot, text, desk);
  if (more) return { ...pressing, args: { ...pressing.args, ...more } };
  const read = readAnswer(desk, asking.type, text, pressing.args);
  return 'why' in read ? read : { ...pressing, args: { ...pressing.args, [slot]: read.value } };
}
/** An answer may go on as a typed line would: "new cover bolt as bolt hex 10 M6x20". */
function saidWithIt({ bound, args }: Pressing, slot: string, text: string, desk: Desk): Args | undefined {
  const read = readSlot(desk);
  const form = formOf.get(bound.row.id) ?? [];
  const matched = matchForm(form, tokens(text), (type, rest, stops) => read(type, rest, stops, args));
  if ('why' in matched || matched.args[slot] === undefined) return undefined;
  return Object.keys(matched.args).length > 1 ? matched.args : undefined;
}

/** What a keypad can say of a thread and a length, beginning with a 0, which chooses nothing: "06.25" is M6x25. */
const byDigits = /^0(\d{1,2})\.(\d{1,3})$/;
function inWords(type: string, text: string): string {
  if (type === 'spec') return text.replace(byDigits, 'M$1x$2');
  return type === 'day' || type === 'date' ? withoutNought(text) : text;
}

export function readAnswer(desk: Desk, type: string, said: string, args: Args): { value: unknown } | { why: string } {
  const read = readSlot(desk);
  const text = inWords(type, said);
  const matched = matchForm([{ slot: 'value', type }], tokens(text), (of, rest, stops) => read(of, rest, stops, args));
  return 'why' in matched ? matched : { value: matched.args.value };
}
