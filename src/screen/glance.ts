// What is read from across the bay: how many are out, back, open, and which hole is next.
import { nextHole } from '../calls/desk.ts';
import { keyOf, waySaid } from '../calls/key-names.ts';
import { outOf } from '../calls/tally-words.ts';
import { stateOf } from '../job/ledger.ts';
import { openPoints } from '../job/open-points.ts';
import { areaOf, numberOf } from '../job/subjects.ts';
import { toldOnce } from '../job/told-once.ts';
import { plainText } from '../trade/plain-text.ts';
import { firstInShort } from './before-next.ts';
import { fitted } from './cells.ts';
import { type Look, lookOf, nextWordsLook, quietLook } from './colours.ts';
import { canBeDrawn, figureCells, figureHeight, figureRows, inTheMiddle, type Scale, scaleFor } from './figures.ts';
import type { Scene } from './frame.ts';
import { filled, plainRow, type Row } from './rows.tsx';
import { cellsOf } from './width.ts';

/** Words, a row for what belongs to them, and figures of two dots each way; and the least the next hole wants. */
const largeAbove = figureHeight('narrow') + 2 + figureHeight(2);
const smallestBelow = 9;

type Figure = { title: string; figure: string; look: Look };

/** Three sums above, and below them the next hole: its area in large words, where they have room, and its number. */
export function glanceRows(scene: Scene, rows: number): Row[] {
  const { desk, columns, view } = scene;
  const { off, slack, open, touched } = desk.ledger.tallies.all;
  const out = outOf(desk.ledger.tallies.all);
  const next = nextHole(desk, view.before);
  const sums: Figure[] = [
    { title: slack > 0 ? `OUT, and ${slack} slack` : 'OUT', figure: String(out), look: lookOf('open') },
    { title: 'BACK', figure: String(Math.max(0, touched - off - slack)), look: lookOf('done') },
    { title: 'OPEN', figure: String(open), look: lookOf(open === 0 ? 'done' : 'half') },
  ];
  const width = Math.floor(columns / sums.length);
  const large = rows >= largeAbove + smallestBelow;
  const half = large ? Math.max(largeAbove, Math.floor(rows / 2)) : Math.floor(rows / 2);
  // With nothing next the sums have the room to themselves.
  const height = next === undefined ? rows - 2 : half;
  const head = large ? figureHeight('narrow') + 1 : 1;
  const scale = Math.min(...sums.map((one) => scaleFor(one.figure, width - 4, height - head - 1)));
  const drawn = sums.map((one) => sumRows(one, large, scale, width, height));
  const above = Array.from(
    { length: height },
    (_, i): Row => [...drawn.flatMap((one) => one[i] as Row), { text: ' '.repeat(columns - width * sums.length) }],
  );
  return filled(
    [
      ...above,
      ...(next === undefined
        ? restRows(scene, rows - height)
        : nextRows(next, firstInShort(scene, next), columns, rows - height)),
    ],
    rows,
    columns,
  );
}

function sumRows({ title, figure, look }: Figure, large: boolean, scale: Scale, columns: number, rows: number): Row[] {
  const [word] = title.split(',') as [string];
  const head = large ? figureRows(word, 'narrow', columns, quietLook) : [];
  const said = large && word === title ? '' : fitted(title, Math.min(cellsOf(title), columns - 2));
  const small = inTheMiddle([{ text: said, look: { ...quietLook, bold: true } }], cellsOf(said), columns);
  return filled([...head, small, ...figureRows(figure, scale, columns, look)], rows, columns);
}

/** No fastener is next; what else keeps the car here is counted. */
function restRows({ desk, keymap, view, columns }: Scene, rows: number): Row[] {
  const many = toldOnce(desk.ledger, openPoints(desk.ledger, desk.now)).length;
  const waits = `${many} ${many === 1 ? 'point keeps' : 'points keep'} the car here: ${keyOf(keymap, 'glance', 'to-leaving')}`;
  const isReleased = (stateOf(desk.ledger, 'vehicle', 'vehicle')?.releasedAt ?? 0) > 0;
  const leaves = isReleased ? ': the car is released' : `: ${waySaid(keymap, view.before, 'release')} releases the car`;
  const text = fitted(
    many === 0 ? `nothing is next, and nothing is open${leaves}` : `no fastener of it is next; ${waits}`,
    columns - 2,
  ).trimEnd();
  return inThe(rows, [inTheMiddle([{ text }], cellsOf(text), columns)], columns);
}

/** What stands first in a row; the area as large as it fits, in words of a row each where there is height for them, and the number beside it. */
function nextRows(next: string, first: string | undefined, columns: number, rows: number): Row[] {
  const area = plainText(areaOf(next));
  const numeral = numberOf(next);
  const title = fitted(`NEXT ${area} ${numeral}`, Math.min(cellsOf(`NEXT ${area} ${numeral}`), columns - 2));
  const before = first === undefined ? [] : [fitted(first, Math.min(cellsOf(first), columns - 2))];
  const below = rows - 1 - before.length;
  const scale = Math.max(1, scaleFor(numeral, Math.floor(columns / 4), below - 1));
  const numberCells = figureCells(numeral, scale) + 2;
  const room = columns - numberCells;
  const right = inThe(below, figureRows(numeral, scale, numberCells, { bold: true }), numberCells);
  const left = inThe(below, areaLines(area, room - 2, below - 1, room), room);
  return [
    inTheMiddle([{ text: title, look: { bold: true } }], cellsOf(title), columns),
    ...before.map((text) => inTheMiddle([{ text, look: nextWordsLook }], cellsOf(text), columns)),
    ...Array.from({ length: below }, (_, i): Row => [...(left[i] as Row), ...(right[i] as Row)]),
  ];
}
/** A name on one line at the largest scale, else a word a line; none where it has no room at all. */
function areaLines(area: string, room: number, rows: number, columns: number): Row[] {
  if (!canBeDrawn(area)) return [];
  const words = area.split(' ');
  for (const scale of [3, 2, 1, 'narrow'] as const) {
    const gap = scale === 'narrow' ? 1 : scale;
    for (const lines of [[area], words]) {
      const high = lines.length * figureHeight(scale) + (lines.length - 1) * gap;
      if (high > rows || lines.some((line) => figureCells(line, scale) > room)) continue;
      return lines.flatMap((line, i) => [
        ...(i > 0 ? Array.from({ length: gap }, () => plainRow(' '.repeat(columns))) : []),
        ...figureRows(line, scale, columns, { bold: true }),
      ]);
    }
  }
  return [];
}
/** Rows in the middle of a height. */
function inThe(height: number, rows: readonly Row[], columns: number): Row[] {
  const above = Math.max(0, Math.floor((height - rows.length) / 2));
  return filled([...Array.from({ length: above }, () => plainRow(' '.repeat(columns))), ...rows], height, columns);
}
