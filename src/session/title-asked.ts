// What a question is asked by: the call, what it is about, and what is wanted of it.
import type { Desk } from '../calls/desk.ts';
import type { Args } from '../calls/form.ts';
import { measureAsked } from '../calls/measures.ts';
import type { Row } from '../calls/row.ts';
import { stateOf } from '../job/ledger.ts';
import { subjectText } from '../job/subjects.ts';

const titles: Record<string, string> = {
  why: 'why',
  who: 'who says so',
  words: 'in words',
  mm: 'millimetres',
  count: 'how many',
  number: 'how much',
  spec: 'which fastener, as "bolt hex 10 M6x25 8.8"',
  subject: 'where (leave out: here)',
  fastener: 'which one',
};

/** "(cam cover 7: thread stripped)": what it is that is answered for. */
function foundAt({ ledger }: Desk, finding: unknown): string | undefined {
  const f = typeof finding === 'string' ? stateOf(ledger, 'finding', finding) : undefined;
  return f && `(${subjectText(f.at)}: ${f.what})`;
}
export function titleOf(row: Row, slot: string, type: string, args: Args, desk: Desk): string {
  const { units } = desk;
  const said = row.questions?.[slot];
  const asked =
    (typeof said === 'function' ? said(args, desk) : said) ?? measureAsked(units, type) ?? titles[type] ?? slot;
  const about = args.tray ?? args.circuit ?? args.service ?? foundAt(desk, args.finding);
  const label = typeof about === 'string' ? `${row.label} ${about}` : row.label;
  return asked === row.label ? asked : `${label}: ${asked}`;
}
