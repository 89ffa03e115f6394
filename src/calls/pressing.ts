// What a key press comes to before anything is said to the job: the slots that its binding, the row picked on the screen
// and the desk fill, which are still to be asked for, and why the call is refused already. Nothing is asked here.
import { blocked } from '../job/decide.ts';
import type { Bound } from './bindings.ts';
import type { Desk } from './desk.ts';
import { type Args, type Slot, slotsOf } from './form.ts';
import { filledFor, meantBy, type Row } from './row.ts';
import { formOf } from './table.ts';

/** `leftOut`: slots left out on purpose while they were asked for. `which`: it is to ask, whatever it takes by itself. */
export type Pressing = { bound: Bound; args: Args; leftOut: ReadonlySet<string>; which?: boolean };

/** What the picked row of a list fills in a call: by the name of the slot, else by its type. */
function pickedFor(row: Row, picks: Args): Args {
  const slots = slotsOf(formOf.get(row.id) ?? []);
  return Object.fromEntries(
    slots.flatMap(({ slot, type }) => {
      const value = picks[slot] ?? picks[type];
      return value === undefined ? [] : [[slot, value]];
    }),
  );
}

export function pressing(bound: Bound, picks: Args): Pressing {
  const { row, binding } = bound;
  const merge = binding.args && row.id === 'use' ? { merge: true } : {};
  return {
    bound,
    args: { ...(binding.fresh ? {} : pickedFor(row, picks)), ...binding.args, ...merge },
    leftOut: new Set(),
  };
}

/** The slots to be asked for, in the order of the form, as things stand after what was answered. */
export function unanswered({ bound, args, leftOut, which = false }: Pressing, desk: Desk): Slot[] {
  const { row, binding } = bound;
  const filled = row.fills?.(desk, args) ?? {};
  const { asks: asked = [] } = binding;
  const asks = typeof asked === 'function' ? asked(desk, { ...filled, ...args }, which) : asked;
  return slotsOf(formOf.get(row.id) ?? []).filter(({ slot, optional }) => {
    if (args[slot] !== undefined || leftOut.has(slot)) return false;
    return asks.includes(slot) || (!optional && filled[slot] === undefined);
  });
}

/** Why a call is refused before its key is pressed, as far as that is known; null when it is not. */
export function whyNot(bound: Bound, desk: Desk, picks: Args): { because: string; instead: string } | null {
  const { row } = bound;
  const press = pressing(bound, picks);
  const needed = slotsOf(formOf.get(row.id) ?? []).filter((one) => !one.optional);
  const known = filledFor(row, desk, press.args);
  const wholly = needed.every(({ slot }) => known[slot] !== undefined);
  // What a row of its own meaning comes to can't be known from half of it.
  if (row.means && !wholly) return null;
  const meant = meantBy(row, desk, press.args, known);
  if ('no' in meant) return meant.no;
  if (!('say' in meant)) return null;
  const stop = blocked(desk.ledger, meant.say, desk.now);
  return stop && { because: stop.because, instead: stop.instead };
}
