// What nobody need be asked about: the next of its kind, and what only one thing can answer. Pure, from the desk as it stands.
import { choicesFor, isHere } from '../calls/choices.ts';
import type { Desk } from '../calls/desk.ts';
import { nextOfKind } from '../calls/next-of-kind.ts';
import { type Pressing, unanswered } from '../calls/pressing.ts';
import { meantBy } from '../calls/row.ts';
import { areasOfPart } from '../calls/where-parts-are.ts';
import { stateOf } from '../job/ledger.ts';
import { isOfTheCar, openBeforeIt } from '../job/of-the-car.ts';
import { mayNameNew, readAnswer } from './answering.ts';
import { choiceOf } from './choice-asked.ts';

/** Slots of which a call that is about one of what there is needs no answer, where only one comes into question. */
const soleTypes = new Set([
  'connection',
  'temporary',
  'circuit',
  'face',
  'part',
  'service',
  'box',
  'finding',
  'stray',
  'lost',
  'plan',
  'planned',
]);
/** The call with every slot filled that nobody need be asked about: by the next of its kind, by the only one there is. */
export function withNextOfKind(pressing: Pressing, desk: Desk): Pressing {
  const next = nextOfKind(pressing.bound.row, desk, pressing.args);
  return withSoleChoices({ ...pressing, args: { ...pressing.args, ...next } }, desk);
}
/** It belongs to areas, none of them the one in use: though it is the only one left, it may not be the one meant. */
function isOfAnother({ ledger, facing }: Desk, type: string, name: string): boolean {
  const areas = type === 'part' ? areasOfPart(ledger, name) : [];
  const c = type === 'connection' ? stateOf(ledger, 'connection', name) : undefined;
  const joint = c?.declared?.area;
  // What belongs to the whole car, as the battery's earth does, goes on last; of one named as it was parted nobody said so.
  if (c?.parted && joint === undefined) return isOfTheCar(c) && openBeforeIt(ledger).length > 0;
  const of = joint === undefined ? areas : [joint];
  return of.length > 0 && facing.area !== undefined && !of.includes(facing.area);
}
/** Nobody is sure that it is meant: it is no choice that is made unasked. */
function isAskedOnce({ bound: { row }, args }: Pressing, slot: string, value: string, desk: Desk): boolean {
  const meant = row.asksOnce && meantBy(row, desk, { ...args, [slot]: value });
  return meant !== undefined && 'say' in meant && row.asksOnce?.(desk, meant.say) !== undefined;
}
/** The only one of the area in use, else the only one of none. */
function withSoleChoices(pressing: Pressing, desk: Desk): Pressing {
  const { row, binding } = pressing.bound;
  const isPlanned = stateOf(desk.ledger, 'area', desk.facing.area ?? '')?.declared?.planned === true;
  const [slot] = unanswered(pressing, desk);
  if (!slot || slot.optional || !soleTypes.has(slot.type)) return pressing;
  // The next of its kind is the only one already; one that was passed over there still carries something.
  if (row.id === 'taken-out') return pressing;
  // Of the old parts it is the one in the row, or one that is named: a verdict says where it goes.
  if (row.id === 'judge') return pressing;
  // Of what is new nothing is known yet; a plan and its services are.
  if (binding.fresh && slot.type !== 'plan' && slot.type !== 'planned') return pressing;
  if (mayNameNew.has(row.id) && (!isPlanned || row.id === 'put-in' || row.id === 'finding')) return pressing;
  const open = choicesFor(desk, slot.type, pressing.args)
    .map((value) => choiceOf(row, slot.slot, slot.type, value, pressing.args, desk))
    .filter((choice) => !choice.blocked && !isAskedOnce(pressing, slot.slot, choice.value, desk));
  const here = open.filter((choice) => isHere(desk, slot.type, choice.value));
  const [sole, second] = here.length > 0 ? here : open;
  if (!sole || second || (here.length === 0 && isOfAnother(desk, slot.type, sole.value))) return pressing;
  const read = readAnswer(desk, slot.type, sole.value, pressing.args);
  if ('why' in read) return pressing;
  return withSoleChoices({ ...pressing, args: { ...pressing.args, [slot.slot]: read.value } }, desk);
}
