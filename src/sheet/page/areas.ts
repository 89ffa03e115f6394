// The tightening record on the page: each area with its map, each hole with what is in it and how it was brought up; the
// fasteners that are not the ones that came off; thread repairs.
import type { AreaFact, HoleFact, PassFact } from '../area-facts.ts';
import { type Copy, measuredText, stepText } from '../area-text.ts';
import { by, figure, methodText, spanText, timeText } from '../words.ts';
import { mapMarkup } from './map.ts';
import { html, joined, list, type Markup, table } from './markup.ts';

const newLine = html`<br>`;

export const areasMarkup = (areas: readonly AreaFact[], copy: Copy): Markup =>
  html`${areas.map((area) => areaMarkup(area, copy))}`;

function areaMarkup(area: AreaFact, copy: Copy): Markup {
  const said = [
    ...(area.companions ? [`seen: ${area.companions.seen.join(', ')}; ${timeText(area.companions)}`] : []),
    ...(area.blindHolesDry ? [`blind holes called dry ${timeText(area.blindHolesDry)}`] : []),
    ...(area.directionRight ? [`direction called right ${timeText(area.directionRight)}`] : []),
  ];
  const marked = area.holes.some((h) => h.passes.some((p) => isMarked(h, p, copy)));
  return html`<div class="area">
<h3 class="all">${area.area}${area.critical ? ', critical' : undefined}: ${area.closed} of ${area.touched} closed</h3>
<div>
${table(
  'in tightening order',
  ['hole', 'fastener', 'brought up'],
  area.holes.map((h) => [
    `${h.number}${h.critical && !area.holes.every((one) => one.critical) ? ' (critical)' : ''}`,
    fastenerCell(h),
    passesCell(h, copy),
  ]),
)}${list(said)}${
  marked
    ? html`<p class="faint">* taken out of the order of its pass</p>
`
    : undefined
}</div>
${mapMarkup(area.area, area.map)}</div>
`;
}

const isMarked = (h: HoleFact, pass: PassFact, copy: Copy): boolean =>
  pass.outOfOrder && (copy === 'workshop' || h.critical);

function fastenerCell(h: HoleFact): Markup {
  const lines: (Markup | string)[] = [
    ...(h.open === undefined ? [] : [html`<strong class="warn">OPEN: ${h.open}</strong>`]),
    ...(h.holds === undefined ? [] : [h.holds]),
    ...otherThanBefore(h).map((text) => html`<em>${text}</em>`),
    ...(h.chased ? [`thread chased ${timeText(h.chased)}`] : []),
    ...(h.repair.length > 0 ? ['thread repaired, see below'] : []),
  ];
  return joined(lines.length > 0 ? lines : ['-'], newLine);
}

function passesCell(h: HoleFact, copy: Copy): Markup {
  const lines = h.passes.map((p) => {
    const read = p.readNewtonMetres === undefined ? '' : `, read ${figure(p.readNewtonMetres)} Nm`;
    const tool = p.tool ? `, ${p.tool}` : '';
    const how = `${p.method ? methodText(p.method) : 'method not said'}${read}${tool}`;
    const mark = isMarked(h, p, copy) ? '*' : '';
    return html`${p.pass}${p.last && p.pass !== 'final' ? ' (last)' : ''}${mark}: ${how} <span class="faint">${timeText(p)}${by(p.who)}</span>`;
  });
  const looked = h.looked
    ? [html`second look <span class="faint">${timeText(h.looked)}${by(h.looked.who)}</span>`]
    : [];
  const all = [...lines, ...looked];
  return joined(all.length > 0 ? all : ['-'], newLine);
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
