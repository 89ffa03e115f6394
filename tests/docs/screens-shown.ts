// Which screens the README shows, and the keys of the demo job that lead to them.
import { frame } from '../../src/screen/frame.ts';
import type { ScreenId } from '../../src/view/screens.ts';
import { demoDesk, sceneOf } from '../screen/scene.ts';

export type Picture = {
  name: string;
  screen: ScreenId;
  columns: number;
  rows: number;
  /** Pressed on the strip screen one after the other; none stays there. */
  keys?: string;
  /** The screen it was called from. */
  before?: ScreenId;
  alt: string;
};
const size = { columns: 100, rows: 30 } as const;

export const pictures: readonly Picture[] = [
  {
    name: 'strip',
    screen: 'strip',
    ...size,
    alt: 'The strip screen: the areas with how much of each is off, the cam cover drawn with each of its holes, and the keys at the foot',
  },
  {
    name: 'build',
    screen: 'build',
    ...size,
    keys: 'B',
    alt: 'The build screen: the same cover on its way back, each hole with what is still to be done to it',
  },
  {
    name: 'leaving',
    screen: 'leaving',
    ...size,
    keys: 'L',
    alt: 'Before it leaves: everything that stands between the car and the road, each with the call that closes it',
  },
  {
    name: 'glance',
    screen: 'glance',
    ...size,
    keys: 'BG',
    before: 'build',
    alt: 'The glance screen: how many are out, back and open, and the next hole, in figures that are read across the bay',
  },
];

/** The fastener in use is the last one called that no plan had said. */
const spec = { kind: 'bolt', head: 'hex 13', thread: 'M8', lengthMm: 25, class: '8.8' };
const rowsOf = ({ screen, before = 'strip', columns, rows }: Picture): ReturnType<typeof frame> =>
  frame(sceneOf({ screen, before }, { columns, rows, desk: demoDesk({ spec } as never) }));

/** What is seen on such a screen, right-hand blanks cut; made without a terminal. */
export const paintedRows = (picture: Picture): string[] =>
  rowsOf(picture).map((row) =>
    row
      .map(({ text, look }) => (look?.hidden ? ' '.repeat(text.length) : text))
      .join('')
      .trimEnd(),
  );
/** What a terminal holds of it, hidden signs too. */
export const heldRows = (picture: Picture): string[] =>
  rowsOf(picture).map((row) =>
    row
      .map(({ text }) => text)
      .join('')
      .trimEnd(),
  );
