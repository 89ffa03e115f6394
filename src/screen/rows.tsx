// Rows of text with a look, each exactly as wide as the screen: the only way anything is painted.
import { Transform } from 'ink';
import { memo, type ReactNode } from 'react';
import { type Colour, type Look, type Paint, palette } from './colours.ts';
import { cellsOf } from './width.ts';

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

function colourSgr(color: Colour): string {
  const { ink, ground }: { ink: number; ground?: number } = palette[color];
  return `38;5;${ink}${ground === undefined ? '' : `;48;5;${ground}`}`;
}
/**
 * SGR parameters of a look. Source: ECMA-48, 5th edition 1991, 8.3.117 (bold, faint, reverse, concealed, crossed out);
 * the 256 colours after 38;5 and 48;5 as xterm's control sequences have them.
 */
function sgrOf(look: Look | undefined, paint: Paint): string {
  const { color, bold, dim, inverse, hidden, strike } = look ? paint(look) : {};
  return [bold && 1, dim && 2, inverse && 7, hidden && 8, strike && 9, color !== undefined && colourSgr(color)]
    .filter(Boolean)
    .join(';');
}
/**
 * A row as one string: a text for every run of a map costs ten times as much as one for the row. Blanks at its end are
 * left out, since the screen is blank there anyway and each cell costs; a band of reversed ones stays.
 */
export function paintedText(row: Row, paint: Paint): string {
  const kept = [...row];
  while (kept.length > 0) {
    const last = kept.at(-1) as Run;
    if (last.look && paint(last.look).inverse) break;
    const text = last.text.trimEnd();
    kept.pop();
    if (text !== '') {
      kept.push({ ...last, text });
      break;
    }
  }
  let painted = '';
  let on = '';
  for (const { text, look } of kept) {
    const sgr = sgrOf(look, paint);
    // Blanks look alike in every look but a reversed one: no need to change for them.
    if (sgr !== on && (text.trim() !== '' || isReversed(sgr) || isReversed(on))) {
      if (on !== '') painted += '\u001b[0m';
      if (sgr !== '') painted += `\u001b[${sgr}m`;
      on = sgr;
    }
    painted += text;
  }
  return on === '' ? painted : `${painted}\u001b[0m`;
}
const isReversed = (sgr: string): boolean => /(^|;)(7|9|48)(;|$)/.test(sgr);

/**
 * One row of the screen, laid out as a single cell and put in its place when the frame is written: laid out at its own
 * width it would be measured anew for every frame, which costs more than all the rest. It is never wider than the screen.
 */
export const PaintedRow = memo(
  ({ painted }: { painted: string }): ReactNode => <Transform transform={() => painted}> </Transform>,
);
