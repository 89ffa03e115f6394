// Sealant, check rotations, fluids and leak checks in words.
import { noSealant } from '../job/beads.ts';
import { lengthOfTimeText } from '../trade/civil-time.ts';
import type { SheetFacts } from './facts.ts';
import { point, under } from './layout.ts';
import type { BeadFact, CircuitFact, DriveFact, FaceFact, TryFact } from './proof-facts.ts';
import { counted, dayText, figure, teethText, timeText } from './words.ts';

export const sealantText = (faces: readonly FaceFact[]): string[] =>
  faces.flatMap((face) => [...face.beads.flatMap(beadText), ...earlierBeads(face).flatMap(point)]);

const beadText = (bead: BeadFact): string[] => [
  ...point(`${bead.face}: ${laidText(bead)}`),
  ...under(conditionsOf(bead).join('; ')),
  ...under(endText(bead)),
];
export const laidText = (bead: BeadFact): string =>
  bead.product === noSealant.product
    ? `no sealant, dry or with a moulded gasket, called ${timeText(bead.laid)}`
    : `${bead.product} (${bead.kind}), laid ${timeText(bead.laid)}${lateText(bead)}`;
export const lateText = ({ late }: BeadFact): string =>
  late
    ? `, AFTER ITS FACE WAS CLOSED ${late.closed ? `(${timeText(late.closed)})` : '(as found, not opened on this job)'}`
    : '';
export const endText = (bead: BeadFact): string =>
  `${bead.together && !bead.late ? `together ${timeText(bead.together)}; ` : ''}${cureText(bead)}`;
/** Cleaned when, what the bench was like when it was laid, and each change since. */
export function conditionsOf(bead: BeadFact): string[] {
  const atLaying = bead.conditions.findLast((c) => c.n <= bead.laid.n);
  return [
    ...(bead.cleaned ? [`cleaned ${timeText(bead.cleaned)}`] : []),
    atLaying ? `at the bench ${atLaying.words}` : 'conditions not told when it was laid',
    ...bead.conditions.filter((c) => c.n > bead.laid.n).map((c) => `${c.words} from ${timeText(c)}`),
  ];
}
export const earlierBeads = ({ face, laidBefore }: FaceFact): string[] =>
  laidBefore > 0 ? [`${face}: ${counted(laidBefore, 'earlier bead')} laid and cleaned off again`] : [];

export function cureText(bead: BeadFact): string {
  switch (bead.cure) {
    case 'void':
      return `VOID: ${bead.void}`;
    case 'needs none':
      return 'no cure to wait for';
    case 'not together':
      return 'NOT TOGETHER, nothing cures yet';
    case 'cured':
      return `fully cured (${lengthOfTimeText(bead.fullHours * 3_600_000)} by the label)`;
    case 'curing': {
      const left = `${lengthOfTimeText((bead.fullHours - bead.earnedHours) * 3_600_000)} of label time left`;
      if (bead.onceRight && bead.ready)
        return `CURING: ${left}, nothing is earned until the clock is called right, then ready ${dayText(bead.ready)}`;
      const ready = bead.ready ? `, ready ${dayText(bead.ready)}` : ', nothing is earned as it is now';
      const away = bead.awayHours > 0 ? '; time away waits for the clock to be called right' : '';
      return `CURING: ${left}${ready}${away}`;
    }
  }
}

export function driveText({ drive, stands, tries }: DriveFact): string {
  if (tries.length === 0) return `${drive}: NO CHECK ROTATION MADE`;
  return `${drive}: ${stands ? 'the check rotation stands' : 'NO CHECK ROTATION STANDS'}`;
}
export const rotationText = (drives: readonly DriveFact[]): string[] =>
  drives.flatMap((d) => [...point(driveText(d)), ...d.tries.flatMap((t, i) => under(tryText(t, i + 1)))]);

export function tryText(t: TryFact, number: number): string {
  const readings = [
    counted(t.turns, 'turn'),
    ...t.marks.map(({ mark, teethOff }) => `${mark} ${teethText(teethOff)}`),
    ...(t.locksSlid ? ['locks slid in by hand and out again'] : []),
    ...(t.tension ? [`tension by ${t.tension.how} ${t.tension.right ? 'right' : 'NOT right'}`] : []),
  ].join(', ');
  const result =
    t.result === 'passed' && t.passed
      ? `passed ${timeText(t.passed)}`
      : t.failed
        ? `FAILED: ${t.failed}${t.explained ? `, cause: ${t.explained}` : ''}`
        : 'not finished';
  return `try ${number}, ${timeText(t.begun)}: ${readings}; ${result}`;
}

export const fluidPoints = ({ circuits, oil }: Pick<SheetFacts, 'circuits' | 'oil'>): string[] => [
  ...circuits.map((c) => `${c.circuit}: ${circuitText(c)}`),
  ...(oil ? [`engine oil level seen ${timeText(oil)}`] : []),
];
const coldText = ({ cold }: { cold?: string }): string =>
  cold === undefined ? '' : ` (cold, ${cold} after the start)`;
export function circuitText({ drained, filled, checked }: CircuitFact): string {
  const litres = filled?.litres === undefined ? '' : ` ${figure(filled.litres)} l`;
  const isFull = filled && (!drained || filled.n > drained.n);
  return [
    ...(drained ? [`drained ${timeText(drained)}`] : []),
    ...(filled && isFull ? [`filled ${timeText(filled)},${litres} ${filled.fluid}`] : []),
    ...(drained && !isFull ? ['NOT FILLED'] : []),
    ...(checked
      ? [
          `leak-checked ${checked.how}${coldText(checked)} ${timeText(checked)}${checked.stands ? '' : ', WHICH NO LONGER STANDS'}`,
        ]
      : []),
    ...(drained && !checked ? ['NOT LEAK-CHECKED'] : []),
  ].join('; ');
}
