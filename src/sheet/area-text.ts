// The tightening record and the thread repairs in words: per area one line a pass, then what is not as it was.
import type { AreaFact, HoleFact, PassFact, RepairFact } from './area-facts.ts';
import { cells, padded, point, under, wrapped } from './layout.ts';
import { by, figure, figureNotNoted, notTheFigure, spanText, timeText } from './words.ts';

/** Out-of-order marks are for the workshop, and for the owner only where critical (O5). */
export type Copy = 'workshop' | 'owner';

const label = (text: string): string => `    ${padded(text, 12)}${cells(text) >= 12 ? ' ' : ''}`;

export function areaText(area: AreaFact, copy: Copy): string[] {
  const critical = area.critical ? ', critical' : '';
  return [
    ...wrapped('  ', `${area.area}${critical}: ${area.closed} of ${area.touched} closed`),
    ...openText(area),
    ...passGroups(area).flatMap((group) => passText(group, copy)),
    ...area.holes.flatMap(holeText),
    ...lookedText(area),
    ...seenText(area),
  ];
}

const openText = (area: AreaFact): string[] =>
  area.holes.flatMap((h) => (h.open === undefined ? [] : wrapped(label('OPEN'), `${h.number}: ${h.open}`)));

type Taken = { hole: HoleFact; pass: PassFact };
/** Passes of the same name, method, tool and hand together, each in the order in which its holes were called. */
function passGroups(area: AreaFact): Taken[][] {
  const taken = area.holes.flatMap((hole) => hole.passes.map((pass) => ({ hole, pass })));
  const kind = ({ pass: { pass, last, method, noFigure, tool, who } }: Taken) =>
    JSON.stringify([pass, last, method, noFigure, tool, who]);
  const ordered = taken.toSorted((a, b) => a.pass.n - b.pass.n);
  return [...Map.groupBy(ordered, kind).values()];
}

function passText(group: readonly Taken[], copy: Copy): string[] {
  const [first] = group;
  if (!first) return [];
  const { pass, last, how, noFigure, tool, who } = first.pass;
  const marked = ({ hole, pass: p }: Taken) => p.outOfOrder && (copy === 'workshop' || hole.critical);
  const read = ({ readWords, notTheFigure: isFar }: PassFact) =>
    readWords === undefined ? '' : ` (read ${readWords}${isFar ? notTheFigure : ''})`;
  const holes = group.map((one) => `${one.hole.number}${marked(one) ? '*' : ''}${read(one.pass)}`).join(', ');
  const said = [how, noFigure && figureNotNoted, tool && `tool: ${tool}`, spanText(group.map((one) => one.pass))];
  return [
    ...wrapped(label(last && pass !== 'final' ? `${pass}, last` : pass), holes),
    ...wrapped(label(''), `${said.filter(Boolean).join('; ')}${by(who)}`),
  ];
}

function holeText(h: HoleFact): string[] {
  const said = [
    ...(h.came?.how === 'new' ? [`new ${h.holds} (${h.came.from})`] : []),
    ...(h.came?.how === 'stray' ? [`a stray given to it: ${h.holds}`] : []),
    ...(h.came?.how === 'traded' ? [`the equal fastener of ${h.came.from}`] : []),
    ...(h.newPattern ? [`new pattern: another ${h.newPattern.join(', ')}`] : []),
    ...(h.substitute ? [`substitute ${h.holds} where ${h.substitute.wanted} is wanted: ${h.substitute.because}`] : []),
    ...(h.leftEmpty ? [`left empty by ${h.leftEmpty.who}: ${h.leftEmpty.because}`] : []),
    ...(h.measured ? [measuredText(h.measured)] : []),
    ...(h.chased ? [`thread chased ${timeText(h.chased)}`] : []),
  ];
  return said.flatMap((text) => wrapped(label(h.number), text));
}
export const measuredText = ({ what, measuredMm, limitMm }: NonNullable<HoleFact['measured']>): string =>
  `serves again by measurement: ${what} ${figure(measuredMm)} mm, limit ${figure(limitMm)} mm`;

function lookedText(area: AreaFact): string[] {
  const looked = area.holes.filter((h) => h.looked !== undefined);
  const byWhom = Map.groupBy(looked, (h) => h.looked?.who);
  return [...byWhom].flatMap(([who, holes]) =>
    wrapped(
      label('second look'),
      `${holes.map((h) => h.number).join(', ')}; ${spanText(holes.flatMap((h) => h.looked ?? []))}${by(who)}`,
    ),
  );
}

function seenText({ companions, blindHolesDry, directionRight }: AreaFact): string[] {
  return [
    ...(companions ? wrapped(label('seen'), `${companions.seen.join(', ')}; ${timeText(companions)}`) : []),
    ...(blindHolesDry ? wrapped(label('dry'), `blind holes called dry ${timeText(blindHolesDry)}`) : []),
    ...(directionRight ? wrapped(label('direction'), `called right ${timeText(directionRight)}`) : []),
  ];
}

/** F5 */
export function repairText(area: AreaFact): string[] {
  return area.holes
    .filter((h) => h.repair.length > 0)
    .flatMap((h) => [
      ...point(`${area.area} ${h.number}, ${spanText(h.repair)}`),
      ...under(h.repair.map(stepText).join('; ')),
    ]);
}
const stepNames: Readonly<Record<string, string>> = { depth: 'depth in the boss', tried: 'tried by hand' };
export function stepText({ step, millimetres, words }: RepairFact): string {
  const size = millimetres === undefined ? '' : ` ${figure(millimetres)} mm`;
  const name = stepNames[step] ?? step;
  return `${name}${size}${words && !name.endsWith(words) ? ` (${words})` : ''}`;
}
