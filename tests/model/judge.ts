// The second ledger, asked: what is open, may the car leave, has it left. Deliberately naive: everything from all lines
// each time, written from the rule book and its readings alone. Held against the program's ledger it finds rules that
// both could not have got wrong together.
import { openPointsOf } from './open.ts';
import type { PlainLine, PlainStamp } from './plain.ts';
import { struckLines } from './striking.ts';

export type Judged = { open: string[]; mayLeave: boolean; released: boolean };

/** X2: a release that was not allowed where it was called is none. */
function releaseWasAllowed(lines: PlainLine[], line: PlainLine): boolean {
  const before = lines.filter((other) => other.n < line.n);
  return !hasLeft(before) && openPointsOf(before, line).length === 0;
}

function hasLeft(lines: PlainLine[]): boolean {
  const struck = struckLines(lines);
  let left = false;
  for (const line of lines) {
    if (struck.has(line.n)) continue;
    for (const entry of line.entries) {
      if (entry.kind === 'released' && releaseWasAllowed(lines, line)) left = true;
      if (entry.kind === 'reopened') left = false;
    }
  }
  return left;
}

export function judge(lines: readonly unknown[], now: PlainStamp): Judged {
  const plain = lines as PlainLine[];
  const open = openPointsOf(plain, now);
  return { open, mayLeave: open.length === 0, released: hasLeft(plain) };
}
