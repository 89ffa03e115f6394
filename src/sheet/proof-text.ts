// Sealant, check rotations, fluids and leak checks in words.
import { lengthOfTimeText } from '../trade/civil-time.ts';
import { point, under } from './layout.ts';
import type { BeadFact, CircuitFact, DriveFact, FaceFact, TryFact } from './proof-facts.ts';
import type { Moment } from './reading.ts';
import { conditionsText, counted, dayText, figure, teethText, timeText } from './words.ts';

export const sealantText = (faces: readonly FaceFact[]): string[] =>
  faces.flatMap(({ face, beads, laidBefore }) => [
    ...beads.flatMap(beadText),
    ...(laidBefore > 0 ? point(`${face}: ${counted(laidBefore, 'earlier bead')} laid and cleaned off again`) : []),
  ]);

function beadText(bead: BeadFact): string[] {
  const [atLaying, ...later] = bead.conditions;
  const told = atLaying && atLaying.n <= bead.laid.n ? [atLaying] : [];
  const since = told.length > 0 ? later : bead.conditions;
  const conditions = [
    told[0] ? `at the bench ${conditionsText(told[0])}` : 'conditions not told when it was laid',
    ...since.map((c) => `${conditionsText(c)} from ${timeText(c)}`),
  ];
  return [
    ...point(`${bead.face}: ${bead.product} (${bead.kind}), laid ${timeText(bead.laid)}`),
    ...under([...(bead.cleaned ? [`cleaned ${timeText(bead.cleaned)}`] : []), ...conditions].join('; ')),
    ...under(bead.together ? `together ${timeText(bead.together)}; ${cureText(bead)}` : cureText(bead)),
  ];
}

export function cureText(bead: BeadFact): string {
  switch (bead.cure) {
    case 'void':
      return `VOID: ${bead.void}`;
    case 'needs none':
      return 'no cure to wait for';
    case 'not together':
      return 'NOT TOGETHER, nothing cures yet';
    case 'cured':
      return `fully cured (${figure(bead.fullHours)} h by the label)`;
    case 'curing': {
      const left = `${lengthOfTimeText((bead.fullHours - bead.earnedHours) * 3_600_000)} of label time left`;
      const ready = bead.ready ? `, ready ${dayText(bead.ready)}` : ', nothing is earned as it is now';
      const away = bead.awayHours > 0 ? '; time away waits for the clock to be called right' : '';
      return `CURING: ${left}${ready}${away}`;
    }
  }
}

export const rotationText = (drives: readonly DriveFact[]): string[] =>
  drives.flatMap(({ drive, stands, tries }) => {
    const verdict =
      tries.length === 0 ? 'NO CHECK ROTATION MADE' : stands ? 'the check rotation stands' : 'NO CHECK ROTATION STANDS';
    return [...point(`${drive}: ${verdict}`), ...tries.flatMap((t, i) => under(tryText(t, i + 1)))];
  });

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

export const fluidText = (circuits: readonly CircuitFact[], oil: Moment | undefined): string[] => [
  ...circuits.flatMap((c) => point(`${c.circuit}: ${circuitText(c)}`)),
  ...(oil ? point(`engine oil level seen ${timeText(oil)}`) : []),
];
export function circuitText({ drained, filled, checked }: CircuitFact): string {
  const litres = filled?.litres === undefined ? '' : ` ${figure(filled.litres)} l`;
  const isFull = filled && (!drained || filled.n > drained.n);
  return [
    ...(drained ? [`drained ${timeText(drained)}`] : []),
    ...(filled && isFull ? [`filled ${timeText(filled)},${litres} ${filled.fluid}`] : []),
    ...(drained && !isFull ? ['NOT FILLED'] : []),
    ...(checked
      ? [`leak-checked ${checked.how} ${timeText(checked)}${checked.stands ? '' : ', WHICH NO LONGER STANDS'}`]
      : []),
    ...(drained && !checked ? ['NOT LEAK-CHECKED'] : []),
  ].join('; ');
}
