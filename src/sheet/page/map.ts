// The cardboard on paper: an area's outline with each hole where it sits, as one drawing. A closed hole is a round, an
// open one a square with a bar, one as found a round of dashes: shape says it, colour only underlines.

import type { MapFact, MapHole } from '../map-facts.ts';
import { counted } from '../words.ts';
import { html, type Markup } from './markup.ts';

export function mapMarkup(area: string, { outline, holes, placed }: MapFact): Markup | undefined {
  if (holes.length === 0) return undefined;
  const points = [...outline, ...holes.map((h) => h.at)];
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const span = Math.max(Math.max(...xs) - left, Math.max(...ys) - top, 1e-6);
  // To a drawing of 300 units on its longer side, whatever the plan measured in.
  const scale = 300 / span;
  const at = ([x, y]: readonly [number, number]): [number, number] => [
    tenth((x - left) * scale),
    tenth((y - top) * scale),
  ];
  const scaled = holes.map((h) => ({ ...h, at: at(h.at) }));
  const radius = radiusFor(scaled.map((h) => h.at));
  const pad = tenth(radius + 6);
  const width = tenth((Math.max(...xs) - left) * scale + 2 * pad);
  const height = tenth((Math.max(...ys) - top) * scale + 2 * pad);
  const title = `${area}: ${counts(holes)}`;
  const line = outline.map((one) => at(one).join(' ')).join(' L ');
  return html`<figure>
<svg viewBox="${-pad} ${-pad} ${width} ${height}" role="img" aria-label="${title}">
${
  outline.length > 1
    ? html`<path class="outline" stroke-width="2" d="M ${line} Z"/>
`
    : undefined
}${scaled.map((h) => holeMarkup(h, radius))}</svg>
<figcaption>${counts(holes)}${placed ? undefined : '; places not measured'}</figcaption>
</figure>
`;
}

const tenth = (value: number): number => Math.round(value * 10) / 10;
/** As large as fits between neighbours. */
function radiusFor(places: readonly (readonly [number, number])[]): number {
  let nearest = 60;
  for (const [i, [x, y]] of places.entries()) {
    for (const [ox, oy] of places.slice(i + 1)) nearest = Math.min(nearest, Math.hypot(x - ox, y - oy));
  }
  return tenth(Math.max(6, Math.min(22, nearest * 0.46)));
}

function holeMarkup({ number, at: [x, y], state }: MapHole, r: number): Markup {
  const shape =
    state === 'open'
      ? html`<rect class="hole open" stroke-width="3" x="${tenth(x - r)}" y="${tenth(y - r)}" width="${tenth(2 * r)}" height="${tenth(2 * r)}"/><path class="hole open" stroke-width="3" d="M ${tenth(x - r)} ${tenth(y + r)} h ${tenth(2 * r)}"/>`
      : html`<circle class="hole" stroke-width="2"${state === 'as found' ? html` stroke-dasharray="4 4"` : undefined} cx="${x}" cy="${y}" r="${r}"/>`;
  const size = tenth(Math.min(r * 1.15, (r * 2.6) / Math.max(1, number.length)));
  return html`${shape}<text x="${x}" y="${y}" font-size="${size}">${number}</text>
`;
}

const shapes: Readonly<Record<MapHole['state'], string>> = {
  closed: 'closed (round)',
  open: 'OPEN (square)',
  'as found': 'as found (dashed)',
};
function counts(holes: readonly MapHole[]): string {
  const states = ['closed', 'open', 'as found'] as const;
  const said = states.flatMap((state) => {
    const count = holes.filter((h) => h.state === state).length;
    return count === 0 ? [] : [`${count} ${shapes[state]}`];
  });
  return `${counted(holes.length, 'hole')}: ${said.join(', ')}`;
}
