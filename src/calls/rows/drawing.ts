// How an area is drawn on the spot: its outline and where its holes sit.

import { isTouched } from '../../job/closed.ts';
import type { Entry } from '../../job/entry.ts';
import { stateOf } from '../../job/ledger.ts';
import { holeIn, holesSaid, numberOf } from '../../job/subjects.ts';
import { coverOf, type Layout, lineOf, ringOf } from '../../trade/layout.ts';
import { declare, noArea } from '../declaring.ts';
import type { Desk } from '../desk.ts';
import type { Args } from '../form.ts';
import { type Besides, key, type Meant, type Otherwise, type Row } from '../row.ts';

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

/** How many holes the eye counted in the area in use. */
const countedIn = ({ ledger, facing: { area } }: Desk): number | undefined =>
  area === undefined ? undefined : stateOf(ledger, 'area', area)?.counted?.count;

/** Holes that were called keep their numbers and take the places that the drawing has for them. */
function askedOnDrawing(desk: Desk, args: Args): Besides | undefined {
  const {
    ledger,
    facing: { area },
  } = desk;
  const { shape, count, rows = 1, middle = 0, late } = args as Record<string, number | string | undefined>;
  const known = area === undefined ? [] : (stateOf(ledger, 'area', area)?.holes ?? []);
  const wasCalled = (hole: string): boolean => {
    const h = stateOf(ledger, 'hole', hole);
    return h !== undefined && isTouched(h);
  };
  const called = new Set(known.filter(wasCalled).map(numberOf));
  if (called.size === 0 || count === undefined || late !== undefined) return undefined;
  const many = Number(count) * Number(rows) + Number(middle);
  // As many as were counted: each of those called is one of them.
  if (many === countedIn(desk)) return undefined;
  const numbers = [...called].sort((a, b) => Number(a) - Number(b)).join(', ');
  const [holes, are] = called.size === 1 ? ['hole', 'is'] : ['holes', 'are'];
  return {
    key: 'late',
    title: `a ${shape} of ${holesSaid(many)}: ${holes} ${numbers} ${are} called already, and ${are} drawn as ${holes} ${numbers} of it`,
    // What is drawn is struck by one key; what was answered before this would have to be answered again.
    choices: [
      { value: 'all the same', text: 'draw it so' },
      { value: 'no', text: 'leave it as it is, without a drawing' },
    ],
    givesUp: 'no',
    inWords: 'say it with "all the same" at its end',
  };
}

/** K4: what was drawn was drawn before it was looked at; the eye counts by itself. */
function stillToCount({ ledger, facing: { area } }: Desk): Otherwise | undefined {
  const a = area === undefined ? undefined : stateOf(ledger, 'area', area);
  return a && !a.declared?.planned && !a.counted
    ? { words: 'A drawing is no count: how many the eye counts', by: 'holes' }
    : undefined;
}

export const drawingRows: readonly Row[] = [
  {
    id: 'drawn',
    words: ['drawn as', 'looks like'],
    form: '<shape:ring|cover|line> of <count:count> [by <rows:count>] [and <middle:count>] [<late:all the same>]',
    label: 'draw the area',
    help: 'How the area in use looks: a ring, a cover of so many by so many and some along its middle, a line. Its holes are numbered so.',
    group: 'on the spot',
    keys: [key('D', ['strip', 'build'], { asks: (_desk, { shape }) => (shape === 'cover' ? ['rows', 'middle'] : []) })],
    questions: {
      count: ({ shape }) => (shape === 'cover' ? 'how many holes in a row' : 'how many holes'),
      rows: 'in how many rows (leave out: one)',
      middle: ({ count, rows = 1 }) =>
        `${count} by ${rows} are ${Number(count) * Number(rows)}; how many more along the middle (leave out: none)`,
    },
    stands: (desk, slot, { shape }) => {
      const counted = slot === 'count' && shape !== 'cover' ? countedIn(desk) : undefined;
      return counted === undefined ? undefined : String(counted);
    },
    besides: askedOnDrawing,
    means: drawnMeant,
    otherwise: (_entries, _said, desk) => stillToCount(desk),
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
