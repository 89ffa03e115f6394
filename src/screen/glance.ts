// What is read from across the bay: how many are out, back, open, and which hole is next.
import { nextHole } from '../calls/desk.ts';
import { numberOf, subjectText } from '../job/subjects.ts';
import { plainText } from '../trade/plain-text.ts';
import { cellsOf, fitted } from './cells.ts';
import { type Look, lookOf, quietLook } from './colours.ts';
import { figureRows, inTheMiddle, scaleFor } from './figures.ts';
import type { Scene } from './frame.ts';
import { filled, plainRow, type Row } from './rows.tsx';

type Figure = { title: string; figure: string; look: Look };

export function glanceRows(scene: Scene, rows: number): Row[] {
  const { desk, columns, view } = scene;
  const { off, slack, open, touched } = desk.ledger.tallies.all;
  const next = nextHole(desk, view.before);
  const quarters: Figure[] = [
    { title: slack > 0 ? `OUT, and ${slack} slack` : 'OUT', figure: String(off), look: lookOf('open') },
    { title: 'BACK', figure: String(Math.max(0, touched - off - slack)), look: lookOf('done') },
    { title: 'OPEN', figure: String(open), look: lookOf(open === 0 ? 'done' : 'half') },
    {
      title: next === undefined ? 'NEXT' : `NEXT ${plainText(subjectText(`hole:${next}`))}`,
      figure: next === undefined ? '-' : numberOf(next),
      look: {},
    },
  ];
  const width = Math.floor(columns / 2);
  const height = Math.floor(rows / 2);
  const scale = Math.min(...quarters.map((q) => scaleFor(q.figure, width - 4, height - 2)));
  const drawn = quarters.map((q) => quarterRows(q, scale, width, height));
  const both = (left: Row[], right: Row[]): Row[] =>
    left.map((row, i) => [...row, ...(right[i] as Row), { text: ' '.repeat(columns - 2 * width) }]);
  const [a, b, c, d] = drawn as [Row[], Row[], Row[], Row[]];
  return filled([...both(a, b), ...both(c, d)], rows, columns);
}

function quarterRows({ title, figure, look }: Figure, scale: number, columns: number, rows: number): Row[] {
  const said = fitted(title, Math.min(cellsOf(title), columns - 2));
  const head = inTheMiddle([{ text: said, look: { ...quietLook, bold: true } }], cellsOf(said), columns);
  return filled([head, ...figureRows(figure, scale, columns, look), plainRow(' '.repeat(columns))], rows, columns);
}
