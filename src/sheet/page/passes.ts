// How the holes of an area were brought up, as columns: one a pass, what all holes of it share said once in its head.
// Where too many passes were called for columns, each hole tells its own in lines.
import type { HoleFact, PassFact } from '../area-facts.ts';
import type { Copy } from '../area-text.ts';
import { isMarked } from '../points.ts';
import type { Moment } from '../reading.ts';
import { by, clockText, dateOf, figureNotNoted, notTheFigure } from '../words.ts';
import { flowing, html, joined, type Markup } from './markup.ts';

export type Columns = { heads: (Markup | string)[]; cellsOf: (hole: HoleFact) => (Markup | string)[] };

/** With more they are too narrow on a phone. */
const mostColumns = 4;
const secondLook = 'second look';

/** One call of a pass on one hole, in the pieces that may be common to all. */
type Told = { hole: HoleFact; pass: string; mark: string; read: string; time: string } & Record<Piece, string>;
const pieces = ['method', 'tool', 'who', 'date'] as const;
type Piece = (typeof pieces)[number];

export function passColumns(holes: readonly HoleFact[], copy: Copy): Columns {
  const told = holes.flatMap((hole) => toldOf(hole, copy));
  const passes = [...new Set(told.toSorted((a, b) => a.n - b.n).map((t) => t.pass))];
  const names = [...passes.filter((name) => name !== secondLook), ...passes.filter((name) => name === secondLook)];
  if (names.length > mostColumns || names.length === 0) {
    const lineOf = (t: Told): Markup =>
      html`${flowing(t.pass)}${t.mark}: ${flowing(phrase(pieces.filter((one) => one !== 'date').map((one) => t[one])))} <small>${t.date} ${t.time}${t.read}</small>`;
    return { heads: ['brought up'], cellsOf: (hole) => [cell(told.filter((t) => t.hole === hole).map(lineOf))] };
  }
  const columns = names.map((name) => {
    const all = told.filter((t) => t.pass === name);
    const common = pieces.filter((one) => all.every((t) => t[one] === all[0]?.[one]));
    const own = pieces.filter((one) => !common.includes(one));
    const shared = phrase(common.map((one) => all[0]?.[one] ?? ''));
    return {
      head: html`${flowing(name)}${shared ? html`<small>${flowing(shared)}</small>` : undefined}`,
      cellOf: (hole: HoleFact) => cell(all.filter((t) => t.hole === hole).map((t) => ownText(t, own))),
    };
  });
  return { heads: columns.map((c) => c.head), cellsOf: (hole) => columns.map((c) => c.cellOf(hole)) };
}

function ownText(t: Told, own: readonly Piece[]): string {
  const when = `${own.includes('date') ? `${t.date} ` : ''}${t.time}${t.mark}${t.read}`;
  return phrase([when, ...own.filter((one) => one !== 'date').map((one) => t[one])]);
}

function toldOf(hole: HoleFact, copy: Copy): (Told & { n: number })[] {
  const passes = hole.passes.map((p: PassFact) => ({
    ...whenOf(p),
    hole,
    pass: `${p.pass}${p.last && p.pass !== 'final' ? ' (last)' : ''}`,
    method: p.noFigure ? `${p.how}; ${figureNotNoted}` : p.how,
    tool: p.tool ?? '',
    mark: isMarked(p, hole, copy) ? '*' : '',
    read: p.readWords === undefined ? '' : `, read ${p.readWords}${p.notTheFigure ? notTheFigure : ''}`,
  }));
  const look = hole.looked
    ? [{ ...whenOf(hole.looked), hole, pass: secondLook, method: '', tool: '', mark: '', read: '' }]
    : [];
  return [...passes, ...look];
}
const whenOf = (at: Moment) => ({
  n: at.n,
  who: by(at.who).trim(),
  date: dateOf(at),
  time: clockText(at),
});

const phrase = (parts: readonly string[]): string => parts.filter((one) => one !== '').join(', ');
const cell = (lines: readonly (Markup | string)[]): Markup | string =>
  lines.length > 0 ? joined(lines.map(flowing), html`<br>`) : '-';
