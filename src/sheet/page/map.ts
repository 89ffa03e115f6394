// The cardboard on paper: an area's outline with each hole where it sits, as one drawing. Shape says how a hole stands,
// colour only underlines: closed a round, with a second ring where what is in it is new; open a square with a bar; left
// empty a round struck through; as found a round of dashes.

import type { AreaFact, HoleFact } from '../area-facts.ts';
import type { MapFact, MapHole } from '../map-facts.ts';
import { counted, timeText } from '../words.ts';
import { html, type Markup } from './markup.ts';

/** Units of the longer side of a drawing, whatever the plan measured in. */
const side = (holes: number): number => (holes < 3 ? 120 : 300);
/** A drawing beside its table, and one above it for holes that sit close together: CSS pixels a unit. */
const besides = 0.62;
const widest = 2;
const largestRadius = 22;
/** CSS pixels: with less a number in it can't be read. */
const smallestReadable = 9;

type Sort = 'closed' | 'new' | 'left empty' | 'open' | 'as found';
type Drawn = { number: string; at: readonly [number, number]; sort: Sort; record: string };

export function mapMarkup(area: AreaFact): { figure: Markup; isWide: boolean } | undefined {
  const { outline, holes, placed }: MapFact = area.map;
  if (holes.length === 0) return undefined;
  // A grid that nobody measured has no edge.
  const edge = placed ? outline : [];
  const points = [...edge, ...holes.map((h) => h.at)];
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const span = Math.max(Math.max(...xs) - left, Math.max(...ys) - top, 1e-6);
  const scale = placed ? side(holes.length) / span : gridScale(holes);
  const at = ([x, y]: readonly [number, number]): [number, number] => [
    tenth((x - left) * scale),
    tenth((y - top) * scale),
  ];
  const drawn = holes.map((h): Drawn => ({ number: h.number, at: at(h.at), ...recordOf(h, area.holes) }));
  const radius = radiusFor(drawn.map((h) => h.at));
  const isWide = radius * besides < smallestReadable;
  const pixels = isWide ? Math.min(widest, Math.max(1, smallestReadable / radius)) : besides;
  const pad = tenth(radius + 4);
  const width = tenth((Math.max(...xs) - left) * scale + 2 * pad);
  const height = tenth((Math.max(...ys) - top) * scale + 2 * pad);
  const line = edge.map((one) => at(one).join(' ')).join(' L ');
  const figure = html`<figure class="map${isWide ? ' wide' : ''}">
<svg viewBox="${-pad} ${-pad} ${width} ${height}" width="${Math.round(width * pixels)}" height="${Math.round(height * pixels)}" role="img" aria-label="${area.area}: ${counts(drawn)}">
${
  edge.length > 1
    ? html`<path class="outline" stroke-width="2" d="M ${line} Z"/>
`
    : undefined
}${drawn.map((h) => holeMarkup(h, radius))}</svg>
${
  placed
    ? undefined
    : html`<figcaption>places not measured</figcaption>
`
}</figure>
`;
  return { figure, isWide };
}

const tenth = (value: number): number => Math.round(value * 10) / 10;
/** Neighbours of a grid sit apart by the widest round and some air. */
function gridScale(holes: readonly MapHole[]): number {
  const pitch = nearestOf(holes.map((h) => h.at));
  return Number.isFinite(pitch) ? (largestRadius * 2.3) / pitch : 1;
}
function nearestOf(places: readonly (readonly [number, number])[]): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const [i, [x, y]] of places.entries()) {
    for (const [ox, oy] of places.slice(i + 1)) nearest = Math.min(nearest, Math.hypot(x - ox, y - oy));
  }
  return nearest;
}
/** As large as fits between neighbours. */
const radiusFor = (places: readonly (readonly [number, number])[]): number =>
  tenth(Math.max(4, Math.min(largestRadius, nearestOf(places) * 0.44)));

function recordOf({ number, state }: MapHole, all: readonly HoleFact[]): Pick<Drawn, 'sort' | 'record'> {
  const levels = all.filter((h) => h.number === number || h.number.startsWith(`${number} `));
  const isNew = levels.some((h) => h.came?.how === 'new' || h.substitute);
  const isEmpty = levels.length > 0 && levels.every((h) => h.leftEmpty);
  const sort = state !== 'closed' ? state : isEmpty ? 'left empty' : isNew ? 'new' : 'closed';
  return { sort, record: [sort, ...levels.map(levelText)].join('; ') };
}
function levelText({ number, holds, passes }: HoleFact): string {
  const called = passes.map((p) => `${[p.pass, p.how].filter(Boolean).join(' ')}, ${timeText(p)}`);
  return [`${number} ${holds ?? 'holds nothing'}`, ...called].join('; ');
}

function holeMarkup({ number, at: [x, y], sort, record }: Drawn, r: number): Markup {
  const size = tenth(Math.min(r * 1.15, (r * 2.6) / Math.max(1, number.length)));
  return html`<g><title>${number}: ${record}</title>${shapeOf(sort, x, y, r)}<text x="${x}" y="${y}" font-size="${size}">${number}</text></g>
`;
}
function shapeOf(sort: Sort, x: number, y: number, r: number): Markup {
  const round = (dashes?: string) =>
    html`<circle class="hole" stroke-width="2"${dashes ? html` stroke-dasharray="${dashes}"` : undefined} cx="${x}" cy="${y}" r="${r}"/>`;
  const [before, above, width] = [tenth(x - r), tenth(y - r), tenth(2 * r)];
  switch (sort) {
    case 'open':
      return html`<rect class="hole open" stroke-width="3" x="${before}" y="${above}" width="${width}" height="${width}"/><path class="hole open" stroke-width="3" d="M ${before} ${tenth(y + r)} h ${width}"/>`;
    case 'as found':
      return round('4 4');
    case 'new':
      return html`${round()}<circle class="ring" stroke-width="1.5" cx="${x}" cy="${y}" r="${tenth(r * 0.78)}"/>`;
    case 'left empty':
      return html`${round()}<path class="ring" stroke-width="1.5" d="M ${before} ${tenth(y + r)} L ${tenth(x + r)} ${above}"/>`;
    default:
      return round();
  }
}

const shapes: Readonly<Record<Sort, string>> = {
  closed: 'closed',
  new: 'closed, with a new fastener',
  'left empty': 'left empty',
  open: 'OPEN',
  'as found': 'as found',
};
const sorts = Object.keys(shapes) as Sort[];
function counts(holes: readonly Drawn[]): string {
  const said = sorts.flatMap((sort) => {
    const count = holes.filter((h) => h.sort === sort).length;
    return count === 0 ? [] : [`${count} ${shapes[sort]}`];
  });
  return `${counted(holes.length, 'hole')}: ${said.join('; ')}`;
}

/** What the shapes say, those that are there. */
export function legend(areas: readonly AreaFact[]): Markup | undefined {
  const there = new Set(areas.flatMap((a) => a.map.holes.map((h) => recordOf(h, a.holes).sort)));
  const shown = sorts.filter((sort) => there.has(sort));
  if (shown.length === 0) return undefined;
  return html`<p class="legend"><span>Each hole in the order said for tightening, else by its number.</span> ${shown.map(
    (sort) =>
      html`<span><svg viewBox="0 0 20 20" width="16" height="16" aria-hidden="true">${shapeOf(sort, 10, 10, 8)}</svg> ${shapes[sort]}</span> `,
  )}</p>
`;
}
