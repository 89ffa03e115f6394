// What is to be minded when a call turns out to have been of another hole: what came out was taken for what the plan has
// where it was called, and the plan has something else where it really was.
import type { EntryOf } from './entry.ts';
import { type Ledger, stateOf } from './ledger.ts';
import { contradictions, specText } from './spec.ts';
import { type Hole, subjectText } from './subjects.ts';

export const takenForAnother = (ledger: Ledger, { one, other }: EntryOf<'holes-exchanged'>): string[] =>
  [calledAs(ledger, one, other), calledAs(ledger, other, one)].flatMap((told) => told ?? []);

function calledAs(ledger: Ledger, called: Hole, really: Hole): string | undefined {
  const of = stateOf(ledger, 'hole', called);
  const { spec } = (of?.called.first !== undefined && stateOf(ledger, 'fastener', of.called.first)) || {};
  const there = stateOf(ledger, 'hole', really)?.declared?.wants;
  const wasPlanned = of?.declared?.wants !== undefined && spec && contradictions(of.declared.wants, spec).length === 0;
  if (!wasPlanned || !there || contradictions(there, spec).length === 0) return undefined;
  const hole = subjectText(`hole:${really}`);
  return `the plan has ${specText(spec)} at ${subjectText(`hole:${called}`)}, ${specText(there)} at ${hole}: if it is that one, correct ${hole} is ${specText(there)} because called at the wrong hole`;
}
