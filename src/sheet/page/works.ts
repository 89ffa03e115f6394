// Sealant and its cure, check rotations, fluids, parts, losses and the way out, on the page.
import type { SheetFacts } from '../facts.ts';
import { lossText, oldText } from '../goods-text.ts';
import type { BeadFact } from '../proof-facts.ts';
import { circuitText, cureText, tryText } from '../proof-text.ts';
import { conditionsText, counted, timeText, why } from '../words.ts';
import { html, joined, list, type Markup, table } from './markup.ts';

const newLine = html`<br>`;

export function sealantMarkup({ faces }: SheetFacts): Markup | undefined {
  const rows = faces.flatMap(({ beads }) =>
    beads.map((bead) => [
      bead.face,
      `${bead.product} (${bead.kind}), laid ${timeText(bead.laid)}`,
      joined(conditionsOf(bead), newLine),
      `${bead.together ? `together ${timeText(bead.together)}; ` : ''}${cureText(bead)}`,
    ]),
  );
  const before = faces.flatMap(({ face, laidBefore }) =>
    laidBefore > 0 ? [`${face}: ${counted(laidBefore, 'earlier bead')} laid and cleaned off again`] : [],
  );
  return html`${table('each bead on its face', ['face', 'bead', 'conditions', 'cure'], rows)}${list(before)}`;
}
function conditionsOf(bead: BeadFact): string[] {
  const cleaned = bead.cleaned ? [`cleaned ${timeText(bead.cleaned)}`] : [];
  const atLaying = bead.conditions.filter((c) => c.n <= bead.laid.n).at(-1);
  const since = bead.conditions.filter((c) => c.n > bead.laid.n);
  return [
    ...cleaned,
    atLaying ? `at the bench ${conditionsText(atLaying)}` : 'conditions not told when it was laid',
    ...since.map((c) => `${conditionsText(c)} from ${timeText(c)}`),
  ];
}

export function rotationMarkup({ drives }: SheetFacts): Markup {
  return html`${drives.map(({ drive, stands, tries }) => {
    const verdict =
      tries.length === 0 ? 'NO CHECK ROTATION MADE' : stands ? 'the check rotation stands' : 'NO CHECK ROTATION STANDS';
    return html`<h3>${drive}: ${verdict}</h3>
${list(tries.map((t, i) => tryText(t, i + 1)))}`;
  })}`;
}

export const fluidsMarkup = ({ circuits, oil }: SheetFacts): Markup | undefined =>
  list([
    ...circuits.map((c) => `${c.circuit}: ${circuitText(c)}`),
    ...(oil ? [`engine oil level seen ${timeText(oil)}`] : []),
  ]);

export function partsMarkup({ parts, box, again }: SheetFacts): Markup {
  const renewed = table(
    'new parts, and what became of the old ones',
    ['part', 'fitted', 'old part'],
    parts.renewed.map((p) => [p.part, `${p.from}, ${timeText(p)}`, oldText(p.old)]),
  );
  const rest = list([
    ...(parts.refitted.length > 0 ? [`refitted: ${parts.refitted.map((p) => p.part).join(', ')}`] : []),
    ...parts.off.map((p) => `OFF: ${p.part}${p.old ? `; ${oldText(p.old)}` : ''}`),
    ...box.used.map((b) => `used up from the parts box: ${b.quantity} ${b.name}`),
    ...box.moved.map((b) => `out of the parts box to ${b.to}: ${b.quantity} ${b.name}${why(b.because)}`),
    ...(again.connections.length > 0 ? [`connections made again: ${again.connections.join(', ')}`] : []),
    ...(again.temporaries.length > 0 ? [`put in for the work and out again: ${again.temporaries.join(', ')}`] : []),
  ]);
  return html`${renewed}${rest}`;
}

export const lossesMarkup = ({ losses, strange }: SheetFacts): Markup | undefined =>
  list([
    ...losses.map(lossText),
    ...strange.map(
      (s) => `${s.what}, found ${timeText(s.at)}: no part of this vehicle, stated by ${s.who}${why(s.because)}`,
    ),
  ]);

export function wayOutMarkup({ car }: SheetFacts): Markup | undefined {
  const { started, pedal, tools, road, waiting } = car;
  return list([
    ...(tools ? [`tools called out ${timeText(tools)}`] : []),
    ...(started ? [`engine last started ${timeText(started)}`] : []),
    ...(pedal ? [`brake pedal called firm ${timeText(pedal)}`] : []),
    ...(road && !road.waived ? [`road test made ${timeText(road)}`] : []),
    ...(road?.waived ? [`NO ROAD TEST: ${road.waived.because} (${road.waived.who}, ${timeText(road)})`] : []),
    ...(waiting
      ? [
          `WAITING since ${timeText(waiting)} on ${waiting.on}${why(waiting.because)}${waiting.until ? `, until ${waiting.until}` : ''}`,
        ]
      : []),
  ]);
}
