// What a declaration says, in a few words; what the other entries say stands in entry-words.ts.
import type { Product } from '../job/entries/declared.ts';
import type { Entry } from '../job/entry.ts';
import { numbersText } from '../job/numbers-text.ts';
import type { Method, Spec } from '../job/spec.ts';
import { areaOf, subjectText, withinArea } from '../job/subjects.ts';
import { methodWords } from '../job/tightening.ts';
import type { Adapter } from '../trade/adapter.ts';
import { lengthOfTimeText } from '../trade/civil-time.ts';
import { millisecondsPerMinute, minutesPerHour } from '../trade/definitions.ts';
import { temperatureText, type Units } from '../trade/units-shown.ts';
import { specWords } from './spec-words.ts';

/** "cover 1 2 3": holes of one area after its name. */
function holesOf(holes: readonly string[]): string {
  const [first] = holes;
  return first === undefined ? 'nothing' : `${areaOf(first)} ${numbersText(holes.map(withinArea))}`;
}
/** "label of grey sealant: skin 10 min, full 24 h, at 23 °C and 50 %": what it was taken to say, to be held beside the tube. */
function labelWords(label: Product, units: Units): string {
  const { product, skinMinutes, fillHours, runHours, fullHours, labelCelsius, labelHumidityPct } = label;
  const minutes = (hours: number | undefined) => hours && hours * minutesPerHour.value;
  const stages = { skin: skinMinutes, fill: minutes(fillHours), run: minutes(runHours), full: minutes(fullHours) };
  const times = Object.entries(stages).flatMap(([stage, many]) =>
    // Minutes that were said stand as hours to four places.
    many === undefined ? [] : [`${stage} ${lengthOfTimeText(Math.round(many) * millisecondsPerMinute.value)}`],
  );
  const at = `at ${temperatureText(labelCelsius, units)} and ${labelHumidityPct} %`;
  return `label of ${product}: ${[...times, at].join(', ')}`;
}
/** What a declaration says of an area or a hole, by the names of its fields. */
function traitsOf(
  { kind: _, ...traits }: Extract<Entry, { kind: 'area-declared' | 'hole-declared' }>,
  units: Units,
): string {
  const said = Object.entries(traits).flatMap(([name, value]) => {
    if (name === 'area' || name === 'hole') return [];
    if (name === 'wants') return [`wants ${specWords(value as Spec)}`];
    if (name === 'method') return [methodSaid(value as Method, units)];
    if (name === 'adapter') return [adapterWords(value as Adapter)];
    if (name === 'outline' || name === 'at') return ['placed on its map'];
    const words = name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
    if (value === true) return [words];
    return [`${words} ${Array.isArray(value) ? value.join(' ') : String(value)}`];
  });
  return said.length > 0 ? `: ${said.join(', ')}` : ' is named';
}

const adapterWords = ({ adapterLengthMm, wrenchLengthMm, angleDegrees = 0 }: Adapter): string =>
  `adapter ${adapterLengthMm} mm on ${wrenchLengthMm} mm${angleDegrees === 0 ? '' : `, at ${angleDegrees}°`}`;

type Declared = Extract<Entry, { kind: `${string}-declared` }>;
/** With its figures in the units of the workshop: a unit read wrongly is seen at once. */
function methodSaid(method: Method, units: Units): string {
  const hasFigure = method.newtonMetres !== undefined || (method.stages ?? []).length > 0;
  return `by ${method.by}${hasFigure ? `: ${methodWords(method, units)}` : ''}`;
}

export function declaredWords(entry: Declared, units: Units): string {
  switch (entry.kind) {
    case 'area-declared':
      return `${entry.area}${traitsOf(entry, units)}`;
    case 'hole-declared':
      return `${subjectText(`hole:${entry.hole}`)}${traitsOf(entry, units)}`;
    case 'behind-declared':
      return `${subjectText(entry.behind)} sits behind ${subjectText(entry.front)}`;
    case 'part-declared':
      return `part ${entry.part}${entry.heldBy.length > 0 ? `, held by ${holesOf(entry.heldBy)}` : ', held by nothing'}`;
    case 'connection-declared':
      return `connection ${entry.connection}`;
    case 'face-declared': {
      const beads = entry.bead === undefined ? '' : `, ${entry.bead === true ? 'a bead' : `${entry.bead} beads`}`;
      const keeps = entry.keepsIn.length > 0 ? `, keeps in ${entry.keepsIn.join(', ')}` : '';
      return `sealing face ${entry.face}, pressed by ${holesOf(entry.pressedBy)}${keeps}${beads}`;
    }
    case 'drive-declared':
      return `drive ${entry.drive} over ${entry.areas.join(', ')}`;
    case 'circuit-declared':
      return entry.fluid === entry.circuit
        ? `circuit ${entry.circuit}`
        : `circuit ${entry.circuit} with ${entry.fluid}`;
    case 'temporary-declared':
      return `${entry.temporary} will be needed`;
    case 'product-declared':
      return labelWords(entry.label, units);
    case 'tray-declared':
      return 'tray';
  }
}
