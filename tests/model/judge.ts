// The second ledger, asked: what is open, may the car leave, has it left. Deliberately naive: everything from all lines
// each time, written from the rule book and its readings alone. Held against the program's ledger it finds rules that
// both could not have got wrong together.
import { openPointsOf } from './open.ts';
import type { PlainLine, PlainStamp } from './plain.ts';
import { struckLines } from './striking.ts';

export type Judged = { open: string[]; mayLeave: boolean; released: boolean };

/** X2: a release that was not allowed where it was called is none. */
function releaseWasAllowed(lines: PlainLine[], line: PlainLine, patience: number): boolean {
  const before = lines.filter((other) => other.n < line.n);
  return !hasLeft(before, patience) && openPointsOf(before, line, patience).length === 0;
}

function hasLeft(lines: PlainLine[], patience: number): boolean {
  const struck = struckLines(lines);
  let left = false;
  for (const line of lines) {
    if (struck.has(line.n)) continue;
    for (const entry of line.entries) {
      if (entry.kind === 'released' && releaseWasAllowed(lines, line, patience)) left = true;
      if (entry.kind === 'reopened') left = false;
    }
  }
  return left;
}

/** @param patience how many times the label's hours a cure that hangs on vapour must have earned; 1 but to find an edge */
export function judge(lines: readonly unknown[], now: PlainStamp, patience = 1): Judged {
  const plain = lines as PlainLine[];
  const open = openPointsOf(plain, now, patience);
  return { open, mayLeave: open.length === 0, released: hasLeft(plain, patience) };
}
