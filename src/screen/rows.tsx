// Rows of text with a look, each exactly as wide as the screen: the only way anything is painted.
import { Text } from 'ink';
import type { ReactNode } from 'react';
import { cellsOf } from './cells.ts';
import type { Look, Paint } from './colours.ts';

export type Run = { text: string; look?: Look };
export type Row = readonly Run[];

export const plainRow = (text: string, look?: Look): Row => [look ? { text, look } : { text }];

/** Exactly so many rows: cut, or filled with blank ones. */
export const filled = (rows: readonly Row[], many: number, columns: number): Row[] => [
  ...rows.slice(0, many),
  ...Array.from({ length: Math.max(0, many - rows.length) }, () => plainRow(' '.repeat(columns))),
];
/** A row filled with blanks to the edge of the screen. */
export const endRow = (row: Row, columns: number): Row => [
  ...row,
  { text: ' '.repeat(Math.max(0, columns - row.reduce((sum, run) => sum + cellsOf(run.text), 0))) },
];

/** One text per row; neighbouring runs of one look are one piece, since cost goes with the number of changes. */
export function PaintedRow({ row, paint }: { row: Row; paint: Paint }): ReactNode {
  return (
    <Text wrap='truncate'>
      {row.map((run, i) => {
        const look = run.look ? paint(run.look) : {};
        return (
          <Text
            // biome-ignore lint/suspicious/noArrayIndexKey: a run is its place in the row
            key={i}
            color={look.color}
            bold={look.bold}
            dimColor={look.dim}
            inverse={look.inverse}
            strikethrough={look.strike}
          >
            {run.text}
          </Text>
        );
      })}
    </Text>
  );
}
