// What a row of a screen's list is: the same rows are painted, moved through and picked from. How a list is made stands
// in lists/; how it looks is the screen's.
import type { ScreenId } from '../view/screens.ts';
import type { Args } from './form.ts';

/** How a row looks: open wants something, half is on its way (of a fastener: slack, on by hand, snug), empty has nothing to go back, gated waits for another, done is closed, struck is struck, stays is as found and only to be slackened, plain is neither. */
export type Mark =
  | 'open'
  | 'half'
  | 'slack'
  | 'on'
  | 'snug'
  | 'empty'
  | 'gated'
  | 'done'
  | 'found'
  | 'stays'
  | 'struck'
  | 'plain';
export type Listed = {
  /** Stable while the thing is on the list. */
  key: string;
  mark: Mark;
  /** Left column, then the words, then what is said at the end. */
  name: string;
  text: string;
  end?: string;
  /** Said instead where the row is too narrow for all of it: what tells least is left out. */
  brief?: { text?: string; end?: string };
  /** More about it, said while the row is picked; made then, where it costs. */
  more?: string | (() => string);
  /** Slot or slot type → value that this row fills in a call. */
  picks: Args;
  /** The place this row leads to. */
  leads?: string;
  /** What it stands together with in its list: an area, a heading. */
  group?: string;
  /** On this screen, where it is not the usual one for the place. */
  leadsOn?: ScreenId;
  /** The call of its own list by which it goes on, though the row leads away from that. */
  goesOnBy?: string;
};

/** As much of a list as is looked at is made: a log has 20,000 rows. An array is one. */
export type Rows = {
  readonly length: number;
  at(i: number): Listed | undefined;
  slice(from: number, to: number): Listed[];
  /** The group of a row, where it is known without the row being made. */
  groupAt?(i: number): string | undefined;
};
const groupAt = (rows: Rows, i: number): string | undefined => (rows.groupAt ? rows.groupAt(i) : rows.at(i)?.group);

/** From a row to the first of the next group, or back to the first of its own and then of the one before. */
export function acrossGroups(rows: Rows, from: number, by: 1 | -1): number {
  const isFirst = (i: number) => i === 0 || groupAt(rows, i) !== groupAt(rows, i - 1);
  for (let i = from + by; i >= 0 && i < rows.length; i += by) if (isFirst(i)) return i;
  return from;
}

/** The row under the cursor; the last one, where the list has grown shorter than where the cursor stood. */
export const pickedAt = (rows: Rows, cursor = 0): Listed | undefined => rows.at(Math.min(cursor, rows.length - 1));

/** Rows made when they are looked at. */
export function rowsMadeBy(length: number, make: (i: number) => Listed, groupAt?: Rows['groupAt']): Rows {
  const at = (i: number) => (i >= 0 && i < length ? make(i) : undefined);
  return {
    length,
    at,
    ...(groupAt && { groupAt }),
    slice: (from, to) =>
      Array.from({ length: Math.max(0, Math.min(to, length) - Math.max(0, from)) }, (_, i) =>
        make(Math.max(0, from) + i),
      ),
  };
}
