// The rows of a table that one finding and one hole make.
import type { HoleFact } from './area-facts.ts';
import { type Copy, measuredText, stepText } from './area-text.ts';
import type { FindingFact } from './finding-facts.ts';
import { isMarked } from './points.ts';
import type { Moment } from './reading.ts';
import { figure, figureNotNoted, methodText, notTheFigure } from './words.ts';

export type Row = {
  place?: string;
  what?: string;
  value?: string | number;
  because?: string;
  at?: Moment;
  who?: string;
};

export function findingRows({ place, critical, what, when, made, told, closed }: FindingFact): Row[] {
  const at = `${place}${critical ? ' (critical)' : ''}`;
  return [
    { place: at, what: `found ${when}`, value: what, at: made },
    ...told.map((one) => ({
      place: at,
      what: `owner told${one.how ? ` ${one.how}` : ''}`,
      value: one.said ? `the owner was told, and said: ${one.said}` : 'the owner was told',
      at: one,
    })),
    closed
      ? { place: at, what: closed.how, value: what, because: closed.because ?? '', at: closed, who: closed.by ?? '' }
      : { place: at, what: 'OPEN', value: what },
  ];
}

export function holeRows(place: string, h: HoleFact, copy: Copy): Row[] {
  const row = (what: string, value: string, more: Row = {}): Row => ({ place, what, value, ...more });
  return [
    row(h.open === undefined ? 'closed' : 'OPEN', h.holds ?? '', h.open === undefined ? {} : { because: h.open }),
    ...h.passes.map((p) =>
      row(
        `${p.pass}${p.last ? ', last' : ''}${isMarked(p, h, copy) ? ', out of order' : ''}`,
        [
          p.method ? methodText(p.method) : p.how,
          ...(p.noFigure ? [figureNotNoted] : []),
          ...(p.readNewtonMetres === undefined
            ? []
            : [`read ${figure(p.readNewtonMetres)} Nm${p.notTheFigure ? notTheFigure : ''}`]),
          ...(p.tool ? [`tool: ${p.tool}`] : []),
        ].join('; '),
        { at: p },
      ),
    ),
    ...(h.came ? [row(h.came.how, h.came.from)] : []),
    ...(h.newPattern ? [row('new pattern', h.newPattern.join(', '))] : []),
    ...(h.substitute ? [row('substitute', `wanted: ${h.substitute.wanted}`, { because: h.substitute.because })] : []),
    ...(h.leftEmpty ? [row('left empty', '', { because: h.leftEmpty.because, who: h.leftEmpty.who })] : []),
    ...(h.measured ? [row('measured', measuredText(h.measured))] : []),
    ...h.repair.map((r) => row('thread repair', stepText(r), { at: r })),
    ...(h.chased ? [row('thread chased', '', { at: h.chased })] : []),
    ...(h.looked ? [row('second look', '', { at: h.looked })] : []),
  ];
}
