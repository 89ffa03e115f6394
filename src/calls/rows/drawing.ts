// How an area is drawn on the spot: its outline and where its holes sit.
import type { Entry } from '../../job/entry.ts';
import { holeIn } from '../../job/subjects.ts';
import { coverOf, type Layout, lineOf, ringOf } from '../../trade/layout.ts';
import { declare, noArea } from '../declaring.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { key, type Meant, type Row } from '../row.ts';

/** Outline and places as they are said on the spot: "ring of 8", "cover of 4 by 2 and 2". */
function layoutOf({ shape, count, rows = 1, middle = 0 }: Args): Layout {
  const of = count as number;
  if (shape === 'ring') return ringOf(of);
  return shape === 'line' ? lineOf(of) : coverOf(of, rows as number, middle as number);
}
const mostDrawn = 500;
function drawnMeant(desk: Desk, args: Args): Meant {
  const { area } = desk.facing;
  if (area === undefined) return noArea;
  const { count, rows = 1, middle = 0 } = args as Record<string, number>;
  const many = (count ?? 0) * rows + middle;
  if (many < 1 || many > mostDrawn)
    return { no: { because: `an area of ${many} holes is not drawn`, instead: `say from 1 to ${mostDrawn}` } };
  const { outline, holes } = layoutOf(args);
  return declare(
    { kind: 'area-declared', area, outline: outline.map(([x, y]): [number, number] => [x, y]) },
    ...holes.map(([x, y], i): Entry => ({ kind: 'hole-declared', hole: holeIn(area, String(i + 1)), at: [x, y] })),
  );
}

export const drawingRows: readonly Row[] = [
  {
    id: 'drawn',
    words: ['drawn as', 'looks like'],
    form: '<shape:ring|cover|line> of <count:count> [by <rows:count>] [and <middle:count>]',
    label: 'draw the area',
    help: 'How the area in use looks: a ring, a cover of so many by so many and some along its middle, a line. Its holes are numbered so.',
    group: 'on the spot',
    keys: [key('D', ['strip', 'build'], { asks: (_desk, { shape }) => (shape === 'cover' ? ['rows', 'middle'] : []) })],
    questions: {
      count: 'how many (of a cover: in a row)',
      rows: 'rows',
      middle: 'and along the middle (leave out: none)',
    },
    means: drawnMeant,
  },
  {
    id: 'placed',
    words: ['placed', 'sits at'],
    form: '<hole> at <x:number> <y:number>',
    label: 'placed',
    help: 'Where a hole sits on the map of its area, right and down; on the screen it is moved by the arrow keys.',
    group: 'on the spot',
    keys: [],
    means: (_desk, { hole, x, y }) =>
      declare({ kind: 'hole-declared', hole: hole as string, at: [x as number, y as number] }),
  },
];
