// The lists from which a call takes one of what there is: in an order that stands whatever was called of it, so that a figure
// remembered from the list before means the same. What is done stays in its place; what is next is pointed at, by its turn.
// Parts are listed in turn instead: which of them is free, due or waits, their order alone says.
import { stateOf } from '../job/ledger.ts';
import type { Desk } from './desk.ts';

type Places = (desk: Desk, known: readonly string[]) => readonly string[];

const firstThose = (known: readonly string[], are: (name: string) => boolean): string[] => [
  ...known.filter(are),
  ...known.filter((name) => !are(name)),
];

/** As they are known: of the area in use first. */
export const asKnown: Places = (_desk, known) => known;

/** Those that were parted on this job, joined again or not. */
export const everPartedFirst: Places = ({ ledger }, known) =>
  firstThose(known, (name) => (stateOf(ledger, 'connection', name)?.partedAt ?? 0) > 0);

/** Those that went in on this job, taken out again or not. */
export const everInFirst: Places = ({ ledger }, known) =>
  firstThose(known, (name) => (stateOf(ledger, 'temporary', name)?.putInAt ?? 0) > 0);
