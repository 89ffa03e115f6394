// What a call that was taken says: what it wrote, what to mind of it, and where work goes on.
import { companionWords, exchangedWords, lineWords, turnedWords, whichWords } from '../calls/call-words.ts';
import { facedWords } from '../calls/next-area.ts';
import type { Row } from '../calls/row.ts';
import { tradedWords } from '../calls/taken-next.ts';
import type { Ledger } from '../job/ledger.ts';
import type { Line } from '../job/line.ts';
import { plainText } from '../trade/plain-text.ts';
import type { Units } from '../trade/units-shown.ts';
import type { Facing } from '../view/facing.ts';

type Taken = {
  before: Ledger;
  after: Ledger;
  line: Line;
  mind: readonly string[];
  /** What was faced when it was called, and what is faced next. */
  facing: Facing;
  next: Partial<Facing>;
  row?: Row;
  units?: Units;
};

export function takenWords({ before, after, line, mind, facing, next, row, units }: Taken): string {
  const said = [
    [
      lineWords(before, line.entries, units),
      ...[turnedWords, companionWords, whichWords].map((of) => of(after, line.entries)),
    ].join(''),
    ...exchangedWords(after, line.entries),
    ...tradedWords(before, line.entries),
  ].join('. ');
  const words = [said, ...mind].join('. Mind: ');
  if (next.area === undefined || next.area === facing.area) return plainText(words);
  // What comes off there would lie among what came off here.
  const into = row?.group === 'strip' && next.tray === undefined ? `, still into tray ${facing.tray}` : '';
  return plainText(`${words}. On to ${facedWords({ ...next, area: next.area })}${into}`);
}
