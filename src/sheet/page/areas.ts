// The tightening record on the page: each area with its map, each hole with what is in it and how it was brought up; the
// fasteners that are not the ones that came off; thread repairs.
import type { AreaFact, HoleFact } from '../area-facts.ts';
import { type Copy, measuredText, stepText } from '../area-text.ts';
import { isMarked } from '../points.ts';
import { spanText, timeText } from '../words.ts';
import { legend, mapMarkup } from './map.ts';
import { critical, flowing, html, joined, list, type Markup, table } from './markup.ts';
import { passColumns } from './passes.ts';

/** On paper an area of so few holes is not broken over two pages. */
const keptTogether = 16;

export const areasMarkup = (areas: readonly AreaFact[], copy: Copy): Markup =>
  html`${legend(areas)}${areas.map((area) => areaMarkup(area, copy))}`;

function areaMarkup(area: AreaFact, copy: Copy): Markup {
  const { holes } = area;
  const said = [
    ...(area.companions ? [`seen: ${area.companions.seen.join(', ')}; ${timeText(area.companions)}`] : []),
    ...(area.blindHolesDry ? [`blind holes called dry ${timeText(area.blindHolesDry)}`] : []),
    ...(area.directionRight ? [`direction called right ${timeText(area.directionRight)}`] : []),
    ...(holes.some((h) => h.passes.some((p) => isMarked(p, h, copy))) ? ['* taken out of the order of its pass'] : []),
  ];
  const mixed = !holes.every((h) => h.critical);
  const columns = passColumns(holes, copy);
  const map = mapMarkup(area);
  const record = table(
    { label: area.area },
    ['hole', 'fastener', ...columns.heads],
    holes.map((h) => [
      html`${flowing(h.number)}${critical(mixed && h.critical)}`,
      fastenerCell(h),
      ...columns.cellsOf(h),
    ]),
  );
  return html`<div class="area${holes.length <= keptTogether ? ' short' : ''}">
<h3>${area.area}${critical(area.critical)} <small>${area.closed} of ${area.touched} closed</small></h3>
${map?.isWide ? map.figure : undefined}<div>
${record}${list(said)}</div>
${map?.isWide ? undefined : map?.figure}</div>
`;
}

function fastenerCell(h: HoleFact): Markup {
  const lines: (Markup | string)[] = [
    ...(h.open === undefined ? [] : [html`<strong class="warn">OPEN: ${flowing(h.open)}</strong>`]),
    ...(h.holds === undefined ? [] : [h.holds]),
    ...otherThanBefore(h).map((text) => html`<em>${flowing(text)}</em>`),
    ...(h.chased ? [`thread chased ${timeText(h.chased)}`] : []),
    ...(h.repair.length > 0 ? ['thread repaired, see below'] : []),
  ];
  return joined((lines.length > 0 ? lines : ['-']).map(flowing), html`<br>`);
}

/** What went in is not what came out: new, traded, of another pattern, a substitute; or nothing did. */
function otherThanBefore(h: HoleFact): string[] {
  return [
    ...(h.came?.how === 'new' ? [`new (${h.came.from})`] : []),
    ...(h.came?.how === 'stray' ? ['a stray given to it'] : []),
    ...(h.came?.how === 'traded' ? [`the equal fastener of ${h.came.from}`] : []),
    ...(h.newPattern ? [`new pattern: another ${h.newPattern.join(', ')}`] : []),
    ...(h.substitute ? [`SUBSTITUTE where ${h.substitute.wanted} is wanted: ${h.substitute.because}`] : []),
    ...(h.leftEmpty ? [`left empty by ${h.leftEmpty.who}: ${h.leftEmpty.because}`] : []),
    ...(h.measured ? [measuredText(h.measured)] : []),
  ];
}

export const replacedMarkup = (areas: readonly AreaFact[]): Markup | undefined =>
  table(
    'replaced, substituted, left empty',
    ['place', 'fastener', 'what'],
    areas.flatMap((a) =>
      a.holes.flatMap((h) => {
        const other = otherThanBefore(h);
        return other.length === 0 ? [] : [[`${a.area} ${h.number}`, h.holds ?? '-', other.join('; ')]];
      }),
    ),
  );

/** F5 */
export const repairsMarkup = (areas: readonly AreaFact[]): Markup | undefined =>
  table(
    'each step as it was called',
    ['hole', 'steps', 'when'],
    areas.flatMap((a) =>
      a.holes
        .filter((h) => h.repair.length > 0)
        .map((h) => [`${a.area} ${h.number}`, h.repair.map(stepText).join('; '), spanText(h.repair)]),
    ),
  );
